#include <algorithm>
#include <cstdlib>
#include <map>
#include <tuple>

#include "core/records/hours.h"
#include "core/records/row_questions.h"

namespace lanework::records {
namespace {

std::string setting_word(Setting setting, const Speaker& speaker) {
  return speaker.say(setting == Setting::kMatch ? Words{"match", "partido"} : Words{"training", "entrenamiento"});
}

class HoursQuestions {
 public:
  HoursQuestions(const Season& season, const SeasonPlaces& places, Language language, std::vector<Question>& out)
      : season_(season), places_(places), speaker_(language), out_(out) {}

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
  Speaker speaker_;
  std::vector<Question>& out_;
  std::map<std::tuple<std::uint32_t, Date, Setting, std::string, PlayerMinutes>, std::size_t> seen_;
  std::map<std::tuple<std::uint32_t, Date, Setting>, std::size_t>
      of_the_squad_;  // first row that is no single player's

  [[nodiscard]] std::string hours_words(PlayerMinutes hours) const {
    std::string out = in_hours(hours);
    if (speaker_.language() == Language::kSpanish) std::replace(out.begin(), out.end(), '.', ',');
    return out;
  }

  void ask(QuestionKind kind, std::size_t row, const std::string& rest, int other_line = 0) {
    const Exposure& exposure = season_.exposures[row];
    const std::string& id = season_.squads[exposure.squad].id;
    out_.push_back({kind, places_.exposures.place(row),
                    speaker_.say({"{} on {}: {}", "{}, {}: {}"}, id, to_iso(exposure.date), rest), other_line});
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
    const std::string setting = setting_word(exposure.setting, speaker_);
    if (exposure.hours.count == 0) {
      ask(QuestionKind::kNoHours, row,
          speaker_.say({"a {} with no hours; did it take place?", "un {} sin horas; ¿se celebró?"}, setting));
      return;
    }
    const std::optional<std::int64_t> minutes = minutes_each(exposure);
    if (minutes && *minutes > kLongSessionMinutes) {
      ask(QuestionKind::kLongSession, row,
          speaker_.say({"{} min of {} a player, longer than {} h; are these minutes typed as hours, or hours of all "
                        "players?",
                        "{} min de {} por jugador, más de {} h; ¿son minutos escritos como horas, u horas de todos los "
                        "jugadores?"},
                       *minutes, setting, kLongSessionMinutes / 60));
    } else if (minutes && *minutes < kShortSessionMinutes) {
      ask(QuestionKind::kShortSession, row,
          speaker_.say(
              {"{} min of {} a player, shorter than {} min; are these hours typed as minutes, or hours of one "
               "player?",
               "{} min de {} por jugador, menos de {} min; ¿son horas escritas como minutos, u horas de un solo "
               "jugador?"},
              *minutes, setting, kShortSessionMinutes));
    }
    if (exposure.hours > kManySessionHours) {
      ask(QuestionKind::kManyHours, row,
          speaker_.say({"{} of all players together in one session; are these minutes typed as hours?",
                        "{} de todos los jugadores en una sola sesión; ¿son minutos escritos como horas?"},
                       hours_words(exposure.hours)));
    }
  }

  void ask_about_players(std::size_t row, const Exposure& exposure) {
    if (exposure.stated_hours && exposure.minutes && exposure.players) {
      const std::int64_t product = std::int64_t{*exposure.minutes} * *exposure.players;
      const std::int64_t apart = std::abs(product - exposure.hours.count);
      if (apart * 20 > exposure.hours.count) {
        ask(QuestionKind::kHoursDisagree, row,
            speaker_.say({"{} stated, but minutes times players are {}; the stated hours count",
                          "{} indicadas, pero minutos por jugadores son {}; cuentan las horas indicadas"},
                         hours_words(exposure.hours), hours_words(PlayerMinutes(product))));
      }
    }
    const std::optional<int> field = season_.squads[exposure.squad].on_the_field;
    if (exposure.setting == Setting::kMatch && exposure.players && field && *exposure.players > *field) {
      ask(QuestionKind::kMoreThanOnTheField, row,
          speaker_.say({"{} players for the whole match, and {} are on the field at one time: the hours are too many "
                        "and the rate too low",
                        "{} jugadores durante todo el partido, y a la vez hay {} en el campo: sobran horas y la tasa "
                        "queda demasiado baja"},
                       *exposure.players, *field));
    }
  }

  void ask_about_twins(std::size_t row, const Exposure& exposure) {
    const auto [first, is_new] = seen_.emplace(
        std::tuple(exposure.squad, exposure.date, exposure.setting, exposure.player, exposure.hours), row);
    if (!is_new) {
      ask(QuestionKind::kSessionTwice, row,
          speaker_.say({"the same {} stands there twice; were there two?", "el mismo {} consta dos veces; ¿hubo dos?"},
                       setting_word(exposure.setting, speaker_)),
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
        speaker_.say({"a {} of one player, and the whole squad's: are hours counted twice?",
                      "un {} de un solo jugador y el de todo el equipo: ¿se cuentan horas dos veces?"},
                     setting_word(exposure.setting, speaker_)),
        places_.exposures.lines[whole->second]);
  }
};

}  // namespace

void ask_about_hours(const Season& season, const SeasonPlaces& places, Language language, std::vector<Question>& out) {
  HoursQuestions(season, places, language, out).ask();
}

}  // namespace lanework::records
