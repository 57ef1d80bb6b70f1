#include "tests/records/generated_season.h"

#include <algorithm>
#include <random>

#include "core/records/hours.h"
#include "tests/records/record_files.h"

namespace lanework::records::test {
namespace {

class Maker {
 public:
  Maker(std::uint64_t seed, const SeasonSize& size) : random_(seed), size_(size) {}

  Season make() {
    out_.period = season_2026();
    for (int i = 0; i < size_.squads; ++i) out_.squads.push_back(squad(i));
    for (int i = 0; i < size_.exposures; ++i) out_.exposures.push_back(exposure());
    while (static_cast<int>(out_.injuries.size()) < size_.injuries) add_event();
    for (int i = 0; i < size_.players; ++i) out_.players.push_back(player(i));
    return std::move(out_);
  }

 private:
  std::mt19937_64 random_;
  SeasonSize size_;
  Season out_;

  int number(int least, int most) {
    return least + static_cast<int>(random_() % static_cast<std::uint64_t>(most - least + 1));
  }
  bool chance(int percent) { return number(1, 100) <= percent; }
  std::optional<int> maybe(int least, int most) {
    return chance(60) ? std::optional<int>(number(least, most)) : std::nullopt;
  }
  template <class Value>
  std::optional<Value> maybe_term(Field field) {
    if (!chance(70)) return {};
    return static_cast<Value>(number(0, static_cast<int>(shipped_terms().of(field).size()) - 1));
  }
  std::string text(bool of_a_list = false) {
    static const std::vector<std::string> kTexts = {"",         "plain",     "two words",  "a, b",      "\"quoted\"",
                                                    "=SUM(A1)", "Aufwärmen", "x\"y,z",     "Николай",   "東京",
                                                    "it's",     "-",         "90% + more", "semi;colon"};
    const std::string& made = kTexts[static_cast<std::size_t>(number(0, static_cast<int>(kTexts.size()) - 1))];
    return of_a_list && (made.empty() || made == "semi;colon") ? "plank" : made;
  }
  std::vector<std::string> texts() {
    std::vector<std::string> made;
    for (int i = number(0, 3); i > 0; --i) made.push_back(text(true));
    return made;
  }
  Date date(Date first, Date last) { return Date{number(first.days_since_epoch, last.days_since_epoch)}; }
  std::optional<Date> maybe_date(Date first) {
    return chance(50) ? std::optional<Date>(date(first, out_.period.as_of)) : std::nullopt;
  }

  SquadRecord squad(int position) {
    SquadRecord made;
    made.id = (chance(20) ? "squad, \"no\" " : "u13-") + std::to_string(position);
    made.name = text();
    made.club = text();
    made.age_band = text();
    made.sex = maybe_term<Sex>(Field::kSex);
    made.players = number(1, 30);
    made.training_minutes = number(1, kMostUsualMinutes);
    made.match_minutes = number(1, 120);
    made.on_the_field = number(1, 11);
    made.taught = maybe_date(day("1999-12-31"));
    return made;
  }
  std::uint32_t any_squad() { return static_cast<std::uint32_t>(number(0, size_.squads - 1)); }
  std::string any_player() { return chance(30) ? "" : "P, " + std::to_string(number(1, 9)); }

  Exposure exposure() {
    Exposure made;
    made.squad = any_squad();
    made.date = date(out_.period.first, out_.period.last);
    made.setting = chance(30) ? Setting::kMatch : Setting::kTraining;
    if (chance(20)) made.player = "P, " + std::to_string(number(1, 9));
    made.minutes = maybe(0, kMostSessionMinutes);
    made.players = made.player.empty() ? maybe(0, kMostSessionPlayers) : maybe(1, 1);
    if (chance(20)) made.stated_hours = PlayerMinutes(number(0, static_cast<int>(kMostSessionHours.count)));
    const SessionHours hours = session_hours(out_.squads[made.squad], made.setting,
                                             {made.minutes, made.players, made.stated_hours, !made.player.empty()});
    made.hours = hours.hours;
    made.defaulted = hours.defaulted;
    made.warm_up = maybe_term<WarmUp>(Field::kWarmUp);
    made.warm_up_minutes = maybe(0, 30);
    made.left_out = texts();
    made.needing_help = texts();
    if (chance(50)) made.confirmed = chance(50);
    return made;
  }

  InjuryRecord diagnosis(std::uint32_t squad, const std::string& who, Date onset) {
    InjuryRecord made;
    made.squad = squad;
    made.player = who;
    made.date = onset;
    made.setting = maybe_term<Setting>(Field::kSetting);
    made.onset = maybe_term<Onset>(Field::kOnset);
    made.contact = maybe_term<Contact>(Field::kContact);
    made.region = maybe_term<Region>(Field::kRegion);
    made.tissue = maybe_term<Tissue>(Field::kTissue);
    made.side = maybe_term<Side>(Field::kSide);
    made.activity = maybe_term<Activity>(Field::kActivity);
    made.recurrence = maybe_term<Recurrence>(Field::kRecurrence);
    made.loss_began = maybe_date(onset);
    made.returned = maybe_date(made.loss_began.value_or(onset));
    if (chance(20)) made.days_missed = days_missed(made);
    made.note = text();
    return made;
  }
  std::vector<Date> days_missed(const InjuryRecord& injury) {
    std::vector<Date> days;
    const Date last = injury.returned ? Date{injury.returned->days_since_epoch - 1} : out_.period.as_of;
    if (last < injury.date) return days;
    for (int i = number(1, 4); i > 0; --i) days.push_back(date(injury.date, last));
    std::sort(days.begin(), days.end());
    days.erase(std::unique(days.begin(), days.end()), days.end());
    return days;
  }
  void add_event() {
    const std::uint32_t squad = any_squad();
    const std::string who = any_player();
    const Date onset = date(out_.period.first, out_.period.last);
    const int diagnoses = number(1, 3);
    const std::string event =
        diagnoses > 1 || chance(30) ? "event; " + std::to_string(out_.injuries.size()) : std::string();
    for (int i = 0; i < diagnoses; ++i) {
      out_.injuries.push_back(diagnosis(squad, who, onset));
      out_.injuries.back().event = event;
    }
  }
  PlayerRecord player(int position) {
    PlayerRecord made{"P, " + std::to_string(position), any_squad(), maybe_date(day("2020-01-01")), {}};
    made.left = maybe_date(made.joined.value_or(day("2020-01-01")));
    return made;
  }
};

}  // namespace

Season generated_season(std::uint64_t seed, const SeasonSize& size) { return Maker(seed, size).make(); }

}  // namespace lanework::records::test
