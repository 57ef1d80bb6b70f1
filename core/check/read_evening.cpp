// docs/formats/squad.md: who is there, where, with what, and what the lead wants.
#include <algorithm>
#include <optional>
#include <utility>

#include "core/check/read_matter.h"

namespace lanework::check {
namespace {

constexpr std::int64_t kMany = 1'000'000;
constexpr int kFewestPlayers = 2;
constexpr int kMostPlayers = 40;

struct Player {
  std::string id;
  std::optional<int> age;
  std::vector<std::string> squads;
};

class EveningReader {
 public:
  EveningReader(TableReader& request, Matter& matter, Faults& faults)
      : request_(request), matter_(matter), faults_(faults), squad_(request.table("squad")) {}

  void read() {
    TableReader strip = request_.table("strip");
    matter_.strip = read_strip(strip);
    read_slot();
    read_wishes();
    read_roster();
    read_restrictions();
    if (faults_.empty()) settle_who();
  }

 private:
  TableReader& request_;
  Matter& matter_;
  Faults& faults_;
  TableReader squad_;
  Date date_;
  std::vector<Player> roster_;
  std::vector<std::string> sitting_out_;

  void read_slot() {
    Tonight& tonight = matter_.tonight;
    TableReader slot = squad_.table("slot");
    const std::optional<Date> date = slot.date("date");
    const std::optional<TimeOfDay> start = slot.time("start");
    if (!date) slot.fault(FaultCode::kMissing, "date", "no date", "the date of the evening");
    if (!start) slot.fault(FaultCode::kMissing, "start", "no time", "the time it starts");
    date_ = date.value_or(Date{});
    tonight.start_minutes = start.value_or(TimeOfDay{}).minutes;
    tonight.slot_seconds = slot.scaled("minutes", 60, 0, 1000);
    if (slot.has("days_to_match")) tonight.days_to_match = slot.integer("days_to_match", 0, kMany);
    TableReader clock = squad_.table("clock");
    tonight.pace_thousandths = clock.scaled_or("pace", 1000, 1, 0.001, 100);
  }

  void read_pin(TableReader& table) {
    Pin pin;
    pin.drill = table.text("drill");
    pin.rung = table.text_or("rung", "");
    if (table.has("sets") || table.has("amount")) {
      pin.step =
          Step{static_cast<int>(table.integer("sets", 1, 1000)), static_cast<int>(table.integer("amount", 1, 1000))};
    }
    if (matter_.drills.count(pin.drill) == 0) {
      table.fault(FaultCode::kUnknownName, "drill", quote(pin.drill), "a drill of the catalogue");
    }
    matter_.tonight.pins.push_back(std::move(pin));
  }

  void read_wishes() {
    Tonight& out = matter_.tonight;
    TableReader tonight = squad_.table("tonight");
    out.late = static_cast<int>(tonight.integer_or("late", 0, 0, kMostPlayers));
    out.no_session = tonight.text_or("no_session", "");
    out.breaks = static_cast<int>(tonight.integer_or("breaks", 0, 0, kMany));
    out.break_seconds = tonight.scaled_or("break_minutes", 60, 0, 0, 1000);
    out.bans = tonight.texts("bans");
    for (TableReader& table : tonight.tables("pins")) read_pin(table);
    out.free_composition = tonight.boolean_or("free_composition", false);
    out.more_than_routine = tonight.boolean_or("more_than_routine", false);
    TableReader kit = squad_.table("kit");
    out.cones = static_cast<int>(kit.integer_or("cones", 0, 0, kMany));
    out.balls = static_cast<int>(kit.integer_or("balls", 0, 0, kMany));
    out.mats = static_cast<int>(kit.integer_or("mats", 0, 0, kMany));
    TableReader taught = squad_.table("taught");
    for (const std::string& id : taught.keys()) out.taught[id] = taught.integer_or(id, 0, 0, kMany);
    TableReader weights = squad_.table("weights");
    out.weights.dose_step = weights.scaled_or("dose_step", 4, 1, 0, 1000);
    out.weights.rung_step = weights.scaled_or("rung_step", 4, 2, 0, 1000);
    out.weights.left_out = weights.scaled_or("left_out", 4, 2, 0, 1000);
    out.weights.new_drill = weights.scaled_or("new_drill", 4, 3, 0, 1000);
  }

