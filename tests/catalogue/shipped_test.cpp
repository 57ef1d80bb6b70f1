// The shipped catalogue: sound, and enough for every age and place.
#include "tests/catalogue/shipped.h"

#include <gtest/gtest.h>

#include <map>
#include <set>

namespace lanework::catalogue::test {
namespace {

TEST(Shipped, ReadsClean) {
  const Result<Catalogue> catalogue = read_catalogue(shipped_documents());
  ASSERT_TRUE(catalogue.ok()) << all_lines(catalogue.faults());
  EXPECT_GE(catalogue.value().drills.size(), 40U);
}

}  // namespace
}  // namespace lanework::catalogue::test
