// A drill's figure in motion, as pictures one after the other: what a phone shows while the drill runs. Strokes of ink
// with round ends, in thousandths of stature, from the back to the front. docs/formats/door.md.
#pragma once

#include "core/base/document.h"
#include "core/base/result.h"

namespace lanework::door {

// request: {"drill": the drill's document, "rung": a key, "frames": 1 to 60, "props": its partner and its things too}.
// A figure that is held gives one picture. Faults: of the figure's tables; a drill without a figure.
Result<Node> answer_figure(const Document& request);

}  // namespace lanework::door
