#include "core/evidence/mixed/build_frame.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <unordered_map>
#include <unordered_set>

namespace lanework::evidence {
namespace {

constexpr double kMostHoursARow = 1e7;
constexpr std::int64_t kMostEvents = 1'000'000;  // in a row: work and memory grow with the largest

class Building {
 public:
  Building(const DataTable& table, const ModelWanted& wanted) : table_(table), wanted_(wanted) {}

  Result<BuiltFrame> build() {
    check_names();
    read_counts();
    if (faults_.empty()) read_terms();
    if (faults_.empty() && kept_.empty()) fault(wanted_.hours, "--hours", "no row with hours", "a row with hours");
    if (faults_.empty()) order_rows();
    if (!faults_.empty()) return std::move(faults_);
    fill();
    return std::move(out_);
  }

 private:
  const DataTable& table_;
  const ModelWanted& wanted_;
  Faults faults_;
  BuiltFrame out_;
  std::vector<std::int64_t> events_;
  std::vector<double> hours_;
  std::vector<std::size_t> kept_;            // rows with hours
  std::vector<std::vector<double>> values_;  // [design column][row of the table]
  std::vector<std::size_t> order_;           // rows of the table in the frame's order

  void fault(const std::string& column, std::string_view asked_by, std::string found, std::string expected,
             std::string hint = {}) {
    faults_.push_back({FaultCode::kContradiction,
                       {table_.file, 0, 0, column.empty() ? std::string(asked_by) : column},
                       std::move(found),
                       std::move(expected),
                       std::move(hint)});
  }

  template <class T>
  std::optional<T> taken(Result<T> result) {
    if (result) return std::move(result).value();
    faults_.insert(faults_.end(), result.faults().begin(), result.faults().end());
    return {};
  }

  void check_names() {
    std::vector<std::string> used = {wanted_.events, wanted_.hours};
    if (!wanted_.squad.empty()) used.push_back(wanted_.squad);
    if (!wanted_.club.empty()) used.push_back(wanted_.club);
    if (!wanted_.club.empty() && wanted_.squad.empty())
      fault({}, "--club", "clubs without squads", "the column of the squads too, as --random");
    for (const TermWanted& term : wanted_.terms) used.push_back(term.column);
    std::sort(used.begin(), used.end());
    const auto twice = std::adjacent_find(used.begin(), used.end());
    if (twice != used.end())
      fault({}, "--fixed", quote(*twice) + " for two purposes", "each column for one purpose only");
  }

  void read_counts() {
    const auto events = taken(find_column(table_, wanted_.events, "--outcome"));
    const auto hours = taken(find_column(table_, wanted_.hours, "--hours"));
    if (!events || !hours) return;
    auto counts = taken(counts_of(table_, *events, kMostEvents));
    auto numbers = taken(numbers_of(table_, *hours, {0, kMostHoursARow, "hours, 0 to 10 million"}));
    if (!counts || !numbers) return;
    events_ = std::move(*counts);
    hours_ = std::move(*numbers);
    for (std::size_t row = 0; row < table_.rows(); ++row) {
      if (hours_[row] > 0) {
        kept_.push_back(row);
        out_.hours += hours_[row];
      } else if (events_[row] == 0) {
        ++out_.rows_without_hours;
      } else {
        faults_.push_back({FaultCode::kContradiction,
                           {table_.file, table_.lines[row], 0, wanted_.hours},
                           std::to_string(events_[row]) + " events in 0 hours",
                           "hours above 0 where something happened",
                           {}});
      }
    }
  }

  void read_terms() {
    out_.frame.names = {"intercept"};
    values_.emplace_back(table_.rows(), 1.0);
    for (const TermWanted& term : wanted_.terms) {
      const auto column = taken(find_column(table_, term.column, flag_of(term.kind)));
      if (!column) continue;
      const std::size_t first = values_.size();
      FrameTerm made{term.kind, term.column, {}, first, 0, {}};
      if (term.kind == TermKind::kCategory) {
        add_category(term, *column, made);
      } else {
        add_number(term, *column, made);
      }
      made.count = values_.size() - first;
      out_.terms.push_back(std::move(made));
    }
    if (values_.size() > kMostColumns) {
      fault({}, "--category", std::to_string(values_.size()) + " columns in the model",
            "at most " + std::to_string(kMostColumns));
    }
  }

