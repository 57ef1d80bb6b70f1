#include "app/serve/sign_in/begin_session.h"

#include "app/serve/doorman.h"
#include "app/serve/session_limits.h"
#include "app/serve/sign_in/account_words.h"
#include "app/serve/sign_in/secret.h"
#include "app/serve/sign_in/throttle.h"
#include "app/serve/sign_in/time_code.h"

namespace lanework::serve {

Response begin_session(Call& call, const store::Account& account, bool second_shown) {
  const std::string old = secret_in_cookie(call.house, call.request);
  if (!old.empty()) {
    const auto ended = call.room.gate->end_session(store::digest_of(old));
    if (!ended) return store_answer(ended.faults());
  }
  const std::string secret = new_secret();
  const std::int64_t now = call.now.seconds;
  const store::Session session{store::digest_of(secret), account.id, now, now, second_shown ? now : 0, second_shown};
  const auto begun = call.room.gate->add_session(session);
  if (!begun) return store_answer(begun.faults());
  const bool wanted = limits_of(account.role).second_factor || !account.second_secret.empty();
  Node body = Node::make_table();
  body.set("account", Node::make_text(account.id));
  body.set("role", Node::make_text(role_word(account.role)));
  body.set("next", Node::make_text(!wanted || second_shown         ? "in"
                                   : account.second_secret.empty() ? "set-up-second-factor"
                                                                   : "show-second-factor"));
  Response out = json_answer(200, body);
  return out.with("Set-Cookie", session_cookie(call.house, secret));
}

std::optional<Response> second_refused(Call& call, const store::Account& account, const std::string& code) {
  const std::string key = "second/" + account.id;
  if (auto wait = must_wait(call, key, kBySecondFactor)) return wait;
  const auto wrong = [&] {
    call.failed(key);
    return error_answer(401, "second-factor-wrong", "That code is not right, or was used before.");
  };
  bool right = false;
  constexpr std::size_t kDigits = 6;
  if (code.size() == kDigits) {
    const auto step = step_of_code(account.second_secret, code, call.now.seconds);
    if (!step) return wrong();
    const auto used = call.room.gate->use_second(account.id, *step);
    if (!used) return store_answer(used.faults());
    right = used.value();
  } else {
    const auto used = call.room.gate->use_recovery(account.id, store::digest_of(code), call.now.seconds);
    if (!used) return store_answer(used.faults());
    right = used.value();
  }
  if (!right) return wrong();
  const auto forgotten = call.room.gate->forget_failures(key);
  if (!forgotten) return store_answer(forgotten.faults());
  return {};
}

}  // namespace lanework::serve
