#include "app/planning/standing_block.h"

#include <algorithm>
#include <utility>

#include "app/planning/block_line.h"
#include "core/block/outline.h"

namespace lanework::planning {
namespace {

constexpr const char* kHint = "the answer of 'lanework block --json' for this club and block";

class StandingReader {
 public:
  StandingReader(const read::BlockAnswer& answer, std::string file, const club::Club& club,
                 const club::ClubSquad& squad)
      : answer_(answer), file_(std::move(file)), club_(club), squad_(squad), catalogue_(club.catalogue_of(squad)) {}

  Result<block::Standing> read() {
    const club::Settings& settings = club_.settings;
    const read::SquadBlock* block = answer_.find(squad_.id);
    if (answer_.monday != settings.block_from || answer_.weeks != settings.block_weeks) {
      add({file_, 0, 0, "monday"}, std::to_string(answer_.weeks) + " weeks from " + to_iso(answer_.monday),
          std::to_string(settings.block_weeks) + " weeks from " + to_iso(settings.block_from) + ", as club.toml says");
    } else if (block == nullptr) {
      add({file_, 0, 0, "squads"}, "no block of " + squad_.id, "one: it is to be planned on");
    } else {
      read_sets(*block);
      read_weeks(*block);
      for (const read::BlockSession& session : block->sessions) out_.sessions.push_back(session_of(session));
    }
    if (!faults_.empty()) return std::move(faults_);
    return std::move(out_);
  }

 private:
  const read::BlockAnswer& answer_;
  std::string file_;
  const club::Club& club_;
  const club::ClubSquad& squad_;
  const catalogue::Catalogue& catalogue_;
  block::Standing out_;
  Faults faults_;

  void add(const Place& place, std::string found, std::string expected) {
    faults_.push_back({FaultCode::kContradiction, place, std::move(found), std::move(expected), kHint});
  }

  void read_sets(const read::SquadBlock& block) {
    const std::vector<int> spells = block::spell_of_week(answer_.weeks);
    if (static_cast<int>(block.spells.size()) != spells.back() + 1) {
      add(block.place, std::to_string(block.spells.size()) + " spells of " + squad_.id,
          std::to_string(spells.back() + 1));
      return;
    }
    for (const read::BlockSpell& spell : block.spells) {
      std::vector<int>& set = out_.sets.emplace_back();
      for (const std::string& id : spell.drills) {
        const catalogue::Drill* drill = catalogue_.find(id);
        if (drill == nullptr) {
          add(block.place, quote(id), "a drill of the catalogue");
        } else {
          set.push_back(static_cast<int>(drill - catalogue_.drills.data()));
        }
      }
    }
  }

  void read_weeks(const read::SquadBlock& block) {
    const std::vector<int> none(catalogue_.families.size(), 0);
    out_.credits.assign(static_cast<std::size_t>(answer_.weeks), none);
    out_.targets = out_.credits;
    std::size_t rows = 0;
    for (const read::BlockFamily& row : block.families) {
      for (std::size_t f = 0; f < catalogue_.families.size(); ++f) {
        if (catalogue::word(catalogue::family_words(), catalogue_.families[f].family) != row.family) continue;
        if (row.week > answer_.weeks) continue;
        out_.credits[static_cast<std::size_t>(row.week) - 1][f] = row.credits;
        out_.targets[static_cast<std::size_t>(row.week) - 1][f] = row.target;
        ++rows;
      }
    }
    const std::size_t wanted = catalogue_.families.size() * static_cast<std::size_t>(answer_.weeks);
    if (rows != wanted || rows != block.families.size()) {
      add(block.place, std::to_string(block.families.size()) + " rows of families in the weeks of " + squad_.id,
          std::to_string(wanted) + ", one a family and week");
    }
  }

  block::StandingSession session_of(const read::BlockSession& from) {
    block::StandingSession out;
    out.date = from.date;
    out.start = from.start;
    out.slot = Seconds(std::int64_t{60} * from.minutes);
    out.turnout = from.turnout;
    out.days_to_match = from.days_to_match;
    out.match_day = from.match_day;
    out.budget = from.budget_steps;
    for (const read::BlockDrill& drill : from.drills) {
      const auto line = line_of(drill, catalogue_);
      if (line) {
        out.items.push_back({line->drill, line->rung, line->dose, drill.steps});
      } else {
        add(drill.place,
            quote(drill.drill) + ", " + quote(drill.rung) + ", " + std::to_string(drill.sets) + " x " +
                std::to_string(drill.amount),
            "a drill, a rung and a dose of the catalogue");
      }
    }
    return out;
  }
};

}  // namespace

loop::WasPlanned planned_in(const read::BlockAnswer& answer, const club::Club& club) {
  return [&answer, &club](std::size_t squad, Date date, TimeOfDay start, const std::string& drill) {
    const read::SquadBlock* block = answer.find(club.squads[squad].id);
    if (block == nullptr) return false;
    const auto session = std::find_if(
        block->sessions.begin(), block->sessions.end(),
        [&](const read::BlockSession& one) { return one.date == date && to_text(one.start) == to_text(start); });
    return session != block->sessions.end() &&
           std::any_of(session->drills.begin(), session->drills.end(),
                       [&](const read::BlockDrill& one) { return one.drill == drill; });
  };
}

Result<block::Standing> standing_block(const read::BlockAnswer& answer, const std::string& file, const club::Club& club,
                                       const club::ClubSquad& squad) {
  return StandingReader(answer, file, club, squad).read();
}

}  // namespace lanework::planning
