#include "core/findings/prevalence.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <utility>

#include "core/evidence/leave_one_out.h"

namespace lanework::findings {
namespace {

using records::InjuryRecord;
using records::Season;

// Days are counted from the period's first.
struct Days {
  explicit Days(const records::Period& period)
      : first(period.first), count(1 + days_between(period.first, std::min(period.last, period.as_of))) {}
  Date first;
  int count;
  [[nodiscard]] int at(Date day) const { return days_between(first, day); }
  [[nodiscard]] Date on(int at) const { return Date{first.days_since_epoch + at}; }
};

void mark(std::vector<bool>& days, int from, int until) {
  for (int day = std::max(0, from); day < std::min(until, static_cast<int>(days.size())); ++day)
    days[static_cast<std::size_t>(day)] = true;
}

// The days that an injury costs, as time_loss counts them.
std::vector<bool> days_out(const InjuryRecord& injury, const Days& days, Date as_of) {
  std::vector<bool> out(static_cast<std::size_t>(days.count));
  if (!injury.days_missed.empty()) {
    for (const Date missed : injury.days_missed) mark(out, days.at(missed), days.at(missed) + 1);
    return out;
  }
  const int begins = days.at(injury.loss_began.value_or(injury.date));
  const bool open = !injury.returned || *injury.returned > as_of;
  mark(out, begins + 1, open ? days.count : days.at(*injury.returned));
  return out;
}

struct Person {
  std::size_t squad = 0;
  std::vector<bool> on_books;
  std::vector<bool> out;
};

// Days out and days on the books of one squad or player, day by day.
struct Cluster {
  std::vector<int> out;
  std::vector<int> on_books;
};

class People {
 public:
  People(const Season& season, const Days& days) : season_(season), days_(days) {
    for (const records::PlayerRecord& record : season.players) {
      Person& person = person_of(record.player, record.squad);
      mark(person.on_books, record.joined ? days.at(*record.joined) : 0,
           record.left ? days.at(*record.left) + 1 : days.count);
    }
    for (const InjuryRecord& injury : season.injuries) add(injury);
  }

  [[nodiscard]] bool listed() const { return !season_.players.empty(); }
  [[nodiscard]] int left_out() const { return left_out_; }
  [[nodiscard]] int ever_out() const {
    return static_cast<int>(std::count_if(persons_.begin(), persons_.end(), [](const auto& entry) {
      return std::find(entry.second.out.begin(), entry.second.out.end(), true) != entry.second.out.end();
    }));
  }

  [[nodiscard]] std::vector<Cluster> squads() const {
    std::vector<Cluster> out(season_.squads.size(), empty());
    for (const auto& [name, person] : persons_) add_to(out[person.squad], person, listed());
    if (listed()) return out;
    for (std::size_t squad = 0; squad < out.size(); ++squad)
      for (int& players : out[squad].on_books) players = season_.squads[squad].players.value_or(0);
    return out;
  }

  [[nodiscard]] std::vector<Cluster> players() const {
    std::vector<Cluster> out;
    for (const auto& [name, person] : persons_) add_to(out.emplace_back(empty()), person, true);
    return out;
  }

 private:
  const Season& season_;
  Days days_;
  std::map<std::string, Person> persons_;
  int left_out_ = 0;

  [[nodiscard]] Cluster empty() const {
    const auto count = static_cast<std::size_t>(days_.count);
    return {std::vector<int>(count, 0), std::vector<int>(count, 0)};
  }

  Person& person_of(const std::string& name, std::size_t squad) {
    const auto [found, is_new] = persons_.try_emplace(name);
    if (is_new) {
      const auto count = static_cast<std::size_t>(days_.count);
      found->second = {squad, std::vector<bool>(count), std::vector<bool>(count)};
    }
    return found->second;
  }

  static void add_to(Cluster& cluster, const Person& person, bool books) {
    for (std::size_t day = 0; day < cluster.out.size(); ++day) {
      cluster.out[day] += person.out[day] ? 1 : 0;
      if (books) cluster.on_books[day] += person.on_books[day] ? 1 : 0;
    }
  }

  // Whom it happened to; nobody where no player on the books is named.
  Person* hurt(const InjuryRecord& injury) {
    if (listed()) {
      const auto found = persons_.find(injury.player);
      return found == persons_.end() ? nullptr : &found->second;
    }
    if (!season_.squads[injury.squad].players) return nullptr;
    // Who is not named is somebody of his own.
    const std::string name =
        injury.player.empty() ? "\n" + std::to_string(&injury - season_.injuries.data()) : injury.player;
    Person& person = person_of(name, injury.squad);
    mark(person.on_books, 0, days_.count);
    return &person;
  }

