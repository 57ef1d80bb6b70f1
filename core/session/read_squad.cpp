#include <algorithm>

#include "core/session/read_locks.h"
#include "core/session/read_weekly.h"
#include "core/session/squad.h"

namespace lanework::session {
namespace {

constexpr int kFewestPlayers = 2;
constexpr int kMostPlayers = 40;
constexpr int kYoungest = 8;
constexpr int kOldest = 19;
constexpr int kMostBreaks = 6;
constexpr int kLongestBreak = 20;  // minutes

bool in_roster(const std::vector<people::Player>& roster, const std::string& id) {
  return std::any_of(roster.begin(), roster.end(), [&](const people::Player& p) { return p.id == id; });
}

// Empty where the key is absent; asked for in any case, so that it is known.
std::optional<int> stated(TableReader& table, std::string_view key, int least, int most) {
  const auto value = static_cast<int>(table.integer_or(key, least, least, most));
  return table.has(key) ? std::optional<int>(value) : std::nullopt;
}

class SquadReader {
 public:
  SquadReader(const Document& document, const catalogue::Catalogue& catalogue,
              const std::vector<people::Player>& roster)
      : catalogue_(catalogue), roster_(roster), root_(document.file, &document.root, "", faults_) {}

  Result<Squad> read() {
    read_names();
    read_slot();
    read_tonight();
    read_kit();
    read_taught();
    read_partners();
    read_weights();
    squad_.weekly = read_weekly(root_, catalogue_);
    root_.finish();
    squad_.places.age = root_.place("age");
    squad_.places.name = root_.place("name");
    squad_.places.in_roster = root_.place(root_.has("in_roster") ? "in_roster" : "roster");
    squad_.places.routine = root_.place("routine");
    squad_.places.match_day_routine = root_.place("match_day_routine");
    if (!faults_.empty()) return faults_;
    return std::move(squad_);
  }

 private:
  Faults faults_;
  const catalogue::Catalogue& catalogue_;
  const std::vector<people::Player>& roster_;
  TableReader root_;
  Squad squad_;

  void read_names() {
    squad_.club = root_.text_or("club", "");
    squad_.name = root_.text("name");
    squad_.files.roster = root_.text("roster");
    squad_.in_roster = root_.text_or("in_roster", "");
    squad_.files.routine = root_.text("routine");
    squad_.files.strip = root_.text("strip");
    squad_.files.restrictions = root_.text_or("restrictions", "");
    squad_.files.catalogue = root_.text_or("catalogue", "");
    squad_.age = stated(root_, "age", kYoungest, kOldest);
    TableReader clock = root_.table("clock");
    squad_.pace_thousandths = static_cast<int>(clock.scaled_or("pace", 1000, 1.0, 0.5, 2.0));
    clock.finish();
  }

  void required_table(const TableReader& table, const char* name, const char* expected) {
    if (!table.present() && !root_.has(name)) root_.fault(FaultCode::kMissing, name, "nothing", expected);
  }

  void read_slot() {
    TableReader slot = root_.table("slot");
    if (!root_.has("week")) required_table(slot, "slot", "a table with date, start and minutes");
    squad_.has_slot = slot.present();
    if (slot.present()) {
      const auto date = slot.date("date");
      if (!date && !slot.has("date")) slot.fault(FaultCode::kMissing, "date", "nothing", "a date such as 2026-11-26");
      if (date) squad_.date = *date;
      const auto start = slot.time("start");
      if (!start && !slot.has("start")) {
        slot.fault(FaultCode::kMissing, "start", "nothing", "a time of day such as 18:00:00");
      }
      if (start) squad_.start = *start;
      squad_.slot = Seconds(slot.scaled("minutes", 60, 5, 60));
      squad_.days_to_match = stated(slot, "days_to_match", 0, 60);
    }
    slot.finish();
  }

  void known_player(TableReader& table, std::string_view key, const std::string& id) {
    if (!in_roster(roster_, id))
      table.fault(FaultCode::kUnknownName, key, quote(id), "the id of a player of the roster");
  }

