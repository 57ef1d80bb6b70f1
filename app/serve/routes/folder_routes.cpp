// The club's folder at the desk: its documents with a digest each, and a change of several that is done whole or not at
// all. Who comes second is told what is there now, and nothing of theirs is done.
#include "app/serve/routes/routes.h"

namespace lanework::serve {
namespace {

Response documents(Call& call) {
  if (!call.house.folder.documents) return no_folder();
  auto all = call.house.folder.documents();
  if (!all) return store_answer(all.faults());
  Node body = Node::make_table();
  body.set("documents", std::move(all).value());
  return json_answer(200, body);
}

// One of them: 'content' as a table, or 'text' as the bytes to be, or neither: then it goes.
void read_change(const Node& row, const std::string& field, std::vector<FolderChange>& out, Faults& faults) {
  FolderChange change;
  const auto fault = [&](const std::string& key, const Node& found, const char* expected) {
    faults.push_back({FaultCode::kWrongType, {"", 0, 0, field + key}, found_in_words(found), expected, {}});
  };
  if (row.kind != Node::Kind::kTable) return fault("", row, "a table with path, instead_of, and content or text");
  for (const auto& [key, value] : row.entries) {
    const bool text = value.kind == Node::Kind::kText;
    if (key == "path" && text) {
      change.path = value.text;
    } else if (key == "instead_of" && text) {
      change.instead_of = value.text;
    } else if (key == "text" && text) {
      change.text = value.text;
    } else if (key == "content" && value.kind == Node::Kind::kTable) {
      change.text = to_toml(value);
    } else {
      fault("." + key, value, "path, instead_of or text as texts, or content as a table");
    }
  }
  out.push_back(std::move(change));
}

std::vector<FolderChange> changes_of(const Call& call, Faults& faults) {
  std::vector<FolderChange> out;
  const Node* list = call.body.find("changes");
  if (list == nullptr || list->kind != Node::Kind::kArray || call.body.entries.size() > 1) {
    faults.push_back(
        {FaultCode::kMissing, {"", 0, 0, "changes"}, "no list alone", "a list of changes and no more", {}});
    return out;
  }
  for (std::size_t i = 0; i < list->items.size(); ++i) {
    read_change(list->items[i], "changes." + std::to_string(i + 1), out, faults);
  }
  return out;
}

// With the places of the club's own files, which the request's own faults do not have.
Response club_faults(const Faults& faults) {
  Node list = Node::make_array();
  for (const Fault& fault : faults) {
    Node row = Node::make_table();
    row.set("fault", Node::make_text(fault_row(fault.code).key));
    row.set("file", Node::make_text(fault.place.file));
    if (fault.place.line > 0) row.set("line", Node::make_integer(fault.place.line));
    row.set("field", Node::make_text(fault.place.field));
    row.set("found", Node::make_text(fault.found));
    row.set("expected", Node::make_text(fault.expected));
    row.set("sentence", Node::make_text(to_line(fault)));
    list.items.push_back(std::move(row));
  }
  Node body = Node::make_table();
  body.set("error", Node::make_text("club-not-sound"));
  body.set("what", Node::make_text("With this change the club would not be sound. Nothing was changed."));
  body.set("faults", std::move(list));
  return json_answer(422, body);
}

Response change(Call& call) {
  Faults faults;
  const std::vector<FolderChange> changes = changes_of(call, faults);
  if (!faults.empty()) return fault_answer(faults);
  if (!call.house.folder.change) return no_folder();
  auto changed = call.house.folder.change(changes);
  if (!changed) return club_faults(changed.faults());
  Node body = Node::make_table();
  if (changed.value().meanwhile) {
    body.set("error", Node::make_text("changed-meanwhile"));
    body.set("what", Node::make_text("Somebody else has changed this meanwhile. Nothing of yours was done."));
    body.set("documents", std::move(changed.value().documents));
    return json_answer(409, body);
  }
  if (changed.value().lists) {
    const auto kept = call.room.directory->keep(*changed.value().lists, call.now.stamp);
    if (!kept) return store_answer(kept.faults());
  }
  body.set("documents", std::move(changed.value().documents));
  return json_answer(200, body);
}

// Both name everybody in the club, so both are written down as read.
Result<std::int64_t> everybody(Call& call) {
  const auto club = call.house.club(call.room);
  if (!club) return club.faults();
  return static_cast<std::int64_t>(club.value()->lists.players.size());
}

Response turn(Call& call) {
  if (!call.house.folder.turn) return no_folder();
  const auto people = everybody(call);
  if (!people) return store_answer(people.faults());
  const auto next = call.house.folder.turn();
  if (!next) return folder_has_a_fault(call);
  call.read_people = people.value();
  return json_answer(200, next.value());
}

Response roster(Call& call) {
  if (!call.house.folder.roster) return no_folder();
  const auto people = everybody(call);
  if (!people) return store_answer(people.faults());
  const auto found = call.house.folder.roster(call.values[0]);
  if (!found) return folder_has_a_fault(call);
  if (!found.value()) return error_answer(404, "not-found", "There is nothing here for you.");
  call.read_people = people.value();
  return json_answer(200, *found.value());
}

}  // namespace

const std::vector<NamedWork>& folder_routes() {
  static const std::vector<NamedWork> kWorks = {
      {"club-documents", documents}, {"change-club-documents", change}, {"season-turn", turn}, {"roster", roster}};
  return kWorks;
}

}  // namespace lanework::serve
