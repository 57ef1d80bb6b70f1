#include "core/block/rung_proposals.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "core/plan/availability.h"

namespace lanework::block {
namespace {

class RungProposer {
 public:
  explicit RungProposer(const Outline& outline)
      : outline_(outline), catalogue_(*outline.catalogue), past_(outline.rolling->past) {}

  std::vector<RungProposal> run() const {
    std::vector<RungProposal> down;
    std::vector<RungProposal> up;
    for (const int drill : drills_to_come()) {
      const Row row = row_of(drill);
      if (row.hardly >= kSessionsToGoDown && row.rung > 0 && !confirmed(drill, row.rung - 1))
        down.push_back({drill, row.rung, row.rung - 1, row.hardly});
      if (row.well >= kSessionsToGoUp && opens(drill, row.rung + 1) && !confirmed(drill, row.rung + 1))
        up.push_back({drill, row.rung, row.rung + 1, row.well});
    }
    const auto heavier = [&](const RungProposal& a, const RungProposal& b) {
      return std::tuple(-weight_of(a.drill), -a.sessions) < std::tuple(-weight_of(b.drill), -b.sessions);
    };
    std::stable_sort(down.begin(), down.end(), heavier);
    std::stable_sort(up.begin(), up.end(), heavier);
    up.resize(std::min(up.size(), std::size_t{kMostToGoUp}));
    down.insert(down.end(), up.begin(), up.end());
    return down;
  }

 private:
  const Outline& outline_;
  const catalogue::Catalogue& catalogue_;
  const std::vector<PastSession>& past_;

  // The last sessions in a row that say the same of a drill on its last rung.
  struct Row {
    int rung = -1;
    int well = 0;
    int hardly = 0;
  };

  [[nodiscard]] const catalogue::Drill& drill_at(int drill) const {
    return catalogue_.drills[static_cast<std::size_t>(drill)];
  }
  [[nodiscard]] int weight_of(int drill) const { return catalogue_.family(drill_at(drill).family).weight; }

  [[nodiscard]] std::set<int> drills_to_come() const {
    std::set<int> out;
    const std::vector<int> spells = spell_of_week(outline_.weeks);
    for (std::size_t e = past_.size(); e < outline_.evenings.size(); ++e) {
      const int week = days_between(outline_.monday, outline_.evenings[e].date) / 7;
      const auto spell = static_cast<std::size_t>(spells[static_cast<std::size_t>(week)]);
      const auto& sets = outline_.rolling->standing.sets;
      if (spell < sets.size()) out.insert(sets[spell].begin(), sets[spell].end());
    }
    return out;
  }

  [[nodiscard]] Row row_of(int drill) const {
    Row row;
    for (auto session = past_.rbegin(); session != past_.rend(); ++session) {
      const Report& report = session->report;
      if (report.happened == Report::Happened::kNoWord || report.happened == Report::Happened::kMissed) continue;
      const auto item = std::find_if(session->items.begin(), session->items.end(),
                                     [&](const PastItem& one) { return one.planned.drill == drill; });
      if (item == session->items.end()) continue;
      if (row.rung < 0) row.rung = item->planned.rung;
      const bool left_out = std::find(report.left_out.begin(), report.left_out.end(), drill) != report.left_out.end();
      const bool hardly = left_out || report.quarters == kFewDidIt;
      const bool well = item->done && report.quarters == kMostDidIt;
      // That there was no time for it says nothing of its rung.
      if (!hardly && !item->done) continue;
      if (item->planned.rung != row.rung) break;
      if ((hardly && row.well > 0) || (well && row.hardly > 0) || (!hardly && !well)) break;
      ++(well ? row.well : row.hardly);
    }
    return row;
  }

  // Is there such a rung, and a session to come that may have it?
  [[nodiscard]] bool opens(int drill, int rung) const {
    if (rung >= static_cast<int>(drill_at(drill).rungs.size())) return false;
    return std::any_of(
        outline_.evenings.begin() + static_cast<std::ptrdiff_t>(past_.size()), outline_.evenings.end(),
        [&](const session::Evening& evening) { return !plan::barred_because(drill_at(drill), rung, evening); });
  }

  // For the last week of the block.
  [[nodiscard]] bool confirmed(int drill, int rung) const {
    const auto found = outline_.rungs.find(drill_at(drill).id);
    return found != outline_.rungs.end() && !found->second.empty() &&
           found->second.back() == drill_at(drill).rungs[static_cast<std::size_t>(rung)].key;
  }
};

}  // namespace

std::vector<RungProposal> rung_proposals(const Outline& outline) { return RungProposer(outline).run(); }

}  // namespace lanework::block
