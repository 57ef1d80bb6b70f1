// The pack for a first evening and the form for a visit, of every house routine, in the fonts they are printed in.
#include <gtest/gtest.h>

#include <filesystem>
#include <set>

#include "app/cli/clinic_matter.h"
#include "app/draw/clinic_layout.h"
#include "app/draw/pango_text.h"
#include "app/read/evening_files.h"
#include "app/read/files.h"
#include "core/catalogue/read_catalogue.h"

namespace lanework::draw {
namespace {

const std::string kCatalogue = std::string(LANEWORK_SOURCE_DIR) + "/catalogue";

const catalogue::Catalogue& shipped() {
  static const catalogue::Catalogue kShipped =
      catalogue::read_catalogue(read::read_catalogue_folders({kCatalogue}).value()).value();
  return kShipped;
}

catalogue::Routine routine(const std::string& id) {
  return catalogue::read_routine(read::read_routine_file(id, {kCatalogue}).value(), shipped()).value();
}

cli::ClinicSource source_of(const catalogue::Routine& routine) {
  cli::ClinicSource source;
  source.catalogue = &shipped();
  source.routine = &routine;
  source.strip.name = "North end of pitch 2";
  source.strip.lanes = 2;
  source.strip.lane_length = Millimetres(15000);
  source.strip.cone_spacing = Millimetres(5000);
  source.strip.lane_gap = Millimetres(3000);
  source.strip.area_width = Millimetres(20000);
  source.strip.area_length = Millimetres(15000);
  source.club = "Quillmere Juniors";
  source.squad = "Under-13 Kestrels";
  source.facts = routine.name + ", 20 min. Tuesday 18:00, Thursday 18:00.";
  source.date_iso = "2026-11-23";
  source.players = 18;
  source.taught = {"Maren: taught 7 Nov 2026 by the lead (first evening)", "Tolly: not yet taught"};
  return source;
}

class ClinicOf : public testing::TestWithParam<std::tuple<std::string, Paper>> {};

// Titles stand a little higher than their boxes, so that their letters and not their white meet the margin.
constexpr double kTitleRise = 3;

void expect_whole(const Pages& pages, Box content, const std::string& what) {
  const PangoMeasure measure;
  content.y -= kTitleRise;
  content.height += kTitleRise;
  for (const Page& side : pages.sides) {
    for (const std::string& text : cut_texts(side, measure)) ADD_FAILURE() << what << " cuts '" << text << "'";
    for (std::size_t i = 0; i < side.regions.size(); ++i) {
      EXPECT_TRUE(inside(side.regions[i].box, content)) << what << ": " << side.regions[i].name << " leaves the page";
      for (std::size_t j = 0; j < i; ++j) {
        EXPECT_FALSE(overlap(side.regions[i].box, side.regions[j].box))
            << what << ": " << side.regions[i].name << " over " << side.regions[j].name;
      }
    }
    for (const Mark& mark : side.marks) {
      const Text* text = std::get_if<Text>(&mark);
      if (text == nullptr) continue;
      EXPECT_TRUE(inside(text->box, content)) << what << ": '" << text->text << "' leaves the page";
    }
  }
}

TEST_P(ClinicOf, CutsNothingAndFillsTwoPagesAndOne) {
  const auto& [id, paper] = GetParam();
  const catalogue::Routine of = routine(id);
  const auto pack = draw_clinic(cli::clinic_matter(source_of(of)), paper);
  ASSERT_TRUE(pack);
  EXPECT_EQ(pack.value().sides.size(), 2U);
  expect_whole(pack.value(), content_of(sheet_of(paper)), id);
  const auto form = draw_visit_form(cli::visit_matter(source_of(of)), paper);
  ASSERT_TRUE(form);
  EXPECT_EQ(form.value().sides.size(), 1U);
  expect_whole(form.value(), content_of(sheet_of(paper)), id + ", visit");
}

ActionPlanMatter plan() {
  ActionPlanMatter out;
  out.note = "Millrace ground: pitch 2 behind the club house. Check it on the night.";
  out.lacks = "Plan incomplete: nobody meets the ambulance.";
  out.emergency_number = "112";
  out.address = "Millrace Lane 9, Quillmere";
  out.phone = "lead's mobile; landline in the club house";
  out.stays_with_player = "the squad's coach";
  out.calls = "the second coach";
  return out;
}

// The longest that a venue's file may hold.
ActionPlanMatter longest_plan() {
  ActionPlanMatter out = plan();
  std::string text;
  while (text.size() < 110) text += "wide words and ";
  text += "wide words";
  for (std::string* field :
       {&out.emergency_number, &out.address, &out.phone, &out.stays_with_player, &out.calls, &out.meets_ambulance}) {
    *field = text;
  }
  return out;
}

std::string text_of(const Page& page) {
  std::string out;
  for (const Mark& mark : page.marks) {
    if (const Text* text = std::get_if<Text>(&mark)) out += text->lead + " " + text->text + "\n";
  }
  return out;
}

TEST_P(ClinicOf, TellsWhomFromThePlanOfThePlace) {
  const auto& [id, paper] = GetParam();
  const catalogue::Routine of = routine(id);
  cli::ClinicSource source = source_of(of);
  for (const ActionPlanMatter& known : {plan(), longest_plan()}) {
    source.action_plan = known;
    const auto pack = draw_clinic(cli::clinic_matter(source), paper);
    ASSERT_TRUE(pack);
    EXPECT_EQ(pack.value().sides.size(), 2U);
    expect_whole(pack.value(), content_of(sheet_of(paper)), id);
    const std::string text = text_of(pack.value().sides.back());
    for (const std::string& words : {known.note, known.lacks, known.emergency_number, known.address, known.calls}) {
      EXPECT_NE(text.find(words), std::string::npos) << words;
    }
    EXPECT_NE(text.find("The lead, phone"), std::string::npos) << "which no plan knows";
    EXPECT_NE(text.find("Who meets the ambulance"), std::string::npos) << "known or a line to write on";
  }
}

std::vector<std::string> routines() {
  std::vector<std::string> out;
  for (const std::string& file : read::files_in(kCatalogue + "/routines", ".toml")) {
    out.push_back(std::filesystem::path(file).stem().string());
  }
  return out;
}

INSTANTIATE_TEST_SUITE_P(EveryRoutine, ClinicOf,
                         testing::Combine(testing::ValuesIn(routines()),
                                          testing::Values(Paper::kA4, Paper::kUsLetter)));

TEST(Clinic, ShowsWhatHurtsMostWhenItIsShort) {
  const catalogue::Routine of = routine("early-teens");
  std::set<std::string> names;
  for (const KeyDrillMatter& drill : cli::clinic_matter(source_of(of)).key_drills) {
    names.insert(drill.name);
    EXPECT_NE(drill.figure, nullptr);
    EXPECT_FALSE(drill.fault.fault.empty()) << drill.name;
    EXPECT_FALSE(drill.fault.cue.empty()) << drill.name;
  }
  EXPECT_EQ(names.count("Jump and stick"), 1U);
  EXPECT_EQ(names.count("Squat"), 1U);
  EXPECT_EQ(names.count("Easy laps of the lane"), 0U);
}

// The pack teaches the rung of the house routine, so its picture is that rung's.
TEST(Clinic, DrawsTheRungOfTheRoutine) {
  const catalogue::Routine of = routine("early-teens");
  const cli::ClinicSource source = source_of(of);
  int own = 0;
  for (const KeyDrillMatter& drill : cli::clinic_matter(source).key_drills) {
    for (const catalogue::RoutineLine& line : of.lines) {
      const catalogue::Drill& of_line = source.catalogue->drills[static_cast<std::size_t>(line.drill)];
      if (of_line.name != drill.name) continue;
      const catalogue::Rung& rung = of_line.rungs[static_cast<std::size_t>(line.rung)];
      EXPECT_EQ(drill.figure, rung.figure.empty() ? &of_line.figure : &rung.figure) << drill.name;
      own += rung.figure.empty() ? 0 : 1;
    }
  }
  EXPECT_GT(own, 0);
}

TEST(Clinic, ManyCoachesAreCountedAndNotLost) {
  const catalogue::Routine of = routine("early-teens");
  cli::ClinicSource source = source_of(of);
  for (int i = 0; i < 40; ++i) source.taught.push_back("Coach " + std::to_string(i) + ": not yet taught");
  const auto pack = draw_clinic(cli::clinic_matter(source), Paper::kA4);
  ASSERT_TRUE(pack);
  expect_whole(pack.value(), content_of(sheet_of(Paper::kA4)), "many coaches");
  int counted = 0;
  for (const Mark& mark : pack.value().sides.front().marks) {
    const Text* text = std::get_if<Text>(&mark);
    counted += text != nullptr && text->text.find("more that found no room") != std::string::npos ? 1 : 0;
  }
  EXPECT_EQ(counted, 1);
}

TEST(Clinic, WithoutDrillsThereIsNoPack) {
  const catalogue::Routine of = routine("early-teens");
  ClinicMatter pack = cli::clinic_matter(source_of(of));
  pack.evening.clear();
  EXPECT_FALSE(draw_clinic(pack, Paper::kA4));
  VisitMatter form = cli::visit_matter(source_of(of));
  form.drills.resize(31);
  EXPECT_FALSE(draw_visit_form(form, Paper::kA4));
}

}  // namespace
}  // namespace lanework::draw
