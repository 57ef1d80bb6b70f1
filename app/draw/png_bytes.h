// A painted image as PNG. Cairo's own writer tries every filter on every row and squeezes hard, which takes two
// thirds of a page's time and wins little on line drawings with flat grounds.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace lanework::draw {

struct Pixels {
  const unsigned char* data = nullptr;  // rows of native 32-bit words 0x00RRGGBB, must outlive the call
  int width = 0;
  int height = 0;
  int stride = 0;  // bytes from row to row
};

// 8 bits a channel, RGB, not interlaced (ISO/IEC 15948). Empty when libpng gives up.
std::string png_bytes(const Pixels& pixels, int dots_per_inch);

}  // namespace lanework::draw
