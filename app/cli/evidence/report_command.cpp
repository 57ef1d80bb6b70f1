#include <CLI/CLI.hpp>
#include <cstdio>
#include <filesystem>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/season_report.h"
#include "app/read/files.h"
#include "app/report/bundle.h"
#include "app/report/page.h"

namespace lanework::cli {
namespace {

namespace fs = std::filesystem;

struct ReportFlags {
  SeasonFlags season;
  std::string out;
  std::string club;
  std::string reader = "lead";
  std::string language = language_tag(Language::kEnglish);
  double usual_per_1000_h = 0;
  double level_percent = 95;
};

std::string claims_text(const std::vector<findings::Claim>& claims) {
  std::string out;
  for (const findings::Claim& claim : claims)
    if (findings::is_for_summary(claim)) out += claim.sentence + "\n";
  return out;
}

int make_report(const ReportFlags& flags) {
  const findings::Reader reader = flags.reader == "board" ? findings::Reader::kBoard : findings::Reader::kLead;
  SeasonFlags season = flags.season;
  season.language = language_with_tag(flags.language).value_or(Language::kEnglish);
  const Speaker speaker(season.language);
  const std::string club = flags.club.empty() ? speaker.say(Words{"The club", "El club"}) : flags.club;
  const auto made = season_report({season, club, reader, flags.usual_per_1000_h, flags.level_percent});
  if (!made) return report(made.faults());
  const SeasonReport& told = made.value();
  const std::string path = (fs::path(flags.out) / "report.html").string();
  std::error_code failed;
  fs::create_directories(flags.out, failed);
  if (const auto fault = read::write_file_atomically(path, report::to_html(told.page, report::chart_bundle())))
    return report({*fault});
  if (!told.what_went.empty()) std::printf("%s\n", told.what_went.c_str());
  std::printf("%s%s\n%s\n", claims_text(told.claims).c_str(),
              told.left_out.empty() ? "" : (told.left_out + "\n").c_str(),
              speaker.say({"Written: {}", "Escrito: {}"}, path).c_str());
  return kDone;
}

}  // namespace

void add_report_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command = evidence.add_subcommand("report", "a season's report: one page to open, show and print");
  const auto flags = std::make_shared<ReportFlags>();
  add_season_flags(*command, flags->season);
  add_season_ledger(*command, flags->season);
  command->add_option("--out", flags->out, "folder that report.html is written into")->required();
  command->add_option("--club", flags->club, "the club's name");
  command->add_option("--language", flags->language, "of the report: en, or es")->check(CLI::IsMember({"en", "es"}));
  command->add_option("--reader", flags->reader, "lead, or board: without squads, and without counts of fewer than 5")
      ->check(CLI::IsMember({"lead", "board"}));
  command
      ->add_option("--usual", flags->usual_per_1000_h,
                   "injuries in 1000 hours in other seasons, to watch weeks against")
      ->check(CLI::Range(1e-3, 1000.0));
  command->add_option("--level", flags->level_percent, "how sure the limits are to be, per cent (95)")
      ->check(CLI::Range(50.0, 99.99));
  command->callback([flags, &exit_status] { exit_status = make_report(*flags); });
}

}  // namespace lanework::cli