  static std::string_view flag_of(TermKind kind) {
    if (kind == TermKind::kCategory) return "--category";
    return kind == TermKind::kCurve ? "--curve" : "--fixed";
  }

  void add_number(const TermWanted& term, std::size_t column, FrameTerm& made) {
    constexpr double kMost = 1e12;
    auto read = numbers_of(table_, column, {-kMost, kMost, "a number"});
    if (!read && term.kind == TermKind::kNumber) {
      Faults with_hint = read.faults();
      with_hint.front().hint = "a column of names is given as --category";
      faults_.insert(faults_.end(), with_hint.begin(), with_hint.end());
      return;
    }
    auto numbers = taken(std::move(read));
    if (!numbers) return;
    if (term.kind == TermKind::kNumber) {
      out_.frame.names.push_back(term.column);
      values_.push_back(std::move(*numbers));
      return;
    }
    std::vector<double> kept;
    for (const std::size_t row : kept_) kept.push_back((*numbers)[row]);
    if (kept.empty()) return;
    NaturalSpline curve(kept, term.degrees);
    if (!curve.has_knots()) {
      fault(term.column, "--curve", "too few different values for " + std::to_string(term.degrees) + " degrees",
            "fewer degrees, or --fixed");
      return;
    }
    add_curve(curve, *numbers, term.column);
    made.curve = std::move(curve);
  }

  void add_curve(const NaturalSpline& curve, const std::vector<double>& numbers, const std::string& column) {
    const std::size_t first = values_.size();
    std::vector<double> row(curve.columns());
    for (std::size_t c = 0; c < curve.columns(); ++c) {
      out_.frame.names.push_back(column + ", curve " + std::to_string(c + 1));
      values_.emplace_back(table_.rows());
    }
    for (std::size_t i = 0; i < table_.rows(); ++i) {
      curve.row(numbers[i], row.data());
      for (std::size_t c = 0; c < curve.columns(); ++c) values_[first + c][i] = row[c];
    }
  }

  // Shorter names first, so that U9 stands before U11.
  std::vector<std::string> levels_of(const std::vector<std::string>& cells) const {
    std::unordered_set<std::string> seen;
    for (const std::size_t row : kept_) seen.insert(cells[row]);
    std::vector<std::string> out(seen.begin(), seen.end());
    std::sort(out.begin(), out.end(), [](const std::string& a, const std::string& b) {
      return a.size() != b.size() ? a.size() < b.size() : a < b;
    });
    return out;
  }

  void add_category(const TermWanted& term, std::size_t column, FrameTerm& made) {
    const auto cells = taken(names_of(table_, column));
    if (!cells) return;
    const std::vector<std::string> levels = levels_of(*cells);
    std::unordered_map<std::string, std::size_t> place;
    for (std::size_t level = 0; level < levels.size(); ++level) place.emplace(levels[level], level);
    std::vector<double> hours(levels.size(), 0);
    for (const std::size_t row : kept_) hours[place.at((*cells)[row])] += hours_[row];
    if (levels.empty()) return;
    if (levels.size() < 2 || levels.size() > kMostCategories) {
      fault(term.column, "--category", std::to_string(levels.size()) + " different names in the column",
            "2 to " + std::to_string(kMostCategories));
      return;
    }
    auto reference = static_cast<std::size_t>(std::max_element(hours.begin(), hours.end()) - hours.begin());
    if (!term.reference.empty()) {
      const auto named = place.find(term.reference);
      if (named == place.end()) {
        fault(term.column, "--category", quote(term.reference) + " as the reference",
              "a name that stands in the column, such as " + quote(levels[reference]));
        return;
      }
      reference = named->second;
    }
    made.reference = levels[reference];
    add_levels(*cells, levels, place, reference, term.column);
  }

  void add_levels(const std::vector<std::string>& cells, const std::vector<std::string>& levels,
                  const std::unordered_map<std::string, std::size_t>& place, std::size_t reference,
                  const std::string& column) {
    const std::size_t first = values_.size();
    for (std::size_t level = 0; level < levels.size(); ++level) {
      if (level == reference) continue;
      out_.frame.names.push_back(column + ": " + levels[level]);
      values_.emplace_back(table_.rows(), 0.0);
    }
    for (const std::size_t row : kept_) {
      const std::size_t level = place.at(cells[row]);
      if (level != reference) values_[first + level - (level > reference ? 1 : 0)][row] = 1;
    }
  }

