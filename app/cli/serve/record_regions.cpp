#include "app/cli/serve/record_regions.h"

#include "app/cli/evening_flags.h"
#include "app/read/read_records.h"

namespace lanework::cli {

Result<std::vector<release::Named>> record_regions(const std::string& catalogue) {
  const auto folder = catalogue_folder(catalogue);
  if (!folder) return folder.faults();
  const auto terms = read::read_record_terms(folder.value());
  if (!terms) return terms.faults();
  std::vector<release::Named> out;
  for (const records::Term& term : terms.value().of(records::Field::kRegion)) out.push_back({term.key, term.shown});
  return out;
}

}  // namespace lanework::cli
