// The door for JavaScript: a request's bytes go in by address and size; the answer stays in memory until the
// next call. One call at a time, as a WebAssembly module has one thread.
#include <cstddef>
#include <string>
#include <string_view>

#include "core/door/door.h"

namespace {
std::string& answer() {
  static std::string text;
  return text;
}
}  // namespace

extern "C" {

// The address of the answer to the request of that many bytes.
const char* run(const char* request, std::size_t size) {
  static lanework::door::Held held;
  answer() = lanework::door::run(std::string_view(request, size), held);
  return answer().data();
}

std::size_t answer_size() { return answer().size(); }
}
