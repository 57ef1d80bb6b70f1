#include "app/serve/releasing.h"

#include <algorithm>
#include <cctype>
#include <iterator>
#include <utility>

#include "core/ledger/consent.h"
#include "core/ledger/fold.h"
#include "core/release/release_text.h"

namespace lanework::serve {
namespace {

Result<ledger::State> state_of(Room& room, const ledger::KindTable& kinds) {
  constexpr std::size_t kAtOnce = 10'000;
  std::vector<ledger::Received> all;
  for (std::int64_t after = 0;;) {
    auto some = room.store->entries_after(after, kAtOnce, kinds);
    if (!some) return some.faults();
    if (some.value().empty()) break;
    after = some.value().back().receipt;
    std::move(some.value().begin(), some.value().end(), std::back_inserter(all));
  }
  ledger::State out = ledger::fold(std::move(all), kinds);
  close_records(out, kinds);
  return out;
}

bool is_letter(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || static_cast<unsigned char>(c) >= 0x80;
}

// As a word or words of their own, as they are written.
bool has_word(const std::string& text, const std::string& word) {
  for (std::size_t at = text.find(word); !word.empty() && at != std::string::npos; at = text.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    if ((at == 0 || !is_letter(text[at - 1])) && (end == text.size() || !is_letter(text[end]))) return true;
  }
  return false;
}

// One that was kept otherwise could not be read again.
std::optional<Fault> no_line(const std::string& text) {
  const bool one =
      std::none_of(text.begin(), text.end(), [](char c) { return std::iscntrl(static_cast<unsigned char>(c)) != 0; });
  if (one) return {};
  return Fault{FaultCode::kWrongType, {"", 0, 0, "asked"}, "several lines", "one line without control characters", {}};
}

// The board reads nothing about one child, also not in the lead's own words.
std::optional<Fault> names_a_player(const std::string& text, const store::Lists& lists) {
  for (const store::ListedPlayer& player : lists.players) {
    for (const std::string& word : {player.name, player.id}) {
      if (!has_word(text, word)) continue;
      return Fault{FaultCode::kContradiction,
                   {"", 0, 0, "asked"},
                   quote(word) + ", which is a player's name or id",
                   "words about the club and nobody in it",
                   {}};
    }
  }
  return {};
}

Node not_given_node(const release::NotGiven& one) {
  Node out = Node::make_table();
  out.set("from", Node::make_text(to_iso(one.period.from)));
  out.set("until", Node::make_text(to_iso(one.period.until)));
  out.set("days", Node::make_text(one.days == release::Days::kRest ? "not-released-before" : "all"));
  out.set("table", Node::make_text(one.key.empty() ? "all" : release::table_key(one.table)));
  out.set("key", Node::make_text(one.key));
  out.set("least", Node::make_integer(one.interval.least));
  out.set("most", Node::make_integer(one.interval.most));
  return out;
}

}  // namespace

Result<std::vector<store::KeptRelease>> kept_releases(Room& room) {
  const auto releases = room.releases();
  if (!releases) return releases.faults();
  return releases.value()->all();
}

Result<std::vector<release::Release>> releases_so_far(Room& room) {
  const auto kept = kept_releases(room);
  if (!kept) return kept.faults();
  std::vector<release::Release> out;
  for (const store::KeptRelease& one : kept.value()) {
    const std::string name = "release " + std::to_string(one.number);
    const auto shown = parse_json(name, one.shown);
    if (!shown) return shown.faults();
    const auto counted = parse_json(name + ", counted", one.counted);
    if (!counted) return counted.faults();
    auto release = release::read_release(shown.value(), counted.value());
    if (!release) return release.faults();
    out.push_back(std::move(release).value());
  }
  return out;
}

Drawn draw_release(Room& room, const ledger::KindTable& kinds, const std::vector<release::Named>& regions,
                   const ReleaseAsked& asked, const Now& now) {
  const release::Period& period = asked.period;
  const auto by_store = [](const Faults& faults) { return Drawn{{}, {true, faults}}; };
  const auto earlier = releases_so_far(room);
  if (!earlier) return by_store(earlier.faults());
  const auto lists = room.directory->lists();
  if (!lists) return by_store(lists.faults());
  if (auto fault = no_line(asked.asked)) return {{}, {false, Faults{std::move(*fault)}, "not-one-line"}};
  if (auto named = names_a_player(asked.asked, lists.value())) {
    return {{}, {false, Faults{std::move(*named)}, "names-a-player"}};
  }
  const auto gone = room.store->gone();
  if (!gone) return by_store(gone.faults());
  // Fewer than there were would be given out for good.
  if (to_iso(period.from) < gone.value().evenings_before) {
    return {{},
            {false,
             Faults{{FaultCode::kOutOfRange,
                     {"", 0, 0, "from"},
                     to_iso(period.from),
                     gone.value().evenings_before + " or later",
                     "what was entered about sessions before went by its time (docs/security.md)"}},
             "days-that-went"}};
  }
  std::vector<release::Period> periods;
  for (const release::Release& one : earlier.value()) periods.push_back(one.period);
  if (const auto refused = release::period_refused(period, periods, now.day))
    return {{}, {false, {refused->fault}, refused->key}};
  const auto state = state_of(room, kinds);
  if (!state) return by_store(state.faults());
  release::Wanted wanted{period, now.day, lists.value().club, now.stamp, {{}, regions}, asked.planned, asked.asked};
  for (const store::ListedSquad& squad : lists.value().squads) wanted.rows.squads.push_back({squad.id, squad.name});
  auto made = release::make_release(state.value(), wanted, earlier.value());
  if (!made) return {{}, {false, made.faults(), "gives-a-number-away"}};
  return {std::move(made).value(), {}};
}

Result<bool> keep_release(Room& room, const release::Release& release) {
  const auto releases = room.releases();
  if (!releases) return releases.faults();
  return releases.value()->keep(
      {release.number, to_json(release::shown_node(release)), to_json(release::counted_node(release))});
}

Node for_the_lead(const release::Made& made) {
  Node out = Node::make_table();
  out.set("release", release::shown_node(made.release));
  Node tried = Node::make_array();
  for (const std::string& one : made.tried) tried.items.push_back(Node::make_text(one));
  out.set("tried", std::move(tried));
  Node not_given = Node::make_array();
  for (const release::NotGiven& one : made.not_given) not_given.items.push_back(not_given_node(one));
  out.set("not_given", std::move(not_given));
  return out;
}

}  // namespace lanework::serve
