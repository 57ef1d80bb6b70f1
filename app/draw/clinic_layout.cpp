#include "app/draw/clinic_layout.h"

#include <algorithm>
#include <array>
#include <functional>

#include "app/draw/card_words.h"
#include "app/draw/clinic_words.h"
#include "app/draw/lists.h"
#include "app/draw/plan_fields.h"
#include "app/draw/ribbon.h"
#include "app/draw/strip_plan.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr std::size_t kMostEvening = 30;
constexpr std::size_t kMostKeyDrills = 8;
constexpr int kMostCues = 3;
constexpr double kStripHeight = 150;
constexpr double kLeastStripHeight = 92;  // where the evening is long
constexpr double kStripShare = 0.64;      // of the width, for the drawing
constexpr double kGap = 14;               // between sections
constexpr double kMostMore = 26;          // white added between sections where there is room
constexpr double kSign = 18;
constexpr double kIndent = 9;
constexpr double kWritingLine = 21;  // handwriting wants 6 mm at least, own judgement
constexpr double kMostCell = 152;    // of a key drill
constexpr double kLeastCell = 84;
constexpr double kLeastRowWhite = 2;
constexpr double kMostRowWhite = 16;  // of the form for a visit

// Who is told, filled in by hand (common practice).
constexpr std::array<const char*, 4> kWhom = {"The lead, phone", "Emergency number", "A parent, by",
                                              "Who stays with the player"};

// The same where the place has a plan: what no plan knows stays a line to write on.
std::vector<PlanField> whom_of(const ActionPlanMatter& plan) {
  static const std::string kToBeWritten;
  return {{"The lead, phone", &kToBeWritten},
          {"A parent, by", &kToBeWritten},
          {"Emergency number", &plan.emergency_number},
          {"Who stays with the player", &plan.stays_with_player},
          {"Address", &plan.address},
          {"Who calls", &plan.calls},
          {"Phone with signal", &plan.phone},
          {"Who meets the ambulance", &plan.meets_ambulance}};
}

double head(const ClinicMatter& matter, const Box& content, const Pen& pen) {
  double y = content.y - 3;
  y += pen.text({content.x, y}, content.width, {TextStyle::kTitle, 1, Ink::kInk, Align::kLeft}, matter.squad);
  const std::string of = matter.club.empty() ? "" : matter.club + ". ";
  y += pen.text({content.x, y}, content.width, {TextStyle::kBody, 2, Ink::kInk, Align::kLeft}, of + matter.facts,
                words::kFirstEvening);
  return y - content.y;
}

double taught(const ClinicMatter& matter, Point at, double width, const Pen& pen) {
  double y = at.y + flow_heading(words::kTaughtSoFar, at, width, false, pen);
  ListSetting setting;
  setting.columns = 2;
  setting.lines_each = 2;
  setting.most_height = 5 * pen.line_height(TextStyle::kBody);
  const ListRoom room = flow_list(matter.taught, {at.x, y}, width, setting, pen);
  y += room.height;
  const int left = static_cast<int>(matter.taught.size()) - room.shown;
  if (left > 0) {
    y += pen.text({at.x + kIndent, y}, width - kIndent, {TextStyle::kNote, 1, Ink::kSoft, Align::kLeft},
                  words::left_out(left));
  }
  return y - at.y;
}

double lay_out(const ClinicMatter& matter, double strip_height, Point at, double width, const Pen& pen) {
  double y = at.y + flow_heading(words::kBeforeAnyoneComes, at, width, false, pen) + 2;
  const double drawing = width * kStripShare;
  draw_strip(matter.strip, {at.x, y, drawing, strip_height}, pen);
  const double x = at.x + drawing + kGutter;
  const double room = width - drawing - kGutter;
  double said = y;
  const std::string surface = matter.strip.surface.empty() ? "" : ", " + matter.strip.surface;
  said += pen.text({x, said}, room, {TextStyle::kBody, 2, Ink::kSoft, Align::kLeft}, matter.strip.name + surface) + 2;
  for (const StripLine& line : strip_lines(matter.strip)) {
    said += pen.text({x, said}, room, {TextStyle::kPocket, 2, Ink::kInk, Align::kLeft}, line.text, line.lead) + 1;
  }
  y += std::max(strip_height, said - y) + 6;
  ListSetting setting;
  setting.style = TextStyle::kPocket;
  setting.columns = 2;
  y += flow_list(matter.lay_out, {at.x, y}, width, setting, pen).height;
  return y - at.y;
}

