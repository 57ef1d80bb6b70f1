#include "app/cli/serve/demo_autumn.h"

#include <algorithm>
#include <array>
#include <set>
#include <stdexcept>

#include "app/cli/care/texts_node.h"
#include "core/base/random.h"
#include "core/ledger/consent.h"

namespace lanework::cli {
namespace {

constexpr std::uint64_t kSeed = 20261126;
constexpr std::int64_t kDaySeconds = 86'400;

// Invented: where, in the words of catalogue/record_terms.toml what, and what the lead noted.
struct DemoInjury {
  const char* place;
  std::array<const char*, 6> what;
  const char* note;
};
constexpr std::array<DemoInjury, 4> kDemoInjuries = {
    {{"ankle",
      {"setting training", "onset acute-sudden", "contact none", "region ankle", "tissue joint-sprain",
       "activity landing"},
      "Rolled over on landing. Invented."},
     {"back-thigh",
      {"setting training", "onset acute-sudden", "contact none", "region thigh", "tissue muscle-injury",
       "activity sprinting"},
      "Pulled up in a sprint. Invented."},
     {"knee",
      {"setting training", "onset acute-sudden", "contact direct-athlete", "region knee", "tissue contusion",
       "activity running"},
      "Knee against knee. Invented."},
     {"ankle",
      {"setting training", "onset acute-sudden", "contact none", "region ankle", "tissue joint-sprain",
       "activity cutting"},
      "Turned over when cutting. Invented."}}};

class Autumn {
 public:
  Autumn(Date today, const DemoSender& by, const ledger::KindTable& kinds) : today_(today), by_(by), kinds_(kinds) {}

  void evening(const club::ClubSquad& squad, Date day, TimeOfDay start) {
    about_ = Node::make_table();
    about_.set("squad", Node::make_text(squad.id));
    about_.set("day", Node::make_text(to_iso(day)));
    about_.set("start", Node::make_text(to_text(start)));
    day_ = day;
    minutes_ = start.minutes;
    store::Batch batch{by_.coach, {}, {}, stamp(15)};
    draw_ = philox({++evenings_, 1, 2, 3}, random_key(kSeed));
    const double luck = uniform_from(draw_[0]);
    if (luck < 0.06) {
      wrap_up(batch, "missed", "", 0);
    } else {
      held(batch, squad, luck < 0.16);
    }
    batches_.push_back(std::move(batch));
  }

  // Somebody is hurt at that evening, and the lead opens the record where the guardians agreed; a third of them come
  // back. What it is goes round.
  void hurt(const std::string& player, const std::string& squad, bool back) {
    store::Batch noted{by_.coach, {}, {}, stamp(10)};
    about_ = Node::make_table();
    about_.set("player", Node::make_text(player));
    const DemoInjury& kind = kDemoInjuries[injuries_++ % kDemoInjuries.size()];
    const std::string id = add(noted, by_.coach, "hurt", {{"place", Node::make_text(kind.place)}});
    batches_.push_back(std::move(noted));
    if (asked_.count(player) == 0) return;
    store::Batch opened{by_.lead, {}, {}, stamp(180)};
    const std::string injury = add(opened, by_.lead, "injury-opened",
                                   {{"squad", Node::make_text(squad)},
                                    {"day", Node::make_text(to_iso(day_))},
                                    {"what", texts_node({kind.what.begin(), kind.what.end()})},
                                    {"note", Node::make_text(kind.note)}});
    batches_.push_back(std::move(opened));
    if (!back || days_between(day_, today_) < 15) return;
    const Date then = day_;
    day_ = Date{day_.days_since_epoch + 14};
    store::Batch closed{by_.lead, {}, {}, stamp(30)};
    Node names = Node::make_array();
    names.items.push_back(Node::make_text(id));
    add(closed, by_.lead, "clearance",
        {{"names", names},
         {"clinician", Node::make_text("An invented clinician")},
         {"profession", Node::make_text("physiotherapist")}});
    add(closed, by_.lead, "lifted", {{"names", names}});
    add(closed, by_.lead, "injury-closed",
        {{"injury", Node::make_text(injury)}, {"returned", Node::make_text(to_iso(day_))}});
    later_.push_back(std::move(closed));
    day_ = then;
  }

