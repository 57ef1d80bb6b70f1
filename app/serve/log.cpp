#include "app/serve/log.h"

#include "core/base/document.h"

namespace lanework::serve {
namespace {

std::string utc_stamp(std::int64_t seconds) {
  constexpr std::int64_t kDay = 86'400;
  const std::int64_t day = seconds / kDay;
  const auto rest = static_cast<int>(seconds % kDay);
  const auto two = [](int value) { return (value < 10 ? "0" : "") + std::to_string(value); };
  return to_iso(Date{static_cast<int>(day)}) + "T" + two(rest / 3600) + ":" + two(rest / 60 % 60) + ":" +
         two(rest % 60) + "Z";
}

}  // namespace

std::string to_text(const LogLine& line) {
  Node out = Node::make_table();
  out.set("time", Node::make_text(utc_stamp(line.seconds)));
  out.set("event", Node::make_text(line.event));
  const auto text = [&](const char* key, const std::string& value) {
    if (!value.empty()) out.set(key, Node::make_text(value));
  };
  text("route", line.route);
  text("method", line.method);
  if (line.status != 0) out.set("status", Node::make_integer(line.status));
  if (line.microseconds >= 0) out.set("microseconds", Node::make_integer(line.microseconds));
  text("account", line.account);
  text("device", line.device);
  text("why", line.why);
  return to_json(out);
}

void Log::add(const LogLine& line) {
  const std::string text = to_text(line);
  const std::lock_guard<std::mutex> guard(lock_);
  write_(text);
}

}  // namespace lanework::serve
