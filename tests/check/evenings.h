// Evenings of every kind, for properties.
#pragma once

#include <rapidcheck.h>

#include <string>

#include "core/base/document.h"

namespace lanework::check::test {

struct Evening {
  Node request;
  std::string story;  // what was changed, for the log
};
inline const Node& request_of(const Evening& evening) { return evening.request; }

rc::Gen<Evening> evenings();

}  // namespace lanework::check::test
