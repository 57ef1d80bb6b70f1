#include <algorithm>

#include "core/catalogue/fields.h"
#include "core/catalogue/tables.h"

namespace lanework::catalogue {
namespace {

constexpr std::size_t kMostGaits = 40;

Gait read_gait(TableReader& table) {
  Gait gait{};
  gait.key = read_key(table, "key");
  gait.name = table.text("name");
  const std::vector<std::int64_t> speeds = table.scaled_list("speeds", gait.speed.size(), 1000, 0.1, 12);
  std::transform(speeds.begin(), speeds.end(), gait.speed.begin(),
                 [](std::int64_t speed) { return MillimetresPerSecond(speed); });
  gait.spread_thousandths = static_cast<int>(table.scaled("spread", 1000, 0, 0.5));
  gait.sources = read_sources(table);
  table.finish();
  return gait;
}

}  // namespace

std::vector<Gait> read_gaits(const Document& document, Faults& faults) {
  TableReader root(document.file, &document.root, {}, faults);
  const std::size_t before = faults.size();
  std::vector<Gait> gaits;
  std::vector<std::string> keys;
  for (TableReader& table : read_tables(root, "gait", 1, kMostGaits)) {
    gaits.push_back(read_gait(table));
    const std::string& key = gaits.back().key;
    if (std::find(keys.begin(), keys.end(), key) != keys.end()) {
      table.fault(FaultCode::kDuplicate, "key", quote(key), "a key of its own for every gait");
    }
    keys.push_back(key);
  }
  root.finish();
  if (faults.size() != before) return gaits;
  // 'walk' carries players between formations; 'run' is the row that shares of top speed refer to.
  for (const std::string needed : {"walk", "run"}) {
    if (std::find(keys.begin(), keys.end(), needed) == keys.end()) {
      root.fault(FaultCode::kMissing, "gait", "no gait " + quote(needed), "a gait of that key");
    }
  }
  return gaits;
}

}  // namespace lanework::catalogue
