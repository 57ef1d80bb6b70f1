// What is past its time, on any database that answers statements.
#include <algorithm>
#include <memory>
#include <utility>
#include <vector>

#include "app/store/index_of_days.h"
#include "app/store/key_check.h"
#include "app/store/past.h"
#include "app/store/seals.h"
#include "app/store/statements.h"

namespace lanework::store {
namespace {

// A row that goes, and where it lies in the index of days.
struct Going {
  std::int64_t receipt = 0;
  std::string day{};
  std::string squad{};
};

// Of the columns from id to link, before them the receipt.
Row row_in(std::int64_t receipt, const std::vector<Value>& cells) {
  return {receipt,
          text_in(cells[0]),
          text_in(cells[1]),
          whole_in(cells[2]),
          text_in(cells[3]),
          text_in(cells[4]),
          text_in(cells[5]),
          text_in(cells[6]),
          text_in(cells[7]),
          {},
          {}};
}

class SqlPast final : public Past {
 public:
  SqlPast(std::unique_ptr<Statements> statements, std::string club, Key key)
      : statements_(std::move(statements)), club_(std::move(club)), key_(std::move(key)) {}

  Result<std::int64_t> let_go_of_evenings(Date before, const std::string& when) override {
    std::vector<Going> going;
    {
      Call call(*statements_);
      const std::int64_t newest = newest_receipt(call);
      for (const auto& row : call.rows("SELECT receipt, day, squad FROM evening WHERE club = $1 AND day < $2 AND "
                                       "receipt < $3 ORDER BY receipt",
                                       {club_, to_iso(before), newest})) {
        going.push_back({whole_in(row[0]), text_in(row[1]), text_in(row[2])});
      }
      add_without_a_day(call, to_iso(before), newest, going);
      if (auto done = call.end(true); !done) return done.faults();
    }
    std::sort(going.begin(), going.end(), [](const Going& a, const Going& b) { return a.receipt < b.receipt; });
    return let_go(going, {0, when, "evenings", to_iso(before), 0, 0, {}});
  }

  Result<std::int64_t> let_go_of_erased(const std::string& when) override {
    std::vector<Going> going;
    {
      Call call(*statements_);
      const std::int64_t newest = newest_receipt(call);
      // Each of the people looked up among the entries, and not the other way round.
      for (const auto& row : call.rows("SELECT e.receipt FROM person p CROSS JOIN entry e WHERE e.club = p.club AND "
                                       "e.person = p.tag AND p.club = $1 AND p.sealed_key IS NULL AND e.receipt < $2 "
                                       "ORDER BY e.receipt",
                                       {club_, newest})) {
        going.push_back({whole_in(row[0])});
      }
      if (auto done = call.end(true); !done) return done.faults();
    }
    return let_go(going, {0, when, "erased", {}, 0, 0, {}});
  }

  Result<std::int64_t> erase_who_left(Date since, const std::string& when, const ErasureNote& note) override {
    const std::string day = to_iso(since);
    std::vector<std::string> tags;
    {
      Call call(*statements_);
      const auto lists = call.rows("SELECT version FROM lists WHERE club = $1", {club_});
      const bool kept = !lists.empty() && whole_in(lists[0][0]) > 0;
      if (!kept) return call.end(std::int64_t{0});
      for (const auto& row :
           call.rows("SELECT p.tag, p.made, (SELECT max(e.received) FROM entry e WHERE e.club = p.club AND e.person = "
                     "p.tag) FROM person p WHERE p.club = $1 AND p.sealed_key IS NOT NULL AND NOT EXISTS (SELECT 1 "
                     "FROM player l WHERE l.club = p.club AND l.tag = p.tag)",
                     {club_})) {
        if (text_in(row[1]) < day && text_in(row[2]) < day) tags.push_back(text_in(row[0]));
      }
      if (auto done = call.end(true); !done) return done.faults();
    }
    std::int64_t out = 0;
    for (const std::string& tag : tags) {
      const auto erased = erase(tag, day, when, note);
      if (!erased) return erased.faults();
      out += erased.value() ? 1 : 0;
    }
    return out;
  }

