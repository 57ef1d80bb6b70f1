// A rate as wide as it is uncertain: a bar between its limits, the rate a stroke in it, on a scale that begins at 0.
import type { ReleaseRate } from "../../shared/api.ts";

const kHeight = 14;

// The end of the scale: the first of 1, 2, 5, 10, 20, 50 ... that holds all limits.
export function scaleEnd(rates: ReleaseRate[]): number {
  const most = Math.max(...rates.map(({ high }) => high), 1);
  const ten = 10 ** Math.floor(Math.log10(most));
  return [1, 2, 5, 10].map((step) => step * ten).find((end) => end >= most) ?? 10 * ten;
}

export function RateSpan({ rate: { rate, low, high }, end }: { rate: ReleaseRate; end: number }) {
  const percent = (value: number): string => `${(100 * value) / end}%`;
  return (
    <svg class="rate-span" height={kHeight} aria-hidden="true">
      <line class="base" x1="0" x2="100%" y1={kHeight / 2} y2={kHeight / 2} />
      <line class="base" x1="0.5" x2="0.5" y1="0" y2={kHeight} />
      <rect class="limits" x={percent(low)} y="2.5" width={percent(high - low)} height={kHeight - 5} />
      <line class="rate" x1={percent(rate)} x2={percent(rate)} y1="0" y2={kHeight} />
    </svg>
  );
}
