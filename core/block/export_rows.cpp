#include "core/block/export_rows.h"

#include <algorithm>
#include <string>

#include "core/integer_program/table_builder.h"

namespace lanework::block {
namespace {

using integer_program::kOne;
using integer_program::Row;
using integer_program::Sense;
using integer_program::Term;

constexpr std::size_t kNothingYet = catalogue::kFormations;  // as a formation: nothing taken so far
constexpr std::size_t kHardLoads = 2;                        // contacts and eccentric work make a session hard

// Columns whose sum is 1 where a session stands in a formation, 0 elsewhere.
using Layer = std::array<std::vector<int>, catalogue::kFormations + 1>;

std::string formation_word(std::size_t formation) {
  if (formation == kNothingYet) return "none";
  return std::string(catalogue::word(catalogue::formation_words(), static_cast<catalogue::Formation>(formation)));
}

std::string numbered(const char* name, std::size_t number) { return name + std::to_string(number); }
std::string numbered(const char* name, std::size_t first, std::size_t second) {
  return numbered(name, first) + '_' + std::to_string(second);
}

class BlockTable {
 public:
  explicit BlockTable(const Problem& problem) : p_(problem), come_in_(static_cast<std::size_t>(problem.spells)) {}

  ExportTable build() {
    for (std::size_t p = 0; p < come_in_.size(); ++p) add_set(p);
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) add_session(s);
    for (std::size_t w = 0; w < p_.weeks.size(); ++w) add_week(w);
    add_close_pairs();
    add_first_uses();
    set_costs();
    table_.program.name = "block";
    table_.program.title = "block";
    table_.program.columns = builder_.take_columns();
    table_.program.rows = builder_.take_rows();
    return std::move(table_);
  }

 private:
  const Problem& p_;
  ExportTable table_;
  integer_program::TableBuilder builder_;
  std::vector<std::vector<int>> come_in_;  // [spell]: columns that are 1 where a drill comes in
  std::vector<Points> costs_;              // by column, as far as there are any

  [[nodiscard]] const Kind& kind_of(std::size_t s) const {
    return p_.kinds[static_cast<std::size_t>(p_.sessions[s].kind)];
  }
  [[nodiscard]] std::size_t family_of(std::size_t d) const {
    return static_cast<std::size_t>(p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family);
  }

  void add_cost(int column, Points cost) {
    const auto at = static_cast<std::size_t>(column);
    if (costs_.size() <= at) costs_.resize(at + 1, 0);
    costs_[at] += cost;
  }

  void set_costs() {
    for (std::size_t c = 0; c < costs_.size(); ++c) {
      if (costs_[c] != 0) table_.program.objective.push_back({static_cast<int>(c), costs_[c]});
    }
  }