  Result<std::int64_t> let_go_of_reads(Moment before, const std::string& when) override {
    std::int64_t out = 0;
    while (true) {
      const auto some = let_go_of_some_reads(before, when);
      if (!some) return some.faults();
      if (some.value() == 0) return out;
      out += some.value();
    }
  }

  Result<Ages> ages() override {
    Call call(*statements_);
    const Ages out = ages_of(call, club_);
    return call.end(out);
  }

  std::optional<Faults> wipe() override {
    for (const std::string& statement : statements_->that_wipe()) {
      if (const auto done = statements_->run(statement, {}); !done) return done.faults();
    }
    return {};
  }

 private:
  std::unique_ptr<Statements> statements_;
  std::string club_;
  Key key_;

  std::int64_t newest_receipt(Call& call) const {
    const auto rows = call.rows("SELECT max(receipt) FROM entry WHERE club = $1", {club_});
    return rows.empty() ? 0 : whole_in(rows[0][0]);
  }

  // One server of the club's at a time; false: another one is at it.
  bool is_the_only_one(Call& call) const {
    const std::string text =
        std::string("SELECT club FROM lists WHERE club = $1") + statements_->passing_over_what_is_locked();
    return !call.rows(text, {club_}).empty();
  }

  // They were received in the order of their numbers.
  void add_without_a_day(Call& call, const std::string& before, std::int64_t newest, std::vector<Going>& going) const {
    std::int64_t after = 0;
    for (bool more = true; more;) {
      const auto rows = call.rows(
          "SELECT receipt, received, body FROM entry WHERE club = $1 AND person IS NULL AND "
          "past IS NULL AND receipt > $2 AND receipt < $3 ORDER BY receipt LIMIT $4",
          {club_, after, newest, static_cast<std::int64_t>(kPastAtOnce)});
      more = rows.size() == kPastAtOnce;
      for (const auto& row : rows) {
        after = whole_in(row[0]);
        more = more && text_in(row[1]) < before;
        if (text_in(row[1]) < before && !day_of({after, {}, {}, 0, {}, {}, {}, {}, text_in(row[2])}))
          going.push_back({after});
      }
    }
  }

  // plan: what all of its compactions have in common.
  Result<std::int64_t> let_go(const std::vector<Going>& going, const Compaction& plan) {
    std::int64_t out = 0;
    for (std::size_t from = 0; from < going.size(); from += kPastAtOnce) {
      const auto to = std::min(going.size(), from + kPastAtOnce);
      Call call(*statements_, Call::Of::kMany);
      const std::int64_t gone = empty(call, going, from, to, plan);
      const auto done = call.end(gone);
      if (!done) return done.faults();
      out += gone;
    }
    return out;
  }

  std::int64_t empty(Call& call, const std::vector<Going>& going, std::size_t from, std::size_t to, Compaction made) {
    if (!is_the_only_one(call)) return 0;
    const auto last = call.rows("SELECT coalesce(max(number), 0) FROM compaction WHERE club = $1", {club_});
    made.number = (last.empty() ? 0 : whole_in(last[0][0])) + 1;
    RowsOfCompaction rows;
    for (std::size_t i = from; i < to && !call.failed(); ++i) empty_one(call, going[i], made.number, rows);
    if (rows.count() == 0) return 0;
    made.first = rows.first();
    made.entries = rows.count();
    call.changed(
        "INSERT INTO compaction (club, number, made, why, until_day, first, entries, seal) "
        "VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
        {club_, made.number, made.made, made.why, made.until_day, made.first, made.entries,
         Bytes{seal_of(key_, made, rows)}});
    return made.entries;
  }

