// What a release is made of: the true numbers of some days, for nobody's eyes but the audit's. Numbers only: whom they
// are about is counted and not kept.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "core/ledger/fold.h"
#include "core/release/period.h"

namespace lanework::release {

// Injuries are given by one of these at a time, never by two together.
enum class Table : std::uint8_t { kSquads, kSettings, kRegions };
inline constexpr std::size_t kTables = 3;
inline constexpr std::array<Table, kTables> kEveryTable = {Table::kSquads, Table::kSettings, Table::kRegions};
const char* table_key(Table table);  // 'squads', as the JSON has it

struct Named {
  std::string key;
  std::string name;
  bool operator==(const Named&) const = default;
};

// The rows of each table, whatever happened: fixed before anything is counted.
struct Rows {
  std::vector<Named> squads;
  std::vector<Named> regions;  // catalogue/record_terms.toml
};
inline constexpr const char* kNotStated = "not-stated";

inline constexpr std::int64_t kLeastShown = 5;

struct Count {
  std::int64_t injuries = 0;
  std::int64_t people = 0;  // at least so many different ones
  bool operator==(const Count&) const = default;
};

// None is small too: it says of everybody that they had none.
bool is_small(const Count& count);

// Sessions that somebody wrapped up or confirmed the hours of: what squads did, nobody's body.
struct Done {
  std::int64_t held = 0;  // the whole of it
  std::int64_t cut_short = 0;
  std::int64_t missed = 0;
  std::int64_t most = 0;  // did it
  std::int64_t half = 0;
  std::int64_t few = 0;
  std::int64_t confirmed = 0;       // with minutes and players
  std::int64_t player_minutes = 0;  // of those
  bool operator==(const Done&) const = default;
};

void add(Done& to, const Done& more);

struct Counts {
  Count all;
  std::array<std::map<std::string, Count>, kTables> injuries;  // by key; every row of the table is there
  std::map<std::string, Done> done;                            // by squad
  bool operator==(const Counts&) const = default;

  [[nodiscard]] std::map<std::string, Count>& of(Table table) { return injuries[static_cast<std::size_t>(table)]; }
  [[nodiscard]] const std::map<std::string, Count>& of(Table table) const {
    return injuries[static_cast<std::size_t>(table)];
  }
};

// Of the period's days that lie in none of the others. A word that no row has counts as not stated; a squad that no row
// has gets a row of its own.
Counts counts_of(const ledger::State& state, const Period& period, const std::vector<Period>& without,
                 const Rows& rows);

// Of people the larger number: how many are in both, nobody knows any more.
Counts together(const Counts& one, const Counts& other);

}  // namespace lanework::release
