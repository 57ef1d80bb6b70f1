#include "app/serve/now.h"

#include <array>
#include <cstdlib>
#include <ctime>

namespace lanework::serve {
namespace {

std::tm local_of(std::int64_t seconds) {
  const auto time = static_cast<std::time_t>(seconds);
  std::tm out{};
  localtime_r(&time, &out);
  return out;
}

}  // namespace

Date day_of(std::int64_t seconds) {
  const std::tm local = local_of(seconds);
  return make_date(local.tm_year + 1900, local.tm_mon + 1, local.tm_mday).value_or(Date{});
}

Now now_at(std::int64_t seconds) {
  const std::tm local = local_of(seconds);
  std::array<char, 40> text{};
  std::strftime(text.data(), text.size(), "%Y-%m-%dT%H:%M:%S%z", &local);
  std::string stamp = text.data();
  stamp.insert(stamp.size() - 2, ":");  // +0100 to +01:00
  return {seconds, day_of(seconds), stamp};
}

std::int64_t seconds_of_clock() { return static_cast<std::int64_t>(std::time(nullptr)); }

std::int64_t seconds_of_stamp(const std::string& stamp) {
  constexpr std::int64_t kDay = 86'400;
  const Date day = parse_iso_date(stamp.substr(0, 10)).value_or(Date{});
  const auto two = [&](std::size_t at) { return std::strtoll(stamp.substr(at, 2).c_str(), nullptr, 10); };
  std::int64_t out = day.days_since_epoch * kDay + two(11) * 3600 + two(14) * 60;
  if (stamp.size() > 18 && stamp[16] == ':') out += two(17);
  if (stamp.back() == 'Z' || stamp.back() == 'z') return out;
  const std::size_t sign = stamp.find_last_of("+-");
  const std::int64_t offset = two(sign + 1) * 3600 + two(sign + 4) * 60;
  return stamp[sign] == '-' ? out + offset : out - offset;
}

}  // namespace lanework::serve
