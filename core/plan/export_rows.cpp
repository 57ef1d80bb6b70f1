#include "core/plan/export_rows.h"

#include <algorithm>

#include "core/integer_program/table_builder.h"
#include "core/plan/constants.h"

namespace lanework::plan {
namespace {

using integer_program::kNoUpper;
using integer_program::kOne;
using integer_program::Row;
using integer_program::Sense;
using integer_program::Term;

constexpr int kNothingYet = catalogue::kFormations;  // as a formation: nothing taken so far
constexpr std::size_t kUncovered = 0;
constexpr std::size_t kShortfall = 1;
constexpr std::size_t kChanges = 2;
constexpr std::size_t kPreference = 3;

// What is in each formation after a drill: the columns whose sum is 1 there, 0 elsewhere.
using Layer = std::array<std::vector<int>, catalogue::kFormations + 1>;

std::string formation_letter(int formation) {
  if (formation == kNothingYet) return "none";
  return std::string(catalogue::word(catalogue::formation_words(), static_cast<catalogue::Formation>(formation)));
}

class SessionTable {
 public:
  explicit SessionTable(const Problem& problem) : problem_(problem) {
    clock_.name = "clock";
    clock_.sense = Sense::kAtMost;
    clock_.bound = problem.budget;
    some_.name = "some";
    some_.sense = Sense::kAtLeast;
  }

  ExportTable build() {
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) add_options(i);
    before_[kNothingYet] = {kOne};
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) add_flow(i);
    add_objectives();
    // Σ x - one >= 0 rather than Σ x >= 1: never an empty row, and right when there is no option at all.
    some_.terms.insert(some_.terms.begin(), {kOne, -1});
    builder_.add_row(std::move(some_));
    builder_.add_row(std::move(clock_), true);
    add_ceilings();
    for (std::size_t g = 0; g < problem_.groups.size(); ++g) add_credit(g);
    for (std::size_t f = 0; f < problem_.families.size(); ++f) add_cover(f);
    table_.columns = builder_.take_columns();
    table_.rows = builder_.take_rows();
    return std::move(table_);
  }

 private:
  const Problem& problem_;
  ExportTable table_;
  integer_program::TableBuilder builder_;
  Row clock_;
  Row some_;
  Layer before_;  // the layer before the next drill

  // Columns x[i,o] with their share of the clock, and the rows (once) or (pin).
  void add_options(std::size_t i) {
    const ProblemDrill& drill = problem_.drills[i];
    const std::string name = std::to_string(i);
    Row once{(drill.pinned ? "pin" : "once") + name, drill.pinned ? Sense::kEqual : Sense::kAtMost, 0, {}};
    once.terms.push_back({kOne, -1});
    std::vector<int>& columns = table_.option_columns.emplace_back();
    for (std::size_t o = 0; o < drill.options.size(); ++o) {
      const int x = builder_.add_column({"x" + name + "_" + std::to_string(o), true, 0, 1});
      columns.push_back(x);
      once.terms.push_back({x, 1});
      some_.terms.push_back({x, 1});
      clock_.terms.push_back({x, drill.options[o].seconds});
    }
    if (drill.pinned || !columns.empty()) builder_.add_row(std::move(once));
  }

  // Columns w[i,a] and k[i,a] and the rows (take) and (flow). A drill without options changes nothing.
  void add_flow(std::size_t i) {
    const ProblemDrill& drill = problem_.drills[i];
    if (drill.options.empty()) return;
    const auto formation = static_cast<std::size_t>(drill.formation);
    Row take{"take" + std::to_string(i), Sense::kEqual, 0, {}};
    for (const int x : table_.option_columns[i]) take.terms.push_back({x, -1});
    Layer after;
    for (int a = 0; a <= kNothingYet; ++a) {
      const auto from = static_cast<std::size_t>(a);
      if (before_[from].empty()) continue;
      const std::string name = std::to_string(i) + "_" + formation_letter(a);
      const int w = builder_.add_column({"w" + name, false, 0, 1});
      const int k = builder_.add_column({"k" + name, false, 0, 1});
      take.terms.push_back({w, 1});
      const int change = a == kNothingYet ? 0 : problem_.change[from][formation];
      if (change != 0) clock_.terms.push_back({w, change});
      Row flow{"flow" + name, Sense::kEqual, 0, {{w, 1}, {k, 1}}};
      for (const int column : before_[from]) flow.terms.push_back({column, -1});
      builder_.add_row(std::move(flow));
      after[formation].push_back(w);
      after[from].push_back(k);
    }
    builder_.add_row(std::move(take));
    before_ = std::move(after);
  }

