// The least value of a convex function that is known by its value and slope at one point after another: a proximal
// bundle method. Every point is the least of the highest of the lines met so far, plus the squared distance from the
// best point; a new best point is taken where the fall is a fair share of what the lines foretold.
//
// Work a round: lines x coordinates, times the few exchanges of weight that the small quadratic problem takes.
// Source: Lemarechal C (1975), Kiwiel KC (1990), doi 10.1007/BF01585731 (proximity control; both from memory).
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace lanework::block {

class Bundle {
 public:
  // scale: by coordinate, how far it moves for a like share of its range. Coordinates from first_bounded on stay at 0
  // or above.
  Bundle(std::vector<double> start, std::vector<double> scale, std::size_t first_bounded);

  // A line that the function is known to lie above, before anything was added. It counts as a round.
  void know(double at_zero, std::span<const float> slope);
  // Where the function is to be looked at next; at first the start.
  [[nodiscard]] const std::vector<double>& next() const { return trial_; }
  // What was found there. 'aim': a value that the function is not thought to fall below; it sets the first step, unless
  // one is given.
  void add(double value, const std::vector<double>& slope, double aim);
  void set_step(double step) { step_ = step; }
  [[nodiscard]] double step() const { return step_; }
  // How much lower the lines allow the function to be, near the best point: small once there is little to gain.
  [[nodiscard]] double foretold_fall() const { return foretold_; }
  // The share of each line in the last step, oldest first: how its point counts in the mean that balances the slopes.
  // Lines that were let go are in none.
  struct Share {
    std::size_t round;
    double share;
  };
  [[nodiscard]] std::vector<Share> shares() const;
  // The last point's line at the origin; its slope is what was added.
  [[nodiscard]] double last_at_zero() const { return lines_.back().at_zero; }

 private:
  struct Line {
    double at_zero = 0;  // value at the origin
    double share = 0;
    std::size_t round = 0;
    bool mean = false;  // of lines that were let go
  };
  std::vector<double> scale_;  // squared
  std::size_t first_bounded_;
  std::vector<double> best_;
  double best_value_ = 0;
  std::vector<double> trial_;
  std::vector<double> mean_slope_;
  std::vector<Line> lines_;
  std::vector<double> slopes_;  // [coordinate][line]: rows of one length, so that all lines go through memory at once
  std::vector<double> values_;  // of the lines at the trial point
  double step_ = 0;
  double foretold_ = 0;
  int rounds_without_ = 0;
  std::size_t rounds_ = 0;
  bool started_ = false;

  [[nodiscard]] double slope(std::size_t i, std::size_t k) const;
  void add_line(const Line& line, const std::vector<double>& slope);
  void take_step();
  void make_room();
  void set_trial();
  void move_trial(std::size_t high, std::size_t low, double moved);
  bool exchange();
};

}  // namespace lanework::block
