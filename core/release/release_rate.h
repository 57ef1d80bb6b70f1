// When a release gives a rate, and of what numbers: one rule for the page and for what is compared.
#pragma once

#include <optional>

#include "core/evidence/rate_ratio.h"
#include "core/release/release.h"

namespace lanework::release {

Done done_by_all(const Release& release);

// Whole hours, as they are given out.
std::int64_t shown_hours(const Done& done);

// On five injuries of five people at least, and on hours that are confirmed for four in five of the sessions that took
// place (own judgement).
bool gives_rate(const Count& count, const Done& done);

// The club's injuries and hours as they stand on the page; empty where it gives no rate.
std::optional<evidence::Exposed> shown_rate(const Release& release);

}  // namespace lanework::release
