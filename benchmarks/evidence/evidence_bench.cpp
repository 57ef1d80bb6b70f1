// Models of counts over a union of 200 clubs with 4,000 squads and 40 weeks, against R's glmmTMB on the same rows, one
// thread each and loading apart; and against the exponentials that a fit cannot do without.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>

#include "benchmarks/evidence/r_peer.h"
#include "benchmarks/evidence/simulated_union.h"
#include "benchmarks/plan/timing.h"
#include "core/evidence/mixed/nb2_fit.h"
#include "core/evidence/mixed/poisson_fit.h"

namespace lanework::bench {
namespace {

using evidence::Frame;

struct Fitted {
  std::vector<double> coefficients;
  int evaluations = 0;
  double rows_visited = 0;
  bool converged = false;
};

struct Model {
  const char* name;
  double times_faster_aim;
  std::function<Fitted(const SimulatedUnion&)> fit;
};

Frame without_clubs(const SimulatedUnion& made) {
  Frame out = made.frame;
  out.club_ends.clear();
  return out;
}
Frame uneven(const SimulatedUnion& made) {
  Frame out = without_clubs(made);
  out.events = made.uneven_events;
  return out;
}

template <class Fit>
Fitted as_fitted(const Fit& fit) {
  return {fit.coefficients, fit.judged.evaluations, static_cast<double>(fit.judged.rows_visited), fit.judged.converged};
}

struct Timed {
  Fitted fitted;
  double seconds = 0;
};

Timed timed(const Model& model, const SimulatedUnion& made, int runs) {
  Timed out;
  out.seconds = median_seconds(runs, [&] { out.fitted = model.fit(made); });
  return out;
}

// The library's own exponential of so many numbers, log rates as they are met.
double bare_exponentials(const Frame& frame, double count) {
  std::vector<double> at(frame.rows());
  for (std::size_t row = 0; row < frame.rows(); ++row) at[row] = frame.log_hours[row] - 5.5 - 0.1 * frame.events[row];
  double sum = 0;
  const double once = median_seconds(9, [&] {
    for (const double x : at) sum += std::exp(x);
  });
  if (sum < 0) std::printf("%g", sum);  // so that it is not left out
  return count / static_cast<double>(frame.rows()) * once;
}

double largest_difference(const std::vector<double>& ours, const std::vector<double>& theirs) {
  double most = ours.size() == theirs.size() ? 0 : INFINITY;
  for (std::size_t i = 0; i < std::min(ours.size(), theirs.size()); ++i)
    most = std::max(most, std::abs(ours[i] - theirs[i]));
  return most;
}

void print_growth(const std::vector<Model>& models) {
  std::printf("\nGrowth, processor seconds of one thread (and times the seconds a row of the smallest):\n");
  for (const Model& model : models) {
    double first = 0;
    std::printf("  %-8s", model.name);
    for (const std::size_t clubs : {std::size_t{2}, std::size_t{20}, std::size_t{200}}) {
      const SimulatedUnion made = simulate_union(clubs, 20, 40);
      const double seconds = timed(model, made, 5).seconds;
      const double a_row = seconds / static_cast<double>(made.frame.rows());
      if (first == 0) first = a_row;
      std::printf("  %zu rows %.4f s (%.2f)", made.frame.rows(), seconds, a_row / first);
    }
    std::printf("\n");
  }
}

bool run() {
  // Frames are copied outside of what is timed.
  const SimulatedUnion made = simulate_union(200, 20, 40);
  const Frame flat = without_clubs(made);
  const Frame rough = uneven(made);
  const std::vector<Model> whole = {
      {"poisson", 100, [&](const SimulatedUnion&) { return as_fitted(evidence::fit_poisson(flat, 1)); }},
      {"nested", 100, [&](const SimulatedUnion&) { return as_fitted(evidence::fit_poisson(made.frame, 1)); }},
      {"nb2", 500, [&](const SimulatedUnion&) { return as_fitted(evidence::fit_nb2(rough)); }}};
  std::printf("flags     %s\nrows      %zu, %zu squads, %zu clubs, %zu columns\n\n", LANEWORK_FLAGS, made.frame.rows(),
              made.frame.squads(), made.frame.club_ends.size(), made.frame.columns());
  const std::vector<PeerFit> peers = fits_by_r(made);
  if (peers.empty()) std::printf("R with glmmTMB is not there: no peer\n");
  bool met = !peers.empty();
  for (const Model& model : whole) {
    const Timed ours = timed(model, made, 7);
    // Its own: an exponential for each row that it went through. A trial with derivatives by difference needed 37.
    const double own = bare_exponentials(made.frame, ours.fitted.rows_visited);
    const double trial = bare_exponentials(made.frame, 37 * static_cast<double>(made.frame.rows()));
    std::printf(
        "%-8s  %.4f s with errors, %d evaluations, %.1f exponentials a row, %s\n"
        "          %.2f times those bare, aim 2: %s; %.2f times 37 a row\n",
        model.name, ours.seconds, ours.fitted.evaluations,
        ours.fitted.rows_visited / static_cast<double>(made.frame.rows()),
        ours.fitted.converged ? "converged" : "NOT CONVERGED", ours.seconds / own,
        ours.seconds <= 2 * own ? "met" : "MISSED", ours.seconds / trial);
    for (const PeerFit& peer : peers) {
      if (peer.model != model.name) continue;
      const double faster = peer.seconds / ours.seconds;
      const double apart = largest_difference(ours.fitted.coefficients, peer.coefficients);
      std::printf("          glmmTMB %.1f s: %.0f times, aim %.0f: %s; coefficients at most %.1e apart\n", peer.seconds,
                  faster, model.times_faster_aim, faster >= model.times_faster_aim ? "met" : "MISSED", apart);
      met = met && apart < 1e-3;
    }
  }
  print_growth(
      {{"poisson", 0, [](const SimulatedUnion& m) { return as_fitted(evidence::fit_poisson(without_clubs(m), 1)); }},
       {"nested", 0, [](const SimulatedUnion& m) { return as_fitted(evidence::fit_poisson(m.frame, 1)); }},
       {"nb2", 0, [](const SimulatedUnion& m) { return as_fitted(evidence::fit_nb2(uneven(m))); }}});
  return met;
}

}  // namespace
}  // namespace lanework::bench

int main() { return lanework::bench::run() ? 0 : 1; }
