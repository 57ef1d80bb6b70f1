#include "app/store/sealing.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <filesystem>
#include <fstream>
#include <set>

#include "tests/store/sqlite_file.h"

namespace lanework::store {
namespace {

TEST(Sealing, OpensOnlyAsItWasSealed) {
  const Key key = Key::made();
  const std::string text = "hurt, the knee";
  const std::string whole = sealed(key, text, "id 1");
  EXPECT_EQ(opened(key, whole, "id 1"), text);
  EXPECT_FALSE(opened(key, whole, "id 2"));
  EXPECT_FALSE(opened(Key::made(), whole, "id 1"));
  EXPECT_FALSE(opened(key, whole.substr(1), "id 1"));
  EXPECT_FALSE(opened(key, "", "id 1"));
  EXPECT_EQ(whole.find("knee"), std::string::npos);
}

TEST(Sealing, AnyByteThatIsAnotherIsRefused) {
  const Key key = Key::made();
  const std::string whole = sealed(key, "hurt, the knee", "id 1");
  for (std::size_t i = 0; i < whole.size(); ++i) {
    for (const char flip : {'\x01', '\x80'}) {
      std::string changed = whole;
      changed[i] = static_cast<char>(changed[i] ^ flip);
      EXPECT_FALSE(opened(key, changed, "id 1")) << i;
    }
  }
}

TEST(Sealing, NoTwoSealsAreAlike) {
  const Key key = Key::made();
  std::set<std::string> seen;
  for (int i = 0; i < 1000; ++i) seen.insert(sealed(key, "", ""));
  EXPECT_EQ(seen.size(), 1000U);
}

TEST(Sealing, ATagIsThePersonsUnderThatKeyAlone) {
  const Key key = Key::made();
  EXPECT_EQ(person_tag(key, "Q07"), person_tag(key, "Q07"));
  EXPECT_NE(person_tag(key, "Q07"), person_tag(key, "Q08"));
  EXPECT_NE(person_tag(key, "Q07"), person_tag(Key::made(), "Q07"));
}

TEST(KeyFile, IsItsOwnersAlone) {
  const test::SqliteFile file;  // made one
  struct stat state {};
  ASSERT_EQ(::stat(file.key_file().c_str(), &state), 0);
  EXPECT_EQ(state.st_mode & 0777U, 0400U);
  EXPECT_TRUE(read_key_file(file.key_file()));
  EXPECT_FALSE(make_key_file(file.key_file())) << "there is one already";
  std::filesystem::permissions(file.key_file(), std::filesystem::perms::group_read, std::filesystem::perm_options::add);
  const auto shared = read_key_file(file.key_file());
  ASSERT_FALSE(shared);
  EXPECT_EQ(shared.faults().front().found, "a file that others may read");
}

TEST(KeyFile, AnotherLengthOrNoneIsAFault) {
  const test::SqliteFile file;
  EXPECT_FALSE(read_key_file(file.file() + "-nowhere"));
  const std::string other = file.key_file() + "-short";
  std::ofstream(other) << "only this";
  std::filesystem::permissions(other, std::filesystem::perms::owner_read);
  EXPECT_FALSE(read_key_file(other));
}

}  // namespace
}  // namespace lanework::store
