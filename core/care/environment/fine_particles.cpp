#include "core/care/environment/fine_particles.h"

#include <cmath>

#include "core/care/environment/read_bands.h"

namespace lanework::care::environment {
namespace {

constexpr int kMostIndex = 1000;

// Binary fractions lie a little beside tenths: 35.4 * 10 is not 354.
int upper_tenths(double concentration) { return static_cast<int>(std::ceil(concentration * 10 - 1e-6)); }

void check_follows(TableReader& row, const FineParticleLine& line, const std::vector<FineParticleLine>& before) {
  if (line.to_tenths <= line.from_tenths || line.index_to <= line.index_from)
    row.fault(FaultCode::kContradiction, "to", "a line that does not rise", "more than where it starts");
  const int from = before.empty() ? 0 : before.back().to_tenths + 1;
  const int index_from = before.empty() ? 0 : before.back().index_to + 1;
  if (line.from_tenths != from)
    row.fault(FaultCode::kContradiction, "from", std::to_string(line.from_tenths) + " tenths",
              "one tenth above the line before: " + std::to_string(from) + " tenths");
  if (line.index_from != index_from)
    row.fault(FaultCode::kContradiction, "index_from", std::to_string(line.index_from),
              "one above the line before: " + std::to_string(index_from));
}

}  // namespace

AirQualityIndex index_of(const FineParticleScale& scale, MicrogramsPerCubicMetre fine_particles) {
  const int tenths = upper_tenths(fine_particles.concentration);
  for (const FineParticleLine& line : scale.lines) {
    if (tenths > line.to_tenths) continue;
    const double share = static_cast<double>(tenths - line.from_tenths) / (line.to_tenths - line.from_tenths);
    return {line.index_from + share * (line.index_to - line.index_from), false};
  }
  return {scale.lines.back().index_to + 1.0, true};
}

FineParticleScale read_fine_particles(TableReader& root) {
  FineParticleScale scale;
  TableReader table = root.table("fine_particles");
  if (!table.present()) {
    if (!root.has("fine_particles"))
      root.fault(FaultCode::kMissing, "fine_particles", "nothing", "a table with source, standing and lines");
    return scale;
  }
  scale.source = table.text("source");
  scale.standing = read_standing(table);
  for (TableReader& row : table.tables("line")) {
    FineParticleLine line;
    line.from_tenths = static_cast<int>(row.scaled("from", 10, 0, 10000));
    line.to_tenths = static_cast<int>(row.scaled("to", 10, 0, 10000));
    line.index_from = static_cast<int>(row.integer("index_from", 0, kMostIndex));
    line.index_to = static_cast<int>(row.integer("index_to", 0, kMostIndex));
    row.finish();
    check_follows(row, line, scale.lines);
    scale.lines.push_back(line);
  }
  if (scale.lines.empty()) table.fault(FaultCode::kMissing, "line", "nothing", "at least one line");
  table.finish();
  return scale;
}

}  // namespace lanework::care::environment
