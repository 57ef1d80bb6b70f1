#include "app/draw/card_layout.h"

#include <algorithm>
#include <array>
#include <optional>

#include "app/draw/card_back.h"
#include "app/draw/card_front.h"
#include "app/draw/drill_cell.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr int kMostDrills = 20;
constexpr int kColumns = 2;
constexpr double kMostSpread = 24;  // white added between rows when there is room
constexpr double kGapAboveGrid = 11;
constexpr double kGapBelowBackHead = 10;
constexpr double kGapOnBack = 9;
constexpr std::array<double, 3> kListHeights = {1e9, 100, 40};  // of the lists on the back; less when crowded

// From roomy to tight. The first three lose nothing of a drill within the catalogue's limits; the last ones
// cut long texts, for crowded evenings.
constexpr std::array<CellCut, 9> kCuts = {{
    {104, 100, 2, 3, 2, 3, 2, true, true, 12},
    {96, 90, 2, 3, 2, 3, 2, true, true, 8},
    {86, 80, 2, 3, 2, 3, 2, true, true, 6},
    {84, 78, 2, 3, 2, 1, 2, true, true, 5},
    {84, 72, 2, 3, 1, 1, 2, true, true, 5},
    {82, 68, 2, 3, 1, 1, 2, false, false, 4},
    {78, 64, 1, 3, 1, 1, 1, true, false, 5},
    {66, 54, 1, 3, 1, 0, 1, false, false, 4},
    {60, 44, 1, 1, 1, 0, 1, false, false, 4},
}};
constexpr std::size_t kLosslessCuts = 3;

// Position of a cut among all; a larger one is tighter.
std::size_t cut_index(const CellCut& cut) {
  std::size_t at = 0;
  while (at + 1 < kCuts.size() && kCuts[at].figure_height > cut.figure_height) ++at;
  return at;
}

// Heights of the rows of two cells.
std::vector<double> row_heights(const CardMatter& matter, const CellCut& cut, const TimeScale& scale, double width,
                                const TextMeasure& measure) {
  const Pen pen(measure, nullptr);
  std::vector<double> rows;
  for (std::size_t drill = 0; drill < matter.drills.size(); ++drill) {
    const double height = flow_cell(matter.drills[drill], cut, scale, {}, width, pen);
    if (drill % kColumns == 0) rows.push_back(0);
    rows.back() = std::max(rows.back(), height);
  }
  return rows;
}

double sum(const std::vector<double>& rows, std::size_t from, std::size_t until) {
  double total = 0;
  for (std::size_t row = from; row < until; ++row) total += rows[row];
  return total;
}

// The rows of drills of one side, all cut alike.
struct Rows {
  CellCut cut{};
  std::vector<double> heights;
  std::size_t from = 0;  // row of the session
  [[nodiscard]] bool empty() const { return heights.empty(); }
  // Without the white below the last one.
  [[nodiscard]] double height() const { return empty() ? 0 : sum(heights, 0, heights.size()) - cut.gap; }
};

struct Plan {
  Rows front;
  Rows back;
};

struct Rooms {
  double front = 0;  // for rows of drills
  double back = 0;
};

// All cuts of the cells, with the heights that the rows then have.
using CutRows = std::array<std::vector<double>, kCuts.size()>;

CutRows cut_rows(const CardMatter& matter, const TimeScale& scale, double width, const TextMeasure& measure) {
  CutRows rows;
  for (std::size_t cut = 0; cut < kCuts.size(); ++cut) {
    rows[cut] = row_heights(matter, kCuts[cut], scale, width, measure);
  }
  return rows;
}

std::size_t rows_that_fit(const std::vector<double>& rows, double room) {
  std::size_t count = 0;
  while (count < rows.size() && sum(rows, 0, count + 1) <= room) ++count;
  return count;
}

// The roomiest cut in which these rows fit; empty when none does.
std::optional<Rows> roomiest(const CutRows& rows, std::size_t from, std::size_t until, double room) {
  for (std::size_t cut = 0; cut < kCuts.size(); ++cut) {
    if (sum(rows[cut], from, until) > room + kCuts[cut].gap) continue;
    const auto begin = rows[cut].begin();
    return Rows{
        kCuts[cut], {begin + static_cast<std::ptrdiff_t>(from), begin + static_cast<std::ptrdiff_t>(until)}, from};
  }
  return std::nullopt;
}

