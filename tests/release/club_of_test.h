// A club's state made by hand: who was hurt where and when, and what was done; and releases of numbers chosen freely.
#pragma once

#include <string>
#include <vector>

#include "core/ledger/consent.h"
#include "core/release/make_release.h"

namespace lanework::release::test {

inline Date day(const char* text) { return *parse_iso_date(text); }

inline const Rows kRows = {{{"u11", "Under-11"}, {"u13", "Under-13"}, {"u16", "Under-16"}},
                           {{"knee", "knee"}, {"ankle", "ankle"}, {"thigh", "thigh"}}};

inline const Period kAutumn = {day("2026-08-01"), day("2026-12-31")};
inline const Period kSeason = {day("2026-08-01"), day("2027-06-30")};
inline const Period kSpring = {day("2027-01-01"), day("2027-06-30")};
inline const Period kNextSeason = {day("2027-08-01"), day("2028-06-30")};

// The guardian agreed to be counted, or did not.
inline void answer(ledger::State& state, const std::string& player, const char* word) {
  Node consent = Node::make_table();
  consent.set("answer", Node::make_text(word));
  state.consents[{player, std::string(ledger::kStatistics), "guardian", {}}] = consent;
}

// Somebody whose guardian agreed to be counted.
inline void hurt(ledger::State& state, const std::string& player, const std::string& squad, const std::string& on,
                 const std::string& setting, const std::string& region) {
  ledger::EntryId id{};
  const std::size_t n = state.injuries.size() + 1;
  id.bytes[0] = static_cast<std::uint8_t>(n / 256);
  id.bytes[1] = static_cast<std::uint8_t>(n % 256);
  ledger::Injury& injury = state.injuries[id];
  injury.player = player;
  answer(state, player, "given");
  injury.squad = squad;
  injury.day = on;
  if (!setting.empty()) injury.what.push_back("setting " + setting);
  if (!region.empty()) injury.what.push_back("region " + region);
}

// So many of a squad, each of another player.
inline void hurt_many(ledger::State& state, int many, const std::string& squad, const std::string& on,
                      const std::string& setting = "training", const std::string& region = "knee") {
  for (int i = 0; i < many; ++i) hurt(state, squad + "-" + std::to_string(i), squad, on, setting, region);
}

inline ledger::SessionState session(const char* happened, const char* did_it, std::int64_t minutes = 0,
                                    std::int64_t players = 0) {
  ledger::SessionState out;
  Node wrap_up = Node::make_table();
  wrap_up.set("happened", Node::make_text(happened));
  if (*did_it != '\0') wrap_up.set("did_it", Node::make_text(did_it));
  out.wrap_up = wrap_up;
  if (minutes > 0) {
    Node confirmed = Node::make_table();
    confirmed.set("minutes", Node::make_integer(minutes));
    confirmed.set("players", Node::make_integer(players));
    out.confirmed = confirmed;
  }
  return out;
}

inline Wanted wanted(const Period& period, const char* today = "2030-01-01") {
  return {period, day(today), "Quillmere Juniors", "2030-01-01T18:00:00+01:00", kRows};
}

// A release of numbers as they come, all shown, each injury of another child.
inline Release free_release(std::int64_t number, const Period& period,
                            const std::array<std::vector<std::int64_t>, kTables>& own) {
  Release out;
  out.number = number;
  out.period = period;
  for (const Table table : kEveryTable) {
    const auto& numbers = own[static_cast<std::size_t>(table)];
    std::int64_t all = 0;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      out.own.of(table).emplace(std::string(1, static_cast<char>('a' + i)), Count{numbers[i], numbers[i]});
      all += numbers[i];
    }
    out.own.all = {all, all};
  }
  out.whole = out.own;
  return out;
}

}  // namespace lanework::release::test
