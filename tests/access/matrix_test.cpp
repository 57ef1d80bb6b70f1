#include <gtest/gtest.h>

#include <set>

#include "tests/access/shipped_matrix.h"

namespace lanework::access {
namespace {

using ledger::Role;
using test::matrix_from;
using test::shipped_matrix;
using test::shipped_matrix_text;

// With one piece of it in place of another.
std::string changed(const std::string& from, const std::string& to) {
  std::string text = shipped_matrix_text();
  const std::size_t at = text.find(from);
  if (at == std::string::npos) throw std::runtime_error("not there: " + from);
  return text.replace(at, from.size(), to);
}

std::string faults_of(const std::string& text) {
  const auto matrix = matrix_from(text);
  std::string out;
  if (matrix) return out;
  for (const Fault& fault : matrix.faults()) out += to_line(fault) + "\n";
  return out;
}

TEST(Matrix, EveryKindOfEntryAndEveryFieldOfItHasItsRow) {
  const Matrix& matrix = shipped_matrix();
  for (const ledger::Kind& kind : ledger::test::shipped_kinds().kinds) {
    ASSERT_NE(matrix.kind(kind.key), nullptr) << kind.key;
    EXPECT_EQ(matrix.kind(kind.key)->fields.size(), kind.fields.size() + 1) << kind.key;
  }
}

TEST(Matrix, WhatIsForgottenIsAFault) {
  EXPECT_NE(faults_of(changed("key = \"hurt\"\n", "key = \"soreness\"\n")).find("nothing about 'hurt'"),
            std::string::npos);
  EXPECT_NE(faults_of(changed("\nplan = [", "\nplane = [")).find("nothing about 'plan'"), std::string::npos);
  EXPECT_NE(faults_of(changed("operator = \"yes\"\n", "")).find("operator"), std::string::npos);
  EXPECT_NE(faults_of(changed("place = [\"own\", \"wrote\", \"wrote\", \"no\", \"no\"]",
                              "place = [\"own\", \"wrote\", \"wrote\", \"no\"]"))
                .find("five words"),
            std::string::npos);
  EXPECT_NE(faults_of(changed("by = \"this-machine\"", "by = \"anybody\"")).find("anybody"), std::string::npos);
  EXPECT_NE(faults_of(changed("path = \"/ready\"", "path = \"/health\"")).find("a path of its own"), std::string::npos);
  EXPECT_NE(faults_of(changed("about = \"squad\"\n", "")).find("about = \"squad\" where"), std::string::npos);
}

TEST(Matrix, APathIsOneRouteAndPlacesTakeIdsOnly) {
  const Matrix& matrix = shipped_matrix();
  EXPECT_EQ(matrix.match("POST", "/api/sync")->route->name, "sync");
  const auto squad = matrix.match("GET", "/api/squads/u13-kestrels");
  ASSERT_TRUE(squad);
  EXPECT_EQ(squad->values, std::vector<std::string>{"u13-kestrels"});
  for (const char* path :
       {"/api/squads/", "/api/squads/..", "/api/squads/.hidden", "/api/squads/a%2e", "/api/squads/a/b", "//api/sync",
        "/api/sync/", "/API/sync", "api/sync", "", "/", "/api/squads/u13\n", "/api/squads/ü13"}) {
    EXPECT_FALSE(matrix.match("GET", path)) << path;
  }
  EXPECT_FALSE(matrix.match("GET", "/api/squads/" + std::string(65, 'a')));
  EXPECT_EQ(matrix.methods("/api/sync"), std::vector<std::string>{"POST"});
  EXPECT_TRUE(matrix.methods("/api/nothing").empty());
}

// What nobody may change without seeing it here: the sharpest lines of the matrix, written down a second time by hand.
TEST(Matrix, BoardAndOperatorSeeNothingOfEntriesAndCoachesNoReasons) {
  const auto role = [](Role one) { return static_cast<std::size_t>(one); };
  for (const auto* rules : {&shipped_matrix().kinds, &shipped_matrix().views}) {
    for (const FieldRules& kind : *rules) {
      for (const FieldRule& field : kind.fields) {
        EXPECT_EQ(field.sees[role(Role::kBoard)], Sees::kNo) << kind.key << '.' << field.key;
        // How planning gets on is the operator's too; why it failed may quote a file and is not.
        const bool is_state_of_jobs = kind.key == "planning" && field.key != "why";
        EXPECT_EQ(field.sees[role(Role::kOperator)], is_state_of_jobs ? Sees::kClub : Sees::kNo)
            << kind.key << '.' << field.key;
      }
    }
  }
  for (const ledger::Kind& kind : ledger::test::shipped_kinds().kinds) {
    if (kind.data_class != ledger::DataClass::kHealth) continue;
    for (const FieldRule& field : shipped_matrix().kind(kind.key)->fields) {
      const Sees coach = field.sees[role(Role::kCoach)];
      EXPECT_TRUE(coach == Sees::kNo || coach == Sees::kWrote) << kind.key << '.' << field.key;
    }
  }
  EXPECT_EQ(shipped_matrix().view("standing")->field("reasons")->sees[role(Role::kCoach)], Sees::kNo);
}

TEST(Matrix, WhatChangesWhoSeesWhatWantsTheSecondFactorAgain) {
  for (const char* name :
       {"add-account", "charge-account", "account-link", "end-account", "export-player", "erase-player"}) {
    EXPECT_TRUE(shipped_matrix().route(name)->step_up) << name;
  }
}

TEST(Matrix, WhatReadsAboutPeopleIsNoted) {
  std::set<std::string> noted;
  for (const Route& route : shipped_matrix().routes) {
    if (route.noted) noted.insert(route.name);
  }
  EXPECT_EQ(noted, (std::set<std::string>{"sync", "squad", "squad-of-device", "evenings-of-device", "evenings", "slip",
                                          "players", "consents", "season-turn", "roster", "injuries", "quarantine",
                                          "take-in-kept", "timeline", "export-player", "export-season",
                                          "incident-report", "referral-letter"}));
}

TEST(Matrix, NothingThatChangesIsAskedForByGet) {
  for (const Route& route : shipped_matrix().routes) {
    const bool asks = route.name.rfind("add-", 0) == 0 || route.name.rfind("end-", 0) == 0 ||
                      route.name.rfind("erase", 0) == 0 || route.name.rfind("revoke", 0) == 0 ||
                      route.name.rfind("confirm", 0) == 0 || route.name == "sync";
    EXPECT_TRUE(!asks || route.method == "POST") << route.name;
  }
}

}  // namespace
}  // namespace lanework::access
