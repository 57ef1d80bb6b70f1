// Whatever is entered by whom: order, repeats and corrections never free a player.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "tests/care/entries/entry_story.h"
#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

using catalogue::BodyArea;

constexpr int kMostEntries = 24;

EntryId any_id() { return "e" + std::to_string(*rc::gen::inRange(1, kMostEntries + 1)); }
EntryIds any_ids() {
  EntryIds out;
  const int count = *rc::gen::inRange(1, 4);
  for (int i = 0; i < count; ++i) out.push_back(any_id());
  return out;
}
std::optional<BodyArea> any_place() {
  static constexpr BodyArea kPlaces[] = {BodyArea::kHead, BodyArea::kKnee, BodyArea::kAnkle};
  const int which = *rc::gen::inRange(-1, 3);
  if (which < 0) return {};
  return kPlaces[which];
}

SymptomCheck any_check(const EntryId& course) {
  SymptomCheck out;
  out.course = course;
  out.told = static_cast<SymptomCheck::Told>(*rc::gen::weightedElement<int>({{6, 0}, {1, 1}, {1, 2}}));
  if (out.told == SymptomCheck::Told::kWorse) {
    out.worse_points = *rc::gen::inRange(0, 5);
    out.worse_minutes = *rc::gen::inRange(0, 90);
  }
  out.after_session = *rc::gen::arbitrary<bool>();
  return out;
}

// A course is e2 as often as not, so that courses move.
EntryId any_course() { return *rc::gen::inRange(0, 3) > 0 ? "e2" : any_id(); }

What any_what() {
  static const std::vector<std::string> kSteps = {"daily-life",  "easy-aerobic",  "own-sport",
                                                  "team-drills", "full-practice", "own-pace"};
  static const std::vector<std::string> kGates = {"seen", "head-impact-risk", "contact", "practice"};
  const auto step = [] { return kSteps[static_cast<std::size_t>(*rc::gen::inRange(0, 6))]; };
  switch (*rc::gen::weightedElement<int>(
      {{2, 0}, {2, 1}, {1, 2}, {1, 3}, {4, 4}, {1, 5}, {4, 6}, {5, 7}, {1, 8}, {5, 9}, {1, 10}})) {
    case 0:
      return test::hurt_at(any_place());
    case 1:
      return test::sore_at(any_place(), *rc::gen::inRange(0, 6));
    case 2: {
      people::Restriction restriction;
      restriction.kinds = {static_cast<catalogue::StressKind>(*rc::gen::inRange(0, 7))};
      return RestrictionSet{restriction};
    }
    case 3:
      return Reviewed{any_ids(), {}};
    case 4:
      return Lifted{any_ids()};
    case 5:
      return CourseOpened{*rc::gen::arbitrary<bool>() ? "concussion" : "general", "consensus", any_ids(), 25};
    case 6:
      return StepBegun{any_course(), step()};
    case 7:
      return any_check(any_course());
    case 8:
      return SteppedBack{any_course(), step()};
    case 9:
      if (*rc::gen::arbitrary<bool>()) return test::cleared(any_ids());
      return test::cleared({"e1"}, any_course(), kGates[static_cast<std::size_t>(*rc::gen::inRange(0, 4))]);
    default:
      return Withdrawn{};
  }
}

// What would free the player next, by those who may: of the course, else of what stands by itself.
void add_next_proper(test::Story& story) {
  const Knowledge known = story.fold();
  for (const CourseStanding& course : known.courses) {
    const auto waiting = waiting_at(course.in_force.course, course.state);
    if (course.closed || !waiting) continue;
    if (waiting->needs.empty()) {
      story.add(By::kLead, StepBegun{course.id, course.in_force.course.step(waiting->step).key}, 25);
    } else if (waiting->needs.size() == 1 && waiting->gate) {
      story.add(By::kClinician,
                test::cleared(course.carries, course.id, course.in_force.course.gate(*waiting->gate).key));
    } else {
      story.add(By::kPlayer, SymptomCheck{course.id, SymptomCheck::Told::kNone, {}, {}, true});
    }
    return;
  }
  if (known.standing.empty()) {
    story.add(By::kCoach, test::hurt_at(BodyArea::kKnee));
    return;
  }
  const EntryIds names = known.standing.front().stems_from;
  if (known.standing.front().needs_clearance) story.add(By::kClinician, test::cleared(names));
  story.add(By::kLead, Lifted{names}, 25);
}

// By those who may, mostly.
void add_anything(test::Story& story) {
  What what = any_what();
  By by = static_cast<By>(*rc::gen::inRange(0, 4));
  if (*rc::gen::inRange(0, 5) > 0) by = std::holds_alternative<ClearanceGiven>(what) ? By::kClinician : By::kLead;
  story.add(by, std::move(what), *rc::gen::inRange(1, 30));
  if (std::holds_alternative<Withdrawn>(story.last().what) || *rc::gen::inRange(0, 12) == 0)
    story.last().corrects = any_id();
}

// Starts with a hurt, and mostly a course; then what would free the player, with anything among it.
test::Story any_story() {
  test::Story story;
  story.add(By::kCoach, test::hurt_at(*rc::gen::arbitrary<bool>() ? BodyArea::kHead : BodyArea::kKnee));
  if (*rc::gen::inRange(0, 3) > 0) {
    story.add(By::kLead, CourseOpened{*rc::gen::arbitrary<bool>() ? "concussion" : "general", "consensus", {"e1"}, 25});
  }
  const int count = *rc::gen::inRange(0, kMostEntries);
  for (int i = 0; i < count; ++i) {
    if (*rc::gen::inRange(0, 6) > 0)
      add_next_proper(story);
    else
      add_anything(story);
  }
  return story;
}

