// A device hands in what it has and gets what it may see; and what was kept aside, for the lead.
#include <algorithm>
#include <map>
#include <optional>

#include "app/serve/open_records.h"
#include "app/serve/routes/routes.h"
#include "app/serve/sync/aside_key.h"
#include "app/serve/sync/read_batch.h"

namespace lanework::serve {
namespace {

constexpr std::int64_t kVersion = 1;  // of what devices send and get
constexpr std::int64_t kOldest = 1;   // older ones are told to update, and keep what they have
constexpr std::int64_t kNewest = kVersion + 1;
constexpr std::int64_t kMostBack = 500;      // entries in one answer
constexpr std::size_t kMostLookedAt = 2000;  // rows gone through for one answer
constexpr std::int64_t kSeenEvery = 60;      // seconds

struct Asked {
  std::int64_t client = 0;
  std::string ledger;
  std::int64_t after = 0;
  std::int64_t most = 0;
  std::vector<Node> entries;
};

// What was sent as 'entries', taken out of the body; none where that is a fault.
std::vector<Node> take_entries(Call& call, TableReader& reader, std::size_t most) {
  const auto list = std::find_if(call.body.entries.begin(), call.body.entries.end(),
                                 [](const auto& one) { return one.first == "entries"; });
  if (list == call.body.entries.end()) return {};
  Node& sent = list->second;
  if (sent.kind == Node::Kind::kArray && sent.items.size() <= most) return std::move(sent.items);
  reader.fault(FaultCode::kOutOfRange, "entries", found_in_words(sent),
               "a list of at most " + std::to_string(most) + " entries");
  return {};
}

Asked read_asked(Call& call, Faults& faults) {
  Asked out;
  constexpr std::int64_t kMany = 1'000'000'000'000;
  TableReader reader = call.reader(faults);
  out.client = reader.integer("client", 0, 1'000'000);
  out.ledger = reader.text_or("ledger", "");
  out.after = reader.integer_or("after", 0, 0, kMany);
  out.most = reader.integer_or("most", kMostBack, 0, kMostBack);
  out.entries = take_entries(call, reader, sync::kMostEntries);
  return out;  // keys of a newer client are passed over, so no finish()
}

const char* verdict_word(store::Verdict verdict) {
  switch (verdict) {
    case store::Verdict::kStored:
      return "stored";
    case store::Verdict::kKnown:
      return "known";
    case store::Verdict::kOtherContent:
      return "other-content";
    case store::Verdict::kQuarantined:
      return "kept-aside";
    case store::Verdict::kErased:
      return "dropped";
    case store::Verdict::kNoConsent:
      return "no-consent";
  }
  return "";
}

// One for each entry that was sent, in its order.
Node verdicts_node(const sync::ReadBatch& batch, const std::vector<store::EntryVerdict>& verdicts, Metrics& metrics) {
  std::vector<Node> rows(batch.read.size() + batch.unread.size());
  std::map<std::string, std::int64_t> counts;
  for (std::size_t i = 0; i < batch.read.size(); ++i) {
    const store::EntryVerdict& verdict = verdicts[i];
    Node row = Node::make_table();
    row.set("id", Node::make_text(ledger::to_text(verdict.id)));
    row.set("verdict", Node::make_text(verdict_word(verdict.verdict)));
    if (verdict.receipt > 0) row.set("receipt", Node::make_integer(verdict.receipt));
    if (!verdict.why.empty()) row.set("why", Node::make_text(verdict.why));
    ++counts[verdict_word(verdict.verdict)];
    rows[batch.read[i]] = std::move(row);
  }
  for (std::size_t i = 0; i < batch.unread.size(); ++i) {
    const store::EntryVerdict& verdict = verdicts[batch.read.size() + i];
    Node row = Node::make_table();
    row.set("verdict", Node::make_text(verdict_word(verdict.verdict)));
    row.set("why", Node::make_text(verdict.why));
    ++counts["unreadable"];
    rows[batch.unread[i]] = std::move(row);
  }
  for (const auto& [verdict, count] : counts) metrics.entries(verdict, count);
  Node out = Node::make_array();
  out.items = std::move(rows);
  return out;
}

bool about_a_person(const Node& entry) { return entry.find("player") != nullptr || entry.find("players") != nullptr; }

struct Given {
  Node entries = Node::make_array();
  std::int64_t after = 0;
  bool more = false;
};

Result<Given> give(Call& call, const Asked& asked, const ClubLists& club) {
  Given out;
  out.after = asked.after;
  if (asked.most == 0) return out;
  const auto rows = call.room.store->entries_after(asked.after, kMostLookedAt, call.house.kinds);
  if (!rows) return rows.faults();
  OpenRecords records(*call.room.store, call.house.kinds);
  for (const ledger::Received& row : rows.value()) {
    if (static_cast<std::int64_t>(out.entries.items.size()) == asked.most) break;
    out.after = row.receipt;
    const Date received_on = parse_iso_date(row.received.substr(0, 10)).value_or(Date{});
    auto seen =
        access::visible_entry(row, received_on, call.viewer, call.house.matrix, call.house.kinds, club.squads_of);
    if (!seen) continue;
    const auto open = records.may_show(row.entry);
    if (!open) return open.faults();
    if (!open.value()) continue;
    if (about_a_person(*seen)) ++call.read_people;
    out.entries.items.push_back(std::move(*seen));
  }
  out.more = !rows.value().empty() && (out.after < rows.value().back().receipt || rows.value().size() == kMostLookedAt);
  return out;
}

Response synchronise(Call& call) {
  Faults faults;
  Asked asked = read_asked(call, faults);
  if (!faults.empty()) return fault_answer(faults);
  if (asked.client < kOldest || asked.client > kNewest) {
    return error_answer(426, "update-first",
                        "This version of the app is too old, or too new. Keep what you have and update.");
  }
  const auto club = call.house.club(call.room, call.versions->lists);
  if (!club) return store_answer(club.faults());
  const bool revoked = call.device->revoked != 0 || call.account->ended != 0;
  const store::Sender sender{call.device->id, call.account->id, call.account->role, revoked};
  const bool sends = !asked.entries.empty();
  sync::ReadBatch batch = sync::read_batch(std::move(asked.entries), sender, call.viewer, club.value()->squads_of,
                                           call.house.kinds, call.now);
  Node body = Node::make_table();
  body.set("client", Node::make_integer(kVersion));
  body.set("ledger", Node::make_text(club.value()->ledger_id));
  body.set("now", Node::make_text(call.now.stamp));
  std::int64_t last = call.device->sequence;
  for (const store::Incoming& incoming : batch.batch.entries) last = std::max(last, incoming.entry.sequence);
  if (sends) {
    const auto verdicts = call.house.writer->take_in(std::move(batch.batch));
    if (!verdicts) return store_answer(verdicts.faults());
    body.set("verdicts", verdicts_node(batch, verdicts.value(), call.house.metrics));
  }
  if (revoked) {
    body.set("error", Node::make_text("revoked"));
    body.set("what", Node::make_text("This device is no longer part of the club. What it still had was kept aside."));
    return json_answer(401, body);
  }
  if (call.now.seconds - call.device->seen >= kSeenEvery) {
    const auto seen = call.room.gate->device_seen(call.device->id, call.now.seconds, last);
    if (!seen) return store_answer(seen.faults());
    call.house.known_devices.seen(call.device->secret, call.now.seconds, last);
  }
  // A ledger that was restored has other numbers from some point on: everything is given anew, and sent anew.
  const bool other = !asked.ledger.empty() && asked.ledger != club.value()->ledger_id;
  if (other) asked.after = 0;
  auto given = give(call, asked, *club.value());
  if (!given) return store_answer(given.faults());
  if (other) body.set("begin_anew", Node::make_boolean(true));
  body.set("entries", std::move(given.value().entries));
  body.set("after", Node::make_integer(given.value().after));
  body.set("more", Node::make_boolean(given.value().more));
  return json_answer(200, body);
}

// When an entry of the desk was made: as its id says, so that it is the same when it is sent again. A browser's clock
// that is ahead, or no id, counts as now.
std::string made_at(const Node& entry, const Now& now) {
  constexpr std::uint64_t kThousand = 1000;
  const Node* id = entry.find("id");
  const auto named = id == nullptr ? std::nullopt : ledger::parse_entry_id(id->text);
  if (!named) return now.stamp;
  const auto seconds = static_cast<std::int64_t>(ledger::milliseconds_of(*named) / kThousand);
  return seconds > now.seconds ? now.stamp : now_at(seconds).stamp;
}

// What the lead or a recorder enters at the desk. A browser keeps nothing, so that each sending is a sender of its own,
// named by its first entry: sent again after a lost answer it is the same, and no count of anybody's has a gap.
Response enter(Call& call) {
  constexpr std::size_t kMostAtTheDesk = 50;
  Faults faults;
  TableReader reader = call.reader(faults);
  std::vector<Node> entries = take_entries(call, reader, kMostAtTheDesk);
  if (faults.empty() && entries.empty()) {
    reader.fault(FaultCode::kMissing, "entries", "none", "1 to " + std::to_string(kMostAtTheDesk) + " entries");
  }
  if (!faults.empty()) return fault_answer(faults);
  const Node* first = entries.front().find("id");
  const bool named = first != nullptr && ledger::parse_entry_id(first->text);
  const store::Sender sender{named ? "desk." + first->text : "desk", call.account->id, call.account->role, false};
  std::int64_t sequence = 0;
  for (Node& entry : entries) {
    if (entry.kind != Node::Kind::kTable) continue;  // has its verdict as something that cannot be read
    entry.set("sequence", Node::make_integer(++sequence));
    entry.set("device_time", Node::make_text(made_at(entry, call.now)));
  }
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  sync::ReadBatch batch =
      sync::read_batch(std::move(entries), sender, call.viewer, club.value()->squads_of, call.house.kinds, call.now);
  const auto verdicts = call.house.writer->take_in(std::move(batch.batch));
  if (!verdicts) return store_answer(verdicts.faults());
  Node body = Node::make_table();
  body.set("verdicts", verdicts_node(batch, verdicts.value(), call.house.metrics));
  return json_answer(200, body);
}

Node decided_node(const std::vector<store::Decided>& decided) {
  Node out = Node::make_array();
  for (const store::Decided& one : decided) {
    Node row = Node::make_table();
    row.set("number", Node::make_integer(one.number));
    row.set("what", Node::make_text(one.by.why));
    if (one.receipt > 0) row.set("receipt", Node::make_integer(one.receipt));
    row.set("by", Node::make_text(one.by.account));
    row.set("when", Node::make_text(one.by.when));
    out.items.push_back(std::move(row));
  }
  return out;
}

Response quarantine(Call& call) {
  const auto all = call.room.store->quarantined();
  if (!all) return store_answer(all.faults());
  OpenRecords records(*call.room.store, call.house.kinds);
  Node list = Node::make_array();
  for (const store::Quarantined& one : all.value()) {
    const auto open = records.may_show_text(one.bytes);
    if (!open) return store_answer(open.faults());
    if (!open.value()) continue;
    Node row = Node::make_table();
    row.set("number", Node::make_integer(one.number));
    row.set("received", Node::make_text(one.received));
    row.set("device", Node::make_text(one.device));
    row.set("author", Node::make_text(one.author));
    row.set("why", Node::make_text(one.why));
    row.set("key", Node::make_text(sync::aside_key(one.why)));
    row.set("content", Node::make_text(one.bytes));
    list.items.push_back(std::move(row));
  }
  call.read_people = static_cast<std::int64_t>(list.items.size());
  constexpr std::size_t kMostDecided = 100;
  const auto decided = call.room.store->decided(kMostDecided);
  if (!decided) return store_answer(decided.faults());
  Node body = Node::make_table();
  body.set("kept_aside", std::move(list));
  body.set("looked_at", decided_node(decided.value()));
  return json_answer(200, body);
}

Response nothing_of_that_number() { return error_answer(404, "not-found", "There is nothing here for you."); }

struct Stays {
  const char* key = "";  // empty: it has become part of the books, or it is not there
  const char* words = "";
};

// What the lead is told where it cannot become part of the books.
Stays why_it_stays(store::Looked outcome) {
  switch (outcome) {
    case store::Looked::kDone:
    case store::Looked::kNotThere:
      return {};
    case store::Looked::kNotAnEntry:
      return {"not-an-entry", "This cannot be read as an entry. Enter anew what it was meant to say, and drop it."};
    case store::Looked::kNewerKind:
      return {"newer-kind", "This version does not know what kind of entry it is. Update, or drop it."};
    case store::Looked::kNotTheirs:
      return {"not-their-role",
              "Whoever sent this does not enter such things. Enter it yourself if it is right, and drop this."};
    case store::Looked::kErased:
      return {"erased", "This is about somebody who was erased."};
    case store::Looked::kNoConsent:
      return {"no-consent", "There is no consent to keep a record of this for the player. Drop it."};
    case store::Looked::kOtherContent:
      return {"other-content",
              "An entry of this id is part of the books and says something else. Enter anew what is missing, and drop "
              "this."};
  }
  return {};
}

Response looked_answer(Call& call, std::int64_t number, const store::LookedAt& looked) {
  if (looked.outcome == store::Looked::kNotThere) return nothing_of_that_number();
  const Stays stays = why_it_stays(looked.outcome);
  if (*stays.key != '\0') return error_answer(409, "cannot-be-taken-in", stays.words, stays.key);
  if (!looked.player.empty()) {
    call.read_player = looked.player;
    call.read_people = 1;
  }
  Node body = Node::make_table();
  body.set("number", Node::make_integer(number));
  if (looked.receipt > 0) body.set("receipt", Node::make_integer(looked.receipt));
  return json_answer(200, body);
}

// The number in the path; empty: it is none.
std::optional<std::int64_t> number_of(const std::string& text) {
  constexpr std::size_t kMostDigits = 15;
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  if (text.empty() || text.size() > kMostDigits || !std::all_of(text.begin(), text.end(), digit)) return {};
  return std::stoll(text);
}

Response take_in_kept(Call& call) {
  Faults faults;
  call.reader(faults).finish();
  if (!faults.empty()) return fault_answer(faults);
  const auto number = number_of(call.values[0]);
  if (!number) return nothing_of_that_number();
  const auto looked =
      call.room.store->take_in_kept(*number, {call.account->id, call.now.stamp, "taken-in"}, call.house.kinds);
  return looked ? looked_answer(call, *number, looked.value()) : store_answer(looked.faults());
}

Response drop_kept(Call& call) {
  static const std::vector<std::string_view> kWhys = {"entered-anew", "mistake", "not-ours"};
  Faults faults;
  TableReader reader = call.reader(faults);
  const int why = reader.word("why", kWhys);
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  const auto number = number_of(call.values[0]);
  if (!number) return nothing_of_that_number();
  const auto looked = call.room.store->drop_kept(
      *number, {call.account->id, call.now.stamp, std::string(kWhys[static_cast<std::size_t>(why)])});
  return looked ? looked_answer(call, *number, looked.value()) : store_answer(looked.faults());
}

}  // namespace

const std::vector<NamedWork>& sync_routes() {
  static const std::vector<NamedWork> kWorks = {{"sync", synchronise},
                                                {"enter", enter},
                                                {"quarantine", quarantine},
                                                {"take-in-kept", take_in_kept},
                                                {"drop-kept", drop_kept}};
  return kWorks;
}

}  // namespace lanework::serve