// As many rows in front as fit without losing anything; more only if the back cannot hold the rest. Then each
// side is cut as roomily as it can be.
std::optional<Plan> choose(const CutRows& rows, const Rooms& rooms) {
  const std::size_t all = rows[0].size();
  const std::size_t lossless = rows_that_fit(rows[kLosslessCuts - 1], rooms.front + kCuts[kLosslessCuts - 1].gap);
  std::optional<Plan> best;
  std::size_t best_cuts = 0;
  for (std::size_t in_front = std::max<std::size_t>(lossless, 1); in_front <= all; ++in_front) {
    const auto front = roomiest(rows, 0, in_front, rooms.front);
    if (!front) break;
    const auto back = roomiest(rows, in_front, all, rooms.back);
    if (!back) continue;
    const std::size_t cuts = std::max(cut_index(front->cut), cut_index(back->cut));
    if (!best || cuts < best_cuts) {
      best = Plan{*front, *back};
      best_cuts = cuts;
    }
  }
  return best;
}

void draw_rows(const CardMatter& matter, const Rows& rows, const TimeScale& scale, const Box& box, const Pen& pen) {
  const std::size_t count = rows.heights.size();
  const double width = (box.width - kGutter) / kColumns;
  const double spare = box.height - rows.height();
  const double more = count < 2 ? 0 : std::clamp(spare / static_cast<double>(count - 1), 0.0, kMostSpread);
  double y = box.y;
  for (std::size_t row = 0; row < count; ++row) {
    for (std::size_t column = 0; column < kColumns; ++column) {
      const std::size_t drill = (rows.from + row) * kColumns + column;
      if (drill >= matter.drills.size()) break;
      const Point at{box.x + static_cast<double>(column) * (width + kGutter), y};
      const double height = flow_cell(matter.drills[drill], rows.cut, scale, at, width, pen);
      pen.region("drill " + std::to_string(drill), {at.x, at.y, width, height - rows.cut.gap});
    }
    y += rows.heights[row] + more;
  }
}

// What stands where on both sides.
struct Arrangement {
  Plan plan;
  BackLists lists;
  double lists_height = 0;
  double emergency_height = 0;
};

bool needs_back(const Arrangement& arrangement) {
  return !arrangement.plan.back.empty() || arrangement.lists_height > 0 || arrangement.emergency_height > 0;
}

std::optional<Arrangement> arrange(const CardMatter& matter, const Box& content, double front_room, BackLists lists,
                                   const TimeScale& scale, const TextMeasure& measure) {
  const Pen ruler(measure, nullptr);
  const double head = draw_back_head(matter, content, ruler) + kGapBelowBackHead;
  const double emergency = draw_emergency(matter, {}, content.width, ruler);
  const double room = content.height - head - emergency - 2 * kGapOnBack;
  const CutRows rows = cut_rows(matter, scale, (content.width - kGutter) / kColumns, measure);
  for (const double most_height : kListHeights) {
    lists.most_height = most_height;
    const double height = draw_back_lists(matter, lists, {}, content.width, ruler);
    const auto plan = choose(rows, {front_room, room - height});
    if (plan && height <= room) return Arrangement{*plan, lists, height, emergency};
  }
  return std::nullopt;
}

Page draw_back(const CardMatter& matter, const Box& content, const Arrangement& arrangement, const TimeScale& scale,
               const TextMeasure& measure) {
  Page back;
  const Pen pen(measure, &back);
  const Plan& plan = arrangement.plan;
  double y = content.y + draw_back_head(matter, content, pen) + kGapBelowBackHead;
  if (!plan.back.empty()) {
    draw_rows(matter, plan.back, scale, {content.x, y, content.width, plan.back.height()}, pen);
    y += plan.back.height() + kGapOnBack;
  }
  draw_back_lists(matter, arrangement.lists, {content.x, y}, content.width, pen);
  pen.region("back lists", {content.x, y, content.width, arrangement.lists_height});
  y += arrangement.lists_height + kGapOnBack;
  draw_emergency(matter, {content.x, y}, content.width, pen);
  pen.region("emergency", {content.x, y, content.width, arrangement.emergency_height});
  return back;
}

