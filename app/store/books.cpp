#include "app/store/books.h"

#include <algorithm>
#include <utility>

#include "app/store/aside.h"
#include "app/store/index_of_days.h"
#include "app/store/seals.h"
#include "core/ledger/consent.h"

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

constexpr const char* kNoConsentWhy =
    "there is no consent to keep a record of this for the player: nothing of it is kept";

// What is not taken in but kept aside.
std::string why_not(const Sender& sender, const Entry& entry, const KindTable& kinds) {
  if (sender.revoked) return aside::kRevoked;
  const ledger::Kind* kind = kinds.find(entry.kind);
  if (kind == nullptr) return {};
  const bool may = std::find(kind->enter.begin(), kind->enter.end(), sender.role) != kind->enter.end();
  return may ? std::string() : "a " + role_text(sender.role) + aside::kDoesNotEnter + entry.kind;
}

}  // namespace

std::string text_of(const Row& row) {
  return chained({std::to_string(row.receipt), row.id, row.device, std::to_string(row.sequence), row.author, row.role,
                  row.received, row.person, row.body});
}

Fault changed(const std::string& store, const std::string& what) {
  return {FaultCode::kFileUnreadable,
          {store, 0, 0, {}},
          what,
          "what was taken in, under the key that it was sealed with",
          "'lanework ledger check' goes through all of it; another key file, or a backup, may be what is needed"};
}

std::string person_in(const Entry& entry) { return text_at(entry, "player"); }

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
      if (shelf_.failed() || damaged_) return out;
      out.back().push_back(take_in_one(batch, incoming, kinds));
    }
    for (const Unread& unread : batch.unread) {
      if (shelf_.failed() || damaged_) return out;
      out.back().push_back(take_note_of_unread(batch, unread, kinds));
    }
  }
  return out;
}

// What is no entry may still say what it was meant to be. Of a kind that waits for consent it is kept by no way round:
// not where the consent is wanting, and not where nobody can tell whom it is about.
LookedAt Books::take_in_kept(std::int64_t number, const Decision& by, const KindTable& kinds) {
  last_ = shelf_.last();
  const auto row = shelf_.aside(number);
  if (!row) return {Looked::kNotThere, 0, {}};
  const auto text = readable_aside(*row);
  if (!text) return {Looked::kErased, 0, {}};
  LookedAt out = take_in_text(*row, *text, kinds);
  if (out.outcome != Looked::kDone) return out;
  shelf_.take_away_aside(number);
  shelf_.write_down({number, out.receipt, by});
  return out;
}

LookedAt Books::take_in_text(const AsideRow& row, const std::string& text, const KindTable& kinds) {
  const auto document = parse_json("kept aside", text);
  const auto read = document ? ledger::read_entry(document.value().root, "entry", kinds) : Result<Entry>(Faults{});
  if (!read || row.role.empty()) return {Looked::kNotAnEntry, 0, {}};
  const Entry& entry = read.value();
  const std::string player = person_in(entry);
  const Sender sender{row.device, row.author, role_of(row.role), false};
  if (!entry.known) return {Looked::kNewerKind, 0, player};
  if (!why_not(sender, entry, kinds).empty()) return {Looked::kNotTheirs, 0, player};
  if (is_closed(entry, kinds)) return {Looked::kNoConsent, 0, player};
  const std::string bytes = ledger::bytes_of(entry);
  shelf_.expect({id_text(entry)}, {});
  if (const auto there = shelf_.by_id(id_text(entry))) {
    const bool same = readable(*there) == bytes;
    return {same ? Looked::kDone : Looked::kOtherContent, same ? there->receipt : 0, player};
  }
  const EntryVerdict added = add(sender, row.received, entry, bytes);
  return {added.verdict == Verdict::kErased ? Looked::kErased : Looked::kDone, added.receipt, player};
}

LookedAt Books::drop_kept(std::int64_t number, const Decision& by) {
  last_ = shelf_.last();
  if (!shelf_.aside(number)) return {Looked::kNotThere, 0, {}};
  shelf_.take_away_aside(number);
  shelf_.write_down({number, 0, by});
  return {Looked::kDone, 0, {}};
}

