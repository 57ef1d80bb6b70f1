#include "app/store/sqlite/sqlite_store.h"

#include <algorithm>
#include <map>
#include <utility>

#include "app/store/sqlite/connection.h"

namespace lanework::store {
namespace {

using ledger::Entry;
using ledger::EntryId;
using ledger::KindTable;
using ledger::Received;
using ledger::Role;
using sqlite::Connection;
using sqlite::Statement;
using sqlite::Transaction;

constexpr const char* kQuarantineContext = "quarantine";

template <class Bytes>
std::string bytes_text(const Bytes& bytes) {
  return {bytes.begin(), bytes.end()};
}

std::string role_text(Role role) { return std::string(ledger::role_words().at(static_cast<std::size_t>(role))); }

Role role_of(const std::string& word) {
  const auto& words = ledger::role_words();
  const auto found = std::find(words.begin(), words.end(), word);
  return static_cast<Role>(found - words.begin());  // the table takes no other word
}

// Whom it is about, also where its kind is a newer version's.
std::string person_in(const Entry& entry) {
  const Node* player = entry.whole.find("player");
  return player != nullptr && player->kind == Node::Kind::kText ? player->text : std::string();
}

// One row as it lies in the table.
struct Row {
  std::int64_t receipt = 0;
  std::string id;
  std::string device;
  std::int64_t sequence = 0;
  std::string author;
  std::string role;
  std::string received;
  std::string person;  // empty: nobody in particular
  std::string body;

  // Every part with its length before it, so that no two rows have one text.
  [[nodiscard]] std::string chained() const {
    std::string out;
    for (const std::string& part :
         {std::to_string(receipt), id, device, std::to_string(sequence), author, role, received, person, body}) {
      out += std::to_string(part.size()) + ":" + part;
    }
    return out;
  }
};

using Link = std::array<std::uint8_t, kDigestBytes>;

Link link_of(const std::string& bytes) {
  Link out{};
  std::copy_n(bytes.begin(), std::min(bytes.size(), out.size()), out.begin());
  return out;
}

class SqliteStore final : public Store {
 public:
  SqliteStore(Connection connection, Key key)
      : connection_(std::move(connection)),
        key_(std::move(key)),
        last_(connection_.database(), "SELECT receipt, link FROM entry ORDER BY receipt DESC LIMIT 1"),
        by_id_(connection_.database(), "SELECT receipt, person, body FROM entry WHERE id = ?1"),
        insert_(connection_.database(),
                "INSERT INTO entry (receipt, id, device, sequence, author, role, received, person, body, link) "
                "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)"),
        person_(connection_.database(), "SELECT sealed_key FROM person WHERE tag = ?1"),
        new_person_(connection_.database(), "INSERT INTO person (tag, sealed_key, made) VALUES (?1, ?2, ?3)"),
        set_aside_(connection_.database(),
                   "INSERT INTO quarantine (received, device, author, why, body) VALUES (?1, ?2, ?3, ?4, ?5)"),
        after_(connection_.database(),
               "SELECT receipt, id, device, sequence, author, role, received, person, body, link FROM entry "
               "WHERE receipt > ?1 ORDER BY receipt LIMIT ?2") {}

  Result<std::vector<EntryVerdict>> take_in(const Sender& sender, const std::vector<Entry>& entries,
                                            const KindTable& kinds, const std::string& received) override {
    Transaction transaction(connection_);
    if (auto fault = transaction.begin()) return *fault;
    start();
    std::vector<EntryVerdict> out;
    read_last();
    for (const Entry& entry : entries) {
      out.push_back(take_in_one(sender, entry, kinds, received));
      if (failed_) return *failed_;
    }
    if (auto fault = transaction.commit()) return *fault;
    return out;
  }

  Result<std::vector<Received>> entries_after(std::int64_t after, std::size_t most, const KindTable& kinds) override {
    std::vector<Received> out;
    start();
    each_row(after, static_cast<std::int64_t>(most), [&](const Row& row, const Link&) {
      if (const auto text = readable(row)) add_received(row, *text, kinds, out);
      return !failed_;
    });
    if (failed_) return *failed_;
    return out;
  }

