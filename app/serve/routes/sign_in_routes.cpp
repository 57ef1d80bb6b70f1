// Coming in by name and password, and leaving.
#include "app/serve/doorman.h"
#include "app/serve/routes/routes.h"
#include "app/serve/session_limits.h"
#include "app/serve/sign_in/account_words.h"
#include "app/serve/sign_in/begin_session.h"
#include "app/serve/sign_in/caller_network.h"
#include "app/serve/sign_in/password_rule.h"
#include "app/serve/sign_in/secret.h"
#include "app/serve/sign_in/throttle.h"
#include "app/serve/sign_in/time_code.h"

namespace lanework::serve {
namespace {

std::size_t fewest_characters(ledger::Role role) {
  return limits_of(role).second_factor ? kFewestForHealth : kFewestCharacters;
}

// The same whether the name, the password or the account's end is at fault.
Response not_this() { return error_answer(401, "sign-in-failed", "That name and password do not belong together."); }

// Under which failures are counted. What was typed for a name may be a password in the wrong field, and these lie in
// the clear: so twenty bits of a digest, enough to tell a club's accounts apart and too few to find out what was typed.
std::string counted_as(const std::string& name) {
  constexpr std::size_t kDigits = 5;
  return "account/" + store::hexadecimal(store::digest_of(name)).substr(0, kDigits);
}

Response busy() {
  Response out = error_answer(503, "busy", "Many sign in at this moment. Try again.");
  return out.with("Retry-After", "2");
}

Response sign_in(Call& call) {
  Faults faults;
  TableReader reader = call.reader(faults);
  const std::string name = sign_in_form(reader.text("sign_in"));
  const std::string password = reader.text("password");
  const std::string code = reader.text_or("code", "");
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  const std::string network = caller_network(call.request.address);
  const std::string by_address = "address/" + network;
  const std::string by_pair = counted_as(name) + "/" + network;
  const std::string by_account = counted_as(name);
  for (const auto& [key, rule] : {std::pair(by_address, kByAddress), std::pair(by_pair, kByAccountFromAnAddress),
                                  std::pair(by_account, kByAccount)}) {
    if (auto wait = must_wait(call, key, rule)) return std::move(*wait);
  }
  const auto found = call.room.gate->account_by_sign_in(name);
  if (!found) return store_answer(found.faults());
  const bool there = found.value() && found.value()->ended == 0;
  const auto fits = call.house.hashes->fits(there ? found.value()->password : std::string(), password);
  if (!fits) return busy();
  if (!*fits) {
    for (const std::string& key : {by_address, by_pair, by_account}) call.failed(key);
    return not_this();
  }
  const store::Account& account = *found.value();
  bool second_shown = false;
  if (!code.empty() && !account.second_secret.empty()) {
    if (auto refused = second_refused(call, account, code)) return std::move(*refused);
    second_shown = true;
  }
  for (const std::string& key : {by_pair, by_account}) {
    const auto forgotten = call.room.gate->forget_failures(key);
    if (!forgotten) return store_answer(forgotten.faults());
  }
  if (PasswordHashes::is_old(account.password)) {
    const auto set = call.room.gate->set_password(account.id, call.house.hashes->make(password));
    if (!set) return store_answer(set.faults());
  }
  return begin_session(call, account, second_shown);
}

// A link that somebody got from the lead, once: with it they choose their password.
Response activate(Call& call) {
  Faults faults;
  TableReader reader = call.reader(faults);
  const std::string link = reader.text("link");
  const std::string password = reader.text("password");
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  const std::string by_address = "link/" + caller_network(call.request.address);
  if (auto wait = must_wait(call, by_address, kByPairing)) return std::move(*wait);
  // Before the link is used up: so that a password that is not taken does not cost it. The longer of the two, since
  // whose link it is shows only then.
  if (auto why = why_not_password(password, kFewestCharacters, call.house.known_passwords)) {
    return error_answer(422, "password-not-taken", "That password is " + *why + ".");
  }
  const store::Digest mark = store::digest_of(new_secret());
  const auto claim =
      call.room.gate->claim_pairing(store::digest_of(account_link_form(link)), mark, "password", "", call.now.seconds);
  if (!claim) return store_answer(claim.faults());
  if (claim.value() != store::Claim::kClaimed) {
    call.failed(by_address);
    return error_answer(410, "link-used",
                        "That link was used before, is too old, or is none. Ask the lead for another.");
  }
  const auto pairing = call.room.gate->pairing_by_device(mark);
  if (!pairing) return store_answer(pairing.faults());
  const auto account = call.room.gate->account(pairing.value() ? pairing.value()->account : std::string());
  if (!account) return store_answer(account.faults());
  if (!account.value() || account.value()->ended != 0)
    return error_answer(410, "link-used", "That link is for nobody any more.");
  if (auto why = why_not_password(password, fewest_characters(account.value()->role), call.house.known_passwords)) {
    return error_answer(422, "password-not-taken", "That password is " + *why + ". Ask the lead for another link.");
  }
  const auto set = call.room.gate->set_password(account.value()->id, call.house.hashes->make(password));
  if (!set) return store_answer(set.faults());
  const auto ended = call.room.gate->end_sessions_of(account.value()->id, "");
  if (!ended) return store_answer(ended.faults());
  Node body = Node::make_table();
  body.set("sign_in", Node::make_text(account.value()->sign_in));
  return json_answer(200, body);
}

Response me(Call& call) {
  Node body = account_node(*call.account);
  body.set("second_factor_needed",
           Node::make_boolean(limits_of(call.account->role).second_factor || !call.account->second_secret.empty()));
  body.set("second_factor_shown", Node::make_boolean(call.session->second_shown));
  const SessionLimits& limits = limits_of(call.account->role);
  body.set("ends_at", Node::make_text(now_at(call.session->made + limits.whole_seconds).stamp));
  body.set("ends_without_a_request_after_seconds", Node::make_integer(limits.idle_seconds));
  return json_answer(200, body);
}

Response sign_out(Call& call) {
  const auto ended = call.room.gate->end_session(call.session->secret);
  if (!ended) return store_answer(ended.faults());
  Response out = json_answer(200, Node::make_table());
  return out.with("Set-Cookie", cleared_cookie(call.house)).with("Clear-Site-Data", "\"cache\", \"storage\"");
}

Response password(Call& call) {
  Faults faults;
  TableReader reader = call.reader(faults);
  const std::string old = reader.text("old");
  const std::string fresh = reader.text("new");
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  const std::string key = counted_as(call.account->sign_in) + "/" + caller_network(call.request.address);
  if (auto wait = must_wait(call, key, kByAccountFromAnAddress)) return std::move(*wait);
  const auto fits = call.house.hashes->fits(call.account->password, old);
  if (!fits) return busy();
  if (!*fits) {
    call.failed(key);
    return error_answer(403, "old-password-wrong", "That is not the password that you have now.");
  }
  if (auto why = why_not_password(fresh, fewest_characters(call.account->role), call.house.known_passwords)) {
    return error_answer(422, "password-not-taken", "That password is " + *why + ".");
  }
  const auto set = call.room.gate->set_password(call.account->id, call.house.hashes->make(fresh));
  if (!set) return store_answer(set.faults());
  const auto ended = call.room.gate->end_sessions_of(call.account->id, call.session->secret);
  if (!ended) return store_answer(ended.faults());
  Node body = Node::make_table();
  body.set("ended", Node::make_integer(ended.value()));
  return json_answer(200, body);
}

Response sessions(Call& call) {
  const auto all = call.room.gate->sessions_of(call.account->id);
  if (!all) return store_answer(all.faults());
  Node list = Node::make_array();
  for (const store::Session& one : all.value()) {
    Node row = Node::make_table();
    row.set("began", Node::make_text(now_at(one.made).stamp));
    row.set("seen", Node::make_text(now_at(one.seen).stamp));
    row.set("this_one", Node::make_boolean(one.secret == call.session->secret));
    list.items.push_back(std::move(row));
  }
  Node body = Node::make_table();
  body.set("sessions", std::move(list));
  return json_answer(200, body);
}

Response end_others(Call& call) {
  const auto ended = call.room.gate->end_sessions_of(call.account->id, call.session->secret);
  if (!ended) return store_answer(ended.faults());
  Node body = Node::make_table();
  body.set("ended", Node::make_integer(ended.value()));
  return json_answer(200, body);
}

}  // namespace

const std::vector<NamedWork>& sign_in_routes() {
  static const std::vector<NamedWork> kWorks = {{"sign-in", sign_in},
                                                {"activate", activate},
                                                {"me", me},
                                                {"sign-out", sign_out},
                                                {"password", password},
                                                {"sessions", sessions},
                                                {"end-other-sessions", end_others}};
  return kWorks;
}

}  // namespace lanework::serve
