// What is done about the club's data: the last backup, what goes by its time next, how old the key is. Counts and days;
// nothing about anybody.
#include "app/serve/retention.h"
#include "app/serve/routes/routes.h"

namespace lanework::serve {
namespace {

void set_known(Node& row, const char* key, const std::string& text) {
  if (!text.empty()) row.set(key, Node::make_text(text));
}

Node backup_node(const BackupsNoted& noted) {
  Node out = Node::make_table();
  set_known(out, "last", noted.last);
  set_known(out, "where", noted.file);
  set_known(out, "checked", noted.checked);
  set_known(out, "checked_one", noted.checked_one);
  return out;
}

Node retention_node(const std::vector<Ahead>& all) {
  Node out = Node::make_array();
  for (const Ahead& one : all) {
    Node row = Node::make_table();
    row.set("class", Node::make_text(one.what));
    row.set("keeps_days", Node::make_integer(one.keeps_days));
    if (one.next_day) row.set("next_day", Node::make_text(to_iso(*one.next_day)));
    row.set("would_go", Node::make_integer(one.would_go));
    out.items.push_back(std::move(row));
  }
  return out;
}

Response house(Call& call) {
  const auto past = call.room.past();
  if (!past) return store_answer(past.faults());
  const auto ages = past.value()->ages();
  if (!ages) return store_answer(ages.faults());
  Node body = Node::make_table();
  body.set("backup", backup_node(call.house.backups ? call.house.backups() : BackupsNoted{}));
  body.set("retention", retention_node(what_goes_next(ages.value(), call.house.keeping)));
  const std::string& first = ages.value().key_first_used;
  if (!first.empty()) body.set("key_since", Node::make_text(now_at(seconds_of_stamp(first)).stamp));
  return json_answer(200, body);
}

}  // namespace

const std::vector<NamedWork>& house_routes() {
  static const std::vector<NamedWork> kWorks = {{"house", house}};
  return kWorks;
}

}  // namespace lanework::serve
