#include "core/release/make_release.h"

#include <algorithm>

#include "core/release/withhold.h"

namespace lanework::release {
namespace {

std::optional<Fault> audit_fault(const std::vector<NotGiven>& found, const std::string& what, const char* hint) {
  const auto exposed = std::find_if(found.begin(), found.end(), [](const NotGiven& one) { return one.exposed(); });
  if (exposed == found.end()) return std::nullopt;
  return Fault{FaultCode::kContradiction, {"", 0, 0, "audit"}, in_words(*exposed), what, hint};
}

// Entries that came in later about days that were given out: told, not counted.
std::vector<std::string> remarks(const ledger::State& state, const std::vector<Release>& earlier) {
  std::vector<std::string> out;
  for (const Release& one : earlier) {
    std::vector<Period> before;
    for (const Release& other : earlier) {
      if (other.number < one.number) before.push_back(other.period);
    }
    if (counts_of(state, one.period, pieces_of(one.period, before), one.rows) == one.own) continue;
    out.push_back("Since the release of " + to_iso(one.period.from) + " to " + to_iso(one.period.until) +
                  ", entries about its days were added, corrected or erased. Those days count as they were given out.");
  }
  return out;
}

// Where a piece was given out without it, the whole has none: what is not known is not nought.
void count_planned(Release& release, const ledger::State& state, const Wanted& wanted,
                   const std::vector<Release>& earlier, const std::vector<Period>& pieces) {
  if (!wanted.planned) return;
  release.planned_own = planned_of(state, *wanted.planned, wanted.period, pieces);
  release.planned = release.planned_own;
  for (const Release& one : earlier) {
    if (!lies_within(one.period, wanted.period) || !release.planned) continue;
    if (one.planned) {
      release.planned = together(*release.planned, *one.planned);
    } else {
      release.planned.reset();
    }
  }
}

}  // namespace

Result<Made> make_release(const ledger::State& state, const Wanted& wanted, const std::vector<Release>& earlier) {
  std::vector<Period> periods;
  std::int64_t last = 0;
  for (const Release& one : earlier) {
    periods.push_back(one.period);
    last = std::max(last, one.number);
  }
  if (const auto refused = period_refused(wanted.period, periods, wanted.today)) return refused->fault;
  if (const auto fault = audit_fault(audit(earlier), "releases so far that give nothing away",
                                     "nothing more is released: it could only give away more"))
    return *fault;
  Made out;
  Release& release = out.release;
  release.number = last + 1;
  release.period = wanted.period;
  release.club = wanted.club;
  release.made = wanted.made;
  release.rows = wanted.rows;
  release.own = counts_of(state, wanted.period, pieces_of(wanted.period, periods), wanted.rows);
  release.whole = release.own;
  for (const Release& one : earlier) {
    if (lies_within(one.period, wanted.period)) release.whole = together(release.whole, one.whole);
  }
  release.remarks = remarks(state, earlier);
  release.asked = wanted.asked;
  count_planned(release, state, wanted, earlier, pieces_of(wanted.period, periods));
  out.tried = withhold(release, earlier);
  release.compared = compared(release, earlier);
  std::vector<Release> all = earlier;
  all.push_back(release);
  out.not_given = audit(all);
  if (const auto fault =
          audit_fault(out.not_given, "a release that gives nothing away",
                      "nothing was released; hiding every row, and saying nothing of injuries, were tried"))
    return *fault;
  return out;
}

}  // namespace lanework::release
