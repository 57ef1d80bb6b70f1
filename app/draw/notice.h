// The page that takes a card's place where there is no session: that there is none, why, what to do instead, who
// decides. One side.
#pragma once

#include <string>
#include <vector>

#include "app/draw/card.h"
#include "app/draw/page.h"
#include "core/base/result.h"

namespace lanework::draw {

struct NoticeMatter {
  std::string club;
  std::string squad;
  std::string date_words;
  std::string date_iso;
  int start_minute_of_day = 0;  // 0 .. 1439
  std::string headline;         // 'No session tonight'
  std::vector<std::string> why;
  std::vector<std::string> instead;      // what to do now
  std::vector<std::string> stop_always;  // when to get help
};

Result<Pages> draw_notice(const NoticeMatter& matter, Paper paper);

}  // namespace lanework::draw
