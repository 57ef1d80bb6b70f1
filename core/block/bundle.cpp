#include "core/block/bundle.h"

#include <algorithm>
#include <cassert>
#include <numeric>

namespace lanework::block {
namespace {

constexpr std::size_t kMostLines = 40;
constexpr std::size_t kRoom = kMostLines;  // a row of slopes
constexpr int kMostExchanges = 60;
// A fall of this share of what was foretold is worth moving for; of the larger share, the next steps are longer.
constexpr double kFairShare = 0.1;
constexpr double kLargeShare = 0.5;
constexpr double kLonger = 1.6;
constexpr double kShorter = 0.6;
constexpr int kPatience = 4;
// Lines as high as each other: to so many units, or to this share of the fall that they foretell.
constexpr double kEven = 1e-3;
constexpr double kEvenShare = 0.02;

double dot(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

// values += by * row, line for line.
void add_row(double* __restrict values, const double* __restrict row, double by) {
  for (std::size_t k = 0; k < kRoom; ++k) values[k] += by * row[k];
}

}  // namespace

Bundle::Bundle(std::vector<double> start, std::vector<double> scale, std::size_t first_bounded)
    : scale_(std::move(scale)), first_bounded_(first_bounded), best_(start), trial_(std::move(start)) {
  for (double& s : scale_) s *= s;
  mean_slope_.assign(best_.size(), 0);
  slopes_.assign(best_.size() * kRoom, 0);
  values_.assign(kRoom, 0);
}

double Bundle::slope(std::size_t i, std::size_t k) const { return slopes_[i * kRoom + k]; }

void Bundle::add_line(const Line& line, const std::vector<double>& slope) {
  for (std::size_t i = 0; i < slope.size(); ++i) slopes_[i * kRoom + lines_.size()] = slope[i];
  lines_.push_back(line);
}

void Bundle::know(double at_zero, std::span<const float> slope) {
  assert(!started_ && lines_.size() < kMostLines && slope.size() == best_.size());
  Line line;
  line.at_zero = at_zero;
  line.round = rounds_++;
  for (std::size_t i = 0; i < slope.size(); ++i) slopes_[i * kRoom + lines_.size()] = static_cast<double>(slope[i]);
  lines_.push_back(line);
}

void Bundle::add(double value, const std::vector<double>& slope, double aim) {
  Line line;
  line.at_zero = value - dot(slope, trial_);
  line.round = rounds_++;
  if (!started_) {
    started_ = true;
    double square = 0;
    for (std::size_t i = 0; i < slope.size(); ++i) square += scale_[i] * slope[i] * slope[i];
    if (step_ <= 0) step_ = std::max(value - aim, 1.0) / std::max(square, 1e-9);
    best_value_ = value;
    line.share = 1;
  } else {
    const double fall = best_value_ - value;
    if (fall >= kFairShare * foretold_) {
      best_ = trial_;
      best_value_ = value;
      if (fall >= kLargeShare * foretold_) step_ *= kLonger;
      rounds_without_ = 0;
    } else if (++rounds_without_ >= kPatience) {
      step_ *= kShorter;
      rounds_without_ = 0;
    }
  }
  if (lines_.size() == kMostLines) make_room();
  add_line(line, slope);
  take_step();
}

// The lines of least share give way to their mean, so that what they said together is kept.
void Bundle::make_room() {
  std::vector<std::size_t> order(lines_.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return lines_[a].share > lines_[b].share; });
  const std::size_t kept = kMostLines * 3 / 4;
  Line mean;
  mean.mean = true;
  for (std::size_t k = kept; k < order.size(); ++k) mean.share += lines_[order[k]].share;
  std::vector<double> mean_slope(best_.size(), 0);
  for (std::size_t k = kept; k < order.size() && mean.share > 0; ++k) {
    const double part = lines_[order[k]].share / mean.share;
    mean.at_zero += part * lines_[order[k]].at_zero;
    for (std::size_t i = 0; i < mean_slope.size(); ++i) mean_slope[i] += part * slope(i, order[k]);
  }
  std::vector<Line> lines;
  std::vector<double> row(kRoom);
  for (std::size_t k = 0; k < kept; ++k) lines.push_back(lines_[order[k]]);
  for (std::size_t i = 0; i < best_.size(); ++i) {
    std::fill(row.begin(), row.end(), 0);
    for (std::size_t k = 0; k < kept; ++k) row[k] = slope(i, order[k]);
    std::copy(row.begin(), row.end(), slopes_.begin() + static_cast<std::ptrdiff_t>(i * kRoom));
  }
  lines_ = std::move(lines);
  if (mean.share > 0) add_line(mean, mean_slope);
}

void Bundle::take_step() {
  set_trial();
  for (int k = 0; k < kMostExchanges && exchange(); ++k) {
  }
  double model = values_[0];
  for (std::size_t k = 1; k < lines_.size(); ++k) model = std::max(model, values_[k]);
  foretold_ = best_value_ - model;
}

// Best point, less a step along the mean slope; every line's value there.
void Bundle::set_trial() {
  std::fill(values_.begin(), values_.end(), 0);
  for (std::size_t k = 0; k < lines_.size(); ++k) values_[k] = lines_[k].at_zero;
  for (std::size_t i = 0; i < trial_.size(); ++i) {
    double mean = 0;
    for (std::size_t k = 0; k < lines_.size(); ++k) mean += lines_[k].share * slope(i, k);
    mean_slope_[i] = mean;
    trial_[i] = best_[i] - step_ * scale_[i] * mean;
    if (i >= first_bounded_) trial_[i] = std::max(0.0, trial_[i]);
    add_row(values_.data(), slopes_.data() + i * kRoom, trial_[i]);
  }
}

// So much of the weight goes from one line to another.
void Bundle::move_trial(std::size_t high, std::size_t low, double moved) {
  for (std::size_t i = 0; i < trial_.size(); ++i) {
    const double apart = slope(i, high) - slope(i, low);
    if (apart == 0) continue;
    mean_slope_[i] += moved * apart;
    double to = best_[i] - step_ * scale_[i] * mean_slope_[i];
    if (i >= first_bounded_) to = std::max(0.0, to);
    if (to == trial_[i]) continue;
    add_row(values_.data(), slopes_.data() + i * kRoom, to - trial_[i]);
    trial_[i] = to;
  }
}

// Weight goes from the lowest line that has some to the highest. False: no line stands out any more.
bool Bundle::exchange() {
  std::size_t high = 0;
  std::size_t low = lines_.size();
  for (std::size_t k = 0; k < lines_.size(); ++k) {
    if (values_[k] > values_[high]) high = k;
    if (lines_[k].share > 0 && (low == lines_.size() || values_[k] < values_[low])) low = k;
  }
  const double difference = values_[high] - values_[low];
  if (high == low || difference < std::max(kEven, kEvenShare * (best_value_ - values_[high]))) return false;
  double square = 0;
  for (std::size_t i = 0; i < scale_.size(); ++i) {
    const double apart = slope(i, high) - slope(i, low);
    square += scale_[i] * apart * apart;
  }
  const double moved = std::min(lines_[low].share, difference / std::max(step_ * square, 1e-12));
  lines_[low].share = moved == lines_[low].share ? 0 : lines_[low].share - moved;
  lines_[high].share += moved;
  move_trial(high, low, moved);
  return true;
}

std::vector<Bundle::Share> Bundle::shares() const {
  std::vector<Share> out;
  for (const Line& line : lines_) {
    if (!line.mean && line.share > 0) out.push_back({line.round, line.share});
  }
  std::sort(out.begin(), out.end(), [](const Share& a, const Share& b) { return a.round < b.round; });
  return out;
}

}  // namespace lanework::block
