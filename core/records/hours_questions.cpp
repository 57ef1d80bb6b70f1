#include <cstdlib>
#include <map>
#include <tuple>

#include "core/records/hours.h"
#include "core/records/row_questions.h"

namespace lanework::records {
namespace {

const char* setting_word(Setting setting) { return setting == Setting::kMatch ? "match" : "training"; }

class HoursQuestions {
 public:
  HoursQuestions(const Season& season, const SeasonPlaces& places, std::vector<Question>& out)
      : season_(season), places_(places), out_(out) {}

  void ask() {
    for (std::size_t i = 0; i < season_.exposures.size(); ++i) {
      const Exposure& exposure = season_.exposures[i];
      ask_about_length(i, exposure);
      ask_about_players(i, exposure);
      ask_about_twins(i, exposure);
    }
    for (std::size_t i = 0; i < season_.exposures.size(); ++i) ask_about_both(i, season_.exposures[i]);
  }

 private:
  const Season& season_;
  const SeasonPlaces& places_;
  std::vector<Question>& out_;
  std::map<std::tuple<std::uint32_t, Date, Setting, std::string, PlayerMinutes>, std::size_t> seen_;
  std::map<std::tuple<std::uint32_t, Date, Setting>, std::size_t>
      of_the_squad_;  // first row that is no single player's

  void ask(QuestionKind kind, std::size_t row, const std::string& rest, int other_line = 0) {
    const Exposure& exposure = season_.exposures[row];
    const std::string& id = season_.squads[exposure.squad].id;
    out_.push_back({kind, places_.exposures.place(row), id + " on " + to_iso(exposure.date) + ": " + rest, other_line});
  }

  // Of one player; empty where nobody says how many there were.
  [[nodiscard]] std::optional<std::int64_t> minutes_each(const Exposure& exposure) const {
    if (!exposure.stated_hours) {
      const SquadRecord& squad = season_.squads[exposure.squad];
      return exposure.minutes ? exposure.minutes
                              : (exposure.setting == Setting::kMatch ? squad.match_minutes : squad.training_minutes);
    }
    const SessionHours usual = session_hours(season_.squads[exposure.squad], exposure.setting,
                                             {1, exposure.players, {}, !exposure.player.empty()});
    if (usual.players_lack || usual.hours.count == 0) return {};
    return exposure.stated_hours->count / usual.hours.count;
  }

  void ask_about_length(std::size_t row, const Exposure& exposure) {
    const char* setting = setting_word(exposure.setting);
    if (exposure.hours.count == 0) {
      ask(QuestionKind::kNoHours, row, std::string("a ") + setting + " with no hours; did it take place?");
      return;
    }
    const std::optional<std::int64_t> minutes = minutes_each(exposure);
    if (minutes && *minutes > kLongSessionMinutes) {
      ask(QuestionKind::kLongSession, row,
          std::to_string(*minutes) + " min of " + setting + " a player, longer than " +
              std::to_string(kLongSessionMinutes / 60) +
              " h; are these minutes typed as hours, or hours of all players?");
    } else if (minutes && *minutes < kShortSessionMinutes) {
      ask(QuestionKind::kShortSession, row,
          std::to_string(*minutes) + " min of " + setting + " a player, shorter than " +
              std::to_string(kShortSessionMinutes) + " min; are these hours typed as minutes, or hours of one player?");
    }
    if (exposure.hours > kManySessionHours) {
      ask(QuestionKind::kManyHours, row,
          in_hours(exposure.hours) + " of all players together in one session; are these minutes typed as hours?");
    }
  }

  void ask_about_players(std::size_t row, const Exposure& exposure) {
    if (exposure.stated_hours && exposure.minutes && exposure.players) {
      const std::int64_t product = std::int64_t{*exposure.minutes} * *exposure.players;
      const std::int64_t apart = std::abs(product - exposure.hours.count);
      if (apart * 20 > exposure.hours.count) {
        ask(QuestionKind::kHoursDisagree, row,
            in_hours(exposure.hours) + " stated, but minutes times players are " + in_hours(PlayerMinutes(product)) +
                "; the stated hours count");
      }
    }
    const std::optional<int> field = season_.squads[exposure.squad].on_the_field;
    if (exposure.setting == Setting::kMatch && exposure.players && field && *exposure.players > *field) {
      ask(QuestionKind::kMoreThanOnTheField, row,
          std::to_string(*exposure.players) + " players for the whole match, and " + std::to_string(*field) +
              " are on the field at one time: the hours are too many and the rate too low");
    }
  }

  void ask_about_twins(std::size_t row, const Exposure& exposure) {
    const auto [first, is_new] = seen_.emplace(
        std::tuple(exposure.squad, exposure.date, exposure.setting, exposure.player, exposure.hours), row);
    if (!is_new) {
      ask(QuestionKind::kSessionTwice, row,
          std::string("the same ") + setting_word(exposure.setting) + " stands there twice; were there two?",
          places_.exposures.lines[first->second]);
    }
    if (exposure.player.empty())
      of_the_squad_.emplace(std::tuple(exposure.squad, exposure.date, exposure.setting), row);
  }

  void ask_about_both(std::size_t row, const Exposure& exposure) {
    if (exposure.player.empty()) return;
    const auto whole = of_the_squad_.find(std::tuple(exposure.squad, exposure.date, exposure.setting));
    if (whole == of_the_squad_.end()) return;
    ask(QuestionKind::kSquadAndPlayer, row,
        std::string("a ") + setting_word(exposure.setting) +
            " of one player, and the whole squad's: are hours counted twice?",
        places_.exposures.lines[whole->second]);
  }
};

}  // namespace

void ask_about_hours(const Season& season, const SeasonPlaces& places, std::vector<Question>& out) {
  HoursQuestions(season, places, out).ask();
}

}  // namespace lanework::records
