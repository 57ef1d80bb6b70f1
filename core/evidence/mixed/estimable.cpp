#include "core/evidence/mixed/estimable.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <vector>

namespace lanework::evidence {
namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

// A column whose part that the columns before it cannot make is smaller than this share of it is a sum of them.
constexpr double kNothingNew = 1e-9;
constexpr double kNothingLeft = 1e-7;
constexpr Eigen::Index kRoundsARow = 3;

class Columns {
 public:
  explicit Columns(const Frame& frame) : frame_(frame), scale_(static_cast<Eigen::Index>(frame.columns())) {
    const auto count = static_cast<Eigen::Index>(frame.columns());
    for (Eigen::Index c = 0; c < count; ++c) {
      double most = 0;
      for (std::size_t row = 0; row < frame.rows(); ++row) most = std::max(most, std::abs(cell(row, c)));
      scale_(c) = most > 0 ? most : 1;
    }
  }

  // Of the rows that 'weight' gives more than 0, columns scaled to at most 1.
  template <class Weight>
  [[nodiscard]] Matrix squares(const Weight& weight) const {
    const Eigen::Index count = scale_.size();
    Matrix out = Matrix::Zero(count, count);
    for (std::size_t row = 0; row < frame_.rows(); ++row) {
      const double w = weight(row);
      if (w == 0) continue;
      const Vector x = scaled_row(row);
      out.selfadjointView<Eigen::Lower>().rankUpdate(x, w);
    }
    return out.selfadjointView<Eigen::Lower>();
  }

  [[nodiscard]] Vector scaled_row(std::size_t row) const {
    const Eigen::Map<const Vector> x(frame_.design.data() + row * frame_.columns(), scale_.size());
    return x.cwiseQuotient(scale_);
  }

 private:
  const Frame& frame_;
  Vector scale_;

