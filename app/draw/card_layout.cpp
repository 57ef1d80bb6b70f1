#include "app/draw/card_layout.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <optional>
#include <utility>

#include "app/draw/card_back.h"
#include "app/draw/card_front.h"
#include "app/draw/drill_cell.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr int kMostDrills = 20;
constexpr int kColumns = 2;
constexpr double kMostSpread = 24;  // white added between rows when there is room
constexpr double kMostAboveForm = 40;
constexpr double kGapAboveGrid = 11;
constexpr double kGapBelowBackHead = 10;
constexpr double kGapOnBack = 9;
constexpr std::array<double, 3> kListHeights = {1e9, 100, 40};  // of the lists on the back; less when crowded
// Handwriting wants 6 mm at least, own judgement. Where texts of drills would be cut otherwise, the later lines of the
// danger signs give way; the first one, when to call for help, only where a card has room for nothing else.
constexpr std::array<PlanSetting, 5> kPlanSettings = {{{21, 3}, {18, 3}, {18, 2}, {18, 1}, {18, 0}}};

// From roomy to tight: what gives way first stands first. White between the rows and the third thing to watch
// for go before the second one, then the size of the figures, then the size of the text. Only the last three cut
// texts or leave some out: the ends of what to watch for and of long cues, then all to watch for and reasons,
// at last all cues but one and what is needed.
constexpr std::array<CellCut, 11> kCuts = {{
    {104, 100, 3, 3, 3, 3, 4, true, true, false, 12},
    {96, 90, 3, 3, 3, 3, 4, true, true, false, 8},
    {86, 80, 3, 3, 3, 3, 4, true, true, false, 6},
    {86, 80, 3, 3, 3, 2, 4, true, true, false, 6},
    {84, 78, 3, 3, 3, 1, 4, true, true, false, 5},
    {80, 70, 3, 3, 3, 1, 4, true, true, false, 4},
    {74, 64, 3, 3, 3, 1, 4, true, true, true, 4},
    {66, 54, 3, 3, 3, 1, 4, true, true, true, 3},
    {66, 54, 2, 3, 1, 1, 1, true, true, true, 3},
    {62, 48, 1, 3, 1, 0, 1, true, false, true, 3},
    {60, 44, 1, 1, 1, 0, 1, false, false, true, 3},
}};
constexpr std::size_t kRoomy = 3;  // up to this one the front is filled before the back

// The rows of drills of one side, all cut alike.
struct Rows {
  std::size_t cut = 0;  // of kCuts
  std::vector<double> heights;
  std::size_t from = 0;  // row of the session
  int lost = 0;          // texts cut or left out
  [[nodiscard]] bool empty() const { return heights.empty(); }
  // Without the white below the last one.
  [[nodiscard]] double height() const {
    return empty() ? 0 : std::accumulate(heights.begin(), heights.end(), -kCuts[cut].gap);
  }
};

struct Plan {
  Rows front;
  Rows back;
  [[nodiscard]] int lost() const { return front.lost + back.lost; }
  // What is tried for with less room to write: nothing lost, then no smaller text. Less is better.
  [[nodiscard]] std::pair<int, bool> worth() const {
    return {lost(), kCuts[front.cut].small_text || kCuts[back.cut].small_text};
  }
};

struct Rooms {
  double front = 0;  // for rows of drills
  double back = 0;
};

// One row of two cells in one cut.
struct Row {
  double height = 0;
  int lost = 0;
};

// All cuts of the cells, with the rows that they give.
using CutRows = std::array<std::vector<Row>, kCuts.size()>;

CutRows cut_rows(const CardMatter& matter, const TimeScale& scale, double width, const TextMeasure& measure) {
  CutRows all;
  for (std::size_t cut = 0; cut < kCuts.size(); ++cut) {
    std::vector<Row>& rows = all[cut];
    for (std::size_t drill = 0; drill < matter.drills.size(); ++drill) {
      Page cell;
      const double height = flow_cell(matter.drills[drill], kCuts[cut], scale, {}, width, Pen(measure, &cell));
      if (drill % kColumns == 0) rows.emplace_back();
      rows.back().height = std::max(rows.back().height, height);
      rows.back().lost +=
          static_cast<int>(cut_texts(cell, measure).size()) + left_out(matter.drills[drill], kCuts[cut]);
    }
  }
  return all;
}

Rows some_rows(const CutRows& all, std::size_t cut, std::size_t from, std::size_t until) {
  Rows rows{cut, {}, from, 0};
  for (std::size_t row = from; row < until; ++row) {
    rows.heights.push_back(all[cut][row].height);
    rows.lost += all[cut][row].lost;
  }
  return rows;
}

