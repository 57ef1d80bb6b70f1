#include "fuzz/block_promises.h"

#include <algorithm>
#include <filesystem>
#include <utility>

#include "app/cli/check_documents.h"
#include "app/planning/standing_block.h"
#include "app/read/block_answer.h"
#include "app/read/block_table.h"
#include "app/read/club_folder.h"
#include "core/check/check_block.h"
#include "core/club/consistency.h"
#include "core/door/replan_words.h"
#include "fuzz/promise.h"

namespace lanework::fuzz {
namespace {

struct Demo {
  read::ClubFolder folder;
  club::Allocation allocation;
  check::BlockDocuments documents;
};

// One squad, so that an answer is small and quickly judged.
const Demo& demo() {
  static const Demo kDemo = [] {
    const std::filesystem::path root = LANEWORK_SOURCE_DIR;
    Demo out{read::read_club_folder((root / "demo/quillmere").string(), (root / "catalogue").string()), {}, {}};
    const auto other = [](const auto& squad) { return squad.id != "u10-wrens"; };
    std::erase_if(out.folder.club.squads, other);
    std::erase_if(out.folder.documents.squads, other);
    promise(out.folder.club.squads.size() == 1, "the demo club has its Wrens");
    const club::Settings& settings = out.folder.club.settings;
    out.allocation = club::allocate(out.folder.club, settings.block_from, settings.block_weeks);
    out.documents = cli::check_documents(out.folder.documents);
    return out;
  }();
  return kDemo;
}

void promise_line(const std::string& text, const char* what) {
  for (const char c : text) promise(static_cast<unsigned char>(c) >= 0x20 && c != 0x7F, what);
}

void check_read(const read::BlockAnswer& answer) {
  promise(answer.weeks >= 1 && answer.weeks <= 8, "a block has so many weeks");
  promise(!answer.squads.empty(), "an answer has a squad");
  std::vector<const read::SquadBlock*> squads;
  for (const read::SquadBlock& squad : answer.squads) {
    squads.push_back(&squad);
    promise(!squad.squad.empty() && answer.find(squad.squad) != nullptr, "a squad is found by its id");
    for (const read::BlockSession& session : squad.sessions) {
      promise(session.week >= 1 && session.minutes >= 1 && session.turnout >= 0, "a session's numbers are ones");
      for (const read::BlockDrill& drill : session.drills)
        promise(!drill.drill.empty() && drill.sets >= 1 && drill.amount >= 1 && drill.steps >= 0, "a drill has a dose");
    }
    promise_line(squad.name, "a squad's name is one line of text");
    for (const std::string& sentence : squad.shortfalls) promise_line(sentence, "a shortfall is one line of text");
    for (const read::BlockMinutePrice& price : squad.minute_prices)
      promise_line(price.sentence, "a price is one line of text");
    for (const read::BlockSpell& spell : squad.spells) {
      for (const auto* drills : {&spell.comes_in, &spell.leaves}) {
        for (const std::string& drill : *drills) promise_line(drill, "a swap is one line of text");
      }
    }
    for (const read::BlockFamily& row : squad.families)
      promise(row.week >= 1 && row.credits >= 0 && row.target >= 0, "a family's numbers are ones");
  }
  const std::string table = read::block_table(squads);
  promise(table.size() > 2 && table.compare(table.size() - 2, 2, "\r\n") == 0, "a table ends with a line");
  promise(parse_json("package.json", read::block_table_descriptor(answer.club)).ok(), "a descriptor is JSON");
}

void check_judged(const Document& answer, const check::BlockDocuments& documents) {
  const auto report = check::check_block(documents, answer);
  if (!report) return promise_clear_faults(report.faults(), kAnswerFile);
  for (const check::BlockViolation& violation : report.value().violations) {
    promise(!violation.rule.empty(), "a violation has a rule");
    promise_line(check::to_line(violation), "a violation is one line of text");
  }
  promise(!to_json(check::to_node(report.value())).empty(), "a report can be written");
}

club::SessionRow row_of(const club::PlannedSlot& slot, unsigned happened) {
  club::SessionRow row;
  row.date = slot.date;
  row.start = slot.start;
  row.happened = happened == 2 ? club::Happened::kMissed : club::Happened::kHeld;
  row.did_it = happened == 1 ? club::DidIt::kHalf : club::DidIt::kMost;
  return row;
}

door::SoFar so_far_of(const HowFar& how_far) {
  door::SoFar out;
  out.today = demo().folder.club.settings.block_from;
  out.today.days_since_epoch += how_far.days;
  out.standing_file = kAnswerFile;
  unsigned happened = how_far.happened;
  for (const club::PlannedSlot& slot : demo().allocation.calendars.front().slots) {
    if (slot.date >= out.today) break;
    if ((happened & 3U) != 3U) out.rows.push_back(row_of(slot, happened & 3U));
    happened >>= 2U;
  }
  return out;
}

// With little effort: what matters here is what the answer says, not how good the block is.
door::SquadBlock planned_quickly(door::SquadWishes wishes) {
  plan::KernelWorkspace workspace;
  door::SquadBlock out;
  out.built = block::build_problem(wishes.outline, workspace);
  if (out.built.problem.sessions.empty()) return door::plan_block(std::move(wishes), {}, workspace);
  out.wishes = std::move(wishes);
  const block::WeekEffort little{.rounds = 4, .splits = 0, .rounds_of_a_half = 2, .list_steps = 1'000, .joins = 1'000};
  out.replanned = block::replan(out.wishes.outline, out.built, little);
  out.answer = out.replanned->answer;
  return out;
}

// The answer as the plan before one that is itself nothing: both sides of the check are read.
void check_as_standing(const Document& answer, const door::SoFar& so_far) {
  check::BlockDocuments documents = demo().documents;
  documents.so_far = cli::check_so_far(so_far, demo().folder.club);
  documents.so_far->standing = answer;
  check_judged(answer, documents);
}

std::string made_sound() {
  const club::Club& club = demo().folder.club;
  auto wishes = door::wishes_of(club, club.squads.front(), demo().allocation.calendars.front());
  promise(wishes.ok(), "the demo squad has an evening");
  block::Work work;
  work.first_rounds = 4;
  work.splits = work.more_splits = work.last_splits = work.improvements = work.worked_out = 0;
  work.thorough = work.week;
  plan::KernelWorkspace workspace;
  std::vector<door::SquadBlock> blocks;
  blocks.push_back(door::plan_block(std::move(wishes).value(), work, workspace));
  std::string json = to_json(door::block_answer_node(club, blocks));
  const auto report = check::check_block(demo().documents, parse_json(kAnswerFile, json).value());
  promise(report.ok() && report.value().ok(), "a block as it is planned is sound");
  return json;
}

}  // namespace

const std::string& sound_answer() {
  static const std::string kSound = made_sound();
  return kSound;
}

bool plans_on_from(const std::string& json, const HowFar& how_far) {
  const auto answer = read::read_block_answer(kAnswerFile, json);
  if (!answer) return false;
  const club::Club& club = demo().folder.club;
  const club::ClubSquad& squad = club.squads.front();
  auto standing = planning::standing_block(answer.value(), kAnswerFile, club, squad);
  if (!standing) {
    promise_clear_faults(standing.faults(), kAnswerFile);
    return false;
  }
  auto wishes = door::wishes_of(club, squad, demo().allocation.calendars.front());
  promise(wishes.ok(), "the demo squad has an evening");
  auto rolled = door::roll_on(std::move(wishes).value(), std::move(standing).value(), so_far_of(how_far));
  if (!rolled) {
    promise_clear_faults(rolled.faults(), kAnswerFile);
    return false;
  }
  std::vector<door::SquadBlock> blocks;
  blocks.push_back(planned_quickly(std::move(rolled).value()));
  for (const std::string& sentence : door::replan_sentences(blocks.front()))
    promise_line(sentence, "a sentence is one line of text");
  const std::string next = to_json(door::block_answer_node(club, blocks));
  promise(read::read_block_answer(kAnswerFile, next).ok(), "what is planned on is read again");
  return true;
}

void check_block_answer(const std::string& json, const HowFar& how_far) {
  const auto answer = read::read_block_answer(kAnswerFile, json);
  if (answer) {
    check_read(answer.value());
  } else {
    promise_clear_faults(answer.faults(), kAnswerFile);
  }
  const auto document = parse_json(kAnswerFile, json);
  if (!document) return promise_clear_faults(document.faults(), kAnswerFile);
  check_judged(document.value(), demo().documents);
  if (answer) check_as_standing(document.value(), so_far_of(how_far));
}

}  // namespace lanework::fuzz
