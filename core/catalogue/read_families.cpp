#include <algorithm>

#include "core/catalogue/fields.h"
#include "core/catalogue/tables.h"

namespace lanework::catalogue {
namespace {

constexpr int kMostTwoPhaseFamilies = 2;

EccentricFirst read_eccentric_first(TableReader& table) {
  EccentricFirst out;
  out.from_age = static_cast<int>(table.integer("from_age", kYoungestAge, kOldestAge));
  out.other_work_percent = static_cast<int>(table.integer("other_work_percent", 1, 100));
  out.sources = read_sources(table);
  table.finish();
  return out;
}

FamilyRow read_family(TableReader& table, std::size_t position) {
  FamilyRow row{};
  row.family = static_cast<Family>(position);
  const std::string key = table.text("key");
  const std::string expected(family_words()[position]);
  if (!key.empty() && key != expected) {
    table.fault(FaultCode::kContradiction, "key", quote(key), quote(expected) + " in this place");
  }
  row.name = table.text("name");
  row.rank = static_cast<int>(table.integer("rank", 1, kFamilies));
  const std::size_t before = table.faults_so_far();
  row.phases = read_enumerators<Phase>(table, "phases", phase_words());
  if (table.faults_so_far() == before && (row.phases.empty() || row.phases.size() > 2)) {
    table.fault(FaultCode::kOutOfRange, "phases", std::to_string(row.phases.size()), "one phase or two");
  }
  if (row.phases.size() == 2 && row.phases[0] > row.phases[1]) {
    table.fault(FaultCode::kContradiction, "phases", "the later phase first", "phases in the order of the session");
  }
  row.required = table.boolean_or("required", true);
  row.weight = static_cast<int>(table.integer("weight", kLeastWeight, kMostWeight));
  row.session_work = Seconds(table.integer("session_seconds", 1, 600));
  row.week_work = Seconds(table.integer_or("week_seconds", row.session_work.count * 5 / 2, 1, 3600));
  row.why = table.text("why");
  row.sources = read_sources(table);
  if (table.has("week_seconds")) row.week_sources = read_sources(table, "week_sources");
  TableReader eccentric = table.table("eccentric_first");
  if (eccentric.present()) row.eccentric_first = read_eccentric_first(eccentric);
  TableReader emphasis = table.table("emphasis");
  if (emphasis.present()) row.emphasis = read_emphasis(emphasis, row.weight);
  table.finish();
  return row;
}

void check_together(const std::vector<FamilyRow>& rows, std::vector<TableReader>& tables) {
  int two_phases = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].phases.size() == 2 && ++two_phases > kMostTwoPhaseFamilies) {
      tables[i].fault(FaultCode::kContradiction, "phases", "a third family with two phases", "at most two of them");
    }
    for (std::size_t j = 0; j < i; ++j) {
      if (rows[i].rank == rows[j].rank) {
        tables[i].fault(FaultCode::kDuplicate, "rank", std::to_string(rows[i].rank), "a rank of its own");
      }
    }
  }
}

}  // namespace

std::vector<FamilyRow> read_families(const Document& document, Faults& faults) {
  TableReader root(document.file, &document.root, {}, faults);
  const std::size_t before = faults.size();
  std::vector<TableReader> tables = read_tables(root, "family", kFamilies, kFamilies);
  std::vector<FamilyRow> rows;
  for (std::size_t i = 0; i < tables.size() && i < std::size_t{kFamilies}; ++i) {
    rows.push_back(read_family(tables[i], i));
  }
  if (faults.size() == before) check_together(rows, tables);
  root.finish();
  return rows;
}

}  // namespace lanework::catalogue
