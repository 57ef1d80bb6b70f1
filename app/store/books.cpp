#include "app/store/books.h"

#include <algorithm>
#include <utility>

namespace lanework::store {
namespace {

using ledger::Entry;
using ledger::KindTable;
using ledger::Role;

std::string role_text(Role role) { return std::string(ledger::role_words().at(static_cast<std::size_t>(role))); }

Role role_of(const std::string& word) {
  const auto& words = ledger::role_words();
  const auto found = std::find(words.begin(), words.end(), word);
  return static_cast<Role>(found - words.begin());  // the tables take no other word
}

std::string id_text(const Entry& entry) { return {entry.id.bytes.begin(), entry.id.bytes.end()}; }

// Every part with its length before it, so that no two rows have one text.
std::string with_lengths(std::initializer_list<std::string> parts) {
  std::string out;
  for (const std::string& part : parts) out += std::to_string(part.size()) + ":" + part;
  return out;
}

std::string chained(const Row& row) {
  return with_lengths({std::to_string(row.receipt), row.id, row.device, std::to_string(row.sequence), row.author,
                       row.role, row.received, row.person, row.body});
}

Fault changed(const std::string& store, std::string found) {
  return {FaultCode::kFileUnreadable,
          {store, 0, 0, {}},
          std::move(found),
          "what was taken in, under the key that it was sealed with",
          "'lanework ledger check' goes through all of it; another key file, or a backup, may be what is needed"};
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
  const Node* player = entry.whole.find("player");
  return player != nullptr && player->kind == Node::Kind::kText ? player->text : std::string();
}

Fault not_an_entry(const Row& row, const std::string& store) {
  return {FaultCode::kFileUnreadable,
          {store, 0, 0, {}},
          "entry " + std::to_string(row.receipt) + ", which is none",
          "entries as they were taken in",
          "check the books: the rows were changed by something else"};
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

std::vector<EntryVerdict> Books::take_in(const Sender& sender, const std::vector<Entry>& entries,
                                         const KindTable& kinds, const std::string& received) {
  std::vector<std::string> ids;
  std::vector<std::string> tags;
  for (const Entry& entry : entries) {
    ids.push_back(id_text(entry));
    if (const std::string person = person_in(entry); !person.empty()) tags.push_back(tag_text(key_, person));
  }
  last_ = shelf_.last();
  shelf_.expect(ids, tags);
  std::vector<EntryVerdict> out;
  for (const Entry& entry : entries) {
    if (shelf_.failed() || damaged_) break;
    out.push_back(take_in_one(sender, entry, kinds, received));
  }
  return out;
}

EntryVerdict Books::take_in_one(const Sender& sender, const Entry& entry, const KindTable& kinds,
                                const std::string& received) {
  EntryVerdict out{entry.id, Verdict::kStored, 0, {}};
  const std::string id = id_text(entry);
  const std::string bytes = ledger::bytes_of(entry);
  if (const auto there = shelf_.by_id(id)) {
    const auto text = readable(*there);
    out.verdict = !text ? Verdict::kErased : *text == bytes ? Verdict::kKnown : Verdict::kOtherContent;
    out.receipt = there->receipt;
    return out;
  }
  if (std::string why = why_not(sender, entry, kinds); !why.empty()) {
    AsideRow aside{received, sender.device, sender.author, why, {}};
    aside.body = sealed(key_, bytes, aside_context(aside));
    shelf_.set_aside(aside);
    out.verdict = Verdict::kQuarantined;
    out.why = std::move(why);
    return out;
  }
  Row row{last_.receipt + 1, id, sender.device, entry.sequence, sender.author, role_text(sender.role),
          received,          {}, bytes};
  if (const std::string person = person_in(entry); !person.empty()) {
    row.person = tag_text(key_, person);
    const Person& about = person_of(row.person, &received);
    if (!about.key) {
      if (!about.erased) remember_damage("the key of whom a new entry is about, which does not open");
      out.verdict = Verdict::kErased;
      return out;
    }
    row.body = sealed(*about.key, bytes, id);
  }
  const Link link = next_link(last_.link, chained(row));
  shelf_.add(row, link);
  last_ = {row.receipt, link};
  out.receipt = row.receipt;
  return out;
}

// Made where there is none and 'make' says when.
const Books::Person& Books::person_of(const std::string& tag, const std::string* make) {
  const auto known = people_.find(tag);
  if (known != people_.end()) return known->second;
  Person out;
  const auto there = shelf_.person(tag);
  out.erased = there && !there->sealed_key;
  if (there && there->sealed_key) {
    if (const auto bytes = opened(key_, *there->sealed_key, tag)) out.key = Key::of(*bytes);
  }
  if (!there && make != nullptr) {
    out.key = Key::made();
    shelf_.add_person(tag, sealed(key_, bytes_text(*out.key), tag), *make);
  }
  return people_.emplace(tag, std::move(out)).first->second;
}

void Books::remember_damage(const std::string& what) {
  if (!damaged_) damaged_ = changed("the ledger", what);
}

std::optional<std::string> Books::readable(const Row& row) {
  if (row.person.empty()) return row.body;
  const Person& about = person_of(row.person, nullptr);
  if (about.erased) return {};
  auto text = about.key ? opened(*about.key, row.body, row.id) : std::nullopt;
  if (!text) remember_damage("entry " + std::to_string(row.receipt) + ", which does not open");
  return text;
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
  if (row.receipt != audit_.entries || !follows(last_, row, link)) {
    audit_.broken_at = row.receipt;
    return false;
  }
  last_ = link;
  const bool sound = !books_.damaged();
  if (!row.person.empty() && !books_.readable(row) && !books_.damaged()) ++audit_.unreadable;
  if (sound && books_.damaged()) audit_.damaged_at = row.receipt;
  audit_.head = link;
  return !audit_.damaged_at;
}

HandingOut::HandingOut(Books& books, std::int64_t after, const KindTable& kinds, std::string store)
    : books_(books), receipt_(after), kinds_(kinds), store_(std::move(store)) {}

bool HandingOut::goes_on(const Row& row, const Link& link) {
  if (row.receipt == receipt_ && out_.empty()) {
    last_ = link;
    return true;
  }
  if (row.receipt != receipt_ + 1 || !follows(last_, row, link)) {
    fault_ = changed(store_, "entry " + std::to_string(row.receipt) + ", which does not follow from those before");
    return false;
  }
  receipt_ = row.receipt;
  last_ = link;
  const auto text = books_.readable(row);
  if (books_.damaged()) {
    fault_ = books_.damaged();
    fault_->place.file = store_;
    return false;
  }
  if (!text) return true;
  auto received = Books::received_of(row, *text, kinds_);
  if (!received) fault_ = not_an_entry(row, store_);
  if (received) out_.push_back(std::move(*received));
  return !fault_;
}

Result<std::vector<ledger::Received>> HandingOut::out() {
  if (fault_) return *fault_;
  return std::move(out_);
}

bool follows(const Link& last, const Row& row, const Link& link) { return next_link(last, chained(row)) == link; }

std::string aside_context(const AsideRow& row) {
  return "quarantine " + with_lengths({row.received, row.device, row.author, row.why});
}

Result<std::string> opened_aside(const Key& key, const AsideRow& row, const std::string& store) {
  if (auto text = opened(key, row.body, aside_context(row))) return std::move(*text);
  return changed(store, "something kept aside on " + quote(row.received) + ", which does not open");
}

}  // namespace lanework::store
