#include "app/draw/drill_cell.h"

#include <algorithm>

#include "app/draw/card_words.h"
#include "app/draw/ribbon.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr int kMostCues = 3;  // of a drill, as card.h promises
constexpr double kIndent = 9;
constexpr double kRule = 2.6;
constexpr int kMarkLines = 3;

// The rule above a cell: chalk all along, ink as long as the drill lasts.
void draw_rule(const DrillMatter& drill, const TimeScale& scale, Point at, double width, const Pen& pen) {
  const double share = static_cast<double>(drill.takes_seconds) / std::max(scale.longest_seconds, 1);
  pen.line(at, {at.x + width, at.y}, kChalkLine, Ink::kChalk);
  pen.rectangle({at.x, at.y - kRule / 2, width * std::clamp(share, 0.0, 1.0), kRule}, Ink::kInk);
}

// Time, duration and formation above the figure; returns the bottom.
double flow_left(const DrillMatter& drill, const CellCut& cut, const TimeScale& scale, Point at, const Pen& pen) {
  const std::string time = words::clock_time(scale.start_minute_of_day, drill.starts_second);
  const double time_width = pen.width_of(time, TextStyle::kTime) + 1;
  const double height = pen.text(at, time_width, {TextStyle::kTime, 1, Ink::kInk, Align::kLeft}, time);
  pen.text({at.x + time_width + 4, at.y}, cut.figure_width - time_width - 4,
           {TextStyle::kNote, 1, Ink::kSoft, Align::kLeft}, words::short_duration(drill.takes_seconds));
  const Box box{at.x, at.y + height + 2, cut.figure_width, cut.figure_height};
  if (drill.figure != nullptr) pen.put(Picture{box, drill.figure});
  return box.bottom();
}

double flow_cues(const DrillMatter& drill, const CellCut& cut, Point at, double width, const Pen& pen) {
  double y = at.y;
  const TextStyle style = cut.small_text ? TextStyle::kNote : TextStyle::kBody;
  const double line = pen.line_height(style);
  const std::size_t cues = std::min<std::size_t>(drill.cues.size(), static_cast<std::size_t>(cut.most_cues));
  for (std::size_t cue = 0; cue < cues; ++cue) {
    if (drill.cues[cue].empty()) continue;
    pen.disc({at.x + 3, y + line / 2}, 1.5, Ink::kInk);
    y += pen.text({at.x + kIndent, y}, width - kIndent, {style, cut.cue_lines, Ink::kInk, Align::kLeft},
                  drill.cues[cue]);
  }
  return y;
}

// How much, then what changes on this rung.
double flow_dose(const DrillMatter& drill, const CellCut& cut, Point at, double width, const Pen& pen) {
  if (cut.small_text) {
    const std::string dose = drill.dose_words + (drill.dose_words.empty() || drill.rung_words.empty() ? "" : ",");
    const Setting both{TextStyle::kBody, cut.name_lines + 1, Ink::kInk, Align::kLeft};
    return at.y + pen.text(at, width, both, drill.rung_words, dose);
  }
  double y = at.y + pen.text(at, width, {TextStyle::kDose, cut.name_lines, Ink::kInk, Align::kLeft}, drill.dose_words);
  y += pen.text({at.x, y}, width, {TextStyle::kBody, cut.name_lines, Ink::kInk, Align::kLeft}, drill.rung_words);
  return y;
}

