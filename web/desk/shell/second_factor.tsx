// Sets up a second factor: the key for an authenticator, a code that shows it arrived, and ten codes for a lost phone.
import { useEffect, useState } from "preact/hooks";
import type { Refusal, Said } from "../api/answer.ts";
import { askOnce } from "../api/ask.ts";
import { Refused } from "../api/asked.tsx";
import { CodeForm } from "./code_form.tsx";
import { Qr } from "./qr.tsx";
import { say } from "./words.ts";

// 'ABCD EFGH …': as it is typed by hand without losing the place.
const inFours = (secret: string): string => secret.replace(/(.{4})(?=.)/g, "$1 ");

export function SecondFactor({ titled, done }: { titled: string; done: () => void }) {
  const [begun, setBegun] = useState<Said<"second-factor-begin"> | undefined>();
  const [refused, setRefused] = useState<Refusal | undefined>();
  const [codes, setCodes] = useState<string[]>([]);
  const begin = async () => {
    const answer = await askOnce("second-factor-begin", {});
    if (answer.ok) setBegun(answer.said);
    setRefused(answer.ok ? undefined : answer);
  };
  useEffect(() => void begin(), []);
  const keep = async (code: string): Promise<Refusal | undefined> => {
    const answer = await askOnce("second-factor", {}, { secret: begun!.secret, code });
    if (!answer.ok) return answer;
    setCodes(answer.said.recovery_codes);
    return undefined;
  };
  if (codes.length > 0) return <Codes titled={titled} codes={codes} done={done} />;
  return (
    <>
      <h1 id={titled}>{say("second.title")}</h1>
      <p>{say("second.why")}</p>
      {refused ? <Refused refusal={refused} again={() => void begin()} /> : null}
      {begun ? (
        <>
          <p>{say("second.scan")}</p>
          <Qr text={begun.link} label={say("second.picture")} />
          <p>{say("second.first")}</p>
          <p class="secret">{inFours(begun.secret)}</p>
          <p>
            <a href={begun.link}>{say("second.open")}</a>
          </p>
          <CodeForm label={say("second.then")} button={say("second.keep")} send={keep} />
        </>
      ) : null}
    </>
  );
}

function Codes({ titled, codes, done }: { titled: string; codes: string[]; done: () => void }) {
  return (
    <>
      <h1 id={titled}>{say("second.codes_title")}</h1>
      <p>{say("second.codes_what")}</p>
      <ul class="secret">
        {codes.map((code) => (
          <li key={code}>{code}</li>
        ))}
      </ul>
      <p class="row">
        <button type="button" onClick={() => window.print()}>
          {say("second.print")}
        </button>
        <button type="button" class="main" onClick={done}>
          {say("second.kept")}
        </button>
      </p>
    </>
  );
}
