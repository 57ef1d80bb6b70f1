// Entries for tests: made in the order of receipt, an hour apart where nothing else is said.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "core/care/entries/fold.h"

namespace lanework::care::test {

class Story {
 public:
  // Sunday 22 November 2026, 20:10 at +01:00.
  Story();

  // Its id is 'e' and its receipt number.
  EntryId add(By by, What what, int hours_later = 1, const std::string& player = "Q14");
  // The last one, to be changed.
  Entry& last() { return entries_.back(); }
  [[nodiscard]] const std::vector<Entry>& entries() const { return entries_; }
  [[nodiscard]] Knowledge fold(const Ages& ages = {}) const;

 private:
  std::vector<Entry> entries_;
  std::int64_t minutes_;
};

Hurt hurt_at(std::optional<catalogue::BodyArea> place);
Soreness sore_at(std::optional<catalogue::BodyArea> place, std::optional<int> before);
ClearanceGiven cleared(EntryIds names, EntryId course = "", std::string gate = "");

// What a player may not do: cells of area, kind and grade, all of them where the player sits out. Part of another's
// where that one is at least as careful.
std::vector<bool> barred(const std::vector<Standing>& standing, const std::string& player);
bool at_least_as_careful(const Knowledge& a, const Knowledge& b, const std::string& player = "Q14");

}  // namespace lanework::care::test
