#include "core/findings/warm_up_model.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "core/base/random.h"
#include "core/evidence/mixed/estimable.h"
#include "core/findings/averted.h"
#include "core/findings/reach.h"

namespace lanework::findings {
namespace {

using evidence::TermKind;

// Counts that vary so many standard errors more than the model has it are fitted as negative binomial: own judgement.
constexpr double kMuchDispersion = 3;
constexpr std::array<double, 7> kCurveAt = {0, 0.5, 1, 1.5, 2, 2.5, 3};

struct Rows {
  evidence::DataTable table;
  std::vector<double> warm_ups;
  int unknown = 0;
};

double hours_of(const records::WeekTable& weeks, std::size_t squad, std::size_t week, records::Setting setting) {
  return static_cast<double>(weeks.at(squad, week, setting).hours.count) / 60;
}

std::string cell(double value) {
  char text[40];
  std::snprintf(text, sizeof text, "%.17g", value);
  return text;
}

// What people read of the model where it cannot be fitted.
constexpr Words kWarmUpsColumn{"warm_ups", "calentamientos"};

// One row a squad and week with hours: squad, age, warm_ups, match_share, week, hours, events.
Rows squad_weeks(const records::Season& season, const records::WeekTable& weeks, const std::string& warm_ups_column) {
  Rows out;
  out.table.names = {"squad", "age", warm_ups_column, "match_share", "week", "hours", "events"};
  out.table.column.resize(out.table.names.size());
  std::vector<int> events(season.squads.size() * weeks.weeks(), 0);
  for (const records::InjuryEvent& event : records::events_of(season.injuries)) {
    const records::InjuryRecord& first = season.injuries[event.diagnoses.front()];
    ++events[first.squad * weeks.weeks() + static_cast<std::size_t>(records::week_of(season.period, first.date))];
  }
  for (std::size_t squad = 0; squad < season.squads.size(); ++squad) {
    for (std::size_t week = 0; week < weeks.weeks(); ++week) {
      const double match = hours_of(weeks, squad, week, records::Setting::kMatch);
      const double hours = match + hours_of(weeks, squad, week, records::Setting::kTraining);
      if (hours <= 0) continue;
      const std::optional<double> warm_ups = warm_ups_lately(weeks, squad, week);
      if (!warm_ups) {
        ++out.unknown;
        continue;
      }
      const std::string& age = season.squads[squad].age_band;
      const std::vector<std::string> row = {season.squads[squad].id,
                                            age.empty() ? "not known" : age,
                                            cell(*warm_ups),
                                            cell(match / hours),
                                            std::to_string(week + 1),
                                            cell(hours),
                                            std::to_string(events[squad * weeks.weeks() + week])};
      for (std::size_t c = 0; c < row.size(); ++c) out.table.column[c].push_back(row[c]);
      out.table.lines.push_back(0);
      out.warm_ups.push_back(*warm_ups);
    }
  }
  return out;
}

bool has_two(const std::vector<std::string>& column) {
  return std::any_of(column.begin(), column.end(), [&](const std::string& one) { return one != column.front(); });
}

struct Candidate {
  evidence::TermWanted term;
  Words words;
};

// What else may bear on the rate; each is left out where these rows cannot tell it apart.
std::vector<Candidate> candidates(const Rows& rows) {
  std::vector<Candidate> out;
  if (has_two(rows.table.column[1]))
    out.push_back({{TermKind::kCategory, "age", {}, 0}, {"age bands", "las categorías de edad"}});
  out.push_back(
      {{TermKind::kNumber, "match_share", {}, 0}, {"the share of match hours", "la proporción de horas de partido"}});
  const std::set<std::string> weeks(rows.table.column[4].begin(), rows.table.column[4].end());
  if (weeks.size() >= 8)
    out.push_back({{TermKind::kCurve, "week", {}, 4}, {"the time of the season", "el momento de la temporada"}});
  return out;
}

struct Fitted {
  evidence::BuiltFrame built;
  evidence::CountModel model;
};

class Fitting {
 public:
  Fitting(const Rows& rows, double level, const Speaker& speaker) : rows_(rows), level_(level), speaker_(speaker) {}

