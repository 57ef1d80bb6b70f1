#include "core/care/environment/session_change.h"

#include <algorithm>
#include <iterator>

namespace lanework::care::environment {
namespace {

bool not_on_this_evening(const SessionChange& change) { return change.no_session && !change.no_session->until; }

std::optional<NoSession> longest(const std::optional<NoSession>& a, const std::optional<NoSession>& b) {
  if (!a || !b) return a ? a : b;
  if (!a->until || !b->until) return NoSession{};
  return NoSession{std::max(*a->until, *b->until)};
}

std::optional<Breaks> most_rest(const std::optional<Breaks>& a, const std::optional<Breaks>& b) {
  if (!a || !b) return a ? a : b;
  return Breaks{std::min(a->longest_stretch, b->longest_stretch), std::max(a->each, b->each)};
}

std::optional<Seconds> least_time(const std::optional<Seconds>& a, const std::optional<Seconds>& b) {
  if (!a || !b) return a ? a : b;
  return std::min(*a, *b);
}

std::vector<Reason> all_reasons(std::vector<Reason> a, const std::vector<Reason>& b) {
  a.insert(a.end(), b.begin(), b.end());
  std::sort(a.begin(), a.end());
  a.erase(std::unique(a.begin(), a.end()), a.end());
  return a;
}

std::string time_words(Seconds time) {
  if (time.count % 60 != 0) return std::to_string(time.count) + " seconds";
  const std::int64_t minutes = time.count / 60;
  return std::to_string(minutes) + (minutes == 1 ? " minute" : " minutes");
}

void append(std::string& words, const std::string& more) { words += (words.empty() ? "" : "; ") + more; }

}  // namespace

const char* topic_word(Topic topic) {
  switch (topic) {
    case Topic::kHeat:
      return "heat";
    case Topic::kCold:
      return "cold";
    case Topic::kLightning:
      return "lightning";
    case Topic::kAir:
      break;
  }
  return "air";
}

bool SessionChange::changes() const { return no_session || breaks || most_time || effort != Effort::kUsual; }

SessionChange most_careful(const SessionChange& a, const SessionChange& b) {
  SessionChange out;
  out.no_session = longest(a.no_session, b.no_session);
  out.reasons = all_reasons(a.reasons, b.reasons);
  if (not_on_this_evening(out)) return out;
  out.breaks = most_rest(a.breaks, b.breaks);
  out.most_time = least_time(a.most_time, b.most_time);
  out.effort = std::max(a.effort, b.effort);
  return out;
}

bool at_least_as_careful(const SessionChange& a, const SessionChange& b) {
  SessionChange both = most_careful(a, b);
  SessionChange alone = most_careful(a, a);
  both.reasons.clear();
  alone.reasons.clear();
  return both == alone;
}

BreaksInSlot breaks_in(const Breaks& breaks, Seconds slot) {
  const std::int64_t stretch = breaks.longest_stretch.count;
  const std::int64_t too_long = slot.count - stretch;
  if (too_long <= 0) return {0, breaks.each};
  const std::int64_t with_break = stretch + breaks.each.count;
  return {(too_long + with_break - 1) / with_break, breaks.each};
}

std::string to_words(const SessionChange& change, Moment seen_from) {
  if (not_on_this_evening(change)) return "no session";
  std::string out;
  if (change.no_session) append(out, "no session before " + to_words(*change.no_session->until, seen_from));
  if (change.most_time) append(out, "at most " + time_words(*change.most_time));
  if (change.breaks) {
    append(out, "after every " + time_words(change.breaks->longest_stretch) + " at most a break of " +
                    time_words(change.breaks->each));
  }
  if (change.effort == Effort::kLower) append(out, "less hard and less fast than usual");
  if (change.effort == Effort::kEasy) append(out, "nothing hard: no sprints, no conditioning");
  return out.empty() ? "no change" : out;
}

}  // namespace lanework::care::environment
