#include "app/draw/qr_code.h"

#include <qrencode.h>

#include <memory>

namespace lanework::draw {

ModuleGrid qr_modules(const std::string& text) {
  if (text.empty()) return {};
  const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
      QRcode_encodeData(static_cast<int>(text.size()), reinterpret_cast<const unsigned char*>(text.data()), 0,
                        QR_ECLEVEL_M),
      &QRcode_free);
  if (code == nullptr) return {};
  ModuleGrid grid;
  grid.side = code->width;
  const std::size_t modules = static_cast<std::size_t>(code->width) * static_cast<std::size_t>(code->width);
  grid.darks.reserve(modules);
  for (std::size_t at = 0; at < modules; ++at) grid.darks.push_back((code->data[at] & 1U) != 0);
  return grid;
}

}  // namespace lanework::draw
