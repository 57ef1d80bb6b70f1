// One line of JSON a request: what was asked for, by which account or device, how it ended, how long it took. Never a
// name, a player, a secret, a body or a query: a route is written as the matrix names it, never as it was sent.
#pragma once

#include <cstdint>
#include <cstdio>
#include <functional>
#include <mutex>
#include <string>

namespace lanework::serve {

struct LogLine {
  std::int64_t seconds = 0;  // since 1970, UTC
  std::string event;         // 'request', 'sign-in-failed', 'started'
  std::string route;
  std::string method;
  int status = 0;
  std::int64_t microseconds = -1;  // -1: none
  std::string account;
  std::string device;
  std::string why;  // the error's key
};

std::string to_text(const LogLine& line);  // without the line's end

class Log {
 public:
  explicit Log(std::function<void(const std::string& line)> write) : write_(std::move(write)) {}
  void add(const LogLine& line);

 private:
  std::mutex lock_;
  std::function<void(const std::string& line)> write_;
};

}  // namespace lanework::serve