// Of the cuts in which these rows fit the one that loses least, and of these the roomiest; empty when none fits.
std::optional<Rows> roomiest(const CutRows& all, std::size_t from, std::size_t until, double room) {
  std::optional<Rows> best;
  for (std::size_t cut = 0; cut < kCuts.size(); ++cut) {
    const Rows rows = some_rows(all, cut, from, until);
    if (rows.height() > room) continue;
    if (!best || rows.lost < best->lost) best = rows;
  }
  return best;
}

// Loses as little as can be, then cuts both sides as roomily as can be, then fills the front.
std::optional<Plan> choose(const CutRows& rows, const Rooms& rooms) {
  const std::size_t all = rows[0].size();
  const auto tightness = [](const Plan& plan) { return std::max({plan.front.cut, plan.back.cut, kRoomy}); };
  std::optional<Plan> best;
  for (std::size_t in_front = all; in_front >= 1; --in_front) {
    const auto front = roomiest(rows, 0, in_front, rooms.front);
    const auto back = roomiest(rows, in_front, all, rooms.back);
    if (!front || !back) continue;
    const Plan plan{*front, *back};
    if (!best || std::pair(plan.lost(), tightness(plan)) < std::pair(best->lost(), tightness(*best))) best = plan;
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
      const double height = flow_cell(matter.drills[drill], kCuts[rows.cut], scale, at, width, pen);
      pen.region("drill " + std::to_string(drill), {at.x, at.y, width, height - kCuts[rows.cut].gap});
    }
    y += rows.heights[row] + more;
  }
}

// What stands where on both sides.
struct Arrangement {
  Plan plan;
  BackLists lists;
  double lists_height = 0;
  PlanSetting setting;
  double emergency_height = 0;
  double spare = 0;  // on the back
};

bool needs_back(const Arrangement& arrangement) {
  return !arrangement.plan.back.empty() || arrangement.lists_height > 0 || arrangement.emergency_height > 0;
}

// Less is lost of the drills before lists are cut short: with smaller lines to write on, if that helps.
std::optional<Arrangement> arrange(const CardMatter& matter, const Box& content, double front_room, BackLists lists,
                                   const TimeScale& scale, const TextMeasure& measure) {
  const Pen ruler(measure, nullptr);
  const double head = draw_back_head(matter, content, ruler) + kGapBelowBackHead;
  const CutRows rows = cut_rows(matter, scale, (content.width - kGutter) / kColumns, measure);
  for (const double most_height : kListHeights) {
    lists.most_height = most_height;
    const double height = draw_back_lists(matter, lists, {}, content.width, ruler);
    std::optional<Arrangement> best;
    for (const PlanSetting& setting : kPlanSettings) {
      const bool fewer_signs = setting.signs < kPlanSettings.front().signs;
      if (best && (setting.signs == 0 || (fewer_signs && best->plan.lost() == 0))) break;
      const double emergency = draw_emergency(matter, setting, {}, content.width, ruler);
      const double room = content.height - head - emergency - height - 2 * kGapOnBack;
      const auto plan = choose(rows, {front_room, room});
      if (!plan || room < 0 || (best && plan->worth() >= best->plan.worth())) continue;
      best = Arrangement{*plan, lists, height, setting, emergency, room - plan->back.height()};
    }
    if (best) return best;
  }
  return std::nullopt;
}

Page draw_back(const CardMatter& matter, const Box& content, const Arrangement& arrangement, const TimeScale& scale,
               const TextMeasure& measure) {
  Page back;
  const Pen pen(measure, &back);
  const Rows& rows = arrangement.plan.back;
  double spare = arrangement.spare;
  double y = content.y + draw_back_head(matter, content, pen) + kGapBelowBackHead;
  if (!rows.empty()) {
    const double spread = std::min(spare, kMostSpread * static_cast<double>(rows.heights.size() - 1));
    draw_rows(matter, rows, scale, {content.x, y, content.width, rows.height() + spread}, pen);
    y += rows.height() + spread + kGapOnBack;
    spare -= spread;
  }
  draw_back_lists(matter, arrangement.lists, {content.x, y}, content.width, pen);
  pen.region("back lists", {content.x, y, content.width, arrangement.lists_height});
  y += arrangement.lists_height + kGapOnBack + std::min(spare, kMostAboveForm);
  draw_emergency(matter, arrangement.setting, {content.x, y}, content.width, pen);
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
