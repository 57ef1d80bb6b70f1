#include "app/store/sqlite/sqlite_store.h"

#include <utility>

#include "app/store/books.h"
#include "app/store/index_of_days.h"
#include "app/store/key_check.h"
#include "app/store/seals.h"
#include "app/store/sqlite/connection.h"

namespace lanework::store {
namespace {

using ledger::KindTable;
using ledger::Received;
using sqlite::Connection;
using sqlite::Statement;
using sqlite::Transaction;

// Numbers of a device that follow each other are one range.
constexpr const char* kRangesOfGone =
    "SELECT device, min(sequence), max(sequence) FROM (SELECT device, sequence, sequence - dense_rank() OVER "
    "(PARTITION BY device ORDER BY sequence) AS island FROM entry WHERE past IS NOT NULL OR person IN "
    "(SELECT tag FROM person WHERE sealed_key IS NULL)) GROUP BY device, island ORDER BY device, island";

// The whole file is one club's.
class SqliteShelf final : public Shelf {
 public:
  explicit SqliteShelf(Connection& connection)
      : connection_(connection),
        last_(connection.database(), "SELECT receipt, link FROM entry ORDER BY receipt DESC LIMIT 1"),
        by_id_(connection.database(), "SELECT receipt, person, body FROM entry WHERE id = ?1"),
        insert_(connection.database(),
                "INSERT INTO entry (receipt, id, device, sequence, author, role, received, person, body, link) "
                "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)"),
        person_(connection.database(), "SELECT sealed_key FROM person WHERE tag = ?1"),
        new_person_(connection.database(), "INSERT INTO person (tag, sealed_key, made) VALUES (?1, ?2, ?3)"),
        set_aside_(connection.database(),
                   "INSERT INTO quarantine (number, received, device, author, why, body, digest, role, person) "
                   "VALUES (1 + max(coalesce((SELECT max(number) FROM quarantine), 0), "
                   "coalesce((SELECT max(number) FROM looked_at), 0)), ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8) "
                   "ON CONFLICT DO NOTHING"),
        aside_(connection.database(),
               "SELECT number, received, device, author, why, body, role, person FROM quarantine WHERE number = ?1"),
        take_away_(connection.database(), "DELETE FROM quarantine WHERE number = ?1"),
        write_down_(connection.database(),
                    "INSERT INTO looked_at (number, receipt, account, decided, why) VALUES (?1, ?2, ?3, ?4, ?5)"),
        evening_(connection.database(), "INSERT INTO evening (day, squad, receipt) VALUES (?1, ?2, ?3)"),
        every_(connection.database(),
               "SELECT receipt, id, device, sequence, author, role, received, person, body, link, past FROM entry "
               "ORDER BY receipt"),
        after_(connection.database(),
               "SELECT e.receipt, e.id, e.device, e.sequence, e.author, e.role, e.received, e.person, e.body, e.link, "
               "b.link FROM entry e LEFT JOIN entry b ON b.receipt = e.receipt - 1 "
               "WHERE e.receipt > ?1 AND e.past IS NULL ORDER BY e.receipt"),
        of_days_(
            connection.database(),
            "SELECT e.receipt, e.id, e.device, e.sequence, e.author, e.role, e.received, e.person, e.body, e.link, "
            "b.link FROM entry e LEFT JOIN entry b ON b.receipt = e.receipt - 1 "
            "WHERE e.receipt IN (SELECT receipt FROM evening WHERE day BETWEEN ?1 AND ?2) ORDER BY e.receipt"),
        about_(connection.database(),
               "SELECT e.receipt, e.id, e.device, e.sequence, e.author, e.role, e.received, e.person, e.body, e.link, "
               "b.link FROM entry e LEFT JOIN entry b ON b.receipt = e.receipt - 1 "
               "WHERE e.person = ?1 ORDER BY e.receipt"),
        by_role_(
            connection.database(),
            "SELECT e.receipt, e.id, e.device, e.sequence, e.author, e.role, e.received, e.person, e.body, e.link, "
            "b.link FROM entry e LEFT JOIN entry b ON b.receipt = e.receipt - 1 "
            "WHERE e.role = ?1 AND e.person IS NULL AND e.past IS NULL ORDER BY e.receipt") {}

