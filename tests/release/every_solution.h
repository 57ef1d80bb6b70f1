// The attacker's bounds by trying every number there could be: the releases' sums as they were given, nothing of how
// the audit works them out. For small numbers only.
#pragma once

#include <algorithm>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "core/release/audit.h"

namespace lanework::release::test {

class EverySolution {
 public:
  // The last release holds all others; each has days of its own unless told otherwise.
  EverySolution(const std::vector<Release>& releases, Table table, std::vector<bool> has_own)
      : releases_(releases), table_(table), has_own_(std::move(has_own)) {
    for (const auto& [key, count] : releases.back().whole.of(table)) keys_.push_back(key);
    std::vector<std::vector<std::int64_t>> own(releases.size(), std::vector<std::int64_t>(keys_.size(), 0));
    fill(own, 0, 0, releases.back().whole.all.injuries);
  }

  // Of the release's own days (kRest), or of all of its days; with one child known, where that child's number is at
  // least one.
  [[nodiscard]] Interval bounds(std::size_t release, Days days, const std::string& key,
                                std::optional<std::pair<std::size_t, std::string>> child = {}) const {
    Interval out{std::numeric_limits<std::int64_t>::max(), -1};
    const std::size_t row = row_of(key);
    for (const auto& own : solutions_) {
      if (child && own[child->first][row_of(child->second)] < 1) continue;
      std::int64_t value = 0;
      for (std::size_t i = 0; i < releases_.size(); ++i) {
        const bool counts = i == release || (days == Days::kPeriod && release + 1 == releases_.size());
        if (counts) value += own[i][row];
      }
      out.least = std::min(out.least, value);
      out.most = std::max(out.most, value);
    }
    return out;
  }

  [[nodiscard]] std::size_t solutions() const { return solutions_.size(); }

 private:
  const std::vector<Release>& releases_;
  Table table_;
  std::vector<bool> has_own_;
  std::vector<std::string> keys_;
  std::vector<std::vector<std::vector<std::int64_t>>> solutions_;

  [[nodiscard]] std::size_t row_of(const std::string& key) const {
    return static_cast<std::size_t>(std::find(keys_.begin(), keys_.end(), key) - keys_.begin());
  }

  // Row by row, never beyond all injuries of the whole; a part that is done is held against what was said of it.
  void fill(std::vector<std::vector<std::int64_t>>& own, std::size_t release, std::size_t row, std::int64_t left) {
    if (row == keys_.size()) {
      if (!fits(own, release)) return;
      if (release + 1 == releases_.size()) {
        solutions_.push_back(own);
      } else {
        fill(own, release + 1, 0, left);
      }
      return;
    }
    for (std::int64_t value = 0; value <= (has_own_[release] ? left : 0); ++value) {
      own[release][row] = value;
      fill(own, release, row + 1, left - value);
    }
    own[release][row] = 0;
  }

  [[nodiscard]] bool fits(const std::vector<std::vector<std::int64_t>>& own, std::size_t release) const {
    if (releases_[release].silent) return true;
    const bool whole = release + 1 == releases_.size();
    std::int64_t all = 0;
    for (std::size_t row = 0; row < keys_.size(); ++row) {
      std::int64_t value = 0;
      for (std::size_t i = whole ? 0 : release; i <= release; ++i) value += own[i][row];
      all += value;
      if (!releases_[release].shows(table_, keys_[row])) continue;
      if (value != releases_[release].whole.of(table_).at(keys_[row]).injuries) return false;
    }
    return all == releases_[release].whole.all.injuries;
  }
};

}  // namespace lanework::release::test
