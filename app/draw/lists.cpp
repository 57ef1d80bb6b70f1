#include "app/draw/lists.h"

#include <algorithm>
#include <numeric>

namespace lanework::draw {
namespace {

constexpr double kIndent = 9;

// How many of the first count entries the first of two columns takes, so that the longer one is shortest.
int first_column(const std::vector<double>& heights, int count) {
  const double all = std::accumulate(heights.begin(), heights.begin() + count, 0.0);
  int best = count;
  double left = 0;
  double shortest = all;
  for (int taken = 1; taken <= count; ++taken) {
    left += heights[static_cast<std::size_t>(taken - 1)];
    if (std::max(left, all - left) < shortest) {
      shortest = std::max(left, all - left);
      best = taken;
    }
  }
  return best;
}

// The first count entries.
double flow_entries(const std::vector<std::string>& entries, int count, Point at, double width,
                    const ListSetting& setting, const Pen& pen) {
  const double column_width = (width - (setting.columns - 1) * setting.column_gap) / setting.columns;
  const Setting set{setting.style, setting.lines_each, Ink::kInk, Align::kLeft};
  const Pen ruler(pen.measure(), nullptr);
  std::vector<double> heights;
  for (const std::string& entry : entries) heights.push_back(ruler.text({}, column_width - kIndent, set, entry) + 1);
  const int split = setting.columns > 1 ? first_column(heights, count) : count;
  const double line = pen.line_height(setting.style);
  double y = at.y;
  double bottom = at.y;
  for (int entry = 0; entry < count; ++entry) {
    if (entry == split) y = at.y;
    const double x = entry < split ? at.x : at.x + column_width + setting.column_gap;
    pen.disc({x + 3, y + line / 2}, 1.5, Ink::kInk);
    pen.text({x + kIndent, y}, column_width - kIndent, set, entries[static_cast<std::size_t>(entry)]);
    y += heights[static_cast<std::size_t>(entry)];
    bottom = std::max(bottom, y);
  }
  return bottom - at.y;
}

}  // namespace

ListRoom flow_list(const std::vector<std::string>& entries, Point at, double width, const ListSetting& setting,
                   const Pen& pen) {
  const Pen ruler(pen.measure(), nullptr);
  int shown = static_cast<int>(entries.size());
  while (shown > 0 && flow_entries(entries, shown, at, width, setting, ruler) > setting.most_height) --shown;
  return {flow_entries(entries, shown, at, width, setting, pen), shown};
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
