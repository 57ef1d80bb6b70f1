#include "app/serve/metrics.h"

#include <gtest/gtest.h>

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
  for (std::string line; std::getline(lines, line);) {
    if (line.rfind("# HELP ", 0) == 0) {
      EXPECT_TRUE(helped.insert(line.substr(7, line.find(' ', 7) - 7)).second) << line;
    } else if (line.rfind("# TYPE ", 0) == 0) {
      EXPECT_TRUE(typed.insert(line.substr(7, line.find(' ', 7) - 7)).second) << line;
    } else {
      const std::string name = line.substr(0, line.find_first_of("{ "));
      const bool typed_so = typed.count(name) > 0;
      bool part = false;
      for (const std::string end : {"_bucket", "_sum", "_count"}) {
        part = part || (name.size() > end.size() && name.compare(name.size() - end.size(), end.size(), end) == 0 &&
                        typed.count(name.substr(0, name.size() - end.size())) > 0);
      }
      EXPECT_TRUE(typed_so || part) << line;
      const std::size_t open = line.find('{');
      EXPECT_EQ(open == std::string::npos, line.find('}') == std::string::npos) << line;
      char* end = nullptr;
      const std::string value = line.substr(line.rfind(' ') + 1);
      static_cast<void>(std::strtod(value.c_str(), &end));
      EXPECT_TRUE(!value.empty() && *end == '\0') << line;
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
