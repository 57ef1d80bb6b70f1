// What really became of a block so far, as the checker reads it: the day, one row a session that is told of, and the
// answer that stood before.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/check/block_answer.h"
#include "core/check/block_calendar.h"
#include "core/check/block_documents.h"

namespace lanework::check {

struct ToldSession {
  std::string squad;  // id
  Date date;
  int start_minutes = 0;
  std::string happened;  // 'held', 'missed', 'cut short'
  std::optional<std::int64_t> minutes;
  std::string did_it;  // 'most', 'half', 'few'
  std::vector<std::string> left_out;
};

struct SoFar {
  Date today;
  std::vector<ToldSession> told;
  std::optional<StatedAnswer> standing;

  [[nodiscard]] const ToldSession* find(const std::string& squad, const Wish& wish) const;
  // Before today, or today and told of, or today before one that is.
  [[nodiscard]] bool is_over(const std::string& squad, const Wish& wish) const;
};

Result<SoFar> read_so_far(const SoFarDocuments& documents);

}  // namespace lanework::check
