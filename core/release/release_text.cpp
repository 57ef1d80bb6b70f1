#include "core/release/release_text.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

#include "core/evidence/poisson_limits.h"
#include "core/release/release_rate.h"

namespace lanework::release {
namespace {

constexpr std::int64_t kMost = std::numeric_limits<std::int32_t>::max();
constexpr std::int64_t kMostMinutes = 1'000'000'000'000;

using Field = std::pair<const char*, std::int64_t Done::*>;
constexpr std::array<Field, 8> kDone = {{{"held", &Done::held},
                                         {"cut_short", &Done::cut_short},
                                         {"missed", &Done::missed},
                                         {"most", &Done::most},
                                         {"half", &Done::half},
                                         {"few", &Done::few},
                                         {"confirmed", &Done::confirmed},
                                         {"player_minutes", &Done::player_minutes}}};

std::string name_of(const Release& release, Table table, const std::string& key) {
  if (key == kNotStated) return "not stated";
  const std::vector<Named>& rows = table == Table::kSquads ? release.rows.squads : release.rows.regions;
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Named& row) { return row.key == key; });
  return found == rows.end() ? key : found->name;
}

double tenths(double value) {
  constexpr double kTen = 10;
  return std::round(value * kTen) / kTen;
}

double hours_of(const Done& done) {
  constexpr double kMinutes = 60;
  return static_cast<double>(done.player_minutes) / kMinutes;
}

std::optional<Node> rate_node(const Count& count, const Done& done) {
  constexpr double kThousand = 1000;
  if (!gives_rate(count, done)) return std::nullopt;
  const double per = kThousand / hours_of(done);
  const evidence::Interval limits = evidence::exact_limits(count.injuries, evidence::kUsualLevel);
  Node out = Node::make_table();
  out.set("rate", Node::make_real(tenths(static_cast<double>(count.injuries) * per)));
  out.set("low", Node::make_real(tenths(limits.low * per)));
  out.set("high", Node::make_real(tenths(limits.high * per)));
  return out;
}

Node done_node(const Done& done) {
  Node out = Node::make_table();
  for (const auto& [key, member] : kDone) {
    if (member != &Done::player_minutes) out.set(key, Node::make_integer(done.*member));
  }
  out.set("hours", Node::make_integer(shown_hours(done)));
  const std::int64_t told = done.held + done.cut_short + done.missed;
  constexpr std::int64_t kHundred = 100;
  if (told > 0) out.set("most_did_it_percent", Node::make_integer((kHundred * done.most + told / 2) / told));
  return out;
}

void set_planned(Node& to, const Planned& planned) {
  to.set("planned", Node::make_integer(planned.evenings));
  to.set("untold", Node::make_integer(planned.untold));
}

Node compared_node(const Compared& one) {
  Node out = Node::make_table();
  out.set("release", Node::make_integer(one.release));
  out.set("from", Node::make_text(to_iso(one.period.from)));
  out.set("until", Node::make_text(to_iso(one.period.until)));
  out.set("ratio", Node::make_real(one.ratio));
  out.set("low", Node::make_real(one.low));
  out.set("high", Node::make_real(one.high));
  return out;
}

Node planned_node(const PlannedBySquad& squads) {
  Node out = Node::make_table();
  for (const auto& [squad, planned] : squads) {
    Node row = Node::make_table();
    set_planned(row, planned);
    out.set(squad, std::move(row));
  }
  return out;
}

Node row_node(const Release& release, Table table, const std::string& key, const Count& count) {
  Node out = Node::make_table();
  out.set("key", Node::make_text(key));
  out.set("name", Node::make_text(name_of(release, table, key)));
  if (!release.shows(table, key)) {
    out.set("hidden", Node::make_boolean(true));
    return out;
  }
  out.set("count", Node::make_integer(count.injuries));
  const auto done = release.whole.done.find(key);
  if (table != Table::kSquads || done == release.whole.done.end()) return out;
  if (auto rate = rate_node(count, done->second)) out.set("per_1000_hours", std::move(*rate));
  return out;
}

