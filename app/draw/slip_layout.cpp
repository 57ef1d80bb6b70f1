// The slip: names in large letters, pocket-sized when the page is folded twice.
#include <algorithm>

#include "app/draw/card_layout.h"
#include "app/draw/card_words.h"
#include "app/draw/lists.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr std::size_t kMostEntries = 200;
constexpr double kLinkWidth = 26;
constexpr double kAboveFoot = 4;
constexpr double kRoomForOne = 40;  // a heading stays with what follows it

// Pages that grow as blocks are added; a block is never torn.
class Flow {
 public:
  Flow(const SlipMatter& matter, const Sheet& sheet, const TextMeasure& measure)
      : matter_(matter), content_(content_of(sheet)), measure_(measure) {
    content_.height -= Pen(measure_, nullptr).line_height(TextStyle::kNote) + kAboveFoot;
    open_page();
  }

  // block(pen, at, width) returns its height.
  template <class Block>
  void add(const std::string& name, double keep_with_next, const Block& block) {
    const double height = block(Pen(measure_, nullptr), Point{content_.x, y_}, content_.width);
    if (y_ + height + keep_with_next > content_.bottom() && y_ > top_) open_page();
    const Pen pen(measure_, &pages_.back());
    block(pen, Point{content_.x, y_}, content_.width);
    pen.region(name, {content_.x, y_, content_.width, height});
    y_ += height;
  }
  void space(double height) { y_ = std::min(y_ + height, content_.bottom()); }
  std::vector<Page> take() { return std::move(pages_); }

 private:
  void open_page() {
    pages_.emplace_back();
    const Pen pen(measure_, &pages_.back());
    add_foot(pen);
    y_ = content_.y;
    y_ += pen.text({content_.x, y_}, content_.width, {TextStyle::kTitle, 1, Ink::kInk, Align::kLeft}, matter_.squad);
    const std::string when = matter_.date_words + ", " + words::clock_time(matter_.start_minute_of_day, 0);
    y_ += pen.text({content_.x, y_}, content_.width, {TextStyle::kBody, 1, Ink::kInk, Align::kLeft}, when);
    y_ += pen.text({content_.x, y_}, content_.width, {TextStyle::kBody, 2, Ink::kSoft, Align::kLeft}, words::kPocket);
    y_ += 8;
    pen.line({content_.x, y_}, {content_.right(), y_}, kChalkLine, Ink::kChalk);
    y_ += 8;
    top_ = y_;
  }

  // At the foot of every side, so that it never takes a side of its own.
  void add_foot(const Pen& pen) const {
    const Point at{content_.x, content_.bottom() + kAboveFoot};
    const double height =
        pen.text(at, content_.width, {TextStyle::kNote, 1, Ink::kSoft, Align::kLeft}, words::kLocalRules);
    pen.region("rules", {at.x, at.y, content_.width, height});
  }

  const SlipMatter& matter_;
  Box content_;  // above the foot
  const TextMeasure& measure_;
  std::vector<Page> pages_;
  double y_ = 0;
  double top_ = 0;
};

double ask(const SlipMatter& matter, Point at, double width, const Pen& pen) {
  const std::string known =
      matter.restrictions_as_known.empty() ? "" : "Restrictions as known " + matter.restrictions_as_known + ".";
  double y = at.y + flow_heading(words::kAskWhoIsSore, at, width, true, pen);
  y += pen.text({at.x, y}, width, {TextStyle::kBody, 1, Ink::kInk, Align::kLeft}, known);
  return y - at.y + 10;
}

double one_player(const SlipSwaps& player, Point at, double width, const Pen& pen) {
  const double column = width * 0.36;
  const double name = pen.text(at, column - 8, {TextStyle::kBigName, 2, Ink::kInk, Align::kLeft}, player.name);
  const double x = at.x + column;
  double y = at.y + 2;
  y += pen.text({x, y}, width - column, {TextStyle::kDose, 3, Ink::kInk, Align::kLeft}, player.instruction);
  ListSetting setting;
  setting.style = TextStyle::kPocket;
  setting.lines_each = 3;
  y += flow_list(player.swaps, {x, y + 1}, width - column, setting, pen).height + 1;
  const double height = std::max(name, y - at.y) + 5;
  pen.line({at.x, at.y + height}, {at.x + width, at.y + height}, kHairline, Ink::kChalk);
  return height + 4;
}