  [[nodiscard]] double cell(std::size_t row, Eigen::Index c) const {
    return frame_.design[row * frame_.columns() + static_cast<std::size_t>(c)];
  }
};

// The first column that is a sum of those before it, and which of them; empty where there is none.
std::vector<Eigen::Index> dependent_columns(const Matrix& squares) {
  for (Eigen::Index c = 0; c < squares.cols(); ++c) {
    const double own = squares(c, c);
    Vector shares = Vector::Zero(c);
    double left = own;
    if (c > 0) {
      const Vector with = squares.col(c).head(c);
      shares = squares.topLeftCorner(c, c).ldlt().solve(with);
      left = own - with.dot(shares);
    }
    if (left > kNothingNew * std::max(own, 1e-300) && own > 0) continue;
    std::vector<Eigen::Index> out = {c};
    for (Eigen::Index before = 0; before < c; ++before)
      if (std::abs(shares(before)) > 1e-6) out.push_back(before);
    return out;
  }
  return {};
}

std::string names_of(const Frame& frame, const std::vector<Eigen::Index>& columns, std::size_t from,
                     const Speaker& speaker) {
  std::vector<std::string> out;
  for (std::size_t i = from; i < columns.size(); ++i)
    out.push_back("'" + frame.names[static_cast<std::size_t>(columns[i])] + "'");
  return speaker.list(out);
}

std::optional<WhyNot> collinear(const Frame& frame, const Columns& columns, const Speaker& speaker) {
  const std::vector<Eigen::Index> dependent = dependent_columns(columns.squares([](std::size_t) { return 1.0; }));
  if (dependent.empty()) return {};
  const std::string name = names_of(frame, {dependent.front()}, 0, speaker);
  const std::string leave_it_out = speaker.say(Words{"leave it out", "déjela fuera"});
  if (dependent.size() == 1)
    return WhyNot{speaker.say({"{} is 0 in every row", "{} es 0 en todas las filas"}, name), leave_it_out};
  if (dependent.size() == 2 && dependent[1] == 0)
    return WhyNot{speaker.say({"{} is the same in every row", "{} es igual en todas las filas"}, name), leave_it_out};
  return WhyNot{speaker.say({"{} says nothing that {} do not say already, so that their effects cannot be told apart",
                             "{} no dice nada que no digan ya {}, así que sus efectos no se distinguen"},
                            name, names_of(frame, dependent, 1, speaker)),
                speaker.say(Words{"leave one of them out", "deje fuera una de ellas"})};
}

// What no event says anything of: sums of columns that are 0 in every row with events, a column each.
Matrix silent_sums(const Matrix& with_events) {
  const Eigen::SelfAdjointEigenSolver<Matrix> parts(with_events);
  const double most = parts.eigenvalues().maxCoeff();
  Eigen::Index count = 0;
  while (count < parts.eigenvalues().size() && parts.eigenvalues()(count) <= kNothingNew * most) ++count;
  return parts.eigenvectors().leftCols(count);
}

// Least squares without negative shares (Lawson and Hanson 1974, chapter 23, from memory): what is left of 'wanted'
// when the columns that 'directions' has as rows are added to it, each as often as helps, never less than not at all.
Vector left_over(const Matrix& directions, const Vector& wanted) {
  std::vector<Eigen::Index> passive;
  Vector shares = Vector::Zero(directions.rows());
  Vector left = wanted;
  const auto rounds = kRoundsARow * (directions.rows() + directions.cols());
  for (Eigen::Index round = 0; round < rounds; ++round) {
    Vector pull = -(directions * left);
    for (const Eigen::Index row : passive) pull(row) = 0;
    Eigen::Index next = 0;
    if (pull.size() == 0 || pull.maxCoeff(&next) <= kNothingNew * left.norm()) return left;
    passive.push_back(next);
    for (bool feasible = false; !feasible && !passive.empty();) {
      Matrix used(directions.cols(), static_cast<Eigen::Index>(passive.size()));
      for (std::size_t i = 0; i < passive.size(); ++i)
        used.col(static_cast<Eigen::Index>(i)) = directions.row(passive[i]).transpose();
      const Vector best = used.colPivHouseholderQr().solve(-wanted);
      double step = 1;
      for (std::size_t i = 0; i < passive.size(); ++i) {
        const double to = best(static_cast<Eigen::Index>(i));
        const double from = shares(passive[i]);
        if (to <= 0) step = std::min(step, from / (from - to));
      }
      feasible = best.minCoeff() > 0;
      std::vector<Eigen::Index> kept;
      for (std::size_t i = 0; i < passive.size(); ++i) {
        double& share = shares(passive[i]);
        share += step * (best(static_cast<Eigen::Index>(i)) - share);
        if (feasible || share > kNothingNew) {
          kept.push_back(passive[i]);
        } else {
          share = 0;
        }
      }
      passive = std::move(kept);
    }
    left = wanted + directions.transpose() * shares;
  }
  return left;
}

// The coefficients of a sum of columns that is 0 wherever there are events and above 0 in other rows only. By Stiemke's
// alternative there is one exactly where the rows without events, each counted at least once, cannot be added up to
// nothing; what is left of the best attempt is such a sum.
std::optional<Vector> separating_sum(const Frame& frame, const Columns& columns, const Matrix& silent) {
  std::vector<Vector> rows;
  for (std::size_t row = 0; row < frame.rows(); ++row) {
    if (frame.events[row] > 0) continue;
    Vector seen = silent.transpose() * columns.scaled_row(row);
    const double length = seen.norm();
    if (length > kNothingNew) rows.push_back(seen / length);
  }
  Matrix directions(static_cast<Eigen::Index>(rows.size()), silent.cols());
  for (std::size_t row = 0; row < rows.size(); ++row) directions.row(static_cast<Eigen::Index>(row)) = rows[row];
  if (rows.empty()) return {};
  const Vector left = left_over(directions, directions.colwise().sum().transpose());
  if (left.norm() <= kNothingLeft * static_cast<double>(rows.size())) return {};
  const Vector seen = directions * left.normalized();
  if (seen.minCoeff() < -kNothingLeft || seen.maxCoeff() <= kNothingLeft) return {};
  return silent * left;
}

std::optional<WhyNot> separated(const Frame& frame, const Columns& columns, const Speaker& speaker) {
  const Matrix with_events = columns.squares([&](std::size_t row) { return frame.events[row] > 0 ? 1.0 : 0.0; });
  if (dependent_columns(with_events).empty()) return {};
  const std::optional<Vector> sum = separating_sum(frame, columns, silent_sums(with_events));
  if (!sum) return {};
  std::vector<Eigen::Index> named;
  for (Eigen::Index c = 1; c < sum->size(); ++c)
    if (std::abs((*sum)(c)) > 1e-4 * sum->cwiseAbs().maxCoeff()) named.push_back(c);
  if (named.empty()) return {};
  const bool one = named.size() == 1;
  const Sentence<1> why =
      one ? Sentence<1>{"every event lies on one side of {}, so that its effect has no finite best value",
                        "todas las lesiones quedan a un lado de {}, así que su efecto no tiene un mejor valor finito"}
          : Sentence<1>{"every event lies on one side of {}, so that their effects have no finite best value",
                        "todas las lesiones quedan a un lado de {}, así que sus efectos no tienen un mejor valor "
                        "finito"};
  return WhyNot{speaker.say(why, names_of(frame, named, 0, speaker)),
                speaker.say(one ? Words{"join categories, or leave it out", "junte categorías, o déjela fuera"}
                                : Words{"join categories, or leave one of them out",
                                        "junte categorías, o deje fuera una de ellas"})};
}

}  // namespace

std::optional<WhyNot> why_not_estimable(const Frame& frame, bool squads_differ, Language language) {
  const Speaker speaker(language);
  const bool any = std::any_of(frame.events.begin(), frame.events.end(), [](double y) { return y > 0; });
  if (!any)
    return WhyNot{speaker.say(Words{"no event at all was counted", "no se contó ninguna lesión"}),
                  speaker.say(Words{"'lanework evidence rate' gives the most that the rate may be",
                                    "'lanework evidence rate' da lo más que puede ser la tasa"})};
  if (frame.rows() <= frame.columns())
    return WhyNot{
        speaker.say({"{} rows for {} coefficients", "{} filas para {} coeficientes"}, frame.rows(), frame.columns()),
        speaker.say(Words{"take fewer columns", "tome menos columnas"})};
  if (squads_differ && frame.squads() < 2)
    return WhyNot{speaker.say(Words{"one squad only, so that nothing is seen of how squads differ",
                                    "un solo equipo, así que no se ve en qué difieren los equipos"}),
                  speaker.say(Words{"leave out --random", "quite --random"})};
  if (!frame.club_ends.empty() && frame.club_ends.size() < 2)
    return WhyNot{speaker.say(Words{"one club only, so that nothing is seen of how clubs differ",
                                    "un solo club, así que no se ve en qué difieren los clubes"}),
                  speaker.say(Words{"leave out --club", "quite --club"})};
  const Columns columns(frame);
  if (auto why = collinear(frame, columns, speaker)) return why;
  return separated(frame, columns, speaker);
}

std::string in_words(const WhyNot& why) { return why.why + "; " + why.advice; }

}  // namespace lanework::evidence
