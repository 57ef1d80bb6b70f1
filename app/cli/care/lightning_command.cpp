#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/weather_answer.h"
#include "app/cli/command.h"

namespace lanework::cli {
namespace {

using care::environment::LightningClock;
using care::environment::LightningEvent;
using care::environment::LightningSign;
using care::environment::Moment;

struct LightningFlags {
  std::string at;
  std::vector<std::string> flashes;
  std::vector<std::string> thunders;
  std::vector<std::string> counts;  // '18:03=20'
  bool json = false;
};

// The moment asked about is a day's, or of no day in particular.
Result<AskedAt> asked_at(const std::string& text) {
  if (const auto moment = care::environment::parse_moment(text)) return AskedAt{*moment, true};
  if (const auto time = parse_time_of_day(text)) return AskedAt{care::environment::moment_of(Date{}, *time), false};
  return Fault{FaultCode::kBadDate, {"", 0, 0, "--at"}, quote(text), "a time such as 18:07 or 2026-07-14T18:07", {}};
}

Result<Moment> event_moment(const char* flag, const std::string& text, const AskedAt& at) {
  const auto time = parse_time_of_day(text);
  if (time) return care::environment::nearest(*time, at.now);
  const auto moment = care::environment::parse_moment(text, true);
  if (moment && at.day_known) return *moment;
  return Fault{FaultCode::kBadDate,
               {"", 0, 0, flag},
               quote(text),
               at.day_known ? "a time such as 18:06 or 2026-07-14T18:06" : "a time such as 18:06, as of --at",
               {}};
}

class EventReader {
 public:
  explicit EventReader(const AskedAt& at) : at_(at) {}

  void single(const char* flag, const std::vector<std::string>& texts, LightningSign sign) {
    for (const std::string& text : texts) keep(event_moment(flag, text, at_), sign, {});
  }

  void counted(const std::vector<std::string>& texts) {
    constexpr const char* kFlag = "--flash-to-thunder";
    for (const std::string& text : texts) {
      const std::size_t equals = text.find('=');
      const std::optional<Seconds> seconds =
          equals == std::string::npos ? std::nullopt : count(text.substr(equals + 1));
      if (seconds) {
        keep(event_moment(kFlag, text.substr(0, equals), at_), LightningSign::kFlashToThunder, seconds);
        continue;
      }
      faults_.push_back({FaultCode::kOutOfRange,
                         {"", 0, 0, kFlag},
                         quote(text),
                         "when the thunder was heard and the seconds counted, 0 to " +
                             std::to_string(care::environment::kLongestThunderCountSeconds) + ", such as 18:03=20",
                         {}});
    }
  }

  [[nodiscard]] const LightningClock& clock() const { return clock_; }
  [[nodiscard]] const Faults& faults() const { return faults_; }

 private:
  const AskedAt& at_;
  LightningClock clock_;
  Faults faults_;

  static std::optional<Seconds> count(const std::string& digits) {
    const bool whole =
        !digits.empty() && digits.size() <= 3 && digits.find_first_not_of("0123456789") == std::string::npos;
    if (!whole || std::stoi(digits) > care::environment::kLongestThunderCountSeconds) return {};
    return Seconds(std::stoi(digits));
  }

  void keep(const Result<Moment>& moment, LightningSign sign, std::optional<Seconds> seconds) {
    if (moment) clock_ = told(clock_, LightningEvent{moment.value(), sign, seconds});
    if (!moment) faults_.insert(faults_.end(), moment.faults().begin(), moment.faults().end());
  }
};

int lightning(const LightningFlags& flags) {
  const auto at = asked_at(flags.at);
  if (!at) return report(at.faults());
  EventReader events(at.value());
  events.single("--flash", flags.flashes, LightningSign::kFlash);
  events.single("--thunder", flags.thunders, LightningSign::kThunder);
  events.counted(flags.counts);
  if (!events.faults().empty()) return report(events.faults());
  const auto verdict = care::environment::judge_lightning(events.clock(), at.value().now);
  return show_topic(lightning_answer(verdict, at.value()), verdict.change, at.value(), flags.json);
}

}  // namespace

void add_lightning_command(CLI::App& care, int& exit_status) {
  CLI::App* command = care.add_subcommand("lightning", "in or out: half an hour after the last flash or thunder");
  const auto flags = std::make_shared<LightningFlags>();
  command->add_option("--at", flags->at, "the moment asked about, such as 18:07")->required();
  command->add_option("--flash", flags->flashes, "when a flash was seen; may be given again and again");
  command->add_option("--thunder", flags->thunders, "when thunder was heard; may be given again and again");
  command->add_option("--flash-to-thunder", flags->counts,
                      "when thunder was heard, and the seconds since its flash: 18:03=20");
  command->add_flag("--json", flags->json, "the answer as JSON (schema/weather-answer.schema.json)");
  command->callback([flags, &exit_status] { exit_status = lightning(*flags); });
}

}  // namespace lanework::cli
