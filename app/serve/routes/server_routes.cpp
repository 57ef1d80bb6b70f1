// Of the server itself: is it ready, how is it doing. Whether it is there at all, Service answers without the store.
#include "app/serve/routes/routes.h"

namespace lanework::serve {
namespace {

// Ready: the store answers.
Response ready(Call& call) {
  if (!call.room.directory->versions()) return error_answer(503, "not-ready", "Not ready.");
  Node body = Node::make_table();
  body.set("status", Node::make_text("ready"));
  return json_answer(200, body);
}

Response metrics(Call& call) {
  Response out;
  out.body = call.house.metrics.text(call.house.edge);
  out.with("Content-Type", "text/plain; version=0.0.4; charset=utf-8");
  return out;
}

}  // namespace

const std::vector<NamedWork>& server_routes() {
  static const std::vector<NamedWork> kWorks = {{"ready", ready}, {"metrics", metrics}};
  return kWorks;
}

}  // namespace lanework::serve
