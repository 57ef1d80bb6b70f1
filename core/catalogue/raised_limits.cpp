#include "core/catalogue/raised_limits.h"

#include <algorithm>
#include <array>

#include "core/catalogue/tables.h"
#include "core/catalogue/words.h"

namespace lanework::catalogue {
namespace {

const char* const kRule = "a club may lower what the shipped limits allow, never raise it";

struct CeilingKey {
  const char* key;
  std::int64_t Ceilings::*value;
  const char* unit;
};
constexpr std::array<CeilingKey, 6> kCeilingKeys = {
    {{"jump_cap_session", &Ceilings::contacts_session, " landings in the warm-up"},
     {"jump_cap_week", &Ceilings::contacts_week, " landings in warm-ups"},
     {"eccentric_session", &Ceilings::eccentric_session, ""},
     {"eccentric_week", &Ceilings::eccentric_week, ""},
     {"hard_running_session_metres", &Ceilings::hard_running_session, ""},
     {"hard_running_week_metres", &Ceilings::hard_running_week, ""}}};

struct PercentKey {
  const char* key;
  int MatchDistance::*value;
};
constexpr std::array<PercentKey, 3> kPercentKeys = {{{"contacts_percent", &MatchDistance::contacts_percent},
                                                     {"eccentric_percent", &MatchDistance::eccentric_percent},
                                                     {"hard_running_percent", &MatchDistance::hard_running_percent}}};

// '0.5', '1', '0.125'
std::string thousandths(int value) {
  std::string out = std::to_string(value / 1000);
  if (value % 1000 == 0) return out;
  std::string decimals = std::to_string(1000 + value % 1000).substr(1);
  decimals.erase(decimals.find_last_not_of('0') + 1);
  return out + "." + decimals;
}

class LimitsComparison {
 public:
  LimitsComparison(const Limits& shipped, const Limits& own, const Document& document, Faults& faults)
      : shipped_(shipped), own_(own), root_(document.file, &document.root, {}, faults) {}

  void run() {
    at_most(root_, "most_new_drills", own_.most_new_drills, shipped_.most_new_drills, "");
    at_most(root_, "warm_up_share_percent", own_.warm_up_share_percent, shipped_.warm_up_share_percent, "");
    compare_weights();
    std::vector<TableReader> bands = root_.tables("ceilings");
    for (std::size_t i = 0; i < bands.size(); ++i) compare_band(bands[i], own_.ceilings[i]);
    compare_match();
  }

 private:
  const Limits& shipped_;
  const Limits& own_;
  TableReader root_;

  static void at_most(TableReader& table, std::string_view key, std::int64_t value, std::int64_t most,
                      const std::string& after) {
    if (value <= most) return;
    table.fault(FaultCode::kCeiling, key, std::to_string(value), "at most " + std::to_string(most) + after, kRule);
  }

  // A landing that weighs less is a ceiling raised.
  void compare_weights() {
    TableReader table = root_.table("contact_weight");
    for (std::size_t i = 0; i < own_.contact_weight_thousandths.size(); ++i) {
      const int least = shipped_.contact_weight_thousandths[i];
      if (own_.contact_weight_thousandths[i] >= least) continue;
      table.fault(FaultCode::kCeiling, intensity_words()[i], thousandths(own_.contact_weight_thousandths[i]),
                  "at least " + thousandths(least), kRule);
    }
  }

  void compare_band(TableReader& table, const Ceilings& own) {
    // Where the share is raised, that is the fault, not each cap under it.
    const bool share_raised = own_.warm_up_share_percent > shipped_.warm_up_share_percent;
    for (const CeilingKey& row : kCeilingKeys) {
      const bool by_share = row.value == &Ceilings::contacts_session || row.value == &Ceilings::contacts_week;
      if (by_share && share_raised) continue;
      for (int age = own.age_from; age <= own.age_to; ++age) {
        const std::int64_t most = ceilings_at(shipped_, age).*row.value;
        if (own.*row.value <= most) continue;
        table.fault(FaultCode::kCeiling, row.key, std::to_string(own.*row.value) + row.unit,
                    "at most " + std::to_string(most) + " at age " + std::to_string(age), kRule);
        break;
      }
    }
  }

  // Rows are numbered by their days from 0, in both.
  void compare_match() {
    std::vector<TableReader> tables = root_.tables("match");
    for (std::size_t days = 0; days < shipped_.match.size(); ++days) {
      const MatchDistance& shipped = shipped_.match[days];
      const std::string when = ", " + std::to_string(days) + " days before a match";
      if (days < tables.size()) {
        const MatchDistance& own = own_.match[days];
        for (const PercentKey& row : kPercentKeys) {
          at_most(tables[days], row.key, own.*row.value, shipped.*row.value, when);
        }
        if (own.new_drills && !shipped.new_drills) {
          tables[days].fault(FaultCode::kCeiling, "new_drills", "true", "false" + when, kRule);
        }
        continue;
      }
      const bool takes_off =
          !shipped.new_drills || std::any_of(kPercentKeys.begin(), kPercentKeys.end(),
                                             [&](const PercentKey& row) { return shipped.*row.value < 100; });
      if (!takes_off) continue;
      root_.fault(FaultCode::kCeiling, "match", "no row for " + std::to_string(days) + " days before a match", "one",
                  kRule);
    }
  }
};

}  // namespace

Faults raised_limits(const Document& shipped, const Document& own) {
  Faults faults;
  const Limits shipped_limits = read_limits(shipped, faults);
  const Limits own_limits = read_limits(own, faults);
  if (!faults.empty()) return {};
  LimitsComparison(shipped_limits, own_limits, own, faults).run();
  return faults;
}

}  // namespace lanework::catalogue