  void add(const InjuryRecord& injury) {
    const std::vector<bool> lost = days_out(injury, days_, season_.period.as_of);
    if (std::find(lost.begin(), lost.end(), true) == lost.end()) return;
    Person* person = hurt(injury);
    bool any = false;
    for (std::size_t day = 0; person != nullptr && day < lost.size(); ++day) {
      if (!lost[day] || !person->on_books[day]) continue;
      person->out[day] = true;
      any = true;
    }
    left_out_ += any ? 0 : 1;
  }
};

// Of the days from 'begin' until 'end'.
ShareOut share_of(const std::vector<Cluster>& clusters, const Days& days, int begin, int end) {
  ShareOut out;
  out.from = days.on(begin);
  for (const Cluster& cluster : clusters) {
    for (int day = begin; day < end; ++day) {
      out.days_out += cluster.out[static_cast<std::size_t>(day)];
      out.days_on_books += cluster.on_books[static_cast<std::size_t>(day)];
    }
  }
  return out;
}

std::optional<evidence::Interval> limits_of(const std::vector<Cluster>& clusters, const Days& days, int begin, int end,
                                            double level) {
  const ShareOut all = share_of(clusters, days, begin, end);
  std::vector<double> without;
  for (const Cluster& cluster : clusters) {
    const ShareOut own = share_of({cluster}, days, begin, end);
    if (own.days_on_books == 0) continue;
    const auto out = static_cast<double>(all.days_out - own.days_out);
    const auto on_books = static_cast<double>(all.days_on_books - own.days_on_books);
    if (out <= 0 || on_books <= 0) return {};
    without.push_back(std::log(out / on_books));
  }
  if (without.size() < 2) return {};
  const evidence::LeftOut found = evidence::limits_by_leaving_out(std::log(all.share()), without, level);
  // All alike by chance: nothing is seen of how they differ.
  if (found.error < 1e-9) return {};
  return evidence::Interval{std::exp(found.limits.low), std::min(1.0, std::exp(found.limits.high))};
}

// Where the parts of a season begin, and its end: weeks from Monday, months from the first.
template <class Same>
std::vector<int> parts(const Days& days, const Same& same) {
  std::vector<int> out = {0};
  for (int day = 1; day < days.count; ++day)
    if (!same(days.on(day - 1), days.on(day))) out.push_back(day);
  out.push_back(days.count);
  return out;
}

}  // namespace

std::optional<Prevalence> prevalence(const Season& season, double level) {
  const Days days(season.period);
  const People people(season, days);
  const std::vector<Cluster> squads = people.squads();
  Prevalence out;
  out.season = share_of(squads, days, 0, days.count);
  if (out.season.days_on_books == 0) return {};
  out.listed = people.listed();
  out.players = static_cast<double>(out.season.days_on_books) / days.count;
  out.players_out = people.ever_out();
  out.injuries_left_out = people.left_out();
  out.by_squads = season.squads.size() >= kFewSquads;
  // Without a list of players those who were never out have no name to be left out by.
  const std::vector<Cluster> left_out_in_turn = out.by_squads ? squads
                                                : out.listed  ? people.players()
                                                              : std::vector<Cluster>();
  out.season.limits = limits_of(left_out_in_turn, days, 0, days.count, level);
  const auto week_of = [&](Date day) { return records::week_of(season.period, day); };
  const std::vector<int> weeks = parts(days, [&](Date a, Date b) { return week_of(a) == week_of(b); });
  for (std::size_t i = 0; i + 1 < weeks.size(); ++i) {
    const ShareOut week = share_of(squads, days, weeks[i], weeks[i + 1]);
    if (week.days_on_books > 0) out.weeks.push_back(week);
  }
  const std::vector<int> months = parts(days, [](Date a, Date b) { return civil(a).month == civil(b).month; });
  for (std::size_t i = 0; i + 1 < months.size(); ++i) {
    ShareOut month = share_of(squads, days, months[i], months[i + 1]);
    if (month.days_on_books == 0) continue;
    month.limits = limits_of(left_out_in_turn, days, months[i], months[i + 1], level);
    out.months.push_back(month);
  }
  return out;
}

}  // namespace lanework::findings