  // Levels (changes) and (preference): a drill left out costs left_out, that is left_out of 'one' less as
  // much for each of its options.
  void add_objectives() {
    std::int64_t all_left_out = 0;
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) {
      const ProblemDrill& drill = problem_.drills[i];
      all_left_out += drill.left_out;
      for (std::size_t o = 0; o < drill.options.size(); ++o) {
        const int x = table_.option_columns[i][o];
        add_cost(kChanges, x, drill.options[o].changes - drill.left_out);
        add_cost(kPreference, x, drill.options[o].preference);
      }
    }
    add_cost(kChanges, kOne, all_left_out);
  }

  void add_cost(std::size_t level, int column, std::int64_t cost) {
    if (cost != 0) table_.objectives[level].push_back({column, cost});
  }

  void add_ceilings() {
    for (std::size_t l = 0; l < kLoads; ++l) {
      Row row{"ceiling" + std::to_string(l), Sense::kAtMost, problem_.ceiling[l], {}};
      for (std::size_t i = 0; i < problem_.drills.size(); ++i) {
        for (std::size_t o = 0; o < problem_.drills[i].options.size(); ++o) {
          const int load = problem_.drills[i].options[o].loads[l];
          if (load != 0) row.terms.push_back({table_.option_columns[i][o], load});
        }
      }
      builder_.add_row(std::move(row), problem_.ceiling[l] < 0);
    }
  }

  void add_credit(std::size_t g) {
    const Group& group = problem_.groups[g];
    if (group.target <= 0 || group.weight == 0) return;
    const std::string name = std::to_string(g);
    const int half = group.target / 2;
    Row row{"credit" + name, Sense::kAtLeast, group.target, {}};
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) {
      if (problem_.drills[i].group != static_cast<int>(g)) continue;
      for (std::size_t o = 0; o < problem_.drills[i].options.size(); ++o) {
        row.terms.push_back({table_.option_columns[i][o], problem_.drills[i].options[o].credits});
      }
    }
    if (half > 0) {
      const int first = builder_.add_column({"s" + name + "_first", false, 0, half});
      row.terms.push_back({first, 1});
      add_cost(kShortfall, first, group.weight);
    }
    const int second = builder_.add_column({"s" + name + "_second", false, 0, kNoUpper});
    row.terms.push_back({second, 1});
    add_cost(kShortfall, second, kSecondHalfCounts * group.weight);
    builder_.add_row(std::move(row));
  }

  void add_cover(std::size_t f) {
    const FamilyDemand& family = problem_.families[f];
    if (!family.required) return;
    const int u = builder_.add_column({"u" + std::to_string(f), false, 0, 1});
    Row row{"cover" + std::to_string(f), Sense::kAtLeast, 1, {{u, 1}}};
    for (std::size_t i = 0; i < problem_.drills.size(); ++i) {
      const bool of_family =
          std::find(family.groups.begin(), family.groups.end(), problem_.drills[i].group) != family.groups.end();
      if (!of_family) continue;
      for (const int x : table_.option_columns[i]) row.terms.push_back({x, 1});
    }
    add_cost(kUncovered, u, 1);
    builder_.add_row(std::move(row));
  }
};

}  // namespace

std::int64_t level_of(const Objective& objective, int level) {
  const std::array<std::int64_t, kLevels> values = {objective.uncovered, objective.shortfall, objective.changes,
                                                    objective.preference};
  return values[static_cast<std::size_t>(level)];
}

ExportTable export_table(const Problem& problem) { return SessionTable(problem).build(); }

integer_program::Program level_program(const ExportTable& table, int level, const Objective& optimum) {
  const std::string number = std::to_string(level + 1);
  integer_program::Program program{"session_level" + number, "session, level " + number, table.columns,
                                   table.objectives[static_cast<std::size_t>(level)], table.rows};
  for (int earlier = 0; earlier < level; ++earlier) {
    std::vector<Term> terms = table.objectives[static_cast<std::size_t>(earlier)];
    if (terms.empty()) continue;  // always 0
    integer_program::sort_by_column(terms);
    program.rows.push_back(
        {"level" + std::to_string(earlier + 1), Sense::kEqual, level_of(optimum, earlier), std::move(terms)});
  }
  return program;
}

LevelTexts export_levels(const Problem& problem, const Objective& optimum, const std::string& ending,
                         std::string (*write)(const integer_program::Program&)) {
  const ExportTable table = export_table(problem);
  LevelTexts out;
  for (int level = 0; level < kLevels; ++level) {
    out.emplace_back(".level" + std::to_string(level + 1) + ending, write(level_program(table, level, optimum)));
  }
  return out;
}

Choice choice_from_columns(const ExportTable& table, const std::vector<double>& values) {
  Choice choice;
  for (const std::vector<int>& columns : table.option_columns) {
    choice.push_back(-1);
    for (std::size_t o = 0; o < columns.size(); ++o) {
      if (values[static_cast<std::size_t>(columns[o])] > 0.5) choice.back() = static_cast<int>(o);
    }
  }
  return choice;
}

}  // namespace lanework::plan
