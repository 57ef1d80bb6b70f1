#include "core/records/write_season.h"

#include "core/records/columns.h"

namespace lanework::records {
namespace {

// Cells of a row, one after the other.
class Row {
 public:
  Row& text(std::string_view cell) {
    if (!first_) out_ += ',';
    first_ = false;
    if (cell.find_first_of(",;\"\t") == std::string_view::npos) {
      out_ += cell;
      return *this;
    }
    out_ += '"';
    for (const char c : cell) {
      if (c == '"') out_ += '"';
      out_ += c;
    }
    out_ += '"';
    return *this;
  }
  Row& number(const std::optional<int>& value) { return text(value ? std::to_string(*value) : std::string()); }
  Row& date(const std::optional<Date>& value) { return text(value ? to_iso(*value) : std::string()); }
  Row& texts(const std::vector<std::string>& values) {
    std::string joined;
    for (const std::string& value : values) joined += (joined.empty() ? "" : "; ") + value;
    return text(joined);
  }
  template <class Value>
  Row& term(const Terms& terms, Field field, const std::optional<Value>& value) {
    return text(value ? terms.term(field, *value).key : std::string());
  }
  [[nodiscard]] std::string line() const { return out_ + "\n"; }

 private:
  std::string out_;
  bool first_ = true;
};

std::string heading(SheetKind kind) {
  Row row;
  for (const SheetColumn& column : columns_of(kind)) row.text(column.known.name);
  return row.line();
}

// Three decimals of an hour tell a minute from the next.
std::string decimal_hours(PlayerMinutes hours) {
  const std::int64_t thousandths = (hours.count * 1000 + 30) / 60;
  std::string decimals = std::to_string(1000 + thousandths % 1000).substr(1);
  while (!decimals.empty() && decimals.back() == '0') decimals.pop_back();
  return std::to_string(thousandths / 1000) + (decimals.empty() ? "" : "." + decimals);
}

std::string squad_line(const SquadRecord& squad, const Terms& terms) {
  return Row()
      .text(squad.id)
      .text(squad.name)
      .text(squad.club)
      .text(squad.age_band)
      .term(terms, Field::kSex, squad.sex)
      .number(squad.players)
      .number(squad.training_minutes)
      .number(squad.match_minutes)
      .number(squad.on_the_field)
      .date(squad.taught)
      .line();
}

std::string hours_line(const Exposure& exposure, const std::string& squad, const Terms& terms) {
  return Row()
      .text(squad)
      .date(exposure.date)
      .text(terms.term(Field::kSetting, exposure.setting).key)
      .number(exposure.minutes)
      .number(exposure.players)
      .text(exposure.stated_hours ? decimal_hours(*exposure.stated_hours) : std::string())
      .text(exposure.player)
      .term(terms, Field::kWarmUp, exposure.warm_up)
      .number(exposure.warm_up_minutes)
      .texts(exposure.left_out)
      .texts(exposure.needing_help)
      .text(!exposure.confirmed   ? ""
            : *exposure.confirmed ? "yes"
                                  : "no")
      .line();
}

std::string injury_line(const InjuryRecord& injury, const std::string& squad, const Terms& terms) {
  std::vector<std::string> missed;
  for (const Date day : injury.days_missed) missed.push_back(to_iso(day));
  return Row()
      .text(squad)
      .text(injury.player)
      .text(injury.event)
      .date(injury.date)
      .term(terms, Field::kSetting, injury.setting)
      .term(terms, Field::kOnset, injury.onset)
      .term(terms, Field::kContact, injury.contact)
      .term(terms, Field::kRegion, injury.region)
      .term(terms, Field::kTissue, injury.tissue)
      .term(terms, Field::kSide, injury.side)
      .term(terms, Field::kActivity, injury.activity)
      .term(terms, Field::kRecurrence, injury.recurrence)
      .date(injury.loss_began)
      .date(injury.returned)
      .texts(missed)
      .text(injury.note)
      .line();
}

}  // namespace

CanonicalFiles canonical_files(const Season& season, const Terms& terms) {
  CanonicalFiles out{heading(SheetKind::kSquads), heading(SheetKind::kHours), heading(SheetKind::kInjuries),
                     heading(SheetKind::kPlayers)};
  const auto id = [&](std::uint32_t squad) -> const std::string& { return season.squads[squad].id; };
  for (const SquadRecord& squad : season.squads) out.squads += squad_line(squad, terms);
  for (const Exposure& exposure : season.exposures) out.hours += hours_line(exposure, id(exposure.squad), terms);
  for (const InjuryRecord& injury : season.injuries) out.injuries += injury_line(injury, id(injury.squad), terms);
  for (const PlayerRecord& player : season.players)
    out.players += Row().text(player.player).text(id(player.squad)).date(player.joined).date(player.left).line();
  return out;
}

std::string canonical_hours_heading() {
  std::string line = heading(SheetKind::kHours);
  line.pop_back();
  return line;
}

}  // namespace lanework::records
