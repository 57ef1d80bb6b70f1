#include <algorithm>

#include "core/catalogue/fields.h"
#include "core/catalogue/read_catalogue.h"
#include "core/catalogue/tables.h"

namespace lanework::catalogue {
namespace {

constexpr std::size_t kMostSources = 1000;

// Nobody to name stands behind these.
bool is_nobodys(const std::string& key) {
  return key == "common-practice" || key == "own-judgement" || key == "from-memory";
}

Source read_source(TableReader& table) {
  Source source;
  source.key = read_key(table, "key");
  source.note = table.text("note");
  if (is_nobodys(source.key)) {
    table.finish();  // no author, no year
    return source;
  }
  source.author = table.text("author");
  source.year = static_cast<int>(table.integer("year", 1900, 2100));
  source.doi = table.text_or("doi", "");
  if (!source.doi.empty() && source.doi.compare(0, 3, "10.") != 0) {
    table.fault(FaultCode::kContradiction, "doi", quote(source.doi), "a DOI, which starts with 10.");
  }
  source.unverified = table.boolean_or("unverified", false);
  table.finish();
  return source;
}

}  // namespace

std::vector<Source> read_source_list(const Document& document, Faults& faults) {
  TableReader root(document.file, &document.root, {}, faults);
  std::vector<Source> sources;
  for (TableReader& table : read_tables(root, "source", 1, kMostSources)) {
    Source source = read_source(table);
    const auto same = [&](const Source& s) { return s.key == source.key; };
    if (std::any_of(sources.begin(), sources.end(), same)) {
      table.fault(FaultCode::kDuplicate, "key", quote(source.key), "a key of its own for every source");
    }
    sources.push_back(std::move(source));
  }
  root.finish();
  return sources;
}

Result<std::vector<Source>> read_sources(const Document& document) {
  Faults faults;
  std::vector<Source> sources = read_source_list(document, faults);
  if (!faults.empty()) return faults;
  return sources;
}

}  // namespace lanework::catalogue
