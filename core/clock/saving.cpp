#include "core/clock/saving.h"

#include <algorithm>
#include <array>

#include "core/clock/constants.h"
#include "core/clock/drill_work.h"

namespace lanework::clock {
namespace {

constexpr int kMostLanes = 12;
constexpr std::int64_t kShortestLane = 5000;  // mm, as a strip's file allows

struct Question {
  const session::Session& session;
  const catalogue::Catalogue& catalogue;
  const session::Evening& evening;
  std::vector<SessionLine> lines;  // as things are
  Seconds planned;
};

const catalogue::Drill& drill_of(const Question& question, const session::Item& item) {
  return question.catalogue.drills[static_cast<std::size_t>(item.drill)];
}

Saving with_change(const Question& question, const session::Evening& changed, const std::string& what) {
  const Seconds planned = planned_time(session_lines(question.session, question.catalogue, changed));
  return {what, question.planned - planned};
}

Saving with_lines(const Question& question, const std::vector<SessionLine>& changed, const std::string& what) {
  return {what, question.planned - planned_time(changed)};
}

Saving one_more_lane(const Question& question) {
  static constexpr std::array<const char*, kMostLanes + 1> kOrdinals = {
      "",        "first",  "second", "third", "fourth",   "fifth",  "sixth",
      "seventh", "eighth", "ninth",  "tenth", "eleventh", "twelfth"};
  const int lanes = question.evening.strip.lanes + 1;
  if (lanes > kMostLanes) return {};
  session::Evening changed = question.evening;
  changed.strip.lanes = lanes;
  const std::string ordinal = kOrdinals[static_cast<std::size_t>(lanes)];
  return with_change(question, changed, (ordinal.front() == 'e' ? "an " : "a ") + ordinal + " lane");
}

Saving room_for_all(const Question& question) {
  std::vector<SessionLine> lines = question.lines;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].time.waves == 1) continue;
    const session::Item& item = question.session.items[i];
    const catalogue::Drill& drill = drill_of(question, item);
    const session::Evening& evening = question.evening;
    const DrillWork work = drill_work(question.catalogue, drill, drill.dose.steps[static_cast<std::size_t>(item.dose)],
                                      {evening.turnout, evening.age, evening.strip});
    lines[i].time.doing = Milliseconds((work.each_wave.count * evening.pace_thousandths + 999) / 1000);
  }
  return with_lines(question, lines, "room for everybody at once");
}

Saving shorter_telling(const Question& question) {
  std::vector<SessionLine> lines = question.lines;
  for (SessionLine& line : lines) {
    const std::int64_t told = line.time.telling.count;
    line.time.telling = Milliseconds(std::max((told + 1) / 2, std::min(kTellingFloor, told)));
  }
  return with_lines(question, lines, "telling each drill in half the time");
}

std::string metres(Millimetres length) {
  std::string text = std::to_string(length.count / 1000);
  const std::int64_t tenths = length.count % 1000 / 100;
  if (tenths > 0) text += '.' + std::to_string(tenths);
  return text + " m";
}

Saving shorter_lane(const Question& question) {
  const session::Strip& strip = question.evening.strip;
  const Millimetres shorter = strip.lane_length - strip.cone_spacing;
  if (shorter.count < kShortestLane || shorter < strip.cone_spacing) return {};
  for (const session::Item& item : question.session.items) {
    const catalogue::Drill& drill = drill_of(question, item);
    if (drill.formation == catalogue::Formation::kLane && drill.lane.least_lane > shorter) return {};
  }
  session::Evening changed = question.evening;
  changed.strip.lane_length = shorter;
  return with_change(question, changed, "a lane of " + metres(shorter) + " instead of " + metres(strip.lane_length));
}

}  // namespace

std::string duration_in_words(Seconds time) {
  const std::int64_t minutes = time.count / 60;
  const std::int64_t seconds = time.count % 60;
  if (minutes == 0) return std::to_string(seconds) + " s";
  const std::string whole = std::to_string(minutes) + " min";
  return seconds == 0 ? whole : whole + ' ' + std::to_string(seconds) + " s";
}

Saving best_saving(const session::Session& session, const catalogue::Catalogue& catalogue,
                   const session::Evening& evening) {
  Question question{session, catalogue, evening, session_lines(session, catalogue, evening), Seconds(0)};
  question.planned = planned_time(question.lines);
  Saving best;
  for (const Saving& saving : {one_more_lane(question), room_for_all(question), shorter_telling(question)}) {
    if (saving.saved > best.saved) best = saving;
  }
  std::string tail;
  if (best.saved.count < kWorthSaying) {
    best = shorter_lane(question);
    tail = ", with less running";
  }
  if (best.saved.count < kWorthSaying) return {};
  best.sentence += " saves " + duration_in_words(best.saved) + tail;
  return best;
}

}  // namespace lanework::clock
