// The address by which a coach's calendar follows a squad's evenings: made, told of, taken back, and asked without a
// session. What it gives is what the page on the grass says of place and time, and less.
#include <algorithm>

#include "app/serve/routes/routes.h"
#include "app/serve/session_limits.h"
#include "app/serve/sign_in/account_words.h"
#include "app/serve/sign_in/caller_network.h"
#include "app/serve/sign_in/secret.h"

namespace lanework::serve {
namespace {

constexpr std::string_view kEnding = ".ics";
constexpr std::int64_t kSecondsADay = 24 * kHour;

Response nothing_here() { return error_answer(404, "not-found", "There is nothing here for you."); }

std::string name_of(const std::vector<store::Account>& accounts, const std::string& id) {
  const auto found =
      std::find_if(accounts.begin(), accounts.end(), [&](const store::Account& one) { return one.id == id; });
  return found == accounts.end() ? std::string() : found->name;
}

// Had the squad while the link was there, and has it no more: they may still have the address.
bool left_since(const store::Account& account, const store::CalendarLink& link, const Now& now) {
  bool had = false;
  for (const store::Grant& grant : account.grants) {
    if (grant.squad != link.squad || grant.substitute) continue;
    const bool over = account.ended != 0 || (!grant.until.empty() && grant.until < to_iso(now.day));
    if (!over) return false;
    had = had || ((grant.until.empty() || grant.until >= to_iso(day_of(link.made))) &&
                  (account.ended == 0 || account.ended > link.made));
  }
  return had;
}

Node link_node(const store::CalendarLink& link, const std::vector<store::Account>& accounts, const Now& now) {
  Node out = Node::make_table();
  const bool over = link.ended == 0 && link.until < now.seconds;
  out.set("squad", Node::make_text(link.squad));
  out.set("state", Node::make_text(link.ended != 0 ? "taken-back" : over ? "too-late" : "open"));
  out.set("made", Node::make_text(now_at(link.made).stamp));
  out.set("made_by", Node::make_text(name_of(accounts, link.made_by)));
  out.set("until", Node::make_text(now_at(link.until).stamp));
  if (link.asked != 0) {
    out.set("asked", Node::make_text(to_iso(Date{static_cast<int>(link.asked / kSecondsADay)})));
  }
  if (link.ended != 0) {
    out.set("taken_back", Node::make_text(now_at(link.ended).stamp));
    out.set("taken_back_by", Node::make_text(name_of(accounts, link.ended_by)));
    return out;
  }
  std::vector<std::string> left;
  for (const store::Account& account : accounts) {
    if (left_since(account, link, now)) left.push_back(account.name);
  }
  out.set("left", texts_node(left));
  return out;
}

Response links(Call& call) {
  const auto all = call.room.gate->calendar_links();
  if (!all) return store_answer(all.faults());
  const auto accounts = call.room.gate->accounts();
  if (!accounts) return store_answer(accounts.faults());
  Node list = Node::make_array();
  for (const store::CalendarLink& link : all.value()) {
    list.items.push_back(link_node(link, accounts.value(), call.now));
  }
  Node body = Node::make_table();
  body.set("links", std::move(list));
  return json_answer(200, body);
}

Response make(Call& call) {
  Faults faults;
  call.reader(faults).finish();
  if (!faults.empty()) return fault_answer(faults);
  const std::string secret = new_secret();
  store::CalendarLink link;
  link.secret = store::digest_of(calendar_link_form(secret));
  link.squad = call.values[0];
  link.made = call.now.seconds;
  link.made_by = call.account->id;
  link.until = call.now.seconds + kCalendarLinkSeconds;
  const auto added = call.room.gate->add_calendar_link(link);
  if (!added) return store_answer(added.faults());
  if (!added.value()) return nothing_here();
  Node body = Node::make_table();
  body.set("path", Node::make_text("/calendar/" + secret + std::string(kEnding)));
  body.set("until", Node::make_text(now_at(link.until).stamp));
  return json_answer(201, body);
}

Response take_back(Call& call) {
  Faults faults;
  call.reader(faults).finish();
  if (!faults.empty()) return fault_answer(faults);
  const auto ended = call.room.gate->end_calendar_link(call.values[0], call.account->id, call.now.seconds);
  if (!ended) return store_answer(ended.faults());
  return ended.value() ? json_answer(200, Node::make_table()) : nothing_here();
}

Response calendar_answer(const Call& call, const std::string& text) {
  const std::string tag = "\"" + store::hexadecimal(store::digest_of(text)) + "\"";
  Response out;
  // Not for caches that several share, and never without asking: what was taken back must not be had from one.
  out.with("Cache-Control", "private, no-cache").with("ETag", tag).with("X-Robots-Tag", "noindex, nofollow");
  if (call.request.header("if-none-match").find(tag) != std::string_view::npos) {
    out.status = 304;
    return out;
  }
  out.body = text;
  return out.with("Content-Type", "text/calendar; charset=utf-8")
      .with("Content-Disposition", "inline; filename=\"evenings.ics\"");
}

// Never worse than what the phone has: it keeps its calendar when it is told to come back.
Response no_calendar_now(Call& call) {
  call.why = "folder";
  Response out = error_answer(503, "no-calendar-now", "The club's folder has a fault. Ask again later.");
  return out.with("Retry-After", std::to_string(kHour));
}

// What is told is remembered; where that cannot be written down it is told all the same, and worked out anew next time.
Response told_now(Call& call, const std::string& squad) {
  constexpr int kTries = 3;  // of several servers at once one writes it down, and the others go by that
  for (int i = 0;; ++i) {
    const auto before = call.room.queue->told(squad);
    if (!before) return store_answer(before.faults());
    auto told = call.house.printed.followed(squad, before.value().text, call.now);
    if (!told) return no_calendar_now(call);
    if (!told.value()) return nothing_here();
    const Followed& now = *told.value();
    const bool is_new = now.told != before.value().text;
    const auto kept =
        is_new ? call.room.queue->tell(squad, before.value().version, now.told, call.now.seconds) : Result<bool>(true);
    if (!kept || kept.value() || i == kTries) return calendar_answer(call, now.calendar);
  }
}

// By anybody who has the address. Whatever is no open link is answered as what is not there.
Response followed(Call& call) {
  const std::string network = caller_network(call.request.address);
  if (auto wait = call.house.calendar_pace.too_fast(network, call.now.seconds)) return std::move(*wait);
  const std::string& name = call.values[0];
  if (!name.ends_with(kEnding)) return nothing_here();
  const store::Digest secret = store::digest_of(calendar_link_form(name.substr(0, name.size() - kEnding.size())));
  const auto link = call.room.gate->calendar_link(secret);
  if (!link) return store_answer(link.faults());
  if (!link.value() || link.value()->ended != 0 || link.value()->until < call.now.seconds) return nothing_here();
  if (!call.house.printed.followed) return no_calendar_now(call);
  const store::Moment day = std::int64_t{call.now.day.days_since_epoch} * kSecondsADay;
  if (link.value()->asked < day) (void)call.room.gate->calendar_link_asked(secret, day);
  return told_now(call, link.value()->squad);
}

}  // namespace

const std::vector<NamedWork>& calendar_routes() {
  static const std::vector<NamedWork> kWorks = {{"calendar-links", links},
                                                {"make-calendar-link", make},
                                                {"take-back-calendar-link", take_back},
                                                {"followed-calendar", followed}};
  return kWorks;
}

}  // namespace lanework::serve
