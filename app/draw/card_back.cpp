#include "app/draw/card_back.h"

#include <algorithm>

#include "app/draw/card_words.h"
#include "app/draw/lists.h"
#include "app/draw/plan_fields.h"
#include "app/draw/stop_groups.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr double kUnbounded = 1e9;
constexpr std::size_t kLongestEntry = 200;  // bytes, of a group of stop lines
constexpr int kMostSignLines = 4;
constexpr double kBelowSigns = 7;

// What rescuers ask for, and who does what (common practice of emergency action plans).
std::vector<PlanField> fields_of(const ActionPlanMatter& plan) {
  return {{"Emergency number", &plan.emergency_number},
          {"Who stays with the player", &plan.stays_with_player},
          {"Address", &plan.address},
          {"Who calls", &plan.calls},
          {"Gate, way in", &plan.way_in},
          {"Who meets the ambulance", &plan.meets_ambulance},
          {"Phone with signal", &plan.phone},
          {"Who minds the others", &plan.minds_others},
          {"Nearest defibrillator", &plan.defibrillator},
          {"First-aid bag is kept", &plan.first_aid_bag}};
}

double danger_signs(const CardMatter& matter, int most, Point at, double width, const Pen& pen) {
  const std::size_t count = std::min(matter.danger_signs.size(), static_cast<std::size_t>(most));
  if (count == 0) return 0;
  double y = at.y + flow_heading(words::kDangerSigns, at, width, true, pen);
  for (std::size_t i = 0; i < count; ++i) {
    const SaidTo& said = matter.danger_signs[i];
    y += pen.text({at.x, y}, width, {TextStyle::kNote, kMostSignLines, Ink::kInk, Align::kLeft}, said.signs,
                  said.whom + ":");
  }
  return y - at.y + kBelowSigns;
}

struct Section {
  const char* heading;
  std::vector<ListEntry> entries;
  bool act_now;
};

std::vector<ListEntry> entries_of(const std::vector<std::string>& texts) {
  std::vector<ListEntry> entries;
  for (const std::string& text : texts) entries.push_back({text, ""});
  return entries;
}

// General lines that found no room in front, then tonight's drills; a group too long to be taken in at a glance
// goes on in an entry of its own.
std::vector<ListEntry> stop_entries(const CardMatter& matter, const BackLists& lists) {
  std::vector<ListEntry> entries = entries_of(lists.stop_always);
  for (const StopGroup& group : stop_groups(matter.stop_drill)) {
    entries.push_back({"", group.where + ":"});
    for (const std::string& sign : group.signs) {
      std::string& text = entries.back().text;
      if (!text.empty() && text.size() + sign.size() > kLongestEntry) {
        entries.push_back({sign, ""});
      } else {
        text += (text.empty() ? "" : "; ") + sign;
      }
    }
  }
  return entries;
}

// A heading and its list in one or more columns, no lower than the bottom; what found no room is counted.
double flow_section(const Section& section, int columns, Point at, double width, double bottom, const Pen& pen) {
  if (section.entries.empty()) return 0;
  double y = at.y + flow_heading(section.heading, at, width, section.act_now, pen);
  const double line = pen.line_height(TextStyle::kNote);
  ListSetting setting;
  setting.style = TextStyle::kNote;
  setting.columns = columns;
  setting.lines_each = 8;
  setting.most_height = std::max(bottom - y - line - 6, 0.0);
  const ListRoom room = flow_list(section.entries, {at.x, y}, width, setting, pen);
  y += room.height;
  const int left_out = static_cast<int>(section.entries.size()) - room.shown;
  if (left_out > 0) {
    y += pen.text({at.x, y}, width, {TextStyle::kNote, 1, Ink::kInk, Align::kLeft}, words::left_out(left_out));
  }
  return y - at.y + 5;
}

// Stop lines in two or three columns over the whole width, whichever is lower; what is different tonight below them.
double flow_stacked(const std::vector<Section>& sections, Point at, double width, double bottom, const Pen& pen) {
  const Pen ruler(pen.measure(), nullptr);
  const bool three = flow_section(sections[0], 3, at, width, at.y + kUnbounded, ruler) <
                     flow_section(sections[0], 2, at, width, at.y + kUnbounded, ruler);
  double y = at.y + flow_section(sections[0], three ? 3 : 2, at, width, bottom, pen);
  for (std::size_t next = 1; next < sections.size(); ++next) {
    y += flow_section(sections[next], 2, {at.x, y}, width, bottom, pen);
  }
  return y - at.y;
}

// Stop lines on the left, what is different tonight on the right.
double flow_abreast(const std::vector<Section>& sections, Point at, double width, double bottom, const Pen& pen) {
  const double column = (width - kGutter) / 2;
  const double left = flow_section(sections[0], 1, at, column, bottom, pen);
  double y = at.y;
  for (std::size_t next = 1; next < sections.size(); ++next) {
    y += flow_section(sections[next], 1, {at.x + column + kGutter, y}, column, bottom, pen);
  }
  return std::max(left, y - at.y);
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

double draw_back_lists(const CardMatter& matter, const BackLists& lists, Point at, double width, const Pen& pen) {
  std::vector<Section> sections = {{words::kStopDrill, stop_entries(matter, lists), true}};
  if (lists.with_changes) {
    sections.push_back({words::kNotCovered, entries_of(matter.not_covered), false});
    sections.push_back({words::kChanged, entries_of(matter.changes), false});
  }
  const double bottom = at.y + lists.most_height;
  const Pen ruler(pen.measure(), nullptr);
  const bool abreast = lists.with_changes && !sections[0].entries.empty() &&
                       flow_abreast(sections, at, width, at.y + kUnbounded, ruler) <
                           flow_stacked(sections, at, width, at.y + kUnbounded, ruler);
  return abreast ? flow_abreast(sections, at, width, bottom, pen) : flow_stacked(sections, at, width, bottom, pen);
}

double draw_emergency(const CardMatter& matter, const PlanSetting& setting, Point at, double width, const Pen& pen) {
  double y = at.y + danger_signs(matter, setting.signs, at, width, pen);
  if (!matter.emergency_plan) return y - at.y;
  const ActionPlanMatter& plan = matter.action_plan;
  y += flow_heading(words::kEmergency, {at.x, y}, width, true, pen);
  y += pen.text({at.x, y}, width, {TextStyle::kNote, 1, Ink::kSoft, Align::kLeft},
                plan.note.empty() ? words::kFillIn : plan.note);
  y += pen.text({at.x, y}, width, {TextStyle::kNote, 2, Ink::kInk, Align::kLeft}, "", plan.lacks);
  y += draw_plan_fields(fields_of(plan), setting.writing_line, {at.x, y}, width, pen);
  return y - at.y;
}

}  // namespace lanework::draw
