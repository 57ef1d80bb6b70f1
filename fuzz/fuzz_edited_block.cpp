// A sound block answer with some of its values changed, moved or taken out, for everything that reads one: what is
// almost right reaches further than what is not JSON. Input: how far the block is (1 byte: days, 4: what happened),
// then any number of edits of 4 bytes: which value of the tree (2), what is done to it (1), with what (1).
#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "fuzz/block_promises.h"
#include "fuzz/promise.h"

namespace {

using lanework::Node;
using lanework::fuzz::promise;

constexpr std::size_t kMostEdits = 8;
constexpr std::size_t kMostNodes = 20'000;

const Node& sound() {
  static const Node kSound =
      lanework::parse_json(lanework::fuzz::kAnswerFile, lanework::fuzz::sound_answer()).value().root;
  return kSound;
}

struct Spot {
  Node* node;
  Node* parent;    // null: the root
  std::size_t at;  // position in the parent
};

void collect(Node& node, std::vector<Spot>& spots) {
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    spots.push_back({&node.items[i], &node, i});
    collect(node.items[i], spots);
  }
  for (std::size_t i = 0; i < node.entries.size(); ++i) {
    spots.push_back({&node.entries[i].second, &node, i});
    collect(node.entries[i].second, spots);
  }
}

void take_out(Node& parent, std::size_t at) {
  const auto place = static_cast<std::ptrdiff_t>(at);
  if (parent.kind == Node::Kind::kArray) {
    parent.items.erase(parent.items.begin() + place);
  } else {
    parent.entries.erase(parent.entries.begin() + place);
  }
}

void put_number(Node& node, unsigned with) {
  constexpr std::array<std::int64_t, 16> kNumbers = {
      0, 1, -1, 2, 3, 4, 8, 15, 200, 999, 1000, 65536, 1'000'000, 2'000'000'000, INT64_MAX, INT64_MIN};
  node = Node::make_integer(kNumbers[with % kNumbers.size()]);
}

void edit(Node& root, std::size_t which, unsigned how, unsigned with) {
  std::vector<Spot> spots;
  collect(root, spots);
  if (spots.empty() || spots.size() > kMostNodes) return;
  const Spot spot = spots[which % spots.size()];
  const Spot other = spots[(which + 1 + with * std::size_t{61}) % spots.size()];
  Node& parent = *spot.parent;
  switch (how % 8) {
    case 0:
      return put_number(*spot.node, with);
    case 1:
      if (spot.node->kind == Node::Kind::kInteger) spot.node->integer += static_cast<std::int8_t>(with);
      return;
    case 2:
      return take_out(parent, spot.at);
    case 3:
      if (parent.kind == Node::Kind::kArray) {
        const Node copy = *spot.node;
        parent.items.insert(parent.items.begin() + static_cast<std::ptrdiff_t>(with % (parent.items.size() + 1)), copy);
      }
      return;
    case 4:
      if (parent.kind == Node::Kind::kArray) std::swap(parent.items[spot.at], parent.items[with % parent.items.size()]);
      return;
    case 5:
      *spot.node = with % 3 == 0   ? Node::make_boolean((with & 1U) != 0)
                   : with % 3 == 1 ? Node::make_array()
                                   : Node::make_table();
      return;
    case 6:
      *spot.node = Node::make_text(std::string(with % 4, static_cast<char>(with)));
      return;
    default: {
      const Node copy = *other.node;
      *spot.node = copy;
    }
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  constexpr std::size_t kHead = 5;
  if (size < kHead) return 0;
  lanework::fuzz::HowFar how_far{data[0] % 50, 0};
  for (std::size_t i = 1; i < kHead; ++i) how_far.happened = how_far.happened << 8U | data[i];
  Node root = sound();
  for (std::size_t i = kHead, edits = 0; i + 4 <= size && edits < kMostEdits; i += 4, ++edits)
    edit(root, std::size_t{data[i]} << 8U | data[i + 1], data[i + 2], data[i + 3]);
  const std::string json = lanework::to_json(root);
  lanework::fuzz::check_block_answer(json, how_far);
  const bool goes_on = lanework::fuzz::plans_on_from(json, how_far);
  promise(goes_on || size >= kHead + 4, "a sound block is planned on from any day");
  return 0;
}
