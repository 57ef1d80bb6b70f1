// The index of days, checked against the entries that it is of: no chain goes over it, and a day that it has wrong
// would leave an entry out of that evening without a word.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "app/store/books.h"

namespace lanework::store {

struct DayOfEntry {
  std::string day;
  std::string squad;
  bool operator==(const DayOfEntry&) const = default;
};

// Where the index has an entry with that content; empty: nowhere, as without a day or a squad, or about a person.
std::optional<DayOfEntry> day_of(const Row& row);

class IndexOfDays {
 public:
  // By receipt; not the rows that were emptied.
  void expect(const Row& row);
  // In any order, once all entries are expected.
  void found(const DayOfEntry& day, std::int64_t receipt);
  // The lowest receipt that is missing, or stands there and should not.
  [[nodiscard]] std::optional<std::int64_t> first_wrong() const;

 private:
  struct Expected {
    std::int64_t receipt = 0;
    DayOfEntry day;
    bool found = false;
  };
  std::vector<Expected> expected_;
  std::optional<std::int64_t> wrong_;
};

}  // namespace lanework::store
