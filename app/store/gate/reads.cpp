#include <limits>

#include "app/store/books.h"
#include "app/store/gate/sql_gate.h"
#include "app/store/seals.h"

namespace lanework::store {
namespace {

const std::string kNotes =
    "SELECT number, noted, account, device, route, squad, player, people, link FROM read_note WHERE club = $1";
constexpr std::int64_t kAtOnce = 5000;

Attempts attempts_in(const std::vector<std::vector<Value>>& rows) {
  return rows.empty() ? Attempts{} : Attempts{whole_in(rows.front()[0]), whole_in(rows.front()[1])};
}

// A note as it lies there, without its link.
std::string text_of(const std::vector<Value>& row) {
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < 8; ++i) {
    const bool whole = std::holds_alternative<std::int64_t>(row[i]);
    parts.push_back(whole ? std::to_string(whole_in(row[i])) : text_in(row[i]));
  }
  return chained(parts);
}

}  // namespace

Result<Attempts> SqlGate::attempts(const std::string& name) {
  Call call(*statements_);
  return call.end(
      attempts_in(call.rows("SELECT failures, latest FROM attempt WHERE club = $1 AND name = $2", {club_, name})));
}

Result<Attempts> SqlGate::note_failure(const std::string& name, Moment when) {
  Call call(*statements_);
  return call.end(attempts_in(
      call.rows("INSERT INTO attempt (club, name, failures, latest) VALUES ($1, $2, 1, $3) "
                "ON CONFLICT (club, name) DO UPDATE SET failures = attempt.failures + 1, latest = excluded.latest "
                "RETURNING failures, latest",
                {club_, name, when})));
}

Result<bool> SqlGate::forget_failures(const std::string& name) {
  Call call(*statements_);
  return call.end(call.changes("DELETE FROM attempt WHERE club = $1 AND name = $2", {club_, name}));
}

// The head's row keeps others out until the call ends, so that every number is given once.
Result<bool> SqlGate::note_read(const ReadNote& note) {
  Call call(*statements_, Call::Of::kMany);
  const bool known = !call.rows("SELECT id FROM account WHERE club = $1 AND id = $2", {club_, note.account}).empty() &&
                     (note.device.empty() ||
                      !call.rows("SELECT id FROM device WHERE club = $1 AND id = $2", {club_, note.device}).empty());
  if (!known) return call.end(false);
  const auto head = call.rows(
      "INSERT INTO read_head (club, last_number, last_link) VALUES ($1, 1, $2) "
      "ON CONFLICT (club) DO UPDATE SET last_number = read_head.last_number + 1 RETURNING last_number, last_link",
      {club_, Bytes{link_text(Link{})}});
  if (head.empty()) return call.end(false);
  std::vector<Value> row = {whole_in(head.front()[0]),
                            note.when,
                            note.account,
                            text_or_null(note.device),
                            note.route,
                            text_or_null(note.squad),
                            bytes_or_null(note.player.empty() ? std::string() : tag_text(key_, note.player)),
                            note.people};
  const Bytes link{link_text(next_link(link_of(text_in(head.front()[1])), text_of(row)))};
  row.insert(row.begin(), club_);
  row.emplace_back(link);
  call.changed(
      "INSERT INTO read_note (club, number, noted, account, device, route, squad, player, people, link) "
      "VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10)",
      row);
  call.changed("UPDATE read_head SET last_link = $2 WHERE club = $1", {club_, link});
  return call.end(true);
}

