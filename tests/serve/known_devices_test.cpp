// What the server remembers of a device never outlives what the store says.
#include "app/serve/known_devices.h"

#include <gtest/gtest.h>

#include "app/serve/now.h"
#include "core/base/document.h"
#include "tests/serve/house_of_test.h"

namespace lanework::serve {
namespace {

using ledger::Role;
using test::HouseOfTest;

KnownDevice known(const std::string& secret, ledger::Role role) {
  KnownDevice out;
  out.device.secret = secret;
  out.account.role = role;
  return out;
}

TEST(KnownDevices, HoldForTheirVersionOnly) {
  KnownDevices devices;
  EXPECT_FALSE(devices.find("a", 1));
  devices.keep(known("a", Role::kCoach), 1);
  ASSERT_TRUE(devices.find("a", 1));
  EXPECT_FALSE(devices.find("a", 2)) << "something changed since";
  devices.keep(known("b", Role::kLead), 2);
  EXPECT_FALSE(devices.find("a", 2));
  EXPECT_FALSE(devices.find("b", 1));
  devices.keep(known("b", Role::kCoach), 1);
  EXPECT_EQ(devices.find("b", 2)->account.role, Role::kLead) << "who asked before the change comes too late";
}

TEST(KnownDevices, BeingSeenNeverGoesBack) {
  KnownDevices devices;
  devices.seen("a", 50, 5);
  devices.keep(known("a", Role::kCoach), 1);
  devices.seen("a", 50, 5);
  devices.seen("a", 40, 4);
  EXPECT_EQ(devices.find("a", 1)->device.seen, 50);
  EXPECT_EQ(devices.find("a", 1)->device.sequence, 5);
}

class RememberedDevice : public testing::Test {
 protected:
  HouseOfTest house;
  std::string coach;
  std::string secret;
  int sent = 0;

  void SetUp() override {
    house.now = seconds_of_stamp("2026-11-26T18:05:00+01:00");
    coach = house.account(Role::kCoach, {{"u13", "2026-09-01", "", false}});
    secret = house.device(coach);
  }
  // The status, or of a good answer the verdict on an entry about that squad.
  std::string told() {
    char id[40];
    std::snprintf(id, sizeof id, "019abcde-0000-7000-8000-%012d", ++sent);
    const Response answer = house.ask(
        "POST", "/api/sync",
        R"({"client":1,"most":0,"entries":[{"id":")" + std::string(id) + R"(","sequence":)" + std::to_string(sent) +
            R"(,"device_time":"2026-11-26T18:04:10+01:00","kind":"session-started","squad":"u13","day":"2026-11-26","start":"18:00"}]})",
        "", secret);
    if (answer.status != 200) return std::to_string(answer.status);
    const auto body = parse_json("answer", answer.body);
    return body.value().root.find("verdicts")->items.front().find("verdict")->text;
  }
};

TEST_F(RememberedDevice, LosesItsSquadAtTheNextCall) {
  EXPECT_EQ(told(), "stored");
  EXPECT_EQ(told(), "stored");
  ASSERT_TRUE(house.room().gate->set_grants(coach, {}));
  EXPECT_EQ(told(), "kept-aside");
  ASSERT_TRUE(house.room().gate->set_grants(coach, {{"u13", "2026-09-01", "", false}}));
  EXPECT_EQ(told(), "stored");
}

TEST_F(RememberedDevice, IsRevokedAtTheNextCall) {
  EXPECT_EQ(told(), "stored");
  const std::vector<store::Device> devices = house.room().gate->devices().value();
  ASSERT_EQ(devices.size(), 1U);
  ASSERT_TRUE(house.room().gate->revoke_device(devices.front().id, house.now).value());
  EXPECT_EQ(told(), "401");
}

TEST_F(RememberedDevice, EndsWithItsAccountAtTheNextCall) {
  EXPECT_EQ(told(), "stored");
  ASSERT_TRUE(house.room().gate->end_account(coach, house.now));
  EXPECT_EQ(told(), "401");
}

TEST_F(RememberedDevice, IsWrittenDownAsSeenOnceAMinute) {
  const auto seen = [this] { return house.room().gate->devices().value().front().seen; };
  house.now += 300;
  EXPECT_EQ(told(), "stored");
  EXPECT_EQ(seen(), house.now);
  house.now += 30;
  EXPECT_EQ(told(), "stored");
  EXPECT_EQ(seen(), house.now - 30);
  house.now += 30;
  EXPECT_EQ(told(), "stored");
  EXPECT_EQ(seen(), house.now);
}

}  // namespace
}  // namespace lanework::serve
