#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/fit_answer.h"
#include "app/cli/evidence/table_file.h"
#include "core/evidence/mixed/estimable.h"

namespace lanework::cli {
namespace {

struct FitFlags {
  EvidenceFlags common;
  std::string data;
  evidence::ModelWanted wanted;
  std::vector<std::string> numbers;
  std::vector<std::string> categories;
  std::vector<std::string> curves;
  std::string family = "poisson";
  int points = 1;
  bool effects = false;
};

// 'column' or 'column=rest'.
std::pair<std::string, std::string> cut_at_equals(const std::string& text) {
  const std::size_t at = text.find('=');
  if (at == std::string::npos) return {text, {}};
  return {text.substr(0, at), text.substr(at + 1)};
}

Result<std::vector<evidence::TermWanted>> terms_of(const FitFlags& flags) {
  std::vector<evidence::TermWanted> out;
  for (const std::string& name : flags.numbers) out.push_back({evidence::TermKind::kNumber, name, {}, 0});
  for (const std::string& text : flags.categories) {
    const auto [column, reference] = cut_at_equals(text);
    out.push_back({evidence::TermKind::kCategory, column, reference, 0});
  }
  for (const std::string& text : flags.curves) {
    const auto [column, degrees] = cut_at_equals(text);
    const bool number = degrees.size() <= 2 && degrees.find_first_not_of("0123456789") == std::string::npos;
    const int wanted = degrees.empty() ? 4 : number ? std::stoi(degrees) : 0;
    if (wanted < 2 || wanted > evidence::kMostCurveDegrees)
      return Fault{FaultCode::kOutOfRange,
                   {"", 0, 0, "--curve"},
                   quote(degrees),
                   "degrees of freedom from 2 to " + std::to_string(evidence::kMostCurveDegrees) + ", as in week=4",
                   {}};
    out.push_back({evidence::TermKind::kCurve, column, {}, wanted});
  }
  return out;
}

std::optional<Fault> contradiction(const FitFlags& flags) {
  const auto fault = [](const char* flag, const char* found, const char* expected) {
    return Fault{FaultCode::kContradiction, {"", 0, 0, flag}, found, expected, {}};
  };
  const bool clubs = !flags.wanted.club.empty();
  if (clubs && flags.family != "poisson")
    return fault("--club", "with --family nb2", "--family poisson; squads within clubs are fitted for that only");
  if (flags.points > 1 && clubs)
    return fault("--quadrature", "with --club", "1; of two effects at once the sum over points is not made");
  if (flags.points > 1 && (flags.family != "poisson" || flags.wanted.squad.empty()))
    return fault("--quadrature", "without --family poisson and --random", "1");
  return {};
}

Result<EvidenceAnswer> fit(FitFlags flags) {
  if (const auto fault = contradiction(flags)) return *fault;
  auto terms = terms_of(flags);
  if (!terms) return terms.faults();
  flags.wanted.terms = std::move(terms).value();
  const auto table = table_file(flags.data);
  if (!table) return table.faults();
  const auto built = evidence::build_frame(table.value(), flags.wanted);
  if (!built) return built.faults();
  const double level = flags.common.level();
  const bool squads_differ = !flags.wanted.squad.empty();
  if (const auto why = evidence::why_not_estimable(built.value().frame, squads_differ))
    return cannot("fit", level, evidence::in_words(*why));
  const auto family =
      flags.family == "nb2" ? evidence::CountFamily::kNegativeBinomial : evidence::CountFamily::kPoisson;
  const evidence::CountModel model = evidence::fit_model(built.value(), {family, squads_differ, flags.points, level});
  return fit_answer(built.value(), model, flags.effects);
}

}  // namespace

void add_fit_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command = evidence.add_subcommand("fit", "a model of counts: what goes with more or fewer events");
  const auto flags = std::make_shared<FitFlags>();
  command->add_option("--data", flags->data, "a table, one row a squad and week or the like")->required();
  command->add_option("--outcome", flags->wanted.events, "the column of events")->required();
  command->add_option("--hours", flags->wanted.hours, "the column of player-hours")->required();
  command->add_option("--fixed", flags->numbers, "columns of numbers that may bear on the rate")->delimiter(',');
  command->add_option("--category", flags->categories, "columns of names, each against a reference, as in age=U11")
      ->delimiter(',');
  command->add_option("--curve", flags->curves, "columns of numbers along a smooth curve, as in week=4")
      ->delimiter(',');
  command->add_option("--random", flags->wanted.squad, "the column of squads, which may differ by themselves");
  command->add_option("--club", flags->wanted.club, "the column of clubs that squads belong to");
  command->add_option("--family", flags->family, "poisson, or nb2 for counts that vary more than by chance")
      ->check(CLI::IsMember({"poisson", "nb2"}));
  command->add_option("--quadrature", flags->points, "points for the squads' effects; 1 is Laplace's method")
      ->check(CLI::Range(1, 50));
  command->add_flag("--effects", flags->effects, "each squad's own effect too");
  add_evidence_flags(*command, flags->common);
  command->callback([flags, &exit_status] { exit_status = show(fit(*flags), flags->common.json); });
}

}  // namespace lanework::cli
