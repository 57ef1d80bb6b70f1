// Drills: the catalogue as a list, one drill opened, and a drill added or changed. The address says which.
import type { ScreenProps } from "../shell/screens.ts";
import { Refused } from "../api/asked.tsx";
import { Empty, Head } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import { fetchCatalogue, refused, useCatalogue } from "./catalogue.ts";
import { DrillList } from "./drill_list.tsx";
import { EditDrill } from "./edit/edit_drill.tsx";
import { OneDrill } from "./one_drill.tsx";
import { say } from "./words.ts";

export function Screen({ route: { drill: id, further } }: ScreenProps<"drills">) {
  const catalogue = useCatalogue();
  if (!catalogue) {
    return (
      <>
        <Head title={say("title")} />
        {refused.value ? <Refused refusal={refused.value} again={() => void fetchCatalogue()} /> : <p class="waiting screen-tall" role="status">{say("waiting")}</p>}
      </>
    );
  }
  if (further.do === "add" || (further.do === "edit" && id)) {
    return <EditDrill key={`${id} ${further.do}`} catalogue={catalogue} id={id} adding={further.do === "add"} further={further} />;
  }
  if (!id) return <DrillList catalogue={catalogue} further={further} />;
  const drill = catalogue.drills.find((one) => one.id === id);
  if (drill) return <OneDrill key={id} catalogue={catalogue} drill={drill} further={further} />;
  return (
    <>
      <Head title={say("none.title")} />
      <Empty title={say("none.what", { id })}>
        <p>
          <a href={hashOf("drills")}>{say("back")}</a>
        </p>
      </Empty>
    </>
  );
}
