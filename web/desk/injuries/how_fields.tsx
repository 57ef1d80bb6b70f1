// What is known of how it happened, by the consensus' fields in plain words; each may stay unknown.
import { Choice } from "../people/choice.tsx";
import { keysOf, type TermField, type Terms, termWords } from "./terms.ts";
import { say } from "./words.ts";

const kAsked = ["setting", "onset", "contact", "activity", "recurrence", "tissue"] as const satisfies readonly TermField[];

export function HowFields({ terms, change }: { terms: Terms; change: (terms: Terms) => void }) {
  return (
    <div class="how">
      {kAsked.map((field) => (
        <Choice
          key={field}
          label={say(`ask.${field}`)}
          {...(field === "tissue" ? { hint: say("ask.tissue_hint") } : {})}
          value={terms[field] ?? ""}
          options={[["", say("not_known")], ...keysOf(field).map((key): [string, string] => [key, termWords(field, key)])]}
          onChange={(key) => {
            const { [field]: _, ...others } = terms;
            change(key === "" ? others : { ...others, [field]: key });
          }}
        />
      ))}
    </div>
  );
}
