#include "app/serve/metrics.h"

#include <gtest/gtest.h>

#include <regex>
#include <set>
#include <sstream>

#include "app/serve/log.h"

namespace lanework::serve {
namespace {

// As the text format 0.0.4 has it: one HELP and one TYPE before the samples of a name, every line ended.
TEST(Metrics, AreTextThatPrometheusReads) {
  Metrics metrics;
  metrics.answered("sync", 200, 0.004);
  metrics.answered("sync", 503, 9.0);
  metrics.answered("week", 200, 0.0005);
  metrics.entries("stored", 3);
  EdgeCounts edge;
  edge.connections_now = 2;
  const std::string text = metrics.text(edge);
  ASSERT_EQ(text.back(), '\n');
  std::istringstream lines(text);
  std::set<std::string> helped;
  std::set<std::string> typed;
  std::set<std::string> samples;
  const std::regex sample(R"(([a-z_]+?)(_bucket|_sum|_count)?(\{[a-z]+="[^"\\]*"(,[a-z]+="[^"\\]*")*\})? [0-9.e+-]+)");
  for (std::string line; std::getline(lines, line);) {
    if (line.rfind("# HELP ", 0) == 0) {
      EXPECT_TRUE(helped.insert(line.substr(7, line.find(' ', 7) - 7)).second) << line;
    } else if (line.rfind("# TYPE ", 0) == 0) {
      EXPECT_TRUE(typed.insert(line.substr(7, line.find(' ', 7) - 7)).second) << line;
    } else {
      std::smatch found;
      ASSERT_TRUE(std::regex_match(line, found, sample)) << line;
      EXPECT_TRUE(typed.count(found[1]) || typed.count(found[1].str() + found[2].str())) << line;
      EXPECT_TRUE(samples.insert(line.substr(0, line.rfind(' '))).second) << "twice: " << line;
    }
  }
  EXPECT_EQ(helped, typed);
  EXPECT_NE(text.find("lanework_request_seconds_bucket{route=\"sync\",le=\"+Inf\"} 2\n"), std::string::npos);
  EXPECT_NE(text.find("lanework_request_seconds_count{route=\"sync\"} 2\n"), std::string::npos);
  EXPECT_NE(text.find("lanework_request_seconds_bucket{route=\"sync\",le=\"0.005\"} 1\n"), std::string::npos);
  EXPECT_NE(text.find("lanework_requests_total{route=\"sync\",class=\"5xx\"} 1\n"), std::string::npos);
  EXPECT_NE(text.find("lanework_entries_total{verdict=\"stored\"} 3\n"), std::string::npos);
}

TEST(Log, ALineIsOneLineWhateverStandsInIt) {
  LogLine line;
  line.seconds = 1'795'700'000;
  line.event = "request";
  line.why = "a\nb\x1b[31m\"";
  const std::string text = to_text(line);
  EXPECT_EQ(text.find('\n'), std::string::npos);
  EXPECT_EQ(text.find('\x1b'), std::string::npos);
  EXPECT_EQ(text.find("{\"time\":\"2026-11-26T"), 0U) << text;
}

}  // namespace
}  // namespace lanework::serve