  void read_tonight() {
    TableReader tonight = root_.table("tonight");
    squad_.turnout = stated(tonight, "turnout", kFewestPlayers, kMostPlayers);
    squad_.late = static_cast<int>(tonight.integer_or("late", 0, 0, kMostPlayers));
    squad_.places.turnout =
        squad_.turnout ? tonight.place("turnout") : root_.place(root_.has("in_roster") ? "in_roster" : "roster");
    squad_.places.late = tonight.place("late");
    squad_.away = tonight.texts("away");
    for (const std::string& id : squad_.away) known_player(tonight, "away", id);
    squad_.bans = read_bans(tonight, catalogue_);
    squad_.pins = read_pins(tonight, catalogue_);
    squad_.free_composition = tonight.boolean_or("free_composition", false);
    squad_.more_than_routine = tonight.boolean_or("more_than_routine", false);
    read_breaks(tonight);
    squad_.no_session = tonight.text_or("no_session", "");
    squad_.remarks = tonight.texts("remarks");
    squad_.seed = static_cast<std::uint64_t>(tonight.integer_or("seed", 1, 0, 1'000'000'000));
    tonight.finish();
  }

  void read_breaks(TableReader& tonight) {
    squad_.breaks.count = static_cast<int>(tonight.integer_or("breaks", 0, 0, kMostBreaks));
    squad_.breaks.each = Seconds(tonight.scaled_or("break_minutes", 60, 0, 0, kLongestBreak));
    squad_.breaks.why = tonight.text_or("break_why", "");
    if ((squad_.breaks.count > 0) == (squad_.breaks.each.count >= 60)) return;
    tonight.fault(FaultCode::kContradiction, squad_.breaks.count > 0 ? "break_minutes" : "breaks",
                  std::to_string(squad_.breaks.count) + " breaks of " + std::to_string(squad_.breaks.each.count) + " s",
                  "breaks and break_minutes together, each break a minute or more");
  }

  void read_kit() {
    TableReader kit = root_.table("kit");
    squad_.kit.cones = static_cast<int>(kit.integer_or("cones", 0, 0, 500));
    squad_.kit.balls = static_cast<int>(kit.integer_or("balls", 0, 0, 200));
    squad_.kit.mats = static_cast<int>(kit.integer_or("mats", 0, 0, 200));
    kit.finish();
  }

  void read_taught() {
    TableReader taught = root_.table("taught");
    for (const std::string& id : taught.keys()) {
      expect_drill(taught, id, id, catalogue_);
      squad_.taught[id] = Exposure{static_cast<int>(taught.integer_or(id, 0, 0, 100000))};
    }
    taught.finish();
  }

  void read_partners() {
    TableReader partners = root_.table("partners");
    squad_.partners.measure =
        static_cast<people::PartnerMeasure>(partners.word("measure", {"age", "size-group", "body-mass"}, 0));
    for (const std::vector<std::string>& pair : partners.text_lists("forbidden")) {
      if (pair.size() != 2) {
        partners.fault(FaultCode::kWrongType, "forbidden", "a list of " + std::to_string(pair.size()),
                       "pairs of two player ids");
        continue;
      }
      known_player(partners, "forbidden", pair[0]);
      known_player(partners, "forbidden", pair[1]);
      if (pair[0] == pair[1]) {
        partners.fault(FaultCode::kContradiction, "forbidden", quote(pair[0]) + " twice", "two different players");
      }
      squad_.partners.forbidden.emplace_back(pair[0], pair[1]);
    }
    partners.finish();
  }

  void read_weights() {
    TableReader weights = root_.table("weights");
    squad_.weights.dose_step = static_cast<int>(weights.scaled_or("dose_step", 4, 1, 0.25, 5));
    squad_.weights.rung_step = static_cast<int>(weights.scaled_or("rung_step", 4, 2, 0.25, 5));
    squad_.weights.left_out = static_cast<int>(weights.scaled_or("left_out", 4, 2, 0.25, 5));
    squad_.weights.new_drill = static_cast<int>(weights.scaled_or("new_drill", 4, 3, 0.25, 5));
    weights.finish();
  }
};

bool sits_out(const people::Player& player, const people::Restrictions& restrictions, Date day) {
  return std::any_of(restrictions.list.begin(), restrictions.list.end(), [&](const people::Restriction& r) {
    return r.player == player.id && r.sits_out && people::holds_on(r, day);
  });
}

}  // namespace

Result<Squad> read_squad(const Document& document, const catalogue::Catalogue& catalogue,
                         const std::vector<people::Player>& roster) {
  return SquadReader(document, catalogue, roster).read();
}

std::vector<people::Player> players_tonight(const Squad& squad, const std::vector<people::Player>& roster,
                                            const people::Restrictions& restrictions) {
  std::vector<people::Player> out;
  for (const people::Player& player : roster) {
    const bool member = squad.in_roster.empty() ||
                        std::find(player.squads.begin(), player.squads.end(), squad.in_roster) != player.squads.end();
    const bool away = std::find(squad.away.begin(), squad.away.end(), player.id) != squad.away.end();
    if (member && !away && !sits_out(player, restrictions, squad.date)) out.push_back(player);
  }
  return out;
}

namespace {

Fault not_that_many(const Squad& squad, int turnout) {
  const bool by_roster = !squad.turnout && !squad.in_roster.empty();
  return {FaultCode::kOutOfRange, squad.places.turnout,
          std::to_string(turnout) + (turnout == 1 ? " player" : " players") + " tonight",
          "2 to 40 players who take part",
          by_roster ? "does the roster's squad column say " + quote(squad.in_roster) + "?" : ""};
}

// The stated age, else that of the youngest who comes; empty where nobody's is known.
std::optional<int> age_of(const Squad& squad, const std::vector<people::Player>& players) {
  if (squad.age) return squad.age;
  std::optional<int> youngest;
  for (const people::Player& player : players) {
    const std::optional<int> age = people::age_on(player, squad.date);
    if (age && (!youngest || *age < *youngest)) youngest = age;
  }
  return youngest;
}

std::optional<Fault> age_fault(const Squad& squad, std::optional<int> age) {
  if (!age) {
    return Fault{FaultCode::kMissing,
                 squad.places.age,
                 "no age here and no birth date or age in the roster",
                 "age in the squad file, or a birth date column in the roster",
                 {}};
  }
  if (*age >= kYoungest && *age <= kOldest) return {};
  return Fault{FaultCode::kOutOfRange, squad.places.age, "a youngest player of " + std::to_string(*age) + " years",
               std::to_string(kYoungest) + " to " + std::to_string(kOldest) + " years",
               "state age in the squad file if the roster is wrong"};
}

// A restriction of a whole squad that is this one. Without in_roster everybody in the roster is of the squad, and
// whatever their squads must avoid, all of them do.
bool is_of_squad(const people::Restriction& restriction, const Squad& squad,
                 const std::vector<people::Player>& roster) {
  if (!restriction.player.empty()) return false;
  if (restriction.squad == squad.name) return true;
  if (!squad.in_roster.empty()) return restriction.squad == squad.in_roster;
  return std::any_of(roster.begin(), roster.end(), [&](const people::Player& player) {
    return std::find(player.squads.begin(), player.squads.end(), restriction.squad) != player.squads.end();
  });
}

}  // namespace

Result<Evening> make_evening(const Squad& squad, const Strip& strip, const std::vector<people::Player>& roster,
                             const people::Restrictions& restrictions) {
  const std::vector<people::Player> players = players_tonight(squad, roster, restrictions);
  Faults faults;
  if (!squad.has_slot) {
    return Fault{FaultCode::kMissing,
                 {squad.places.age.file, 0, 0, "slot"},
                 "a squad file with its week only",
                 "a [slot] with date, start and minutes for one evening",
                 {}};
  }
  Evening evening;
  evening.turnout = squad.turnout.value_or(static_cast<int>(players.size()));
  if (evening.turnout < kFewestPlayers || evening.turnout > kMostPlayers) {
    faults.push_back(not_that_many(squad, evening.turnout));
  } else if (squad.late >= evening.turnout) {
    faults.push_back({FaultCode::kContradiction,
                      squad.places.late,
                      std::to_string(squad.late) + " late of " + std::to_string(evening.turnout),
                      "fewer late players than players",
                      {}});
  }
  const std::optional<int> age = age_of(squad, players);
  const bool nobody = players.empty() && !squad.turnout;
  if (auto fault = nobody ? std::nullopt : age_fault(squad, age)) faults.push_back(std::move(*fault));
  if (!faults.empty()) return faults;
  evening.club = squad.club;
  evening.squad = squad.name;
  evening.date = squad.date;
  evening.start = squad.start;
  evening.slot = squad.slot;
  evening.breaks = squad.breaks;
  evening.no_session = squad.no_session;
  evening.remarks = squad.remarks;
  evening.late = squad.late;
  evening.age = *age;
  evening.days_to_match = squad.days_to_match;
  evening.strip = strip;
  evening.kit = squad.kit;
  for (const people::Restriction& restriction : restrictions.list) {
    if (is_of_squad(restriction, squad, roster) && people::holds_on(restriction, squad.date)) {
      evening.restrictions.push_back(restriction);
    }
  }
  evening.pins = squad.pins;
  evening.bans = squad.bans;
  evening.free_composition = squad.free_composition;
  evening.more_than_routine = squad.more_than_routine;
  evening.exposures = squad.taught;
  evening.pace_thousandths = squad.pace_thousandths;
  evening.weights = squad.weights;
  evening.seed = squad.seed;
  return evening;
}

}  // namespace lanework::session