  void empty_one(Call& call, const Going& going, std::int64_t number, RowsOfCompaction& out) {
    // The one before by its number, not by a join: a database that plans once may plan a join for a small table.
    const auto rows = call.rows(
        "SELECT id, device, sequence, author, role, received, person, body, link, "
        "(SELECT link FROM entry WHERE club = $1 AND receipt = $3) FROM entry "
        "WHERE club = $1 AND receipt = $2 AND past IS NULL",
        {club_, going.receipt, going.receipt - 1});
    if (rows.empty()) return;  // it went meanwhile
    const Row row = row_in(going.receipt, rows[0]);
    const Link link = link_of(text_in(rows[0][8]));
    if (!follows(link_of(text_in(rows[0][9])), row, link)) {
      call.fail(changed(statements_->name(), "entry " + std::to_string(row.receipt) +
                                                 ", which does not follow from the one before and so does not go"));
      return;
    }
    call.changed(
        "UPDATE entry SET id = $3, author = '', received = '', person = NULL, body = $4, past = $5 "
        "WHERE club = $1 AND receipt = $2",
        {club_, row.receipt, Bytes{id_of_emptied(row.receipt)}, Bytes{}, number});
    if (!going.day.empty()) {
      call.changed("DELETE FROM evening WHERE club = $1 AND day = $2 AND squad = $3 AND receipt = $4",
                   {club_, going.day, going.squad, row.receipt});
    }
    out.add(row, link);
  }

  // False where the person came back meanwhile.
  Result<bool> erase(const std::string& tag, const std::string& day, const std::string& when, const ErasureNote& note) {
    Call call(*statements_, Call::Of::kMany);
    const bool erased = call.changes(
        "UPDATE person SET sealed_key = NULL, erased = $3 WHERE club = $1 AND tag = $2 AND sealed_key IS NOT NULL AND "
        "NOT EXISTS (SELECT 1 FROM player l WHERE l.club = $1 AND l.tag = $2) AND "
        "NOT EXISTS (SELECT 1 FROM entry e WHERE e.club = $1 AND e.person = $2 AND e.received >= $4)",
        {club_, Bytes{tag}, when, day});
    if (!erased) return call.end(false);
    if (auto fault = note(tag, when)) call.fail(*fault);  // before the key is gone for good
    call.changed("DELETE FROM quarantine WHERE club = $1 AND person = $2", {club_, Bytes{tag}});
    // So that whoever remembers what is known reads it anew.
    call.changed("UPDATE lists SET version = version + 1 WHERE club = $1", {club_});
    return call.end(true);
  }

  Result<std::int64_t> let_go_of_some_reads(Moment before, const std::string& when) {
    Call call(*statements_, Call::Of::kMany);
    if (!is_the_only_one(call)) return call.end(std::int64_t{0});
    const auto rows = call.rows(
        "SELECT number, noted, link FROM read_note WHERE club = $1 AND number < (SELECT last_number FROM read_head "
        "WHERE club = $1) ORDER BY number LIMIT $2",
        {club_, static_cast<std::int64_t>(kPastAtOnce)});
    std::size_t count = 0;
    while (count < rows.size() && whole_in(rows[count][1]) < before) ++count;
    if (count == 0) return call.end(std::int64_t{0});
    const std::int64_t last = whole_in(rows[count - 1][0]);
    const Link link = link_of(text_in(rows[count - 1][2]));
    call.changed(
        "INSERT INTO read_past (club, last_number, last_link, made, seal) VALUES ($1, $2, $3, $4, $5) "
        "ON CONFLICT (club) DO UPDATE SET last_number = excluded.last_number, last_link = excluded.last_link, "
        "made = excluded.made, seal = excluded.seal",
        {club_, last, Bytes{link_text(link)}, when, Bytes{seal_of_reads(key_, last, link, when)}});
    const std::int64_t gone = call.changed("DELETE FROM read_note WHERE club = $1 AND number <= $2", {club_, last});
    return call.end(gone);
  }
};

}  // namespace

Result<std::unique_ptr<Past>> open_sqlite_past(const std::string& file, Key key) {
  auto statements = open_sqlite_statements(file);
  if (!statements) return statements.faults();
  if (auto faults = check_key(*statements.value(), "", key)) return *faults;
  return std::unique_ptr<Past>(std::make_unique<SqlPast>(std::move(statements).value(), std::string(), std::move(key)));
}

Result<std::unique_ptr<Past>> open_postgres_past(const std::string& where, const std::string& club, Key key) {
  auto statements = open_postgres_statements(where, club);
  if (!statements) return statements.faults();
  if (auto faults = check_key(*statements.value(), club, key)) return *faults;
  return std::unique_ptr<Past>(std::make_unique<SqlPast>(std::move(statements).value(), club, std::move(key)));
}

}  // namespace lanework::store
