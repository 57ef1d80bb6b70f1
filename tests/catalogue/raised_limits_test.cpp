// A club's own limits.toml: lower in any way is fine, higher in any way is a fault at its value.
#include "core/catalogue/raised_limits.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <functional>

#include "tests/catalogue/mutate.h"
#include "tests/catalogue/shipped.h"

namespace lanework::catalogue::test {
namespace {

using D = Document;

Document own_limits() {
  Document own = shipped_documents().limits;
  own.file = "own/limits.toml";
  return own;
}

std::string lines_after(const std::function<void(D&)>& edit) {
  Document own = own_limits();
  edit(own);
  return all_lines(raised_limits(shipped_documents().limits, own));
}

struct Edit {
  const char* name;
  std::function<void(D&)> make;
  const char* field;  // of the fault, or nullptr where there is none
  const char* found = "";
};
std::ostream& operator<<(std::ostream& out, const Edit& edit) { return out << edit.name; }

class OwnLimits : public testing::TestWithParam<Edit> {};

TEST_P(OwnLimits, AreHeldAgainstTheShippedOnes) {
  Document own = own_limits();
  GetParam().make(own);
  const Faults faults = raised_limits(shipped_documents().limits, own);
  if (GetParam().field == nullptr) {
    EXPECT_TRUE(faults.empty()) << all_lines(faults);
    return;
  }
  ASSERT_EQ(faults.size(), 1U) << all_lines(faults);
  const Fault& fault = faults.front();
  EXPECT_EQ(fault.place.file, "own/limits.toml");
  EXPECT_GT(fault.place.line, 0);
  EXPECT_EQ(fault.place.field, GetParam().field);
  EXPECT_EQ(fault.found, GetParam().found);
  EXPECT_EQ(fault.code, FaultCode::kCeiling);
}

INSTANTIATE_TEST_SUITE_P(
    Rules, OwnLimits,
    testing::Values(
        Edit{"AsShipped", [](D&) {}, nullptr}, Edit{"FewerNew", [](D& d) { set(d, "most_new_drills", 0); }, nullptr},
        Edit{"LowerCap", [](D& d) { set(d, "ceilings.1.jump_cap_session", 30); }, nullptr},
        Edit{"HeavierLandings", [](D& d) { set(d, "contact_weight.high", 3); }, nullptr},
        Edit{"NothingTwoDaysBefore", [](D& d) { set(d, "match.3.eccentric_percent", 0); }, nullptr},
        Edit{"WithoutARowThatTakesNothingOff", [](D& d) { remove(d, "match.4"); }, nullptr},
        Edit{"BrokenInItself", [](D& d) { set(d, "ceilings.1.jump_cap_session", -1); }, nullptr},
        Edit{"MoreNew", [](D& d) { set(d, "most_new_drills", 3); }, "most_new_drills", "3"},
        Edit{"LargerShare", [](D& d) { set(d, "warm_up_share_percent", 50); }, "warm_up_share_percent", "50"},
        Edit{"LighterLandings", [](D& d) { set_real(d, "contact_weight.low", 0.4); }, "contact_weight.low", "0.4"},
        // 55 x 40 % = 22, of 20 as shipped.
        Edit{"HigherCap", [](D& d) { set(d, "ceilings.1.jump_cap_session", 55); }, "ceilings.1.jump_cap_session",
             "22 landings in the warm-up"},
        Edit{"HigherWeek", [](D& d) { set(d, "ceilings.5.hard_running_week_metres", 500); },
             "ceilings.5.hard_running_week_metres", "500"},
        Edit{"OlderBandFromYounger",
             [](D& d) {
               set(d, "ceilings.1.ages.to", 8), set(d, "ceilings.2.ages.from", 9),
                   set(d, "ceilings.2.eccentric_week", 12);
               set(d, "ceilings.2.jump_cap_session", 50), set(d, "ceilings.2.jump_cap_week", 100);
               set(d, "ceilings.2.hard_running_session_metres", 90);
               set(d, "ceilings.2.hard_running_week_metres", 180);
             },
             "ceilings.2.eccentric_session", "8"},
        Edit{"MoreOnAMatchDay", [](D& d) { set(d, "match.1.eccentric_percent", 10); }, "match.1.eccentric_percent",
             "10"},
        Edit{"NewOnAMatchDay", [](D& d) { set(d, "match.1.new_drills", true); }, "match.1.new_drills", "true"},
        Edit{"WithoutTwoDaysBefore", [](D& d) { remove(d, "match.4"), remove(d, "match.3"); }, "match",
             "no row for 2 days before a match"}),
    testing::PrintToStringParamName());

TEST(OwnLimits, TheLineSaysWhatMayBe) {
  EXPECT_NE(lines_after([](D& d) { set(d, "ceilings.2.jump_cap_session", 70); })
                .find("ceilings.2.jump_cap_session: found 28 landings in the warm-up, expected at most 24 at age 10 "
                      "(a club may lower what the shipped limits allow, never raise it)"),
            std::string::npos);
}

Limits limits_of(const Document& document, bool& sound) {
  CatalogueDocuments documents = shipped_documents();
  documents.limits = document;
  const Result<Catalogue> catalogue = read_catalogue(documents);
  sound = catalogue.ok();
  return sound ? catalogue.value().limits : Limits{};
}

// Straight from the meaning: is there an age, or a day, at which more is allowed?
bool allows_more(const Limits& own, const Limits& shipped) {
  bool more =
      own.most_new_drills > shipped.most_new_drills || own.warm_up_share_percent > shipped.warm_up_share_percent;
  for (int age = 8; age <= 19; ++age) {
    const Ceilings& a = ceilings_at(own, age);
    const Ceilings& b = ceilings_at(shipped, age);
    more = more || a.contacts_session > b.contacts_session || a.contacts_week > b.contacts_week ||
           a.eccentric_session > b.eccentric_session || a.eccentric_week > b.eccentric_week ||
           a.hard_running_session > b.hard_running_session || a.hard_running_week > b.hard_running_week;
  }
  for (std::size_t i = 0; i < own.match.size(); ++i) {
    const MatchDistance& a = own.match[i];
    const MatchDistance& b = shipped.match[i];
    more = more || a.contacts_percent > b.contacts_percent || a.eccentric_percent > b.eccentric_percent ||
           a.hard_running_percent > b.hard_running_percent;
  }
  return more;
}

TEST(OwnLimitsProperty, AFaultExactlyWhereMoreIsAllowed) {
  EXPECT_TRUE(rc::check([] {
    Document own = own_limits();
    for (const char* key : {"most_new_drills", "warm_up_share_percent"}) {
      if (*rc::gen::inRange(0, 3) == 0) set(own, key, *rc::gen::inRange(0, 3) + (key[0] == 'w' ? 38 : 0));
    }
    const auto move = [](Node& value, int by) { value.integer = std::clamp<std::int64_t>(value.integer + by, 0, 480); };
    // From some band on, so that an older one seldom ends up below a younger one.
    for (const char* key : {"jump_cap_session", "jump_cap_week", "eccentric_session", "eccentric_week",
                            "hard_running_session_metres", "hard_running_week_metres"}) {
      if (*rc::gen::element(0, 0, 0, 0, 1) == 0) continue;
      const int by = *rc::gen::element(-6, -2, -1, 0, 1, 3);
      for (int band = *rc::gen::element(1, 2, 3, 4, 5); band <= 5; ++band) {
        move(node_at(own.root, "ceilings." + std::to_string(band) + "." + key), by);
      }
    }
    for (Node& row : node_at(own.root, "match").items) {
      for (auto& [key, value] : row.entries) {
        const bool percent = value.kind == Node::Kind::kInteger && key != "days";
        if (percent && *rc::gen::element(0, 0, 0, 0, 0, 0, 0, 1) == 1) move(value, *rc::gen::element(-6, -1, 2));
      }
    }
    bool sound = false;
    const Limits limits = limits_of(own, sound);
    RC_PRE(sound);
    const bool more = allows_more(limits, shipped_catalogue().limits);
    RC_TAG(more);
    RC_ASSERT(raised_limits(shipped_documents().limits, own).empty() == !more);
  }));
}

}  // namespace
}  // namespace lanework::catalogue::test