  Result<std::vector<Quarantined>> quarantined() override {
    Statement rows(connection_.database(),
                   "SELECT number, received, device, author, why, body FROM quarantine ORDER BY number");
    std::vector<Quarantined> out;
    Statement::Step step = rows.step();
    for (; step == Statement::Step::kRow; step = rows.step()) {
      out.push_back({rows.integer(0), rows.text(1), rows.text(2), rows.text(3), rows.text(4),
                     opened(key_, rows.text(5), kQuarantineContext).value_or("")});
    }
    if (step == Statement::Step::kFailed) return fault();
    return out;
  }

  Result<bool> erase_person(const std::string& player, const std::string& when) override {
    const std::string tag = bytes_text(person_tag(key_, player));
    {
      Transaction transaction(connection_);
      if (auto failed = transaction.begin()) return *failed;
      Statement erase(connection_.database(),
                      "UPDATE person SET sealed_key = NULL, erased = ?2 WHERE tag = ?1 AND sealed_key IS NOT NULL");
      erase.bind_blob(1, tag).bind(2, when);
      if (erase.step() == Statement::Step::kFailed) return fault();
      Statement changed(connection_.database(), "SELECT changes()");
      const bool there = changed.step() == Statement::Step::kRow && changed.integer(0) > 0;
      if (auto failed = transaction.commit()) return *failed;
      if (!there) return false;
    }
    // The old page with the key on it stands in the log until then.
    if (auto failed = connection_.run("PRAGMA wal_checkpoint(TRUNCATE)")) return *failed;
    return true;
  }

  Result<Audit> audit() override {
    Audit out;
    Link last{};
    start();
    each_row(0, -1, [&](const Row& row, const Link& link) {
      ++out.entries;
      if (row.receipt != out.entries || next_link(last, row.chained()) != link) {
        out.broken_at = row.receipt;
        return false;
      }
      last = link;
      if (!row.person.empty() && !readable(row)) ++out.unreadable;
      return true;
    });
    if (failed_) return *failed_;
    return out;
  }

 private:
  Connection connection_;
  Key key_;
  Statement last_;
  Statement by_id_;
  Statement insert_;
  Statement person_;
  Statement new_person_;
  Statement set_aside_;
  Statement after_;
  std::int64_t last_receipt_ = 0;
  Link last_link_{};
  std::map<std::string, std::optional<Key>> people_;  // by tag; empty: erased. Of one call only
  std::optional<Fault> failed_;                       // of this call: what SQLite refused

  void start() {
    people_.clear();
    failed_.reset();
  }

  [[nodiscard]] Fault fault() const { return sqlite::fault_of(connection_.database(), connection_.file()); }

  // Steps a statement to its end or its next row; what SQLite refuses ends the whole call.
  bool has_row(Statement& statement) {
    const Statement::Step step = statement.step();
    if (step == Statement::Step::kFailed && !failed_) failed_ = fault();
    return step == Statement::Step::kRow;
  }

  void read_last() {
    last_receipt_ = 0;
    last_link_ = {};
    if (has_row(last_)) {
      last_receipt_ = last_.integer(0);
      last_link_ = link_of(last_.text(1));
    }
    last_.reset();
  }

  // The person's key; null where the person was erased. Made where there is none and 'make' says when.
  const Key* key_of(const std::string& tag, const std::string* make) {
    const auto known = people_.find(tag);
    if (known != people_.end()) return known->second ? &*known->second : nullptr;
    std::optional<Key> key;
    person_.bind_blob(1, tag);
    const bool there = has_row(person_);
    if (there && !person_.is_null(0)) {
      if (const auto bytes = opened(key_, person_.text(0), tag)) key = Key::of(*bytes);
    }
    person_.reset();
    if (!there && make != nullptr) {
      key = Key::made();
      const std::string wrapped = sealed(key_, bytes_text(key->bytes()), tag);
      new_person_.bind_blob(1, tag).bind_blob(2, wrapped).bind(3, *make);
      has_row(new_person_);
      new_person_.reset();
    }
    const auto& kept = people_.emplace(tag, std::move(key)).first->second;
    return kept ? &*kept : nullptr;
  }

