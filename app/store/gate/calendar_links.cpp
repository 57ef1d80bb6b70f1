#include <algorithm>

#include "app/store/gate/sql_gate.h"

namespace lanework::store {
namespace {

const std::string kLinks =
    "SELECT secret, squad, made, made_by, until, asked, ended, ended_by FROM calendar_link WHERE club = $1";

CalendarLink link_in(const std::vector<Value>& row) {
  return {text_in(row[0]),  text_in(row[1]),  whole_in(row[2]), text_in(row[3]),
          whole_in(row[4]), whole_in(row[5]), whole_in(row[6]), text_in(row[7])};
}

constexpr const char* kEnd =
    "UPDATE calendar_link SET ended = $3, ended_by = $4 WHERE club = $1 AND squad = $2 AND ended = 0";

}  // namespace

Result<bool> SqlGate::add_calendar_link(const CalendarLink& link) {
  // Two that are made at once find no open one, and the later finds the earlier's when it is put in: then again.
  constexpr int kTries = 20;
  for (int i = 0; i < kTries; ++i) {
    Call call(*statements_, Call::Of::kMany);
    if (!hold_account(call, link.made_by)) return call.end(false);
    call.changed(kEnd, {club_, link.squad, std::max<Moment>(link.made, 1), link.made_by});
    const bool added = call.changes(
        "INSERT INTO calendar_link (club, secret, squad, made, made_by, until) VALUES ($1, $2, $3, $4, $5, $6) "
        "ON CONFLICT DO NOTHING",
        {club_, Bytes{link.secret}, link.squad, link.made, link.made_by, link.until});
    if (added || call.failed()) return call.end(added);
  }
  return Fault{
      FaultCode::kCannotWrite, {statements_->name(), 0, 0, {}}, "links that are made at once", "try again", {}};
}

// By the digest of what was sent, whose bytes nobody can choose: how long the look-up takes tells nothing of the
// secret.
Result<std::optional<CalendarLink>> SqlGate::calendar_link(const Digest& secret) {
  static const std::string kText = kLinks + " AND secret = $2";
  Call call(*statements_);
  const auto rows = call.rows(kText, {club_, Bytes{secret}});
  return call.end(rows.empty() ? std::nullopt : std::optional<CalendarLink>(link_in(rows.front())));
}

Result<std::vector<CalendarLink>> SqlGate::calendar_links() {
  static const std::string kText = kLinks + " ORDER BY squad, made DESC, ended, secret";
  Call call(*statements_);
  std::vector<CalendarLink> out;
  for (const auto& row : call.rows(kText, {club_})) out.push_back(link_in(row));
  return call.end(std::move(out));
}

Result<bool> SqlGate::end_calendar_link(const std::string& squad, const std::string& by, Moment when) {
  Call call(*statements_, Call::Of::kMany);
  const bool ended = hold_account(call, by) && call.changes(kEnd, {club_, squad, std::max<Moment>(when, 1), by});
  return call.end(ended);
}

Result<bool> SqlGate::calendar_link_asked(const Digest& secret, Moment day) {
  Call call(*statements_);
  return call.end(
      call.changes("UPDATE calendar_link SET asked = CASE WHEN asked < $3 THEN $3 ELSE asked END "
                   "WHERE club = $1 AND secret = $2 AND ended = 0",
                   {club_, Bytes{secret}, day}));
}

}  // namespace lanework::store
