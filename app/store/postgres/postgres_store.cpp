#include "app/store/postgres/postgres_store.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "app/store/books.h"
#include "app/store/index_of_days.h"
#include "app/store/key_check.h"
#include "app/store/postgres/connection.h"
#include "app/store/postgres/migrate.h"
#include "app/store/seals.h"

namespace lanework::store {
namespace {

using ledger::KindTable;
using ledger::Received;
using postgres::Connection;
using postgres::Parameters;
using postgres::Rows;
using postgres::Transaction;

// The database may be far away: what a call will ask is fetched at once, what it adds is sent at once.
class PostgresShelf final : public Shelf {
 public:
  PostgresShelf(Connection& connection, const std::string& club) : connection_(connection), club_(club) {}

  [[nodiscard]] const std::optional<Fault>& failed() const override { return failed_; }

  // Takes the one writer's place for this club until the transaction ends.
  LastRow last() override {
    const auto rows =
        ask("SELECT last_receipt, last_link FROM club WHERE club = $1 FOR UPDATE", Parameters().text(club_));
    if (!rows || rows->count() == 0) return {};
    return {rows->integer(0, 0), link_of(rows->text(0, 1))};
  }

  void expect(const std::vector<std::string>& ids, const std::vector<std::string>& tags) override {
    if (!ids.empty()) {
      const auto rows = ask("SELECT receipt, id, person, body FROM entry WHERE club = $1 AND id = ANY ($2::bytea[])",
                            Parameters().text(club_).bytes_list({ids.begin(), ids.end()}));
      for (int i = 0; rows && i < rows->count(); ++i) {
        const std::string id = rows->text(i, 1);
        entries_[id] = Row{rows->integer(i, 0), id, {}, 0, {}, {}, {}, rows->text(i, 2), rows->text(i, 3)};
      }
    }
    expect_people({tags.begin(), tags.end()});
  }

  void expect_people(std::set<std::string> tags) {
    for (const auto& [id, row] : entries_) {
      if (!row.person.empty()) tags.insert(row.person);
    }
    std::vector<std::optional<std::string>> unknown;
    for (const std::string& tag : tags) {
      if (people_.count(tag) == 0) unknown.emplace_back(tag);
    }
    if (unknown.empty()) return;
    for (const auto& tag : unknown) people_[*tag] = {};
    const auto rows = ask("SELECT tag, sealed_key FROM person WHERE club = $1 AND tag = ANY ($2::bytea[])",
                          Parameters().text(club_).bytes_list(unknown));
    for (int i = 0; rows && i < rows->count(); ++i) {
      PersonRow person;
      if (!rows->is_null(i, 1)) person.sealed_key = rows->text(i, 1);
      people_[rows->text(i, 0)] = std::move(person);
    }
  }

  std::optional<Row> by_id(const std::string& id) override {
    const auto found = entries_.find(id);
    return found == entries_.end() ? std::nullopt : std::optional<Row>(found->second);
  }

  std::optional<PersonRow> person(const std::string& tag) override {
    if (people_.count(tag) == 0) expect_people({tag});  // nobody said that it would be asked about
    return people_[tag];
  }

  std::vector<Row> about(const std::string& tag) override {
    std::vector<Row> out;
    const auto rows =
        ask("SELECT receipt, id, device, sequence, author, role, received, person, body FROM entry "
            "WHERE club = $1 AND person = $2 ORDER BY receipt",
            Parameters().text(club_).bytes(tag));
    for (int i = 0; rows && i < rows->count(); ++i) out.push_back(row_of(*rows, i));
    for (const NewEntry& one : new_entries_) {
      if (one.row.person == tag) out.push_back(one.row);
    }
    return out;
  }

  // Of the columns from receipt to body.
  static Row row_of(const Rows& rows, int i) {
    return {rows.integer(i, 0),
            rows.text(i, 1),
            rows.text(i, 2),
            rows.integer(i, 3),
            rows.text(i, 4),
            rows.text(i, 5),
            rows.text(i, 6),
            rows.text(i, 7),
            rows.text(i, 8),
            {},
            {}};
  }

  void add_person(const std::string& tag, const std::string& sealed_key, const std::string& made) override {
    people_[tag] = PersonRow{sealed_key};
    new_people_.push_back({tag, sealed_key, made});
  }

