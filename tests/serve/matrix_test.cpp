// The matrix by requests: every route, for every role, to a squad of one's own, one for the evening, a former one and
// somebody else's. Made from catalogue/access/matrix.toml itself, so a new route is tested before anybody thinks of it.
#include <gtest/gtest.h>

#include <map>

#include "app/serve/doorman.h"
#include "app/serve/session_limits.h"
#include "app/serve/sign_in/account_words.h"
#include "tests/serve/house_of_test.h"

namespace lanework::serve {
namespace {

using access::By;
using access::kRelationCount;
using access::kRoleCount;
using access::Reach;
using access::Relation;
using ledger::Role;
using test::HouseOfTest;

const std::map<std::string, std::string> kPlaces = {{"{squad}", "u13"},
                                                    {"{player}", "Q07"},
                                                    {"{account}", "a-0000000000000000"},
                                                    {"{device}", "d-0000000000000000"},
                                                    {"{pairing}", "p-0000000000000000"},
                                                    {"{release}", "1"},
                                                    {"{injury}", "018f3f6e-0000-7000-8000-000000000001"},
                                                    {"{monday}", "2026-11-23"},
                                                    {"{from}", "2026-09-01"},
                                                    {"{to}", "2026-11-30"},
                                                    {"{number}", "1"},
                                                    {"{evening}", "2026-11-26-1800"},
                                                    {"{link}", "none.ics"},
                                                    {"{roster}", "roster.csv"}};

std::string path_of(const access::Route& route) {
  std::string out;
  for (const std::string& segment : route.segments) {
    const auto place = kPlaces.find(segment);
    out += "/" + (place == kPlaces.end() ? segment : place->second);
  }
  return out;
}

std::vector<store::Grant> grants_for(Relation relation) {
  switch (relation) {
    case Relation::kOwn:
      return {{"u13", "2026-08-01", "", false}};
    case Relation::kSubstitute:
      return {{"u13", "2026-11-26", "2026-11-26", true}};
    case Relation::kFormer:
      return {{"u13", "2026-08-01", "2026-11-25", false}};
    case Relation::kOther:
      return {{"u16", "2026-08-01", "", false}};
  }
  return {};
}

std::string error_in(const Response& response) {
  const auto body = parse_json("answer", response.body);
  const Node* error = body ? body.value().root.find("error") : nullptr;
  return error == nullptr ? "" : error->text;
}

// Whether the doorman sent it away, whatever the route itself then thinks of an empty body.
bool turned_away(const access::Route& route, const Response& response) {
  const std::string error = error_in(response);
  if (route.reach == Reach::kSquad) return response.status == 404 && error == "not-found";
  return error == "not-your-role" || error == "sign-in-needed" || error == "second-factor-needed";
}

TEST(MatrixByRequests, EveryRouteForEveryRoleAndEveryRelationIsAsTheMatrixSays) {
  int cells = 0;
  for (std::size_t role = 0; role < kRoleCount; ++role) {
    for (std::size_t relation = 0; relation < kRelationCount; ++relation) {
      HouseOfTest house;
      const std::string who = house.account(static_cast<Role>(role), grants_for(static_cast<Relation>(relation)));
      const std::string device = house.device(who);
      for (const access::Route& route : house.house().matrix.routes) {
        if (route.by != By::kBrowser && route.by != By::kDevice) continue;
        if (route.reach == Reach::kNothing && relation > 0) continue;
        const bool by_browser = route.by == By::kBrowser;
        const Response response = house.ask(route.method, path_of(route), route.method == "POST" ? "{}" : "",
                                            by_browser ? house.session(who) : "", by_browser ? "" : device);
        store::Account account;
        account.role = static_cast<Role>(role);
        account.grants = grants_for(static_cast<Relation>(relation));
        const Relation actual = access::relation_of(viewer_of(account, day_of(house.now)), "u13", day_of(house.now));
        EXPECT_EQ(!turned_away(route, response), access::may(route, static_cast<Role>(role), actual))
            << route.name << " for " << role_word(static_cast<Role>(role)) << ", relation " << relation << ": "
            << response.status << ' ' << response.body;
        EXPECT_NE(response.status, 500) << route.name;
        ++cells;
      }
    }
  }
  EXPECT_GT(cells, 150);
}

TEST(MatrixByRequests, NobodyComesInWithoutShowingWhoTheyAre) {
  HouseOfTest house;
  const std::string coach = house.account(Role::kCoach, grants_for(Relation::kOwn));
  const std::string device = house.device(coach);
  const std::string session = house.session(coach);
  for (const access::Route& route : house.house().matrix.routes) {
    if (route.by != By::kBrowser && route.by != By::kDevice) continue;
    const std::string body = route.method == "POST" ? "{}" : "";
    EXPECT_EQ(house.ask(route.method, path_of(route), body).status, 401) << route.name;
    // A device's secret is no session, and the other way round.
    const bool by_browser = route.by == By::kBrowser;
    EXPECT_EQ(house.ask(route.method, path_of(route), body, by_browser ? device : "", by_browser ? "" : session).status,
              401)
        << route.name;
  }
}

TEST(MatrixByRequests, BeforeTheSecondFactorOnlyItsOwnRoutesAreOpen) {
  HouseOfTest house;
  const std::string lead = house.account(Role::kLead);
  const std::string secret = "half-way-session-of-the-lead-0000000000000";
  ASSERT_TRUE(house.room().gate->add_session({store::digest_of(secret), lead, house.now, house.now, 0, false}));
  for (const access::Route& route : house.house().matrix.routes) {
    if (route.by != By::kBrowser) continue;
    if (route.name == "sign-out") continue;  // would end what the others go by
    const Response response = house.ask(route.method, path_of(route), route.method == "POST" ? "{}" : "", secret);
    EXPECT_EQ(error_in(response) == "second-factor-needed", !route.half_way) << route.name << response.body;
  }
}

TEST(MatrixByRequests, WhatChangesWhoSeesWhatWantsTheSecondFactorNow) {
  HouseOfTest house;
  const std::string lead = house.account(Role::kLead);
  const std::string session = house.session(lead);
  house.now += 301;
  for (const access::Route& route : house.house().matrix.routes) {
    if (!route.step_up) continue;
    EXPECT_EQ(error_in(house.ask("POST", path_of(route), "{}", session)), "step-up-needed") << route.name;
  }
}

TEST(MatrixByRequests, ASessionEndsByItsLimitsToTheSecond) {
  for (std::size_t role = 0; role < kRoleCount; ++role) {
    const SessionLimits& limits = kSessionLimits[role];
    HouseOfTest house;
    const std::string who = house.account(static_cast<Role>(role));
    const std::string idle = house.session(who);
    house.now += limits.idle_seconds - 1;
    EXPECT_EQ(house.ask("GET", "/api/me", "", idle).status, 200);
    house.now += limits.idle_seconds;
    EXPECT_EQ(house.ask("GET", "/api/me", "", idle).status, 401);
    const std::string whole = house.session(who);
    const std::int64_t began = house.now;
    while (house.now + limits.idle_seconds - 1 < began + limits.whole_seconds) {
      house.now += limits.idle_seconds - 1;
      ASSERT_EQ(house.ask("GET", "/api/me", "", whole).status, 200);
    }
    house.now = began + limits.whole_seconds;
    EXPECT_EQ(house.ask("GET", "/api/me", "", whole).status, 401);
  }
}

TEST(MatrixByRequests, WhatIsReadAboutPeopleIsWrittenDownOnceEachTime) {
  HouseOfTest house;
  const std::string lead = house.account(Role::kLead);
  const std::string session = house.session(lead);
  for (const access::Route& route : house.house().matrix.routes) {
    const std::string path = path_of(route);
    if (!route.noted || route.by != By::kBrowser || route.step_up || route.name == "quarantine" ||
        path.rfind("/api/injuries", 0) == 0) {
      continue;  // where nobody is kept aside and nobody hurt, nothing about people is read
    }
    const auto before = house.room().gate->reads("", 100).value().size();
    EXPECT_EQ(house.ask(route.method, path, "", session).status, 200) << route.name;
    const auto after = house.room().gate->reads("", 100).value();
    ASSERT_EQ(after.size(), before + 1) << route.name;
    EXPECT_EQ(after.front().account, lead);
    EXPECT_EQ(after.front().route, route.name);
  }
}

// The keys of what a coach's phone gets, by hand: a new one is seen here before a coach sees it.
TEST(MatrixByRequests, ACoachsPhoneGetsTheseKeysAndNoOthers) {
  HouseOfTest house;
  const std::string coach = house.account(Role::kCoach, grants_for(Relation::kOwn));
  const std::string device = house.device(coach);
  const Response response = house.ask("GET", "/api/device/squads/u13", "", "", device);
  ASSERT_EQ(response.status, 200);
  const auto body = parse_json("answer", response.body).value();
  const auto keys = [](const Node& table) {
    std::vector<std::string> out;
    for (const auto& [key, value] : table.entries) out.push_back(key);
    return out;
  };
  EXPECT_EQ(keys(body.root), (std::vector<std::string>{"squad", "roster", "standing", "ask"}));
  EXPECT_EQ(keys(body.root.find("roster")->items.at(0)), (std::vector<std::string>{"player", "name", "age_group"}));
  EXPECT_EQ(keys(body.root.find("standing")->items.at(0)),
            (std::vector<std::string>{"player", "word", "instructions"}));
}

}  // namespace
}  // namespace lanework::serve
