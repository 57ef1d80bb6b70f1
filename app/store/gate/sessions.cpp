#include "app/store/gate/sql_gate.h"

namespace lanework::store {
namespace {

// Of an account that ended there is none, also where one was being made at that moment.
const std::string kSessions =
    "SELECT s.secret, s.account, s.made, s.seen, s.stepped_up, s.second_shown FROM web_session s "
    "JOIN account a ON a.club = s.club AND a.id = s.account AND a.ended = 0 WHERE s.club = $1";

Session session_in(const std::vector<Value>& row) {
  return {text_in(row[0]),  text_in(row[1]),  whole_in(row[2]),
          whole_in(row[3]), whole_in(row[4]), whole_in(row[5]) != 0};
}

}  // namespace

Result<bool> SqlGate::add_session(const Session& session) {
  Call call(*statements_, Call::Of::kMany);
  const bool added = hold_account(call, session.account) &&
                     call.changes(
                         "INSERT INTO web_session (club, secret, account, made, seen, stepped_up, second_shown) "
                         "VALUES ($1, $2, $3, $4, $5, $6, $7) ON CONFLICT (club, secret) DO NOTHING",
                         {club_, Bytes{session.secret}, session.account, session.made, session.seen, session.stepped_up,
                          session.second_shown ? 1 : 0});
  return call.end(added);
}

Result<std::optional<Session>> SqlGate::session(const Digest& secret) {
  static const std::string kText = kSessions + " AND s.secret = $2";
  Call call(*statements_);
  const auto rows = call.rows(kText, {club_, Bytes{secret}});
  return call.end(rows.empty() ? std::nullopt : std::optional<Session>(session_in(rows.front())));
}

Result<bool> SqlGate::touch_session(const Digest& secret, Moment seen) {
  Call call(*statements_);
  return call.end(
      call.changes("UPDATE web_session SET seen = CASE WHEN seen < $3 THEN $3 ELSE seen END "
                   "WHERE club = $1 AND secret = $2",
                   {club_, Bytes{secret}, seen}));
}

Result<bool> SqlGate::step_up(const Digest& secret, Moment when) {
  Call call(*statements_);
  return call.end(
      call.changes("UPDATE web_session SET stepped_up = $3, second_shown = 1 WHERE club = $1 AND secret = $2",
                   {club_, Bytes{secret}, when}));
}

Result<std::vector<Session>> SqlGate::sessions_of(const std::string& account) {
  static const std::string kText = kSessions + " AND s.account = $2 ORDER BY s.made, s.secret";
  Call call(*statements_);
  std::vector<Session> out;
  for (const auto& row : call.rows(kText, {club_, account})) out.push_back(session_in(row));
  return call.end(std::move(out));
}

Result<bool> SqlGate::end_session(const Digest& secret) {
  Call call(*statements_);
  return call.end(call.changes("DELETE FROM web_session WHERE club = $1 AND secret = $2", {club_, Bytes{secret}}));
}

Result<std::int64_t> SqlGate::end_sessions_of(const std::string& account, const Digest& keep) {
  Call call(*statements_);
  return call.end(call.changed("DELETE FROM web_session WHERE club = $1 AND account = $2 AND secret <> $3",
                               {club_, account, Bytes{keep}}));
}

}  // namespace lanework::store
