#include "tests/care/entries/entry_story.h"

#include <algorithm>

#include "tests/care/shipped_rules.h"

namespace lanework::care::test {

Story::Story() : minutes_(parse_receipt_time("2026-11-22T20:10+01:00")->moment.minutes) {}

EntryId Story::add(By by, What what, int hours_later, const std::string& player) {
  constexpr int kOffset = 60;
  if (!entries_.empty()) minutes_ += hours_later * kMinutesAnHour;
  Entry entry;
  entry.receipt = static_cast<std::int64_t>(entries_.size()) + 1;
  entry.id = "e" + std::to_string(entry.receipt);
  entry.received = {{minutes_}, kOffset};
  entry.by = by;
  entry.player = player;
  entry.what = std::move(what);
  entries_.push_back(std::move(entry));
  return entries_.back().id;
}

Knowledge Story::fold(const Ages& ages) const { return care::fold(entries_, pain_rule(), return_rules(), ages); }

Hurt hurt_at(std::optional<catalogue::BodyArea> place) { return {place, {}}; }

Soreness sore_at(std::optional<catalogue::BodyArea> place, std::optional<int> before) {
  PainReport report;
  report.place = place;
  report.before = before;
  return {report};
}

ClearanceGiven cleared(EntryIds names, EntryId course, std::string gate) {
  return {std::move(names), std::move(course), std::move(gate), "A. Physician", "physician"};
}

std::vector<bool> barred(const std::vector<Standing>& standing, const std::string& player) {
  constexpr int kAreas = 14;
  constexpr int kKinds = 7;
  constexpr int kGrades = 3;
  std::vector<bool> out(kAreas * kKinds * kGrades + 1, false);
  for (const Standing& one : standing) {
    const people::Restriction& held = one.restriction;
    if (held.player != player) continue;
    std::size_t cell = 0;
    for (int area = 0; area < kAreas; ++area) {
      for (int kind = 0; kind < kKinds; ++kind) {
        for (int grade = 1; grade <= kGrades; ++grade, ++cell) {
          const auto covers = [](const auto& list, auto value) {
            return list.empty() || std::find(list.begin(), list.end(), value) != list.end();
          };
          const bool hit = grade > held.allowed_grade && covers(held.areas, static_cast<catalogue::BodyArea>(area)) &&
                           covers(held.kinds, static_cast<catalogue::StressKind>(kind));
          if (held.sits_out || hit) out[cell] = true;
        }
      }
    }
    if (held.sits_out) out.back() = true;
  }
  return out;
}

bool at_least_as_careful(const Knowledge& a, const Knowledge& b, const std::string& player) {
  const std::vector<bool> first = barred(a.standing, player);
  const std::vector<bool> second = barred(b.standing, player);
  for (std::size_t i = 0; i < first.size(); ++i) {
    if (second[i] && !first[i]) return false;
  }
  return true;
}

}  // namespace lanework::care::test
