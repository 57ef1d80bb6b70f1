#include "core/release/period.h"

#include <algorithm>
#include <iterator>
#include <string>

namespace lanework::release {
namespace {

std::string words(const Period& period) { return to_iso(period.from) + " to " + to_iso(period.until); }

bool meet(const Period& one, const Period& other) { return one.from <= other.until && other.from <= one.until; }

PeriodRefused refused(const char* key, FaultCode code, const Period& period, std::string expected,
                      std::string hint = {}) {
  return {key, {code, {"", 0, 0, "period"}, words(period), std::move(expected), std::move(hint)}};
}

}  // namespace

int days_of(const Period& period) { return days_between(period.from, period.until) + 1; }

bool holds(const Period& period, Date day) { return period.from <= day && day <= period.until; }

bool lies_within(const Period& inner, const Period& outer) {
  return outer.from <= inner.from && inner.until <= outer.until;
}

std::vector<Period> pieces_of(const Period& period, const std::vector<Period>& earlier) {
  std::vector<Period> out;
  std::copy_if(earlier.begin(), earlier.end(), std::back_inserter(out),
               [&](const Period& one) { return lies_within(one, period); });
  return out;
}

int new_days(const Period& period, const std::vector<Period>& earlier) {
  int out = days_of(period);
  for (const Period& piece : pieces_of(period, earlier)) out -= days_of(piece);
  return out;
}

std::optional<PeriodRefused> period_refused(const Period& period, const std::vector<Period>& earlier, Date today) {
  if (period.until < period.from) {
    return refused("ends-before-it-begins", FaultCode::kContradiction, period,
                   "a period that does not end before it begins");
  }
  if (days_of(period) < kLeastDays || days_of(period) > kMostDays) {
    return refused("no-season-or-half", FaultCode::kOutOfRange, period,
                   "a season or a half: " + std::to_string(kLeastDays) + " to " + std::to_string(kMostDays) + " days");
  }
  if (today <= period.until) return refused("not-over", FaultCode::kOutOfRange, period, "a period that is over");
  for (const Period& one : earlier) {
    if (one == period) {
      return refused("released-already", FaultCode::kDuplicate, period,
                     "a period that was not released yet: what was given out is frozen",
                     "what was corrected since is remarked on in the next release");
    }
    if (meet(one, period) && !lies_within(one, period)) {
      return refused("overlaps-a-release", FaultCode::kContradiction, period,
                     "a period that has nothing of " + words(one) + ", which was released, or all of it",
                     "other pieces of the same days would give away what was withheld");
    }
  }
  const std::vector<Period> pieces = pieces_of(period, earlier);
  for (const Period& piece : pieces) {
    if (!pieces_of(piece, earlier).empty() && pieces_of(piece, earlier) != std::vector<Period>{piece}) {
      return refused("holds-an-older-release", FaultCode::kContradiction, period,
                     "a period without " + words(piece) + ", which holds one that was released before it");
    }
  }
  const int left = new_days(period, earlier);
  if (left > 0 && left < kLeastDays) {
    return refused("too-few-new-days", FaultCode::kOutOfRange, period,
                   "at least " + std::to_string(kLeastDays) + " days that were not released yet, or none; these are " +
                       std::to_string(left));
  }
  return std::nullopt;
}

}  // namespace lanework::release
