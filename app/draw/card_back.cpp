#include "app/draw/card_back.h"

#include <algorithm>
#include <array>

#include "app/draw/card_words.h"
#include "app/draw/lists.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr double kWritingLine = 21;
constexpr int kMostEntries = 24;

// What rescuers ask for, and who does what (common practice of emergency action plans).
constexpr std::array<const char*, 10> kFields = {
    "Emergency number",      "Who stays with the player", "Address",           "Who calls",
    "Gate, way in",          "Who meets the ambulance",   "Phone with signal", "Who minds the others",
    "Nearest defibrillator", "First-aid bag is kept"};

std::vector<std::string> shortened(const std::vector<std::string>& entries) {
  std::vector<std::string> some = entries;
  if (some.size() > kMostEntries) some.resize(kMostEntries);
  return some;
}

}  // namespace

double draw_back_head(const CardMatter& matter, const Box& content, const Pen& pen) {
  const double half = (content.width - kGutter) / 2;
  const double height =
      pen.text({content.x, content.y}, half, {TextStyle::kName, 1, Ink::kInk, Align::kLeft}, matter.squad);
  pen.text({content.x + half + kGutter, content.y}, half, {TextStyle::kBody, 1, Ink::kSoft, Align::kRight},
           matter.session_id, matter.date_words);
  return height + 4;
}

double draw_back_lists(const CardMatter& matter, Point at, double width, bool with_changes, const Pen& pen) {
  const bool changes = with_changes && !(matter.changes.empty() && matter.not_covered.empty());
  const double column = changes && !matter.stop_drill.empty() ? (width - kGutter) / 2 : width;
  double left = at.y;
  double right = at.y;
  const auto section = [&](const char* heading, const std::vector<std::string>& entries, bool act_now, double x,
                           double& y) {
    if (entries.empty()) return;
    y += flow_heading(heading, {x, y}, column, act_now, pen);
    ListSetting setting;
    setting.style = TextStyle::kNote;
    setting.columns = column < width || entries.size() < 2 ? 1 : 2;
    y += flow_list(shortened(entries), {x, y}, column, setting, pen).height + 5;
  };
  section(words::kStopDrill, matter.stop_drill, true, at.x, left);
  if (changes) {
    const double x = at.x + width - column;
    section(words::kNotCovered, matter.not_covered, false, x, right);
    section(words::kChanged, matter.changes, false, x, right);
  }
  return std::max(left, right) - at.y;
}

double draw_emergency(const CardMatter& matter, Point at, double width, const Pen& pen) {
  if (!matter.emergency_plan) return 0;
  double y = at.y + flow_heading(words::kEmergency, at, width, true, pen);
  y += pen.text({at.x, y}, width, {TextStyle::kNote, 1, Ink::kSoft, Align::kLeft}, words::kFillIn);
  const double column = (width - kGutter) / 2;
  for (std::size_t field = 0; field < kFields.size(); ++field) {
    const double x = at.x + static_cast<double>(field % 2) * (column + kGutter);
    const double base = y + kWritingLine - 3;
    const double label = pen.width_of(kFields[field], TextStyle::kBody) + 2;
    pen.text({x, base - pen.line_height(TextStyle::kBody) + 2}, label, {TextStyle::kBody, 1, Ink::kInk, Align::kLeft},
             kFields[field]);
    pen.line({x + label + 4, base}, {x + column, base}, 0.7, Ink::kSoft);
    if (field % 2 == 1) y += kWritingLine;
  }
  return y - at.y;
}

}  // namespace lanework::draw
