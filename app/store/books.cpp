#include "app/store/books.h"

#include <algorithm>
#include <utility>

namespace lanework::store {
namespace {

using ledger::Entry;
using ledger::KindTable;
using ledger::Role;

std::string text_at(const Entry& entry, std::string_view key) {
  const Node* found = entry.whole.find(key);
  return found != nullptr && found->kind == Node::Kind::kText ? found->text : std::string();
}

std::string id_text(const Entry& entry) { return {entry.id.bytes.begin(), entry.id.bytes.end()}; }

std::string text_of(const Row& row) {
  return chained({std::to_string(row.receipt), row.id, row.device, std::to_string(row.sequence), row.author, row.role,
                  row.received, row.person, row.body});
}

// What is not taken in but kept aside.
std::string why_not(const Sender& sender, const Entry& entry, const KindTable& kinds) {
  if (sender.revoked) return "the device was revoked";
  const ledger::Kind* kind = kinds.find(entry.kind);
  if (kind == nullptr) return {};
  const bool may = std::find(kind->enter.begin(), kind->enter.end(), sender.role) != kind->enter.end();
  return may ? std::string() : "a " + role_text(sender.role) + " does not enter " + entry.kind;
}

}  // namespace

std::string person_in(const Entry& entry) {
  return text_at(entry, "player");
}

Fault not_an_entry(const Row& row, const std::string& store) {
  return {FaultCode::kFileUnreadable,
          {store, 0, 0, {}},
          "entry " + std::to_string(row.receipt) + ", which is none",
          "entries as they were taken in",
          "check the books: the rows were changed by something else"};
}

std::string role_text(Role role) { return std::string(ledger::role_words().at(static_cast<std::size_t>(role))); }

Role role_of(const std::string& word) {
  const auto& words = ledger::role_words();
  const auto found = std::find(words.begin(), words.end(), word);
  return static_cast<Role>(found - words.begin());  // the tables take no other word
}

std::string bytes_text(const Key& key) { return {key.bytes().begin(), key.bytes().end()}; }

std::string tag_text(const Key& key, const std::string& person) {
  const auto tag = person_tag(key, person);
  return {tag.begin(), tag.end()};
}

Link link_of(const std::string& bytes) {
  Link out{};
  std::copy_n(bytes.begin(), std::min(bytes.size(), out.size()), out.begin());
  return out;
}

std::string link_text(const Link& link) { return {link.begin(), link.end()}; }

Result<std::vector<EntryVerdict>> Store::take_in(const Sender& sender, const std::vector<Entry>& entries,
                                                 const KindTable& kinds, const std::string& received) {
  Batch batch{sender, {}, {}, received};
  for (const Entry& entry : entries) batch.entries.push_back({entry, {}});
  auto verdicts = take_in(std::vector<Batch>{std::move(batch)}, kinds);
  if (!verdicts) return verdicts.faults();
  return std::move(verdicts.value().front());
}

std::vector<std::vector<EntryVerdict>> Books::take_in(const std::vector<Batch>& batches, const KindTable& kinds) {
  std::vector<std::string> ids;
  std::vector<std::string> tags;
  for (const Batch& batch : batches) {
    for (const Incoming& incoming : batch.entries) {
      ids.push_back(id_text(incoming.entry));
      if (const std::string person = person_in(incoming.entry); !person.empty()) tags.push_back(tag_text(key_, person));
    }
  }
  last_ = shelf_.last();
  shelf_.expect(ids, tags);
  std::vector<std::vector<EntryVerdict>> out;
  for (const Batch& batch : batches) {
    out.emplace_back();
    for (const Incoming& incoming : batch.entries) {
      if (shelf_.failed()) return out;
      out.back().push_back(take_in_one(batch, incoming, kinds));
    }
    for (const Unread& unread : batch.unread) {
      set_aside(batch, unread.bytes.substr(0, ledger::kMostEntryBytes), unread.why);
    }
  }
  return out;
}

void Books::set_aside(const Batch& batch, const std::string& bytes, const std::string& why) {
  const std::string digest = tag_text(key_, batch.sender.device + "\n" + bytes);
  shelf_.set_aside({batch.received, batch.sender.device, batch.sender.author, why,
                    sealed(key_, bytes, kQuarantineContext), digest});
}

EntryVerdict Books::take_in_one(const Batch& batch, const Incoming& incoming, const KindTable& kinds) {
  const Entry& entry = incoming.entry;
  EntryVerdict out{entry.id, Verdict::kStored, 0, {}};
  const std::string id = id_text(entry);
  const std::string bytes = ledger::bytes_of(entry);
  if (const auto there = shelf_.by_id(id)) {
    const auto text = readable(*there);
    out.verdict = !text ? Verdict::kErased : *text == bytes ? Verdict::kKnown : Verdict::kOtherContent;
    out.receipt = there->receipt;
    return out;
  }
  std::string why = why_not(batch.sender, entry, kinds);
  if (why.empty()) why = incoming.aside;
  if (!why.empty()) {
    set_aside(batch, bytes, why);
    out.verdict = Verdict::kQuarantined;
    out.why = std::move(why);
    return out;
  }
  Row row{last_.receipt + 1, id, batch.sender.device, entry.sequence, batch.sender.author, role_text(batch.sender.role),
          batch.received,    {}, bytes,          text_at(entry, "day"),         text_at(entry, "squad")};
  if (const std::string person = person_in(entry); !person.empty()) {
    row.person = tag_text(key_, person);
    const Key* key = key_of(row.person, &batch.received);
    if (key == nullptr) {
      out.verdict = Verdict::kErased;
      return out;
    }
    row.body = sealed(*key, bytes, id);
    row.day.clear();  // what is about a person is found by the person only
  }
  const Link link = next_link(last_.link, text_of(row));
  shelf_.add(row, link);
  last_ = {row.receipt, link};
  out.receipt = row.receipt;
  return out;
}

// The person's key; null where the person was erased. Made where there is none and 'make' says when.
const Key* Books::key_of(const std::string& tag, const std::string* make) {
  const auto known = people_.find(tag);
  if (known != people_.end()) return known->second ? &*known->second : nullptr;
  std::optional<Key> key;
  const auto there = shelf_.person(tag);
  if (there && there->sealed_key) {
    if (const auto bytes = opened(key_, *there->sealed_key, tag)) key = Key::of(*bytes);
  }
  if (!there && make != nullptr) {
    key = Key::made();
    shelf_.add_person(tag, sealed(key_, bytes_text(*key), tag), *make);
  }
  const auto& kept = people_.emplace(tag, std::move(key)).first->second;
  return kept ? &*kept : nullptr;
}

std::optional<std::string> Books::readable(const Row& row) {
  if (row.person.empty()) return row.body;
  const Key* key = key_of(row.person, nullptr);
  return key == nullptr ? std::nullopt : opened(*key, row.body, row.id);
}

std::optional<ledger::Received> Books::received_of(const Row& row, const std::string& text, const KindTable& kinds) {
  const auto document = parse_json("ledger", text);
  if (!document) return {};
  auto entry = ledger::read_entry(document.value().root, "entry", kinds);
  if (!entry) return {};
  return ledger::Received{std::move(entry).value(), row.receipt, row.received, row.device, row.author,
                          role_of(row.role)};
}

bool Auditor::goes_on(const Row& row, const Link& link) {
  ++audit_.entries;
  if (row.receipt != audit_.entries || next_link(last_, text_of(row)) != link) {
    audit_.broken_at = row.receipt;
    return false;
  }
  last_ = link;
  if (!row.person.empty() && !books_.readable(row)) ++audit_.unreadable;
  return true;
}

}  // namespace lanework::store
