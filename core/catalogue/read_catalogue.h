// Documents (TOML files or JSON parts of a request) to a Catalogue. All faults are collected.
#pragma once

#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/catalogue/catalogue.h"
#include "core/catalogue/routine.h"

namespace lanework::catalogue {

// The documents a catalogue is made of.
struct CatalogueDocuments {
  std::vector<Document> drills;  // one a drill
  Document families;
  Document limits;
  Document gaits;
  Document sources;
};

Result<Drill> read_drill(const Document& document);

// sources.toml alone, for what lies beside the catalogue and names sources.
Result<std::vector<Source>> read_sources(const Document& document);

// Reads everything and checks it as a whole: names, references, ranges, sources, figures, and that each
// drill can be timed. A catalogue that comes back is fit for planning.
Result<Catalogue> read_catalogue(const CatalogueDocuments& documents);

// What read_catalogue would say of the whole with this drill in a sound catalogue, in the place of 'instead_of' where
// there is one of that id; empty where it is sound.
Faults check_drill_in(const Document& document, const std::string& instead_of, const Catalogue& catalogue);

// A routine against its catalogue: known drills, rungs and doses, order of phases, no drill twice, an age
// floor or a youth ceiling not broken.
Result<Routine> read_routine(const Document& document, const Catalogue& catalogue);

}  // namespace lanework::catalogue
