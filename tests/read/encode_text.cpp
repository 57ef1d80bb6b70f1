#include "tests/read/encode_text.h"

#include <unicode/ucnv.h>
#include <unicode/unistr.h>

#include <stdexcept>
#include <vector>

namespace lanework::read {

std::string encode(const std::string& utf8, const char* encoding) {
  UErrorCode status = U_ZERO_ERROR;
  UConverter* converter = ucnv_open(encoding, &status);
  ucnv_setFromUCallBack(converter, UCNV_FROM_U_CALLBACK_STOP, nullptr, nullptr, nullptr, &status);
  const icu::UnicodeString text = icu::UnicodeString::fromUTF8(utf8);
  std::vector<char> bytes(static_cast<std::size_t>(text.length()) * 6 + 16);
  const int32_t size = ucnv_fromUChars(converter, bytes.data(), static_cast<int32_t>(bytes.size()), text.getBuffer(),
                                       text.length(), &status);
  ucnv_close(converter);
  if (U_FAILURE(status)) throw std::runtime_error(utf8 + " is not in " + encoding);
  return {bytes.data(), static_cast<std::size_t>(size)};
}

}  // namespace lanework::read
