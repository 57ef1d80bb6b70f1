#include "app/serve/http/http_date.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <ctime>

namespace lanework::serve {
namespace {

// RFC 9110, 5.6.7: its own example.
TEST(HttpDate, IsAsTheStandardWritesIt) {
  EXPECT_EQ(http_date(784'111'777), "Sun, 06 Nov 1994 08:49:37 GMT");
  EXPECT_EQ(http_date(784'887'151), "Tue, 15 Nov 1994 08:12:31 GMT") << "RFC 9110, 6.6.1";
  EXPECT_EQ(http_date(0), "Thu, 01 Jan 1970 00:00:00 GMT");
  EXPECT_EQ(http_date(951'782'400), "Tue, 29 Feb 2000 00:00:00 GMT");
  EXPECT_EQ(http_date(-1), "Wed, 31 Dec 1969 23:59:59 GMT");
}

// The C library's, which the tests run with the locale "C".
RC_GTEST_PROP(HttpDate, IsTheCLibrarysInEnglish, ()) {
  const auto seconds = *rc::gen::inRange<std::int64_t>(0, 32'503'680'000);  // to the year 3000
  const auto time = static_cast<std::time_t>(seconds);
  std::tm parts{};
  gmtime_r(&time, &parts);
  std::array<char, 40> text{};
  std::strftime(text.data(), text.size(), "%a, %d %b %Y %H:%M:%S GMT", &parts);
  RC_ASSERT(http_date(seconds) == text.data());
}

}  // namespace
}  // namespace lanework::serve