  void add(const Row& row, const Link& link) override {
    entries_[row.id] = row;
    new_entries_.push_back({row, link_text(link)});
  }

  void set_aside(const AsideRow& row) override { aside_.push_back(row); }

  std::optional<AsideRow> aside(std::int64_t number) override {
    const auto rows =
        ask("SELECT number, received, device, author, why, body, role, person FROM quarantine "
            "WHERE club = $1 AND number = $2::bigint",
            Parameters().text(club_).integer(number));
    return rows && rows->count() == 1 ? std::optional<AsideRow>(aside_of(*rows, 0)) : std::nullopt;
  }

  // Of the columns number, received, device, author, why, body, role, person.
  static AsideRow aside_of(const Rows& rows, int i) {
    return {rows.text(i, 1), rows.text(i, 2), rows.text(i, 3), rows.text(i, 4), rows.text(i, 5), {},
            rows.text(i, 6), rows.text(i, 7)};
  }

  void take_away_aside(std::int64_t number) override {
    ask("DELETE FROM quarantine WHERE club = $1 AND number = $2::bigint", Parameters().text(club_).integer(number));
  }

  void write_down(const Decided& decided) override {
    Parameters parameters;
    parameters.text(club_).integer(decided.number);
    if (decided.receipt == 0) {
      parameters.null();
    } else {
      parameters.integer(decided.receipt);
    }
    parameters.text(decided.by.account).text(decided.by.when).text(decided.by.why);
    ask("INSERT INTO looked_at (club, number, receipt, account, decided, why) "
        "VALUES ($1, $2::bigint, $3::bigint, $4, $5, $6)",
        parameters);
  }

  // Everything that was added, before the caller commits.
  void send() {
    if (!new_people_.empty()) send_people();
    if (!new_entries_.empty()) send_entries();
    if (!aside_.empty()) send_aside();
  }

 private:
  struct NewPerson {
    std::string tag;
    std::string sealed_key;
    std::string made;
  };
  struct NewEntry {
    Row row;
    std::string link;
  };
  Connection& connection_;
  const std::string& club_;
  std::optional<Fault> failed_;
  std::map<std::string, Row> entries_;                      // by id
  std::map<std::string, std::optional<PersonRow>> people_;  // by tag; empty: nobody there
  std::vector<NewPerson> new_people_;
  std::vector<NewEntry> new_entries_;
  std::vector<AsideRow> aside_;

  std::optional<Rows> ask(const char* statement, const Parameters& parameters) {
    if (failed_) return {};
    auto rows = connection_.ask(statement, parameters);
    if (rows) return std::move(rows).value();
    failed_ = rows.faults().front();
    return {};
  }

  template <class Item, class Part>
  static auto column(const std::vector<Item>& items, Part part) {
    std::vector<std::decay_t<decltype(part(items.front()))>> out;
    for (const Item& item : items) out.push_back(part(item));
    return out;
  }

  void send_people() {
    using Bytes = std::optional<std::string>;
    ask("INSERT INTO person (club, tag, sealed_key, made) "
        "SELECT $1, * FROM unnest($2::bytea[], $3::bytea[], $4::text[])",
        Parameters()
            .text(club_)
            .bytes_list(column(new_people_, [](const NewPerson& one) { return Bytes(one.tag); }))
            .bytes_list(column(new_people_, [](const NewPerson& one) { return Bytes(one.sealed_key); }))
            .texts(column(new_people_, [](const NewPerson& one) { return one.made; })));
  }

  void send_entries() {
    constexpr std::uint16_t kColumns = 11;
    postgres::CopiedRows rows(kColumns);
    for (const NewEntry& one : new_entries_) {
      rows.row().text(club_).integer(one.row.receipt).text(one.row.id).text(one.row.device).integer(one.row.sequence);
      rows.text(one.row.author).text(one.row.role).text(one.row.received);
      if (one.row.person.empty()) {
        rows.null();
      } else {
        rows.text(one.row.person);
      }
      rows.text(one.row.body).text(one.link);
    }
    copy(
        "COPY entry (club, receipt, id, device, sequence, author, role, received, person, body, link) "
        "FROM STDIN (FORMAT binary)",
        rows);
    send_evenings();
    ask("UPDATE club SET last_receipt = $2::bigint, last_link = $3 WHERE club = $1",
        Parameters().text(club_).integer(new_entries_.back().row.receipt).bytes(new_entries_.back().link));
  }

