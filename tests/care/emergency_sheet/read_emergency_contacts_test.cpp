#include "core/care/emergency_sheet/read_emergency_contacts.h"

#include <gtest/gtest.h>

#include "tests/care/comma_sheet.h"

namespace lanework::care {
namespace {

const Date kDay = test::day("2026-11-26");
constexpr const char* kHeadings = "Player,Guardian,Phone,Allergy,Inhaler,Other,Consent,Withdrawn\n";

std::vector<people::Player> squad() {
  std::vector<people::Player> players(3);
  players[0].id = "Q01";
  players[1].id = "Q02";
  players[2].id = "Q03";
  return players;
}

Result<EmergencyContacts> read(const std::string& rows) {
  return read_emergency_contacts(test::comma_sheet(kHeadings + rows), {}, squad(), kDay);
}

TEST(ReadEmergencyContacts, OnlyOfTheSquadAndWithConsent) {
  const auto found = read(
      "Q02,Bo,+44 7700 900102,wasp,blue,none,2026-08-30,\n"
      "Q01,Ann,07700 900101,,,,2026-08-30,\n"
      "Q03,Cy,07700 900103,nut,,,2026-08-30,2026-10-01\n"
      "W09,Di,07700 900109,milk,,,2026-08-30,\n");
  ASSERT_TRUE(found);
  ASSERT_EQ(found.value().contacts.size(), 2U);
  EXPECT_EQ(found.value().contacts[0].player, "Q01");
  EXPECT_EQ(found.value().contacts[0].allergy, "");
  EXPECT_EQ(found.value().contacts[1].phone, "+44 7700 900102");
  EXPECT_EQ(found.value().contacts[1].inhaler, "blue");
  EXPECT_EQ(found.value().without_consent, 1);
  EXPECT_EQ(found.value().of_others, 1);
}

TEST(ReadEmergencyContacts, WithoutConsentNothingElseIsLookedAt) {
  const auto found = read("Q01,,call me,,,,,\nQ02,Bo,07700 900102,,,,2026-08-30,\n");
  ASSERT_TRUE(found);
  EXPECT_EQ(found.value().without_consent, 2);
}

TEST(ReadEmergencyContacts, FaultsNameThePlaceAndQuoteNothing) {
  const auto found = read(
      "Q01,,call me,nut,,,2026-08-30,\n"
      "Q02,Bo,07700 900102,nut,,,hazelnut,\n"
      "Q02,Bo,07700 900102,nut,,,2026-08-30,\n");
  ASSERT_FALSE(found);
  const std::string lines = test::lines_of(found.faults());
  EXPECT_NE(lines.find("sheet.csv:2: Guardian: found an empty cell"), std::string::npos) << lines;
  EXPECT_NE(lines.find("sheet.csv:2: Phone: found a cell that is not shown here, expected a phone number"),
            std::string::npos)
      << lines;
  EXPECT_NE(lines.find("sheet.csv:3: Consent"), std::string::npos) << lines;
  EXPECT_NE(lines.find("sheet.csv:4: Player"), std::string::npos) << lines;
  for (const char* told : {"call me", "nut", "07700", "Bo"}) EXPECT_EQ(lines.find(told), std::string::npos) << lines;
}

TEST(ReadEmergencyContacts, ASheetOfSomethingElseIsAFault) {
  const auto found = read_emergency_contacts(test::comma_sheet("a,b\n1,2\n"), {}, squad(), kDay);
  ASSERT_FALSE(found);
  EXPECT_NE(test::lines_of(found.faults()).find("docs/formats/emergency.md"), std::string::npos);
}

}  // namespace
}  // namespace lanework::care