  void read_roster() {
    Secrets& secrets = matter_.secrets;
    for (TableReader& row : request_.tables("roster")) {
      Player player;
      player.id = row.text("id");
      const std::optional<Date> birth = row.date("birth");
      if (row.has("age")) player.age = static_cast<int>(row.integer("age", 0, 200));
      if (birth) player.age = age_in_years(*birth, date_);
      player.squads = row.texts("squads");
      secrets.ids.push_back(player.id);
      secrets.names.push_back(row.text("name"));
      if (row.has("body_mass_grams")) secrets.grams.push_back(row.integer("body_mass_grams", 0, kMany));
      roster_.push_back(std::move(player));
    }
  }

  void read_restrictions() {
    static const std::vector<std::string_view> kAllowed = {"none", "light", "moderate", "heavy"};
    const std::string in_roster = squad_.text_or("in_roster", "");
    const std::string name = squad_.text_or("name", "");
    TableReader table = request_.table("restrictions");
    for (TableReader& row : table.tables("restriction")) {
      const std::string player = row.text_or("player", "");
      const std::string squad = row.text_or("squad", "");
      const std::optional<Date> until = row.date("until");
      SquadRestriction restriction{row.texts("areas"), row.texts("kinds"), row.word("allowed", kAllowed, 0),
                                   row.boolean_or("sits_out", false)};
      // Counted for one player on the slip; nothing of it is the squad's.
      row.integer_or("landings_percent", 100, 0, 100);
      row.boolean_or("new_eccentric", true);
      const std::string instruction = row.text_or("instruction", "");
      if (!instruction.empty()) matter_.secrets.instructions.push_back(instruction);
      if (until && *until < date_) continue;
      if (!player.empty() && restriction.sits_out) sitting_out_.push_back(player);
      const bool theirs = in_roster.empty() ? anybody_is_of(squad) : squad == in_roster;
      const bool of_squad = player.empty() && (squad == name || theirs);
      if (of_squad) matter_.tonight.restrictions.push_back(std::move(restriction));
    }
  }

  [[nodiscard]] bool anybody_is_of(const std::string& squad) const {
    return std::any_of(roster_.begin(), roster_.end(),
                       [&](const Player& player) { return holds(player.squads, squad); });
  }

  [[nodiscard]] std::vector<Player> who_comes(const std::string& in_roster,
                                              const std::vector<std::string>& away) const {
    std::vector<Player> out;
    for (const Player& player : roster_) {
      const bool ours = in_roster.empty() || holds(player.squads, in_roster);
      if (ours && !holds(away, player.id) && !holds(sitting_out_, player.id)) out.push_back(player);
    }
    return out;
  }

  void settle_who() {
    Tonight& out = matter_.tonight;
    TableReader tonight = squad_.table("tonight");
    const std::vector<Player> players = who_comes(squad_.text_or("in_roster", ""), tonight.texts("away"));
    out.turnout = static_cast<int>(tonight.integer_or("turnout", static_cast<std::int64_t>(players.size()), 0, kMany));
    if (out.turnout < kFewestPlayers || out.turnout > kMostPlayers) {
      squad_.fault(FaultCode::kOutOfRange, "tonight.turnout", std::to_string(out.turnout), "2 to 40 players");
    }
    if (out.late >= out.turnout) {
      squad_.fault(FaultCode::kContradiction, "tonight.late", std::to_string(out.late), "fewer than the players");
    }
    std::optional<int> age;
    for (const Player& player : players) {
      if (player.age) age = std::min(age.value_or(*player.age), *player.age);
    }
    if (squad_.has("age")) age = static_cast<int>(squad_.integer("age", 0, 200));
    if (!age) squad_.fault(FaultCode::kMissing, "age", "nobody's age is known", "an age");
    out.age = age.value_or(0);
  }
};

}  // namespace

Strip read_strip(TableReader& table) {
  Strip strip;
  strip.lane_mm = table.scaled("lane_length_metres", 1000, 0.001, 1000);
  strip.cone_spacing_mm = table.scaled("cone_spacing_metres", 1000, 0.001, 1000);
  strip.lanes = static_cast<int>(table.integer("lanes", 1, 1000));
  TableReader area = table.table("area_metres");
  strip.width_mm = area.scaled("width", 1000, 0.001, 10000);
  strip.length_mm = area.scaled("length", 1000, 0.001, 10000);
  strip.surface = table.texts("surface");
  strip.wall = table.boolean_or("wall", false);
  strip.soft_ground = table.boolean_or("soft_ground", false);
  strip.line = table.boolean_or("line", false);
  return strip;
}

void read_evening(TableReader& request, Matter& matter, Faults& faults) {
  EveningReader(request, matter, faults).read();
}

}  // namespace lanework::check
