// A phone is paired: a link that the phone opens within ten minutes, and the six digits that it shows, typed here. Both
// screens side by side are what makes sure that it is the right phone.
import { useEffect, useState } from "preact/hooks";
import type { Refusal, Said } from "../api/answer.ts";
import { ask } from "../api/ask.ts";
import { Refused } from "../api/asked.tsx";
import { announce } from "../shell/announce.ts";
import { CodeForm } from "../shell/code_form.tsx";
import { Qr } from "../shell/qr.tsx";
import { ToCopy } from "../shell/to_copy.tsx";
import { moment } from "../../shared/words/words.ts";
import { say } from "./words.ts";

type State = Said<"pairings">["pairings"][number]["state"];
const kLookMilliseconds = 2500;

export function PairPhone({ account, name }: { account: string; name: string }) {
  const [opened, setOpened] = useState<Said<"open-pairing"> | undefined>();
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [paired, setPaired] = useState(false);
  const open = async () => {
    const answer = await ask("open-pairing", {}, { account });
    if (answer.ok) setOpened(answer.said);
    setRefused(answer.ok ? undefined : answer);
  };
  useEffect(() => void open(), [account]);
  const state = usePairingState(opened?.pairing, !paired);
  const confirm = async (code: string): Promise<Refusal | undefined> => {
    const answer = await ask("confirm-pairing", { pairing: opened!.pairing }, { code: code.replace(/\D/g, "") });
    if (!answer.ok) return answer;
    setPaired(true);
    announce(say("pair.done", { name }));
    return undefined;
  };
  if (refused) return <Refused refusal={refused} again={() => void open()} />;
  if (paired) return <p>{say("pair.done", { name })}</p>;
  if (!opened) return <p class="waiting table-tall" role="status">…</p>;
  const link = `${location.origin}/#pair=${opened.link}`;
  return (
    <>
      <div class="beside-picture">
        <div>
          <ToCopy label={say("pair.link", { until: moment(opened.until) })} text={link} rows={2} />
          <p role="status">{say(`pair.state.${state}`)}</p>
          {state === "claimed" ? <CodeForm label={say("pair.code")} button={say("pair.confirm")} send={confirm} /> : null}
          {state === "suspended" || state === "too-late" ? (
            <button type="button" onClick={() => void open()}>
              {say("pair.another")}
            </button>
          ) : null}
        </div>
        <figure>
          <Qr text={link} label={say("pair.picture")} />
          <figcaption class="soft">{say("pair.picture_what")}</figcaption>
        </figure>
      </div>
    </>
  );
}

// How far the link has come, looked at again and again while it is of interest.
function usePairingState(pairing: string | undefined, wanted: boolean): State {
  const [state, setState] = useState<State>("open");
  useEffect(() => {
    setState("open");
    if (pairing === undefined || !wanted) return undefined;
    const look = async () => {
      const answer = await ask("pairings", {});
      const found = answer.ok ? answer.said.pairings.find((one) => one.pairing === pairing) : undefined;
      if (found) setState(found.state);
    };
    const looks = setInterval(() => void look(), kLookMilliseconds);
    return () => clearInterval(looks);
  }, [pairing, wanted]);
  return state;
}
