// What each chart of the report can and cannot say: by its id where one kind of chart serves several questions.
import type { ChartData } from "../../charts/data.ts";
import en from "./words/en.json";
import { say } from "./words.ts";

type Limits = keyof typeof en.limits;
const isKnown = (word: string): word is Limits => Object.hasOwn(en.limits, word);

// Of 'intervals' those without words of their own are rates of groups.
export function limitsOf(data: ChartData | undefined): string {
  const { id = "", kind = "" } = data ?? {};
  return say(`limits.${isKnown(id) ? id : isKnown(kind) ? kind : "intervals"}`);
}