  void start() { failed_.reset(); }
  [[nodiscard]] bool prepared() const {
    return last_.prepared() && by_id_.prepared() && insert_.prepared() && person_.prepared() &&
           new_person_.prepared() && set_aside_.prepared() && aside_.prepared() && take_away_.prepared() &&
           write_down_.prepared() && evening_.prepared() && every_.prepared() && after_.prepared() &&
           of_days_.prepared() && about_.prepared() && by_role_.prepared();
  }
  [[nodiscard]] const std::optional<Fault>& failed() const override { return failed_; }
  [[nodiscard]] Fault fault() const { return sqlite::fault_of(connection_.database(), connection_.file()); }

  void expect(const std::vector<std::string>&, const std::vector<std::string>&) override {}

  LastRow last() override {
    LastRow out;
    if (has_row(last_)) out = {last_.integer(0), link_of(last_.text(1))};
    last_.reset();
    return out;
  }

  std::optional<Row> by_id(const std::string& id) override {
    std::optional<Row> out;
    by_id_.bind_blob(1, id);
    if (has_row(by_id_)) out = Row{by_id_.integer(0), id, {}, 0, {}, {}, {}, by_id_.text(1), by_id_.text(2)};
    by_id_.reset();
    return out;
  }

  std::optional<PersonRow> person(const std::string& tag) override {
    std::optional<PersonRow> out;
    person_.bind_blob(1, tag);
    if (has_row(person_)) {
      out = PersonRow{};
      if (!person_.is_null(0)) out->sealed_key = person_.text(0);
    }
    person_.reset();
    return out;
  }

  std::vector<Row> about(const std::string& tag) override {
    std::vector<Row> out;
    each_about(tag, [&](const Link&, const Row& row, const Link&) {
      out.push_back(row);
      return true;
    });
    return out;
  }

  void add_person(const std::string& tag, const std::string& sealed_key, const std::string& made) override {
    new_person_.bind_blob(1, tag).bind_blob(2, sealed_key).bind(3, made);
    has_row(new_person_);
    new_person_.reset();
  }

  void add(const Row& row, const Link& link) override {
    const std::string link_bytes = link_text(link);
    insert_.bind(1, row.receipt).bind_blob(2, row.id).bind(3, row.device).bind(4, row.sequence).bind(5, row.author);
    insert_.bind(6, row.role).bind(7, row.received).bind_blob(9, row.body).bind_blob(10, link_bytes);
    if (row.person.empty()) {
      insert_.bind_null(8);
    } else {
      insert_.bind_blob(8, row.person);
    }
    has_row(insert_);
    insert_.reset();
    if (row.day.empty() || row.squad.empty()) return;
    evening_.bind(1, row.day).bind(2, row.squad).bind(3, row.receipt);
    has_row(evening_);
    evening_.reset();
  }

  void set_aside(const AsideRow& row) override {
    set_aside_.bind(1, row.received).bind(2, row.device).bind(3, row.author).bind(4, row.why).bind_blob(5, row.body);
    set_aside_.bind_blob(6, row.digest).bind(7, std::string_view(row.role));
    if (row.person.empty()) {
      set_aside_.bind_null(8);
    } else {
      set_aside_.bind_blob(8, row.person);
    }
    has_row(set_aside_);
    set_aside_.reset();
  }

  std::optional<AsideRow> aside(std::int64_t number) override {
    std::optional<AsideRow> out;
    aside_.bind(1, number);
    if (has_row(aside_)) out = aside_of(aside_);
    aside_.reset();
    return out;
  }

  // Of the columns number, received, device, author, why, body, role, person.
  static AsideRow aside_of(const Statement& rows) {
    return {rows.text(1), rows.text(2), rows.text(3), rows.text(4), rows.text(5), {}, rows.text(6), rows.text(7)};
  }

  void take_away_aside(std::int64_t number) override {
    take_away_.bind(1, number);
    has_row(take_away_);
    take_away_.reset();
  }

  void write_down(const Decided& decided) override {
    write_down_.bind(1, decided.number).bind(3, std::string_view(decided.by.account));
    write_down_.bind(4, std::string_view(decided.by.when)).bind(5, std::string_view(decided.by.why));
    if (decided.receipt == 0) {
      write_down_.bind_null(2);
    } else {
      write_down_.bind(2, decided.receipt);
    }
    has_row(write_down_);
    write_down_.reset();
  }

