// Where a drill's numbers and its technique come from.
import { kVouched, type CatalogueDocument, type DrillDocument, type SourceRow } from "./drill_document.ts";
import { say, wordFor } from "./words.ts";

const kNotes = { "common-practice": true, "own-judgement": true, "from-memory": true }; // no titles, so in our own words

export function SourcesOf({ drill, catalogue }: { drill: DrillDocument; catalogue: CatalogueDocument }) {
  const rows = new Map(catalogue.sources.source.map((source) => [source.key, source]));
  const vouched = kVouched.filter((one) => (drill.sources[one] ?? []).length > 0);
  return (
    <section class="sheet">
      <h2>{say("part.sources")}</h2>
      <dl class="sources">
        {vouched.map((one) => (
          <div key={one}>
            <dt>{wordFor("vouched", one)}</dt>
            {(drill.sources[one] ?? []).map((key) => (
              <dd key={key}>
                <Source key={key} name={key} row={rows.get(key)} />
              </dd>
            ))}
          </div>
        ))}
      </dl>
    </section>
  );
}

function Source({ name, row }: { name: string; row: SourceRow | undefined }) {
  if (!row) return <>{name}</>;
  const { author, year, doi, note, unverified } = row;
  return (
    <>
      {author ? `${author}${year ? ` (${year})` : ""}. ` : ""}
      {name in kNotes ? wordFor("source_note", name) : <span lang="en">{note}</span>}
      {doi ? (
        <>
          {" "}
          <a href={`https://doi.org/${encodeURI(doi)}`} target="_blank" rel="noreferrer" lang="en">
            doi:{doi}
          </a>
        </>
      ) : null}
      {unverified ? <em> {say("sources.unverified")}</em> : null}
    </>
  );
}