  void send_evenings() {
    constexpr std::uint16_t kColumns = 4;
    postgres::CopiedRows rows(kColumns);
    bool any = false;
    for (const NewEntry& one : new_entries_) {
      if (one.row.day.empty() || one.row.squad.empty()) continue;
      rows.row().text(club_).text(one.row.day).text(one.row.squad).integer(one.row.receipt);
      any = true;
    }
    if (any) copy("COPY evening (club, day, squad, receipt) FROM STDIN (FORMAT binary)", rows);
  }

  void copy(const char* statement, const postgres::CopiedRows& rows) {
    if (!failed_) failed_ = connection_.copy(statement, rows);
  }

  void send_aside() {
    using Bytes = std::optional<std::string>;
    ask("INSERT INTO quarantine (club, received, device, author, why, body, digest, role, person) "
        "SELECT $1, * FROM unnest($2::text[], $3::text[], $4::text[], $5::text[], $6::bytea[], $7::bytea[], "
        "$8::text[], $9::bytea[]) ON CONFLICT DO NOTHING",
        Parameters()
            .text(club_)
            .texts(column(aside_, [](const AsideRow& one) { return one.received; }))
            .texts(column(aside_, [](const AsideRow& one) { return one.device; }))
            .texts(column(aside_, [](const AsideRow& one) { return one.author; }))
            .texts(column(aside_, [](const AsideRow& one) { return one.why; }))
            .bytes_list(column(aside_, [](const AsideRow& one) { return Bytes(one.body); }))
            .bytes_list(column(aside_, [](const AsideRow& one) { return Bytes(one.digest); }))
            .texts(column(aside_, [](const AsideRow& one) { return one.role; }))
            .bytes_list(
                column(aside_, [](const AsideRow& one) { return one.person.empty() ? Bytes() : Bytes(one.person); })));
  }
};

class PostgresStore final : public Store {
 public:
  using Store::take_in;

  PostgresStore(Connection connection, std::string club, Key key)
      : connection_(std::move(connection)), club_(std::move(club)), key_(std::move(key)) {}

  Result<std::vector<std::vector<EntryVerdict>>> take_in(const std::vector<Batch>& batches,
                                                         const KindTable& kinds) override {
    if (auto faults = connection_.revive()) return *faults;
    Transaction transaction(connection_);
    if (auto fault = transaction.begin()) return *fault;
    PostgresShelf shelf(connection_, club_);
    Books books(key_, shelf);
    auto out = books.take_in(batches, kinds);
    if (books.damaged()) return *books.damaged();
    shelf.send();
    if (shelf.failed()) return *shelf.failed();
    if (auto fault = transaction.commit()) return *fault;
    return out;
  }

  Result<std::vector<Received>> entries_after(std::int64_t after, std::size_t most, const KindTable& kinds) override {
    PostgresShelf shelf(connection_, club_);
    Books books(key_, shelf);
    HandingOut handing_out(books, kinds, connection_.name(), most);
    // Those of erased people do not count, so it may take more than once.
    constexpr std::size_t kAtOnce = 10'000;
    const auto at_once = static_cast<std::int64_t>(std::min(most, kAtOnce));
    for (bool more = at_once > 0; more;) {
      const auto some = kept_rows_after(after, at_once);
      if (!some) return some.faults();
      if (auto fault = expect_people(some.value(), shelf)) return *fault;
      hand_out(some.value(), handing_out);
      more = some.value().count() == at_once && !handing_out.is_enough();
      if (more) after = some.value().integer(some.value().count() - 1, 0);
    }
    return handing_out.out();
  }

  Result<std::vector<Received>> entries_of_days(Date from, Date to, const KindTable& kinds) override {
    return scattered(kinds,
                     rows_where("SELECT e.receipt, e.id, e.device, e.sequence, e.author, e.role, e.received, e.person, "
                                "e.body, e.link, b.link FROM entry e LEFT JOIN entry b ON b.club = e.club AND "
                                "b.receipt = e.receipt - 1 WHERE e.club = $1 AND e.receipt IN (SELECT receipt FROM "
                                "evening WHERE club = $1 AND day BETWEEN $2 AND $3) ORDER BY e.receipt",
                                Parameters().text(club_).text(to_iso(from)).text(to_iso(to))));
  }

