// Andersen JC, Courson RW, Kleiner DM, McLoda TA 2002, J Athl Train 37(1):99-104 (PMC164314), read: an emergency plan
// is written for the venue with people and roles, equipment, communication, transport, the venue itself, the local
// ambulance service, and is reviewed and rehearsed every year.
#include <gtest/gtest.h>

#include "core/care/venue/missing.h"
#include "tests/care/venue/sample_venue.h"

namespace lanework::care {
namespace {

// The part that the plan lacks when this is taken out of it.
std::vector<PlanPart> lacks(void (*take_out)(VenuePlan&)) {
  VenuePlan plan = test::whole_plan();
  take_out(plan);
  std::vector<PlanPart> parts;
  for (const MissingItem& item : missing_on(plan, test::venue_day())) parts.push_back(item.part);
  return parts;
}

TEST(Andersen2002, NoneOfTheSevenMayBeMissing) {
  using Parts = std::vector<PlanPart>;
  EXPECT_EQ(lacks([](VenuePlan&) {}), Parts{});
  EXPECT_EQ(lacks([](VenuePlan& plan) { plan.calls.clear(); }), Parts{PlanPart::kPeople});
  EXPECT_EQ(lacks([](VenuePlan& plan) { plan.defibrillator.clear(); }), Parts{PlanPart::kEquipment});
  EXPECT_EQ(lacks([](VenuePlan& plan) { plan.phone.clear(); }), Parts{PlanPart::kCommunication});
  EXPECT_EQ(lacks([](VenuePlan& plan) { plan.way_in.clear(); }), Parts{PlanPart::kTransport});
  EXPECT_EQ(lacks([](VenuePlan& plan) { plan.address.clear(); }), Parts{PlanPart::kVenue});
  EXPECT_EQ(lacks([](VenuePlan& plan) { plan.ambulance_contact.reset(); }), Parts{PlanPart::kAmbulanceContact});
  EXPECT_EQ(lacks([](VenuePlan& plan) { plan.last_rehearsal.reset(); }), Parts{PlanPart::kRehearsal});
}

TEST(Andersen2002, RehearsedWithin365Days) {
  VenuePlan plan = test::whole_plan();
  plan.last_rehearsal = Date{test::venue_day().days_since_epoch - 365};
  EXPECT_TRUE(missing_on(plan, test::venue_day()).empty());
  plan.last_rehearsal = Date{test::venue_day().days_since_epoch - 366};
  const auto missing = missing_on(plan, test::venue_day());
  ASSERT_EQ(missing.size(), 1U);
  EXPECT_EQ(missing[0].words, "last rehearsal over a year ago");
}

}  // namespace
}  // namespace lanework::care
