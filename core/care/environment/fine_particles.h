// The air quality index of a concentration of fine particles (PM2.5): I = (Ihi - Ilo) / (Bhi - Blo) * (C - Blo) + Ilo
// between the breakpoints of catalogue/care/air_bands.toml (2024, unverified). The index is meant for a mean of 24
// hours; an hour's value stands for it only roughly.
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/care/environment/bands.h"

namespace lanework::care::environment {

struct MicrogramsPerCubicMetre {
  double concentration = 0;
  constexpr auto operator<=>(const MicrogramsPerCubicMetre&) const = default;
};

// Concentrations in tenths, as the breakpoints are.
struct FineParticleLine {
  int from_tenths = 0;
  int to_tenths = 0;
  int index_from = 0;
  int index_to = 0;
};

struct FineParticleScale {
  std::string source;
  Standing standing = Standing::kUnverified;
  std::vector<FineParticleLine> lines;  // ascending, from 0, without a gap in tenths
};

struct AirQualityIndex {
  double index = 0;
  bool beyond_scale = false;  // at least so much
};

// A concentration between two tenths counts as the upper one (own judgement: the careful side). REQUIRES: 0 or more.
AirQualityIndex index_of(const FineParticleScale& scale, MicrogramsPerCubicMetre fine_particles);

// The table 'fine_particles' of air_bands.toml.
FineParticleScale read_fine_particles(TableReader& root);

}  // namespace lanework::care::environment
