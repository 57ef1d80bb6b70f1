// Rosters as spreadsheets export them, in many hands' habits.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "app/read/read_roster.h"

namespace lanework::read {
namespace {

const Date kEvening = *make_date(2026, 11, 26);

std::vector<people::Player> players_of(const std::string& text, const RosterStatement& stated = {}) {
  auto players = read_roster("roster.csv", text, kEvening, stated);
  if (players) return players.value();
  for (const Fault& fault : players.faults()) ADD_FAILURE() << to_line(fault);
  return {};
}

std::string birth_read_as(const std::string& cell, const std::string& other = "2014-02-03") {
  const auto players = players_of("Name\tBorn\nAnna\t" + cell + "\nBo\t" + other + "\n");
  return players.size() == 2 && players[0].birth ? to_iso(*players[0].birth) : "nothing";
}

int grams_read_as(const std::string& heading, const std::string& cell) {
  const auto players = players_of("Name\t" + heading + "\nAnna\t" + cell + "\nBo\t\n");
  return players.size() == 2 ? players[0].body_mass_grams.value_or(-1) : -2;
}

TEST(Roster, ReadsWhatAClubKeeps) {
  const auto players = players_of(
      "Quillmere Juniors;;;;;;;;;\r\n"
      "Players as of 12/11/2026;;;;;;;;;\r\n"
      ";;;;;;;;;\r\n"
      "Player ID;Name;Date of birth (dd/mm/yyyy);Team;Shirt;Size group;Weight (kg);Height (cm);Contact OK;Medical\r\n"
      "Q01;\"Klein, Zoë\";03/04/2013;U13;7;2;38,5;152;yes;asthma\r\n"
      "Q02;Bo Lind;04/03/2014;\"U13; U14\";10;1;;;;\r\n"
      "\r\n"
      "Total;2;;;;;38,5;;;\r\n"
      "Printed by the office;;;;;;;;;\r\n");
  ASSERT_EQ(players.size(), 2U);
  EXPECT_EQ(players[0].id, "Q01");
  EXPECT_EQ(players[0].name, "Klein, Zoë");
  EXPECT_EQ(to_iso(*players[0].birth), "2013-04-03");
  EXPECT_EQ(players[0].squads, std::vector<std::string>{"U13"});
  EXPECT_EQ(players[0].shirt, "7");
  EXPECT_EQ(players[0].size_group, 2);
  EXPECT_EQ(players[0].body_mass_grams, 38500);
  EXPECT_TRUE(players[0].contact_ok);
  EXPECT_EQ(players[0].row, 5);
  EXPECT_EQ(players[1].squads, (std::vector<std::string>{"U13", "U14"}));
  EXPECT_FALSE(players[1].contact_ok);  // nobody has said yes
  EXPECT_FALSE(players[1].body_mass_grams);
}

TEST(Roster, NamesComeInOnePieceOrTwo) {
  EXPECT_EQ(players_of("Vorname;Name\nAnna;Groß\nBo;Lind\n")[0].name, "Anna Groß");
  EXPECT_EQ(players_of("Nom;Prénom\nBlanc;Chloé\nLind;Bo\n")[0].name, "Chloé Blanc");
  EXPECT_EQ(players_of("Nombre;Apellidos\nLucía;Muñoz\nBo;Lind\n")[0].name, "Lucía Muñoz");
  EXPECT_EQ(players_of("Surname,First name\nLind,Bo\nGray,Al\n")[0].name, "Bo Lind");
  EXPECT_EQ(players_of("Name,First name\nBo Lind,Bo\nAl Gray,Al\n")[0].name, "Bo Lind");
  EXPECT_EQ(players_of("姓名,年龄\n王小明,12\n李娜,13\n")[0].name, "王小明");
  EXPECT_EQ(players_of("ФИО;Дата рождения\nЙоганн Ёлкин;03.04.2013\nБо;04.05.2013\n")[0].name, "Йоганн Ёлкин");
  EXPECT_EQ(players_of("이름,나이\n김하늘,12\n이바다,13\n")[0].name, "김하늘");
}

TEST(Roster, NamesThatLookLikeOtherThingsStayNames) {
  const std::vector<std::string> names = {"=cmd|' /C calc'!A0",
                                          "@SUM(A1)",
                                          "+49",
                                          "-1",
                                          "<b>Bo</b>",
                                          "Soma Kovács",
                                          "null",
                                          "Suma",
                                          "100%",
                                          "{{ player }}",
                                          "NaN",
                                          "Total Eclipse x"};
  std::string text = "Name\tAge\n";
  for (const std::string& name : names) text += name + "\t12\n";
  const auto players = players_of(text);
  ASSERT_EQ(players.size(), names.size() - 1);  // what begins with 'Total' is a sum
  for (std::size_t i = 0; i < players.size(); ++i) EXPECT_EQ(players[i].name, names[i]);
}

TEST(Roster, MissingIdsAreMadeByPosition) {
  const auto players = players_of("Name\nAnna\nBo\nCleo\n");
  ASSERT_EQ(players.size(), 3U);
  EXPECT_EQ(players[0].id, "P01");
  EXPECT_EQ(players[2].id, "P03");
}

TEST(Roster, BirthDates) {
  for (const char* cell : {"2013-05-31",
                           "2013/05/31",
                           "2013.5.31",
                           "20130531",
                           "31.05.2013",
                           "31.5.13",
                           "31/05/2013",
                           "5/31/2013",
                           "31 05 2013",
                           "31/05/13",
                           "31 May 2013",
                           "31-May-13",
                           "May 31, 2013",
                           "31. Mai 2013",
                           "31 mai 2013",
                           "31 de mayo de 2013",
                           "31st May 2013",
                           "2013 May 31",
                           "2013-05-31 00:00:00",
                           "2013-05-31T00:00:00",
                           "31/05/2013 00:00",
                           "41425",
                           "41425.0",
                           "41425,0"}) {
    EXPECT_EQ(birth_read_as(cell), "2013-05-31") << cell;
  }
}

TEST(Roster, OneDateDecidesForTheColumn) {
  EXPECT_EQ(birth_read_as("03/04/2013", "25/12/2013"), "2013-04-03");
  EXPECT_EQ(birth_read_as("03/04/2013", "12/25/2013"), "2013-03-04");
  EXPECT_EQ(birth_read_as("05/05/2013", "06/06/2013"), "2013-05-05");
  RosterStatement stated;
  stated.order = people::DateOrder::kMonthFirst;
  const std::string open = "Name,Born\nAnna,03/04/2013\nBo,04/03/2013\n";
  EXPECT_EQ(to_iso(*players_of(open, stated)[0].birth), "2013-03-04");
  const std::string by_heading = "Name,Born (MM/DD/YYYY)\nAnna,03/04/2013\nBo,04/03/2013\n";
  EXPECT_EQ(to_iso(*players_of(by_heading)[0].birth), "2013-03-04");
  const std::string in_german = "Name;geb. (TT.MM.JJJJ)\nAnna;03/04/2013\nBo;04/03/2013\n";
  EXPECT_EQ(to_iso(*players_of(in_german)[0].birth), "2013-04-03");
}

// Serial numbers: 1 is 1 January 1900, 60 the 29 February 1900 that never was, 61 is 1 March 1900; on the
// other system 1 is 2 January 1904, and the same day's numbers lie 1462 apart. Common knowledge of both
// systems, from memory; 43831 is 1 January 2020 as spreadsheets show it.
TEST(Roster, SerialNumbers) {
  using people::date_of_serial;
  using people::SerialSystem;
  EXPECT_EQ(date_of_serial(1, SerialSystem::k1900), make_date(1900, 1, 1));
  EXPECT_EQ(date_of_serial(59, SerialSystem::k1900), make_date(1900, 2, 28));
  EXPECT_FALSE(date_of_serial(60, SerialSystem::k1900));
  EXPECT_EQ(date_of_serial(61, SerialSystem::k1900), make_date(1900, 3, 1));
  EXPECT_EQ(date_of_serial(43831, SerialSystem::k1900), make_date(2020, 1, 1));
  EXPECT_EQ(date_of_serial(1, SerialSystem::k1904), make_date(1904, 1, 2));
  EXPECT_EQ(date_of_serial(43831 - 1462, SerialSystem::k1904), make_date(2020, 1, 1));
  RosterStatement stated;
  stated.serials = SerialSystem::k1904;
  EXPECT_EQ(to_iso(*players_of("Name,Born,Age\nAnna,39963,13\nBo,40000,13\n", stated)[0].birth), "2013-05-31");
}

// The pound is 0.45359237 kg and the stone 14 pounds, exactly (international yard and pound agreement, 1959).
TEST(Roster, BodyMass) {
  EXPECT_EQ(grams_read_as("Weight (kg)", "38.5"), 38500);
  EXPECT_EQ(grams_read_as("Weight [kg]", "38,5"), 38500);
  EXPECT_EQ(grams_read_as("Body mass in kg", "38,54"), 38540);
  EXPECT_EQ(grams_read_as("Gewicht", "38,5"), 38500);
  EXPECT_EQ(grams_read_as("Weight", "38.5kg"), 38500);
  EXPECT_EQ(grams_read_as("Weight (lbs)", "84"), 38102);
  EXPECT_EQ(grams_read_as("Weight", "84 lb"), 38102);
  EXPECT_EQ(grams_read_as("Weight", "84 Pounds"), 38102);
  EXPECT_EQ(grams_read_as("Weight", "6 st 4 lb"), 39916);
  EXPECT_EQ(grams_read_as("Weight", "6st 4"), 39916);
  EXPECT_EQ(grams_read_as("Weight (kg)", ""), -1);
}

TEST(Roster, HeightsAreCheckedAndForgotten) {
  for (const char* cell : {"152", "152 cm", "1,52", "1.52 m", "1 m 52", "5'2\"", "5’ 2”", "5 ft 2 in", "5ft2", "5′ 2″",
                           "62 in", "152.5cm", ""}) {
    EXPECT_EQ(players_of(std::string("Name\tHeight\nAnna\t") + cell + "\nBo\t160\n").size(), 2U) << cell;
  }
}

TEST(Roster, YesAndNo) {
  for (const char* yes : {"yes", "Y", "TRUE", "x", "1", "ja", "Oui", "sí", "tak", "да", "✓"}) {
    EXPECT_TRUE(players_of(std::string("Name,Contact OK\nAnna,") + yes + "\nBo,\n")[0].contact_ok) << yes;
  }
  for (const char* no : {"no", "N", "FALSE", "0", "-", "nein", "Non", "não", "nie", "нет", "", " "}) {
    EXPECT_FALSE(players_of(std::string("Name,Contact OK\nAnna,") + no + "\nBo,yes\n")[0].contact_ok) << no;
  }
}

TEST(Roster, ConsentAndMedicalColumnsAreNotRead) {
  const auto players = players_of(
      "Name,Photo consent,Contact,Emergency contact,Medical notes,Allergies,Phone\n"
      "Anna,no,no,mum,knee,nuts,123\nBo,perhaps,no,dad,,,\n");
  ASSERT_EQ(players.size(), 2U);
  EXPECT_TRUE(players[0].contact_ok);
}

TEST(Roster, RepeatedHeadingsAndPlainInchMarks) {
  const auto players = players_of("Name,Height\nAnna,5'2\"\nName,Height\nBo,5'1\"\n");
  ASSERT_EQ(players.size(), 2U);
  EXPECT_EQ(players[1].name, "Bo");
}

TEST(Roster, ASeparatorMayBeStated) {
  EXPECT_EQ(players_of("sep=;\nName;Age\nAnna;12\nBo;13\n").size(), 2U);
  EXPECT_EQ(players_of("Name\tAge\rAnna\t12\rBo\t13\r").size(), 2U);
}

}  // namespace
}  // namespace lanework::read
