#include "core/release/counts.h"

#include <algorithm>
#include <optional>
#include <set>
#include <string_view>

#include "core/release/injuries_to_count.h"

namespace lanework::release {
namespace {

std::string text_in(const std::optional<Node>& entry, std::string_view key) {
  const Node* found = entry ? entry->find(key) : nullptr;
  return found != nullptr ? found->text : std::string();
}

std::int64_t whole_in(const std::optional<Node>& entry, std::string_view key) {
  const Node* found = entry ? entry->find(key) : nullptr;
  return found != nullptr ? found->integer : 0;
}

// 'region knee' of what is known of an injury: what stands after the column's own word.
std::string term(const ledger::Injury& injury, std::string_view column) {
  for (const std::string& what : injury.what) {
    if (what.size() > column.size() + 1 && what.compare(0, column.size(), column) == 0 && what[column.size()] == ' ') {
      return what.substr(column.size() + 1);
    }
  }
  return {};
}

Done done_at(const ledger::SessionState& session) {
  Done out;
  const std::string happened = text_in(session.wrap_up, "happened");
  const std::string did_it = text_in(session.wrap_up, "did_it");
  // Held with nobody doing it is a warm-up that did not happen.
  const bool missed = happened == "missed" || did_it == "nobody";
  if (session.wrap_up) ++(missed ? out.missed : happened == "cut-short" ? out.cut_short : out.held);
  if (!missed && did_it == "most") ++out.most;
  if (!missed && did_it == "half") ++out.half;
  if (!missed && did_it == "few") ++out.few;
  if (session.confirmed) {
    ++out.confirmed;
    out.player_minutes = whole_in(session.confirmed, "minutes") * whole_in(session.confirmed, "players");
  }
  return out;
}

class Counter {
 public:
  Counter(const Period& period, const std::vector<Period>& without, const Rows& rows)
      : period_(period), without_(without) {
    for (const Named& squad : rows.squads) {
      out_.of(Table::kSquads).emplace(squad.key, Count{});
      out_.done.emplace(squad.key, Done{});
    }
    for (const char* setting : {"training", "match", kNotStated}) out_.of(Table::kSettings).emplace(setting, Count{});
    for (const Named& region : rows.regions) out_.of(Table::kRegions).emplace(region.key, Count{});
    out_.of(Table::kRegions).emplace(kNotStated, Count{});
  }

  void session(const ledger::SessionKey& key, const ledger::SessionState& state) {
    if (counts(key.day)) add(out_.done[key.squad], done_at(state));
  }

  void injury(const ledger::Injury& injury) {
    if (!counts(injury.day)) return;
    out_.of(Table::kSquads).emplace(injury.squad, Count{});
    count(Table::kSquads, injury.squad, injury.player);
    count(Table::kSettings, term(injury, "setting"), injury.player);
    count(Table::kRegions, term(injury, "region"), injury.player);
    ++out_.all.injuries;
    everybody_.insert(injury.player);
  }

  Counts take() {
    for (const Table table : kEveryTable) {
      for (auto& [key, count] : out_.of(table)) {
        count.people = static_cast<std::int64_t>(people_[static_cast<std::size_t>(table)][key].size());
      }
    }
    out_.all.people = static_cast<std::int64_t>(everybody_.size());
    return std::move(out_);
  }

 private:
  const Period& period_;
  const std::vector<Period>& without_;
  Counts out_;
  std::array<std::map<std::string, std::set<std::string>>, kTables> people_;
  std::set<std::string> everybody_;

  [[nodiscard]] bool counts(const std::string& day) const {
    const auto date = parse_iso_date(day);
    return date && holds(period_, *date) &&
           std::none_of(without_.begin(), without_.end(), [&](const Period& one) { return holds(one, *date); });
  }

  void count(Table table, const std::string& word, const std::string& player) {
    std::map<std::string, Count>& rows = out_.of(table);
    const std::string key = rows.count(word) > 0 ? word : kNotStated;
    ++rows[key].injuries;
    people_[static_cast<std::size_t>(table)][key].insert(player);
  }
};

Count together(const Count& one, const Count& other) {
  return {one.injuries + other.injuries, std::max(one.people, other.people)};
}

}  // namespace

const char* table_key(Table table) {
  constexpr std::array<const char*, kTables> kKeys = {"squads", "settings", "regions"};
  return kKeys[static_cast<std::size_t>(table)];
}

void add(Done& to, const Done& more) {
  to.held += more.held;
  to.cut_short += more.cut_short;
  to.missed += more.missed;
  to.most += more.most;
  to.half += more.half;
  to.few += more.few;
  to.confirmed += more.confirmed;
  to.player_minutes += more.player_minutes;
}

bool is_small(const Count& count) { return count.injuries < kLeastShown || count.people < kLeastShown; }

Counts counts_of(const ledger::State& state, const Period& period, const std::vector<Period>& without,
                 const Rows& rows) {
  Counter counter(period, without, rows);
  for (const auto& [key, session] : state.sessions) counter.session(key, session);
  for (const ledger::Injury* injury : injuries_to_count(state)) counter.injury(*injury);
  return counter.take();
}

Counts together(const Counts& one, const Counts& other) {
  Counts out = one;
  out.all = together(one.all, other.all);
  for (const Table table : kEveryTable) {
    for (const auto& [key, count] : other.of(table)) {
      Count& there = out.of(table)[key];
      there = together(there, count);
    }
  }
  for (const auto& [squad, done] : other.done) add(out.done[squad], done);
  return out;
}

}  // namespace lanework::release
