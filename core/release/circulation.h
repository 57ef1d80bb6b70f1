// How far one number can move when the others give way: whole numbers on the arcs of a net, as much into each place as
// out of it, none below its least. From one such flow, the largest and smallest number of an arc in any other is
// reached by single steps along paths of what may still rise and fall (Ford LR, Fulkerson DR, Flows in Networks, 1962),
// so the bounds are exact, in whole numbers.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace lanework::release {

class Circulation {
 public:
  explicit Circulation(std::size_t places) : at_(places) {}

  // What is known stays as it is. Gives the arc's position.
  std::size_t add(std::size_t from, std::size_t to, std::int64_t flow, bool known);
  [[nodiscard]] std::size_t arcs() const { return arcs_.size(); }
  [[nodiscard]] std::int64_t flow(std::size_t arc) const { return arcs_[arc].flow; }
  [[nodiscard]] bool known(std::size_t arc) const { return arcs_[arc].known; }
  // REQUIRES: not above its flow.
  void set_least(std::size_t arc, std::int64_t least) { arcs_[arc].least = least; }

  // By how much the arc's number may rise or fall, at most 'enough'; 0 for what is known.
  [[nodiscard]] std::int64_t rise(std::size_t arc, std::int64_t enough) const;
  [[nodiscard]] std::int64_t fall(std::size_t arc, std::int64_t enough) const;

 private:
  struct Arc {
    std::size_t from = 0;
    std::size_t to = 0;
    std::int64_t flow = 0;
    std::int64_t least = 0;
    bool known = false;
  };
  std::vector<Arc> arcs_;
  std::vector<std::vector<std::size_t>> at_;  // arcs that begin or end at a place

  [[nodiscard]] std::int64_t moved(std::size_t from, std::size_t to, std::size_t without, std::int64_t enough) const;
};

}  // namespace lanework::release
