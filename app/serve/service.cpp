#include "app/serve/service.h"

#include <algorithm>
#include <chrono>
#include <set>

#include "app/serve/call.h"
#include "app/serve/doorman.h"
#include "app/serve/http/http_date.h"

namespace lanework::serve {
namespace {

// Here as long as the process is, whatever the store does: the one route that takes no room.
constexpr std::string_view kHealth = "health";

Work work_of(const std::string& route) {
  const auto& all = works();
  const auto found = std::find_if(all.begin(), all.end(), [&](const NamedWork& one) { return one.route == route; });
  return found == all.end() ? nullptr : found->work;
}

std::string what_of(int status) {
  switch (status) {
    case 400:
      return "The request cannot be read.";
    case 413:
      return "The request is larger than what is taken: at most 1 MiB.";
    case 431:
      return "The request's headers are larger than what is taken: at most 16 KiB.";
    case 503:
      return "The server has its hands full. Try again soon.";
    default:
      return "Something went wrong here. Nothing was half done.";
  }
}

// Read by whoever looks at the answer; the same for files, answers and errors.
constexpr const char* kContentPolicy =
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob:; font-src "
    "'self'; "
    "connect-src 'self'; worker-src 'self'; manifest-src 'self'; form-action 'self'; frame-ancestors 'none'; "
    "base-uri 'none'; object-src 'none'";

std::string key_in(const Response& response) {
  if (response.status < 400) return {};
  const auto body = parse_json("answer", response.body);
  const Node* error = body ? body.value().root.find("error") : nullptr;
  return error == nullptr ? std::string() : error->text;
}

// RFC 9110, 7.2: a name or an address, perhaps a port.
bool is_host(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '.' || c == '-' ||
           c == '_' || c == ':' || c == '[' || c == ']';
  });
}

std::optional<Response> read_body(Call& call) {
  if (call.request.method != "POST") return {};
  auto document = parse_json("request", call.request.body);
  if (!document) return fault_answer(document.faults());
  call.body = std::move(document.value().root);
  if (call.body.kind != Node::Kind::kTable) {
    return error_answer(400, "not-understood", "The body must be a JSON object.");
  }
  return {};
}

}  // namespace

Result<std::unique_ptr<Service>> Service::make(House& house) {
  Faults faults;
  std::set<std::string> named;
  for (const access::Route& route : house.matrix.routes) {
    named.insert(route.name);
    if (route.name != kHealth && work_of(route.name) == nullptr) {
      faults.push_back({FaultCode::kUnknownName,
                        {"catalogue/access/matrix.toml", 0, 0, route.name},
                        "a route nobody answers",
                        "routes that this version has",
                        {}});
    }
  }
  for (const NamedWork& one : works()) {
    if (named.count(one.route) == 0) {
      faults.push_back({FaultCode::kMissing,
                        {"catalogue/access/matrix.toml", 0, 0, one.route},
                        "nothing about it",
                        "a [[route]] for everything that this version answers",
                        {}});
    }
  }
  if (!faults.empty()) return faults;
  return std::unique_ptr<Service>(new Service(house));
}

Response Service::refuse(int status) const {
  Response out = error_answer(status,
                              status == 503   ? "busy"
                              : status == 500 ? "fault"
                                              : "not-understood",
                              what_of(status));
  dress(out, false);
  return out;
}

Response Service::answer(const Request& request) {
  const auto began = std::chrono::steady_clock::now();
  std::string route = "none";
  std::string why;
  std::string account;
  std::string device;
  Response out;
  try {
    out = routed(request, route, why, account, device);
  } catch (const std::exception&) {
    out = error_answer(500, "fault", what_of(500));
    why = "fault";
  }
  const bool of_file = route == "file";
  dress(out, of_file);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - began;
  house_.metrics.answered(route, out.status, took.count());
  if (why.empty()) why = key_in(out);
  house_.log->add({house_.clock(), "request", route,
                   request.method == "POST"  ? "POST"
                   : request.method == "GET" ? "GET"
                                             : "other",
                   out.status, static_cast<std::int64_t>(took.count() * 1e6), account, device, why});
  return out;
}

