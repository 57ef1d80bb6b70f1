// The matrix that ships, for the tests of access and of the server.
#pragma once

#include "core/access/matrix.h"
#include "tests/ledger/shipped_kinds.h"

namespace lanework::access::test {

inline std::string shipped_matrix_text() {
  std::ifstream in(std::string(LANEWORK_SOURCE_DIR) + "/catalogue/access/matrix.toml", std::ios::binary);
  std::ostringstream bytes;
  bytes << in.rdbuf();
  return bytes.str();
}

inline Result<Matrix> matrix_from(const std::string& text) {
  const auto document = parse_toml("matrix.toml", text);
  if (!document) return document.faults();
  return read_matrix(document.value(), ledger::test::shipped_kinds());
}

inline const Matrix& shipped_matrix() {
  static const Matrix kMatrix = matrix_from(shipped_matrix_text()).value();
  return kMatrix;
}

}  // namespace lanework::access::test