  Result<std::vector<Received>> entries_about(const std::string& player, const KindTable& kinds) override {
    return scattered(kinds,
                     rows_where("SELECT e.receipt, e.id, e.device, e.sequence, e.author, e.role, e.received, e.person, "
                                "e.body, e.link, b.link FROM entry e LEFT JOIN entry b ON b.club = e.club AND "
                                "b.receipt = e.receipt - 1 WHERE e.club = $1 AND e.person = $2 ORDER BY e.receipt",
                                Parameters().text(club_).bytes(tag_text(key_, player))));
  }

  Result<std::vector<Received>> entries_by_role(ledger::Role role, const KindTable& kinds) override {
    const std::string word(ledger::role_words()[static_cast<std::size_t>(role)]);
    return scattered(kinds,
                     rows_where("SELECT e.receipt, e.id, e.device, e.sequence, e.author, e.role, e.received, e.person, "
                                "e.body, e.link, b.link FROM entry e LEFT JOIN entry b ON b.club = e.club AND "
                                "b.receipt = e.receipt - 1 WHERE e.club = $1 AND e.role = $2 AND e.person IS NULL AND "
                                "e.past IS NULL ORDER BY e.receipt",
                                Parameters().text(club_).text(word)));
  }

  Result<std::int64_t> latest_receipt() override {
    if (auto faults = connection_.revive()) return *faults;
    const auto rows =
        connection_.ask("SELECT coalesce(max(receipt), 0) FROM entry WHERE club = $1", Parameters().text(club_));
    if (!rows) return rows.faults();
    return rows.value().integer(0, 0);
  }

  Result<std::vector<Quarantined>> quarantined() override {
    if (auto faults = connection_.revive()) return *faults;
    const auto rows = connection_.ask(
        "SELECT number, received, device, author, why, body, role, person FROM quarantine WHERE club = $1 "
        "ORDER BY number",
        Parameters().text(club_));
    if (!rows) return rows.faults();
    PostgresShelf shelf(connection_, club_);
    Books books(key_, shelf);
    std::vector<Quarantined> out;
    for (int i = 0; i < rows.value().count(); ++i) {
      const AsideRow row = PostgresShelf::aside_of(rows.value(), i);
      auto bytes = books.readable_aside(row);
      if (auto fault = fault_of(books, shelf)) return *fault;
      if (bytes)
        out.push_back({rows.value().integer(i, 0), row.received, row.device, row.author, row.why, std::move(*bytes)});
    }
    return out;
  }

  Result<LookedAt> take_in_kept(std::int64_t number, const Decision& by, const KindTable& kinds) override {
    return decide([&](Books& books) { return books.take_in_kept(number, by, kinds); });
  }

  Result<LookedAt> drop_kept(std::int64_t number, const Decision& by) override {
    return decide([&](Books& books) { return books.drop_kept(number, by); });
  }

  Result<std::vector<Decided>> decided(std::size_t most) override {
    const auto rows = rows_where(
        "SELECT number, receipt, account, decided, why FROM looked_at WHERE club = $1 ORDER BY number DESC "
        "LIMIT $2::bigint",
        Parameters().text(club_).integer(static_cast<std::int64_t>(most)));
    if (!rows) return rows.faults();
    std::vector<Decided> out;
    for (int i = 0; i < rows.value().count(); ++i) {
      const Rows& r = rows.value();
      out.push_back(
          {r.integer(i, 0), r.is_null(i, 1) ? 0 : r.integer(i, 1), {r.text(i, 2), r.text(i, 3), r.text(i, 4)}});
    }
    return out;
  }

  Result<std::int64_t> forget_kept_aside(Date before) override {
    if (auto faults = connection_.revive()) return *faults;
    const auto gone = connection_.ask("DELETE FROM quarantine WHERE club = $1 AND received COLLATE \"C\" < $2",
                                      Parameters().text(club_).text(to_iso(before)));
    if (!gone) return gone.faults();
    return gone.value().affected();
  }