Response Service::routed(const Request& request, std::string& route, std::string& why, std::string& account,
                         std::string& device) {
  for (const char* once : {"host", "content-type", "authorization", "cookie", "origin", "lanework-request"}) {
    if (request.count(once) > 1) return error_answer(400, "not-understood", "A header stands there twice.");
  }
  if (!is_host(request.header("host")))
    return error_answer(400, "not-understood", "The Host header is missing, or none.");
  const bool reads = request.method == "GET" || request.method == "HEAD";
  if (!reads && request.method != "POST") return other_method(request);
  const std::string method = reads ? "GET" : "POST";
  if (reads) {
    if (auto file = house_.files.answer(request)) {
      route = "file";
      return std::move(*file);
    }
  }
  const auto match = house_.matrix.match(method, request.path);
  if (!match) return other_method(request);
  route = match->route->name;
  if (route == kHealth) {
    Node here = Node::make_table();
    here.set("status", Node::make_text("here"));
    return json_answer(200, here);
  }
  return worked(request, *match, why, account, device);
}

// 405 with the methods that there are; 404 where there are none.
Response Service::other_method(const Request& request) const {
  std::string allowed = house_.files.answer(request) ? "GET, HEAD" : "";
  for (const std::string& method : house_.matrix.methods(request.path)) {
    allowed += (allowed.empty() ? "" : ", ") + (method == "GET" ? std::string("GET, HEAD") : method);
  }
  if (allowed.empty()) return error_answer(404, "not-found", "There is nothing here for you.");
  Response out = error_answer(405, "no-such-method", "This is not asked for in this way.");
  return out.with("Allow", allowed);
}

Response Service::worked(const Request& request, const access::PathMatch& match, std::string& why, std::string& account,
                         std::string& device) {
  auto room = house_.rooms->take();
  if (!room) return store_answer(room.faults());
  Call call{
      house_, request, *match.route, match.values, now_at(house_.clock()), **room.value(), {}, {}, {}, {}, {}, {}, {},
      0,      {}};
  auto refused = turned_away(call);
  if (call.account) account = call.account->id;
  if (call.device) device = call.device->id;
  if (!refused && call.account) refused = house_.pace->too_fast(device.empty() ? account : device, call.now.seconds);
  if (refused) return std::move(*refused);
  if (auto answer = read_body(call)) return std::move(*answer);
  Response out = work_of(match.route->name)(call);
  why = call.why;
  if (!match.route->noted || out.status >= 300) return out;
  // What cannot be written down is not shown.
  store::ReadNote note;
  note.when = call.now.seconds;
  note.account = call.account->id;
  note.device = device;
  note.route = match.route->name;
  note.squad = call.read_squad;
  note.player = call.read_player;
  note.people = call.read_people;
  if (note.people == 0 && note.player.empty()) return out;
  const auto noted = call.room.gate->note_read(note);
  return noted ? std::move(out) : store_answer(noted.faults());
}

void Service::dress(Response& response, bool of_file) const {
  response.with("Content-Security-Policy", kContentPolicy)
      .with("X-Content-Type-Options", "nosniff")
      .with("Referrer-Policy", "no-referrer")
      .with("Cross-Origin-Opener-Policy", "same-origin")
      .with("Cross-Origin-Embedder-Policy", "require-corp")
      .with("Cross-Origin-Resource-Policy", "same-origin")
      .with("Date", http_date(house_.clock()))
      .with("Permissions-Policy", "camera=(self), microphone=(), geolocation=(), payment=(), usb=()");
  if (!of_file && response.header("Cache-Control").empty()) response.with("Cache-Control", "no-store");
  if (house_.secure) response.with("Strict-Transport-Security", "max-age=63072000; includeSubDomains");
}

}  // namespace lanework::serve
