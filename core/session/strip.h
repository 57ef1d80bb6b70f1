// The place and the kit of an evening.
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/base/units.h"
#include "core/catalogue/words.h"

namespace lanework::session {

struct Strip {
  std::string name;          // 'north end of pitch 2'
  Millimetres lane_length;   // 5 m .. 60 m
  Millimetres cone_spacing;  // 1 m .. 20 m, at most the lane's length
  int lanes;                 // 1..12, files of players side by side
  Millimetres lane_gap;      // between neighbouring lanes
  Millimetres area_width;    // for spread and pairs
  Millimetres area_length;
  std::vector<catalogue::Surface> surface;
  bool wall = false;
  bool soft_ground = false;  // grass, mats all over: kneeling and lying is fine
  bool line = false;         // painted lines
  std::string venue;         // file of the venue's action plan, as the edge has found it; empty: none is named
};

struct Kit {
  int cones = 0;
  int balls = 0;
  int mats = 0;
};

// Cones in one line of a lane: floor(length / spacing) + 1.
int cones_a_line(const Strip& strip);

Result<Strip> read_strip(const Document& document);

}  // namespace lanework::session