  // Columns m[p,d] and c[p,d] and the rows (size), (swaps) and (fresh).
  void add_set(std::size_t p) {
    std::vector<Row> sizes;
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      sizes.push_back({numbered("size", p, f), Sense::kEqual, p_.families[f].drills, {}});
    }
    std::vector<int>& members = table_.member_columns.emplace_back();
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      members.push_back(builder_.add_column({numbered("m", p, d), true, must_be(p_.drills[d], p) ? 1 : 0, 1}));
      sizes[family_of(d)].terms.push_back({members.back(), 1});
    }
    for (std::size_t f = 0; f < sizes.size(); ++f) {
      builder_.add_row(std::move(sizes[f]), p_.families[f].drills != 0);
    }
    for (std::size_t d = 0; d < p_.drills.size(); ++d) add_coming_in(p, d);
    const int most = most_swaps_of(p_, p);
    Row swaps{numbered("swaps", p), Sense::kAtMost, most, {}};
    Row fresh{numbered("fresh", p), Sense::kAtLeast, p_.least_swaps, {}};
    for (const int column : come_in_[p]) {
      add_cost(column, p_.swap);
      swaps.terms.push_back({column, 1});
      fresh.terms.push_back({column, 1});
    }
    builder_.add_row(std::move(swaps), most < 0);
    if (p > 0 && p_.least_swaps > 0) builder_.add_row(std::move(fresh), true);
  }

  // Into the first spell comes what is not of the set that stands now; later c = 1 exactly where m goes from 0 to 1.
  void add_coming_in(std::size_t p, std::size_t d) {
    const int now = table_.member_columns[p][d];
    if (p == 0) {
      if (!p_.drills[d].current) come_in_[p].push_back(now);
      return;
    }
    const int then = table_.member_columns[p - 1][d];
    const int c = builder_.add_column({numbered("c", p, d), false, 0, 1});
    builder_.add_row({numbered("enter", p, d), Sense::kAtLeast, 0, {{c, 1}, {now, -1}, {then, 1}}});
    builder_.add_row({numbered("not_after", p, d), Sense::kAtMost, 0, {{c, 1}, {now, -1}}});
    builder_.add_row({numbered("not_before", p, d), Sense::kAtMost, 1, {{c, 1}, {then, 1}}});
    come_in_[p].push_back(c);
  }

  void add_session(std::size_t s) {
    Row clock{numbered("clock", s), Sense::kAtMost, p_.sessions[s].budget, {}};
    add_options(s, clock);
    add_flow(s, clock);
    builder_.add_row(std::move(clock), p_.sessions[s].budget < 0);
    for (std::size_t l = 0; l < kLoads; ++l) {
      Row row{numbered("ceiling", s, l), Sense::kAtMost, p_.sessions[s].ceiling[l], load_terms(s, l)};
      builder_.add_row(std::move(row), p_.sessions[s].ceiling[l] < 0);
    }
    for (std::size_t f = 0; f < p_.families.size(); ++f) add_cover(s, f);
  }

  // Columns x[s,d,o] and the rows (member). A drill of the set that is open and left out costs m - Σ x times left_out.
  void add_options(std::size_t s, Row& clock) {
    const auto spell = static_cast<std::size_t>(p_.sessions[s].spell);
    std::vector<std::vector<int>>& of_drill = table_.option_columns.emplace_back(p_.drills.size());
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      const std::vector<Option>& options = kind_of(s).options[d];
      if (options.empty()) continue;
      const int m = table_.member_columns[spell][d];
      add_cost(m, p_.drills[d].left_out);
      Row member{numbered("member", s, d), Sense::kAtMost, 0, {{m, -1}}};
      for (std::size_t o = 0; o < options.size(); ++o) {
        const int x = builder_.add_column({numbered("x", s, d) + '_' + std::to_string(o), true, 0, 1});
        of_drill[d].push_back(x);
        member.terms.push_back({x, 1});
        if (options[o].steps != 0) clock.terms.push_back({x, options[o].steps});
        add_cost(x, options[o].departure - p_.drills[d].left_out);
      }
      builder_.add_row(std::move(member));
    }
  }

  // Columns w[s,d,a] and k[s,d,a] and the rows (take) and (flow), drill after drill in canonical order.
  void add_flow(std::size_t s, Row& clock) {
    Layer at;
    at[kNothingYet] = {kOne};
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      if (!table_.option_columns[s][d].empty()) at = flow_past(s, d, at, clock);
    }
  }

  Layer flow_past(std::size_t s, std::size_t d, const Layer& before, Row& clock) {
    const auto to = static_cast<std::size_t>(p_.drills[d].formation);
    Row take{numbered("take", s, d), Sense::kEqual, 0, minus(table_.option_columns[s][d])};
    Layer after;
    for (std::size_t from = 0; from <= kNothingYet; ++from) {
      if (before[from].empty()) continue;
      const std::string where = std::to_string(s) + '_' + std::to_string(d) + '_' + formation_word(from);
      const int w = builder_.add_column({"w" + where, false, 0, 1});
      const int k = builder_.add_column({"k" + where, false, 0, 1});
      after[to].push_back(w);
      after[from].push_back(k);
      take.terms.push_back({w, 1});
      const int change = from == kNothingYet ? 0 : kind_of(s).change[from][to];
      if (change != 0) clock.terms.push_back({w, change});
      Row flow{"flow" + where, Sense::kEqual, 0, minus(before[from])};
      flow.terms.insert(flow.terms.end(), {{w, 1}, {k, 1}});
      builder_.add_row(std::move(flow));
    }
    builder_.add_row(std::move(take));
    return after;
  }

  static std::vector<Term> minus(const std::vector<int>& columns) {
    std::vector<Term> terms;
    for (const int column : columns) terms.push_back({column, -1});
    return terms;
  }

  // What 'amount' of an option makes of the columns of a session, without zeros.
  template <class Amount>
  void add_terms(std::vector<Term>& terms, std::size_t s, const Amount& amount) const {
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      for (std::size_t o = 0; o < table_.option_columns[s][d].size(); ++o) {
        const int coefficient = amount(d, kind_of(s).options[d][o]);
        if (coefficient != 0) terms.push_back({table_.option_columns[s][d][o], coefficient});
      }
    }
  }

  [[nodiscard]] std::vector<Term> load_terms(std::size_t s, std::size_t l) const {
    std::vector<Term> terms;
    add_terms(terms, s, [l](std::size_t, const Option& option) { return option.loads[l]; });
    return terms;
  }

  void add_cover(std::size_t s, std::size_t f) {
    if (!p_.families[f].required) return;
    const int u = builder_.add_column({numbered("u", s, f), false, 0, 1});
    add_cost(u, p_.uncovered);
    Row row{numbered("cover", s, f), Sense::kAtLeast, 1, {{u, 1}}};
    add_terms(row.terms, s, [&](std::size_t d, const Option&) { return family_of(d) == f ? 1 : 0; });
    builder_.add_row(std::move(row));
  }

  void add_week(std::size_t w) {
    for (std::size_t l = 0; l < kLoads; ++l) {
      Row row{numbered("week", w, l), Sense::kAtMost, p_.weeks[w].ceiling[l], {}};
      for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
        if (p_.sessions[s].week != static_cast<int>(w)) continue;
        const std::vector<Term> terms = load_terms(s, l);
        row.terms.insert(row.terms.end(), terms.begin(), terms.end());
      }
      builder_.add_row(std::move(row), p_.weeks[w].ceiling[l] < 0);
    }
    for (std::size_t f = 0; f < p_.families.size(); ++f) add_credit(w, f);
  }

  // Columns a[w,f], credits up to the target, and b[w,f], from there to half as much again: a earns more, so it
  // is filled first.
  void add_credit(std::size_t w, std::size_t f) {
    const Family& family = p_.families[f];
    const int target = p_.weeks[w].target[f];
    if (family.weight == 0 || target <= 0) return;
    Row row{numbered("credit", w, f), Sense::kAtMost, p_.weeks[w].fixed[f], {}};
    add_piece(row, numbered("a", w, f), target, family.weight * kFullPoints);
    if (const int beyond = counted_beyond(target); beyond > 0)
      add_piece(row, numbered("b", w, f), beyond, family.weight * kLessPoints);
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
      if (p_.sessions[s].week != static_cast<int>(w)) continue;
      add_terms(row.terms, s,
                [&](std::size_t d, const Option& option) { return family_of(d) == f ? -option.credits : 0; });
    }
    builder_.add_row(std::move(row));
  }

  void add_piece(Row& row, const std::string& name, int upper, Points worth) {
    const int column = builder_.add_column({name, false, 0, upper});
    row.terms.push_back({column, 1});
    add_cost(column, -worth);
  }

  // Columns h[s] and the rows (light) and (apart).
  void add_close_pairs() {
    std::vector<int> flags(p_.sessions.size(), -1);
    for (std::size_t pair = 0; pair < p_.close.size(); ++pair) {
      Row apart{numbered("apart", pair), Sense::kAtMost, 1, {}};
      for (const int session : {p_.close[pair].first, p_.close[pair].second}) {
        const auto s = static_cast<std::size_t>(session);
        if (flags[s] < 0) flags[s] = add_flag(s);
        apart.terms.push_back({flags[s], 1});
      }
      builder_.add_row(std::move(apart));
    }
  }

  // A session with h = 0 keeps its loads of 'hard', with h = 1 its ceilings. Where a ceiling is no higher there is
  // nothing to say.
  int add_flag(std::size_t s) {
    const Session& session = p_.sessions[s];
    const int h = builder_.add_column({numbered("h", s), true, 0, 1});
    for (std::size_t l = 0; l < kHardLoads; ++l) {
      const int above = session.ceiling[l] - session.hard[l];
      if (above <= 0) continue;
      Row row{numbered("light", s, l), Sense::kAtMost, session.hard[l], load_terms(s, l)};
      if (row.terms.empty()) continue;
      row.terms.push_back({h, -above});
      builder_.add_row(std::move(row));
    }
    return h;
  }

  // Columns n[s,d] of drills never done, the rows (begun) and (first), and the limits on new ones.
  void add_first_uses() {
    std::vector<Row> in_session;
    std::vector<Row> in_week;
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
      in_session.push_back({numbered("fresh_session", s), Sense::kAtMost, p_.most_new_in_session, {}});
    }
    for (std::size_t w = 0; w < p_.weeks.size(); ++w) {
      in_week.push_back({numbered("fresh_week", w), Sense::kAtMost, p_.most_new_in_week - p_.weeks[w].begun, {}});
    }
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      if (!p_.drills[d].unknown) continue;
      std::vector<Term> begun;  // the drill's n so far
      for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
        if (table_.option_columns[s][d].empty()) continue;
        const int n = add_first_use(s, d, begun);
        in_session[s].terms.push_back({n, 1});
        in_week[static_cast<std::size_t>(p_.sessions[s].week)].terms.push_back({n, 1});
      }
    }
    for (Row& row : in_session) builder_.add_row(std::move(row));
    for (Row& row : in_week) builder_.add_row(std::move(row));
  }

  // A drill that is used has begun by then, and it begins only where it is used: so n is 1 at its first use.
  int add_first_use(std::size_t s, std::size_t d, std::vector<Term>& begun) {
    const int n = builder_.add_column({numbered("n", s, d), false, 0, 1});
    begun.push_back({n, 1});
    const std::vector<Term> used = minus(table_.option_columns[s][d]);
    Row row{numbered("begun", s, d), Sense::kAtLeast, 0, begun};
    row.terms.insert(row.terms.end(), used.begin(), used.end());
    builder_.add_row(std::move(row));
    Row first{numbered("first", s, d), Sense::kAtMost, 0, used};
    first.terms.push_back({n, 1});
    builder_.add_row(std::move(first));
    return n;
  }
};

}  // namespace

ExportTable export_table(const Problem& problem) { return BlockTable(problem).build(); }

Plan plan_from_columns(const ExportTable& table, const std::vector<double>& values) {
  const auto is_one = [&](int column) { return values[static_cast<std::size_t>(column)] > 0.5; };
  Plan plan;
  for (const std::vector<int>& members : table.member_columns) {
    std::vector<char>& set = plan.sets.emplace_back();
    for (const int m : members) set.push_back(is_one(m) ? 1 : 0);
  }
  for (const std::vector<std::vector<int>>& drills : table.option_columns) {
    std::vector<int>& choice = plan.choice.emplace_back();
    for (const std::vector<int>& columns : drills) {
      const auto one = std::find_if(columns.begin(), columns.end(), is_one);
      choice.push_back(one == columns.end() ? -1 : static_cast<int>(one - columns.begin()));
    }
  }
  return plan;
}

}  // namespace lanework::block
