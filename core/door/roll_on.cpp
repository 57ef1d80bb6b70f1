#include "core/door/roll_on.h"

#include <algorithm>
#include <utility>

namespace lanework::door {
namespace {

class RollingOn {
 public:
  RollingOn(SquadWishes wishes, block::Standing standing, const SoFar& so_far)
      : wishes_(std::move(wishes)), so_far_(so_far), catalogue_(*wishes_.outline.catalogue) {
    rolling_.today = so_far.today;
    rolling_.standing = std::move(standing);
  }

  Result<SquadWishes> run() {
    for (std::size_t slot = 0; slot < wishes_.slots.size() && is_over(slot); ++slot) add_past(slot);
    find_lost_sessions();
    if (!faults_.empty()) return std::move(faults_);
    wishes_.outline.rolling = std::move(rolling_);
    return std::move(wishes_);
  }

 private:
  SquadWishes wishes_;
  const SoFar& so_far_;
  const catalogue::Catalogue& catalogue_;
  block::Rolling rolling_;
  Faults faults_;

  [[nodiscard]] const club::SessionRow* row_of(Date date, TimeOfDay start) const {
    for (const club::SessionRow& row : so_far_.rows) {
      if (&wishes_.club->squads[row.squad] == wishes_.squad && row.date == date && row.start == start) return &row;
    }
    return nullptr;
  }

  [[nodiscard]] bool is_over(std::size_t slot) const {
    const club::PlannedSlot& at = wishes_.slots[slot];
    if (at.date != so_far_.today) return at.date < so_far_.today;
    // Of several today, those before one that is told of are over as well.
    for (std::size_t later = slot; later < wishes_.slots.size() && wishes_.slots[later].date == at.date; ++later) {
      if (row_of(at.date, wishes_.slots[later].start) != nullptr) return true;
    }
    return false;
  }

  void fault(std::string found, std::string expected, std::string hint) {
    faults_.push_back({FaultCode::kContradiction,
                       {so_far_.standing_file, 0, 0, {}},
                       std::move(found),
                       std::move(expected),
                       std::move(hint)});
  }
  [[nodiscard]] std::string session_words(Date date, TimeOfDay start) const {
    return wishes_.squad->id + " on " + to_iso(date) + " at " + to_text(start);
  }

  void add_past(std::size_t slot) {
    const club::PlannedSlot& at = wishes_.slots[slot];
    const block::StandingSession* stands = rolling_.standing.find(at.date, at.start);
    if (stands == nullptr) {
      fault("no session of " + session_words(at.date, at.start), "the calendar's, since the day is over",
            "what is over stays in the calendar as it was planned");
      return;
    }
    const club::SessionRow* row = row_of(at.date, at.start);
    rolling_.past.push_back(block::past_session(catalogue_, wishes_.outline.evenings[slot], slot, stands->items,
                                                row == nullptr ? block::Report{} : report_of(*row, *stands)));
  }

  block::Report report_of(const club::SessionRow& row, const block::StandingSession& stands) {
    using Happened = block::Report::Happened;
    block::Report out;
    out.happened = row.happened == club::Happened::kHeld     ? Happened::kHeld
                   : row.happened == club::Happened::kMissed ? Happened::kMissed
                                                             : Happened::kCutShort;
    out.minutes = row.minutes;
    out.quarters = row.did_it == club::DidIt::kMost   ? block::kMostDidIt
                   : row.did_it == club::DidIt::kHalf ? block::kHalfDidIt
                                                      : block::kFewDidIt;
    for (const std::string& id : row.left_out) {
      const auto drill = static_cast<int>(catalogue_.find(id) - catalogue_.drills.data());
      const bool planned = std::any_of(stands.items.begin(), stands.items.end(),
                                       [&](const block::PlannedItem& item) { return item.drill == drill; });
      if (planned) {
        out.left_out.push_back(drill);
      } else {
        faults_.push_back({FaultCode::kContradiction,
                           row.left_out_place,
                           quote(id),
                           "a drill that was planned for " + session_words(row.date, row.start),
                           {}});
      }
    }
    return out;
  }

  // A session that was planned and is over does not fall out afterwards.
  void find_lost_sessions() {
    for (const block::StandingSession& session : rolling_.standing.sessions) {
      if (session.date >= so_far_.today) continue;
      const auto same = [&](const club::PlannedSlot& slot) {
        return slot.date == session.date && slot.start == session.start;
      };
      if (std::any_of(wishes_.slots.begin(), wishes_.slots.end(), same)) continue;
      fault("a session of " + session_words(session.date, session.start), "none, as the calendar says now",
            "what is over stays in the calendar as it was planned; say in the sessions file that it was missed");
    }
  }
};

}  // namespace

Result<SquadWishes> roll_on(SquadWishes wishes, block::Standing standing, const SoFar& so_far) {
  return RollingOn(std::move(wishes), std::move(standing), so_far).run();
}

}  // namespace lanework::door
