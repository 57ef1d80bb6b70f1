// Any sequence of calls is answered as by plain lists in memory, and leaves what they leave.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/store/gate_steps.h"
#include "tests/store/plain_gate.h"

namespace lanework::store {
namespace {

using test::kVerbs;
using test::Player;
using test::Step;

class Model : public testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Stores, Model, testing::Values("SQLite", "PostgreSQL"), test::name_of);

TEST_P(Model, AnySequenceIsAnsweredAsByPlainLists) {
  const test::Backend backend(GetParam());
  int cases = 0;
  EXPECT_TRUE(rc::check([&] {
    // A gate of its own each time, a file or a club.
    if (test::is_left_to_sqlite(++cases, backend)) return;
    const auto few = rc::gen::inRange(0, 4);
    const auto steps = *rc::gen::container<std::vector<Step>>(
        static_cast<std::size_t>(*rc::gen::inRange(20, 120)),
        rc::gen::construct<Step>(rc::gen::inRange(0, kVerbs), few, few, few, rc::gen::inRange<Moment>(1, 20)));
    const auto gate = backend.open_gate("club " + std::to_string(cases));
    test::PlainGate plain;
    Player real(*gate);
    Player model(plain);
    for (const Step& step : steps) RC_ASSERT(real.play(step) == model.play(step));
    RC_ASSERT(real.state() == model.state());
  }));
}

}  // namespace
}  // namespace lanework::store