double tell(const ClinicMatter& matter, Point at, double width, const Pen& pen) {
  double y = at.y + flow_heading(words::kTellAndCue, at, width, false, pen) + 2;
  ListSetting setting;
  setting.style = TextStyle::kPocket;
  setting.columns = 2;
  setting.lines_each = 5;
  y += flow_list(matter.tell, {at.x, y}, width, setting, pen).height;
  if (!matter.note.empty()) {
    y += 3 + pen.text({at.x, y + 3}, width, {TextStyle::kPocket, 2, Ink::kInk, Align::kLeft}, matter.note,
                      std::string(words::kTheLead) + ":");
  }
  return y - at.y;
}

double evening(const ClinicMatter& matter, Point at, double width, const Pen& pen) {
  double y = at.y + flow_heading(words::kTheEvening, at, width, false, pen) + 2;
  const double column = (width - kGutter) / 2;
  const std::size_t rows = (matter.evening.size() + 1) / 2;
  double bottom = y;
  double down = y;
  for (std::size_t i = 0; i < matter.evening.size(); ++i) {
    const EveningLineMatter& drill = matter.evening[i];
    if (i == rows) down = y;
    const double x = at.x + (i < rows ? 0 : column + kGutter);
    draw_formation(drill.formation, {x, down + 1, kSign, 11}, pen);
    down += 3 + pen.text({x + kSign + 7, down}, column - kSign - 7, {TextStyle::kBody, 2, Ink::kInk, Align::kLeft},
                         drill.dose_words, drill.name);
    bottom = std::max(bottom, down);
  }
  y = bottom + 1;
  y += pen.text({at.x, y}, width, {TextStyle::kNote, 1, Ink::kSoft, Align::kLeft}, words::kEveningNote);
  return y - at.y;
}

struct Section {
  const char* name;
  std::function<double(Point, double, const Pen&)> draw;
};

std::vector<Section> sections_of(const ClinicMatter& matter, double strip_height) {
  std::vector<Section> out;
  if (!matter.taught.empty()) {
    out.push_back({"taught", [&](Point at, double width, const Pen& pen) { return taught(matter, at, width, pen); }});
  }
  out.push_back({"lay out", [&matter, strip_height](Point at, double width, const Pen& pen) {
                   return lay_out(matter, strip_height, at, width, pen);
                 }});
  out.push_back({"tell", [&](Point at, double width, const Pen& pen) { return tell(matter, at, width, pen); }});
  out.push_back({"evening", [&](Point at, double width, const Pen& pen) { return evening(matter, at, width, pen); }});
  return out;
}

Page front(const ClinicMatter& matter, const Box& content, const TextMeasure& measure) {
  Page page;
  const Pen pen(measure, &page);
  const Pen ruler(measure, nullptr);
  const double top = content.y + head(matter, content, pen) + 8;
  pen.region("title", {content.x, content.y, content.width, top - 8 - content.y});
  const auto spare_with = [&](double strip_height) {
    double spare = content.bottom() - top;
    for (const Section& section : sections_of(matter, strip_height)) {
      spare -= section.draw({content.x, 0}, content.width, ruler) + kGap;
    }
    return spare;
  };
  const double short_of = std::max(-spare_with(kStripHeight), 0.0);
  const double strip_height = std::max(kStripHeight - short_of, kLeastStripHeight);
  const std::vector<Section> sections = sections_of(matter, strip_height);
  const double more = std::clamp(spare_with(strip_height) / static_cast<double>(sections.size()), 0.0, kMostMore);
  double y = top;
  for (const Section& section : sections) {
    pen.line({content.x, y}, {content.right(), y}, kChalkLine, Ink::kChalk);
    y += 6 + more / 2;
    const double height = section.draw({content.x, y}, content.width, pen);
    pen.region(section.name, {content.x, y, content.width, height});
    y += height + kGap - 6 + more / 2;
  }
  return page;
}

