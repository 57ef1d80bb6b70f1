#include "app/serve/http/request_reader.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <string_view>

namespace lanework::serve {
namespace {

using Step = RequestReader::Step;

void put(RequestReader& reader, std::string_view bytes) {
  const auto room = reader.room();
  ASSERT_GE(room.size(), bytes.size());
  std::copy(bytes.begin(), bytes.end(), room.begin());
  reader.came(bytes.size());
}

// Steps until something other than more is asked for, or the bytes are used up.
Step step_through(RequestReader& reader, std::string_view& bytes, std::size_t piece) {
  while (true) {
    const Step step = reader.step();
    if (step != Step::kMore || bytes.empty()) return step;
    const std::size_t count = std::min({piece, bytes.size(), reader.room().size()});
    put(reader, bytes.substr(0, count));
    bytes.remove_prefix(count);
  }
}

std::string post(const std::string& body, const std::string& more = "") {
  return "POST /api/sync?a=1 HTTP/1.1\r\nHost: h\r\n" + more + "Content-Length: " + std::to_string(body.size()) +
         "\r\n\r\n" + body;
}

TEST(RequestReader, ARequestIsAValue) {
  RequestReader reader({});
  EXPECT_TRUE(reader.is_idle());
  EXPECT_EQ(reader.step(), Step::kMore);
  std::string_view bytes =
      "POST /a/b?c=d?e HTTP/1.1\r\nHost: H\r\nX-Two: 1\r\nx-two: 2\r\nContent-Length: 2\r\n\r\n{}GET";
  EXPECT_EQ(step_through(reader, bytes, 100), Step::kWhole);
  EXPECT_EQ(reader.version(), 11U);
  EXPECT_TRUE(reader.keeps_alive());
  const Request request = reader.take();
  EXPECT_EQ(request.method, "POST");
  EXPECT_EQ(request.path, "/a/b");
  EXPECT_EQ(request.query, "c=d?e");
  EXPECT_EQ(request.header("host"), "H");
  EXPECT_EQ(request.count("x-two"), 2);
  EXPECT_EQ(request.body, "{}");
  EXPECT_FALSE(reader.is_idle()) << "the next one has begun";
  EXPECT_EQ(reader.step(), Step::kMore);
  reader.ended();
  EXPECT_EQ(reader.step(), Step::kRefused) << "and is cut short";
  EXPECT_EQ(reader.refusal(), 400);
}

TEST(RequestReader, WhoIsDoneBetweenTwoRequestsIsDone) {
  RequestReader reader({});
  std::string_view bytes = "GET / HTTP/1.0\r\n\r\n";
  EXPECT_EQ(step_through(reader, bytes, 100), Step::kWhole);
  EXPECT_FALSE(reader.keeps_alive());
  EXPECT_EQ(reader.take().path, "/");
  reader.ended();
  EXPECT_EQ(reader.step(), Step::kEnd);
}

TEST(RequestReader, GoOnIsSaidOnceBeforeTheBody) {
  RequestReader reader({});
  const std::string text = post("{}", "Expect: 100-continue\r\n");
  std::string_view head(text.data(), text.size() - 2);
  EXPECT_EQ(step_through(reader, head, 100), Step::kGoOn);
  EXPECT_TRUE(reader.in_body());
  EXPECT_EQ(reader.step(), Step::kMore);
  put(reader, "{}");
  EXPECT_EQ(reader.step(), Step::kWhole);
  EXPECT_EQ(reader.take().body, "{}");
}

TEST(RequestReader, WhatIsTooLargeIsRefusedBeforeItIsHeld) {
  const auto refusal = [](const std::string& text) {
    RequestReader reader({1024, 2048});
    std::string_view bytes = text;
    EXPECT_EQ(step_through(reader, bytes, 512), Step::kRefused) << text.substr(0, 60);
    EXPECT_EQ(reader.step(), Step::kRefused) << "nothing more of that connection is read";
    return reader.refusal();
  };
  EXPECT_EQ(refusal("GET /" + std::string(3000, 'a') + " HTTP/1.1\r\n\r\n"), 431);
  EXPECT_EQ(refusal("GET / HTTP/1.1\r\nX: " + std::string(3000, 'a') + "\r\n\r\n"), 431);
  EXPECT_EQ(refusal(post(std::string(2049, 'a'))), 413);
  EXPECT_EQ(refusal("POST / HTTP/1.1\r\nTransfer-Encoding: chunked\r\n\r\n801\r\n" + std::string(2049, 'a')), 413);
  EXPECT_EQ(refusal("POST / HTTP/1.1\r\nTransfer-Encoding: gzip\r\n\r\n"), 400);
  EXPECT_EQ(refusal("POST / HTTP/1.1\r\nTransfer-Encoding: chunked\r\n\r\n" + std::string(5000, '0')), 400);
}

// RFC 9112, 3.2.1: a client sends '/' where the path is empty.
TEST(RequestReader, ATargetWithoutAPathIsRefused) {
  for (const char* target : {"?a=1", "?"}) {
    RequestReader reader({});
    const std::string text = std::string("GET ") + target + " HTTP/1.1\r\nHost: h\r\n\r\n";
    std::string_view bytes = text;
    EXPECT_EQ(step_through(reader, bytes, 100), Step::kRefused) << target;
    EXPECT_EQ(reader.refusal(), 400);
  }
}

TEST(RequestReader, TheLastChunkMayComeByteByByte) {
  RequestReader reader({});
  std::string_view bytes = "POST / HTTP/1.1\r\nHost: h\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n";
  EXPECT_EQ(step_through(reader, bytes, 1), Step::kWhole);
  EXPECT_EQ(reader.take().body, "");
}

RC_GTEST_PROP(RequestReader, HowTheBytesArriveChangesNothing, (const std::string& body)) {
  const std::string chunk = body.substr(0, 15);
  const char* digits = "0123456789abcdef";
  const std::string chunked = chunk.empty() ? "" : std::string(1, digits[chunk.size()]) + "\r\n" + chunk + "\r\n";
  const std::string text = post(body) + "GET /health HTTP/1.1\r\nHost: h\r\n\r\n" +
                           "POST /c HTTP/1.1\r\nHost: h\r\nTransfer-Encoding: chunked\r\n\r\n" + chunked + "0\r\n\r\n";
  const auto piece = *rc::gen::inRange<std::size_t>(1, 70);
  RequestReader reader({});
  std::string_view bytes = text;
  RC_ASSERT(step_through(reader, bytes, piece) == Step::kWhole);
  RC_ASSERT(reader.take().body == body);
  RC_ASSERT(step_through(reader, bytes, piece) == Step::kWhole);
  RC_ASSERT(reader.take().path == "/health");
  RC_ASSERT(step_through(reader, bytes, piece) == Step::kWhole);
  RC_ASSERT(reader.take().body == chunk);
  reader.ended();
  RC_ASSERT(reader.step() == Step::kEnd);
}

}  // namespace
}  // namespace lanework::serve