  // Rows of one squad together, and squads of one club; both in the order of the file.
  void order_rows() {
    if (wanted_.squad.empty()) {
      order_ = kept_;
      out_.frame.squad_ends = {order_.size()};
      return;
    }
    const auto squad_column = taken(find_column(table_, wanted_.squad, "--random"));
    const auto squads = squad_column ? taken(names_of(table_, *squad_column)) : std::nullopt;
    std::optional<std::vector<std::string>> clubs;
    if (!wanted_.club.empty()) {
      const auto club_column = taken(find_column(table_, wanted_.club, "--club"));
      if (club_column) clubs = taken(names_of(table_, *club_column));
    }
    if (!squads || (!wanted_.club.empty() && !clubs)) return;
    const std::vector<std::size_t> club_of = clubs ? groups(*clubs, out_.clubs) : std::vector<std::size_t>();
    std::vector<std::string> keys;
    for (const std::size_t row : kept_) keys.push_back(clubs ? (*clubs)[row] + '\n' + (*squads)[row] : (*squads)[row]);
    std::vector<std::string> found;
    const std::vector<std::size_t> squad_of = groups_of(keys, found);
    std::vector<std::size_t> club_of_squad(found.size(), 0);
    for (std::size_t k = 0; k < kept_.size() && clubs; ++k) club_of_squad[squad_of[k]] = club_of[k];
    lay_out(squad_of, club_of_squad, found);
  }

  // By kept row: which group it belongs to, groups in the order they appear.
  std::vector<std::size_t> groups(const std::vector<std::string>& cells, std::vector<std::string>& names) const {
    std::vector<std::string> kept;
    for (const std::size_t row : kept_) kept.push_back(cells[row]);
    return groups_of(kept, names);
  }
  static std::vector<std::size_t> groups_of(const std::vector<std::string>& keys, std::vector<std::string>& names) {
    std::unordered_map<std::string_view, std::size_t> place;
    std::vector<std::size_t> out;
    for (const std::string& key : keys) {
      const auto [at, is_new] = place.emplace(key, names.size());
      if (is_new) names.push_back(key);
      out.push_back(at->second);
    }
    return out;
  }

  void lay_out(const std::vector<std::size_t>& squad_of, const std::vector<std::size_t>& club_of_squad,
               const std::vector<std::string>& keys) {
    std::vector<std::size_t> squads(keys.size());
    for (std::size_t s = 0; s < squads.size(); ++s) squads[s] = s;
    std::stable_sort(squads.begin(), squads.end(),
                     [&](std::size_t a, std::size_t b) { return club_of_squad[a] < club_of_squad[b]; });
    std::vector<std::vector<std::size_t>> rows(keys.size());
    for (std::size_t k = 0; k < kept_.size(); ++k) rows[squad_of[k]].push_back(kept_[k]);
    for (std::size_t i = 0; i < squads.size(); ++i) {
      const std::size_t squad = squads[i];
      order_.insert(order_.end(), rows[squad].begin(), rows[squad].end());
      out_.frame.squad_ends.push_back(order_.size());
      const std::size_t bar = keys[squad].find('\n');
      out_.squads.push_back(bar == std::string::npos ? keys[squad] : keys[squad].substr(bar + 1));
      const bool last_of_club = i + 1 == squads.size() || club_of_squad[squad] != club_of_squad[squads[i + 1]];
      if (!out_.clubs.empty() && last_of_club) out_.frame.club_ends.push_back(i + 1);
    }
  }

  void fill() {
    Frame& frame = out_.frame;
    frame.design.reserve(order_.size() * values_.size());
    for (const std::size_t row : order_) {
      for (const std::vector<double>& column : values_) frame.design.push_back(column[row]);
      frame.log_hours.push_back(std::log(hours_[row]));
      frame.events.push_back(static_cast<double>(events_[row]));
    }
  }
};

}  // namespace

Result<BuiltFrame> build_frame(const DataTable& table, const ModelWanted& wanted) {
  return Building(table, wanted).build();
}

}  // namespace lanework::evidence