std::optional<std::string> Books::readable_aside(const AsideRow& row) {
  const Person* about = row.person.empty() ? nullptr : &person_of(row.person, nullptr);
  if (about != nullptr && about->erased) return {};
  const Key* key = about == nullptr ? &key_ : about->key ? &*about->key : nullptr;
  auto text = key == nullptr ? std::nullopt : opened(*key, row.body, aside_context(row));
  if (!text) remember_damage("something kept aside on " + quote(row.received) + ", which does not open");
  return text;
}

EntryVerdict Books::take_note_of_unread(const Batch& batch, const Unread& unread, const KindTable& kinds) {
  EntryVerdict out{{}, Verdict::kQuarantined, 0, unread.why};
  Entry meant;
  if (auto document = parse_json("unread", unread.bytes)) meant.whole = std::move(document.value().root);
  meant.kind = text_at(meant, "kind");
  if (is_closed(meant, kinds)) {
    out.verdict = Verdict::kNoConsent;
    out.why = kNoConsentWhy;
    return out;
  }
  const std::string bytes = unread.bytes.substr(0, ledger::kMostEntryBytes);
  if (!set_aside(batch, {bytes, unread.why, person_in(meant), bytes})) out.verdict = Verdict::kErased;
  return out;
}

// What is about a person goes when the person does, so it lies there under the person's own key.
bool Books::set_aside(const Batch& batch, const Aside& aside) {
  const Sender& sender = batch.sender;
  AsideRow row{batch.received, sender.device, sender.author, aside.why, {}, {}, role_text(sender.role), {}};
  row.digest = tag_text(key_, sender.device + "\n" + aside.once);
  const Key* key = &key_;
  if (!aside.player.empty()) {
    row.person = tag_text(key_, aside.player);
    const Person& about = person_of(row.person, &batch.received);
    if (about.erased) return false;
    if (!about.key) {
      remember_damage("the key of whom something is about, which does not open");
      return false;
    }
    key = &*about.key;
  }
  row.body = sealed(*key, aside.bytes, aside_context(row));
  shelf_.set_aside(row);
  return true;
}

EntryVerdict Books::take_in_one(const Batch& batch, const Incoming& incoming, const KindTable& kinds) {
  const Entry& entry = incoming.entry;
  EntryVerdict out{entry.id, Verdict::kStored, 0, {}};
  const std::string id = id_text(entry);
  const std::string& bytes = ledger::bytes_of(entry);
  if (const auto there = shelf_.by_id(id)) {
    const auto text = readable(*there);
    out.verdict = !text ? Verdict::kErased : *text == bytes ? Verdict::kKnown : Verdict::kOtherContent;
    out.receipt = there->receipt;
    // The other one is kept aside, once of each device: whoever makes up more of them fills nothing.
    if (out.verdict == Verdict::kOtherContent && !is_closed(entry, kinds) &&
        set_aside(batch, {bytes, aside::kOtherContent, person_in(entry), "other content of " + id})) {
      out.why = aside::kOtherContent;
    }
    return out;
  }
  if (is_closed(entry, kinds)) {
    out.verdict = Verdict::kNoConsent;
    out.why = kNoConsentWhy;
    return out;
  }
  std::string why = why_not(batch.sender, entry, kinds);
  if (why.empty()) why = incoming.aside;
  if (!why.empty()) {
    if (!set_aside(batch, {bytes, why, person_in(entry), bytes})) {
      out.verdict = Verdict::kErased;
      return out;
    }
    out.verdict = Verdict::kQuarantined;
    out.why = std::move(why);
    return out;
  }
  return add(batch.sender, batch.received, entry, bytes);
}

EntryVerdict Books::add(const Sender& sender, const std::string& received, const Entry& entry,
                        const std::string& bytes) {
  EntryVerdict out{entry.id, Verdict::kStored, 0, {}};
  const std::string id = id_text(entry);
  Row row{last_.receipt + 1, id, sender.device, entry.sequence,        sender.author,          role_text(sender.role),
          received,          {}, bytes,         text_at(entry, "day"), text_at(entry, "squad")};
  if (const std::string person = person_in(entry); !person.empty()) {
    row.person = tag_text(key_, person);
    const Person& about = person_of(row.person, &received);
    if (!about.key) {
      if (!about.erased) remember_damage("the key of whom a new entry is about, which does not open");
      out.verdict = Verdict::kErased;
      return out;
    }
    row.body = sealed(*about.key, bytes, id);
    row.day.clear();  // what is about a person is found by the person only
  }
  if (entry.kind == "consent") consents_.erase(row.person);  // what waits in this call goes by it
  const Link link = next_link(last_.link, text_of(row));
  shelf_.add(row, link);
  last_ = {row.receipt, link};
  out.receipt = row.receipt;
  return out;
}