  Result<bool> erase_person(const std::string& player, const std::string& when, const ErasureNote& note) override {
    if (auto faults = connection_.revive()) return *faults;
    const std::string tag = tag_text(key_, player);
    {
      Transaction transaction(connection_);
      if (auto fault = transaction.begin()) return *fault;
      const auto there =
          connection_.ask("SELECT 1 FROM person WHERE club = $1 AND tag = $2 AND sealed_key IS NOT NULL FOR UPDATE",
                          Parameters().text(club_).bytes(tag));
      if (!there) return there.faults();
      if (there.value().count() == 0) return false;
      if (auto fault = note(tag, when)) return *fault;
      const auto erased =
          connection_.ask("UPDATE person SET sealed_key = NULL, erased = $3 WHERE club = $1 AND tag = $2",
                          Parameters().text(club_).bytes(tag).text(when));
      if (!erased) return erased.faults();
      const auto aside = connection_.ask("DELETE FROM quarantine WHERE club = $1 AND person = $2",
                                         Parameters().text(club_).bytes(tag));
      if (!aside) return aside.faults();
      if (auto fault = transaction.commit()) return *fault;
    }
    // The old row with the key in it stands in the table until then.
    for (const char* clean : {"VACUUM person", "VACUUM quarantine"}) {
      if (auto fault = connection_.run(clean)) return *fault;
    }
    return true;
  }

  Result<Audit> audit() override {
    constexpr std::int64_t kAtOnce = 5000;
    if (auto faults = connection_.revive()) return *faults;
    // Compactions and rows as they are at one moment.
    Transaction transaction(connection_);
    if (auto fault = transaction.begin()) return *fault;
    if (auto fault = connection_.run("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ READ ONLY")) return *fault;
    Seals seals(key_);
    if (auto faults = expect_compactions(seals)) return *faults;
    PostgresShelf shelf(connection_, club_);
    Books books(key_, shelf);
    IndexOfDays index;
    Auditor auditor(books, seals, index);
    bool more = true;
    for (std::int64_t after = 0; more;) {
      const auto some = connection_.ask(
          "SELECT receipt, id, device, sequence, author, role, received, person, body, link, past FROM entry "
          "WHERE club = $1 AND receipt > $2::bigint ORDER BY receipt LIMIT $3::bigint",
          Parameters().text(club_).integer(after).integer(kAtOnce));
      if (!some) return some.faults();
      if (auto fault = expect_people(some.value(), shelf)) return *fault;
      for (int i = 0; i < some.value().count() && more; ++i) {
        const Row row = PostgresShelf::row_of(some.value(), i);
        const std::int64_t past = some.value().is_null(i, 10) ? 0 : some.value().integer(i, 10);
        more = auditor.goes_on(row, link_of(some.value().text(i, 9)), past);
        after = row.receipt;
      }
      more = more && some.value().count() > 0;
    }
    const auto days =
        connection_.ask("SELECT day, squad, receipt FROM evening WHERE club = $1", Parameters().text(club_));
    if (!days) return days.faults();
    for (int i = 0; i < days.value().count(); ++i) {
      index.found({days.value().text(i, 0), days.value().text(i, 1)}, days.value().integer(i, 2));
    }
    return auditor.audit();
  }

  Result<Gone> gone() override {
    Gone out;
    const auto until =
        rows_where("SELECT coalesce(max(until_day), '') FROM compaction WHERE club = $1", Parameters().text(club_));
    if (!until) return until.faults();
    out.evenings_before = until.value().text(0, 0);
    // Numbers of a device that follow each other are one range.
    const auto rows = rows_where(
        "SELECT device, min(sequence), max(sequence) FROM (SELECT device, sequence, sequence - dense_rank() OVER "
        "(PARTITION BY device ORDER BY sequence) AS island FROM entry WHERE club = $1 AND (past IS NOT NULL OR person "
        "IN (SELECT tag FROM person WHERE club = $1 AND sealed_key IS NULL))) AS numbers GROUP BY device, island "
        "ORDER BY device COLLATE \"C\", island",
        Parameters().text(club_));
    if (!rows) return rows.faults();
    for (int i = 0; i < rows.value().count(); ++i) {
      out.entries.push_back({rows.value().text(i, 0), rows.value().integer(i, 1), rows.value().integer(i, 2)});
    }
    return out;
  }

 private:
  Connection connection_;
  std::string club_;
  Key key_;

