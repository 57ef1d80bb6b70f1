#include "app/store/index_of_days.h"

#include <algorithm>
#include <utility>

namespace lanework::store {

std::optional<DayOfEntry> day_of(const Row& row) {
  if (!row.person.empty()) return {};
  const auto document = parse_json("ledger", row.body);
  if (!document) return {};
  const auto text = [&](const char* key) {
    const Node* found = document.value().root.find(key);
    return found != nullptr && found->kind == Node::Kind::kText ? found->text : std::string();
  };
  DayOfEntry out{text("day"), text("squad")};
  if (out.day.empty() || out.squad.empty()) return {};
  return out;
}

void IndexOfDays::expect(const Row& row) {
  if (auto day = day_of(row)) expected_.push_back({row.receipt, std::move(*day)});
}

void IndexOfDays::found(const DayOfEntry& day, std::int64_t receipt) {
  const auto place = std::lower_bound(expected_.begin(), expected_.end(), receipt,
                                      [](const Expected& one, std::int64_t number) { return one.receipt < number; });
  if (place != expected_.end() && place->receipt == receipt && place->day == day && !place->found) {
    place->found = true;
  } else {
    wrong_ = std::min(wrong_.value_or(receipt), receipt);
  }
}

std::optional<std::int64_t> IndexOfDays::first_wrong() const {
  const auto missing = std::find_if(expected_.begin(), expected_.end(), [](const Expected& one) { return !one.found; });
  if (missing == expected_.end()) return wrong_;
  return std::min(wrong_.value_or(missing->receipt), missing->receipt);
}

}  // namespace lanework::store
