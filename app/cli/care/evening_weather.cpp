#include "app/cli/care/evening_weather.h"

#include <algorithm>

#include "app/cli/care/weather_flags.h"
#include "app/cli/document_edits.h"
#include "app/read/files.h"
#include "core/care/environment/weather_verdict.h"

namespace lanework::cli {
namespace {

namespace environment = care::environment;

constexpr std::int64_t kShortestSlotSeconds = 300;
constexpr int kMostBreaks = 6;
constexpr int kLongestBreakSeconds = 1200;

struct Slot {
  environment::Moment start;
  Seconds length;
  std::string squad;
};

std::optional<Slot> slot_of(const Document& squad) {
  Faults passed_over;
  TableReader root(squad.file, &squad.root, "", passed_over);
  TableReader slot = root.table("slot");
  const auto date = slot.date("date");
  const auto start = slot.time("start");
  const std::int64_t seconds = slot.scaled_or("minutes", 60, 0, 0, 1000);
  if (!date || !start || seconds <= 0) return {};
  return Slot{environment::moment_of(*date, *start), Seconds(seconds), root.text_or("name", "")};
}

std::string with_capital(std::string words) {
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z') words[0] = static_cast<char>(words[0] - 'a' + 'A');
  return words;
}

std::string minutes_in_words(std::int64_t seconds) {
  const std::string whole = std::to_string(seconds / 60) + " min";
  return seconds % 60 == 0 ? whole : whole + " " + std::to_string(seconds % 60) + " s";
}

// What is asked first, then the reason of each topic that asks for something.
Node remarks_of(const environment::WeatherVerdict& verdict, const std::string& asked) {
  Node list = Node::make_array();
  list.items.push_back(Node::make_text(asked));
  for (const environment::SessionChange* change : {&verdict.lightning.change, &verdict.heat.verdict.change,
                                                   &verdict.cold.verdict.change, &verdict.air.verdict.change}) {
    if (!change->changes()) continue;
    for (const environment::Reason& reason : change->reasons) {
      std::string words = with_capital(environment::topic_word(reason.topic)) + ": " + reason.words;
      if (reason.unverified) words += " (unverified)";
      if (reason.minutes_old) words += "; known " + std::to_string(*reason.minutes_old) + " min before";
      list.items.push_back(Node::make_text(words + "."));
    }
  }
  return list;
}

class EveningChange {
 public:
  EveningChange(const environment::WeatherVerdict& verdict, Slot slot, Document& squad, Node& restrictions)
      : verdict_(verdict),
        change_(verdict.change),
        slot_(std::move(slot)),
        squad_(squad),
        restrictions_(restrictions) {}

  void fold() {
    if (change_.no_session && !start_later()) {
      const std::string why = why_none();
      tonight("no_session", Node::make_text(why));
      tonight("remarks", remarks_of(verdict_, with_capital(why) + "."));
      return;
    }
    if (change_.most_time && *change_.most_time < slot_.length) {
      slot_.length = *change_.most_time;
      says("at most " + minutes_in_words(slot_.length.count) + " in all");
      set_length();
    }
    if (change_.breaks) take_breaks(*change_.breaks);
    if (change_.effort != environment::Effort::kUsual) take_it_easy();
    if (!asked_.empty()) tonight("remarks", remarks_of(verdict_, with_capital(asked_) + "."));
  }

 private:
  const environment::WeatherVerdict& verdict_;
  const environment::SessionChange& change_;
  Slot slot_;
  Document& squad_;
  Node& restrictions_;
  std::string asked_;

  void says(const std::string& words) { asked_ += (asked_.empty() ? "" : "; ") + words; }
  void tonight(const std::string& key, Node value) { set_in(squad_.root, "tonight", key, std::move(value)); }
  void set_length() {
    set_in(squad_.root, "slot", "minutes", Node::make_real(static_cast<double>(slot_.length.count) / 60));
  }

  // 'heat and cold', or until when everybody stays in.
  [[nodiscard]] std::string why_none() const {
    if (const auto until = change_.no_session->until) {
      return "stay in until " + environment::to_words(*until, slot_.start) +
             " at least: nothing is left of the slot then";
    }
    std::string out;
    for (const environment::SessionChange* change :
         {&verdict_.heat.verdict.change, &verdict_.cold.verdict.change, &verdict_.air.verdict.change}) {
      if (!change->no_session || change->reasons.empty()) continue;
      out += (out.empty() ? "" : " and ") + std::string(environment::topic_word(change->reasons.front().topic));
    }
    return "no session: " + out;
  }

  // False where nothing is left of the slot by then.
  bool start_later() {
    const auto until = change_.no_session->until;
    if (!until) return false;
    const Seconds gone(60 * environment::minutes_between(slot_.start, *until));
    if (gone.count <= 0) return true;
    if ((slot_.length - gone).count < kShortestSlotSeconds) return false;
    slot_.start = *until;
    slot_.length = slot_.length - gone;
    says("no earlier than " + to_text(environment::time_of_day_of(*until)) +
         ", and only if nothing new is seen or heard until then; " + minutes_in_words(slot_.length.count) +
         " are left");
    set_in(squad_.root, "slot", "start", Node::make_text(to_text(environment::time_of_day_of(*until)) + ":00"));
    set_length();
    return true;
  }

  void take_breaks(const environment::Breaks& breaks) {
    const environment::BreaksInSlot in_slot = environment::breaks_in(breaks, slot_.length);
    if (in_slot.count == 0) return;
    const auto count = static_cast<int>(std::min<std::int64_t>(in_slot.count, kMostBreaks));
    const auto each = std::min<std::int64_t>(in_slot.each.count, kLongestBreakSeconds);
    tonight("breaks", Node::make_integer(count));
    tonight("break_minutes", Node::make_real(static_cast<double>(each) / 60));
    tonight("break_why", Node::make_text("rest in the shade or the warm, and drink"));
    says(std::to_string(count) + (count == 1 ? " break" : " breaks") + " of " + minutes_in_words(each));
  }

  // For the whole squad: nothing hard, or nothing at its hardest.
  void take_it_easy() {
    const bool easy = change_.effort == environment::Effort::kEasy;
    Node row = Node::make_table();
    row.set("squad", Node::make_text(slot_.squad));
    Node kinds = Node::make_array();
    for (const char* kind : {"speed", "impact"}) kinds.items.push_back(Node::make_text(kind));
    row.set("kinds", std::move(kinds));
    row.set("allowed", Node::make_text(easy ? "light" : "moderate"));
    const std::string words = easy ? "nothing hard: no sprints, no conditioning" : "less hard and less fast than usual";
    row.set("instruction", Node::make_text(words));
    add_to(restrictions_, "restriction", std::move(row));
    says(words);
  }
};

}  // namespace

std::optional<Faults> fold_weather(const std::string& weather_file, const std::string& now,
                                   const std::string& catalogue, Document& squad, Node& restrictions) {
  const auto tables = read_environment_files(catalogue);
  if (!tables) return tables.faults();
  const auto document = read::read_toml_file(weather_file);
  if (!document) return document.faults();
  const auto weather = environment::read_weather(document.value(), tables.value());
  if (!weather) return weather.faults();
  std::optional<Slot> slot = slot_of(squad);
  if (!slot) return {};
  const auto asked = environment::moment_asked(now.empty() ? environment::to_iso(slot->start) : now, weather.value());
  if (!asked) return asked.faults();
  const auto verdict = environment::judge_weather(weather.value(), tables.value(), asked.value());
  EveningChange(verdict, std::move(*slot), squad, restrictions).fold();
  return {};
}

}  // namespace lanework::cli
