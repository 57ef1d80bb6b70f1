#include "core/records/hours_stream.h"

#include <cstring>

#include "core/records/hours.h"
#include "core/records/hours_row.h"
#include "core/records/write_season.h"

namespace lanework::records {
namespace {

constexpr const char* kReadFirst =
    "only canonical hours are summed this way: read and write the file once as sheets are";

std::string expected_in(HoursColumn column) {
  switch (column) {
    case HoursColumn::kSquad:
      return "the id of a squad, as the squads' file has it";
    case HoursColumn::kDate:
      return "a date such as 2026-11-24";
    case HoursColumn::kSetting:
      return "training or match";
    case HoursColumn::kMinutes:
    case HoursColumn::kWarmUpMinutes:
      return "a whole number from 0 to " + std::to_string(kMostSessionMinutes) + ", or nothing";
    case HoursColumn::kPlayers:
      return "a whole number from 0 to " + std::to_string(kMostSessionPlayers) + ", or nothing; 1 in one player's row";
    case HoursColumn::kHours:
      return "hours of all players together with at most three decimals, at most " +
             std::to_string(kMostSessionHours.count / 60) + ", or nothing";
    case HoursColumn::kWarmUp:
      return "most, half, few, no or nothing";
    default:
      return "yes, no or nothing";
  }
}

Fault fault_of(const RowFault& row, const std::string& file, int line, const Period& period) {
  using Why = RowFault::Why;
  const std::string heading(columns_of(SheetKind::kHours)[static_cast<std::size_t>(row.column)].known.name);
  const std::string found = row.cell.empty() ? "an empty cell" : quote(std::string(row.cell));
  const Place place{file, line, 0, heading};
  switch (row.why) {
    case Why::kSquad:
      return {FaultCode::kUnknownName, place, found, expected_in(HoursColumn::kSquad), {}};
    case Why::kFuture:
      return {FaultCode::kBadDate, place, found, "a day to " + to_iso(period.as_of) + ", the last that is known", {}};
    case Why::kMinutesLack:
      return {FaultCode::kMissing, place, found, "the minutes of the session", "or state the squad's usual minutes"};
    case Why::kPlayersLack:
      return {FaultCode::kMissing, place, found, "the players who were there", "or state the squad's usual number"};
    case Why::kCells:
      return {FaultCode::kSyntax,
              {file, line, 0, {}},
              "cells that do not fit the headings",
              std::to_string(kHoursColumns) + " cells, quotation marks closed",
              kReadFirst};
    case Why::kCell:
      break;
  }
  return {FaultCode::kWrongType, place, found, expected_in(row.column), kReadFirst};
}

}  // namespace

class HoursStream::Rows {
 public:
  Rows(std::string file, const std::vector<SquadRecord>& squads, const Period& period)
      : file_(std::move(file)), period_(period), rows_(squads, period) {}

  void take_line(std::string_view line) {
    ++line_;
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    if (line_ == 1) return take_heading(line);
    if (line.empty() || no_heading_) return;
    if (const std::optional<RowFault> bad = rows_.add(line)) fault(fault_of(*bad, file_, line_, period_));
  }
  void too_long() {
    fault({FaultCode::kSyntax, {file_, line_ + 1, 0, {}}, "a line of more than 1 MB", "a row of hours", kReadFirst});
    no_heading_ = true;  // nothing after it can be told
  }

  Result<WeekTable> finish() {
    if (line_ == 0) take_heading({});
    if (faults_.empty()) return std::move(rows_.table());
    if (more_faults_ > 0) {
      faults_.push_back({FaultCode::kSyntax,
                         {file_, 0, 0, {}},
                         std::to_string(more_faults_) + " more faults",
                         "none; the first " + std::to_string(kMostStreamFaults) + " are listed",
                         {}});
    }
    return std::move(faults_);
  }

 private:
  std::string file_;
  Period period_;
  HoursRows rows_;
  Faults faults_;
  std::int64_t more_faults_ = 0;
  int line_ = 0;
  bool no_heading_ = false;

  void fault(Fault made) {
    if (faults_.size() < kMostStreamFaults) {
      faults_.push_back(std::move(made));
    } else {
      ++more_faults_;
    }
  }
  void take_heading(std::string_view line) {
    if (line == canonical_hours_heading()) return;
    no_heading_ = true;
    fault({FaultCode::kMissing,
           {file_, 1, 0, {}},
           line.empty() ? "nothing" : quote(std::string(line.substr(0, 200))),
           quote(canonical_hours_heading()),
           kReadFirst});
  }
};

HoursStream::HoursStream(std::string file, const std::vector<SquadRecord>& squads, const Period& period)
    : rows_(std::make_unique<Rows>(std::move(file), squads, period)) {}
HoursStream::HoursStream(HoursStream&&) noexcept = default;
HoursStream& HoursStream::operator=(HoursStream&&) noexcept = default;
HoursStream::~HoursStream() = default;

void HoursStream::take(std::string_view piece) {
  const char* at = piece.data();
  const char* const end = at + piece.size();
  while (at != end) {
    const auto* line_end = static_cast<const char*>(std::memchr(at, '\n', static_cast<std::size_t>(end - at)));
    const char* stop = line_end == nullptr ? end : line_end;
    const std::string_view part(at, static_cast<std::size_t>(stop - at));
    if (line_end == nullptr) {
      if (begun_.size() <= kLongestStreamLine) begun_ += part;
      return;
    }
    if (begun_.empty()) {
      rows_->take_line(part);
    } else {
      begun_ += part;
      if (begun_.size() > kLongestStreamLine)
        rows_->too_long();
      else
        rows_->take_line(begun_);
      begun_.clear();
    }
    at = line_end + 1;
  }
}

Result<WeekTable> HoursStream::finish() && {
  if (begun_.size() > kLongestStreamLine) {
    rows_->too_long();
  } else if (!begun_.empty()) {
    rows_->take_line(begun_);
  }
  return rows_->finish();
}

}  // namespace lanework::records