// The figure, what to look for, and beside the eye the commonest fault with what is said then.
double key_drill(const KeyDrillMatter& drill, const Box& box, const Pen& pen) {
  pen.line({box.x, box.y}, {box.right(), box.y}, kChalkLine, Ink::kChalk);
  const double side = std::min(box.height - 10, box.width * 0.42);
  const double top = box.y + 6;
  if (drill.figure != nullptr) pen.put(Picture{{box.x, top, side, side}, drill.figure});
  const double x = box.x + side + 9;
  const double room = box.right() - x;
  draw_formation(drill.formation, {box.right() - kSign, top, kSign, 12}, pen);
  double y = top;
  y += pen.text({x, y}, room - kSign - 5, {TextStyle::kName, 2, Ink::kInk, Align::kLeft}, drill.name);
  const std::string comma = drill.rung_words.empty() ? "" : ",";
  y += pen.text({x, y}, room, {TextStyle::kNote, 2, Ink::kSoft, Align::kLeft}, drill.rung_words,
                drill.dose_words + comma) +
       3;
  const double line = pen.line_height(TextStyle::kBody);
  for (std::size_t i = 0; i < std::min<std::size_t>(drill.good.size(), kMostCues); ++i) {
    pen.disc({x + 3, y + line / 2}, 1.5, Ink::kInk);
    y += pen.text({x + kIndent, y}, room - kIndent, {TextStyle::kBody, 2, Ink::kInk, Align::kLeft}, drill.good[i]);
  }
  if (!drill.fault.fault.empty()) {
    y += 3;
    pen.disc({x + 3, y + line / 2}, 3, Ink::kInk, 0.9);
    pen.disc({x + 3, y + line / 2}, 1.1, Ink::kInk);
    const std::string said = drill.fault.cue.empty() ? "" : "\u201C" + drill.fault.cue + "\u201D";
    y += pen.text({x + kIndent, y}, room - kIndent, {TextStyle::kBody, 3, Ink::kInk, Align::kLeft}, said,
                  drill.fault.fault + (said.empty() ? "" : ":"));
  }
  return std::max(y, top + side) - box.y;
}

// A label and a line to write on, in so many columns.
double fields(const std::vector<std::string>& labels, int columns, Point at, double width, const Pen& pen) {
  const double column = (width - kGutter * (columns - 1)) / columns;
  double y = at.y;
  for (std::size_t field = 0; field < labels.size(); ++field) {
    const auto place = static_cast<int>(field) % columns;
    if (place == 0) y += kWritingLine;
    const double x = at.x + place * (column + kGutter);
    const double label = pen.width_of(labels[field], TextStyle::kBody) + 2;
    pen.text({x, y - pen.line_height(TextStyle::kBody) - 1}, label, {TextStyle::kBody, 1, Ink::kInk, Align::kLeft},
             labels[field]);
    pen.line({x + label + 4, y - 3}, {x + column, y - 3}, 0.7, Ink::kSoft);
  }
  return y - at.y;
}

double whom_to_tell(const ActionPlanMatter& plan, Point at, double width, const Pen& pen) {
  if (plan.note.empty()) return fields({kWhom.begin(), kWhom.end()}, 2, {at.x, at.y - 5}, width, pen) - 5;
  double y = at.y;
  y += pen.text({at.x, y}, width, {TextStyle::kNote, 2, Ink::kSoft, Align::kLeft}, plan.note);
  y += pen.text({at.x, y}, width, {TextStyle::kNote, 2, Ink::kInk, Align::kLeft}, "", plan.lacks);
  y += draw_plan_fields(whom_of(plan), kWritingLine, {at.x, y}, width, pen);
  return y - at.y;
}

double stop(const ClinicMatter& matter, Point at, double width, const Pen& pen) {
  double y = at.y + flow_heading(words::kStopAlways, at, width, true, pen) + 1;
  ListSetting setting;
  setting.style = TextStyle::kPocket;
  y += flow_list(matter.stop_always, {at.x, y}, width, setting, pen).height + 5;
  y += flow_heading(words::kWhomToTell, {at.x, y}, width, false, pen);
  y += whom_to_tell(matter.action_plan, {at.x, y}, width, pen) + 6;
  y += pen.text({at.x, y}, width, {TextStyle::kNote, 2, Ink::kSoft, Align::kLeft}, words::kPackRules);
  return y - at.y;
}

