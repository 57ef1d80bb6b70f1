// Devices: paired by a link that works once, confirmed by the lead against a short code on both screens, revoked at
// once.
#include <algorithm>

#include "app/serve/doorman.h"
#include "app/serve/routes/routes.h"
#include "app/serve/session_limits.h"
#include "app/serve/sign_in/account_words.h"
#include "app/serve/sign_in/caller_network.h"
#include "app/serve/sign_in/secret.h"
#include "app/serve/sign_in/throttle.h"

namespace lanework::serve {
namespace {

constexpr std::size_t kMostLabelBytes = 60;

const char* state_word(store::PairingState state) {
  switch (state) {
    case store::PairingState::kOpen:
      return "open";
    case store::PairingState::kClaimed:
      return "claimed";
    case store::PairingState::kConfirmed:
      return "confirmed";
    case store::PairingState::kSuspended:
      return "suspended";
  }
  return "";
}

Node device_node(const store::Device& device) {
  Node out = Node::make_table();
  out.set("device", Node::make_text(device.id));
  out.set("account", Node::make_text(device.account));
  out.set("label", Node::make_text(device.label));
  out.set("paired", Node::make_text(now_at(device.paired).stamp));
  if (device.seen != 0) out.set("seen", Node::make_text(now_at(device.seen).stamp));
  out.set("sequence", Node::make_integer(device.sequence));
  out.set("revoked", Node::make_boolean(device.revoked != 0));
  return out;
}

Response open_pairing(Call& call) {
  Faults faults;
  TableReader reader = call.reader(faults);
  const std::string account = reader.text_or("account", call.account->id);
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  const auto whose = call.room.gate->account(account);
  if (!whose) return store_answer(whose.faults());
  if (!whose.value() || whose.value()->ended != 0)
    return error_answer(404, "not-found", "There is nothing here for you.");
  const std::string secret = new_secret();
  store::Pairing pairing;
  pairing.account = account;
  pairing.secret = store::digest_of(device_link_form(secret));
  pairing.made = call.now.seconds;
  pairing.until = call.now.seconds + kPairingSeconds;
  const auto opened = call.room.gate->open_pairing(pairing);
  if (!opened) return store_answer(opened.faults());
  Node body = Node::make_table();
  body.set("pairing", Node::make_text(opened.value().id));
  body.set("link", Node::make_text(secret));
  body.set("until", Node::make_text(now_at(pairing.until).stamp));
  return json_answer(201, body);
}

Response pairings(Call& call) {
  const auto accounts = call.room.gate->accounts();
  if (!accounts) return store_answer(accounts.faults());
  Node list = Node::make_array();
  for (const store::Account& account : accounts.value()) {
    const auto some = call.room.gate->pairings_of(account.id);
    if (!some) return store_answer(some.faults());
    for (const store::Pairing& one : some.value()) {
      Node row = Node::make_table();
      row.set("pairing", Node::make_text(one.id));
      row.set("account", Node::make_text(one.account));
      row.set("name", Node::make_text(account.name));
      row.set("state", Node::make_text(one.state == store::PairingState::kOpen && one.until <= call.now.seconds
                                           ? "too-late"
                                           : state_word(one.state)));
      if (!one.label.empty()) row.set("label", Node::make_text(one.label));
      row.set("until", Node::make_text(now_at(one.until).stamp));
      list.items.push_back(std::move(row));
    }
  }
  Node body = Node::make_table();
  body.set("pairings", std::move(list));
  return json_answer(200, body);
}

// By the device: it made a secret of its own, which it keeps, and gets the code that both screens show.
Response claim(Call& call) {
  Faults faults;
  TableReader reader = call.reader(faults);
  const std::string link = reader.text("link");
  const std::string label = reader.text("label");
  if (label.size() > kMostLabelBytes) {
    reader.fault(FaultCode::kOutOfRange, "label", std::to_string(label.size()) + " bytes", "at most 60 bytes");
  }
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  const std::string key = "link/" + caller_network(call.request.address);
  if (auto wait = must_wait(call, key, kByPairing)) return std::move(*wait);
  const std::string secret = new_secret();
  const std::string code = new_short_code();
  const auto claimed = call.room.gate->claim_pairing(store::digest_of(device_link_form(link)), store::digest_of(secret),
                                                     label, code, call.now.seconds);
  if (!claimed) return store_answer(claimed.faults());
  if (claimed.value() != store::Claim::kClaimed) {
    call.failed(key);
    call.why = claimed.value() == store::Claim::kTwice ? "link-claimed-twice" : "link-unknown";
    return error_answer(410, "link-used",
                        "That link was used before, is too old, or is none. Ask the lead for another.");
  }
  Node body = Node::make_table();
  body.set("secret", Node::make_text(secret));
  body.set("code", Node::make_text(code));
  return json_answer(201, body);
}

// By the device, again and again until somebody has compared the codes.
Response claimed(Call& call) {
  Faults faults;
  TableReader reader = call.reader(faults);
  const std::string secret = reader.text("secret");
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  const auto pairing = call.room.gate->pairing_by_device(store::digest_of(secret));
  if (!pairing) return store_answer(pairing.faults());
  if (!pairing.value()) return error_answer(404, "not-found", "There is nothing here for you.");
  Node body = Node::make_table();
  body.set("state", Node::make_text(state_word(pairing.value()->state)));
  if (pairing.value()->state == store::PairingState::kConfirmed) {
    const auto device = call.room.gate->device_by_secret(store::digest_of(secret));
    if (!device) return store_answer(device.faults());
    if (device.value()) body.set("device", Node::make_text(device.value()->id));
  }
  return json_answer(200, body);
}

Response confirm(Call& call) {
  Faults faults;
  TableReader reader = call.reader(faults);
  const std::string code = reader.text("code");
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  const std::string key = "confirm/" + call.values[0];
  if (auto wait = must_wait(call, key, kBySecondFactor)) return std::move(*wait);
  const auto device = call.room.gate->confirm_pairing(call.values[0], code, call.now.seconds);
  if (!device) return store_answer(device.faults());
  if (!device.value()) {
    call.failed(key);
    return error_answer(409, "not-confirmed", "The code is another, the link was used twice, or it is too late.");
  }
  return json_answer(201, device_node(*device.value()));
}

Response devices(Call& call) {
  const auto all = call.room.gate->devices();
  if (!all) return store_answer(all.faults());
  Node list = Node::make_array();
  for (const store::Device& device : all.value()) list.items.push_back(device_node(device));
  Node body = Node::make_table();
  body.set("devices", std::move(list));
  return json_answer(200, body);
}

Response revoke(Call& call) {
  const auto revoked = call.room.gate->revoke_device(call.values[0], call.now.seconds);
  if (!revoked) return store_answer(revoked.faults());
  if (!revoked.value()) return error_answer(404, "not-found", "There is nothing here for you.");
  return json_answer(200, Node::make_table());
}

}  // namespace

const std::vector<NamedWork>& device_routes() {
  static const std::vector<NamedWork> kWorks = {
      {"open-pairing", open_pairing}, {"pairings", pairings}, {"claim-pairing", claim}, {"claimed-pairing", claimed},
      {"confirm-pairing", confirm},   {"devices", devices},   {"revoke-device", revoke}};
  return kWorks;
}

}  // namespace lanework::serve