Node injuries_node(const Release& release) {
  Node out = Node::make_table();
  out.set("silent", Node::make_boolean(release.silent));
  if (release.silent) return out;
  out.set("all", Node::make_integer(release.whole.all.injuries));
  if (auto rate = rate_node(release.whole.all, done_by_all(release))) out.set("per_1000_hours", std::move(*rate));
  if (release.compared) out.set("compared", compared_node(*release.compared));
  for (const Table table : kEveryTable) {
    Node rows = Node::make_array();
    for (const auto& [key, count] : release.whole.of(table)) rows.items.push_back(row_node(release, table, key, count));
    out.set(table_key(table), std::move(rows));
  }
  return out;
}

Node count_node(const Count& count) {
  Node out = Node::make_table();
  out.set("injuries", Node::make_integer(count.injuries));
  out.set("people", Node::make_integer(count.people));
  return out;
}

Node counts_node(const Counts& counts) {
  Node out = Node::make_table();
  out.set("all", count_node(counts.all));
  for (const Table table : kEveryTable) {
    Node rows = Node::make_table();
    for (const auto& [key, count] : counts.of(table)) rows.set(key, count_node(count));
    out.set(table_key(table), std::move(rows));
  }
  Node done = Node::make_table();
  for (const auto& [squad, one] : counts.done) {
    Node row = Node::make_table();
    for (const auto& [key, member] : kDone) row.set(key, Node::make_integer(one.*member));
    done.set(squad, std::move(row));
  }
  out.set("done", std::move(done));
  return out;
}

Node named_node(const std::vector<Named>& rows) {
  Node out = Node::make_table();
  for (const Named& row : rows) out.set(row.key, Node::make_text(row.name));
  return out;
}

Count read_count(TableReader reader) {
  return {reader.integer("injuries", 0, kMost), reader.integer("people", 0, kMost)};
}

Counts read_counts(TableReader reader) {
  Counts out;
  out.all = read_count(reader.table("all"));
  for (const Table table : kEveryTable) {
    TableReader rows = reader.table(table_key(table));
    for (const std::string& key : rows.keys()) out.of(table).emplace(key, read_count(rows.table(key)));
  }
  TableReader done = reader.table("done");
  for (const std::string& squad : done.keys()) {
    TableReader row = done.table(squad);
    Done& one = out.done[squad];
    for (const auto& [key, member] : kDone) {
      one.*member = row.integer(key, 0, member == &Done::player_minutes ? kMostMinutes : kMost);
    }
  }
  return out;
}

std::vector<Named> read_named(TableReader reader) {
  std::vector<Named> out;
  for (const std::string& key : reader.keys()) out.push_back({key, reader.text_or(key, "")});
  return out;
}

std::optional<PlannedBySquad> read_planned(TableReader reader) {
  if (!reader.present()) return {};
  PlannedBySquad out;
  for (const std::string& squad : reader.keys()) {
    TableReader row = reader.table(squad);
    out[squad] = {row.integer("planned", 0, kMost), row.integer("untold", 0, kMost)};
  }
  return out;
}

// A ratio has two decimals.
std::optional<Compared> read_compared(TableReader reader) {
  constexpr std::int64_t kScale = 100;
  constexpr double kMostRatio = 1e9;
  if (!reader.present()) return {};
  const auto number = [&](const char* key) {
    return static_cast<double>(reader.scaled(key, kScale, 0, kMostRatio)) / static_cast<double>(kScale);
  };
  Compared out;
  out.release = reader.integer("release", 1, kMost);
  out.period = {reader.date("from").value_or(Date{}), reader.date("until").value_or(Date{})};
  out.ratio = number("ratio");
  out.low = number("low");
  out.high = number("high");
  return out;
}

