// People and privacy: who may come in, on which phones, what is known of one child, who read what, and what was kept aside.
import type { ComponentType } from "preact";
import { Head } from "../shell/parts.tsx";
import { hashOf } from "../shell/route.ts";
import type { ScreenProps } from "../shell/screens.ts";
import { AccountsPart } from "./accounts.tsx";
import { ChildPart } from "./child.tsx";
import { ConsentsPart } from "./consents_part.tsx";
import { FindChild } from "./find_child.tsx";
import { HousePart } from "./house_part.tsx";
import { KeptAsidePart } from "./kept_aside.tsx";
import { PhonesPart } from "./phones.tsx";
import { ReadsPart } from "./reads.tsx";
import { say } from "./words.ts";

export type Further = Record<string, string>;
export interface PartProps {
  further: Further;
}

const kParts = { accounts: AccountsPart, phones: PhonesPart, child: FindChild, consents: ConsentsPart, reads: ReadsPart, kept: KeptAsidePart, house: HousePart } satisfies Record<string, ComponentType<PartProps>>;
type Part = keyof typeof kParts;
const kNames = Object.keys(kParts) as Part[];

const isPart = (word: string | undefined): word is Part => word !== undefined && Object.hasOwn(kParts, word);

export function Screen({ route }: ScreenProps<"people">) {
  const { part } = route.further;
  const here: Part = route.player ? "child" : isPart(part) ? part : "accounts";
  const Shown = kParts[here];
  return (
    <>
      <Head title={say("title")} />
      <nav class="parts" aria-label={say("parts")}>
        {kNames.map((name) => (
          <a key={name} href={hashOf("people", undefined, name === "accounts" ? {} : { part: name })} aria-current={name === here ? "true" : undefined}>
            {say(`part.${name}`)}
          </a>
        ))}
      </nav>
      {route.player ? <ChildPart key={route.player} player={route.player} /> : <Shown further={route.further} />}
    </>
  );
}
