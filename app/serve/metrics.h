// Counters for whoever keeps the server, as the Prometheus text format 0.0.4 has them. Labels are routes as the matrix
// names them and classes of answers: no person, squad or device, and never more series than the matrix has routes.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <mutex>
#include <string>
#include <vector>

#include "app/serve/http/listener.h"

namespace lanework::serve {

inline constexpr std::array<double, 9> kSecondsUpTo = {0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.5, 2.5};

class Metrics {
 public:
  void answered(const std::string& route, int status, double seconds);
  void entries(const std::string& verdict, std::int64_t count);
  [[nodiscard]] std::string text(const EdgeCounts& edge) const;

 private:
  struct Of {
    std::array<std::int64_t, 6> by_class{};  // [2]: 200 to 299
    std::array<std::int64_t, kSecondsUpTo.size() + 1> within{};
    double seconds = 0;
  };
  mutable std::mutex lock_;
  std::map<std::string, Of> routes_;
  std::map<std::string, std::int64_t> verdicts_;
};

}  // namespace lanework::serve
