#include "app/draw/summary_layout.h"

#include <algorithm>
#include <array>
#include <limits>

#include "app/draw/lists.h"
#include "app/draw/pen.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr std::size_t kMostRows = 1000;
constexpr double kColumnGap = 8;
// Left edges of the columns, in shares of the width.
constexpr double kTargetsAt = 0.195;
constexpr std::array<double, 5> kChangesAt = {0.565, 0.54, 0.515, 0.49, 0.465};  // what makes the rows lowest
constexpr double kGapAt = 0.94;
constexpr double kRowWhite = 1;  // above and below a row's words, together
constexpr double kMostMore = 5;  // added to it where there is room
constexpr double kBelowHead = 7;
constexpr int kMostLines = 6;

// A column's words, within its width.
struct Column {
  double x = 0;
  double width = 0;
};

// How the rows are set.
struct Columns {
  Column squad;
  Column targets;
  Column changes;
  Column gap;
  TextStyle words = TextStyle::kNote;
  TextStyle names = TextStyle::kBodyBold;
  double height = 0;  // of all rows
};

Columns columns_of(const Box& content, double changes_at) {
  const auto column = [&](double from, double to) {
    return Column{content.x + content.width * from, content.width * (to - from) - kColumnGap};
  };
  return {column(0, kTargetsAt),
          column(kTargetsAt, changes_at),
          column(changes_at, kGapAt),
          {content.x + content.width * kGapAt, content.width * (1 - kGapAt)}};
}

double row_words(const SummaryRow& row, const Columns& x, double top, const Pen& pen) {
  const Setting note{x.words, kMostLines, Ink::kInk, Align::kLeft};
  const Setting name{x.names, 2, Ink::kInk, Align::kLeft};
  const Setting number{x.words, 1, Ink::kInk, Align::kRight};
  const std::string short_of = row.short_of.empty() ? "" : "Short: " + row.short_of;
  return std::max({pen.text({x.squad.x, top}, x.squad.width, name, row.squad),
                   pen.text({x.targets.x, top}, x.targets.width, note, short_of, row.met + "."),
                   pen.text({x.changes.x, top}, x.changes.width, note, row.changes),
                   pen.text({x.gap.x, top}, x.gap.width, number, row.gap)});
}

Columns lowest_columns(const SummaryMatter& matter, const Box& content, TextStyle words, TextStyle names,
                       const Pen& ruler) {
  Columns best;
  best.height = std::numeric_limits<double>::max();
  for (const double changes_at : kChangesAt) {
    Columns columns = columns_of(content, changes_at);
    columns.words = words;
    columns.names = names;
    for (const SummaryRow& row : matter.rows) columns.height += row_words(row, columns, 0, ruler) + kRowWhite;
    if (columns.height < best.height) best = columns;
  }
  return best;
}

double head(const SummaryMatter& matter, const Box& content, const Pen& pen) {
  double y = content.y - 3;
  y += pen.text({content.x, y}, content.width, {TextStyle::kTitle, 1, Ink::kInk, Align::kLeft}, matter.club);
  y += pen.text({content.x, y}, content.width, {TextStyle::kBody, 2, Ink::kInk, Align::kLeft}, matter.facts, "Block") +
       3;
  ListSetting setting;
  setting.style = TextStyle::kNote;
  setting.columns = 2;
  y += flow_list(matter.overall, {content.x, y}, content.width, setting, pen).height;
  return y - content.y;
}

double headings(const Columns& x, double y, const Pen& pen) {
  const Setting left{TextStyle::kHeading, 1, Ink::kInk, Align::kLeft};
  const Setting right{TextStyle::kHeading, 1, Ink::kInk, Align::kRight};
  const double height = pen.text({x.squad.x, y}, x.squad.width, left, "Squad");
  pen.text({x.targets.x, y}, x.targets.width, left, "Weekly targets");
  pen.text({x.changes.x, y}, x.changes.width, left, "Changes of drills");
  pen.text({x.gap.x, y}, x.gap.width, right, "Gap");
  return height + 2;
}

// In small type where that brings all rows onto the first page and the usual one does not.
Columns set_rows(const SummaryMatter& matter, const Box& content, const Pen& ruler) {
  Columns usual = lowest_columns(matter, content, TextStyle::kNote, TextStyle::kBodyBold, ruler);
  const double room = content.height - head(matter, content, ruler) - kBelowHead - headings(usual, 0, ruler);
  if (usual.height <= room) return usual;
  Columns small = lowest_columns(matter, content, TextStyle::kSmall, TextStyle::kSmallBold, ruler);
  return small.height <= room ? small : usual;
}

// Rows from one on that fit below the top.
std::size_t rows_that_fit(const SummaryMatter& matter, std::size_t from, double room, const Columns& x,
                          const Pen& ruler, double& used) {
  used = 0;
  std::size_t row = from;
  for (; row < matter.rows.size(); ++row) {
    const double height = row_words(matter.rows[row], x, 0, ruler) + kRowWhite;
    if (used + height > room && row > from) break;
    used += height;
  }
  return row;
}

}  // namespace

Result<std::vector<Page>> lay_out_summary(const SummaryMatter& matter, const Sheet& sheet, const TextMeasure& measure) {
  if (matter.rows.empty() || matter.rows.size() > kMostRows) {
    return Fault{FaultCode::kOutOfRange,
                 {"", 0, 0, "squads"},
                 std::to_string(matter.rows.size()),
                 "1 to " + std::to_string(kMostRows),
                 ""};
  }
  const Box content = content_of(sheet);
  const Pen ruler(measure, nullptr);
  const Columns x = set_rows(matter, content, ruler);
  std::vector<Page> pages;
  for (std::size_t from = 0; from < matter.rows.size();) {
    pages.emplace_back();
    const Pen pen(measure, &pages.back());
    double y = content.y;
    if (from == 0) {
      const double height = head(matter, content, pen);
      pen.region("title", {content.x, y, content.width, height});
      y += height + kBelowHead;
    }
    y += headings(x, y, pen);
    double used = 0;
    const double room = content.bottom() - y;
    const std::size_t until = rows_that_fit(matter, from, room, x, ruler, used);
    const double more = std::clamp((room - used) / static_cast<double>(until - from), 0.0, kMostMore);
    for (std::size_t row = from; row < until; ++row) {
      const double height = row_words(matter.rows[row], x, 0, ruler) + kRowWhite + more;
      pen.line({content.x, y}, {content.right(), y}, kHairline, Ink::kChalk);
      row_words(matter.rows[row], x, y + (kRowWhite + more) / 2, pen);
      pen.region("squad " + std::to_string(row), {content.x, y, content.width, height});
      y += height;
    }
    from = until;
  }
  return pages;
}

}  // namespace lanework::draw
