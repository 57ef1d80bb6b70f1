#include "core/block/set_rules.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "core/catalogue/catalogue.h"

namespace lanework::block {
namespace {

class SetRules {
 public:
  SetRules(const Outline& outline, const std::vector<std::size_t>& evening_of, Problem& problem)
      : outline_(outline), catalogue_(*outline.catalogue), evening_of_(evening_of), p_(problem) {}

  void write() {
    fix_pinned();
    fix_eccentric();
    count_drills();
    p_.first_swaps = first_swaps();
    p_.most_swaps = kMostSwaps;
    for (int spell = 1; spell < p_.spells; ++spell) p_.most_swaps = std::max(p_.most_swaps, fixed_in(spell));
    p_.least_swaps = p_.spells > 1 ? kLeastSwaps : 0;
  }

 private:
  const Outline& outline_;
  const catalogue::Catalogue& catalogue_;
  const std::vector<std::size_t>& evening_of_;
  Problem& p_;

  // Drills of the family that the routine has, and that are fixed for the spell.
  [[nodiscard]] std::pair<int, int> current_and_fixed(catalogue::Family family, std::size_t spell) const {
    int current = 0;
    int fixed = 0;
    for (const Drill& drill : p_.drills) {
      if (catalogue_.drills[static_cast<std::size_t>(drill.drill)].family != family) continue;
      current += drill.current ? 1 : 0;
      fixed += must_be(drill, spell) ? 1 : 0;
    }
    return {current, fixed};
  }

  // Where eccentric work comes first, the routine's own is not swapped away, unless for what the lead has fixed.
  void fix_eccentric() {
    const int age = outline_.evenings.front().age;
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      const catalogue::Drill& drill = catalogue_.drills[static_cast<std::size_t>(p_.drills[d].drill)];
      const auto& first = catalogue_.family(drill.family).eccentric_first;
      if (!p_.drills[d].current || drill.loads.eccentric_thousandths == 0 || !first || age < first->from_age) continue;
      for (int spell = 0; spell < p_.spells; ++spell) {
        const auto at = static_cast<std::size_t>(spell);
        const auto [current, fixed] = current_and_fixed(drill.family, at);
        if (fixed < current && is_open(p_, at, d)) p_.drills[d].must |= 1U << static_cast<unsigned>(spell);
      }
    }
  }

  // A pinned drill is of the set of every spell that has a session open to it.
  void fix_pinned() {
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
      const Kind& kind = p_.kinds[static_cast<std::size_t>(p_.sessions[s].kind)];
      for (const session::Pin& pin : outline_.evenings[evening_of_[s]].pins) {
        for (std::size_t d = 0; d < p_.drills.size(); ++d) {
          if (catalogue_.drills[static_cast<std::size_t>(p_.drills[d].drill)].id != pin.drill) continue;
          if (!kind.options[d].empty()) p_.drills[d].must |= 1U << static_cast<unsigned>(p_.sessions[s].spell);
        }
      }
    }
  }

  [[nodiscard]] std::size_t family_of(const Drill& drill) const {
    return static_cast<std::size_t>(p_.groups[static_cast<std::size_t>(drill.group)].family);
  }

  // Fixed drills that the spell is the first to have, and the routine has not.
  [[nodiscard]] int fixed_in(int spell) const {
    int count = 0;
    for (const Drill& drill : p_.drills) {
      const auto p = static_cast<std::size_t>(spell);
      const bool before = spell == 0 ? drill.current : must_be(drill, p - 1);
      count += must_be(drill, p) && !before ? 1 : 0;
    }
    return count;
  }

  // What the squad does now is changed only where it must be, for drills that the lead has fixed and required families
  // that the routine lacks, and, up to three drills in all, where a drill of the routine has no session open to it.
  [[nodiscard]] int first_swaps() const {
    if (outline_.free_composition) {
      return std::accumulate(p_.families.begin(), p_.families.end(), 0,
                             [](int sum, const Family& family) { return sum + family.drills; });
    }
    std::vector<int> closed(p_.families.size(), 0);
    std::vector<int> fixed(p_.families.size(), 0);
    std::vector<int> current(p_.families.size(), 0);
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      const Drill& drill = p_.drills[d];
      current[family_of(drill)] += drill.current ? 1 : 0;
      closed[family_of(drill)] += drill.current && !is_open(p_, 0, d) ? 1 : 0;
      fixed[family_of(drill)] += must_be(drill, 0) && !drill.current ? 1 : 0;
    }
    int must = 0;
    int may = 0;
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      const int must_come = std::max(fixed[f], p_.families[f].drills - current[f]);
      must += must_come;
      may += std::max(must_come, closed[f]);
    }
    return std::max(must, std::min(kMostSwaps, may));
  }

  // As many of each family as the routine has; one of a required family that it lacks; and no fewer than the lead has
  // fixed for one spell.
  void count_drills() {
    std::vector<int> open(p_.families.size(), 0);
    for (const Drill& drill : p_.drills) {
      ++open[family_of(drill)];
      if (drill.current) ++p_.families[family_of(drill)].drills;
    }
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      if (p_.families[f].required && p_.families[f].drills == 0) p_.families[f].drills = std::min(1, open[f]);
    }
    for (int spell = 0; spell < p_.spells; ++spell) {
      std::vector<int> fixed(p_.families.size(), 0);
      for (const Drill& drill : p_.drills)
        fixed[family_of(drill)] += must_be(drill, static_cast<std::size_t>(spell)) ? 1 : 0;
      for (std::size_t f = 0; f < p_.families.size(); ++f)
        p_.families[f].drills = std::max(p_.families[f].drills, fixed[f]);
    }
  }
};

}  // namespace

void keep_set_rules(const Outline& outline, const std::vector<std::size_t>& evening_of, Problem& problem) {
  SetRules(outline, evening_of, problem).write();
}

}  // namespace lanework::block