Page back(const ClinicMatter& matter, const Box& content, const TextMeasure& measure) {
  Page page;
  const Pen pen(measure, &page);
  const Pen ruler(measure, nullptr);
  double y = content.y;
  const double half = (content.width - kGutter) / 2;
  y += pen.text({content.x, y}, half, {TextStyle::kName, 1, Ink::kInk, Align::kLeft}, words::kWhatGoodLooksLike);
  pen.text({content.x + half + kGutter, content.y}, half, {TextStyle::kBody, 1, Ink::kSoft, Align::kRight},
           matter.squad, words::kFirstEvening);
  y += pen.text({content.x, y}, content.width, {TextStyle::kNote, 2, Ink::kSoft, Align::kLeft}, words::kGoodNote) + 7;
  const double foot = stop(matter, {content.x, 0}, content.width, ruler);
  const std::size_t rows = (matter.key_drills.size() + 1) / 2;
  const double room = content.bottom() - y - foot - 12;
  const double cell = std::clamp(room / static_cast<double>(rows), kLeastCell, kMostCell);
  for (std::size_t i = 0; i < matter.key_drills.size(); ++i) {
    const std::size_t row = i / 2;
    const Box box{content.x + (i % 2 == 0 ? 0 : half + kGutter), y + static_cast<double>(row) * cell, half, cell};
    key_drill(matter.key_drills[i], box, pen);
    pen.region("key drill " + std::to_string(i), box);
  }
  const Point at{content.x, content.bottom() - foot};
  pen.line({content.x, at.y - 6}, {content.right(), at.y - 6}, kChalkLine, Ink::kChalk);
  stop(matter, at, content.width, pen);
  pen.region("stop", {at.x, at.y, content.width, foot});
  return page;
}

Fault too_many(const char* field, std::size_t found, std::size_t most) {
  return {FaultCode::kOutOfRange, {"", 0, 0, field}, std::to_string(found), "1 to " + std::to_string(most), ""};
}

// Words to ring, as far apart as a finger in a glove.
double words_to_ring(Point at, const Pen& pen) {
  double x = at.x;
  for (const char* word : {"most", "half", "few"}) {
    const double width = pen.width_of(word, TextStyle::kPocket) + 2;
    pen.text({x, at.y}, width, {TextStyle::kPocket, 1, Ink::kInk, Align::kLeft}, word);
    x += width + 18;
  }
  return x - 18 - at.x;
}

struct VisitColumns {
  bool cues = true;  // below the drill's name; a long evening has no room for them
  double drill = 0;
  double words = 0;
  double help = 0;
};

double visit_room(const VisitColumns& x) { return x.words - x.drill - 12; }

// What is looked at: the drill, the cue and the fault; returns the height.
double visit_words(const VisitDrillMatter& row, const VisitColumns& x, double top, const Pen& pen) {
  const std::string fault = row.fault.fault.empty() ? "" : "; fault: " + row.fault.fault;
  double y = top;
  y += pen.text({x.drill, y}, visit_room(x), {TextStyle::kDose, 1, Ink::kInk, Align::kLeft}, row.drill.name);
  if (!x.cues) return y - top;
  y += pen.text({x.drill, y}, visit_room(x), {TextStyle::kNote, 2, Ink::kSoft, Align::kLeft}, row.look_for + fault);
  return y - top;
}

void visit_row(const VisitDrillMatter& row, const VisitColumns& x, const Box& box, const Pen& pen) {
  pen.line({box.x, box.y}, {box.right(), box.y}, kHairline, Ink::kChalk);
  const double top = box.y + (box.height - visit_words(row, x, 0, Pen(pen.measure(), nullptr))) / 2;
  draw_formation(row.drill.formation, {box.x, top + 2, kSign, 11}, pen);
  visit_words(row, x, top, pen);
  words_to_ring({x.words, box.y + (box.height - pen.line_height(TextStyle::kPocket)) / 2}, pen);
  pen.line({x.help, box.bottom() - 4}, {box.right(), box.bottom() - 4}, 0.7, Ink::kSoft);
}

double ruled(const char* heading, int lines, Point at, double width, const Pen& pen) {
  double y = at.y + flow_heading(heading, at, width, false, pen);
  for (int line = 0; line < lines; ++line) {
    y += kWritingLine;
    pen.line({at.x, y - 3}, {at.x + width, y - 3}, 0.7, Ink::kSoft);
  }
  return y - at.y;
}

