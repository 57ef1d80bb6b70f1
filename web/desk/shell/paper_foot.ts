// What stands at the foot of each printed page: of what it is and until when, and the page's number. A browser that knows
// no boxes in a page's margin prints what it prints itself.

// A text inside a style: everything but letters and digits by its number.
const quoted = (text: string): string => `"${[...text].map((one) => (/[\p{L}\p{N} ]/u.test(one) ? one : `\\${one.codePointAt(0)?.toString(16)} `)).join("")}"`;

// page: 'Page {page} of {pages}'. Gives what takes it away again.
export function paperFoot(left: string, page: string): () => void {
  const sheet = new CSSStyleSheet();
  const numbered = page.split(/\{(page|pages)\}/).map((part, at) => (at % 2 === 1 ? `counter(${part})` : quoted(part)));
  sheet.replaceSync(`@page {
    @bottom-left { content: ${quoted(left)}; width: 80%; }
    @bottom-right { content: ${numbered.join(" ")}; white-space: nowrap; }
  }`);
  document.adoptedStyleSheets.push(sheet);
  return () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet);
  };
}