  // work(row, its link, the compaction that emptied it or 0) says whether to go on.
  template <class Work>
  void each_row(const Work& work) {
    bool more = true;
    while (more && has_row(every_)) more = work(row_of(every_), link_of(every_.text(9)), every_.integer(10));
    every_.reset();
  }
  // Without those that were emptied, as the next two.
  template <class Work>
  void each_after(std::int64_t after, const Work& work) {
    after_.bind(1, after);
    go_through_scattered(after_, work);
  }
  template <class Work>
  void each_of_days(const std::string& from, const std::string& to, const Work& work) {
    of_days_.bind(1, from).bind(2, to);
    go_through_scattered(of_days_, work);
  }
  template <class Work>
  void each_about(const std::string& tag, const Work& work) {
    about_.bind_blob(1, tag);
    go_through_scattered(about_, work);
  }
  template <class Work>
  void each_by_role(ledger::Role role, const Work& work) {
    const std::string word(ledger::role_words()[static_cast<std::size_t>(role)]);  // bound as it lies
    by_role_.bind(1, word);
    go_through_scattered(by_role_, work);
  }

 private:
  Connection& connection_;
  Statement last_;
  Statement by_id_;
  Statement insert_;
  Statement person_;
  Statement new_person_;
  Statement set_aside_;
  Statement aside_;
  Statement take_away_;
  Statement write_down_;
  Statement evening_;
  Statement every_;
  Statement after_;
  Statement of_days_;
  Statement about_;
  Statement by_role_;
  std::optional<Fault> failed_;  // of this call: what SQLite refused

  static Row row_of(const Statement& rows) {
    return {rows.integer(0),
            rows.text(1),
            rows.text(2),
            rows.integer(3),
            rows.text(4),
            rows.text(5),
            rows.text(6),
            rows.text(7),
            rows.text(8),
            {},
            {}};
  }

  // work(the link before it, row, its link) says whether to go on.
  template <class Work>
  void go_through_scattered(Statement& rows, const Work& work) {
    bool more = true;
    while (more && has_row(rows)) {
      const Row row = row_of(rows);
      more = work(link_of(rows.text(10)), row, link_of(rows.text(9)));
    }
    rows.reset();
  }

  // Steps a statement to its end or its next row; what SQLite refuses ends the whole call. After that nothing is
  // stepped any more: an error of the disk ends SQLite's transaction, too, and what came after would be kept by itself.
  bool has_row(Statement& statement) {
    if (failed_) return false;
    const Statement::Step step = statement.step();
    if (step == Statement::Step::kFailed && !failed_) failed_ = fault();
    return step == Statement::Step::kRow;
  }
};

class SqliteStore final : public Store {
 public:
  using Store::take_in;

  SqliteStore(Connection connection, Key key)
      : connection_(std::move(connection)), key_(std::move(key)), shelf_(connection_) {}

  [[nodiscard]] std::optional<Fault> not_ready() const {
    return shelf_.prepared() ? std::nullopt : std::optional<Fault>(shelf_.fault());
  }

  Result<std::vector<std::vector<EntryVerdict>>> take_in(const std::vector<Batch>& batches,
                                                         const KindTable& kinds) override {
    Transaction transaction(connection_);
    if (auto fault = transaction.begin()) return *fault;
    shelf_.start();
    Books books(key_, shelf_);
    auto out = books.take_in(batches, kinds);
    if (shelf_.failed()) return *shelf_.failed();
    if (books.damaged()) return *books.damaged();
    if (auto fault = transaction.commit()) return *fault;
    return out;
  }

  Result<std::vector<Received>> entries_after(std::int64_t after, std::size_t most, const KindTable& kinds) override {
    shelf_.start();
    Books books(key_, shelf_);
    HandingOut handing_out(books, kinds, connection_.file(), most);
    if (most > 0) {
      shelf_.each_after(after, [&](const Link& before, const Row& row, const Link& link) {
        return handing_out.goes_on(before, row, link);
      });
    }
    if (shelf_.failed()) return *shelf_.failed();
    return handing_out.out();
  }

  Result<std::vector<Received>> entries_of_days(Date from, Date to, const KindTable& kinds) override {
    return scattered(kinds, [&](const auto& work) { shelf_.each_of_days(to_iso(from), to_iso(to), work); });
  }