// An open eye beside what to watch for; what to say then stands in quotation marks.
double flow_watch(const DrillMatter& drill, const CellCut& cut, Point at, double width, const Pen& pen) {
  double y = at.y;
  const double line = pen.line_height(TextStyle::kNote);
  const std::size_t pairs = std::min<std::size_t>(drill.watch.size(), static_cast<std::size_t>(cut.most_watch));
  for (std::size_t pair = 0; pair < pairs; ++pair) {
    const WatchForMatter& watch = drill.watch[pair];
    if (watch.fault.empty()) continue;
    const std::string said = watch.cue.empty() ? "" : ": \u201C" + watch.cue + "\u201D";
    pen.disc({at.x + 3, y + line / 2}, 3, Ink::kSoft, 0.8);
    pen.disc({at.x + 3, y + line / 2}, 1.1, Ink::kSoft);
    y += pen.text({at.x + kIndent, y}, width - kIndent, {TextStyle::kNote, cut.watch_lines, Ink::kSoft, Align::kLeft},
                  watch.fault + said);
  }
  return y;
}

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) {
    if (part.empty()) continue;
    if (!text.empty()) text += ", ";
    text += part;
  }
  return text;
}

// 'new tonight' in a frame, its reason after it.
double flow_mark(const DrillMatter& drill, const CellCut& cut, Point at, double width, const Pen& pen) {
  if (drill.mark.mark.empty()) return at.y;
  const std::string why = cut.reason ? drill.mark.why : "";
  if (cut.small_text) {
    const std::string mark = drill.mark.mark + (why.empty() ? "" : ":");
    return at.y + pen.text(at, width, {TextStyle::kNote, kMarkLines, Ink::kInk, Align::kLeft}, why, mark);
  }
  const double label = std::min(pen.width_of(drill.mark.mark, TextStyle::kTime) + 1, width - 8);
  const double height =
      pen.text({at.x + 4, at.y + 1}, label, {TextStyle::kTime, 1, Ink::kInk, Align::kLeft}, drill.mark.mark);
  pen.rectangle({at.x, at.y, label + 8, height + 2}, Ink::kInk, 0.8);
  double bottom = at.y + height + 4;
  bottom += pen.text({at.x, bottom - 1}, width, {TextStyle::kNote, kMarkLines, Ink::kSoft, Align::kLeft}, why);
  return bottom;
}

}  // namespace

double flow_cell(const DrillMatter& drill, const CellCut& cut, const TimeScale& scale, Point at, double width,
                 const Pen& pen) {
  draw_rule(drill, scale, at, width, pen);
  const double top = at.y + 5;
  const double left_bottom = flow_left(drill, cut, scale, {at.x, top}, pen);
  const double x = at.x + cut.figure_width + 8;
  const double room = width - cut.figure_width - 8;
  constexpr double kSign = 18;
  draw_formation(drill.formation, {at.x + width - kSign, top, kSign, 12}, pen);
  double y = top;
  const TextStyle name = cut.small_text ? TextStyle::kDose : TextStyle::kName;
  y += pen.text({x, y}, room - kSign - 5, {name, cut.name_lines, Ink::kInk, Align::kLeft}, drill.name);
  y = flow_dose(drill, cut, {x, y}, room, pen);
  y = flow_mark(drill, cut, {x, y + 1}, room, pen);
  y = flow_cues(drill, cut, {x, y + 2}, room, pen);
  y = flow_watch(drill, cut, {x, y + 2}, room, pen);
  const std::string needs = cut.needs ? joined(drill.needs) : "";
  y += pen.text({x, y}, room, {TextStyle::kNote, cut.name_lines, Ink::kSoft, Align::kLeft}, needs,
                needs.empty() ? "" : "Needs");
  return std::max(y, left_bottom) - at.y + cut.gap;
}

int left_out(const DrillMatter& drill, const CellCut& cut) {
  const int cues = std::min(static_cast<int>(drill.cues.size()), kMostCues) - cut.most_cues;
  const bool watch = !drill.watch.empty() && !drill.watch.front().fault.empty() && cut.most_watch == 0;
  const bool needs = !joined(drill.needs).empty() && !cut.needs;
  const bool reason = !drill.mark.why.empty() && !cut.reason;
  return std::max(cues, 0) + (watch ? 1 : 0) + (needs ? 1 : 0) + (reason ? 1 : 0);
}

}  // namespace lanework::draw
