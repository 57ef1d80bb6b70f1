// Reads the tables of catalogue/care/*.toml (docs/formats/weather.md).
#pragma once

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/care/environment/bands.h"
#include "core/care/environment/fine_particles.h"

namespace lanework::care::environment {

struct EnvironmentTables {
  BandTables heat;
  BandTables cold;
  BandTables air;
  FineParticleScale fine_particles;
};

struct EnvironmentDocuments {
  Document heat;
  Document cold;
  Document air;
};

// Faults of all three together: bands out of order, a band that asks less than the one before it or less of who is not
// used to heat, a region that two tables claim, a default that no table has, ...
Result<EnvironmentTables> read_environment_tables(const EnvironmentDocuments& documents);

// The key 'standing' of a table: read, read-second-hand, unverified.
Standing read_standing(TableReader& table);

}  // namespace lanework::care::environment
