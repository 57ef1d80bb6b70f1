// One chart of any kind.
import { curve } from "./curve.ts";
import type { ChartData } from "./data.ts";
import { funnel } from "./funnel.ts";
import { intervals } from "./intervals.ts";
import { shares } from "./shares.ts";
import { speak, type Spoken } from "./spoken.ts";
import { watch } from "./watch.ts";
import { weeks } from "./weeks.ts";

export function draw(data: ChartData, width: number, language: Spoken): SVGElement {
  speak(language);
  switch (data.kind) {
    case "intervals":
      return intervals(data, width);
    case "funnel":
      return funnel(data, width);
    case "watch":
      return watch(data, width);
    case "curve":
      return curve(data, width);
    case "shares":
      return shares(data, width);
    case "weeks":
      return weeks(data, width);
  }
}
