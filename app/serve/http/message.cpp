#include "app/serve/http/message.h"

#include <algorithm>

namespace lanework::serve {

std::string_view Request::header(std::string_view name) const {
  const auto found = std::find_if(headers.begin(), headers.end(), [&](const auto& one) { return one.first == name; });
  return found == headers.end() ? std::string_view() : std::string_view(found->second);
}

int Request::count(std::string_view name) const {
  return static_cast<int>(
      std::count_if(headers.begin(), headers.end(), [&](const auto& one) { return one.first == name; }));
}

Response& Response::with(std::string name, std::string value) {
  headers.emplace_back(std::move(name), std::move(value));
  return *this;
}

std::string_view Response::header(std::string_view name) const {
  const auto found = std::find_if(headers.begin(), headers.end(), [&](const auto& one) { return one.first == name; });
  return found == headers.end() ? std::string_view() : std::string_view(found->second);
}

}  // namespace lanework::serve
