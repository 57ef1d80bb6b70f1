#include "app/draw/notice.h"

#include "app/draw/card_layout.h"
#include "app/draw/card_words.h"
#include "app/draw/foreign_text.h"
#include "app/draw/lists.h"
#include "app/draw/pango_text.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

NoticeMatter cleaned(NoticeMatter matter) {
  for (std::string* text : {&matter.club, &matter.squad, &matter.date_words, &matter.date_iso, &matter.headline}) {
    *text = clean_text(*text);
  }
  for (std::vector<std::string>* texts : {&matter.why, &matter.instead, &matter.stop_always}) {
    for (std::string& text : *texts) text = clean_text(text);
  }
  return matter;
}

double draw_section(const char* heading, const std::vector<std::string>& lines, Point at, double width, bool act_now,
                    const Pen& pen) {
  if (lines.empty()) return 0;
  double y = at.y + flow_heading(heading, at, width, act_now, pen) + 2;
  ListSetting setting;
  setting.style = TextStyle::kPocket;
  setting.lines_each = 8;
  y += flow_list(lines, {at.x, y}, width, setting, pen).height;
  return y - at.y + 12;
}

Page lay_out(const NoticeMatter& matter, const Box& content, const TextMeasure& measure) {
  Page page;
  const Pen pen(measure, &page);
  double y = content.y;
  y += pen.text({content.x, y}, content.width, {TextStyle::kTitle, 1, Ink::kInk, Align::kLeft}, matter.squad);
  const std::string when = matter.date_words + ", " + words::clock_time(matter.start_minute_of_day, 0);
  y += pen.text({content.x, y}, content.width, {TextStyle::kBody, 1, Ink::kInk, Align::kLeft}, when, matter.club);
  y += 10;
  pen.line({content.x, y}, {content.right(), y}, kChalkLine, Ink::kChalk);
  y += 14;
  const double hero =
      pen.text({content.x, y}, content.width, {TextStyle::kHero, 2, Ink::kInk, Align::kLeft}, matter.headline);
  pen.region("headline", {content.x, y, content.width, hero});
  y += hero + 14;
  y += draw_section("Why", matter.why, {content.x, y}, content.width, false, pen);
  y += draw_section("Now", matter.instead, {content.x, y}, content.width, true, pen);
  y += draw_section(words::kStopAlways, matter.stop_always, {content.x, y}, content.width, true, pen);
  pen.text({content.x, y}, content.width, {TextStyle::kNote, 3, Ink::kSoft, Align::kLeft}, words::kLocalRules);
  return page;
}

}  // namespace

Result<Pages> draw_notice(const NoticeMatter& matter, Paper paper) {
  const NoticeMatter clean = cleaned(matter);
  const Sheet sheet = sheet_of(paper);
  std::vector<Page> sides;
  sides.push_back(lay_out(clean, content_of(sheet), PangoMeasure()));
  const std::string created = clean.date_iso + "T" + words::clock_time(clean.start_minute_of_day, 0) + ":00Z";
  return Pages{sheet.width, sheet.height, clean.squad + ", " + clean.date_words, created, std::move(sides)};
}

}  // namespace lanework::draw
