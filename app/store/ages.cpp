#include "app/store/ages.h"

#include <algorithm>

#include "app/store/index_of_days.h"
#include "app/store/past.h"
#include "app/store/statements.h"

namespace lanework::store {
namespace {

constexpr std::size_t kDayLetters = 10;

std::string day_in(const Value& stamp) { return text_in(stamp).substr(0, kDayLetters); }

void count(OldestDay& oldest, const std::string& day) {
  if (!oldest.day.empty() && day > oldest.day) return;
  oldest.count = day == oldest.day ? oldest.count + 1 : 1;
  oldest.day = day;
}

// They were received in the order of their numbers, so that the first day is over with the first row of a later one.
void count_without_a_day(Call& call, const std::string& club, std::int64_t newest, OldestDay& oldest) {
  std::int64_t after = 0;
  for (bool more = true; more;) {
    const auto rows = call.rows(
        "SELECT receipt, received, body FROM entry WHERE club = $1 AND person IS NULL AND past IS NULL AND "
        "receipt > $2 AND receipt < $3 ORDER BY receipt LIMIT $4",
        {club, after, newest, static_cast<std::int64_t>(kPastAtOnce)});
    more = rows.size() == kPastAtOnce;
    for (const auto& row : rows) {
      after = whole_in(row[0]);
      if (!oldest.day.empty() && day_in(row[1]) > oldest.day) return;
      if (!day_of({after, {}, {}, 0, {}, {}, {}, {}, text_in(row[2])})) count(oldest, day_in(row[1]));
    }
  }
}

OldestDay evenings(Call& call, const std::string& club) {
  const auto last = call.rows("SELECT max(receipt) FROM entry WHERE club = $1", {club});
  const std::int64_t newest = last.empty() ? 0 : whole_in(last[0][0]);
  OldestDay out;
  for (const auto& row : call.rows("SELECT day, count(*) FROM evening WHERE club = $1 AND receipt < $2 GROUP BY day "
                                   "ORDER BY day LIMIT 1",
                                   {club, newest})) {
    out = {text_in(row[0]), whole_in(row[1])};
  }
  count_without_a_day(call, club, newest, out);
  return out;
}

OldestDay who_left(Call& call, const std::string& club) {
  OldestDay out;
  const auto lists = call.rows("SELECT version FROM lists WHERE club = $1", {club});
  if (lists.empty() || whole_in(lists[0][0]) == 0) return out;
  for (const auto& row :
       call.rows("SELECT p.made, (SELECT max(e.received) FROM entry e WHERE e.club = p.club AND e.person = p.tag) FROM "
                 "person p WHERE p.club = $1 AND p.sealed_key IS NOT NULL AND NOT EXISTS (SELECT 1 FROM player l WHERE "
                 "l.club = p.club AND l.tag = p.tag)",
                 {club})) {
    count(out, std::max(day_in(row[0]), day_in(row[1])));
  }
  return out;
}

OldestDay kept_aside(Call& call, const std::string& club) {
  OldestDay out;
  for (const auto& row : call.rows("SELECT received FROM quarantine WHERE club = $1", {club})) {
    count(out, day_in(row[0]));
  }
  return out;
}

OldestMoment oldest_of(Call& call, const std::string& club, const char* first, const char* how_many) {
  constexpr Moment kDay = 86'400;
  const auto rows = call.rows(first, {club});
  if (rows.empty() || whole_in(rows[0][0]) == 0) return {};
  OldestMoment out{whole_in(rows[0][0]), 0};
  for (const auto& row : call.rows(how_many, {club, out.first + kDay})) out.count = whole_in(row[0]);
  return out;
}

std::string key_first_used(Call& call, const std::string& club) {
  std::string out;
  for (const char* asked : {"SELECT min(made) FROM person WHERE club = $1",
                            "SELECT received FROM entry WHERE club = $1 AND received <> '' ORDER BY receipt LIMIT 1"}) {
    for (const auto& row : call.rows(asked, {club})) {
      const std::string when = text_in(row[0]);
      if (!when.empty() && (out.empty() || when < out)) out = when;
    }
  }
  return out;
}

}  // namespace

Ages ages_of(Call& call, const std::string& club) {
  Ages out;
  out.evenings = evenings(call, club);
  out.who_left = who_left(call, club);
  out.kept_aside = kept_aside(call, club);
  out.plans = oldest_of(call, club,
                        "SELECT min(made) FROM kept_plan p WHERE p.club = $1 AND p.number < (SELECT max(later.number) "
                        "FROM kept_plan later "
                        "WHERE later.club = $1 AND later.squad = p.squad)",
                        "SELECT count(*) FROM kept_plan p WHERE p.club = $1 AND p.made < $2 AND p.number < (SELECT "
                        "max(later.number) FROM "
                        "kept_plan later WHERE later.club = $1 AND later.squad = p.squad)");
  constexpr const char* kNewestStays = "(SELECT last_number FROM read_head WHERE club = $1)";
  out.read_notes = oldest_of(
      call, club,
      (std::string("SELECT min(noted) FROM read_note WHERE club = $1 AND number < ") + kNewestStays).c_str(),
      (std::string("SELECT count(*) FROM read_note WHERE club = $1 AND noted < $2 AND number < ") + kNewestStays)
          .c_str());
  out.key_first_used = key_first_used(call, club);
  return out;
}

}  // namespace lanework::store
