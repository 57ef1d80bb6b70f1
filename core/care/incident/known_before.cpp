#include "core/care/incident/known_before.h"

#include <algorithm>
#include <iterator>

namespace lanework::care {
namespace {

bool received_before(const Entry& entry, const Incident& incident) {
  const Date day = local_day(entry.received);
  return day < incident.date || (day == incident.date && incident.time && local_time(entry.received) < *incident.time);
}

// The fold gives an entry whose id came before with other content a name of its own.
bool is_named(const Entry& entry, const EntryId& name) {
  return entry.id == name || entry.id + "#" + std::to_string(entry.receipt) == name;
}

class Before {
 public:
  Before(const std::vector<Entry>& entries, const Incident& incident) : incident_(incident) {
    std::copy_if(entries.begin(), entries.end(), std::back_inserter(received_),
                 [&](const Entry& entry) { return received_before(entry, incident); });
    std::stable_sort(received_.begin(), received_.end(),
                     [](const Entry& a, const Entry& b) { return a.receipt < b.receipt; });
  }

  KnownBefore run(const PainRule& pain, const ReturnRules& rules, const Ages& ages) {
    const Knowledge known = fold(received_, pain, rules, ages);
    out_.as_known = known.as_known;
    for (const CourseStanding& course : known.courses) {
      if (course.player == incident_.player && !course.closed) take(course);
    }
    for (const Standing& standing : holding_on(known.standing, incident_.date)) {
      if (standing.restriction.player == incident_.player) take(standing);
    }
    std::stable_sort(out_.hurts.begin(), out_.hurts.end(),
                     [](const Entry& a, const Entry& b) { return a.receipt < b.receipt; });
    return std::move(out_);
  }

 private:
  const Incident& incident_;
  std::vector<Entry> received_;
  KnownBefore out_;

  std::vector<Entry> named(const EntryIds& names) const {
    std::vector<Entry> out;
    for (const EntryId& name : names) {
      const auto found =
          std::find_if(received_.begin(), received_.end(), [&](const Entry& entry) { return is_named(entry, name); });
      if (found != received_.end()) out.push_back(*found);
    }
    return out;
  }

  void take(const CourseStanding& course) {
    for (Entry& hurt : named(course.carries)) out_.hurts.push_back(std::move(hurt));
    out_.courses.push_back(course);
  }

  void take(const Standing& standing) {
    std::vector<Entry> from = named(standing.stems_from);
    if (from.empty()) return;
    if (std::holds_alternative<CourseOpened>(from.front().what)) return;  // told as the course
    if (std::holds_alternative<Hurt>(from.front().what)) {
      out_.hurts.push_back(std::move(from.front()));
    } else {
      out_.held.push_back({standing.restriction, std::move(from)});
    }
  }
};

}  // namespace

KnownBefore known_before(const std::vector<Entry>& entries, const Incident& incident, const PainRule& pain,
                         const ReturnRules& rules, const Ages& ages) {
  return Before(entries, incident).run(pain, rules, ages);
}

}  // namespace lanework::care