  // What the guardians signed before the season: by far the most all of it.
  void asked(const std::string& player, Date day, std::uint32_t nth) {
    constexpr std::uint32_t kNoStatistics = 23;  // one in so many said no to those
    constexpr std::uint32_t kNeverAsked = 31;    // of one in so many nobody has asked yet
    if (nth % kNeverAsked == kNeverAsked - 1 || !asked_.insert(player).second) return;
    day_ = day;
    minutes_ = 0;
    store::Batch batch{by_.lead, {}, {}, stamp(0)};
    about_ = Node::make_table();
    about_.set("player", Node::make_text(player));
    for (const std::string& purpose : ledger::purposes(kinds_)) {
      const bool refused = purpose == ledger::kStatistics && nth % kNoStatistics == kNoStatistics - 1;
      add(batch, by_.lead, "consent",
          {{"purpose", Node::make_text(purpose)},
           {"by", Node::make_text("guardian")},
           {"answer", Node::make_text(refused ? "refused" : "given")},
           {"day", Node::make_text(to_iso(day))}});
    }
    batches_.push_back(std::move(batch));
  }

  void sore(const std::string& player, int number) {
    store::Batch batch{by_.coach, {}, {}, stamp(5)};
    about_ = Node::make_table();
    about_.set("player", Node::make_text(player));
    add(batch, by_.coach, "soreness", {{"place", Node::make_text("knee")}, {"before", Node::make_integer(number)}});
    batches_.push_back(std::move(batch));
  }

  std::vector<store::Batch> take() {
    std::move(later_.begin(), later_.end(), std::back_inserter(batches_));
    std::stable_sort(batches_.begin(), batches_.end(),
                     [](const store::Batch& a, const store::Batch& b) { return a.received < b.received; });
    // A device counts in the order in which it sends.
    std::int64_t coach = 0;
    std::int64_t lead = 0;
    for (store::Batch& batch : batches_) {
      for (store::Incoming& incoming : batch.entries) {
        std::int64_t& sequence = batch.sender.role == ledger::Role::kLead ? lead : coach;
        incoming.entry.whole.set("sequence", Node::make_integer(++sequence));
        incoming.entry = ledger::read_entry(std::move(incoming.entry.whole), incoming.entry.kind, kinds_).value();
      }
    }
    return std::move(batches_);
  }

 private:
  using Fields = std::vector<std::pair<std::string, Node>>;

  Date today_;
  const DemoSender& by_;
  const ledger::KindTable& kinds_;
  std::vector<store::Batch> batches_;
  std::vector<store::Batch> later_;
  std::set<std::string> asked_;  // players
  RandomBlock draw_{};
  std::uint32_t evenings_ = 0;
  std::size_t injuries_ = 0;
  std::uint32_t made_ = 0;
  Node about_;
  Date day_;
  int minutes_ = 0;

  [[nodiscard]] std::string stamp(int later_minutes) const {
    return to_iso(day_) + "T" + to_text(TimeOfDay{std::min(minutes_ + later_minutes, 23 * 60 + 59)}) + ":00Z";
  }

