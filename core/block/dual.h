// The upper bound: sessions and families decoupled by prices. On one side the session kernel, on the other the
// family kernel; rows that neither can see are priced. Any prices give a true bound; it is computed in whole
// numbers from rounded ones. docs/model/block.md names the rows.
#pragma once

#include <cstdint>
#include <vector>

#include "core/block/family_kernel.h"
#include "core/block/problem.h"
#include "core/block/session_kernel.h"

namespace lanework::block {

// Where each kind of price stands in one flat vector. Prices are points; those of loads are points a ceiling.
struct Layout {
  explicit Layout(const Problem& problem);

  std::size_t use = 0;        // [session][drill], of either sign: what a use costs the session and earns the family
  std::size_t credit = 0;     // [session][family]: what a credit earns the session and costs the family
  std::size_t week_load = 0;  // [week][load]
  std::size_t ceiling = 0;    // [session][load]
  std::size_t light = 0;      // [session][contacts, eccentric]: what a session that is not hard may use
  std::size_t apart = 0;      // [close pair]
  std::size_t unknown = 0;    // [session], where any has a limit: a use of a drill never done before the block
  std::size_t most_in = 0;    // [spell]
  std::size_t least_in = 0;   // [spell]
  std::size_t count = 0;
};

// What one evaluation found.
struct DualPoint {
  std::int64_t bound = 0;                // fine points
  std::vector<double> gradient;          // of the bound, by price
  std::vector<std::vector<int>> choice;  // [session][drill], the sessions' side
  std::vector<FamilyPattern> patterns;   // [family], the families' side
};

// What is settled of a drill in a spell's set.
enum class Settled : std::uint8_t { kOpen, kIn, kOut };
using SettledSets = std::vector<std::vector<Settled>>;  // [spell][drill]

class Dual {
 public:
  // times: by week, how many weeks alike it stands for.
  Dual(const Problem& problem, std::vector<int> times);

  // From here on only for such sets. False: there are none.
  bool settle(const SettledSets& settled);
  [[nodiscard]] const Layout& layout() const { return layout_; }
  // Where prices may start, and how far those of each kind move for a like share of their range.
  [[nodiscard]] std::vector<double> first_prices() const;
  [[nodiscard]] std::vector<double> scales() const;
  [[nodiscard]] const FamilyKernel& family(std::size_t f) const { return family_kernels_[f]; }
  // Prices other than those of use count as 0 where negative.
  void evaluate(const std::vector<double>& prices, DualPoint& out);

 private:
  const Problem& p_;
  std::vector<int> times_;
  Layout layout_;
  SessionKernel kernel_;
  std::vector<FamilyKernel> family_kernels_;
  std::vector<std::vector<int>> close_of_;  // by session: the close pairs it is in
  std::vector<std::int32_t> option_price_;
  std::vector<std::int32_t> earns_;
  std::vector<std::int32_t> pays_;
  std::vector<int> light_choice_;
  SettledSets settled_;                        // empty: nothing is
  std::vector<SettledDrills> drills_settled_;  // by family

  struct LoadPrices {
    std::array<std::int64_t, kLoads> unit{};  // 2^-kLoadShift of a fine point a unit of load
  };
  void price_options(const Session& session, const LoadPrices& loads, const std::vector<double>& prices, std::size_t s);
  [[nodiscard]] int times(std::size_t s) const { return times_[static_cast<std::size_t>(p_.sessions[s].week)]; }
  void session_side(const std::vector<double>& prices, std::size_t s, DualPoint& out);
  void session_gradient(std::size_t s, bool light, DualPoint& out);
  [[nodiscard]] std::size_t family_of(std::size_t drill) const;
  [[nodiscard]] std::int32_t credit_price(const std::vector<double>& prices, std::size_t s, std::size_t f) const;
  SetPrices set_side(const std::vector<double>& prices, DualPoint& out);
  void family_side(const std::vector<double>& prices, const SetPrices& set, std::size_t f, DualPoint& out);
  void constants(const std::vector<double>& prices, DualPoint& out);
};

}  // namespace lanework::block
