// A link by which somebody chooses their password, and a message to send it in. Whoever has it comes in as them: it goes to
// that person and nobody else, and not into anything that others read.
import type { Role } from "../../shared/api.ts";
import { activationLink } from "../shell/activate.tsx";
import { Qr } from "../shell/qr.tsx";
import { ToCopy } from "../shell/to_copy.tsx";
import { say } from "./words.ts";

export function LinkToSend({ account, link }: { account: { name: string; sign_in: string; role: Role }; link: string }) {
  const whole = activationLink(link);
  const then = say(account.role === "coach" || account.role === "recorder" ? "link.then_phone" : "link.then_second");
  const letter = say("link.letter", { name: account.name, sign_in: account.sign_in, link: whole, then });
  const mail = `mailto:?subject=${encodeURIComponent(say("link.subject"))}&body=${encodeURIComponent(letter)}`;
  return (
    <>
      <p>{say("link.what")}</p>
      <div class="beside-picture">
        <div>
          <ToCopy label={say("link.link")} text={whole} rows={2} />
          <ToCopy label={say("link.message")} text={letter} rows={9} />
          <p>
            <a href={mail}>{say("link.mail")}</a>
          </p>
        </div>
        <figure>
          <Qr text={whole} label={say("link.picture")} />
          <figcaption class="soft">{say("link.picture_what")}</figcaption>
        </figure>
      </div>
    </>
  );
}
