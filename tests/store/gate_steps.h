// Calls of a gate as numbers, played on any gate, and what it answered and what is there afterwards as one text.
#pragma once

#include <algorithm>
#include <ostream>
#include <string>
#include <vector>

#include "tests/store/gate_people.h"

namespace lanework::store::test {

// One call: which verb, and numbers that choose its values out of a few, so that they meet.
struct Step {
  int verb;
  int one;
  int two;
  int three;
  Moment when;
};

inline constexpr int kVerbs = 27;

inline std::ostream& operator<<(std::ostream& out, const Step& step) {
  return out << step.verb << "(" << step.one << "," << step.two << "," << step.three << "," << step.when << ")";
}

inline Digest digest(const std::string& what, int number) { return digest_of(what + std::to_string(number)); }

// A gate and the ids that it gave, so that two gates are asked and compared by the order in which they gave them.
class Player {
 public:
  explicit Player(Gate& gate) : gate_(gate) {}

  // What was answered, with every id by its number.
  std::string play(const Step& step) {
    const std::string account = at(accounts_, step.one);
    const std::string device = at(devices_, step.one);
    switch (step.verb) {
      case 0: {
        Account made = account_of(step);
        const bool added = must(gate_.add_account(made));
        if (added) accounts_.push_back(made.id);
        return yes(added);
      }
      case 1:
        return yes(gate_.set_password(account, "hash " + std::to_string(step.two)));
      case 2:
        return yes(gate_.set_second(account, step.two == 0 ? "" : "secret"));
      case 3:
        return yes(gate_.use_second(account, step.when));
      case 4:
        return yes(gate_.set_recovery(account, {digest("code", step.two), digest("code", step.three)}));
      case 5:
        return yes(gate_.use_recovery(account, digest("code", step.two), step.when));
      case 6:
        return yes(gate_.set_role(account, static_cast<ledger::Role>(step.two)));
      case 7:
        return yes(
            gate_.set_grants(account, std::vector<Grant>(static_cast<std::size_t>(step.two),
                                                         {"u" + std::to_string(step.three), "2026-11-26", "", true})));
      case 8:
        // Rarely, since little happens to an account that has ended.
        return step.two == 0 && step.three == 0 ? yes(gate_.end_account(account, step.when)) : "";
      case 9:
        return yes(gate_.add_session(
            {digest("cookie", step.two), account, step.when, step.when + step.three, 0, step.three > 2}));
      case 10:
        return yes(gate_.touch_session(digest("cookie", step.two), step.when));
      case 11:
        return yes(gate_.step_up(digest("cookie", step.two), step.when));
      case 12:
        return yes(gate_.end_session(digest("cookie", step.two)));
      case 13:
        return std::to_string(must(gate_.end_sessions_of(account, digest("cookie", step.two))));
      default:
        return play_device(step, account, device);
    }
  }

  // All that can be asked.
  std::string state() {
    std::string out;
    for (const Account& one : must(gate_.accounts())) {
      out += "account " + number(accounts_, one.id) + text_of(one) + text_of(*must(gate_.account(one.id))) +
             text_of(*must(gate_.account_by_sign_in(one.sign_in))) + "\n";
      for (const Session& session : must(gate_.sessions_of(one.id))) out += text_of(session);
      std::vector<std::string> pairings;
      for (const Pairing& pairing : must(gate_.pairings_of(one.id))) pairings.push_back(text_of(pairing));
      std::sort(pairings.begin(),
                pairings.end());  // of those of one moment the order is the ids', and those are chance
      for (const std::string& pairing : pairings) out += pairing;
    }
    std::vector<std::string> devices;
    for (const Device& one : must(gate_.devices())) devices.push_back(text_of(one));
    std::sort(devices.begin(), devices.end());
    for (const std::string& device : devices) out += device;
    for (int i = 0; i < 5; ++i) {
      const auto session = must(gate_.session(digest("cookie", i)));
      const auto pairing = must(gate_.pairing_by_device(digest("key", i)));
      const auto device = must(gate_.device_by_secret(digest("key", i)));
      out += (session ? text_of(*session) : "-") + (pairing ? text_of(*pairing) : "-") +
             (device ? text_of(*device) : "-") + text_of(must(gate_.attempts("name" + std::to_string(i)))) + "\n";
    }
    std::vector<std::string> links;
    for (const CalendarLink& one : must(gate_.calendar_links())) links.push_back(text_of(one));
    std::sort(links.begin(), links.end());
    for (int i = 0; i < links_; ++i) {
      const auto link = must(gate_.calendar_link(digest("calendar", i)));
      links.push_back(link ? text_of(*link) : "-");
    }
    for (const std::string& link : links) out += link;
    for (const char* player : {"", "Q0", "Q1"}) {
      for (const ReadNote& one : must(gate_.reads(player, 7))) out += text_of(one);
    }
    const ReadAudit audit = must(gate_.audit_reads());
    return out + std::to_string(audit.notes) + (audit.broken_at ? "broken" : "");
  }

 private:
  Gate& gate_;
  std::vector<std::string> accounts_;
  std::vector<std::string> pairings_;
  std::vector<std::string> devices_;
  int links_ = 0;  // to calendars, that were tried

