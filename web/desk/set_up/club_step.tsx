// The club's name, its season, and the block that is planned first.
import { change, type Content, contentOf } from "./club_draft.ts";
import { NumberField, TextField } from "./fields.tsx";
import { Rows, rowsOf } from "./rows.tsx";
import { say } from "./words.ts";

export const kClub = "club.toml";

export function ClubStep() {
  const club = contentOf(kClub) ?? {};
  const season = (club.season ?? {}) as Content;
  const block = (club.block ?? {}) as Content;
  return (
    <>
      <p>{say("club.what")}</p>
      <TextField label={say("club.name")} value={club.name} onChange={(name) => change(kClub, { name })} />
      <div class="row top">
        <TextField label={say("club.from")} type="date" value={season.from} onChange={(from) => change(kClub, { season: { ...season, from } })} />
        <TextField label={say("club.to")} type="date" value={season.to} onChange={(to) => change(kClub, { season: { ...season, to } })} />
      </div>
      <div class="row top">
        <TextField label={say("club.first_monday")} type="date" value={block.first_monday} onChange={(first_monday) => change(kClub, { block: { weeks: 6, ...block, first_monday } })} />
        <NumberField label={say("club.weeks")} value={block.weeks} least={3} most={8} onChange={(weeks) => change(kClub, { block: { ...block, weeks } })} />
      </div>
      <h2>{say("holiday.title")}</h2>
      <p>{say("holiday.what")}</p>
      <Rows
        rows={rowsOf(club.holiday)}
        legend={(number) => say("holiday.one", { number })}
        add={say("holiday.add")}
        fresh={{}}
        onChange={(holiday) => change(kClub, { holiday })}
        fields={(one, set) => (
          <>
            <TextField label={say("holiday.name")} value={one.name} onChange={(name) => set({ name })} />
            <TextField label={say("holiday.from")} type="date" value={one.from} onChange={(from) => set({ from })} />
            <TextField label={say("holiday.to")} type="date" value={one.to} onChange={(to) => set({ to })} />
          </>
        )}
      />
    </>
  );
}
