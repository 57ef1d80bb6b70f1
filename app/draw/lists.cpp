#include "app/draw/lists.h"

#include <algorithm>
#include <numeric>

namespace lanework::draw {
namespace {

constexpr double kIndent = 9;
constexpr double kWhiteBetween = 1;
constexpr double kSlack = 0.01;  // for sums taken in another order

constexpr int kNoNumberOfColumns = 1'000'000;

// Columns needed when none is higher than the height; kNoNumberOfColumns when an entry alone is.
int columns_needed(const std::vector<double>& heights, double height) {
  int columns = 1;
  double filled = 0;
  for (const double entry : heights) {
    if (entry > height) return kNoNumberOfColumns;
    if (filled > 0 && filled + entry > height) {
      ++columns;
      filled = 0;
    }
    filled += entry;
  }
  return columns;
}

// The least height at which the entries fit into the columns: the sum of some entries that follow each other.
double least_height(const std::vector<double>& heights, int columns) {
  double least = std::accumulate(heights.begin(), heights.end(), 0.0);
  for (std::size_t from = 0; from < heights.size(); ++from) {
    double height = 0;
    for (std::size_t at = from; at < heights.size(); ++at) {
      height += heights[at];
      if (height < least && columns_needed(heights, height + kSlack) <= columns) least = height;
    }
  }
  return least;
}

// The first count entries.
double flow_entries(const std::vector<ListEntry>& entries, int count, Point at, double width,
                    const ListSetting& setting, const Pen& pen) {
  const double column_width = (width - (setting.columns - 1) * setting.column_gap) / setting.columns;
  const Setting set{setting.style, setting.lines_each, Ink::kInk, Align::kLeft};
  const Pen ruler(pen.measure(), nullptr);
  std::vector<double> heights;
  for (int entry = 0; entry < count; ++entry) {
    const ListEntry& words = entries[static_cast<std::size_t>(entry)];
    heights.push_back(ruler.text({}, column_width - kIndent, set, words.text, words.lead) + kWhiteBetween);
  }
  const double most = least_height(heights, setting.columns);
  const double line = pen.line_height(setting.style);
  double x = at.x;
  double filled = 0;
  for (std::size_t entry = 0; entry < heights.size(); ++entry) {
    if (filled > 0 && filled + heights[entry] > most + kSlack) {
      x += column_width + setting.column_gap;
      filled = 0;
    }
    pen.disc({x + 3, at.y + filled + line / 2}, 1.5, Ink::kInk);
    pen.text({x + kIndent, at.y + filled}, column_width - kIndent, set, entries[entry].text, entries[entry].lead);
    filled += heights[entry];
  }
  return most;
}

}  // namespace

ListRoom flow_list(const std::vector<ListEntry>& entries, Point at, double width, const ListSetting& setting,
                   const Pen& pen) {
  const Pen ruler(pen.measure(), nullptr);
  int shown = static_cast<int>(entries.size());
  while (shown > 0 && flow_entries(entries, shown, at, width, setting, ruler) > setting.most_height) --shown;
  return {flow_entries(entries, shown, at, width, setting, pen), shown};
}

ListRoom flow_list(const std::vector<std::string>& entries, Point at, double width, const ListSetting& setting,
                   const Pen& pen) {
  std::vector<ListEntry> without_leads;
  for (const std::string& entry : entries) without_leads.push_back({entry, ""});
  return flow_list(without_leads, at, width, setting, pen);
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
