#include "app/draw/card_front.h"

#include <algorithm>

#include "app/draw/card_words.h"
#include "app/draw/lists.h"
#include "app/draw/ribbon.h"
#include "app/draw/strip_plan.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr double kQrSide = 54;
constexpr double kStripHeight = 92;
constexpr double kStripShare = 0.32;   // of the width, for the drawing
constexpr double kLegendShare = 0.28;  // for its words

std::string spare_in_words(const CardMatter& matter) {
  const int spare = matter.slot_seconds - matter.nine_in_ten_seconds;
  if (spare >= 0) return words::duration(spare) + " to spare";
  return "may run over by " + words::duration(-spare);
}

// The finish, large, with its width in words below; returns its height.
double draw_finish_words(const CardMatter& matter, const Box& box, const Pen& pen) {
  const double hero = pen.line_height(TextStyle::kHero);
  const double width = std::min(pen.width_of(matter.finish, TextStyle::kHero) + 2, box.width);
  const double label = pen.width_of(words::kDoneBy, TextStyle::kHeading) + 2;
  pen.text({box.right() - width, box.y - 8}, width, {TextStyle::kHero, 1, Ink::kInk, Align::kRight}, matter.finish);
  if (box.width - width - 8 > label) {
    pen.text({box.right() - width - label - 8, box.y - 8 + hero * 0.62}, label,
             {TextStyle::kHeading, 1, Ink::kSoft, Align::kRight}, words::kDoneBy);
  }
  double y = box.y - 8 + hero - 4;
  y += pen.text({box.x, y}, box.width, {TextStyle::kBodyBold, 1, Ink::kInk, Align::kRight},
                "nine nights in ten by " + matter.finish_nine_in_ten);
  return y - box.y;
}

double draw_title(const CardMatter& matter, const Box& content, const Pen& pen) {
  const double right_width = content.width * 0.38;
  const double left_width = content.width - right_width - kGutter;
  double y = content.y;
  y += pen.text({content.x, y - 3}, left_width, {TextStyle::kTitle, 1, Ink::kInk, Align::kLeft}, matter.squad) - 3;
  y += pen.text({content.x, y}, left_width, {TextStyle::kBody, 1, Ink::kInk, Align::kLeft}, matter.date_words,
                matter.club);
  const std::string facts =
      words::counted(matter.turnout, "player", "players") + ", " + words::clock_time(matter.start_minute_of_day, 0) +
      " to " + words::clock_time(matter.start_minute_of_day, matter.slot_seconds) + ", " + spare_in_words(matter);
  y += pen.text({content.x, y}, left_width, {TextStyle::kBody, 1, Ink::kInk, Align::kLeft}, facts);
  const double finish = draw_finish_words(matter, {content.right() - right_width, content.y, right_width, 0}, pen);
  return std::max(y - content.y, finish);
}

// The one thing to do before the first drill.
double draw_ask(const CardMatter& matter, const Box& content, const Pen& pen) {
  const std::string known = matter.restrictions_as_known.empty()
                                ? "No restrictions were handed in."
                                : "Restrictions as known " + matter.restrictions_as_known + ".";
  const double height = pen.line_height(TextStyle::kDose) + 7;
  pen.rectangle({content.x, content.y, content.width, height}, Ink::kAccent, 1.4);
  pen.rectangle({content.x, content.y, 7, height}, Ink::kAccent);
  const double lead = pen.width_of(words::kAskWhoIsSore, TextStyle::kDose) + 2;
  pen.text({content.x + 16, content.y + 4}, lead, {TextStyle::kDose, 1, Ink::kInk, Align::kLeft}, words::kAskWhoIsSore);
  const double shift = pen.line_height(TextStyle::kDose) - pen.line_height(TextStyle::kBody);
  pen.text({content.x + 16 + lead + 8, content.y + 4 + shift * 0.75}, content.width - lead - 34,
           {TextStyle::kBody, 1, Ink::kInk, Align::kLeft}, known);
  return height;
}

double draw_strip_words(const CardMatter& matter, Point at, double width, const Pen& pen) {
  double y = at.y + flow_heading(words::kLayOut, at, width, false, pen);
  const std::string where = matter.strip.name + (matter.strip.surface.empty() ? "" : ", " + matter.strip.surface);
  y += pen.text({at.x, y}, width, {TextStyle::kNote, 1, Ink::kSoft, Align::kLeft}, where);
  for (const StripLine& line : strip_lines(matter.strip)) {
    y += pen.text({at.x, y}, width, {TextStyle::kNote, 1, Ink::kInk, Align::kLeft}, line.text, line.lead);
  }
  return y - at.y;
}

