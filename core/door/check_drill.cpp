#include "core/door/check_drill.h"

#include <string>

#include "core/catalogue/read_catalogue.h"
#include "core/door/door.h"
#include "core/door/evening_request.h"

namespace lanework::door {
namespace {

// Named as the file that it is written to.
Document file_of(const Node& drill) {
  const Node* id = drill.find("id");
  const bool named = id != nullptr && id->kind == Node::Kind::kText && !id->text.empty();
  return {(named ? id->text : "drill") + ".toml", drill};
}

Result<catalogue::Catalogue> catalogue_of(const Node& request, const Held& held) {
  if (request.find("held") != nullptr) return catalogue_held(request, held);
  const auto documents = catalogue_documents_of(request);
  if (!documents) return documents.faults();
  return catalogue::read_catalogue(documents.value());
}

void known_keys_only(const Node& request, Faults& faults) {
  for (const auto& [key, value] : request.entries) {
    const bool known = key == "request" || key == "drill" || key == "instead_of" || key == "catalogue" || key == "held";
    if (known) continue;
    faults.push_back({FaultCode::kUnknownKey,
                      {"request", 0, 0, key},
                      quote(key),
                      "request, drill, instead_of, catalogue or held",
                      {}});
  }
}

const Node& part(const Node& request, const char* key, Node::Kind kind, const char* expected, Faults& faults) {
  static const Node kNothing = Node::make_table();
  const Node* node = request.find(key);
  if (node != nullptr && node->kind == kind) return *node;
  faults.push_back(
      {FaultCode::kMissing, {"request", 0, 0, key}, node == nullptr ? "nothing" : found_in_words(*node), expected, {}});
  return kNothing;
}

}  // namespace

Result<Node> check_drill(const Document& request, const Held& held) {
  Faults faults;
  known_keys_only(request.root, faults);
  const Node& drill = part(request.root, "drill", Node::Kind::kTable, "a table", faults);
  const bool replaces = request.root.find("instead_of") != nullptr;
  const std::string instead_of =
      replaces ? part(request.root, "instead_of", Node::Kind::kText, "the id of a drill", faults).text : "";
  if (!faults.empty()) return faults;
  const auto catalogue = catalogue_of(request.root, held);
  if (!catalogue) return catalogue.faults();

  const Faults found = catalogue::check_drill_in(file_of(drill), instead_of, catalogue.value());
  Node out = Node::make_table();
  out.set("answer", Node::make_text("check-drill"));
  out.set("version", Node::make_integer(1));
  out.set("faults", *faults_node(found).find("faults"));
  return out;
}

}  // namespace lanework::door
