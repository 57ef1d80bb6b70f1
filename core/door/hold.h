// A catalogue that stays in the door between requests: it is most of a request's bytes and of the time to read it, and
// the same all evening. An answer made from a held catalogue is the same bytes as one made from the catalogue itself.
#pragma once

#include <optional>
#include <string>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/catalogue/catalogue.h"

namespace lanework::door {

// One at a time: a newer one takes its place. The name is the asker's own.
struct Held {
  std::string name;
  std::optional<catalogue::Catalogue> catalogue;
};

// {"request": "hold", "name", "catalogue"}: on any fault what was held before stays.
Result<Node> hold(const Document& request, Held& held);
// The catalogue of that name, or that there is none.
Result<catalogue::Catalogue> catalogue_held(const Node& request, const Held& held);

}  // namespace lanework::door