// What is different tonight; returns whether all of it found room.
bool draw_tonight(const CardMatter& matter, const Box& box, const Pen& pen) {
  double y = box.y;
  const ListSetting setting{TextStyle::kNote, 1, 0, 4, 0};
  const auto section = [&](const char* heading, const std::vector<std::string>& entries) {
    if (entries.empty()) return true;
    if (box.bottom() - y < 3 * pen.line_height(TextStyle::kNote)) return false;
    y += flow_heading(heading, {box.x, y}, box.width, false, pen);
    ListSetting here = setting;
    here.most_height = box.bottom() - y - pen.line_height(TextStyle::kNote) - 1;
    const ListRoom room = flow_list(entries, {box.x, y}, box.width, here, pen);
    y += room.height + 3;
    return room.shown == static_cast<int>(entries.size());
  };
  bool all = section(words::kNotCovered, matter.not_covered);
  all = section(words::kChanged, matter.changes) && all;
  if (matter.changes.empty() && y + 3 * pen.line_height(TextStyle::kBodyBold) < box.bottom()) {
    y += pen.text({box.x, y}, box.width, {TextStyle::kBodyBold, 2, Ink::kInk, Align::kLeft}, words::kNothingChanged);
  }
  const Setting note{TextStyle::kNote, 2, Ink::kSoft, Align::kLeft};
  if (!all) {
    const double line = pen.line_height(TextStyle::kNote);
    pen.text({box.x, box.bottom() - line}, box.width, {TextStyle::kNote, 1, Ink::kSoft, Align::kLeft},
             words::kMoreOverleaf);
  } else if (!matter.saving.empty() && y + 2 * pen.line_height(TextStyle::kNote) < box.bottom()) {
    pen.text({box.x, y}, box.width, note, "Worth knowing: " + words::durations_unbroken(matter.saving) + ".");
  }
  return all;
}

FrontFoot draw_foot(const CardMatter& matter, Point at, double width, const Pen& pen) {
  const double list_width = matter.session_id.empty() ? width : width - kQrSide - kGutter;
  pen.line(at, {at.x + width, at.y}, kChalkLine, Ink::kChalk);
  double y = at.y + 6;
  int shown = 0;
  if (!matter.stop_always.empty()) {
    y += flow_heading(words::kStopAlways, {at.x, y}, list_width, true, pen);
    ListSetting setting;
    setting.style = TextStyle::kNote;
    setting.columns = 2;
    setting.most_height = 64;
    const ListRoom room = flow_list(matter.stop_always, {at.x, y}, list_width, setting, pen);
    y += room.height;
    shown = room.shown;
  }
  y += 3;
  const Setting note{TextStyle::kNote, 3, Ink::kSoft, Align::kLeft};
  y += pen.text({at.x, y}, list_width, note, words::kLocalRules);
  if (matter.session_id.empty()) return {y - at.y, shown};
  const Box code{at.x + width - kQrSide, at.y + 8, kQrSide, kQrSide};
  pen.put(QrCode{code, matter.session_id});
  pen.region("code", code);
  return {std::max(y, code.bottom()) - at.y, shown};
}

}  // namespace

FrontHead draw_front_head(const CardMatter& matter, const Box& content, const Pen& pen) {
  double y = content.y;
  const double title = draw_title(matter, content, pen);
  pen.region("title", {content.x, y, content.width, title});
  y += title + 8;
  const double ask = draw_ask(matter, {content.x, y, content.width, 0}, pen);
  pen.region("ask", {content.x, y, content.width, ask});
  y += ask + 8;
  const Box ribbon{content.x, y, content.width, ribbon_height(pen)};
  draw_ribbon(matter, ribbon, pen);
  pen.region("ribbon", ribbon);
  y += ribbon.height + 10;
  const double drawing = content.width * kStripShare;
  const double legend = content.width * kLegendShare;
  const Box strip{content.x, y, drawing, kStripHeight};
  draw_strip(matter.strip, strip, pen);
  pen.region("strip", strip);
  const Point legend_at{strip.right() + kGutter, y};
  const double said = draw_strip_words(matter, legend_at, legend, pen);
  pen.region("strip words", {legend_at.x, y, legend, said});
  const double row = std::max(kStripHeight, said);
  const double tonight_x = legend_at.x + legend + kGutter;
  const Box tonight{tonight_x, y, content.right() - tonight_x, row};
  const bool all_told = draw_tonight(matter, tonight, pen);
  pen.region("tonight", tonight);
  return {y + row - content.y, all_told};
}

FrontFoot measure_front_foot(const CardMatter& matter, const Box& content, const Pen& pen) {
  return draw_foot(matter, {content.x, content.y}, content.width, Pen(pen.measure(), nullptr));
}

void draw_front_foot(const CardMatter& matter, const Box& content, const Pen& pen) {
  const double height = measure_front_foot(matter, content, pen).height;
  const Point at{content.x, content.bottom() - height};
  draw_foot(matter, at, content.width, pen);
  pen.region("stop", {at.x, at.y, content.width, height});
}

}  // namespace lanework::draw
