// Block problems drawn from a seed, small enough to enumerate or as large as asked.
#pragma once

#include "core/block/problem.h"
#include "tests/plan/random_problem.h"

namespace lanework::block {

struct BlockShape {
  int weeks = 2;
  int spells = 1;
  int sessions_a_week = 2;
  int families = 2;
  int drills_a_family = 2;  // in each of its groups
  int options_a_drill = 2;
  int budget_percent = 60;   // of the time all largest options would take
  int ceiling_percent = 70;  // of the loads all largest options would give
  bool fixed = false;        // a drill or two are fixed for spells that have a session open to them
  bool free = false;         // the first set may have any drills
};

class BlockDraw {
 public:
  BlockDraw(std::uint64_t seed, const BlockShape& shape) : dice_(seed * 0x9E3779B97F4A7C15ULL + 5), shape_(shape) {}

  Problem draw() {
    draw_families();
    for (int k = 0; k < 2; ++k) p_.kinds.push_back(kind());
    draw_weeks();
    draw_limits();
    if (shape_.fixed) fix_drills();
    if (shape_.free) p_.first_swaps = 99;
    return std::move(p_);
  }

 private:
  plan::Dice dice_;
  BlockShape shape_;
  Problem p_;

  // The first family stands in two phases where there are more than one.
  void draw_families() {
    const int groups = shape_.families + (shape_.families > 1 ? 1 : 0);
    for (int f = 0; f < shape_.families; ++f) {
      Family family;
      family.family = static_cast<catalogue::Family>(f);
      family.weight = dice_.roll(1, 8);
      family.required = dice_.roll(0, 3) != 0;
      p_.families.push_back(family);
    }
    for (int g = 0; g < groups; ++g) {
      const int f = g < shape_.families ? g : 0;
      p_.families[static_cast<std::size_t>(f)].groups.push_back(g);
      p_.groups.push_back({f, catalogue::Phase::kStart});
      for (int d = 0; d < shape_.drills_a_family; ++d) {
        Drill drill;
        drill.drill = static_cast<int>(p_.drills.size());
        drill.group = g;
        drill.formation = static_cast<catalogue::Formation>(dice_.roll(0, 2));
        drill.current = dice_.roll(0, 1) == 1;
        drill.unknown = !drill.current && dice_.roll(0, 1) == 1;
        drill.left_out = dice_.roll(0, 3) * 5;
        if (drill.current) ++p_.families[static_cast<std::size_t>(f)].drills;
        p_.drills.push_back(drill);
      }
    }
  }

  Kind kind() {
    Kind out;
    for (std::size_t from = 0; from < 3; ++from) {
      for (std::size_t to = 0; to < 3; ++to) out.change[from][to] = from == to ? 0 : dice_.roll(1, 5);
    }
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      std::vector<Option> options;
      const int count = dice_.roll(0, 9) == 0 ? 0 : dice_.roll(1, shape_.options_a_drill);
      for (int o = 0; o < count; ++o) {
        Option option;
        option.dose = o;
        option.steps = dice_.roll(2, 6) + 3 * o;
        option.credits = dice_.roll(1, 3) + o;
        option.loads = {dice_.roll(0, 2) * 1000 * (o + 1), dice_.roll(0, 1) * 1000 * (o + 1), dice_.roll(0, 1) * 5000};
        option.departure = dice_.roll(0, 2) * 4;
        options.push_back(option);
      }
      out.options.push_back(std::move(options));
    }
    return out;
  }

  void draw_weeks() {
    int all_steps = 0;
    Loads all{};
    for (const std::vector<Option>& options : p_.kinds.front().options) {
      if (options.empty()) continue;
      all_steps += options.back().steps;
      for (std::size_t l = 0; l < kLoads; ++l) all[l] += options.back().loads[l];
    }
    const int per_spell = (shape_.weeks + shape_.spells - 1) / shape_.spells;
    for (int w = 0; w < shape_.weeks; ++w) {
      Week week;
      week.spell = w / per_spell;
      week.fixed.assign(p_.families.size(), dice_.roll(0, 4) == 0 ? 1 : 0);
      week.begun = dice_.roll(0, 5) == 0 ? 1 : 0;
      for (std::size_t f = 0; f < p_.families.size(); ++f) week.target.push_back(dice_.roll(0, 8));
      for (std::size_t l = 0; l < kLoads; ++l)
        week.ceiling[l] = all[l] * shape_.sessions_a_week * dice_.roll(30, 100) / 100;
      p_.weeks.push_back(week);
      for (int s = 0; s < shape_.sessions_a_week; ++s) {
        Session session;
        session.day = 7 * w + 2 * s;
        session.week = w;
        session.spell = week.spell;
        session.kind = dice_.roll(0, 1);
        session.budget = all_steps * shape_.budget_percent / 100 + dice_.roll(0, 4);
        for (std::size_t l = 0; l < kLoads; ++l) {
          session.ceiling[l] = all[l] * shape_.ceiling_percent / 100;
          session.hard[l] = session.ceiling[l] * 6 / 10;
        }
        const int at = static_cast<int>(p_.sessions.size());
        if (at > 0 && dice_.roll(0, 3) == 0) p_.close.emplace_back(at - 1, at);
        p_.sessions.push_back(session);
      }
    }
    p_.spells = p_.weeks.back().spell + 1;
  }

  // With room for them: places in the family, and swaps.
  void fix_drills() {
    std::vector<int> fixed(p_.families.size() * static_cast<std::size_t>(p_.spells), 0);
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      if (dice_.roll(0, 2) != 0) continue;
      const auto f = static_cast<std::size_t>(p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family);
      for (std::size_t p = 0; p < static_cast<std::size_t>(p_.spells); ++p) {
        if (!is_open(p_, p, d)) continue;
        p_.drills[d].must |= 1U << p;
        int& count = fixed[p * p_.families.size() + f];
        p_.families[f].drills = std::max(p_.families[f].drills, ++count);
      }
    }
    p_.first_swaps = p_.most_swaps = 3;
  }

  void draw_limits() {
    p_.first_swaps = dice_.roll(0, 2);
    p_.most_swaps = dice_.roll(0, 2);
    p_.most_new_in_session = dice_.roll(0, 2);
    p_.most_new_in_week = dice_.roll(1, 2);
    p_.swap = dice_.roll(0, 40);
    p_.uncovered = dice_.roll(0, 100);
  }
};

inline Problem random_block(std::uint64_t seed, const BlockShape& shape) { return BlockDraw(seed, shape).draw(); }

}  // namespace lanework::block
