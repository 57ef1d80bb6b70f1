// The documents of a request read into values: the one place where everything about an evening comes
// together. Files from disk and parts of a JSON request end here alike.
#pragma once

#include <optional>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/catalogue/read_catalogue.h"
#include "core/people/player.h"
#include "core/session/squad.h"

namespace lanework::door {

struct EveningDocuments {
  catalogue::CatalogueDocuments catalogue;
  Document routine;
  Document strip;
  Document squad;
  Document restrictions;  // an empty table when there are none
  std::vector<people::Player> roster;
  std::optional<Document> permissions = {};            // in place of restrictions, as a coach's device has them
  std::optional<people::Restrictions> held_back = {};  // in place of both, where they are at hand as values
};

struct EveningMatter {
  catalogue::Catalogue catalogue;
  catalogue::Routine routine;
  session::Strip strip;
  session::Squad squad;
  people::Restrictions restrictions;
  std::vector<people::Player> roster;
  session::Evening evening;
};

// All faults of all parts that can be read independently are collected.
Result<EveningMatter> read_evening(EveningDocuments documents);
// With a catalogue that is read already; that of the documents is not looked at.
Result<EveningMatter> read_evening(EveningDocuments documents, catalogue::Catalogue catalogue);

// The parts of a JSON request (docs/formats/door.md), and a request made of them. Where the request names a catalogue
// that is held, the documents' own is empty.
Result<EveningDocuments> documents_of(const Node& request);
Result<catalogue::CatalogueDocuments> catalogue_documents_of(const Node& request);
Node catalogue_node(const catalogue::CatalogueDocuments& documents);
Node request_of(const std::string& name, const EveningDocuments& documents);

}  // namespace lanework::door