Fault out_of_range(const std::string& field, const std::string& found, const std::string& expected) {
  return {FaultCode::kOutOfRange, {"", 0, 0, field}, found, expected, ""};
}

Faults faults_of(const CardMatter& matter) {
  Faults faults;
  const auto within = [&](const std::string& field, int value, int least, int most) {
    if (value >= least && value <= most) return;
    faults.push_back(out_of_range(field, std::to_string(value), std::to_string(least) + " to " + std::to_string(most)));
  };
  constexpr int kDaySeconds = 86400;
  within("drills", static_cast<int>(matter.drills.size()), 1, kMostDrills);
  within("start_minute_of_day", matter.start_minute_of_day, 0, 1439);
  within("turnout", matter.turnout, 0, 1000);
  within("slot_seconds", matter.slot_seconds, 60, kDaySeconds);
  within("planned_seconds", matter.planned_seconds, 0, kDaySeconds);
  within("nine_in_ten_seconds", matter.nine_in_ten_seconds, 0, kDaySeconds);
  within("gathering_seconds", matter.gathering_seconds, 0, kDaySeconds);
  const StripMatter& strip = matter.strip;
  within("strip.lane_length_mm", strip.lane_length_mm, 1000, 100000);
  within("strip.cone_spacing_mm", strip.cone_spacing_mm, 100, std::max(strip.lane_length_mm, 100));
  within("strip.lanes", strip.lanes, 1, 12);
  within("strip.lane_gap_mm", strip.lane_gap_mm, 0, 20000);
  within("strip.area_length_mm", strip.area_length_mm, 0, 200000);
  within("strip.area_width_mm", strip.area_width_mm, 0, 200000);
  within("strip.spread_gap_mm", strip.spread_gap_mm, 100, 20000);
  within("strip.pace_mm", strip.pace_mm, 100, 2000);
  for (std::size_t at = 0; at < matter.drills.size(); ++at) {
    const DrillMatter& drill = matter.drills[at];
    const std::string field = "drills." + std::to_string(at + 1);
    within(field + ".starts_second", drill.starts_second, 0, kDaySeconds);
    within(field + ".change_seconds", drill.change_seconds, 0, std::max(drill.starts_second, 0));
    within(field + ".takes_seconds", drill.takes_seconds, 0, kDaySeconds);
    within(field + ".telling_seconds", drill.telling_seconds, 0, std::max(drill.takes_seconds, 0));
  }
  return faults;
}

int longest_drill(const CardMatter& matter) {
  int longest = 1;
  for (const DrillMatter& drill : matter.drills) longest = std::max(longest, drill.takes_seconds);
  return longest;
}

}  // namespace

Sheet sheet_of(Paper paper) { return paper == Paper::kA4 ? Sheet{595.276, 841.89} : Sheet{612, 792}; }

Box content_of(const Sheet& sheet) { return {kMargin, kMargin, sheet.width - 2 * kMargin, sheet.height - 2 * kMargin}; }

Result<std::vector<Page>> lay_out_card(const CardMatter& matter, const Sheet& sheet, const TextMeasure& measure) {
  Faults faults = faults_of(matter);
  if (!faults.empty()) return faults;
  const Box content = content_of(sheet);
  const TimeScale scale{matter.start_minute_of_day, longest_drill(matter)};

  std::vector<Page> pages(1);
  const Pen pen(measure, &pages.front());
  const FrontHead head = draw_front_head(matter, content, pen);
  const FrontFoot foot = measure_front_foot(matter, content, pen);
  const Box grid{content.x, content.y + head.height + kGapAboveGrid, content.width,
                 content.height - head.height - foot.height - 2 * kGapAboveGrid};
  BackLists lists;
  lists.with_changes = !head.all_told;
  lists.stop_always.assign(matter.stop_always.begin() + foot.stop_lines_shown, matter.stop_always.end());
  const std::optional<Arrangement> arrangement = arrange(matter, content, grid.height, lists, scale, measure);
  if (!arrangement) {
    return out_of_range("drills", std::to_string(matter.drills.size()) + " drills with their texts",
                        "what fits on two sides");
  }
  draw_rows(matter, arrangement->plan.front, scale, grid, pen);
  draw_front_foot(matter, content, pen);
  if (needs_back(*arrangement)) pages.push_back(draw_back(matter, content, *arrangement, scale, measure));
  return pages;
}

}  // namespace lanework::draw
