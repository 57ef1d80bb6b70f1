// A link or a key as a picture for a phone's camera, drawn dark on light as readers want it, with the four modules of margin
// that the standard asks for (ISO/IEC 18004). It says no more than the text beside it, and grants nothing by itself.
import qrcode from "qrcode-generator";
import { useMemo } from "preact/hooks";

const kMargin = 4; // modules
const kModulePixels = 5; // a phone reads it at arm's length from the screen

// One stroke a row of dark modules.
function pathOf(code: ReturnType<typeof qrcode>): string {
  const count = code.getModuleCount();
  let path = "";
  for (let row = 0; row < count; row++) {
    for (let from = 0; from < count; from++) {
      if (!code.isDark(row, from)) continue;
      let to = from;
      while (to < count && code.isDark(row, to)) to++;
      path += `M${from + kMargin} ${row + kMargin}h${to - from}v1h-${to - from}z`;
      from = to;
    }
  }
  return path;
}

export function Qr({ text, label }: { text: string; label: string }) {
  const { path, size } = useMemo(() => {
    const code = qrcode(0, "M"); // the smallest that holds it, with a seventh of it to spare
    code.addData(text, "Byte");
    code.make();
    return { path: pathOf(code), size: code.getModuleCount() + 2 * kMargin };
  }, [text]);
  return (
    <svg class="qr" viewBox={`0 0 ${size} ${size}`} width={size * kModulePixels} height={size * kModulePixels} role="img" aria-label={label} shape-rendering="crispEdges">
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}
