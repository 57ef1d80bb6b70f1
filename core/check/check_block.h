// The independent verifier of blocks. Like that of sessions (check_session.h) it reads the club's documents itself
// and has its own calendar, clock, loads, credits and value; it shares nothing with the planner but core/base. Rules
// and their keys: docs/model/block-check.md.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/check/block_documents.h"

namespace lanework::check {

// One broken rule, in words that can be shown as they are.
struct BlockViolation {
  std::string rule;   // key of docs/model/block-check.md or check.md
  std::string squad;  // id; empty: of the answer as a whole
  std::string where;  // '2026-11-24 18:00, drill 3 (squat)', 'spell 2', 'week 4, trunk'
  std::string found;
  std::string expected;
};

using BlockViolations = std::vector<BlockViolation>;

struct BlockReport {
  BlockViolations violations;
  std::int64_t squads_in_club = 0;
  std::int64_t squads = 0;  // of the answer, like the rest
  std::int64_t sessions = 0;
  std::int64_t drills = 0;  // done in all sessions
  std::int64_t value = 0;   // of all squads, as recomputed
  std::int64_t bound = 0;   // of all squads, as stated

  [[nodiscard]] bool ok() const { return violations.empty(); }
};

// Faults only where the documents or the answer cannot be read.
Result<BlockReport> check_block(const BlockDocuments& documents, const Document& answer);

// One line a violation, for people.
std::string to_line(const BlockViolation& violation);
// For programs.
Node to_node(const BlockReport& report);

}  // namespace lanework::check
