#include "app/read/files.h"

#include <gtest/gtest.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include <string>

#include "tests/read/scratch_folder.h"

namespace lanework::read {
namespace {

std::string line_of(const Result<std::string>& result) {
  return result ? "no fault" : to_line(result.faults().front());
}

TEST(Files, ReadWhatWasWritten) {
  const ScratchFolder folder;
  const std::string bytes("text\r\n\0\xFF end", 12);
  ASSERT_FALSE(write_file_atomically(folder.path("a.csv"), bytes));
  ASSERT_FALSE(write_file_atomically(folder.path("a.csv"), bytes + "2"));
  const auto read = read_file(folder.path("a.csv"));
  ASSERT_TRUE(read);
  EXPECT_EQ(read.value(), bytes + "2");
  EXPECT_EQ(folder.names(), std::vector<std::string>{"a.csv"});
}

TEST(Files, WhatCannotBeReadSaysWhy) {
  const ScratchFolder folder;
  EXPECT_EQ(line_of(read_file(folder.path("none.csv"))),
            folder.path("none.csv") + ": found no such file, expected a file that can be read");
  EXPECT_EQ(line_of(read_file(folder.path())), folder.path() + ": found a folder, expected a file that can be read");
  EXPECT_EQ(line_of(read_file("/dev/null")), "/dev/null: found not a plain file, expected a file that can be read");
  ASSERT_EQ(mkfifo(folder.path("pipe").c_str(), 0600), 0);
  EXPECT_EQ(line_of(read_file(folder.path("pipe"))),
            folder.path("pipe") + ": found not a plain file, expected a file that can be read");
  const Place squad{"squad.toml", 3, 1, "roster"};
  EXPECT_EQ(line_of(read_file(folder.path("none.csv"), squad)),
            "squad.toml:3:1: roster: found '" + folder.path("none.csv").substr(0, 60) +
                (folder.path("none.csv").size() > 60 ? "...'" : "'") +
                ", no such file, expected a file that can be read");
}

TEST(Files, AFailedWriteLeavesTheOldFile) {
  const ScratchFolder folder;
  ASSERT_FALSE(write_file_atomically(folder.path("card.pdf"), "old"));
  // A limit on file sizes stops the write in the middle, as a full disk does.
  const auto before = signal(SIGXFSZ, SIG_IGN);
  rlimit limit{};
  getrlimit(RLIMIT_FSIZE, &limit);
  const rlimit small{4096, limit.rlim_max};
  setrlimit(RLIMIT_FSIZE, &small);
  const auto fault = write_file_atomically(folder.path("card.pdf"), std::string(100'000, 'x'));
  setrlimit(RLIMIT_FSIZE, &limit);
  signal(SIGXFSZ, before);
  ASSERT_TRUE(fault);
  EXPECT_EQ(fault->code, FaultCode::kCannotWrite);
  EXPECT_EQ(read_file(folder.path("card.pdf")).value(), "old");
  EXPECT_EQ(folder.names(), std::vector<std::string>{"card.pdf"});
}

TEST(Files, WritingIntoNowhereIsAFault) {
  const ScratchFolder folder;
  EXPECT_TRUE(write_file_atomically(folder.path("missing/card.pdf"), "x"));
  EXPECT_TRUE(write_file_atomically(folder.path(), "x"));
}

TEST(Files, ANewFileIsReadableByOthersAsTheUserWishes) {
  const ScratchFolder folder;
  const mode_t before = umask(027);
  ASSERT_FALSE(write_file_atomically(folder.path("card.pdf"), "x"));
  umask(before);
  struct stat about {};
  ASSERT_EQ(stat(folder.path("card.pdf").c_str(), &about), 0);
  EXPECT_EQ(about.st_mode & 0777U, 0640U);
}

TEST(CatalogueFolders, TheShippedOneIsRead) {
  const auto documents = read_catalogue_folders({std::string(LANEWORK_SOURCE_DIR) + "/catalogue"});
  ASSERT_TRUE(documents) << to_line(documents.faults().front());
  EXPECT_GE(documents.value().drills.size(), 40U);
  EXPECT_FALSE(documents.value().sources.root.entries.empty());
}

TEST(CatalogueFolders, AClubAddsDrillsAndReplacesTables) {
  const ScratchFolder shipped;
  for (const char* name : {"families.toml", "limits.toml", "gaits.toml", "sources.toml"}) {
    shipped.write(name, "from = \"shipped\"\n");
  }
  shipped.write("drills/b.toml", "id = \"b\"\n");
  shipped.write("drills/a.toml", "id = \"a\"\n");
  shipped.write("drills/notes.txt", "not a drill");
  const ScratchFolder own;
  own.write("our-drill.toml", "id = \"our-drill\"\n");
  own.write("limits.toml", "from = \"own\"\n");
  const auto documents = read_catalogue_folders({shipped.path(), own.path()});
  ASSERT_TRUE(documents) << to_line(documents.faults().front());
  std::vector<std::string> ids;
  for (const Document& drill : documents.value().drills) ids.push_back(drill.root.find("id")->text);
  EXPECT_EQ(ids, (std::vector<std::string>{"a", "b", "our-drill"}));
  EXPECT_EQ(documents.value().limits.root.find("from")->text, "own");
  EXPECT_EQ(documents.value().gaits.root.find("from")->text, "shipped");
}

TEST(CatalogueFolders, EveryBrokenFileIsNamed) {
  const ScratchFolder shipped;
  shipped.write("families.toml", "");
  shipped.write("limits.toml", "a = = 1");
  shipped.write("gaits.toml", "");
  shipped.write("drills/a.toml", "id = \"a");
  const auto documents = read_catalogue_folders({shipped.path()});
  ASSERT_FALSE(documents);
  ASSERT_EQ(documents.faults().size(), 3U);
  EXPECT_EQ(documents.faults()[0].place.file, shipped.path("limits.toml"));
  EXPECT_EQ(documents.faults()[0].place.line, 1);
  EXPECT_EQ(documents.faults()[1].place.file, shipped.path("sources.toml"));
  EXPECT_EQ(documents.faults()[2].place.file, shipped.path("drills/a.toml"));
}

}  // namespace
}  // namespace lanework::read
