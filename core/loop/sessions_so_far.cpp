#include "core/loop/sessions_so_far.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace lanework::loop {
namespace {

std::string text_in(const Node& entry, std::string_view key) {
  const Node* found = entry.find(key);
  return found != nullptr && found->kind == Node::Kind::kText ? found->text : std::string();
}

std::optional<int> whole_in(const Node& entry, std::string_view key) {
  const Node* found = entry.find(key);
  if (found == nullptr || found->kind != Node::Kind::kInteger) return {};
  return static_cast<int>(found->integer);
}

class Reader {
 public:
  Reader(const club::Club& club, const club::Allocation& allocation, Date today, const WasPlanned& was_planned)
      : club_(club), allocation_(allocation), today_(today), was_planned_(was_planned) {}

  void read(const ledger::SessionKey& key, const ledger::SessionState& session) {
    const club::ClubSquad* squad = club_.find(key.squad);
    const auto date = parse_iso_date(key.day);
    if (squad == nullptr || !date || !session.wrap_up || !within_block(*date)) return;
    const std::string words = key.squad + " on " + key.day + " at " + key.start;
    if (*date > today_) return pass_over(words + " is still to come: what was entered about it waits.");
    const auto index = static_cast<std::size_t>(squad - club_.squads.data());
    const club::PlannedSlot* slot = slot_of(index, *date, key.start);
    if (slot == nullptr) return pass_over(words + " is in no calendar of this block: it changes no plan.");
    out_.rows.push_back(row_of(index, *slot, session, words));
  }

  SessionsSoFar out() { return std::move(out_); }

 private:
  const club::Club& club_;
  const club::Allocation& allocation_;
  Date today_;
  const WasPlanned& was_planned_;
  SessionsSoFar out_;

  void pass_over(std::string what) { out_.passed_over.push_back(std::move(what)); }

  [[nodiscard]] bool within_block(Date date) const {
    constexpr int kDays = 7;
    const Date from = club_.settings.block_from;
    return from <= date && date < Date{from.days_since_epoch + kDays * club_.settings.block_weeks};
  }

  [[nodiscard]] const club::PlannedSlot* slot_of(std::size_t squad, Date date, const std::string& start) const {
    const auto& slots = allocation_.calendars[squad].slots;
    const auto found = std::find_if(slots.begin(), slots.end(), [&](const club::PlannedSlot& slot) {
      return slot.date == date && to_text(slot.start) == start;
    });
    return found == slots.end() ? nullptr : &*found;
  }

  club::SessionRow row_of(std::size_t squad, const club::PlannedSlot& slot, const ledger::SessionState& session,
                          const std::string& words) {
    club::SessionRow out;
    out.squad = squad;
    out.date = slot.date;
    out.start = slot.start;
    const std::string happened = text_in(*session.wrap_up, "happened");
    const std::string did_it = text_in(*session.wrap_up, "did_it");
    // Held with nobody doing it is a warm-up that did not happen.
    out.happened = happened == "missed" || did_it == "nobody" ? club::Happened::kMissed
                   : happened == "cut-short"                  ? club::Happened::kCutShort
                                                              : club::Happened::kHeld;
    if (out.happened == club::Happened::kMissed) return out;
    out.did_it = did_it == "half" ? club::DidIt::kHalf : did_it == "few" ? club::DidIt::kFew : club::DidIt::kMost;
    const auto minutes = whole_in(*session.wrap_up, "minutes");
    constexpr int kSecondsInMinute = 60;
    const auto slot_minutes = static_cast<int>(slot.length.count / kSecondsInMinute);
    if (minutes && *minutes >= 1) out.minutes = std::min(*minutes, slot_minutes);
    for (const auto& [drill, marks] : session.drills) {
      if (marks.done != "skipped") continue;
      if (was_planned_(squad, slot.date, slot.start, drill)) {
        out.left_out.push_back(drill);
      } else {
        pass_over(words + ": " + drill + " was left out, but was not planned.");
      }
    }
    return out;
  }
};

}  // namespace

SessionsSoFar sessions_so_far(const ledger::State& state, const club::Club& club, const club::Allocation& allocation,
                              Date today, const WasPlanned& was_planned) {
  Reader reader(club, allocation, today, was_planned);
  for (const auto& [key, session] : state.sessions) reader.read(key, session);
  return reader.out();
}

}  // namespace lanework::loop