  // Gives its id.
  std::string add(store::Batch& batch, const store::Sender&, const std::string& kind, const Fields& fields) {
    std::array<std::uint8_t, 10> random{};
    const RandomBlock words = philox({++made_, 9, 9, 9}, random_key(kSeed));
    for (std::size_t i = 0; i < random.size(); ++i) random[i] = static_cast<std::uint8_t>(words[i / 4] >> (i % 4 * 8));
    const std::int64_t milliseconds = (day_.days_since_epoch * kDaySeconds + minutes_ * 60) * 1000 + made_ % 1000;
    const std::string id = ledger::to_text(ledger::make_entry_id(static_cast<std::uint64_t>(milliseconds), random));
    Node whole = Node::make_table();
    whole.set("id", Node::make_text(id));
    whole.set("sequence", Node::make_integer(1));
    whole.set("device_time", Node::make_text(stamp(0)));
    whole.set("kind", Node::make_text(kind));
    for (const auto& [key, value] : about_.entries) whole.set(key, value);
    for (const auto& [key, value] : fields) whole.set(key, value);
    auto entry = ledger::read_entry(whole, kind, kinds_);
    if (!entry) throw std::logic_error(to_line(entry.faults().front()));
    batch.entries.push_back({std::move(entry).value(), {}});
    return id;
  }

  void wrap_up(store::Batch& batch, const char* happened, const char* did_it, int minutes) {
    Fields fields = {{"happened", Node::make_text(happened)}};
    if (*did_it != '\0') fields.emplace_back("did_it", Node::make_text(did_it));
    if (minutes > 0) fields.emplace_back("minutes", Node::make_integer(minutes));
    add(batch, by_.coach, "wrap-up", fields);
  }

  void held(store::Batch& batch, const club::ClubSquad& squad, bool cut_short) {
    add(batch, by_.coach, "session-started", {});
    Node names = Node::make_array();
    std::uint32_t nth = 0;
    for (const people::Player& player : squad.players) {
      const RandomBlock words = philox({evenings_, 4, ++nth, 5}, random_key(kSeed));
      if (uniform_from(words[0]) < 0.85) names.items.push_back(Node::make_text(player.id));
    }
    const auto there = static_cast<std::int64_t>(names.items.size());
    add(batch, by_.coach, "attendance", {{"there", Node::make_integer(there)}, {"players", std::move(names)}});
    if (uniform_from(draw_[1]) < 0.2) {
      add(batch, by_.coach, "drill-marked",
          {{"drill", Node::make_text("single-leg-bridge")}, {"mark", Node::make_text("needs-help")}});
    }
    const double how = uniform_from(draw_[2]);
    wrap_up(batch, cut_short ? "cut-short" : "held",
            how < 0.65  ? "most"
            : how < 0.9 ? "half"
                        : "few",
            cut_short ? 12 : 19);
  }
};

bool is_holiday(const club::Club& club, Date day) {
  const auto& all = club.settings.holidays;
  return std::any_of(all.begin(), all.end(),
                     [&](const club::Holiday& one) { return one.from <= day && day <= one.to; });
}

}  // namespace

std::vector<store::Batch> invented_autumn(const club::Club& club, Date today, const DemoSender& by,
                                          const ledger::KindTable& kinds) {
  constexpr int kMostDays = 300;
  Autumn autumn(today, by, kinds);
  Date day = std::max(club.settings.season_from, Date{today.days_since_epoch - kMostDays});
  std::uint32_t count = 0;
  for (const club::ClubSquad& squad : club.squads) {
    for (const people::Player& player : squad.players) autumn.asked(player.id, day, count++);
  }
  count = 0;
  for (; day < today; day = Date{day.days_since_epoch + 1}) {
    if (is_holiday(club, day)) continue;
    for (const club::ClubSquad& squad : club.squads) {
      for (const session::WeekSlot& slot : squad.squad.weekly.slots) {
        if (static_cast<int>(slot.weekday) != (day.days_since_epoch + 3) % 7) continue;  // 1 January 1970: a Thursday
        autumn.evening(squad, day, slot.start);
        ++count;
        if (squad.players.empty()) continue;
        const std::string& player = squad.players[count % squad.players.size()].id;
        if (count % 61 == 0) autumn.hurt(player, squad.id, count % 3 != 0);
        if (count % 43 == 0) autumn.sore(player, static_cast<int>(1 + count % 4));
      }
    }
  }
  return autumn.take();
}

}  // namespace lanework::cli