double visit_foot(Point at, double width, const Pen& pen) {
  double y = at.y + ruled(words::kWasTaught, 3, at, width, pen) + 8;
  y += ruled(words::kNextTime, 2, {at.x, y}, width, pen) + 2;
  y += fields({"Signature of the observer", "Date"}, 2, {at.x, y}, width, pen) + 5;
  y += pen.text({at.x, y}, width, {TextStyle::kNote, 2, Ink::kSoft, Align::kLeft}, words::kPackRules);
  return y - at.y;
}

double visit_head(const VisitMatter& matter, const Box& content, const Pen& pen) {
  double y = content.y - 3;
  y += pen.text({content.x, y}, content.width, {TextStyle::kTitle, 1, Ink::kInk, Align::kLeft}, matter.squad);
  const std::string of = matter.club.empty() ? "" : matter.club + ". ";
  y += pen.text({content.x, y}, content.width, {TextStyle::kBody, 2, Ink::kInk, Align::kLeft}, of + matter.facts,
                words::kVisit);
  y += fields({"Date", "Coach", "Seen by", "Began at", "Ended at", "Players"}, 3, {content.x, y + 2}, content.width,
              pen) +
       2;
  y += 6 +
       pen.text({content.x, y + 6}, content.width, {TextStyle::kBody, 2, Ink::kInk, Align::kLeft}, words::kVisitNote);
  return y - content.y;
}

}  // namespace

Result<std::vector<Page>> lay_out_clinic(const ClinicMatter& matter, const Sheet& sheet, const TextMeasure& measure) {
  if (matter.evening.empty() || matter.evening.size() > kMostEvening) {
    return too_many("evening", matter.evening.size(), kMostEvening);
  }
  if (matter.key_drills.empty() || matter.key_drills.size() > kMostKeyDrills) {
    return too_many("key_drills", matter.key_drills.size(), kMostKeyDrills);
  }
  const Box content = content_of(sheet);
  return std::vector<Page>{front(matter, content, measure), back(matter, content, measure)};
}

Result<std::vector<Page>> lay_out_visit_form(const VisitMatter& matter, const Sheet& sheet,
                                             const TextMeasure& measure) {
  if (matter.drills.empty() || matter.drills.size() > kMostEvening) {
    return too_many("drills", matter.drills.size(), kMostEvening);
  }
  const Box content = content_of(sheet);
  std::vector<Page> pages(1);
  const Pen pen(measure, &pages.front());
  double y = content.y + visit_head(matter, content, pen) + 8;
  pen.region("title", {content.x, content.y, content.width, y - 8 - content.y});
  VisitColumns x{true, content.x + kSign + 8, content.x + content.width * 0.5, content.x + content.width * 0.5 + 122};
  const Setting label{TextStyle::kHeading, 1, Ink::kInk, Align::kLeft};
  const double heading = pen.text({x.drill, y}, x.words - x.drill - 12, label, words::kWhatToLookAt);
  pen.text({x.words, y}, 118, label, words::kDidIt);
  pen.text({x.help, y}, content.right() - x.help, label, words::kNeedsHelp);
  y += heading + 3;
  const double foot = visit_foot({content.x, 0}, content.width, Pen(measure, nullptr));
  const Pen ruler(measure, nullptr);
  const auto spare_below = [&] {
    double needed = 0;
    for (const VisitDrillMatter& drill : matter.drills) needed += visit_words(drill, x, 0, ruler);
    return content.bottom() - foot - 8 - y - needed;
  };
  x.cues = spare_below() >= kLeastRowWhite * static_cast<double>(matter.drills.size());
  const double spare = spare_below();
  const double white = std::clamp(spare / static_cast<double>(matter.drills.size()), 0.0, kMostRowWhite);
  for (std::size_t i = 0; i < matter.drills.size(); ++i) {
    const Box box{content.x, y, content.width, visit_words(matter.drills[i], x, 0, ruler) + white};
    visit_row(matter.drills[i], x, box, pen);
    pen.region("drill " + std::to_string(i), box);
    y += box.height;
  }
  const Point at{content.x, content.bottom() - foot};
  visit_foot(at, content.width, pen);
  pen.region("foot", {at.x, at.y, content.width, foot});
  return pages;
}

}  // namespace lanework::draw