  Result<std::vector<Received>> entries_about(const std::string& player, const KindTable& kinds) override {
    return scattered(kinds, [&](const auto& work) { shelf_.each_about(tag_text(key_, player), work); });
  }

  Result<std::vector<Received>> entries_by_role(ledger::Role role, const KindTable& kinds) override {
    return scattered(kinds, [&](const auto& work) { shelf_.each_by_role(role, work); });
  }

  Result<std::int64_t> latest_receipt() override {
    Statement latest(connection_.database(), "SELECT coalesce(max(receipt), 0) FROM entry");
    if (latest.step() != Statement::Step::kRow) return shelf_.fault();
    return latest.integer(0);
  }

  Result<std::vector<Quarantined>> quarantined() override {
    Statement rows(connection_.database(),
                   "SELECT number, received, device, author, why, body, role, person FROM quarantine ORDER BY number");
    shelf_.start();
    Books books(key_, shelf_);
    std::vector<Quarantined> out;
    Statement::Step step = rows.step();
    for (; step == Statement::Step::kRow; step = rows.step()) {
      const AsideRow row = SqliteShelf::aside_of(rows);
      auto bytes = books.readable_aside(row);
      if (auto fault = fault_of(books)) return *fault;
      if (bytes) out.push_back({rows.integer(0), row.received, row.device, row.author, row.why, std::move(*bytes)});
    }
    if (step == Statement::Step::kFailed) return shelf_.fault();
    return out;
  }

  Result<LookedAt> take_in_kept(std::int64_t number, const Decision& by, const KindTable& kinds) override {
    return decide([&](Books& books) { return books.take_in_kept(number, by, kinds); });
  }

  Result<LookedAt> drop_kept(std::int64_t number, const Decision& by) override {
    return decide([&](Books& books) { return books.drop_kept(number, by); });
  }

  Result<std::vector<Decided>> decided(std::size_t most) override {
    Statement rows(connection_.database(),
                   "SELECT number, receipt, account, decided, why FROM looked_at ORDER BY number DESC LIMIT ?1");
    rows.bind(1, static_cast<std::int64_t>(most));
    std::vector<Decided> out;
    Statement::Step step = rows.step();
    for (; step == Statement::Step::kRow; step = rows.step()) {
      out.push_back({rows.integer(0), rows.integer(1), {rows.text(2), rows.text(3), rows.text(4)}});
    }
    if (step == Statement::Step::kFailed) return shelf_.fault();
    return out;
  }

  Result<std::int64_t> forget_kept_aside(Date before) override {
    const std::string day = to_iso(before);
    Transaction transaction(connection_);
    if (auto fault = transaction.begin()) return *fault;
    Statement forget(connection_.database(), "DELETE FROM quarantine WHERE received < ?1");
    forget.bind(1, std::string_view(day));
    if (forget.step() == Statement::Step::kFailed) return shelf_.fault();
    Statement changed(connection_.database(), "SELECT changes()");
    const std::int64_t count = changed.step() == Statement::Step::kRow ? changed.integer(0) : 0;
    if (auto fault = transaction.commit()) return *fault;
    return count;
  }

  Result<bool> erase_person(const std::string& player, const std::string& when, const ErasureNote& note) override {
    const std::string tag = tag_text(key_, player);
    {
      Transaction transaction(connection_);
      if (auto failed = transaction.begin()) return *failed;
      shelf_.start();
      const auto person = shelf_.person(tag);
      if (shelf_.failed()) return *shelf_.failed();
      if (!person || !person->sealed_key) return false;
      if (auto failed = note(tag, when)) return *failed;
      Statement erase(connection_.database(),
                      "UPDATE person SET sealed_key = NULL, erased = ?2 WHERE tag = ?1 AND sealed_key IS NOT NULL");
      erase.bind_blob(1, tag).bind(2, when);
      if (erase.step() == Statement::Step::kFailed) return shelf_.fault();
      erase.reset();
      Statement aside(connection_.database(), "DELETE FROM quarantine WHERE person = ?1");
      aside.bind_blob(1, tag);
      if (aside.step() == Statement::Step::kFailed) return shelf_.fault();
      aside.reset();
      if (auto failed = transaction.commit()) return *failed;
    }
    // The old page with the key on it stands in the log until then.
    if (auto failed = connection_.run("PRAGMA wal_checkpoint(TRUNCATE)")) return *failed;
    return true;
  }

