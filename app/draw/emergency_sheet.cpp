#include "app/draw/emergency_sheet.h"

#include <algorithm>

#include "app/draw/card_layout.h"
#include "app/draw/card_words.h"
#include "app/draw/clean_matter.h"
#include "app/draw/form_words.h"
#include "app/draw/lists.h"
#include "app/draw/pango_text.h"
#include "app/draw/pen.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr std::size_t kMostRows = 200;
constexpr double kLogLine = 26;
constexpr int kLogLines = 4;
constexpr double kRowGap = 5;
constexpr int kMostLines = 8;

std::string valid_words(const EmergencySheetMatter& matter) {
  return "Printed " + matter.printed + ". Expires " + matter.expires + ": then destroy it, and print another.";
}

Page cover(const EmergencySheetMatter& matter, const Sheet& sheet, const TextMeasure& measure) {
  Page page;
  const Pen pen(measure, &page);
  const Box content = content_of(sheet);
  const double fold = sheet.height / 2;
  const double width = content.width;
  double y = content.y;
  y += pen.text({content.x, y}, width, {TextStyle::kTitle, 1}, words::kEmergencySheet) + 8;
  y += pen.text({content.x, y}, width, {TextStyle::kBigName, 2}, words::club_and_squad(matter.club, matter.squad)) + 14;
  y += flow_heading(words::kOpenOnly, {content.x, y}, width, true, pen) + 10;
  y += pen.text({content.x, y}, width, {TextStyle::kPocket, 2}, valid_words(matter)) + 6;
  const int shown = static_cast<int>(matter.rows.size());
  std::string count = words::counted(shown, "player stands", "players stand") + " inside, by consent of the family.";
  if (matter.without_consent > 0) {
    count += " " + words::counted(matter.without_consent, "player is", "players are") +
             " not named, for want of a consent that stands: call the lead.";
  }
  y += pen.text({content.x, y}, width, {TextStyle::kPocket, 3}, count) + 6;
  y += pen.text({content.x, y}, width, {TextStyle::kNote, 2, Ink::kSoft}, words::kFormRules);
  pen.region("cover", {content.x, content.y, width, y - content.y});
  pen.line({0, fold}, {sheet.width, fold}, 0.7, Ink::kSoft, true);
  pen.text({content.x, fold + 3}, width, {TextStyle::kNote, 1, Ink::kSoft, Align::kCentre}, words::kFoldHere);
  y = fold + 40;
  y += flow_heading(words::kOpenedBy, {content.x, y}, width, false, pen);
  for (int line = 1; line <= kLogLines; ++line) {
    pen.line({content.x, y + line * kLogLine}, {content.right(), y + line * kLogLine}, 0.7, Ink::kSoft);
  }
  return page;
}

double draw_row(const EmergencyRowMatter& row, Point at, double width, const Pen& pen) {
  const double left = width * 0.44;
  const double right = width - left - kGutter;
  const auto stated = [](const std::string& text) { return text.empty() ? std::string(words::kNotStated) : text; };
  pen.line(at, {at.x + width, at.y}, kChalkLine, Ink::kChalk);
  double y = at.y + 3;
  y += pen.text({at.x, y}, left, {TextStyle::kName, 3}, row.player);
  y += pen.text({at.x, y}, left, {TextStyle::kBody, kMostLines}, row.guardian);
  y += pen.text({at.x, y}, left, {TextStyle::kDose, 3}, row.phone);
  const double x = at.x + left + kGutter;
  double other = at.y + 3;
  const Setting body{TextStyle::kBody, kMostLines};
  other += pen.text({x, other}, right, body, stated(row.allergy), "Allergy:");
  other += pen.text({x, other}, right, body, stated(row.inhaler), "Inhaler:");
  other += pen.text({x, other}, right, body, stated(row.other), "Other:");
  return std::max(y, other) - at.y + kRowGap;
}

std::vector<Page> inside_pages(const EmergencySheetMatter& matter, const Sheet& sheet, const TextMeasure& measure) {
  std::vector<Page> pages;
  const Box content = content_of(sheet);
  const Pen ruler(measure, nullptr);
  const double foot = ruler.line_height(TextStyle::kNote) * 2 + 4;
  const double bottom = content.bottom() - foot;
  double y = bottom + 1;
  for (std::size_t i = 0; i < matter.rows.size(); ++i) {
    const double height = draw_row(matter.rows[i], {}, content.width, ruler);
    if (y + height > bottom) {
      pages.emplace_back();
      const Pen pen(measure, &pages.back());
      y = content.y;
      y += pen.text({content.x, y}, content.width, {TextStyle::kName, 1},
                    words::club_and_squad(matter.club, matter.squad));
      y += pen.text({content.x, y}, content.width, {TextStyle::kBodyBold, 2}, words::kOpenOnly) + 6;
      pen.text({content.x, content.bottom() - foot + 4}, content.width, {TextStyle::kNote, 2, Ink::kSoft},
               valid_words(matter) + " 'Not stated' is not 'none'.");
    }
    const Pen pen(measure, &pages.back());
    draw_row(matter.rows[i], {content.x, y}, content.width, pen);
    pen.region("player " + std::to_string(i), {content.x, y, content.width, height});
    y += height;
  }
  return pages;
}

}  // namespace

Result<Pages> draw_emergency_sheet(const EmergencySheetMatter& matter, Paper paper) {
  if (matter.rows.empty() || matter.rows.size() > kMostRows) {
    return Fault{FaultCode::kOutOfRange,
                 {"", 0, 0, "rows"},
                 std::to_string(matter.rows.size()) + " players",
                 "1 to " + std::to_string(kMostRows),
                 {}};
  }
  const EmergencySheetMatter clean = cleaned(matter);
  const Sheet sheet = sheet_of(paper);
  const PangoMeasure measure;
  std::vector<Page> sides = {cover(clean, sheet, measure)};
  for (Page& page : inside_pages(clean, sheet, measure)) sides.push_back(std::move(page));
  return Pages{sheet.width, sheet.height, words::kEmergencySheet, clean.printed_iso + "T00:00:00Z", std::move(sides)};
}

}  // namespace lanework::draw