bool Books::was_erased(const std::string& tag) {
  const auto there = shelf_.person(tag);
  return there && !there->sealed_key;
}

const ledger::State& Books::consents_of(const std::string& tag, const KindTable& kinds) {
  const auto known = consents_.find(tag);
  if (known != consents_.end()) return known->second;
  std::vector<ledger::Received> about;
  for (const Row& row : shelf_.about(tag)) {
    const auto text = readable(row);
    auto received = text ? received_of(row, *text, kinds) : std::nullopt;
    if (received) about.push_back(std::move(*received));
  }
  return consents_.emplace(tag, ledger::consents_among(about, kinds)).first->second;
}

// Where the person was erased that comes first, and is told as that.
bool Books::is_closed(const Entry& entry, const KindTable& kinds) {
  if (ledger::purpose_of(entry, kinds).empty()) return false;
  const std::string person = person_in(entry);
  if (person.empty()) return true;
  const std::string tag = tag_text(key_, person);
  return !was_erased(tag) && !ledger::is_open(entry, consents_of(tag, kinds), kinds);
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
  auto document = parse_json("ledger", text);
  if (!document) return {};
  auto entry = ledger::read_entry(std::move(document.value().root), "entry", kinds);
  if (!entry) return {};
  return ledger::Received{std::move(entry).value(), row.receipt, row.received, row.device, row.author,
                          role_of(row.role)};
}

bool Auditor::goes_on(const Row& row, const Link& link, std::int64_t past) {
  ++audit_.entries;
  const bool in_its_place = row.receipt == audit_.entries;
  const bool holds = past != 0 ? is_emptied(row) : follows(last_, row, link);
  if (!in_its_place || !holds) {
    audit_.broken_at = row.receipt;
    return false;
  }
  last_ = link;
  audit_.head = link;
  if (past != 0) {
    seals_.passed_over(past, row, link);
    return true;
  }
  index_.expect(row);
  const bool sound = !books_.damaged();
  if (!row.person.empty() && !books_.readable(row) && !books_.damaged()) ++audit_.unreadable;
  if (sound && books_.damaged()) audit_.damaged_at = row.receipt;
  return !audit_.damaged_at;
}

Audit Auditor::audit() const {
  Audit out = audit_;
  out.past = seals_.entries();
  // Where it broke off, not all rows of all compactions were seen.
  if (!out.broken_at && !out.damaged_at) out.broken_at = seals_.first_wrong();
  if (!out.broken_at && !out.damaged_at) out.broken_at = index_.first_wrong();
  return out;
}

HandingOut::HandingOut(Books& books, const ledger::KindTable& kinds, std::string store, std::size_t most)
    : books_(books), kinds_(kinds), store_(std::move(store)), most_(most) {}

bool HandingOut::goes_on(const Link& before, const Row& row, const Link& link) {
  if (is_enough()) return false;
  if (follows(before, row, link)) {
    take(row);
  } else {
    fault_ = changed(store_, "entry " + std::to_string(row.receipt) + ", which does not follow from the one before");
  }
  return !is_enough();
}

void HandingOut::take(const Row& row) {
  const auto text = books_.readable(row);
  if (books_.damaged()) {
    fault_ = books_.damaged();
    fault_->place.file = store_;
    return;
  }
  if (!text) return;
  auto received = Books::received_of(row, *text, kinds_);
  if (!received) fault_ = not_an_entry(row, store_);
  if (received) out_.push_back(std::move(*received));
}

Result<std::vector<ledger::Received>> HandingOut::out() {
  if (fault_) return *fault_;
  return std::move(out_);
}

bool follows(const Link& last, const Row& row, const Link& link) { return next_link(last, text_of(row)) == link; }

std::string aside_context(const AsideRow& row) {
  if (row.role.empty()) return "quarantine " + chained({row.received, row.device, row.author, row.why});
  return "kept aside " + chained({row.received, row.device, row.author, row.why, row.role, row.person});
}

}  // namespace lanework::store