void read_hidden(Release& release, TableReader injuries) {
  release.silent = injuries.boolean_or("silent", false);
  if (release.silent) return;
  if (injuries.integer("all", 0, kMost) != release.whole.all.injuries) {
    injuries.fault(FaultCode::kContradiction, "all", "another number", "what was counted");
  }
  for (const Table table : kEveryTable) {
    std::set<std::string> seen;
    for (TableReader& row : injuries.tables(table_key(table))) {
      const std::string key = row.text("key");
      const auto counted = release.whole.of(table).find(key);
      if (counted == release.whole.of(table).end() || !seen.insert(key).second) {
        row.fault(FaultCode::kUnknownName, "key", quote(key), "each row that was counted, once");
      } else if (row.boolean_or("hidden", false)) {
        release.hidden[static_cast<std::size_t>(table)].insert(key);
      } else if (row.integer("count", 0, kMost) != counted->second.injuries) {
        row.fault(FaultCode::kContradiction, "count", "another number", "what was counted");
      }
    }
    if (seen.size() != release.whole.of(table).size()) {
      injuries.fault(FaultCode::kMissing, table_key(table), "fewer rows", "each row that was counted");
    }
  }
}

}  // namespace

Node shown_node(const Release& release) {
  Node out = Node::make_table();
  out.set("release", Node::make_integer(release.number));
  out.set("club", Node::make_text(release.club));
  out.set("from", Node::make_text(to_iso(release.period.from)));
  out.set("until", Node::make_text(to_iso(release.period.until)));
  out.set("made", Node::make_text(release.made));
  Node sessions = Node::make_table();
  Node all = done_node(done_by_all(release));
  if (release.planned) set_planned(all, of_all(*release.planned));
  sessions.set("all", std::move(all));
  Node squads = Node::make_array();
  for (const auto& [squad, done] : release.whole.done) {
    Node row = Node::make_table();
    row.set("key", Node::make_text(squad));
    row.set("name", Node::make_text(name_of(release, Table::kSquads, squad)));
    for (auto& [key, value] : done_node(done).entries) row.set(key, value);
    if (release.planned) {
      const auto planned = release.planned->find(squad);
      set_planned(row, planned == release.planned->end() ? Planned{} : planned->second);
    }
    squads.items.push_back(std::move(row));
  }
  sessions.set("squads", std::move(squads));
  out.set("sessions", std::move(sessions));
  out.set("injuries", injuries_node(release));
  if (!release.asked.empty()) out.set("asked", Node::make_text(release.asked));
  out.set("hidden_means", Node::make_text(kHidden));
  Node remarks = Node::make_array();
  for (const std::string& remark : release.remarks) remarks.items.push_back(Node::make_text(remark));
  out.set("remarks", std::move(remarks));
  return out;
}

Node counted_node(const Release& release) {
  Node out = Node::make_table();
  out.set("whole", counts_node(release.whole));
  out.set("own", counts_node(release.own));
  if (release.planned) out.set("planned", planned_node(*release.planned));
  if (release.planned_own) out.set("planned_own", planned_node(*release.planned_own));
  out.set("squads", named_node(release.rows.squads));
  out.set("regions", named_node(release.rows.regions));
  return out;
}

Result<Release> read_release(const Document& shown, const Document& counted) {
  Faults faults;
  TableReader reader(shown.file, &shown.root, "", faults);
  TableReader numbers(counted.file, &counted.root, "", faults);
  Release out;
  out.number = reader.integer("release", 1, kMost);
  out.club = reader.text_or("club", "");
  out.made = reader.text("made");
  const auto from = reader.date("from");
  const auto until = reader.date("until");
  if (!from || !until) reader.fault(FaultCode::kMissing, "from", "no period", "the first day and the last");
  out.period = {from.value_or(Date{}), until.value_or(Date{})};
  out.remarks = reader.texts("remarks");
  out.whole = read_counts(numbers.table("whole"));
  out.own = read_counts(numbers.table("own"));
  out.rows = {read_named(numbers.table("squads")), read_named(numbers.table("regions"))};
  out.planned = read_planned(numbers.table("planned"));
  out.planned_own = read_planned(numbers.table("planned_own"));
  out.asked = reader.text_or("asked", "");
  out.compared = read_compared(reader.table("injuries").table("compared"));
  read_hidden(out, reader.table("injuries"));
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace lanework::release