// Names in a row, linked as partners stand.
double one_group(const SlipPartners& group, Point at, double width, const Pen& pen) {
  const auto count = static_cast<double>(std::max<std::size_t>(group.names.size(), 1));
  const double column = (width + kLinkWidth) / std::max(count, 2.0) - kLinkWidth;
  const double usual = pen.measure().extent("", "Hg", TextStyle::kBigName, column, 1).baseline;
  double baseline = usual;
  for (const std::string& name : group.names) {
    baseline = std::max(baseline, pen.measure().extent("", name, TextStyle::kBigName, column, 2).baseline);
  }
  const double middle = at.y + baseline - usual + pen.line_height(TextStyle::kBigName) / 2;
  double height = 0;
  double x = at.x;
  for (std::size_t place = 0; place < group.names.size(); ++place) {
    if (place > 0) {
      pen.line({x - kLinkWidth + 7, middle}, {x - 7, middle}, 1.2, Ink::kInk);
      pen.disc({x - kLinkWidth + 6, middle}, 2.4, Ink::kInk);
      pen.disc({x - 7, middle}, 2.4, Ink::kInk);
    }
    const std::string& name = group.names[place];
    const double down = baseline - pen.measure().extent("", name, TextStyle::kBigName, column, 2).baseline;
    height = std::max(
        height, down + pen.text({x, at.y + down}, column, {TextStyle::kBigName, 2, Ink::kInk, Align::kLeft}, name));
    x += column + kLinkWidth;
  }
  height += pen.text({at.x, at.y + height}, width, {TextStyle::kBody, 2, Ink::kSoft, Align::kLeft}, group.note);
  pen.line({at.x, at.y + height + 3}, {at.x + width, at.y + height + 3}, kHairline, Ink::kChalk);
  return height + 7;
}

double one_note(const std::string& note, Point at, double width, const Pen& pen) {
  ListSetting setting;
  setting.style = TextStyle::kPocket;
  setting.lines_each = 6;
  return flow_list({note}, at, width, setting, pen).height + 1;
}

template <class Entry, class Draw>
void add_section(Flow& flow, const char* heading, const std::string& name, const std::vector<Entry>& entries,
                 const Draw& draw) {
  if (entries.empty()) return;
  flow.add(name, kRoomForOne,
           [&](const Pen& pen, Point at, double width) { return flow_heading(heading, at, width, false, pen) + 3; });
  for (std::size_t at = 0; at < entries.size(); ++at) {
    flow.add(name + " " + std::to_string(at), 0,
             [&](const Pen& pen, Point place, double width) { return draw(entries[at], place, width, pen); });
  }
  flow.space(10);
}

}  // namespace

Result<std::vector<Page>> lay_out_slip(const SlipMatter& matter, const Sheet& sheet, const TextMeasure& measure) {
  std::size_t entries = matter.partners.size() + matter.swaps.size() + matter.sits_out.size() + matter.notes.size();
  for (const SlipRegrouped& drill : matter.regrouped) entries += 1 + drill.partners.size();
  if (entries > kMostEntries) {
    return Fault{FaultCode::kOutOfRange, {"", 0, 0, "slip"}, std::to_string(entries), "at most 200 entries", ""};
  }
  Flow flow(matter, sheet, measure);
  flow.add("ask", 0, [&](const Pen& pen, Point at, double width) { return ask(matter, at, width, pen); });
  add_section(flow, words::kSitsOut, "sits out", matter.sits_out, one_player);
  add_section(flow, words::kSwaps, "swaps", matter.swaps, one_player);
  add_section(flow, words::kPartners, "partners", matter.partners, one_group);
  for (std::size_t at = 0; at < matter.regrouped.size(); ++at) {
    const SlipRegrouped& drill = matter.regrouped[at];
    const std::string heading = words::kPartnersIn + drill.drill;
    flow.add("regrouped " + std::to_string(at), kRoomForOne, [&](const Pen& pen, Point place, double width) {
      const double high = flow_heading(heading, place, width, false, pen);
      const char* others = drill.partners.empty() ? words::kAllAsAbove : words::kOthersAsAbove;
      return high + 3 +
             pen.text({place.x, place.y + high}, width, {TextStyle::kBody, 1, Ink::kSoft, Align::kLeft}, others);
    });
    for (std::size_t group = 0; group < drill.partners.size(); ++group) {
      flow.add("regrouped " + std::to_string(at) + " " + std::to_string(group), 0,
               [&](const Pen& pen, Point place, double width) {
                 return one_group(drill.partners[group], place, width, pen);
               });
    }
    flow.space(10);
  }
  add_section(flow, words::kNotes, "note", matter.notes, one_note);
  return flow.take();
}

}  // namespace lanework::draw
