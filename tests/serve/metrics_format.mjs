// The Prometheus text format 0.0.4, read strictly. Gives every sample as {name, labels, value}, or throws where the text
// is not as the format has it.
const kName = "[a-zA-Z_:][a-zA-Z0-9_:]*";
const kSample = new RegExp(`^(${kName})(?:\\{([^}]*)\\})? (\\S+)$`);
const kLabel = /^([a-zA-Z_][a-zA-Z0-9_]*)="((?:[^"\\\n]|\\\\|\\"|\\n)*)"(?:,|$)/;
const kSuffixes = { histogram: ["_bucket", "_sum", "_count"], summary: ["", "_sum", "_count"], counter: [""], gauge: [""], untyped: [""] };

function labelsOf(text, line) {
  const labels = {};
  for (let rest = text ?? ""; rest !== "";) {
    const found = kLabel.exec(rest);
    if (!found || found[1] in labels) throw new Error(`labels: ${line}`);
    labels[found[1]] = found[2].replace(/\\(.)/g, (_, letter) => (letter === "n" ? "\n" : letter));
    rest = rest.slice(found[0].length);
  }
  return labels;
}

function valueOf(text, line) {
  if (["+Inf", "-Inf", "NaN"].includes(text)) return Number(text.replace("Inf", "Infinity"));
  if (!/^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/.test(text)) throw new Error(`value: ${line}`);
  return Number(text);
}

export function readMetrics(text) {
  if (!text.endsWith("\n") || text.includes("\r")) throw new Error("lines end in LF, the last one too");
  const types = new Map();
  const helped = new Set();
  const samples = [];
  const seen = new Set();
  const finished = new Set();
  let family;
  for (const line of text.slice(0, -1).split("\n")) {
    const about = new RegExp(`^# (HELP|TYPE) (${kName}) (.+)$`).exec(line);
    if (about) {
      const [, word, name, rest] = about;
      if (word === "HELP" && helped.has(name)) throw new Error(`HELP twice: ${name}`);
      if (word === "HELP") helped.add(name);
      if (word === "TYPE") {
        if (types.has(name) || !(rest in kSuffixes)) throw new Error(`TYPE twice, or none: ${line}`);
        types.set(name, rest);
      }
      if (family !== name) {
        if (family) finished.add(family);
        if (finished.has(name)) throw new Error(`${name} stands in two places`);
        family = name;
      }
      continue;
    }
    const found = kSample.exec(line);
    if (!found) throw new Error(`no sample: ${line}`);
    const [, name, labels, value] = found;
    if (!kSuffixes[types.get(family)]?.some((suffix) => name === family + suffix)) throw new Error(`${name} under ${family}`);
    const one = { family, name, labels: labelsOf(labels, line), value: valueOf(value, line) };
    const key = `${name} ${JSON.stringify(Object.entries(one.labels).sort())}`;
    if (seen.has(key)) throw new Error(`twice: ${line}`);
    seen.add(key);
    samples.push(one);
  }
  for (const name of types.keys()) if (!helped.has(name)) throw new Error(`no HELP: ${name}`);
  for (const [name, type] of types) if (type === "histogram") checkHistogram(name, samples);
  return samples;
}

// Buckets rise, the last is +Inf and is the count.
function checkHistogram(name, samples) {
  const groups = new Map();
  for (const one of samples.filter(({ family }) => family === name)) {
    const { le, ...rest } = one.labels;
    const key = JSON.stringify(rest);
    const group = groups.get(key) ?? groups.set(key, { buckets: [] }).get(key);
    if (one.name.endsWith("_bucket")) group.buckets.push([valueOf(le, name), one.value]);
    else group[one.name.slice(name.length)] = one.value;
  }
  for (const [key, { buckets, _sum, _count }] of groups) {
    const rising = buckets.every(([le, count], index) => index === 0 || (le > buckets[index - 1][0] && count >= buckets[index - 1][1]));
    if (!rising || buckets.at(-1)?.[0] !== Infinity || buckets.at(-1)[1] !== _count || !(_sum >= 0)) throw new Error(`${name} of ${key} is no histogram`);
  }
}
