#include "core/evidence/data_table.h"

#include <gtest/gtest.h>

#include "tests/evidence/table_of.h"

namespace lanework::evidence {
namespace {

std::string lines_of(const Faults& faults) {
  std::string out;
  for (const Fault& fault : faults) out += to_line(fault) + "\n";
  return out;
}

TEST(DataTable, NumbersWithPointOrComma) {
  const DataTable table = table_of({"hours"}, {{"12.5"}, {"12,5"}, {"+3"}, {"0"}, {"1e2"}});
  const auto numbers = numbers_of(table, 0, {0, 1000, "hours, 0 or more"});
  ASSERT_TRUE(numbers);
  EXPECT_EQ(numbers.value(), (std::vector<double>{12.5, 12.5, 3, 0, 100}));
}

TEST(DataTable, EveryCellThatCannotBeReadIsNamed) {
  const DataTable table = table_of({"hours"}, {{"x"}, {"1"}, {""}, {"-2"}, {"nan"}, {"1,234,5"}, {"inf"}});
  const auto numbers = numbers_of(table, 0, {0, 1000, "hours, 0 or more"});
  ASSERT_FALSE(numbers);
  EXPECT_EQ(lines_of(numbers.faults()),
            "weeks.csv:2: hours: found 'x', expected hours, 0 or more\n"
            "weeks.csv:4: hours: found nothing, expected hours, 0 or more\n"
            "weeks.csv:5: hours: found '-2', expected hours, 0 or more\n"
            "weeks.csv:6: hours: found 'nan', expected hours, 0 or more\n"
            "weeks.csv:7: hours: found '1,234,5', expected hours, 0 or more\n"
            "weeks.csv:8: hours: found 'inf', expected hours, 0 or more\n");
}

TEST(DataTable, CountsAreWhole) {
  const DataTable table = table_of({"events"}, {{"2"}, {"2.5"}, {"-1"}});
  const auto counts = counts_of(table, 0);
  ASSERT_FALSE(counts);
  EXPECT_EQ(counts.faults().size(), 2);
}

TEST(DataTable, ManyFaultsAreCountedNotListed) {
  const DataTable table = table_of({"events"}, std::vector<std::vector<std::string>>(100, {"?"}));
  const auto counts = counts_of(table, 0);
  ASSERT_FALSE(counts);
  ASSERT_EQ(counts.faults().size(), kMostCellFaults + 1);
  EXPECT_EQ(to_line(counts.faults().back()),
            "weeks.csv: events: found 100 such cells, expected none; the first 20 are listed");
}

TEST(DataTable, AMissingColumnNamesThoseThatAreThere) {
  const auto column = find_column(table_of({"week", "n"}, {}), "hours", "--hours");
  ASSERT_FALSE(column);
  EXPECT_EQ(to_line(column.faults().front()),
            "weeks.csv: --hours: found 'hours', expected a column of the table: 'week', 'n'");
}

}  // namespace
}  // namespace lanework::evidence
