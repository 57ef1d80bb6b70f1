// The second factor: set up, and shown.
#include "app/serve/doorman.h"
#include "app/serve/routes/routes.h"
#include "app/serve/session_limits.h"
#include "app/serve/sign_in/begin_session.h"
#include "app/serve/sign_in/secret.h"
#include "app/serve/sign_in/time_code.h"

namespace lanework::serve {
namespace {

constexpr int kRecoveryCodes = 10;

// One that is there is replaced only by whoever has just shown it.
std::optional<Response> replacing(const Call& call) {
  if (call.account->second_secret.empty()) return {};
  const bool shown = call.session->second_shown && call.now.seconds - call.session->stepped_up <= kStepUpSeconds;
  if (shown) return {};
  return error_answer(403, "step-up-needed", "Show the second factor that you have first.");
}

// The secret goes to whoever sets it up, and is kept only once a code of it was shown.
Response begin(Call& call) {
  Faults faults;
  call.reader(faults).finish();
  if (!faults.empty()) return fault_answer(faults);
  if (auto refused = replacing(call)) return std::move(*refused);
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  const std::string secret = new_time_secret();
  Node body = Node::make_table();
  body.set("secret", Node::make_text(base32(secret)));
  body.set("link",
           Node::make_text(authenticator_link("Lanework " + club.value()->lists.club, call.account->sign_in, secret)));
  return json_answer(200, body);
}

Response set_up(Call& call) {
  Faults faults;
  TableReader reader = call.reader(faults);
  const auto secret = from_base32(reader.text("secret"));
  const std::string code = reader.text("code");
  if (!secret || secret->size() != kTimeSecretBytes) {
    reader.fault(FaultCode::kSyntax, "secret", "something else", "the secret as it was given, 32 characters of base32");
  }
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  if (auto refused = replacing(call)) return std::move(*refused);
  const auto step = step_of_code(*secret, code, call.now.seconds);
  if (!step)
    return error_answer(422, "second-factor-wrong", "That code is not of this secret. Is the phone's clock right?");
  const auto set = call.room.gate->set_second(call.account->id, *secret);
  if (!set) return store_answer(set.faults());
  const auto used = call.room.gate->use_second(call.account->id, *step);
  if (!used) return store_answer(used.faults());
  Node codes = Node::make_array();
  std::vector<store::Digest> digests;
  for (int i = 0; i < kRecoveryCodes; ++i) {
    const std::string one = new_recovery_code();
    digests.push_back(store::digest_of(one));
    codes.items.push_back(Node::make_text(one));
  }
  const auto kept = call.room.gate->set_recovery(call.account->id, digests);
  if (!kept) return store_answer(kept.faults());
  const auto ended = call.room.gate->end_sessions_of(call.account->id, call.session->secret);
  if (!ended) return store_answer(ended.faults());
  Response out = begin_session(call, *call.account, true);
  if (out.status != 200) return out;
  Node body = Node::make_table();
  body.set("recovery_codes", std::move(codes));
  Response answer = json_answer(200, body);
  return answer.with("Set-Cookie", std::string(out.header("Set-Cookie")));
}

// With a secret of its own from then on, since who it is for is known better now.
Response step_up(Call& call) {
  Faults faults;
  TableReader reader = call.reader(faults);
  const std::string code = reader.text("code");
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  if (call.account->second_secret.empty())
    return error_answer(409, "no-second-factor", "Set up a second factor first.");
  if (auto refused = second_refused(call, *call.account, code)) return std::move(*refused);
  return begin_session(call, *call.account, true);
}

}  // namespace

const std::vector<NamedWork>& second_factor_routes() {
  static const std::vector<NamedWork> kWorks = {
      {"second-factor-begin", begin}, {"second-factor", set_up}, {"step-up", step_up}};
  return kWorks;
}

}  // namespace lanework::serve
