#include "app/draw/lists.h"

#include <algorithm>

namespace lanework::draw {
namespace {

constexpr double kIndent = 9;

}  // namespace

ListRoom flow_list(const std::vector<std::string>& entries, Point at, double width, const ListSetting& setting,
                   const Pen& pen) {
  ListRoom room;
  const double column_width = (width - (setting.columns - 1) * setting.column_gap) / setting.columns;
  const int count = static_cast<int>(entries.size());
  const int a_column = (count + setting.columns - 1) / std::max(setting.columns, 1);
  const double line = pen.line_height(setting.style);
  double y = at.y;
  for (int entry = 0; entry < count; ++entry) {
    if (entry % std::max(a_column, 1) == 0) y = at.y;
    const double x = at.x + (entry / std::max(a_column, 1)) * (column_width + setting.column_gap);
    const Setting set{setting.style, setting.lines_each, Ink::kInk, Align::kLeft};
    const std::string& words = entries[static_cast<std::size_t>(entry)];
    const double height = Pen(pen.measure(), nullptr).text({}, column_width - kIndent, set, words);
    if (y + height - at.y > setting.most_height) continue;
    pen.disc({x + 3, y + line / 2}, 1.5, Ink::kInk);
    y += pen.text({x + kIndent, y}, column_width - kIndent, set, words) + 1;
    room.height = std::max(room.height, y - at.y);
    ++room.shown;
  }
  return room;
}

double flow_heading(const std::string& words, Point at, double width, bool act_now, const Pen& pen) {
  const double line = pen.line_height(TextStyle::kHeading);
  double x = at.x;
  if (act_now) {
    const double middle = at.y + line / 2;
    pen.shape({{x, middle + 4.5}, {x + 5.2, middle - 4.5}, {x + 10.4, middle + 4.5}}, Ink::kAccent);
    pen.line({x + 5.2, middle - 1.2}, {x + 5.2, middle + 1.2}, 1.2, Ink::kPaper);
    pen.disc({x + 5.2, middle + 3.1}, 0.7, Ink::kPaper);
    x += 15;
  }
  return pen.text({x, at.y}, width - (x - at.x), {TextStyle::kHeading, 1, Ink::kInk, Align::kLeft}, words) + 2;
}

}  // namespace lanework::draw
