#include "app/planning/squad_plan.h"

#include <algorithm>
#include <cstdlib>
#include <memory>
#include <optional>
#include <utility>

#include "app/planning/standing_block.h"
#include "app/read/block_answer.h"
#include "app/read/club_folder.h"
#include "core/door/roll_on.h"
#include "core/door/squad_block.h"
#include "core/loop/pace_so_far.h"
#include "core/loop/sessions_so_far.h"

namespace lanework::planning {
namespace {

// How faults name a plan that is in no file.
constexpr const char* kStandingName = "the plan that stands";

class Planner {
 public:
  Planner(const club::Club& club, const club::ClubSquad& squad, const Known& known, Date today, const block::Work& work)
      : club_(club),
        squad_(squad),
        known_(known),
        today_(today),
        work_(work),
        allocation_(club::allocate(club, club.settings.block_from, club.settings.block_weeks)),
        workspace_(std::make_unique<plan::KernelWorkspace>()) {}

  Result<SquadPlan> run(const std::string& standing) {
    std::optional<read::BlockAnswer> stands = of_this_block(standing);
    if (!has_begun() || !stands) {
      auto anew = planned_anew();
      if (!anew || !has_begun()) return anew;
      auto read = read::read_block_answer(kStandingName, anew.value().text);
      if (!read) return read.faults();
      stands = std::move(read).value();
    }
    return planned_on(*stands);
  }

 private:
  const club::Club& club_;
  const club::ClubSquad& squad_;
  const Known& known_;
  Date today_;
  const block::Work& work_;
  club::Allocation allocation_;
  std::unique_ptr<plan::KernelWorkspace> workspace_;

  [[nodiscard]] std::size_t index() const { return static_cast<std::size_t>(&squad_ - club_.squads.data()); }

  // Sessions of today count as over where somebody told of them.
  [[nodiscard]] bool has_begun() const {
    const auto& slots = allocation_.calendars[index()].slots;
    return !slots.empty() && slots.front().date <= today_;
  }

  // Empty where it is none of this block, or of this squad.
  [[nodiscard]] std::optional<read::BlockAnswer> of_this_block(const std::string& standing) const {
    if (standing.empty()) return {};
    auto answer = read::read_block_answer(kStandingName, standing);
    if (!answer) return {};
    const club::Settings& settings = club_.settings;
    const bool same = answer.value().monday == settings.block_from && answer.value().weeks == settings.block_weeks &&
                      answer.value().find(squad_.id) != nullptr;
    return same ? std::optional<read::BlockAnswer>(std::move(answer).value()) : std::nullopt;
  }

  Result<SquadPlan> answer_of(door::SquadWishes wishes, const std::vector<std::string>& remarks) {
    std::vector<door::SquadBlock> blocks;
    blocks.push_back(door::plan_block(std::move(wishes), work_, *workspace_));
    Node answer = door::block_answer_node(club_, blocks);
    if (!remarks.empty()) {
      Node list = Node::make_array();
      for (const std::string& remark : remarks) list.items.push_back(Node::make_text(remark));
      answer.set("remarks", std::move(list));
    }
    return SquadPlan{to_json(answer, 2) + "\n", remarks};
  }

  // Sessions that were held whole, with their minutes, say how long this squad takes. The lead writes it down where it
  // holds: a proposal moves nothing.
  [[nodiscard]] std::optional<std::string> pace_sentence(const door::SquadWishes& wishes,
                                                         const block::Standing& standing,
                                                         const std::vector<club::SessionRow>& rows) const {
    std::vector<loop::TimedSession> timed;
    for (const club::SessionRow& row : rows) {
      const block::StandingSession* session = standing.find(row.date, row.start);
      const bool whole = row.happened == club::Happened::kHeld && row.did_it == club::DidIt::kMost &&
                         row.left_out.empty() && row.minutes && session != nullptr;
      if (!whole) continue;
      for (std::size_t i = 0; i < wishes.slots.size(); ++i) {
        if (wishes.slots[i].date != row.date || to_text(wishes.slots[i].start) != to_text(row.start)) continue;
        loop::TimedSession one{Seconds(std::int64_t{60} * *row.minutes), {}, wishes.outline.evenings[i]};
        for (const block::PlannedItem& item : session->items) {
          one.planned.items.push_back({item.drill, item.rung, item.dose, {}, {}, {}, {}});
        }
        timed.push_back(std::move(one));
      }
    }
    constexpr int kFewest = 3;        // own judgement: before that a night is a night
    constexpr int kLeastChange = 30;  // thousandths: half a minute of a quarter of an hour
    const int stated = squad_.squad.pace_thousandths;
    const loop::PaceSoFar pace =
        loop::pace_so_far(club_.catalogue_of(squad_), timed, wishes.outline.evenings.front().age);
    if (pace.sessions < kFewest || std::abs(pace.thousandths - stated) < kLeastChange) return {};
    const auto factor = [](int thousandths) {
      const int hundredths = (thousandths + 5) / 10;
      const std::string rest = std::to_string(hundredths % 100);
      return std::to_string(hundredths / 100) + (rest.size() < 2 ? ".0" : ".") + rest;
    };
    return std::to_string(pace.sessions) + " sessions that were timed say that " + squad_.id + " takes " +
           factor(pace.thousandths) + " times as long as others for the same drills; its plans go by " +
           factor(stated) + ". With 'pace = " + factor(pace.thousandths) +
           "' under [clock] in its file they would fit.";
  }

  Result<SquadPlan> planned_anew() {
    auto wishes = door::wishes_of(club_, squad_, allocation_.calendars[index()]);
    if (!wishes) return wishes.faults();
    return answer_of(std::move(wishes).value(), {});
  }

  Result<SquadPlan> planned_on(const read::BlockAnswer& stands) {
    auto wishes = door::wishes_of(club_, squad_, allocation_.calendars[index()]);
    if (!wishes) return wishes.faults();
    auto standing = standing_block(stands, kStandingName, club_, squad_);
    if (!standing) return standing.faults();
    ledger::State of_the_squad;
    for (const auto& [key, session] : known_.state.sessions) {
      if (key.squad == squad_.id) of_the_squad.sessions.emplace(key, session);
    }
    auto so_far = loop::sessions_so_far(of_the_squad, club_, allocation_, today_, planned_in(stands, club_));
    if (auto sentence = pace_sentence(wishes.value(), standing.value(), so_far.rows)) {
      so_far.passed_over.push_back(std::move(*sentence));
    }
    auto rolled = door::roll_on(std::move(wishes).value(), std::move(standing).value(),
                                {today_, kStandingName, std::move(so_far.rows)});
    if (!rolled) return rolled.faults();
    return answer_of(std::move(rolled).value(), so_far.passed_over);
  }
};

}  // namespace

Result<SquadPlan> plan_squad(const PlanningFiles& files, const std::string& squad, const Known& known, Date today,
                             const std::string& standing, const block::Work& work) {
  const read::ClubFolder folder = read::read_club_folder(files.club, files.catalogue, known.care);
  if (!folder.faults.empty()) return folder.faults;
  const club::ClubSquad* found = folder.club.find(squad);
  if (found == nullptr) {
    return Fault{FaultCode::kUnknownName,
                 {files.club + "/squads", 0, 0, {}},
                 quote(squad),
                 "the id of a squad of the club: the name of its file in squads/, without .toml",
                 {}};
  }
  return Planner(folder.club, *found, known, today, work).run(standing);
}

}  // namespace lanework::planning
