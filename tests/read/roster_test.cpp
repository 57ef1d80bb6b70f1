#include <gtest/gtest.h>

#include "app/read/read_roster.h"

namespace lanework::read {
namespace {
TEST(Roster, Reads) {
  const auto players = read_roster("r.csv", "Quillmere Juniors;;\nName;Date of birth;Weight (kg)\n\"Zoë\nKlein\";31/05/2013;38,5\nBo;1/2/2014;40 kg\nTotal;2;\n", *make_date(2026,11,26));
  if (!players) { for (auto& f: players.faults()) printf("%s\n", to_line(f).c_str()); }
  ASSERT_TRUE(players);
  EXPECT_EQ(players.value().size(), 2u);
}
}
}
