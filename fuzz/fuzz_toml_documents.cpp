// Any text as TOML, and what parses as every document there is: values, or clear faults; and the same tree
// again when it goes through JSON.
#include <cstddef>
#include <cstdint>
#include <string>

#include "core/base/document.h"
#include "core/catalogue/read_catalogue.h"
#include "core/club/read_club.h"
#include "core/people/read_restrictions.h"
#include "core/session/squad.h"
#include "core/session/strip.h"
#include "fuzz/toml_input.h"

namespace {

using lanework::Document;
using lanework::fuzz::kFile;

template <class T>
void check(const lanework::Result<T>& result) {
  if (!result) lanework::fuzz::promise_clear_faults(result.faults(), kFile);
}

void check_json(const Document& document) {
  const std::string once = lanework::to_json(document.root);
  const auto again = lanework::parse_json(kFile, once);
  if (!again) return lanework::fuzz::promise_clear_faults(again.faults(), kFile);
  lanework::fuzz::promise(lanework::to_json(again.value().root) == once, "a document survives JSON");
  const auto rewritten = lanework::parse_toml(kFile, lanework::to_toml(document.root));
  if (!rewritten) return lanework::fuzz::promise_clear_faults(rewritten.faults(), kFile);
  lanework::fuzz::promise(lanework::to_json(rewritten.value().root) == once, "a document survives TOML");
}

void check_readers(const Document& document) {
  check_json(document);
  check(lanework::catalogue::read_drill(document));
  check(lanework::session::read_strip(document));
  const lanework::catalogue::Catalogue nothing{};
  check(lanework::catalogue::read_routine(document, nothing));
  check(lanework::session::read_squad(document, nothing, {}));
  check(lanework::people::read_restrictions(document, {"Q01"}, {"U13"}));
  // The tables of a catalogue, each in turn: what else is missing is said, too.
  lanework::catalogue::CatalogueDocuments documents;
  documents.families = documents.limits = documents.gaits = documents.sources = document;
  documents.drills.push_back(document);
  check(lanework::catalogue::read_catalogue(documents));
  lanework::club::ClubDocuments club;
  club.club = document;
  club.catalogues = {documents};
  club.strips.push_back({"strip", "", document, {kFile, 0, 0, {}}, true});
  const lanework::Faults faults = lanework::club::read_club(club).faults;
  if (!faults.empty()) lanework::fuzz::promise_clear_faults(faults, kFile);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  return lanework::fuzz::with_toml(data, size, check_readers);
}