Result<std::vector<ReadNote>> SqlGate::reads(const std::string& player, std::size_t most) {
  static const std::string kAll = kNotes + " ORDER BY number DESC LIMIT $2";
  static const std::string kOf = kNotes + " AND player = $3 ORDER BY number DESC LIMIT $2";
  constexpr auto kMost = static_cast<std::size_t>(std::numeric_limits<std::int64_t>::max());
  std::vector<Value> values = {club_, static_cast<std::int64_t>(std::min(most, kMost))};
  if (!player.empty()) values.emplace_back(Bytes{tag_text(key_, player)});
  Call call(*statements_);
  std::vector<ReadNote> out;
  for (const auto& row : call.rows(player.empty() ? kAll : kOf, values)) {
    out.push_back({whole_in(row[0]), whole_in(row[1]), text_in(row[2]), text_in(row[3]), text_in(row[4]),
                   text_in(row[5]), player, whole_in(row[7]), hexadecimal(text_in(row[6]))});
  }
  return call.end(std::move(out));
}

namespace {

// Where the book begins: after what went from its front.
struct ReadsBegin {
  std::int64_t last_number = 0;
  Link last_link{};
  bool sealed = true;
};

ReadsBegin begin_of_reads(Call& call, const std::string& club, const Key& key) {
  const auto rows = call.rows("SELECT last_number, last_link, made, seal FROM read_past WHERE club = $1", {club});
  if (rows.empty()) return {};
  ReadsBegin out{whole_in(rows[0][0]), link_of(text_in(rows[0][1])), false};
  out.sealed = seal_of_reads(key, out.last_number, out.last_link, text_in(rows[0][2])) == text_in(rows[0][3]);
  return out;
}

ReadAudit audit_from(Call& call, const std::string& club, const ReadsBegin& begin) {
  static const std::string kFrom = kNotes + " AND number > $2 ORDER BY number LIMIT $3";
  if (!begin.sealed) return {0, 1};
  // First the head: what is noted meanwhile comes after it.
  const auto head = call.rows("SELECT last_number, last_link FROM read_head WHERE club = $1", {club});
  const std::int64_t last = head.empty() ? 0 : whole_in(head.front()[0]);
  ReadAudit out;
  Link link = begin.last_link;
  std::int64_t number = begin.last_number;
  while (!out.broken_at) {
    const auto rows = call.rows(kFrom, {club, number, kAtOnce});
    if (rows.empty()) break;
    for (const auto& row : rows) {
      const Link next = next_link(link, text_of(row));
      const bool goes_on = whole_in(row[0]) == number + 1 && link_text(next) == text_in(row[8]);
      if (!goes_on) out.broken_at = number + 1;
      if (!goes_on) break;
      link = next;
      ++number;
      const bool at_head = number == last;
      if (at_head && link_text(link) != text_in(head.front()[1])) out.broken_at = last;
    }
  }
  if (!out.broken_at && number < last) out.broken_at = number + 1;
  out.notes = number - begin.last_number;
  return out;
}

}  // namespace

Result<ReadAudit> SqlGate::audit_reads() {
  Call call(*statements_);
  while (true) {
    const ReadsBegin begin = begin_of_reads(call, club_, key_);
    const ReadAudit out = audit_from(call, club_, begin);
    // More may have gone from the front meanwhile.
    const bool same =
        !out.broken_at || call.failed() || begin_of_reads(call, club_, key_).last_number == begin.last_number;
    if (same) return call.end(out);
  }
}

std::string SqlGate::tag_of(const std::string& player) const { return hexadecimal(tag_text(key_, player)); }

Result<std::int64_t> SqlGate::forget_before(Moment sessions_made, Moment sessions_seen, Moment others) {
  Call call(*statements_, Call::Of::kMany);
  std::int64_t out = 0;
  out += call.changed("DELETE FROM web_session WHERE club = $1 AND made < $2", {club_, sessions_made});
  out += call.changed("DELETE FROM web_session WHERE club = $1 AND seen < $2", {club_, sessions_seen});
  out += call.changed("DELETE FROM pairing WHERE club = $1 AND until < $2", {club_, others});
  out += call.changed("DELETE FROM attempt WHERE club = $1 AND latest < $2", {club_, others});
  return call.end(out);
}

}  // namespace lanework::store
