#include "core/care/entries/restrictions_document.h"

#include "core/people/instruction.h"
#include "core/people/what_is_barred.h"

namespace lanework::care {
namespace {

template <class T>
Node word_list(const std::vector<T>& values, const std::vector<std::string_view>& words) {
  Node out = Node::make_array();
  for (const T value : values) out.items.push_back(Node::make_text(std::string(word(words, value))));
  return out;
}

Node row(const people::Restriction& restriction) {
  constexpr int kWhole = 100;
  const std::string_view allowed = people::allowed_words().at(static_cast<std::size_t>(restriction.allowed_grade));
  Node out = Node::make_table();
  const bool squad = restriction.player.empty();
  out.set(squad ? "squad" : "player", Node::make_text(squad ? restriction.squad : restriction.player));
  if (!restriction.areas.empty()) out.set("areas", word_list(restriction.areas, catalogue::body_area_words()));
  if (!restriction.kinds.empty()) out.set("kinds", word_list(restriction.kinds, catalogue::stress_kind_words()));
  out.set("allowed", Node::make_text(std::string(allowed)));
  if (restriction.until) out.set("until", Node::make_text(to_iso(*restriction.until)));
  if (restriction.review) out.set("review", Node::make_text(to_iso(*restriction.review)));
  if (restriction.sits_out) out.set("sits_out", Node::make_boolean(true));
  if (restriction.landings_percent < kWhole) {
    out.set("landings_percent", Node::make_integer(restriction.landings_percent));
  }
  if (!restriction.new_eccentric_ok) out.set("new_eccentric", Node::make_boolean(false));
  if (!restriction.instruction.empty() && people::private_word_in(restriction.instruction).empty()) {
    out.set("instruction", Node::make_text(restriction.instruction));
  }
  return out;
}

}  // namespace

Node restrictions_document(const std::vector<Standing>& standing, const std::optional<ReceiptTime>& as_known) {
  Node out = Node::make_table();
  if (as_known) out.set("as_known", Node::make_text(to_known_words(*as_known)));
  Node list = Node::make_array();
  for (const Standing& one : standing) list.items.push_back(row(one.restriction));
  if (!list.items.empty()) out.set("restriction", std::move(list));
  return out;
}

}  // namespace lanework::care
