// Bytes of one connection in, whole requests out, one after another, held to the limits of size. Knows no socket and no
// clock. RFC 9112, by Boost.Beast's parser; nothing of Beast's leaves the .cpp.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>

#include "app/serve/http/message.h"

namespace lanework::serve {

struct SizeLimits {
  std::size_t header_bytes = 16 * 1024;
  std::size_t body_bytes = 1024 * 1024;
};

class RequestReader {
 public:
  enum class Step : std::uint8_t {
    kMore,     // bytes are wanted: room() and came(), or ended()
    kGoOn,     // the headers are whole, and the sender waits for '100 Continue' before it sends the body
    kWhole,    // take() it
    kRefused,  // no request: refusal() says as what; of this connection nothing more is read
    kEnd       // the sender is done, between two requests
  };

  explicit RequestReader(const SizeLimits& limits);
  RequestReader(const RequestReader&) = delete;
  RequestReader& operator=(const RequestReader&) = delete;
  ~RequestReader();

  // As far as what has come goes. Says kMore until more has come, and kGoOn once a request.
  Step step();
  std::span<char> room();        // for the next bytes, never empty; until the next call of anything here
  void came(std::size_t bytes);  // at the room's start
  void ended();                  // nothing more will come

  [[nodiscard]] bool is_idle() const;  // nothing of a next request is here
  [[nodiscard]] bool in_body() const;  // its headers are whole, its body is not
  [[nodiscard]] int refusal() const;   // 400, 413 or 431

  // Of the request that is whole.
  [[nodiscard]] unsigned version() const;  // 10 or 11
  [[nodiscard]] bool keeps_alive() const;
  Request take();  // without the caller's address; the next step() is about the next request

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace lanework::serve
