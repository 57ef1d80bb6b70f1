#include "app/serve/doorman.h"

#include <algorithm>

#include "app/serve/session_limits.h"
#include "app/serve/sign_in/throttle.h"

namespace lanework::serve {
namespace {

using access::By;
using access::Reach;

Response who_are_you() { return error_answer(401, "sign-in-needed", "Sign in first."); }

std::string cookie_name(const House& house) { return house.secure ? kCookie : kPlainCookie; }

std::optional<Response> by_browser(Call& call) {
  const std::string secret = secret_in_cookie(call.house, call.request);
  if (secret.empty()) return who_are_you();
  const store::Digest digest = store::digest_of(secret);
  const auto session = call.room.gate->session(digest);
  if (!session) return store_answer(session.faults());
  if (!session.value()) return who_are_you();
  const auto account = call.room.gate->account(session.value()->account);
  if (!account) return store_answer(account.faults());
  const std::int64_t now = call.now.seconds;
  if (!account.value() || account.value()->ended != 0) return who_are_you();
  const SessionLimits& limits = limits_of(account.value()->role);
  if (now - session.value()->seen >= limits.idle_seconds || now - session.value()->made >= limits.whole_seconds) {
    const auto ended = call.room.gate->end_session(digest);
    if (!ended) return store_answer(ended.faults());
    return who_are_you();
  }
  // Written down once in a while, so that reading does not wait for the disk each time.
  if (now - session.value()->seen >= kMinute) {
    const auto touched = call.room.gate->touch_session(digest, now);
    if (!touched) return store_answer(touched.faults());
  }
  call.session = session.value();
  call.account = account.value();
  return {};
}

std::optional<Response> by_device(Call& call) {
  constexpr std::string_view kScheme = "Bearer ";
  const std::string_view header = call.request.header("authorization");
  if (header.substr(0, kScheme.size()) != kScheme) return who_are_you();
  const store::Digest secret = store::digest_of(std::string(header.substr(kScheme.size())));
  const auto versions = call.room.directory->versions();
  if (!versions) return store_answer(versions.faults());
  call.versions = versions.value();
  auto known = call.house.known_devices.find(secret, versions.value().people);
  if (!known) {
    auto device = call.room.gate->device_by_secret(secret);
    if (!device) return store_answer(device.faults());
    if (!device.value()) return who_are_you();
    auto account = call.room.gate->account(device.value()->account);
    if (!account) return store_answer(account.faults());
    if (!account.value()) return who_are_you();
    known = KnownDevice{std::move(*device.value()), std::move(*account.value())};
    call.house.known_devices.keep(*known, versions.value().people);
  }
  call.device = std::move(known->device);
  call.account = std::move(known->account);
  const bool revoked = call.device->revoked != 0 || call.account->ended != 0;
  // What a revoked device still has is kept aside: its last words are let in, and nothing goes out.
  if (revoked && call.route.name != "sync") {
    return error_answer(401, "revoked", "This device is no longer part of the club.");
  }
  return {};
}

// Nothing tells a squad that is not theirs from one that is not there.
Response no_such_thing() { return error_answer(404, "not-found", "There is nothing here for you."); }

std::optional<Response> by_role(Call& call) {
  if (call.route.reach == Reach::kNothing) {
    if (access::may(call.route, call.viewer.role, access::Relation::kOwn)) return {};
    return error_answer(403, "not-your-role", "Your role does not do this.");
  }
  const auto place = std::find(call.route.segments.begin(), call.route.segments.end(), "{squad}");
  const auto nth =
      std::count_if(call.route.segments.begin(), place, [](const std::string& one) { return one.front() == '{'; });
  const std::string& squad = call.values[static_cast<std::size_t>(nth)];
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  const auto& squads = club.value()->lists.squads;
  const bool there = std::any_of(squads.begin(), squads.end(), [&](const auto& one) { return one.id == squad; });
  const bool may =
      access::may(call.route, call.viewer.role, access::relation_of(call.viewer, squad, call.viewer.today));
  if (!there || !may) return no_such_thing();
  return {};
}

std::optional<Response> by_second_factor(Call& call) {
  if (call.route.by != By::kBrowser || call.route.half_way) return {};
  const bool wanted = limits_of(call.account->role).second_factor || !call.account->second_secret.empty();
  if (wanted && !call.session->second_shown) {
    return error_answer(403, "second-factor-needed", "Show the second factor first.");
  }
  if (call.route.step_up && call.now.seconds - call.session->stepped_up > kStepUpSeconds) {
    return error_answer(403, "step-up-needed", "Show the second factor again: this changes who sees what.");
  }
  return {};
}

}  // namespace

access::Viewer viewer_of(const store::Account& account, Date today) {
  access::Viewer out{account.id, account.role, {}, today};
  for (const store::Grant& grant : account.grants) {
    const auto from = parse_iso_date(grant.from);
    const auto until = grant.until.empty() ? make_date(2200, 12, 31) : parse_iso_date(grant.until);
    if (from && until) out.charges.push_back({grant.squad, *from, *until, grant.substitute});
  }
  return out;
}

std::string secret_in_cookie(const House& house, const Request& request) {
  const std::string wanted = cookie_name(house) + "=";
  std::string_view cookies = request.header("cookie");
  while (!cookies.empty()) {
    const std::size_t end = std::min(cookies.find(';'), cookies.size());
    std::string_view one = cookies.substr(0, end);
    cookies.remove_prefix(std::min(end + 1, cookies.size()));
    while (!one.empty() && one.front() == ' ') one.remove_prefix(1);
    if (one.substr(0, wanted.size()) == wanted) return std::string(one.substr(wanted.size()));
  }
  return {};
}

std::string session_cookie(const House& house, const std::string& secret) {
  return cookie_name(house) + "=" + secret + "; Path=/; " + (house.secure ? "Secure; " : "") +
         "HttpOnly; SameSite=Strict";
}

std::string cleared_cookie(const House& house) { return session_cookie(house, "") + "; Max-Age=0"; }

std::optional<Response> not_from_our_pages(const Call& call) {
  const Request& request = call.request;
  const std::string_view type = request.header("content-type");
  const std::string_view origin = request.header("origin");
  const std::string_view site = request.header("sec-fetch-site");
  const std::string ours = call.house.origin.empty() ? std::string(request.secure ? "https://" : "http://") +
                                                           std::string(request.header("host"))
                                                     : call.house.origin;
  if (type.substr(0, type.find(';')) != "application/json") {
    return error_answer(415, "not-json", "Send JSON, with Content-Type: application/json.");
  }
  const bool strange = request.header("lanework-request") != "1" || (!origin.empty() && origin != ours) ||
                       (!site.empty() && site != "same-origin" && site != "none");
  if (strange) return error_answer(403, "not-from-here", "This did not come from a page or a program of this club's.");
  return {};
}

std::optional<Response> must_wait(Call& call, const std::string& name, const ThrottleRule& rule) {
  const auto attempts = call.room.gate->attempts(name);
  if (!attempts) return store_answer(attempts.faults());
  const std::int64_t next = next_try(rule, attempts.value().failures, attempts.value().last, call.now.seconds);
  if (next <= call.now.seconds) return {};
  Response out = error_answer(429, "too-many-tries", "Too many tries. Wait a little.");
  return out.with("Retry-After", std::to_string(next - call.now.seconds));
}

std::optional<Response> turned_away(Call& call) {
  switch (call.route.by) {
    case By::kNobody:
      return call.request.method == "POST" ? not_from_our_pages(call) : std::nullopt;
    case By::kThisMachine:
      return call.request.on_this_machine ? std::nullopt : std::optional<Response>(no_such_thing());
    case By::kBrowser:
      if (call.request.method == "POST") {
        if (auto answer = not_from_our_pages(call)) return answer;
      }
      if (auto answer = by_browser(call)) return answer;
      break;
    case By::kDevice:
      if (call.request.method == "POST") {
        if (auto answer = not_from_our_pages(call)) return answer;
      }
      if (auto answer = by_device(call)) return answer;
      break;
  }
  call.viewer = viewer_of(*call.account, call.now.day);
  if (auto answer = by_second_factor(call)) return answer;
  return by_role(call);
}

}  // namespace lanework::serve
