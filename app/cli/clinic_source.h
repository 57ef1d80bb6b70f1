// What the pack for a coach's first evening is made of, for a squad of the club.
#pragma once

#include "app/cli/clinic_matter.h"
#include "core/base/result.h"
#include "core/club/club.h"

namespace lanework::cli {

// The club must outlive it. Faults: of the venue's plan.
Result<ClinicSource> clinic_source_of(const club::Club& club, const club::ClubSquad& squad);

}  // namespace lanework::cli
