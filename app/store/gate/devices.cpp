#include <algorithm>
#include <array>

#include "app/store/gate/sql_gate.h"

namespace lanework::store {
namespace {

// In the order of PairingState.
constexpr std::array<const char*, 4> kStates = {"open", "claimed", "confirmed", "suspended"};

const std::string kPairings =
    "SELECT id, account, secret, device, label, code, made, until, state FROM pairing WHERE club = $1";
const std::string kDevices =
    "SELECT id, account, secret, label, paired, seen, sequence, revoked FROM device WHERE club = $1";

Pairing pairing_in(const std::vector<Value>& row) {
  const auto state = std::find(kStates.begin(), kStates.end(), text_in(row[8]));
  return {text_in(row[0]),  text_in(row[1]),  text_in(row[2]),
          text_in(row[3]),  text_in(row[4]),  text_in(row[5]),
          whole_in(row[6]), whole_in(row[7]), static_cast<PairingState>(state - kStates.begin())};
}

Device device_in(const std::vector<Value>& row) {
  return {text_in(row[0]),  text_in(row[1]),  text_in(row[2]),  text_in(row[3]),
          whole_in(row[4]), whole_in(row[5]), whole_in(row[6]), whole_in(row[7])};
}

}  // namespace

Result<Pairing> SqlGate::open_pairing(const Pairing& pairing) {
  Call call(*statements_, Call::Of::kMany);
  Pairing out{made_id("p-"), pairing.account, pairing.secret,     {}, {}, {},
              pairing.made,  pairing.until,   PairingState::kOpen};
  if (hold_account(call, out.account)) {
    call.changed(
        "INSERT INTO pairing (club, id, account, secret, label, code, made, until, state) "
        "VALUES ($1, $2, $3, $4, '', '', $5, $6, 'open')",
        {club_, out.id, out.account, Bytes{out.secret}, out.made, out.until});
  } else {
    call.fail({FaultCode::kContradiction,
               {statements_->name(), 0, 0, "account"},
               out.account,
               "an account that is there and has not ended",
               {}});
  }
  return call.end(std::move(out));
}

// The first statement that changes the row wins; whoever waited for it finds the row as that one left it.
Result<Claim> SqlGate::claim_pairing(const Digest& link, const Digest& device, const std::string& label,
                                     const std::string& code, Moment when) {
  Call call(*statements_, Call::Of::kMany);
  const bool first = call.changes(
      "UPDATE pairing SET state = 'claimed', device = $3, label = $4, code = $5 "
      "WHERE club = $1 AND secret = $2 AND state = 'open' AND until >= $6 "
      "AND NOT EXISTS (SELECT 1 FROM device d WHERE d.club = $1 AND d.secret = $3) "
      "AND NOT EXISTS (SELECT 1 FROM pairing p WHERE p.club = $1 AND p.device = $3)",
      {club_, Bytes{link}, Bytes{device}, label, code, when});
  if (first) return call.end(Claim::kClaimed);
  const bool later = call.changes(
      "UPDATE pairing SET state = CASE state WHEN 'confirmed' THEN 'confirmed' ELSE 'suspended' END "
      "WHERE club = $1 AND secret = $2 AND state <> 'open' AND until >= $3",
      {club_, Bytes{link}, when});
  return call.end(later ? Claim::kTwice : Claim::kUnknown);
}

Result<std::vector<Pairing>> SqlGate::pairings_of(const std::string& account) {
  static const std::string kText = kPairings + " AND account = $2 ORDER BY made DESC, id";
  Call call(*statements_);
  std::vector<Pairing> out;
  for (const auto& row : call.rows(kText, {club_, account})) out.push_back(pairing_in(row));
  return call.end(std::move(out));
}

Result<std::optional<Pairing>> SqlGate::pairing_by_device(const Digest& device) {
  static const std::string kText = kPairings + " AND device = $2";
  Call call(*statements_);
  const auto rows = call.rows(kText, {club_, Bytes{device}});
  return call.end(rows.empty() ? std::nullopt : std::optional<Pairing>(pairing_in(rows.front())));
}

Result<std::optional<Device>> SqlGate::confirm_pairing(const std::string& pairing, const std::string& code,
                                                       Moment when) {
  Call call(*statements_, Call::Of::kMany);
  std::optional<Device> out;
  const auto whose = call.rows("SELECT account FROM pairing WHERE club = $1 AND id = $2", {club_, pairing});
  if (whose.empty() || !hold_account(call, text_in(whose.front()[0]))) return call.end(std::move(out));
  const auto rows = call.rows(
      "UPDATE pairing SET state = 'confirmed' "
      "WHERE club = $1 AND id = $2 AND code = $3 AND state = 'claimed' AND until >= $4 "
      "RETURNING account, device, label",
      {club_, pairing, code, when});
  if (rows.empty()) return call.end(std::move(out));
  const auto& row = rows.front();
  out = Device{made_id("d-"), text_in(row[0]), text_in(row[1]), text_in(row[2]), when, when, 0, 0};
  call.changed(
      "INSERT INTO device (club, id, account, secret, label, paired, seen) VALUES ($1, $2, $3, $4, $5, $6, $6)",
      {club_, out->id, out->account, Bytes{out->secret}, out->label, when});
  return call.end(std::move(out));
}

Result<std::optional<Device>> SqlGate::device_by_secret(const Digest& secret) {
  static const std::string kText = kDevices + " AND secret = $2";
  Call call(*statements_);
  const auto rows = call.rows(kText, {club_, Bytes{secret}});
  return call.end(rows.empty() ? std::nullopt : std::optional<Device>(device_in(rows.front())));
}

Result<std::vector<Device>> SqlGate::devices() {
  static const std::string kText = kDevices + " ORDER BY paired, id";
  Call call(*statements_);
  std::vector<Device> out;
  for (const auto& row : call.rows(kText, {club_})) out.push_back(device_in(row));
  return call.end(std::move(out));
}

Result<bool> SqlGate::device_seen(const std::string& device, Moment when, std::int64_t sequence) {
  Call call(*statements_);
  return call.end(
      call.changes("UPDATE device SET seen = CASE WHEN seen < $3 THEN $3 ELSE seen END, "
                   "sequence = CASE WHEN sequence < $4 THEN $4 ELSE sequence END "
                   "WHERE club = $1 AND id = $2 AND revoked = 0",
                   {club_, device, when, sequence}));
}

Result<bool> SqlGate::revoke_device(const std::string& device, Moment when) {
  Call call(*statements_);
  return call.end(call.changes("UPDATE device SET revoked = $3 WHERE club = $1 AND id = $2 AND revoked = 0",
                               {club_, device, std::max<Moment>(when, 1)}));
}

}  // namespace lanework::store
