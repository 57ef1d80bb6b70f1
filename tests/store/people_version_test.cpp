// The number by which a server knows that what it remembers of who may do what still holds (Versions::people).
#include <functional>
#include <utility>

#include "tests/store/gate_people.h"

namespace lanework::store {
namespace {

using ledger::Role;
using test::add;
using test::kMorning;
using test::must;

class PeopleVersion : public test::GateOn {
 protected:
  std::unique_ptr<Directory> directory = backend.open_directory();

  std::int64_t now() { return must(directory->versions()).people; }
  void raises(const char* what, const std::function<void()>& change) {
    const std::int64_t before = now();
    change();
    EXPECT_GT(now(), before) << what;
  }
  void leaves(const char* what, const std::function<void()>& change) {
    const std::int64_t before = now();
    change();
    EXPECT_EQ(now(), before) << what;
  }
};
INSTANTIATE_TEST_SUITE_P(Stores, PeopleVersion, testing::Values("SQLite", "PostgreSQL"), test::name_of);

TEST_P(PeopleVersion, GrowsWithWhatDecidesWhoMayDoWhat) {
  const std::string ann = add(*gate, "ann");
  raises("a role", [&] { must(gate->set_role(ann, Role::kRecorder)); });
  raises("a squad", [&] { must(gate->set_grants(ann, {{"u13", "2026-09-01", "", false}})); });
  raises("no squad", [&] { must(gate->set_grants(ann, {})); });
  raises("a password", [&] { must(gate->set_password(ann, "$argon2id$")); });
  raises("a second factor", [&] { must(gate->set_second(ann, "secret")); });
  Device phone;
  raises("a device", [&] { phone = test::pair(*gate, ann, "key"); });
  raises("a revocation", [&] { must(gate->revoke_device(phone.id, kMorning + 5)); });
  raises("an end", [&] { must(gate->end_account(ann, kMorning + 9)); });
}

TEST_P(PeopleVersion, StaysWithEverythingElse) {
  const std::string ann = add(*gate, "ann");
  const Device phone = test::pair(*gate, ann, "key");
  must(gate->set_second(ann, "secret"));
  leaves("being seen", [&] { ASSERT_TRUE(must(gate->device_seen(phone.id, kMorning + 60, 7))); });
  leaves("a code", [&] { ASSERT_TRUE(must(gate->use_second(ann, 12))); });
  leaves("signing in", [&] { must(gate->add_session(test::session_of(ann, "s"))); });
  leaves("a failure", [&] { must(gate->note_failure("address/192.0.2.1", kMorning)); });
  leaves("somebody new, whom nobody remembers", [&] { add(*gate, "bo"); });
  leaves("a link", [&] { must(gate->open_pairing(test::link_for(ann, "another"))); });
  leaves("a revocation of nobody", [&] { must(gate->revoke_device("d-0000000000000000", kMorning)); });
  leaves("the lists", [&] { must(directory->keep({"Quillmere Juniors", {{"u13", "Under 13"}}, {}}, "now")); });
}

}  // namespace
}  // namespace lanework::store
