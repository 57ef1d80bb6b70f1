// Any bytes as the body of POST /api/sync, up to the store's door: the body, the batch and its entries, one text for
// one entry, who sees what of it, and what stands of everything that nothing is against.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <set>
#include <string>
#include <vector>

#include "app/serve/sync/read_batch.h"
#include "core/ledger/canonical.h"
#include "fuzz/promise.h"
#include "tests/access/shipped_matrix.h"

namespace {

using namespace lanework;
using fuzz::promise;
using ledger::Entry;
using ledger::Received;

constexpr const char* kFile = "request";

const ledger::KindTable& kinds() { return ledger::test::shipped_kinds(); }

const access::SquadsOfPlayer& players() {
  static const access::SquadsOfPlayer kPlayers = {{"Q07", {"u13"}}, {"Q20", {"u16"}}};
  return kPlayers;
}

access::Viewer viewer_of(ledger::Role role) {
  const Date today = *parse_iso_date("2026-11-26");
  return {role == ledger::Role::kBoard ? "a-2" : "a-1",
          role,
          {{"u13", *parse_iso_date("2026-08-01"), *parse_iso_date("2027-07-31"), false}},
          today};
}

serve::Now now() { return {1'795'712'700, *parse_iso_date("2026-11-26"), "2026-11-26T18:05:00+01:00"}; }

Entry entry_of(const std::string& bytes) {
  const auto document = parse_json("entry", bytes);
  promise(bool(document), "the one text of an entry is JSON");
  auto entry = ledger::read_entry(document.value().root, "entry", kinds());
  promise(bool(entry), "the one text of an entry is an entry");
  return std::move(entry).value();
}

// What was taken is told by the same bytes for good, and what they say is the same.
void check_text(const Entry& entry) {
  const std::string bytes = ledger::bytes_of(entry);
  promise(!bytes.empty() && bytes.size() <= ledger::kMostEntryBytes, "an entry has one text, of at most 32 KiB");
  promise(ledger::canonical_json(entry.whole) == bytes, "an entry's text is that of its keys");
  const Entry again = entry_of(bytes);
  promise(ledger::bytes_of(again) == bytes, "read from its text an entry has that text");
  promise(again.id == entry.id && again.sequence == entry.sequence && again.device_time == entry.device_time &&
              again.kind == entry.kind && again.corrects == entry.corrects && again.known == entry.known,
          "read from its text an entry says the same");
}

// Nobody is shown a key that the entry does not have, but the receiver's own.
void check_view(const Received& row) {
  static const std::set<std::string, std::less<>> kOfReceiver = {"receipt", "received"};
  std::set<std::string, std::less<>> own;
  for (const auto& [key, value] : row.entry.whole.entries) own.insert(key);
  for (const auto role : {ledger::Role::kLead, ledger::Role::kCoach, ledger::Role::kRecorder, ledger::Role::kBoard}) {
    const auto seen =
        access::visible_entry(row, now().day, viewer_of(role), access::test::shipped_matrix(), kinds(), players());
    if (!seen) continue;
    const ledger::Kind* kind = kinds().find(row.entry.kind);
    const bool of_club = kind != nullptr && kind->data_class == ledger::DataClass::kClub;
    promise(role != ledger::Role::kBoard || of_club, "the board sees what a squad did, and nobody");
    for (const auto& [key, value] : seen->entries) {
      promise(own.count(key) > 0 || kOfReceiver.count(key) > 0, "what is seen is of the entry or the receiver's");
    }
  }
}

std::string state_text(std::vector<Received> entries) {
  const ledger::State state = ledger::fold(std::move(entries), kinds());
  const auto text = ledger::canonical_json(ledger::to_node(state));
  promise(text.has_value(), "what stands has one text");
  const auto care = ledger::canonical_json(ledger::care_document(state, kinds()));
  promise(care.has_value(), "what care reads has one text");
  return *text + *care;
}

// In any order, with any of it twice.
void check_fold(const std::vector<Received>& rows) {
  const std::string stands = state_text(rows);
  std::vector<Received> other(rows.rbegin(), rows.rend());
  std::rotate(other.begin(), other.begin() + static_cast<std::ptrdiff_t>(other.size() / 3), other.end());
  other.insert(other.end(), rows.begin(), rows.begin() + static_cast<std::ptrdiff_t>(rows.size() / 2));
  promise(state_text(other) == stands, "what stands does not depend on order or repetition");
}

void check_unread(const serve::sync::ReadBatch& batch, const std::vector<Node>& list) {
  for (std::size_t i = 0; i < batch.unread.size(); ++i) {
    const std::string place = "entries." + std::to_string(batch.unread[i] + 1);
    promise(batch.whys[i].rfind(place, 0) == 0, "what could not be read says where");
    promise(batch.whys[i] == batch.batch.unread[i].why, "what is told is what is kept");
    fuzz::promise_one_line(batch.whys[i], "why is one line");
    const auto read = ledger::read_entry(list[batch.unread[i]], place, kinds());
    promise(!read, "what could not be read cannot be read again");
    for (const Fault& fault : read.faults()) {
      promise(fault.place.field.rfind(place, 0) == 0, "a fault names its place in the batch");
      fuzz::promise_one_line(to_line(fault), "a fault is one line of text");
    }
  }
}

void check_batch(const std::vector<Node>& list, ledger::Role role) {
  const store::Sender sender{"d-1", "a-1", role, false};
  const auto batch = serve::sync::read_batch(list, sender, viewer_of(role), players(), kinds(), now());
  promise(batch.read.size() == batch.batch.entries.size() && batch.unread.size() == batch.batch.unread.size() &&
              batch.unread.size() == batch.whys.size(),
          "whatever was read or not has its place");
  std::vector<int> fates(list.size(), 0);
  for (const std::size_t at : batch.read) ++fates.at(at);
  for (const std::size_t at : batch.unread) ++fates.at(at);
  promise(std::all_of(fates.begin(), fates.end(), [](int count) { return count == 1; }), "every entry has one fate");
  check_unread(batch, list);
  std::vector<Received> rows;
  for (const store::Incoming& incoming : batch.batch.entries) {
    fuzz::promise_one_line(incoming.aside, "why it is kept aside is one line");
    check_text(incoming.entry);
    if (!incoming.aside.empty()) continue;
    const auto receipt = static_cast<std::int64_t>(rows.size()) + 1;
    rows.push_back({incoming.entry, receipt, now().stamp, receipt % 3 == 0 ? "d-2" : "d-1", "a-1", role});
    check_view(rows.back());
  }
  check_fold(rows);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto body = parse_json(kFile, std::string(data, data + size));
  if (!body) {
    fuzz::promise_clear_faults(body.faults(), kFile);
    return 0;
  }
  const std::string text = to_json(body.value().root);
  const auto again = parse_json(kFile, text);
  promise(again && to_json(again.value().root) == text, "JSON that was read is written as JSON that reads the same");
  const Node* list = body.value().root.find("entries");
  if (list == nullptr || list->kind != Node::Kind::kArray || list->items.size() > serve::sync::kMostEntries) return 0;
  check_batch(list->items, ledger::Role::kLead);
  check_batch(list->items, ledger::Role::kCoach);
  return 0;
}
