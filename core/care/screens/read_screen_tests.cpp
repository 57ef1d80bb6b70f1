#include <algorithm>

#include "core/care/screens/screen_tests.h"

namespace lanework::care::screens {
namespace {

constexpr std::int64_t kThousandths = 1000;
constexpr double kMostValue = 10'000;

double real(TableReader& table, std::string_view key, double least, double most) {
  return static_cast<double>(table.scaled(key, kThousandths, least, most)) / static_cast<double>(kThousandths);
}

std::vector<std::string> sources(TableReader& table) {
  std::vector<std::string> out = table.texts("sources");
  if (out.empty()) table.fault(FaultCode::kMissing, "sources", "nothing", "at least one key of sources.toml");
  return out;
}

Norm read_norm(TableReader& table) {
  Norm out;
  out.words = table.text("words");
  out.of = table.text("of");
  out.unverified = table.boolean_or("unverified", false);
  out.sources = sources(table);
  table.finish();
  return out;
}

DetectableChange read_change(TableReader& table) {
  DetectableChange out;
  out.value = real(table, "value", 0.001, kMostValue);
  out.of = table.text("of");
  out.trials = static_cast<int>(table.integer("trials", 1, 20));
  out.sources = sources(table);
  table.finish();
  return out;
}

ScreenTest read_test(TableReader& table) {
  static const std::vector<std::string_view> kWanted = {"more", "less", "zero"};
  ScreenTest out;
  out.key = table.text("key");
  out.name = table.text("name");
  out.unit = table.text("unit");
  out.wanted = static_cast<Wanted>(std::max(0, table.word("wanted", kWanted)));
  out.sides = table.boolean_or("sides", false);
  out.symmetry = table.boolean_or("symmetry", false);
  out.knee_angle = table.boolean_or("knee_angle", false);
  out.least = real(table, "least", -kMostValue, kMostValue);
  out.most = real(table, "most", -kMostValue, kMostValue);
  out.protocol = table.text("protocol");
  out.caution = table.text_or("caution", "");
  if (table.has("change")) {
    TableReader change = table.table("change");
    out.change = read_change(change);
  }
  for (TableReader& norm : table.tables("norm")) out.norms.push_back(read_norm(norm));
  out.sources = sources(table);
  if (out.least >= out.most) table.fault(FaultCode::kContradiction, "most", "no more than the least", "more");
  if (out.symmetry && (!out.sides || out.wanted == Wanted::kZero)) {
    table.fault(FaultCode::kContradiction, "symmetry", "true", "false where there are no sides, or 0 is wanted");
  }
  table.finish();
  return out;
}

}  // namespace

const ScreenTest* ScreenTests::find(const std::string& key) const {
  const auto found = std::find_if(tests.begin(), tests.end(), [&](const ScreenTest& test) { return test.key == key; });
  return found == tests.end() ? nullptr : &*found;
}

Result<ScreenTests> read_screen_tests(const Document& document) {
  Faults faults;
  TableReader root(document.file, &document.root, {}, faults);
  ScreenTests out;
  if (!root.has("symmetry")) root.fault(FaultCode::kMissing, "symmetry", "nothing", "a table");
  TableReader symmetry = root.table("symmetry");
  out.symmetry_prompt_percent = real(symmetry, "prompt_below_percent", 50, 100);
  out.symmetry_caution = symmetry.text("caution");
  out.symmetry_sources = sources(symmetry);
  symmetry.finish();
  for (TableReader& table : root.tables("test")) {
    ScreenTest test = read_test(table);
    if (out.find(test.key) != nullptr) table.fault(FaultCode::kDuplicate, "key", quote(test.key), "each test once");
    out.tests.push_back(std::move(test));
  }
  if (out.tests.empty()) root.fault(FaultCode::kMissing, "test", "no row", "at least one test");
  root.finish();
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace lanework::care::screens
