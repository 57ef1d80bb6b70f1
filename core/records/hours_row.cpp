#include "core/records/hours_row.h"

#include <cstring>

#include "core/records/hours.h"

namespace lanework::records {
namespace {

constexpr int kFirstYear = 1990;  // as the reader of sheets has it

std::uint64_t hash_of(std::string_view text) {
  constexpr std::uint64_t kMultiplier = 0x9E3779B97F4A7C15U;
  constexpr std::size_t kWord = 8;
  std::uint64_t hash = text.size() * kMultiplier;
  const auto add = [&](std::uint64_t word) {
    hash = (hash ^ word) * kMultiplier;
    hash ^= hash >> 29U;
  };
  std::uint64_t word = 0;
  if (text.size() < kWord) {
    for (const char c : text) word = word << 8U | static_cast<unsigned char>(c);
    add(word);
    return hash;
  }
  for (std::size_t at = 0; at + kWord < text.size(); at += kWord) {
    std::memcpy(&word, text.data() + at, kWord);
    add(word);
  }
  // The last one overlaps the one before.
  std::memcpy(&word, text.data() + text.size() - kWord, kWord);
  add(word);
  return hash;
}

constexpr int kEmpty = -1;
constexpr int kBad = -2;

int whole(std::string_view cell, int most) {
  if (cell.empty()) return kEmpty;
  if (cell.size() > 4) return kBad;
  int value = 0;
  for (const char c : cell) {
    if (c < '0' || c > '9') return kBad;
    value = value * 10 + (c - '0');
  }
  return value <= most ? value : kBad;
}

// Hours with at most three decimals, in player-minutes, rounded as the reader of sheets does.
std::int64_t player_minutes(std::string_view cell) {
  if (cell.empty()) return kEmpty;
  std::int64_t thousandths = 0;
  int decimals = -1;
  for (const char c : cell) {
    if (c == '.' && decimals < 0) {
      decimals = 0;
      continue;
    }
    if (c < '0' || c > '9' || decimals == 3 || thousandths > 100'000'000) return kBad;
    thousandths = thousandths * 10 + (c - '0');
    decimals += decimals >= 0 ? 1 : 0;
  }
  if (decimals == 0 || cell.front() == '.') return kBad;
  for (int i = decimals < 0 ? 0 : decimals; i < 3; ++i) thousandths *= 10;
  const std::int64_t minutes = (thousandths * 60 + 500) / 1000;
  return minutes <= kMostSessionHours.count ? minutes : kBad;
}

// A short word as a number, so that which of several it is takes no branches; 0 where it is empty or longer than eight
// bytes. Words of one length differ in their numbers; those of two lengths may not.
constexpr std::uint64_t packed(std::string_view word) {
  const auto byte = [&](std::size_t at) { return std::uint64_t{static_cast<unsigned char>(word[at])}; };
  const auto four = [&](std::size_t at) {
    return byte(at) | byte(at + 1) << 8U | byte(at + 2) << 16U | byte(at + 3) << 24U;
  };
  const std::size_t size = word.size();
  if (size >= 4) return size > 8 ? 0 : four(0) | four(size - 4) << 32U;
  return size == 0 ? 0 : byte(0) | byte(size / 2) << 8U | byte(size - 1) << 16U;
}

int setting_of(std::string_view cell) {
  const std::uint64_t word = packed(cell);
  int setting = kBad;
  setting = word == packed("training") && cell.size() == 8 ? static_cast<int>(Setting::kTraining) : setting;
  setting = word == packed("match") && cell.size() == 5 ? static_cast<int>(Setting::kMatch) : setting;
  return setting;
}

int warm_up_of(std::string_view cell) {
  const std::uint64_t word = packed(cell);
  int warm_up = kBad;
  warm_up = cell.empty() ? static_cast<int>(kWarmUps) : warm_up;
  warm_up = word == packed("most") && cell.size() == 4 ? static_cast<int>(WarmUp::kMost) : warm_up;
  warm_up = word == packed("half") && cell.size() == 4 ? static_cast<int>(WarmUp::kHalf) : warm_up;
  warm_up = word == packed("few") && cell.size() == 3 ? static_cast<int>(WarmUp::kFew) : warm_up;
  warm_up = word == packed("no") && cell.size() == 2 ? static_cast<int>(WarmUp::kNo) : warm_up;
  return warm_up;
}

}  // namespace

SquadTable::SquadTable(const std::vector<SquadRecord>& squads) {
  std::size_t size = 8;
  while (size < squads.size() * 2) size *= 2;
  slots_.resize(size);
  for (const SquadRecord& squad : squads) {
    const std::uint64_t hash = hash_of(squad.id);
    std::size_t at = hash & (size - 1);
    while (slots_[at].squad >= 0) at = (at + 1) & (size - 1);
    slots_[at] = {hash, static_cast<std::int32_t>(ids_.size())};
    ids_.push_back(squad.id);
  }
}

std::int32_t SquadTable::find(std::string_view id) const {
  const std::uint64_t hash = hash_of(id);
  const std::size_t mask = slots_.size() - 1;
  for (std::size_t at = hash & mask; slots_[at].squad >= 0; at = (at + 1) & mask) {
    if (slots_[at].hash == hash && ids_[static_cast<std::size_t>(slots_[at].squad)] == id) return slots_[at].squad;
  }
  return -1;
}

DateTable::DateTable(const Period& period) : first_year_(kFirstYear) {
  const int last_year = civil(period.as_of).year;
  for (int year = first_year_; year <= last_year; ++year) {
    for (int month = 1; month <= 12; ++month) {
      const Date first = *make_date(year, month, 1);
      const Date next = month == 12 ? *make_date(year + 1, 1, 1) : *make_date(year, month + 1, 1);
      months_.push_back({first.days_since_epoch, days_between(first, next)});
    }
  }
}

int DateTable::day(const char* text) const {
  unsigned wrong = (text[4] != '-' ? 1U : 0U) | (text[7] != '-' ? 1U : 0U);
  const auto digit = [&](int at) {
    const bool is_digit = text[at] >= '0' && text[at] <= '9';
    wrong |= is_digit ? 0U : 1U;
    return is_digit ? text[at] - '0' : 0;
  };
  const int year = digit(0) * 1000 + digit(1) * 100 + digit(2) * 10 + digit(3);
  const int month = digit(5) * 10 + digit(6);
  const int day = digit(8) * 10 + digit(9);
  if (wrong != 0 || year < first_year_ || month < 1 || month > 12 || day < 1) return kNoDate;
  const auto at = static_cast<std::size_t>((year - first_year_) * 12 + month - 1);
  // A year to come is a date all the same: the caller says that it is too late.
  if (at >= months_.size()) {
    const std::optional<Date> date = make_date(year, month, day);
    return date ? date->days_since_epoch : kNoDate;
  }
  return day <= months_[at].days ? months_[at].first_day + day - 1 : kNoDate;
}

HoursRows::HoursRows(const std::vector<SquadRecord>& squads, const Period& period)
    : period_(period), squads_(squads), dates_(period), table_(squads.size(), period) {
  followers_.push_back(-1);
  for (const SquadRecord& squad : squads) {
    followers_.push_back(static_cast<std::int32_t>(followers_.size()) - 1);
    std::array<Usual, kSettings> usual;
    usual[0] = {squad.training_minutes.value_or(-1), squad.players.value_or(-1)};
    usual[1] = {squad.match_minutes.value_or(-1), squad.on_the_field.value_or(-1)};
    usual_.push_back(usual);
  }
}

std::int32_t HoursRows::squad_of(std::string_view cell) {
  std::int32_t& expected = followers_[static_cast<std::size_t>(last_squad_ + 1)];
  if (expected >= 0 && cell == squads_.id(expected)) return last_squad_ = expected;
  const std::int32_t squad = squads_.find(cell);
  if (squad >= 0) last_squad_ = expected = squad;
  return squad;
}

bool HoursRows::take_date(std::string_view cell) {
  if (cell.size() != last_date_.size()) return false;
  if (last_day_ != DateTable::kNoDate && std::memcmp(cell.data(), last_date_.data(), last_date_.size()) == 0)
    return true;
  const int day = dates_.day(cell.data());
  if (day == DateTable::kNoDate) return false;
  last_day_ = day;
  std::memcpy(last_date_.data(), cell.data(), last_date_.size());
  last_week_ = period_.contains(Date{day}) ? static_cast<std::size_t>(week_of(period_, Date{day})) : 0;
  return true;
}

std::optional<RowFault> HoursRows::read(std::string_view row, Values& out) {
  using Why = RowFault::Why;
  if (!splitter_.split(row, cells_)) return RowFault{HoursColumn::kSquad, Why::kCells, {}};
  const auto cell = [&](HoursColumn column) { return cells_[static_cast<std::size_t>(column)]; };
  const auto bad = [&](HoursColumn column, Why why = Why::kCell) { return RowFault{column, why, cell(column)}; };

  out.squad = squad_of(cell(HoursColumn::kSquad));
  if (out.squad < 0) return bad(HoursColumn::kSquad, Why::kSquad);
  if (!take_date(cell(HoursColumn::kDate))) return bad(HoursColumn::kDate);
  if (last_day_ > period_.as_of.days_since_epoch) return bad(HoursColumn::kDate, Why::kFuture);
  out.setting = setting_of(cell(HoursColumn::kSetting));
  if (out.setting == kBad) return bad(HoursColumn::kSetting);
  out.minutes = whole(cell(HoursColumn::kMinutes), kMostSessionMinutes);
  if (out.minutes == kBad) return bad(HoursColumn::kMinutes);
  out.players = whole(cell(HoursColumn::kPlayers), kMostSessionPlayers);
  if (out.players == kBad) return bad(HoursColumn::kPlayers);
  out.hours = player_minutes(cell(HoursColumn::kHours));
  if (out.hours == kBad) return bad(HoursColumn::kHours);
  out.of_one_player = !cell(HoursColumn::kPlayer).empty();
  if (out.of_one_player && out.players != kEmpty && out.players != 1) return bad(HoursColumn::kPlayers);
  out.warm_up = warm_up_of(cell(HoursColumn::kWarmUp));
  if (out.warm_up == kBad) return bad(HoursColumn::kWarmUp);
  if (whole(cell(HoursColumn::kWarmUpMinutes), kMostSessionMinutes) == kBad) return bad(HoursColumn::kWarmUpMinutes);
  const std::string_view confirmed = cell(HoursColumn::kConfirmed);
  if (!confirmed.empty() && confirmed != "yes" && confirmed != "no") return bad(HoursColumn::kConfirmed);
  return {};
}

std::optional<RowFault> HoursRows::add(std::string_view row) {
  Values values;
  if (std::optional<RowFault> bad = read(row, values)) return bad;
  if (values.hours == kEmpty) {
    const Usual& usual = usual_[static_cast<std::size_t>(values.squad)][static_cast<std::size_t>(values.setting)];
    const int minutes = values.minutes == kEmpty ? usual.minutes : values.minutes;
    const int players = values.of_one_player ? 1 : values.players == kEmpty ? usual.players : values.players;
    if (minutes < 0) return RowFault{HoursColumn::kMinutes, RowFault::Why::kMinutesLack, {}};
    if (players < 0) return RowFault{HoursColumn::kPlayers, RowFault::Why::kPlayersLack, {}};
    values.hours = std::int64_t{minutes} * players;
  }
  if (!period_.contains(Date{last_day_})) {
    ++table_.rows_outside_period;
    return {};
  }
  WeekHours& sum = table_.at(static_cast<std::size_t>(values.squad), last_week_, static_cast<Setting>(values.setting));
  sum.hours += PlayerMinutes(values.hours);
  ++(values.of_one_player ? sum.player_sessions : sum.sessions);
  ++sum.warm_ups[static_cast<std::size_t>(values.warm_up)];
  ++table_.rows;
  return {};
}

}  // namespace lanework::records
