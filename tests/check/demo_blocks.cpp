#include "tests/check/demo_blocks.h"

#include <gtest/gtest.h>

#include <filesystem>

#include "core/door/squad_block.h"

namespace lanework::check::test {

const read::ClubFolder& demo() {
  static const read::ClubFolder kFolder = [] {
    const std::filesystem::path root = LANEWORK_SOURCE_DIR;
    return read::read_club_folder((root / "demo/quillmere").string(), (root / "catalogue").string());
  }();
  return kFolder;
}

Node planned_blocks(const club::Club& club, const std::set<std::string>& squads) {
  const club::Allocation allocation = club::allocate(club, club.settings.block_from, club.settings.block_weeks);
  block::Work work;
  work.first_rounds = 20;
  work.splits = 2;
  work.more_splits = 0;
  plan::KernelWorkspace workspace;
  std::vector<door::SquadBlock> blocks;
  for (std::size_t s = 0; s < club.squads.size(); ++s) {
    if (squads.count(club.squads[s].id) == 0) continue;
    auto wishes = door::wishes_of(club, club.squads[s], allocation.calendars[s]);
    blocks.push_back(door::plan_block(std::move(wishes).value(), work, workspace));
  }
  return door::block_answer_node(club, blocks);
}

const Node& sound_answer() {
  static const Node kAnswer = planned_blocks(demo().club, {"u12-dunnocks", "u13-kestrels", "u14-jackdaws"});
  return kAnswer;
}

std::string lines(const BlockReport& report) {
  std::string out;
  for (const BlockViolation& violation : report.violations) out += to_line(violation) + "\n";
  return out;
}

BlockReport report_of(const BlockDocuments& documents, const Node& answer) {
  const auto report = check_block(documents, {"answer.json", answer});
  if (!report) throw std::runtime_error(to_line(report.faults().front()));
  return report.value();
}

void expect_each_is_found(const Matters& sound, const std::vector<Mutation>& mutations) {
  for (const Mutation& mutation : mutations) {
    SCOPED_TRACE(mutation.name);
    Matters matters = sound;
    mutation.apply(matters);
    const BlockReport report = report_of(matters.club, matters.answer);
    std::set<std::string> rules;
    for (const BlockViolation& violation : report.violations) rules.insert(violation.rule);
    EXPECT_EQ(rules.count(mutation.rule), 1U) << mutation.rule << " not among\n" << lines(report);
    if (!mutation.alone) continue;
    EXPECT_EQ(rules, std::set<std::string>{mutation.rule}) << lines(report);
  }
}

}  // namespace lanework::check::test