  EntryVerdict take_in_one(const Sender& sender, const Entry& entry, const KindTable& kinds,
                           const std::string& received) {
    EntryVerdict out{entry.id, Verdict::kStored, 0, {}};
    const std::string id = bytes_text(entry.id.bytes);
    const std::string bytes = ledger::bytes_of(entry);
    by_id_.bind_blob(1, id);
    if (has_row(by_id_)) {
      const Row there{by_id_.integer(0), id, {}, 0, {}, {}, {}, by_id_.text(1), by_id_.text(2)};
      by_id_.reset();
      const auto text = readable(there);
      out.verdict = !text ? Verdict::kErased : *text == bytes ? Verdict::kKnown : Verdict::kOtherContent;
      out.receipt = there.receipt;
      return out;
    }
    by_id_.reset();
    if (std::string why = why_not(sender, entry, kinds); !why.empty()) {
      set_aside(sender, bytes, why, received);
      out.verdict = Verdict::kQuarantined;
      out.why = std::move(why);
      return out;
    }
    const std::string person = person_in(entry);
    Row row{last_receipt_ + 1, id, sender.device, entry.sequence, sender.author, role_text(sender.role),
            received,          {}, bytes};
    if (!person.empty()) {
      row.person = bytes_text(person_tag(key_, person));
      const Key* key = key_of(row.person, &received);
      if (key == nullptr) {
        out.verdict = Verdict::kErased;
        return out;
      }
      row.body = sealed(*key, bytes, id);
    }
    insert(row);
    out.receipt = row.receipt;
    return out;
  }

  // What is not taken in but kept aside.
  static std::string why_not(const Sender& sender, const Entry& entry, const KindTable& kinds) {
    if (sender.revoked) return "the device was revoked";
    const ledger::Kind* kind = kinds.find(entry.kind);
    if (kind == nullptr) return {};
    const bool may = std::find(kind->enter.begin(), kind->enter.end(), sender.role) != kind->enter.end();
    return may ? std::string() : "a " + role_text(sender.role) + " does not enter " + entry.kind;
  }

  void set_aside(const Sender& sender, const std::string& bytes, const std::string& why, const std::string& received) {
    const std::string body = sealed(key_, bytes, kQuarantineContext);
    set_aside_.bind(1, received).bind(2, sender.device).bind(3, sender.author).bind(4, why).bind_blob(5, body);
    has_row(set_aside_);
    set_aside_.reset();
  }

  void insert(const Row& row) {
    const Link link = next_link(last_link_, row.chained());
    const std::string link_bytes = bytes_text(link);
    insert_.bind(1, row.receipt).bind_blob(2, row.id).bind(3, row.device).bind(4, row.sequence).bind(5, row.author);
    insert_.bind(6, row.role).bind(7, row.received).bind_blob(9, row.body).bind_blob(10, link_bytes);
    if (row.person.empty()) {
      insert_.bind_null(8);
    } else {
      insert_.bind_blob(8, row.person);
    }
    has_row(insert_);
    insert_.reset();
    last_receipt_ = row.receipt;
    last_link_ = link;
  }

  // Empty where the person was erased, or the key is not the one it was sealed with.
  std::optional<std::string> readable(const Row& row) {
    if (row.person.empty()) return row.body;
    const Key* key = key_of(row.person, nullptr);
    return key == nullptr ? std::nullopt : opened(*key, row.body, row.id);
  }

  // work(row, its link) says whether to go on. most: -1 for all.
  template <class Work>
  void each_row(std::int64_t after, std::int64_t most, const Work& work) {
    after_.bind(1, after).bind(2, most);
    bool more = true;
    while (more && has_row(after_)) {
      const Row row{after_.integer(0), after_.text(1), after_.text(2), after_.integer(3), after_.text(4),
                    after_.text(5),    after_.text(6), after_.text(7), after_.text(8)};
      more = work(row, link_of(after_.text(9)));
    }
    after_.reset();
  }

  void add_received(const Row& row, const std::string& text, const KindTable& kinds, std::vector<Received>& out) {
    const auto document = parse_json(connection_.file(), text);
    auto entry =
        document ? ledger::read_entry(document.value().root, "entry", kinds) : Result<Entry>(document.faults());
    if (entry) {
      out.push_back({std::move(entry).value(), row.receipt, row.received, row.device, row.author, role_of(row.role)});
      return;
    }
    failed_ = Fault{FaultCode::kFileUnreadable,
                    {connection_.file(), 0, 0, {}},
                    "entry " + std::to_string(row.receipt) + ", which is none",
                    "entries as they were taken in",
                    "check the books: the file was changed by something else"};
  }
};

}  // namespace

Result<std::unique_ptr<Store>> open_sqlite_store(const std::string& file, Key key) {
  auto connection = Connection::open(file);
  if (!connection) return connection.faults();
  return std::unique_ptr<Store>(std::make_unique<SqliteStore>(std::move(connection).value(), std::move(key)));
}

}  // namespace lanework::store
