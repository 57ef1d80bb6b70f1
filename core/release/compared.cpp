#include "core/release/compared.h"

#include <cmath>
#include <cstdlib>

#include "core/evidence/rate_ratio.h"
#include "core/release/release_rate.h"

namespace lanework::release {
namespace {

constexpr int kDaysAYear = 365;

bool are_apart(const Period& one, const Period& other) { return one.until < other.from || other.until < one.from; }

int off_a_year(const Release& release, const Release& earlier) {
  return std::abs(days_between(earlier.period.from, release.period.from) - kDaysAYear);
}

double hundredths(double value) {
  constexpr double kHundred = 100;
  return std::round(value * kHundred) / kHundred;
}

}  // namespace

std::optional<Compared> compared(const Release& release, const std::vector<Release>& earlier) {
  const auto own = shown_rate(release);
  if (!own) return {};
  const Release* best = nullptr;
  for (const Release& one : earlier) {
    if (!are_apart(one.period, release.period) || !shown_rate(one)) continue;
    if (best == nullptr || off_a_year(release, one) < off_a_year(release, *best)) best = &one;
  }
  if (best == nullptr) return {};
  const auto other = shown_rate(*best);
  const evidence::Interval limits = evidence::exact_ratio(*own, *other, evidence::kUsualLevel).limits;
  return Compared{best->number, best->period, hundredths(evidence::rate_ratio(*own, *other)), hundredths(limits.low),
                  hundredths(limits.high)};
}

}  // namespace lanework::release
