// One plot of a chart, and plots that share their sides set one above the other.
import * as Plot from "@observablehq/plot";
import { kChalk, kInk, kLineHeight, kSoft, kTextSize } from "./ink.ts";
import { textWidth, wrapped } from "./measure.ts";

export interface Sides {
  width: number;
  marginLeft: number;
  marginRight: number;
}

const kNamespace = "http://www.w3.org/2000/svg";

export function svgElement(name: string, attributes: Record<string, string | number>): SVGElement {
  const element = document.createElementNS(kNamespace, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  return element;
}

export function panel(options: Plot.PlotOptions): SVGSVGElement {
  const drawn = Plot.plot({
    className: "chart",
    style: { fontSize: `${kTextSize}px`, background: "none" },
    ...options,
  });
  if (!(drawn instanceof SVGSVGElement)) throw new Error("a panel has neither title nor legend");
  return drawn;
}

export function stacked(width: number, panels: SVGElement[]): SVGSVGElement {
  let height = 0;
  const whole = svgElement("svg", { class: "chart" }) as SVGSVGElement;
  for (const part of panels) {
    part.setAttribute("y", String(height));
    height += Number(part.getAttribute("height"));
    whole.append(part);
  }
  for (const [key, value] of Object.entries({ width, height, viewBox: `0 0 ${width} ${height}` })) {
    whole.setAttribute(key, String(value));
  }
  return whole;
}

const kTickRoom = 26;

// The axis below: ticks, faint lines up from them, and the title under them. A title wider than the frame is broken and
// centred on the whole drawing.
export interface Foot {
  marginBottom: number;
  marks: Plot.Markish[];
}

export function foot(ticks: number[], text: (value: number) => string, title: string, sides: Sides, grid = true): Foot {
  const frame = sides.width - sides.marginLeft - sides.marginRight;
  const fits = textWidth(title) <= frame;
  const lines = title === "" ? [] : wrapped(title, fits ? frame : sides.width - 8, 3);
  return {
    marginBottom: kTickRoom + lines.length * kLineHeight + (lines.length > 0 ? 6 : 0),
    marks: [
      grid ? Plot.gridX(ticks, { stroke: kChalk, strokeOpacity: 0.5 }) : null,
      Plot.axisX(ticks, { tickFormat: text, tickSize: 4, color: kInk, label: null }),
      Plot.text([lines.join("\n")], {
        frameAnchor: "bottom",
        lineAnchor: "top",
        lineHeight: kLineHeight / kTextSize,
        dx: fits ? 0 : sides.width / 2 - (sides.marginLeft + frame / 2),
        dy: kTickRoom + 4,
        fill: kSoft,
      }),
    ],
  };
}

// The small bold words above a panel that say what its height means.
export function headline(text: string, sides: Sides): Plot.Markish {
  return Plot.text([wrapped(text, sides.width - 8, 1)[0]], {
    frameAnchor: "top-left",
    lineAnchor: "bottom",
    dx: -sides.marginLeft,
    dy: -16,
    fontWeight: "bold",
  });
}

export function side(ticks: number[], text: (value: number) => string, grid = true): Plot.Markish[] {
  return [
    grid ? Plot.gridY(ticks, { stroke: kChalk, strokeOpacity: 0.5 }) : null,
    Plot.axisY(ticks, { tickFormat: text, tickSize: 0, color: kInk, label: null }),
  ];
}
