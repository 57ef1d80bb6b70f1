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

std::string in_words(const Frame& frame, const std::vector<Eigen::Index>& columns, std::size_t from) {
  std::string out;
  for (std::size_t i = from; i < columns.size(); ++i) {
    if (i > from) out += i + 1 == columns.size() ? " and " : ", ";
    out += "'" + frame.names[static_cast<std::size_t>(columns[i])] + "'";
  }
  return out;
}

std::optional<std::string> collinear(const Frame& frame, const Columns& columns) {
  const std::vector<Eigen::Index> dependent = dependent_columns(columns.squares([](std::size_t) { return 1.0; }));
  if (dependent.empty()) return {};
  const std::string name = in_words(frame, {dependent.front()}, 0);
  if (dependent.size() == 1) return name + " is 0 in every row; leave it out";
  if (dependent.size() == 2 && dependent[1] == 0) return name + " is the same in every row; leave it out";
  return name + " says nothing that " + in_words(frame, dependent, 1) +
         " do not say already, so that their effects cannot be told apart; leave one of them out";
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

std::optional<std::string> separated(const Frame& frame, const Columns& columns) {
  const Matrix with_events = columns.squares([&](std::size_t row) { return frame.events[row] > 0 ? 1.0 : 0.0; });
  if (dependent_columns(with_events).empty()) return {};
  const std::optional<Vector> sum = separating_sum(frame, columns, silent_sums(with_events));
  if (!sum) return {};
  std::vector<Eigen::Index> named;
  for (Eigen::Index c = 1; c < sum->size(); ++c)
    if (std::abs((*sum)(c)) > 1e-4 * sum->cwiseAbs().maxCoeff()) named.push_back(c);
  if (named.empty()) return {};
  const bool one = named.size() == 1;
  return "every event lies on one side of " + in_words(frame, named, 0) + ", so that " +
         (one ? "its effect has" : "their effects have") + " no finite best value; join categories, or leave " +
         (one ? "it out" : "one of them out");
}

}  // namespace

std::optional<std::string> why_not_estimable(const Frame& frame, bool squads_differ) {
  const bool any = std::any_of(frame.events.begin(), frame.events.end(), [](double y) { return y > 0; });
  if (!any) return "no event at all was counted; 'lanework evidence rate' gives the most that the rate may be";
  if (frame.rows() <= frame.columns())
    return std::to_string(frame.rows()) + " rows for " + std::to_string(frame.columns()) +
           " coefficients; take fewer columns";
  if (squads_differ && frame.squads() < 2)
    return "one squad only, so that nothing is seen of how squads differ; leave out --random";
  if (!frame.club_ends.empty() && frame.club_ends.size() < 2)
    return "one club only, so that nothing is seen of how clubs differ; leave out --club";
  const Columns columns(frame);
  if (auto why = collinear(frame, columns)) return why;
  return separated(frame, columns);
}

}  // namespace lanework::evidence
