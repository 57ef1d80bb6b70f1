#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <atomic>
#include <set>
#include <thread>
#include <vector>

#include "app/serve/sign_in/account_words.h"
#include "app/serve/sign_in/password_hash.h"
#include "app/serve/sign_in/secret.h"
#include "app/serve/sign_in/time_code.h"

namespace lanework::serve {
namespace {

TEST(Secret, HasTwoHundredAndFiftySixBitsAndNeverComesTwice) {
  std::set<std::string> seen;
  for (int i = 0; i < 20'000; ++i) seen.insert(new_secret());
  EXPECT_EQ(seen.size(), 20'000U);
  EXPECT_EQ(seen.begin()->size(), 43U);  // 32 bytes in base64url
}

TEST(Secret, ALinkOfOneSortIsNoneOfAnother) { EXPECT_NE(account_link_form("x"), device_link_form("x")); }

RC_GTEST_PROP(Secret, Base32GoesBothWays, ()) {
  const auto bytes = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
  RC_ASSERT(from_base32(base32(bytes)) == bytes);
}

TEST(Secret, Base32TakesNothingElse) {
  for (const char* text : {"my", "M", "MZ======", "MZXW6YT!", "M1"}) EXPECT_FALSE(from_base32(text)) << text;
}

TEST(TimeCode, IsGoodForItsStepAndTheNeighboursAndNoLonger) {
  const std::string secret = new_time_secret();
  const std::int64_t now = 1'795'700'010;
  const std::string code = counted_code(secret, static_cast<std::uint64_t>(now / kTimeStepSeconds));
  for (const int off : {-30, 0, 30}) EXPECT_TRUE(step_of_code(secret, code, now + off)) << off;
  EXPECT_FALSE(step_of_code(secret, code, now + 61));
  EXPECT_FALSE(step_of_code(secret, code, now - 61));
  EXPECT_FALSE(step_of_code(secret, "", now));
  EXPECT_FALSE(step_of_code(secret, code + "0", now));
}

TEST(TimeCode, TheLinkNamesClubAndAccountWithoutBlanks) {
  EXPECT_EQ(authenticator_link("Ä B", "lee@x", "foobar"),
            "otpauth://totp/%C3%84%20B:lee%40x?secret=MZXW6YTBOI&issuer=%C3%84%20B");
}

TEST(PasswordHash, IsArgon2idAndFitsOnlyTheWholePassword) {
  PasswordHashes hashes(1);
  const std::string password = std::string(72, 'a') + "b";
  const std::string hash = hashes.make(password);
  EXPECT_EQ(hash.substr(0, 10), "$argon2id$");
  EXPECT_NE(hash.find("m=65536,t=2"), std::string::npos) << hash;
  EXPECT_EQ(hashes.fits(hash, password), true);
  EXPECT_EQ(hashes.fits(hash, std::string(72, 'a') + "c"), false) << "nothing is cut off";
  EXPECT_EQ(hashes.fits(hash, "A" + password.substr(1)), false) << "letters are as they are";
  EXPECT_EQ(hashes.fits("", "nobody has this password"), false);
  EXPECT_FALSE(PasswordHashes::is_old(hash));
  EXPECT_TRUE(PasswordHashes::is_old(
      "$argon2id$v=19$m=8192,t=1,p=1$c29tZXNhbHRzb21lc2FsdA$5kPOhGYxqvoXrSrSdVuiiL2LKPqcbkQ0Ff8TNvZVCYs"));
}

TEST(PasswordHash, AFloodIsTurnedAwayAndTheOthersAreAnswered) {
  PasswordHashes hashes(1);
  const std::string hash = hashes.make("the right password");
  std::atomic<int> checked{0};
  std::atomic<int> turned_away{0};
  std::vector<std::thread> flood;
  for (int i = 0; i < 12; ++i) {
    flood.emplace_back([&] { (hashes.fits(hash, "a wrong password") ? checked : turned_away)++; });
  }
  for (std::thread& one : flood) one.join();
  EXPECT_GE(checked, 2);
  EXPECT_GE(turned_away, 1);
  EXPECT_EQ(checked + turned_away, 12);
  EXPECT_EQ(hashes.fits(hash, "the right password"), true) << "afterwards everything is as before";
}

}  // namespace
}  // namespace lanework::serve
