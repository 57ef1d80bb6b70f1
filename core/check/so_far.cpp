#include "core/check/so_far.h"

#include <algorithm>
#include <utility>

namespace lanework::check {
namespace {

constexpr std::int64_t kMostMinutes = 24 * 60;

ToldSession read_told(TableReader& table) {
  ToldSession out;
  out.squad = table.text("squad");
  out.date = table.date("date").value_or(Date{});
  out.start_minutes = table.time("start").value_or(TimeOfDay{}).minutes;
  out.happened = table.text("happened");
  out.did_it = table.text("did_it");
  if (table.has("minutes")) out.minutes = table.integer("minutes", 1, kMostMinutes);
  out.left_out = table.texts("left_out");
  return out;
}

}  // namespace

const ToldSession* SoFar::find(const std::string& squad, const Wish& wish) const {
  const auto same = [&](const ToldSession& row) {
    return row.squad == squad && row.date == wish.date && row.start_minutes == wish.start_minutes;
  };
  const auto found = std::find_if(told.begin(), told.end(), same);
  return found == told.end() ? nullptr : &*found;
}

bool SoFar::is_over(const std::string& squad, const Wish& wish) const {
  if (wish.date != today) return wish.date < today;
  return std::any_of(told.begin(), told.end(), [&](const ToldSession& row) {
    return row.squad == squad && row.date == today && row.start_minutes >= wish.start_minutes;
  });
}

Result<SoFar> read_so_far(const SoFarDocuments& documents) {
  SoFar out;
  out.today = documents.today;
  Faults faults;
  Node root = Node::make_table();
  root.set("session", documents.sessions);
  TableReader table("sessions", &root, "", faults);
  for (TableReader& row : table.tables("session")) out.told.push_back(read_told(row));
  if (!faults.empty()) return faults;
  if (documents.standing) {
    auto standing = read_block_answer(*documents.standing);
    if (!standing) return standing.faults();
    out.standing = std::move(standing).value();
  }
  return out;
}

}  // namespace lanework::check
