// The look of every chart: inks from the page's own tokens, sizes in pixels of the screen.

export const kInk = "var(--ink)";
export const kSoft = "var(--soft)";
export const kChalk = "var(--chalk)";
export const kAccent = "var(--accent)"; // for 'act on this now', nothing else
export const kPaper = "var(--paper)";

export const kTextSize = 13;
export const kLineHeight = 17;
export const kNarrow = 560; // below this width labels stand above their row, not beside it

export const kDashed = "5 4";
export const kBandOpacity = 0.55;
