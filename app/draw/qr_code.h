// A QR code as a grid of dark and light squares, by libqrencode.
#pragma once

#include <string>
#include <vector>

namespace lanework::draw {

struct ModuleGrid {
  int side = 0;             // modules a side, quiet zone not included; 0: the text does not fit a code
  std::vector<bool> darks;  // row by row
  [[nodiscard]] bool dark(int row, int column) const {
    return darks[static_cast<std::size_t>(row) * static_cast<std::size_t>(side) + static_cast<std::size_t>(column)];
  }
};

// Bytes as they are, error correction level M (15 % of a wet, torn code may be lost).
ModuleGrid qr_modules(const std::string& text);

}  // namespace lanework::draw
