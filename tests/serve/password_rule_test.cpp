#include <gtest/gtest.h>

#include "app/serve/sign_in/password_rule.h"

namespace lanework::serve {
namespace {

const KnownPasswords& known() {
  static const KnownPasswords kKnown("#!comment: a remark\npassword\n123456\niloveyou\r\nfootball\n",
                                     {"Quillmere Juniors", "Under-13 Kestrels"});
  return kKnown;
}

bool taken(const std::string& password, std::size_t fewest = kFewestCharacters) {
  return !why_not_password(password, fewest, known());
}

TEST(PasswordRule, LengthIsCountedInCharactersAsTyped) {
  EXPECT_FALSE(taken("gvtzwqp"));
  EXPECT_TRUE(taken("gvtzwqpb"));
  EXPECT_FALSE(taken("gvtzwqpbklmnrt", kFewestForHealth));
  EXPECT_TRUE(taken("gvtzwqpbklmnrtx", kFewestForHealth));
  std::string faces;
  for (int i = 0; i < 15; ++i) faces += i % 2 == 0 ? "\xF0\x9F\x99\x82" : "\xF0\x9F\x90\xA2";
  faces.replace(0, 4, "\xF0\x9F\x90\x9F");
  faces += "\xF0\x9F\x90\x99\xF0\x9F\x90\x9D";
  EXPECT_TRUE(taken(faces, kFewestForHealth));
  EXPECT_TRUE(taken("correct horse battery staple, and then some more of it, to sixty-four and on"));
  EXPECT_TRUE(taken(std::string(500, 'x') + "gvtzwqpb" + std::string(512, 'y')));
  EXPECT_FALSE(taken(std::string(1000, 'x') + "gvtzwqpb" + std::string(512, 'y')));
}

TEST(PasswordRule, WantsNoKindsOfCharacters) {
  EXPECT_TRUE(taken("only lower case letters here"));
  EXPECT_TRUE(taken("74839201746352"));
}

TEST(PasswordRule, WhatIsTriedFirstIsNotTaken) {
  for (const char* password : {"password", "PASSWORD", "Password1!", "123password123", "iloveyou", "football2026",
                               "aaaaaaaa", "abcabcabc", "QuillmereJuniors", "quillmere juniors", "under-13 kestrels"}) {
    EXPECT_FALSE(taken(password)) << password;
  }
  EXPECT_TRUE(taken("passwordless lane"));
  EXPECT_TRUE(taken("footballs in the rain"));
}

TEST(PasswordRule, RemarksOfTheListAreNoPasswords) { EXPECT_EQ(known().size(), 8U); }

}  // namespace
}  // namespace lanework::serve