  [[nodiscard]] std::optional<Fault> fault_of(const Books& books, const PostgresShelf& shelf) const {
    if (shelf.failed()) return shelf.failed();
    if (!books.damaged()) return {};
    Fault out = *books.damaged();
    out.place.file = connection_.name();
    return out;
  }

  // The club's row, which is taken first, keeps all others waiting.
  template <class Work>
  Result<LookedAt> decide(const Work& work) {
    if (auto faults = connection_.revive()) return *faults;
    Transaction transaction(connection_);
    if (auto fault = transaction.begin()) return *fault;
    PostgresShelf shelf(connection_, club_);
    Books books(key_, shelf);
    const LookedAt out = work(books);
    if (auto fault = fault_of(books, shelf)) return *fault;
    if (out.outcome != Looked::kDone) return out;
    shelf.send();
    if (shelf.failed()) return *shelf.failed();
    if (auto fault = transaction.commit()) return *fault;
    return out;
  }

  Result<Rows> rows_where(const char* statement, const Parameters& parameters) {
    if (auto faults = connection_.revive()) return *faults;
    return connection_.ask(statement, parameters);
  }

  // The link before each by its number, not by a join, which may be planned once for a small table.
  Result<Rows> kept_rows_after(std::int64_t after, std::int64_t most) {
    return rows_where(
        "SELECT e.receipt, e.id, e.device, e.sequence, e.author, e.role, e.received, e.person, e.body, e.link, "
        "(SELECT b.link FROM entry b WHERE b.club = $1 AND b.receipt = e.receipt - 1) FROM entry e "
        "WHERE e.club = $1 AND e.receipt > $2::bigint AND e.past IS NULL ORDER BY e.receipt LIMIT $3::bigint",
        Parameters().text(club_).integer(after).integer(most));
  }

  std::optional<Faults> expect_compactions(Seals& seals) {
    const auto rows =
        connection_.ask("SELECT number, made, why, until_day, first, entries, seal FROM compaction WHERE club = $1",
                        Parameters().text(club_));
    if (!rows) return rows.faults();
    for (int i = 0; i < rows.value().count(); ++i) {
      const Rows& r = rows.value();
      seals.expect(
          {r.integer(i, 0), r.text(i, 1), r.text(i, 2), r.text(i, 3), r.integer(i, 4), r.integer(i, 5), r.text(i, 6)});
    }
    return {};
  }

  // Of the columns from receipt to link, and the link before it.
  static void hand_out(const Rows& rows, HandingOut& handing_out) {
    bool more = true;
    for (int i = 0; i < rows.count() && more; ++i) {
      more = handing_out.goes_on(link_of(rows.text(i, 10)), PostgresShelf::row_of(rows, i), link_of(rows.text(i, 9)));
    }
  }

  Result<std::vector<Received>> scattered(const KindTable& kinds, const Result<Rows>& some) {
    if (!some) return some.faults();
    PostgresShelf shelf(connection_, club_);
    Books books(key_, shelf);
    if (auto fault = expect_people(some.value(), shelf)) return *fault;
    HandingOut handing_out(books, kinds, connection_.name());
    hand_out(some.value(), handing_out);
    return handing_out.out();
  }

  static std::optional<Fault> expect_people(const Rows& rows, PostgresShelf& shelf) {
    std::set<std::string> tags;
    for (int i = 0; i < rows.count(); ++i) {
      if (!rows.is_null(i, 7)) tags.insert(rows.text(i, 7));
    }
    shelf.expect_people(std::move(tags));
    return shelf.failed();
  }
};

}  // namespace

Result<std::unique_ptr<Store>> open_postgres_store(const std::string& where, const std::string& club, Key key) {
  auto connection = Connection::open(where);
  if (!connection) return connection.faults();
  if (auto faults = postgres::migrate(connection.value())) return *faults;
  if (auto faults = postgres::make_club(connection.value(), club)) return *faults;
  {
    const auto statements = open_postgres_statements(where, club);
    if (!statements) return statements.faults();
    if (auto faults = check_key(*statements.value(), club, key)) return *faults;
  }
  return std::unique_ptr<Store>(std::make_unique<PostgresStore>(std::move(connection).value(), club, std::move(key)));
}

}  // namespace lanework::store