Knowledge folded(std::vector<Entry> entries) {
  return fold(std::move(entries), test::pain_rule(), test::return_rules());
}

bool alike(const Knowledge& a, const Knowledge& b) {
  if (a.remarks != b.remarks || a.as_known != b.as_known || a.standing.size() != b.standing.size() ||
      a.courses.size() != b.courses.size())
    return false;
  for (std::size_t i = 0; i < a.standing.size(); ++i) {
    if (a.standing[i].why != b.standing[i].why || a.standing[i].stems_from != b.standing[i].stems_from ||
        a.standing[i].restriction.instruction != b.standing[i].restriction.instruction) {
      return false;
    }
  }
  for (std::size_t i = 0; i < a.courses.size(); ++i) {
    if (!(a.courses[i].state == b.courses[i].state) || a.courses[i].carries != b.courses[i].carries) return false;
  }
  return test::barred(a.standing, "Q14") == test::barred(b.standing, "Q14");
}

TEST(FoldProperty, TheOrderHandedInDecidesNothing) {
  EXPECT_TRUE(rc::check([] {
    const test::Story story = any_story();
    std::vector<Entry> entries = story.entries();
    for (std::size_t i = entries.size(); i > 1; --i) {
      std::swap(entries[i - 1], entries[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(i)))]);
    }
    RC_ASSERT(alike(folded(entries), story.fold()));
  }));
}

TEST(FoldProperty, RepeatsChangeNothing) {
  EXPECT_TRUE(rc::check([] {
    const test::Story story = any_story();
    std::vector<Entry> entries = story.entries();
    const auto count = static_cast<int>(entries.size());
    for (int i = 0; i < count; ++i) {
      if (*rc::gen::inRange(0, 3) > 0) continue;
      Entry again = entries[static_cast<std::size_t>(i)];
      again.receipt += *rc::gen::inRange(0, 40);
      again.received = entries[static_cast<std::size_t>(count - 1)].received;
      if (again.receipt != entries[static_cast<std::size_t>(i)].receipt) again.receipt += kMostEntries;
      entries.push_back(again);
    }
    RC_ASSERT(alike(folded(entries), story.fold()));
  }));
}

// A hurt, a number, a restriction, a step back, symptoms: whoever reports them and whenever.
TEST(FoldProperty, ALaterReportNeverLessensCaution) {
  EXPECT_TRUE(rc::check([] {
    test::Story story = any_story();
    const Knowledge before = story.fold();
    What what;
    switch (*rc::gen::inRange(0, 5)) {
      case 0:
        what = test::hurt_at(any_place());
        break;
      case 1:
        what = test::sore_at(any_place(), *rc::gen::inRange(0, 11));
        break;
      case 2:
        what = SteppedBack{"e2", "daily-life"};
        break;
      case 3: {
        SymptomCheck check = any_check("e2");
        check.told = SymptomCheck::Told::kWorse;
        what = check;
        break;
      }
      default:
        what = any_check("e2");
    }
    story.add(static_cast<By>(*rc::gen::inRange(0, 4)), std::move(what), *rc::gen::inRange(0, 400));
    RC_ASSERT(test::at_least_as_careful(story.fold(), before));
  }));
}

TEST(FoldProperty, ACorrectionNeverLessensCaution) {
  EXPECT_TRUE(rc::check([] {
    test::Story story = any_story();
    const Knowledge before = story.fold();
    story.add(static_cast<By>(*rc::gen::inRange(0, 4)), Withdrawn{});
    story.last().corrects = any_id();
    RC_ASSERT(test::at_least_as_careful(story.fold(), before));
  }));
}

// The stories are no empty ones: players are freed in them, and courses come far.
TEST(FoldProperty, StoriesComeFar) {
  int stories = 0;
  int freed = 0;
  int beyond_the_gate = 0;
  EXPECT_TRUE(rc::check([&] {
    const Knowledge known = any_story().fold();
    ++stories;
    freed += test::barred(known.standing, "Q14").back() ? 0 : 1;
    for (const CourseStanding& course : known.courses)
      beyond_the_gate += course.state.begun && course.state.step >= 3 ? 1 : 0;
  }));
  EXPECT_GT(freed, stories / 10);
  EXPECT_GT(beyond_the_gate, stories / 50);
}

// Without any clearance a hurt player is never let near contact, whatever else is entered.
TEST(FoldProperty, WithoutAClearanceAHurtPlayerSitsOut) {
  EXPECT_TRUE(rc::check([] {
    std::vector<Entry> entries = any_story().entries();
    std::erase_if(entries, [](const Entry& entry) { return std::holds_alternative<ClearanceGiven>(entry.what); });
    RC_ASSERT(test::barred(folded(entries).standing, "Q14").back());
  }));
}

// And nothing is lifted where the lead lifted nothing and began nothing.
TEST(FoldProperty, WithoutTheLeadAHurtPlayerSitsOut) {
  EXPECT_TRUE(rc::check([] {
    std::vector<Entry> entries = any_story().entries();
    for (Entry& entry : entries) {
      const bool moves = std::holds_alternative<Lifted>(entry.what) || std::holds_alternative<StepBegun>(entry.what);
      if (moves) entry.by = *rc::gen::arbitrary<bool>() ? By::kCoach : By::kPlayer;
    }
    RC_ASSERT(test::barred(folded(entries).standing, "Q14").back());
  }));
}

}  // namespace
}  // namespace lanework::care
