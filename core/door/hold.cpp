#include "core/door/hold.h"

#include "core/catalogue/read_catalogue.h"
#include "core/door/evening_request.h"

namespace lanework::door {

Result<Node> hold(const Document& request, Held& held) {
  Faults faults;
  TableReader reader(request.file, &request.root, "", faults);
  std::string name = reader.text("name");
  auto documents = catalogue_documents_of(request.root);
  if (!documents) faults.insert(faults.end(), documents.faults().begin(), documents.faults().end());
  if (!faults.empty()) return faults;
  auto catalogue = catalogue::read_catalogue(documents.value());
  if (!catalogue) return catalogue.faults();
  held = {std::move(name), std::move(catalogue).value()};
  Node node = Node::make_table();
  node.set("answer", Node::make_text("held"));
  node.set("version", Node::make_integer(1));
  node.set("name", Node::make_text(held.name));
  return node;
}

Result<catalogue::Catalogue> catalogue_held(const Node& request, const Held& held) {
  const Node* name = request.find("held");
  if (name != nullptr && name->kind == Node::Kind::kText && held.catalogue && name->text == held.name) {
    return *held.catalogue;
  }
  return Faults{{FaultCode::kUnknownName,
                 {"request", 0, 0, "held"},
                 name == nullptr ? "nothing" : found_in_words(*name),
                 held.catalogue ? quote(held.name) : "a request 'hold' before it",
                 {}}};
}

}  // namespace lanework::door