  // The warm-ups as a number or as a curve, and all of the candidates that can be estimated beside them.
  std::optional<Fitted> fit(const evidence::TermWanted& warm_ups, WarmUpModel& out) {
    evidence::ModelWanted wanted{"events", "hours", "squad", {}, {warm_ups}};
    if (!estimable(wanted)) {
      out.why_not = why_;
      return {};
    }
    out.left_out.clear();
    for (const Candidate& candidate : candidates(rows_)) {
      wanted.terms.push_back(candidate.term);
      if (estimable(wanted)) continue;
      wanted.terms.pop_back();
      out.left_out.push_back(speaker_.say(candidate.words));
    }
    auto built = evidence::build_frame(rows_.table, wanted);
    evidence::ModelAsked asked{evidence::CountFamily::kPoisson, true, 1, level_};
    evidence::CountModel model = evidence::fit_model(built.value(), asked);
    if (model.dispersion_errors > kMuchDispersion) {
      asked.family = evidence::CountFamily::kNegativeBinomial;
      model = evidence::fit_model(built.value(), asked);
    }
    return Fitted{std::move(built).value(), std::move(model)};
  }

 private:
  const Rows& rows_;
  double level_;
  Speaker speaker_;
  std::string why_;

  bool estimable(const evidence::ModelWanted& wanted) {
    const auto built = evidence::build_frame(rows_.table, wanted);
    if (!built) {
      why_ = speaker_.say(
          Words{"these weeks do not make the rows of a model", "estas semanas no dan las filas de un modelo"});
      return false;
    }
    const auto why = evidence::why_not_estimable(built.value().frame, true, speaker_.language());
    // What to do about it is advice for who asks for a model by hand.
    if (why) why_ = why->why;
    return !why;
  }
};

}  // namespace

WarmUpModel warm_up_model(const records::Season& season, const records::WeekTable& weeks, double level,
                          Language language) {
  const Speaker speaker(language);
  const std::string column = speaker.say(kWarmUpsColumn);
  const Rows rows = squad_weeks(season, weeks, column);
  WarmUpModel out;
  out.rows_unknown = rows.unknown;
  out.rows = static_cast<int>(rows.table.rows());
  if (rows.table.rows() == 0) {
    out.why_not =
        speaker.say(Words{"of no week is it known both how many hours there were and whether warm-ups were done",
                          "de ninguna semana se sabe a la vez cuántas horas hubo y si se hizo el calentamiento"});
    return out;
  }
  Fitting fitting(rows, level, speaker);
  const std::optional<Fitted> fitted = fitting.fit({TermKind::kNumber, column, {}, 0}, out);
  if (!fitted) return out;
  const evidence::CountModel& model = fitted->model;
  if (!model.judged.converged) {
    out.why_not =
        speaker.say(Words{"the fit does not come to an end on these rows", "el ajuste no converge con estas filas"});
    return out;
  }
  out.negative_binomial = model.asked.family == evidence::CountFamily::kNegativeBinomial;
  out.hours = fitted->built.hours;
  for (const double events : fitted->built.frame.events) out.events += static_cast<int>(events);
  double weighted = 0;
  for (std::size_t row = 0; row < fitted->built.frame.rows(); ++row)
    weighted += std::exp(fitted->built.frame.log_hours[row]) *
                fitted->built.frame.design[row * fitted->built.frame.columns() + 1];
  out.mean_warm_ups = weighted / out.hours;
  const evidence::CoefficientFound& effect = model.coefficients[1];
  out.times = std::exp(effect.estimate);
  out.limits = {std::exp(effect.limits.low), std::exp(effect.limits.high)};
  out.p = effect.p;
  out.squads = model.squads;
  out.averted = averted(fitted->built.frame, model, 1, level);
  const double most = *std::max_element(rows.warm_ups.begin(), rows.warm_ups.end());
  std::vector<double> at;
  for (const double value : kCurveAt)
    if (value <= most) at.push_back(value);
  out.curve = evidence::term_curve(model, fitted->built.terms.front(), at, 0);
  return out;
}

}  // namespace lanework::findings
