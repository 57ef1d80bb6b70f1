#include "core/people/roster_rows.h"

#include <algorithm>
#include <map>

#include "core/people/roster_cells.h"
#include "core/people/roster_headings.h"
#include "core/people/sheet_columns.h"

namespace lanework::people {
namespace {

constexpr std::size_t kMostNameCodePoints = 80;

std::size_t code_points(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

class RosterReader {
 public:
  RosterReader(const Sheet& sheet, const RosterReading& reading) : sheet_(sheet), reading_(reading) {}

  Result<std::vector<Player>> read() {
    if (!take_headings()) return std::move(faults_);
    std::vector<const SheetRow*> rows = player_rows(sheet_, headings_, reading_.forms);
    if (rows.size() > static_cast<std::size_t>(kMostRosterRows)) {
      fault_of_file(FaultCode::kOutOfRange, std::to_string(rows.size()) + " players",
                    "at most " + std::to_string(kMostRosterRows));
      return std::move(faults_);
    }
    check_widths(rows);
    for (const SheetRow* row : rows) players_.push_back(read_row(*row));
    read_births_of(rows);
    check_units();
    find_duplicates(rows);
    check_count();
    if (!faults_.empty()) return faults_by_line(sheet_, std::move(faults_), kMostFaultsListed);
    return std::move(players_);
  }

 private:
  const Sheet& sheet_;
  const RosterReading& reading_;
  Headings headings_;
  std::vector<Player> players_;
  std::vector<std::optional<int>> stated_ages_;
  Faults faults_;
  std::vector<Fault> unit_faults_;  // said once a column

  void fault_of_file(FaultCode code, std::string found, std::string expected, std::string hint = {}) {
    faults_.push_back(Fault{code, {sheet_.file, 0, 0, {}}, std::move(found), std::move(expected), std::move(hint)});
  }

  void fault(FaultCode code, const SheetCell& cell, const Heading& heading, std::string expected,
             std::string hint = {}) {
    faults_.push_back(cell_fault(code, sheet_, cell, heading.as_written, std::move(expected), std::move(hint)));
  }

  bool take_headings() {
    std::optional<Headings> found = find_headings(sheet_, reading_.forms);
    if (!found) {
      fault_of_file(FaultCode::kMissing, "no heading row that we know", "a row of headings with at least 'Name'",
                    "see docs/formats/roster.md for the headings that are read");
      return false;
    }
    headings_ = std::move(*found);
    std::map<RosterColumn, const Heading*> seen;
    for (const Heading& heading : headings_.known) {
      if (heading.meaning == RosterColumn::kSquads) continue;
      const auto [first, is_new] = seen.emplace(heading.meaning, &heading);
      if (is_new) continue;
      const SheetRow& row = sheet_.rows[static_cast<std::size_t>(headings_.row)];
      fault(FaultCode::kDuplicate, row.cells[static_cast<std::size_t>(heading.column)], heading,
            "one column only, and " + quote(first->second->as_written) + " is read already",
            "rename the column that is not meant");
    }
    return faults_.empty();
  }

  // More cells than headings: a comma, semicolon or line break slipped in without quotation marks.
  void check_widths(const std::vector<const SheetRow*>& rows) {
    const std::size_t width = sheet_.rows[static_cast<std::size_t>(headings_.row)].cells.size();
    for (const SheetRow* row : rows) {
      std::size_t used = row->cells.size();
      while (used > 0 && tidy(row->cells[used - 1].text).empty()) --used;
      if (used <= width) continue;
      faults_.push_back(Fault{FaultCode::kSyntax,
                              {sheet_.file, row->line, 0, {}},
                              std::to_string(used) + " cells",
                              "at most " + std::to_string(width) + ", as many as headings",
                              "a cell that contains the separator needs quotation marks"});
    }
  }

  Player read_row(const SheetRow& row) {
    Player player;
    player.row = row.line;
    player.name = name_in(row, headings_);
    const Heading& name_heading = name_heading_of(headings_);
    const SheetCell name_cell = cell_at(row, name_heading);
    if (player.name.empty()) {
      faults_.push_back(cell_fault(FaultCode::kMissing, sheet_, name_cell, name_heading.as_written, "a name"));
    } else if (code_points(player.name) > kMostNameCodePoints) {
      faults_.push_back(cell_fault(FaultCode::kOutOfRange, sheet_, name_cell, name_heading.as_written,
                                   "a name of at most " + std::to_string(kMostNameCodePoints) + " characters"));
    }
    player.id = "P" + std::string(players_.size() < 9 ? "0" : "") + std::to_string(players_.size() + 1);
    stated_ages_.emplace_back();
    for (const Heading& heading : headings_.known) read_cell(cell_at(row, heading), heading, player);
    return player;
  }

  void read_cell(const SheetCell& cell, const Heading& heading, Player& player) {
    const std::string text = tidy(cell.text);
    switch (heading.meaning) {
      case RosterColumn::kId:
        if (text.empty()) fault(FaultCode::kMissing, cell, heading, "an id, as the other rows have");
        player.id = text;
        return;
      case RosterColumn::kShirt:
        player.shirt = text;
        return;
      case RosterColumn::kSquads:
        for (std::string& squad : split_squads(text)) {
          if (std::find(player.squads.begin(), player.squads.end(), squad) == player.squads.end()) {
            player.squads.push_back(std::move(squad));
          }
        }
        return;
      case RosterColumn::kAge:
        if (!text.empty()) stated_ages_.back() = measured(read_age(text, reading_.forms), cell, heading);
        player.stated_age = stated_ages_.back();
        return;
      case RosterColumn::kSizeGroup:
        if (!text.empty()) player.size_group = size_group(text, cell, heading);
        return;
      case RosterColumn::kBodyMass:
        if (!text.empty())
          player.body_mass_grams = measured(read_body_mass(text, heading.unit, reading_.forms), cell, heading);
        return;
      case RosterColumn::kHeight:
        if (!text.empty()) measured(read_height(text, heading.unit, reading_.forms), cell, heading);
        return;
      case RosterColumn::kContact: {
        const std::optional<bool> answer = read_yes_no(text, reading_.forms);
        if (!answer) fault(FaultCode::kWrongType, cell, heading, "yes or no");
        player.contact_ok = answer.value_or(false);
        return;
      }
      case RosterColumn::kName:
      case RosterColumn::kGivenName:
      case RosterColumn::kFamilyName:
      case RosterColumn::kBirth:
        return;
    }
  }

  std::optional<int> measured(const Measured& result, const SheetCell& cell, const Heading& heading) {
    if (result.value) return result.value;
    Fault made = cell_fault(result.unit_missing ? FaultCode::kBadUnit : FaultCode::kOutOfRange, sheet_, cell,
                            heading.as_written, result.expected);
    (result.unit_missing ? unit_faults_ : faults_).push_back(std::move(made));
    return {};
  }

  std::optional<int> size_group(const std::string& text, const SheetCell& cell, const Heading& heading) {
    if (text.size() == 1 && text[0] >= '1' && text[0] <= '9') return text[0] - '0';
    fault(FaultCode::kOutOfRange, cell, heading, "a whole number from 1 (the smallest) to 9");
    return {};
  }

  void read_births_of(const std::vector<const SheetRow*>& rows) {
    const Heading* heading = headings_.find(RosterColumn::kBirth);
    if (heading == nullptr) return;
    std::vector<SheetCell> cells;
    cells.reserve(rows.size());
    for (const SheetRow* row : rows) cells.push_back(cell_at(*row, *heading));
    BirthReading births{heading->as_written, reading_.order, reading_.serials, reading_.day};
    if (births.order == DateOrder::kAsTheColumnTells) births.order = heading->date_order;
    const auto read = read_births(sheet_, cells, stated_ages_, births, reading_.forms, faults_);
    for (std::size_t i = 0; i < players_.size(); ++i) {
      players_[i].birth = read[i];
      if (read[i]) players_[i].stated_age.reset();
    }
  }

  // A column without its unit is one mistake, however many rows it has.
  void check_units() {
    std::map<std::string, int> columns;
    for (const Fault& fault : unit_faults_) ++columns[fault.place.field];
    for (Fault& fault : unit_faults_) {
      int& count = columns[fault.place.field];
      if (count > 1) fault.hint = "and in " + std::to_string(count - 1) + " more rows";
      if (count > 0) faults_.push_back(fault);
      count = 0;
    }
  }

  void find_duplicates(const std::vector<const SheetRow*>& rows) {
    std::map<std::string, std::size_t> by_id;
    std::map<std::pair<std::string, int>, std::size_t> by_name_and_birth;
    const Heading* id_heading = headings_.find(RosterColumn::kId);
    const Heading& name_heading = name_heading_of(headings_);
    for (std::size_t i = 0; i < players_.size(); ++i) {
      const Player& player = players_[i];
      const auto same_as = [&](std::size_t other) {
        return "a player who does not stand in line " + std::to_string(players_[other].row) + " already";
      };
      if (id_heading != nullptr && !player.id.empty()) {
        const auto [first, is_new] = by_id.emplace(same_form(reading_.forms, player.id), i);
        if (!is_new) {
          fault(FaultCode::kDuplicate, cell_at(*rows[i], *id_heading), *id_heading,
                "an id that does not stand in line " + std::to_string(players_[first->second].row) + " already");
          continue;
        }
      }
      if (player.name.empty() || (!player.birth && id_heading != nullptr)) continue;
      constexpr int kUnknown = -1'000'000;
      const int birth = player.birth ? player.birth->days_since_epoch : kUnknown;
      const auto [first, is_new] =
          by_name_and_birth.emplace(std::pair(same_form(reading_.forms, player.name), birth), i);
      if (is_new) continue;
      Fault twice{FaultCode::kDuplicate,
                  {sheet_.file, player.row, 0, name_heading.as_written},
                  quote(player.name),
                  same_as(first->second),
                  player.birth ? "one row a player: write both squads into the squad cell, as U13; U14"
                               : "two players of one name need birth dates or ids"};
      faults_.push_back(std::move(twice));
    }
  }

  void check_count() {
    if (reading_.whole_club) return;
    std::size_t count = players_.size();
    std::string of;
    if (!reading_.squad.empty()) {
      of = " of squad " + quote(reading_.squad);
      if (headings_.find(RosterColumn::kSquads) == nullptr) {
        fault_of_file(FaultCode::kMissing, "no column of squads", "a heading 'Squad', to find players" + of);
        return;
      }
      const auto in_squad = [&](const Player& player) {
        return std::find(player.squads.begin(), player.squads.end(), reading_.squad) != player.squads.end();
      };
      count = static_cast<std::size_t>(std::count_if(players_.begin(), players_.end(), in_squad));
    }
    const std::string found = std::to_string(count) + (count == 1 ? " player" : " players") + of;
    if (count < static_cast<std::size_t>(kFewestPlayers)) {
      fault_of_file(FaultCode::kOutOfRange, found, "at least " + std::to_string(kFewestPlayers) + " players");
    } else if (count > static_cast<std::size_t>(kMostPlayers)) {
      fault_of_file(FaultCode::kOutOfRange, found, "at most " + std::to_string(kMostPlayers) + " players",
                    reading_.squad.empty() ? "name the squad with in_roster where the file holds the whole club" : "");
    }
  }
};

}  // namespace

Result<std::vector<Player>> read_roster_rows(const Sheet& sheet, const RosterReading& reading) {
  return RosterReader(sheet, reading).read();
}

}  // namespace lanework::people
