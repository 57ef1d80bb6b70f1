#include "core/catalogue/read_catalogue.h"

#include <algorithm>

#include "core/catalogue/fields.h"
#include "core/catalogue/tables.h"

namespace lanework::catalogue {
namespace {

// Checks names in one document against the rest of the catalogue, with the place of each fault.
class References {
 public:
  References(const Catalogue& catalogue, Faults& faults) : catalogue_(&catalogue), faults_(&faults) {}

  void sources(const Document& document, const std::vector<std::string>& path, const std::vector<std::string>& keys) {
    for (const std::string& key : keys) {
      if (catalogue_->source(key) != nullptr) continue;
      add(document, path, FaultCode::kUnknownName, quote(key), "a key of sources.toml");
    }
  }

  void gait(const Document& document, const std::string& field, const std::string& key) {
    if (catalogue_->gait(key) != nullptr) return;
    std::vector<std::string> known;
    for (const Gait& row : catalogue_->gaits) known.push_back(row.key);
    add(document, {"lane", field}, FaultCode::kUnknownName, quote(key), one_of(known));
  }

  // path: keys, and positions from 1 within lists.
  void add(const Document& document, const std::vector<std::string>& path, FaultCode code, std::string found,
           std::string expected) {
    const Node* node = &document.root;
    std::string field;
    for (const std::string& step : path) {
      field += (field.empty() ? "" : ".") + step;
      const Node* next = nullptr;
      if (node->kind == Node::Kind::kArray) {
        const std::size_t position = std::stoul(step);
        if (position >= 1 && position <= node->items.size()) next = &node->items[position - 1];
      } else {
        next = node->find(step);
      }
      if (next != nullptr) node = next;
    }
    faults_->push_back(
        Fault{code, {document.file, node->line, node->column, field}, std::move(found), std::move(expected), {}});
  }

 private:
  const Catalogue* catalogue_;
  Faults* faults_;
};

void check_drill_references(const Drill& drill, const Document& document, const Catalogue& catalogue,
                            References& references) {
  const FamilyRow& family = catalogue.family(drill.family);
  if (std::find(family.phases.begin(), family.phases.end(), drill.phase) == family.phases.end()) {
    std::vector<std::string_view> phases;
    for (const Phase phase : family.phases) phases.push_back(word(phase_words(), phase));
    references.add(document, {"phase"}, FaultCode::kContradiction, quote(std::string(word(phase_words(), drill.phase))),
                   one_of(phases) + ", the phases of its family");
  }
  if (drill.formation == Formation::kLane) {
    references.gait(document, "out", drill.lane.out_gait);
    references.gait(document, "back", drill.lane.back_gait);
  }
  references.sources(document, {"sources", "dose"}, drill.sources.dose);
  references.sources(document, {"sources", "timing"}, drill.sources.timing);
  references.sources(document, {"sources", "loads"}, drill.sources.loads);
  references.sources(document, {"sources", "stress"}, drill.sources.stress);
  references.sources(document, {"sources", "technique"}, drill.sources.technique);
}

template <class Row>
void check_row_sources(const Document& document, const std::string& key, const std::vector<Row>& rows,
                       References& references) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    references.sources(document, {key, std::to_string(i + 1), "sources"}, rows[i].sources);
  }
}

void check_families_filled(const Document& families, const Catalogue& catalogue, References& references) {
  for (std::size_t i = 0; i < catalogue.families.size(); ++i) {
    const auto in_family = [&](const Drill& drill) { return drill.family == catalogue.families[i].family; };
    if (std::any_of(catalogue.drills.begin(), catalogue.drills.end(), in_family)) continue;
    references.add(families, {"family", std::to_string(i + 1), "key"}, FaultCode::kMissing,
                   "no drill of family " + quote(std::string(family_words()[i])), "at least one drill");
  }
}

void check_own_id(const Drill& drill, const Document& document, const std::string& other_file, References& references) {
  references.add(document, {"id"}, FaultCode::kDuplicate, quote(drill.id),
                 "an id of its own; " + quote(other_file) + " has it too");
}

void check_tables(const CatalogueDocuments& documents, const Catalogue& catalogue, References& references) {
  check_row_sources(documents.families, "family", catalogue.families, references);
  check_row_sources(documents.gaits, "gait", catalogue.gaits, references);
  check_row_sources(documents.limits, "ceilings", catalogue.limits.ceilings, references);
  check_row_sources(documents.limits, "match", catalogue.limits.match, references);
  references.sources(documents.limits, {"sources"}, catalogue.limits.sources);
  for (std::size_t i = 0; i < catalogue.families.size(); ++i) {
    const FamilyRow& row = catalogue.families[i];
    const std::string position = std::to_string(i + 1);
    references.sources(documents.families, {"family", position, "week_sources"}, row.week_sources);
    if (!row.eccentric_first) continue;
    references.sources(documents.families, {"family", position, "eccentric_first", "sources"},
                       row.eccentric_first->sources);
  }
  check_families_filled(documents.families, catalogue, references);
}

struct ReadDrill {
  Drill drill;
  const Document* document;
};

std::vector<ReadDrill> read_drills(const std::vector<Document>& documents, Faults& faults) {
  std::vector<ReadDrill> out;
  for (const Document& document : documents) {
    Result<Drill> drill = read_drill(document);
    if (drill.ok()) {
      out.push_back({std::move(drill).value(), &document});
    } else {
      faults.insert(faults.end(), drill.faults().begin(), drill.faults().end());
    }
  }
  // Stable, so that of two drills with one id the one handed in later is at fault.
  std::stable_sort(out.begin(), out.end(),
                   [](const ReadDrill& a, const ReadDrill& b) { return a.drill.id < b.drill.id; });
  return out;
}

}  // namespace

Result<Catalogue> read_catalogue(const CatalogueDocuments& documents) {
  Faults faults;
  Catalogue catalogue;
  catalogue.families = read_families(documents.families, faults);
  catalogue.gaits = read_gaits(documents.gaits, faults);
  catalogue.limits = read_limits(documents.limits, faults);
  catalogue.sources = read_source_list(documents.sources, faults);
  const bool tables_read = faults.empty();
  const std::vector<ReadDrill> drills = read_drills(documents.drills, faults);
  const bool drills_read = drills.size() == documents.drills.size();

  References references(catalogue, faults);
  for (std::size_t i = 0; i < drills.size(); ++i) {
    const Drill& drill = drills[i].drill;
    if (i > 0 && drills[i - 1].drill.id == drill.id) {
      check_own_id(drill, *drills[i].document, drills[i - 1].drill.file, references);
    }
    if (tables_read) check_drill_references(drill, *drills[i].document, catalogue, references);
    catalogue.drills.push_back(drill);
  }
  // A drill that could not be read must not also count as missing from its family.
  if (tables_read && drills_read) check_tables(documents, catalogue, references);
  if (!faults.empty()) return faults;
  return catalogue;
}

Faults check_drill_in(const Document& document, const std::string& instead_of, const Catalogue& catalogue) {
  const Result<Drill> drill = read_drill(document);
  if (!drill) return drill.faults();
  Catalogue after = catalogue;
  std::erase_if(after.drills, [&](const Drill& other) { return other.id == instead_of; });
  Faults faults;
  References references(catalogue, faults);
  const Drill* other = after.find(drill.value().id);
  if (other != nullptr) check_own_id(drill.value(), document, other->file, references);
  check_drill_references(drill.value(), document, catalogue, references);
  after.drills.push_back(drill.value());
  check_families_filled({"families", Node::make_table()}, after, references);
  return faults;
}

}  // namespace lanework::catalogue
