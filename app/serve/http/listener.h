// The edge to the network: takes connections, holds them to their limits, hands whole requests to the handler on its
// own threads and writes the answers. Idle and slow clients cost memory only, never a thread. Boost.Beast and Asio;
// nothing of theirs leaves the .cpp.
#pragma once

#include <atomic>
#include <chrono>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>

#include "app/serve/http/message.h"
#include "app/serve/http/request_reader.h"
#include "core/base/result.h"

namespace lanework::serve {

struct Limits {
  SizeLimits sizes;
  std::size_t connections = 4096;
  std::size_t waiting = 1024;           // whole requests that no thread has taken up yet
  std::chrono::seconds idle{75};        // between requests
  std::chrono::seconds header{10};      // from its first byte to its last
  std::chrono::seconds body{30};        // the same
  std::chrono::seconds answer{30};      // writing it out
  std::chrono::seconds hear_out{2};     // after a refusal, whoever is still sending
  std::chrono::seconds last_words{10};  // what is under way at the end
};

struct Tls {
  std::string certificate_file;  // PEM, the chain
  std::string key_file;          // PEM, only its owner may read it
};

struct Where {
  std::string address = "127.0.0.1";
  std::uint16_t port = 8765;  // 0: any that is free
  std::optional<Tls> tls;
  bool behind_proxy = false;  // then X-Forwarded-For and X-Forwarded-Proto of callers on this machine count
  int threads = 8;            // that answer
};

// Read by whoever writes metrics.
struct EdgeCounts {
  std::atomic<std::int64_t> connections_now{0};
  std::atomic<std::int64_t> connections_taken{0};
  std::atomic<std::int64_t> connections_turned_away{0};
  std::atomic<std::int64_t> requests_waiting{0};
  std::atomic<std::int64_t> requests_refused{0};
};

class Listener {
 public:
  // Faults: the address cannot be had, certificate or key cannot be read, or the key is open to others.
  static Result<std::unique_ptr<Listener>> open(const Where& where, const Limits& limits, Handler handler,
                                                Refusal refusal, EdgeCounts& counts);
  virtual ~Listener() = default;
  [[nodiscard]] virtual std::uint16_t port() const = 0;
  // Until stop(): then no new connections, what is under way is answered, idle ones are closed.
  virtual void run() = 0;
  virtual void stop() = 0;  // from any thread
  // Ends run() as stop() does when the process is told to: SIGTERM, SIGINT.
  virtual void stop_on_signals() = 0;
};

}  // namespace lanework::serve