  std::string play_device(const Step& step, const std::string& account, const std::string& device) {
    const std::string name = "name" + std::to_string(step.one);
    switch (step.verb) {
      case 14:
      case 15: {
        Pairing link = link_for(account, "link" + std::to_string(step.two), step.when);
        link.until = step.when + 8;
        const auto opened = gate_.open_pairing(link);
        if (opened) pairings_.push_back(opened.value().id);
        return yes(opened.ok());
      }
      case 16:
      case 17:
        return std::to_string(static_cast<int>(
            must(gate_.claim_pairing(digest("link", step.two), digest("key", step.three), name, "code", step.when))));
      case 18:
      case 19: {
        const auto made =
            must(gate_.confirm_pairing(at(pairings_, step.two), step.three == 0 ? "other" : "code", step.when));
        if (made) devices_.push_back(made->id);
        return made ? text_of(*made) : "-";
      }
      case 20:
        return yes(gate_.device_seen(device, step.when, step.two));
      case 21:
        return step.two == 0 ? yes(gate_.revoke_device(device, step.when))
                             : text_of(must(gate_.note_failure(name, step.when)));
      case 22:
        if (step.two == 0) return yes(gate_.forget_failures(name));
        return yes(gate_.note_read({0, step.when, account, step.two == 1 ? device : "", "route", "",
                                    step.three == 0 ? "" : "Q" + std::to_string(step.three % 2), step.three, ""}));
      case 23:
        return yes(gate_.add_calendar_link({digest("calendar", links_++), "u" + std::to_string(step.two), step.when,
                                            account, step.when + 8, 0, 0, ""}));
      case 24:
        return yes(gate_.end_calendar_link("u" + std::to_string(step.two), account, step.when));
      case 25:
        return yes(gate_.calendar_link_asked(digest("calendar", step.two), step.when));
      default:
        return std::to_string(must(gate_.forget_before(step.one * 2, step.two * 2, step.three * 2)));
    }
  }

  static Account account_of(const Step& step) {
    Account out;
    out.sign_in = "sign-in " + std::to_string(step.two);
    out.name = "Ann";
    out.role = static_cast<ledger::Role>(step.three);
    out.second_secret = step.three == 0 ? "" : "given";
    out.made = step.when;
    if (step.three > 2) out.grants = {{"u9", "2026-11-26", "2026-11-27", false}};
    return out;
  }

  static std::string yes(bool answer) { return answer ? "yes" : "no"; }
  static std::string yes(Result<bool> answer) { return yes(must(std::move(answer))); }
  static std::string at(const std::vector<std::string>& ids, int chosen) {
    return ids.empty() ? "nobody" : ids[static_cast<std::size_t>(chosen) % ids.size()];
  }
  static std::string number(const std::vector<std::string>& ids, const std::string& id) {
    return std::to_string(std::find(ids.begin(), ids.end(), id) - ids.begin()) + " ";
  }
  static std::string numbers(std::initializer_list<std::int64_t> values) {
    std::string out = "[";
    for (const std::int64_t value : values) out += std::to_string(value) + " ";
    return out + "]\n";
  }

  static std::string text_of(const Account& one) {
    std::string out = one.sign_in + "," + one.name + "," + one.password + "," + one.second_secret;
    for (const Grant& grant : one.grants) out += "," + grant.squad + grant.from + grant.until + yes(grant.substitute);
    return out + numbers({static_cast<int>(one.role), one.second_used, one.made, one.ended});
  }
  [[nodiscard]] std::string text_of(const Session& one) const {
    return "session " + number(accounts_, one.account) + hexadecimal(one.secret) +
           numbers({one.made, one.seen, one.stepped_up, one.second_shown ? 1 : 0});
  }
  [[nodiscard]] std::string text_of(const Pairing& one) const {
    return "pairing " + number(pairings_, one.id) + number(accounts_, one.account) + hexadecimal(one.secret) +
           hexadecimal(one.device) + one.label + one.code + numbers({one.made, one.until, static_cast<int>(one.state)});
  }
  [[nodiscard]] std::string text_of(const Device& one) const {
    return "device " + number(devices_, one.id) + number(accounts_, one.account) + hexadecimal(one.secret) + one.label +
           numbers({one.paired, one.seen, one.sequence, one.revoked});
  }
  [[nodiscard]] std::string text_of(const CalendarLink& one) const {
    return "calendar " + hexadecimal(one.secret) + one.squad + number(accounts_, one.made_by) +
           (one.ended_by.empty() ? "" : number(accounts_, one.ended_by)) +
           numbers({one.made, one.until, one.asked, one.ended});
  }
  static std::string text_of(const Attempts& one) { return numbers({one.failures, one.last}); }
  [[nodiscard]] std::string text_of(const ReadNote& one) const {
    // Of those that were asked for without a player, whom they are about is told by the tag.
    const std::string player = one.tag.empty() || one.tag == gate_.tag_of("Q0") ? "Q0" : "Q1";
    return "read " + number(accounts_, one.account) + (one.device.empty() ? "" : number(devices_, one.device)) +
           one.route + one.squad + (one.tag.empty() ? "" : player) + numbers({one.number, one.when, one.people});
  }
};

}  // namespace lanework::store::test