  Result<Audit> audit() override {
    if (auto faults = sqlite::check_form(connection_)) return *faults;
    // Compactions and rows as they are at one moment.
    if (auto fault = connection_.run("BEGIN")) return *fault;
    auto out = audit_within();
    if (auto fault = connection_.run("COMMIT"); fault && out) return *fault;
    return out;
  }

  Result<Gone> gone() override {
    Gone out;
    Statement until(connection_.database(), "SELECT coalesce(max(until_day), '') FROM compaction");
    if (until.step() == Statement::Step::kFailed) return shelf_.fault();
    out.evenings_before = until.text(0);
    Statement rows(connection_.database(), kRangesOfGone);
    Statement::Step step = rows.step();
    for (; step == Statement::Step::kRow; step = rows.step()) {
      out.entries.push_back({rows.text(0), rows.integer(1), rows.integer(2)});
    }
    if (step == Statement::Step::kFailed) return shelf_.fault();
    return out;
  }

 private:
  Connection connection_;
  Key key_;
  SqliteShelf shelf_;

  [[nodiscard]] std::optional<Fault> fault_of(const Books& books) const {
    if (shelf_.failed()) return shelf_.failed();
    if (!books.damaged()) return {};
    Fault out = *books.damaged();
    out.place.file = connection_.file();
    return out;
  }

  Result<Audit> audit_within() {
    Seals seals(key_);
    Statement rows(connection_.database(), "SELECT number, made, why, until_day, first, entries, seal FROM compaction");
    Statement::Step step = rows.step();
    for (; step == Statement::Step::kRow; step = rows.step()) {
      seals.expect(
          {rows.integer(0), rows.text(1), rows.text(2), rows.text(3), rows.integer(4), rows.integer(5), rows.text(6)});
    }
    if (step == Statement::Step::kFailed) return shelf_.fault();
    shelf_.start();
    Books books(key_, shelf_);
    IndexOfDays index;
    Auditor auditor(books, seals, index);
    shelf_.each_row(
        [&](const Row& row, const Link& link, std::int64_t past) { return auditor.goes_on(row, link, past); });
    if (shelf_.failed()) return *shelf_.failed();
    Statement days(connection_.database(), "SELECT day, squad, receipt FROM evening");
    for (step = days.step(); step == Statement::Step::kRow; step = days.step()) {
      index.found({days.text(0), days.text(1)}, days.integer(2));
    }
    if (step == Statement::Step::kFailed) return shelf_.fault();
    return auditor.audit();
  }

  template <class Work>
  Result<LookedAt> decide(const Work& work) {
    Transaction transaction(connection_);
    if (auto fault = transaction.begin()) return *fault;
    shelf_.start();
    Books books(key_, shelf_);
    const LookedAt out = work(books);
    if (auto fault = fault_of(books)) return *fault;
    if (out.outcome != Looked::kDone) return out;
    if (auto fault = transaction.commit()) return *fault;
    return out;
  }

  // each: calls its work with every row that is asked for.
  template <class Each>
  Result<std::vector<Received>> scattered(const KindTable& kinds, const Each& each) {
    shelf_.start();
    Books books(key_, shelf_);
    HandingOut handing_out(books, kinds, connection_.file());
    each([&](const Link& before, const Row& row, const Link& link) { return handing_out.goes_on(before, row, link); });
    if (shelf_.failed()) return *shelf_.failed();
    return handing_out.out();
  }
};

}  // namespace

Result<std::unique_ptr<Store>> open_sqlite_store(const std::string& file, Key key) {
  {
    const auto statements = open_sqlite_statements(file);
    if (!statements) return statements.faults();
    if (auto faults = check_key(*statements.value(), "", key)) return *faults;
  }
  auto connection = Connection::open(file);
  if (!connection) return connection.faults();
  auto store = std::make_unique<SqliteStore>(std::move(connection).value(), std::move(key));
  if (auto fault = store->not_ready()) return *fault;
  return std::unique_ptr<Store>(std::move(store));
}

}  // namespace lanework::store
