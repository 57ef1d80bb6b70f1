// Which source files clang-tidy can read as one, so that it goes through the headers they share only once: files
// compiled alike whose own names do not meet.
import { linesOf } from "../tracked_files.mjs";

const kMost = 24;

// What stands in the unnamed namespaces of a file: names of types, constants and functions at the left edge.
function ownNames(name) {
  const names = new Set();
  let depth = 0;
  for (const line of linesOf(name)) {
    if (/^namespace \{/.test(line)) depth = 1;
    else if (/^\}\s+\/\/ namespace$/.test(line)) depth = 0;
    if (depth === 0 || /^\s|^\/\/|^namespace|^[}#]/.test(line)) continue;
    const found = /^(?:struct|class|enum class|enum)\s+(\w+)/.exec(line) ?? /^using\s+(?:\w+::)*(\w+)/.exec(line) ??
      /([A-Za-z_]\w*)(?:\[\w*\])?\s*[({=;]/.exec(line.replace(/<[^()]*>/g, ""));
    if (found) names.add(found[1]);
  }
  return names;
}

// commands: [{file, flags}]; gives lists of such, each compiled alike, at most 24 long, in the order of the names.
export function batchesOf(commands) {
  const batches = [];
  for (const command of commands) {
    const room = command.file.split("/").slice(0, 2).join("/");
    const names = ownNames(command.file);
    const fits = batches.find((batch) => batch.room === room && batch.flags === command.flags &&
      batch.files.length < kMost && ![...names].some((name) => batch.names.has(name)));
    if (fits) {
      fits.files.push(command.file);
      names.forEach((name) => fits.names.add(name));
    } else {
      batches.push({ room, flags: command.flags, files: [command.file], names });
    }
  }
  return batches.map(({ flags, files }) => ({ flags, files }));
}
