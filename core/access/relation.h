// How somebody stands to a squad on a day. A lead is charged with every squad of the club; a board member and an
// operator with none.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/date.h"
#include "core/ledger/kinds.h"

namespace lanework::access {

enum class Relation : std::uint8_t { kOwn, kSubstitute, kFormer, kOther };

inline constexpr std::size_t kRelationCount = 4;
inline constexpr std::size_t kRoleCount = 5;

const std::array<std::string_view, kRelationCount>& relation_words();  // 'own', 'substitute', 'former', 'other'

// A squad that somebody is charged with, both days included.
struct Charge {
  std::string squad;
  Date from;
  Date until;
  bool substitute = false;
};

// Own before substitute before former: whoever was a substitute once and has the squad now has it.
Relation relation_to(ledger::Role role, const std::vector<Charge>& charges, std::string_view squad, Date day);

}  // namespace lanework::access
