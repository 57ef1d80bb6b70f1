#include "app/serve/answer.h"

#include <utility>

namespace lanework::serve {

Response json_answer(int status, const Node& body) {
  Response out;
  out.status = status;
  out.body = to_json(body) + "\n";
  out.with("Content-Type", "application/json; charset=utf-8");
  return out;
}

Response text_answer(std::shared_ptr<const std::string> json) {
  Response out;
  out.file = std::move(json);
  return out.with("Content-Type", "application/json; charset=utf-8");
}

Response error_answer(int status, const std::string& key, const std::string& what) {
  Node body = Node::make_table();
  body.set("error", Node::make_text(key));
  body.set("what", Node::make_text(what));
  return json_answer(status, body);
}

Response error_answer(int status, const std::string& error, const std::string& what, const std::string& key) {
  Node body = Node::make_table();
  body.set("error", Node::make_text(error));
  body.set("what", Node::make_text(what));
  body.set("key", Node::make_text(key));
  return json_answer(status, body);
}

Response fault_answer(const Faults& faults) {
  Node body = Node::make_table();
  body.set("error", Node::make_text("not-understood"));
  body.set("what", Node::make_text("The request is not as it should be."));
  Node list = Node::make_array();
  for (const Fault& fault : faults) {
    Node row = Node::make_table();
    row.set("fault", Node::make_text(fault_row(fault.code).key));
    row.set("field", Node::make_text(fault.place.field));
    row.set("found", Node::make_text(fault.found));
    row.set("expected", Node::make_text(fault.expected));
    list.items.push_back(std::move(row));
  }
  body.set("faults", std::move(list));
  return json_answer(400, body);
}

Response store_answer(const Faults& faults) {
  // As SQLite says it, and as the system says it of the list of the erased.
  const std::string found = faults.empty() ? std::string() : faults.front().found;
  const bool full = found.find("full") != std::string::npos || found.find("No space left") != std::string::npos;
  Response out =
      full ? error_answer(507, "store-full", "The server's disk is full: nothing was taken in. Send it again later.")
           : error_answer(503, "store-busy",
                          "The server's store cannot be reached: nothing is acknowledged. Send it again; what is there "
                          "stays there once.");
  return out.with("Retry-After", full ? "600" : "5");
}

Response no_folder() { return error_answer(404, "not-found", "This server has no club's folder to plan from."); }

Response pdf_answer(std::string bytes, const std::string& name) {
  Response out;
  out.body = std::move(bytes);
  return out.with("Content-Type", "application/pdf").with("Content-Disposition", "inline; filename=\"" + name + "\"");
}

Node texts_node(const std::vector<std::string>& texts) {
  Node out = Node::make_array();
  for (const std::string& text : texts) out.items.push_back(Node::make_text(text));
  return out;
}

}  // namespace lanework::serve
