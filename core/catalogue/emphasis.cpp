#include "core/catalogue/emphasis.h"

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <utility>
#include <vector>

#include "core/catalogue/fields.h"
#include "core/catalogue/tables.h"
#include "core/catalogue/words.h"

namespace lanework::catalogue {
namespace {

std::string steps_from(int weight) {
  const int least = std::max(kLeastWeight, weight - kEmphasisStep);
  const int most = std::min(kMostWeight, weight + kEmphasisStep);
  return std::to_string(least) + " to " + std::to_string(most) + ", one step at most from the catalogue's " +
         std::to_string(weight);
}

bool too_far(int weight, int catalogue_weight) { return std::abs(weight - catalogue_weight) > kEmphasisStep; }

struct Season {
  Date from;
  Date to;
};

std::optional<Season> read_season(TableReader& table) {
  const auto day = [&table](const char* key, const char* expected) {
    const std::optional<Date> date = table.date(key);
    if (!date && !table.has(key)) table.fault(FaultCode::kMissing, key, "nothing", expected);
    return date;
  };
  const auto from = day("from", "the first day of the season it rests on");
  const auto to = day("to", "that season's last day");
  if (!from || !to) return {};
  if (*to < *from) {
    table.fault(FaultCode::kContradiction, "to", to_iso(*to), "a day not before " + to_iso(*from));
    return {};
  }
  return Season{*from, *to};
}

// The row of a family, for its weight to be changed; null where there is none that can be read.
Node* row_of(Document& families, std::string_view key) {
  for (auto& [name, list] : families.root.entries) {
    if (name != "family") continue;
    for (Node& row : list.items) {
      const Node* own = row.find("key");
      if (own != nullptr && own->kind == Node::Kind::kText && own->text == key) return &row;
    }
  }
  return nullptr;
}

// The catalogue's own, whatever was put there before.
std::optional<int> catalogue_weight_of(const Node& row) {
  const Node* before = row.find("emphasis");
  const Node* weight = before != nullptr ? before->find("catalogue_weight") : row.find("weight");
  if (weight == nullptr || weight->kind != Node::Kind::kInteger) return {};
  if (weight->integer < kLeastWeight || weight->integer > kMostWeight) return {};
  return static_cast<int>(weight->integer);
}

struct Change {
  Node* row;
  int weight;
  int catalogue_weight;
};

std::vector<Change> read_changes(TableReader& weights, Document& families) {
  std::vector<Change> out;
  for (const std::string& key : weights.keys()) {
    const auto& known = family_words();
    if (std::find(known.begin(), known.end(), key) == known.end()) {
      weights.fault(FaultCode::kUnknownName, key, quote(key), one_of(known));
      continue;
    }
    const std::size_t before = weights.faults_so_far();
    const int weight = static_cast<int>(weights.integer(key, kLeastWeight, kMostWeight));
    Node* row = row_of(families, key);
    const std::optional<int> own = row != nullptr ? catalogue_weight_of(*row) : std::nullopt;
    if (weights.faults_so_far() > before || !own) continue;
    if (too_far(weight, *own)) {
      weights.fault(FaultCode::kOutOfRange, key, std::to_string(weight), steps_from(*own));
    } else if (weight != *own) {
      out.push_back({row, weight, *own});
    }
  }
  return out;
}

}  // namespace

Faults put_emphasis(const Document& emphasis, Document& families) {
  Faults faults;
  TableReader root(emphasis.file, &emphasis.root, {}, faults);
  const std::optional<Season> season = read_season(root);
  TableReader weights = root.table("weights");
  if (!root.has("weights")) {
    root.fault(FaultCode::kMissing, "weights", "nothing", "a table of families with their weights");
  }
  std::vector<Change> changes;
  if (weights.present()) changes = read_changes(weights, families);
  root.finish();
  if (!faults.empty() || !season) return faults;
  for (const Change& change : changes) {
    Node said = Node::make_table();
    said.set("catalogue_weight", Node::make_integer(change.catalogue_weight));
    said.set("from", Node::make_text(to_iso(season->from)));
    said.set("to", Node::make_text(to_iso(season->to)));
    change.row->set("weight", Node::make_integer(change.weight));
    change.row->set("emphasis", std::move(said));
  }
  return faults;
}

Emphasis read_emphasis(TableReader& table, int weight) {
  Emphasis out{};
  const std::size_t before = table.faults_so_far();
  out.catalogue_weight = static_cast<int>(table.integer("catalogue_weight", kLeastWeight, kMostWeight));
  if (table.faults_so_far() == before && too_far(weight, out.catalogue_weight)) {
    table.fault(FaultCode::kOutOfRange, "catalogue_weight", std::to_string(out.catalogue_weight),
                "one step at most from the row's weight, " + std::to_string(weight));
  }
  if (const std::optional<Season> season = read_season(table)) {
    out.from = season->from;
    out.to = season->to;
  }
  table.finish();
  return out;
}

}  // namespace lanework::catalogue
