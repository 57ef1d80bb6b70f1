// The web app's files as they are handed out: by brotli where it lies beside them, by gzip, or plain.
#include "app/serve/static_files.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

namespace lanework::serve::test {
namespace {

namespace fs = std::filesystem;

class Folder {
 public:
  Folder() : path_(fs::temp_directory_path() / ("lanework-files-" + std::to_string(::getpid()))) {
    fs::remove_all(path_);
    fs::create_directories(path_);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() { fs::remove_all(path_); }
  void put(const std::string& name, const std::string& bytes) const {
    std::ofstream(path_ / name, std::ios::binary) << bytes;
  }
  [[nodiscard]] std::string name() const { return path_.string(); }

 private:
  fs::path path_;
};

Response asked(const StaticFiles& files, const std::string& path, const std::string& accepts) {
  Request request;
  request.path = path;
  request.headers.emplace_back("accept-encoding", accepts);
  return files.answer(request).value();
}

std::string coding(const Response& response) {
  for (const auto& [name, value] : response.headers) {
    if (name == "Content-Encoding") return value;
  }
  return "plain";
}

TEST(StaticFiles, TheSmallestThatTheBrowserTakes) {
  const Folder folder;
  const std::string program(4000, 'a');
  folder.put("main-0123abcd.js", program);
  folder.put("main-0123abcd.js.br", "by brotli");
  folder.put("page.css", program);
  folder.put("short.txt", "x");
  folder.put("short.txt.br", "longer than it was");
  const auto files = StaticFiles::read(folder.name());
  ASSERT_TRUE(files);
  const std::string script = "/main-0123abcd.js";
  EXPECT_EQ(coding(asked(files.value(), script, "gzip, deflate, br, zstd")), "br");
  EXPECT_EQ(*asked(files.value(), script, "gzip, br").file, "by brotli");
  EXPECT_EQ(coding(asked(files.value(), script, "gzip, br;q=0")), "gzip");
  EXPECT_EQ(coding(asked(files.value(), script, "br;q=0.1")), "br");
  EXPECT_EQ(coding(asked(files.value(), script, "br;q=0.000, gzip;q=0.0")), "plain");
  EXPECT_EQ(coding(asked(files.value(), script, "brotli, xgzip")), "plain");
  EXPECT_EQ(*asked(files.value(), script, "").file, program);
  EXPECT_EQ(coding(asked(files.value(), "/page.css", "br, gzip")), "gzip");
  EXPECT_EQ(coding(asked(files.value(), "/short.txt", "br, gzip")), "plain");
}

TEST(StaticFiles, AFolderIsItsPage) {
  const Folder folder;
  fs::create_directories(folder.name() + "/desk");
  folder.put("index.html", "the phone's");
  folder.put("desk/index.html", "the desk's");
  const auto files = StaticFiles::read(folder.name());
  ASSERT_TRUE(files);
  for (const char* path : {"/desk", "/desk/", "/desk/index.html"}) {
    EXPECT_EQ(*asked(files.value(), path, "").file, "the desk's") << path;
  }
  EXPECT_EQ(*asked(files.value(), "/", "").file, "the phone's");
  Request request;
  request.path = "/desk/none/";
  EXPECT_FALSE(files.value().answer(request));
}

TEST(StaticFiles, WhatIsCompressedIsNoPathOfItsOwn) {
  const Folder folder;
  folder.put("main.js", std::string(100, 'a'));
  folder.put("main.js.br", "b");
  const auto files = StaticFiles::read(folder.name());
  ASSERT_TRUE(files);
  Request request;
  request.path = "/main.js.br";
  EXPECT_FALSE(files.value().answer(request));
}

TEST(StaticFiles, BrotliOfNothingIsAFault) {
  const Folder folder;
  folder.put("main.js.br", "b");
  const auto files = StaticFiles::read(folder.name());
  ASSERT_FALSE(files);
  EXPECT_NE(to_line(files.faults().front()).find("main.js.br: found '.br'"), std::string::npos);
}

}  // namespace
}  // namespace lanework::serve::test
