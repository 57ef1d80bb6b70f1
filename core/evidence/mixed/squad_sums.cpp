#include "core/evidence/mixed/squad_sums.h"

namespace lanework::evidence {

void sum_squads(const SquadRows& rows, const std::vector<double>& coefficients, std::size_t first, std::size_t end,
                SquadSums& out) {
  const auto squads = static_cast<Eigen::Index>(end - first);
  const auto columns = static_cast<Eigen::Index>(rows.columns());
  out.expected.resize(squads);
  out.design.resize(columns, squads);
  out.squares.resize(columns * (columns + 1) / 2, squads);
  SquadRows::Room room = rows.room();
  std::vector<double> means(rows.most_rows());
  for (std::size_t squad = first; squad < end; ++squad) {
    const auto at = static_cast<Eigen::Index>(squad - first);
    rows.log_means(squad, coefficients, means.data(), room);
    out.expected(at) = exponentials({means.data(), rows.rows(squad)}, 0);
    rows.weigh(squad, means.data(), out.expected(at), out.design.col(at).data(), room);
    rows.weigh_squares(squad, means.data(), out.design.col(at).data(), out.squares.col(at).data(), room);
  }
  out.design.rowwise() /= out.expected.transpose();
  out.squares.rowwise() /= out.expected.transpose();
}

Eigen::ArrayXd expected_events(const SquadRows& rows, const std::vector<double>& coefficients) {
  Eigen::ArrayXd out(static_cast<Eigen::Index>(rows.squads()));
  SquadRows::Room room = rows.room();
  std::vector<double> means(rows.most_rows());
  for (std::size_t squad = 0; squad < rows.squads(); ++squad) {
    rows.log_means(squad, coefficients, means.data(), room);
    out(static_cast<Eigen::Index>(squad)) = exponentials({means.data(), rows.rows(squad)}, 0);
  }
  return out;
}

}  // namespace lanework::evidence
