// The gate as plain lists in memory: what every gate must answer, written as simply as it can be said. Known only to
// the test that holds the others against it.
#pragma once

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/store/gate.h"

namespace lanework::store::test {

class PlainGate final : public Gate {
 public:
  Result<bool> add_account(Account& account) override {
    for (const Account& there : accounts_) {
      if (there.sign_in == account.sign_in) return false;
    }
    account.id = "a" + std::to_string(accounts_.size());
    account.ended = 0;
    accounts_.push_back(account);
    return true;
  }
  Result<std::optional<Account>> account(const std::string& id) override {
    return first(accounts_, [&](const Account& one) { return one.id == id; });
  }
  Result<std::optional<Account>> account_by_sign_in(const std::string& sign_in) override {
    return first(accounts_, [&](const Account& one) { return one.sign_in == sign_in; });
  }
  Result<std::vector<Account>> accounts() override {
    auto out = accounts_;
    std::sort(out.begin(), out.end(), [](const Account& a, const Account& b) { return a.sign_in < b.sign_in; });
    return out;
  }
  Result<bool> set_password(const std::string& account, const std::string& password) override {
    return change(account, [&](Account& one) { one.password = password; });
  }
  Result<bool> set_second(const std::string& account, const std::string& secret) override {
    return change(account, [&](Account& one) { one.second_secret = secret; });
  }
  Result<bool> use_second(const std::string& account, std::int64_t step) override {
    Account* one = open_account(account);
    if (one == nullptr || one->second_secret.empty() || step <= one->second_used) return false;
    one->second_used = step;
    return true;
  }
  Result<bool> set_recovery(const std::string& account, const std::vector<Digest>& codes) override {
    return change(account, [&](Account& one) { recovery_[one.id] = codes; });
  }
  Result<bool> use_recovery(const std::string& account, const Digest& code, Moment) override {
    if (open_account(account) == nullptr) return false;
    return std::erase(recovery_[account], code) > 0;
  }
  Result<bool> set_role(const std::string& account, ledger::Role role) override {
    return change(account, [&](Account& one) { one.role = role; });
  }
  Result<bool> set_grants(const std::string& account, const std::vector<Grant>& grants) override {
    return change(account, [&](Account& one) { one.grants = grants; });
  }
  Result<bool> change_grants(const std::string& account, const std::vector<Grant>& before,
                             const std::vector<Grant>& grants) override {
    Account* one = open_account(account);
    if (one == nullptr || one->grants != before) return false;
    one->grants = grants;
    return true;
  }
  Result<bool> reopen_account(const std::string& account) override {
    for (Account& one : accounts_) {
      if (one.id != account || one.ended == 0) continue;
      one.ended = 0;
      return true;
    }
    return false;
  }
  Result<bool> end_account(const std::string& account, Moment when) override {
    Account* one = open_account(account);
    if (one == nullptr) return false;
    one->ended = when;
    std::erase_if(sessions_, [&](const Session& session) { return session.account == account; });
    std::erase_if(pairings_, [&](const Pairing& pairing) { return pairing.account == account; });
    for (Device& device : devices_) {
      if (device.account == account && device.revoked == 0) device.revoked = when;
    }
    return true;
  }

  Result<bool> add_session(const Session& session) override {
    if (open_account(session.account) == nullptr || find_session(session.secret) != nullptr) return false;
    sessions_.push_back(session);
    return true;
  }
  Result<std::optional<Session>> session(const Digest& secret) override {
    return first(sessions_, [&](const Session& one) { return one.secret == secret; });
  }
  Result<bool> touch_session(const Digest& secret, Moment seen) override {
    Session* one = find_session(secret);
    if (one != nullptr) one->seen = std::max(one->seen, seen);
    return one != nullptr;
  }
  Result<bool> step_up(const Digest& secret, Moment when) override {
    Session* one = find_session(secret);
    if (one == nullptr) return false;
    one->stepped_up = when;
    one->second_shown = true;
    return true;
  }
  Result<std::vector<Session>> sessions_of(const std::string& account) override {
    std::vector<Session> out;
    for (const Session& one : sessions_) {
      if (one.account == account) out.push_back(one);
    }
    std::sort(out.begin(), out.end(), [](const Session& a, const Session& b) {
      return std::tie(a.made, a.secret) < std::tie(b.made, b.secret);
    });
    return out;
  }
  Result<bool> end_session(const Digest& secret) override {
    return std::erase_if(sessions_, [&](const Session& one) { return one.secret == secret; }) > 0;
  }
  Result<std::int64_t> end_sessions_of(const std::string& account, const Digest& keep) override {
    return count(
        std::erase_if(sessions_, [&](const Session& one) { return one.account == account && one.secret != keep; }));
  }

  Result<Pairing> open_pairing(const Pairing& pairing) override {
    const bool known = std::any_of(pairings_.begin(), pairings_.end(),
                                   [&](const Pairing& one) { return one.secret == pairing.secret; });
    if (known || open_account(pairing.account) == nullptr) return Fault{FaultCode::kContradiction, {}, {}, {}, {}};
    pairings_.push_back(pairing);
    pairings_.back().id = "p" + std::to_string(made_++);
    return pairings_.back();
  }
  Result<Claim> claim_pairing(const Digest& link, const Digest& device, const std::string& label,
                              const std::string& code, Moment when) override {
    for (Pairing& one : pairings_) {
      if (one.secret != link || when > one.until) continue;
      if (one.state != PairingState::kOpen) {
        if (one.state == PairingState::kClaimed) one.state = PairingState::kSuspended;
        return Claim::kTwice;
      }
      if (pairing_by_device(device).value() || device_by_secret(device).value()) return Claim::kUnknown;
      one.state = PairingState::kClaimed;
      one.device = device;
      one.label = label;
      one.code = code;
      return Claim::kClaimed;
    }
    return Claim::kUnknown;
  }
  Result<std::vector<Pairing>> pairings_of(const std::string& account) override {
    std::vector<Pairing> out;
    for (const Pairing& one : pairings_) {
      if (one.account == account) out.push_back(one);
    }
    std::stable_sort(out.begin(), out.end(), [](const Pairing& a, const Pairing& b) { return a.made > b.made; });
    return out;
  }
  Result<std::optional<Pairing>> pairing_by_device(const Digest& device) override {
    return first(pairings_, [&](const Pairing& one) { return one.device == device; });
  }
  Result<std::optional<Device>> confirm_pairing(const std::string& pairing, const std::string& code,
                                                Moment when) override {
    for (Pairing& one : pairings_) {
      if (one.id != pairing || one.code != code || one.state != PairingState::kClaimed || when > one.until) continue;
      one.state = PairingState::kConfirmed;
      devices_.push_back({"d" + std::to_string(devices_.size()), one.account, one.device, one.label, when, when, 0, 0});
      return std::optional<Device>(devices_.back());
    }
    return std::optional<Device>();
  }

  Result<std::optional<Device>> device_by_secret(const Digest& secret) override {
    return first(devices_, [&](const Device& one) { return one.secret == secret; });
  }
  Result<std::vector<Device>> devices() override {
    auto out = devices_;
    std::stable_sort(out.begin(), out.end(), [](const Device& a, const Device& b) { return a.paired < b.paired; });
    return out;
  }
  Result<bool> device_seen(const std::string& device, Moment when, std::int64_t sequence) override {
    Device* one = live_device(device);
    if (one == nullptr) return false;
    one->seen = std::max(one->seen, when);
    one->sequence = std::max(one->sequence, sequence);
    return true;
  }
  Result<bool> revoke_device(const std::string& device, Moment when) override {
    Device* one = live_device(device);
    if (one != nullptr) one->revoked = when;
    return one != nullptr;
  }

  Result<bool> add_calendar_link(const CalendarLink& link) override {
    if (open_account(link.made_by) == nullptr) return false;
    end_open(link.squad, link.made_by, link.made);
    links_.push_back({link.secret, link.squad, link.made, link.made_by, link.until, 0, 0, ""});
    return true;
  }
  Result<std::optional<CalendarLink>> calendar_link(const Digest& secret) override {
    return first(links_, [&](const CalendarLink& one) { return one.secret == secret; });
  }
  Result<std::vector<CalendarLink>> calendar_links() override { return links_; }
  Result<bool> end_calendar_link(const std::string& squad, const std::string& by, Moment when) override {
    return open_account(by) != nullptr && end_open(squad, by, when);
  }
  Result<bool> calendar_link_asked(const Digest& secret, Moment day) override {
    for (CalendarLink& one : links_) {
      if (one.secret != secret || one.ended != 0) continue;
      one.asked = std::max(one.asked, day);
      return true;
    }
    return false;
  }

  Result<Attempts> attempts(const std::string& name) override {
    const auto found = attempts_.find(name);
    return found == attempts_.end() ? Attempts{} : found->second;
  }
  Result<Attempts> note_failure(const std::string& name, Moment when) override {
    Attempts& one = attempts_[name];
    one = {one.failures + 1, when};
    return one;
  }
  Result<bool> forget_failures(const std::string& name) override { return attempts_.erase(name) > 0; }

  Result<bool> note_read(const ReadNote& note) override {
    const bool device = note.device.empty() || std::any_of(devices_.begin(), devices_.end(),
                                                           [&](const Device& one) { return one.id == note.device; });
    if (!device || !account(note.account).value()) return false;
    notes_.push_back(note);
    notes_.back().number = count(notes_.size());
    notes_.back().tag = tag_of(note.player);
    return true;
  }
  Result<std::vector<ReadNote>> reads(const std::string& player, std::size_t most) override {
    std::vector<ReadNote> out;
    for (auto one = notes_.rbegin(); one != notes_.rend() && out.size() < most; ++one) {
      if (!player.empty() && one->player != player) continue;
      out.push_back(*one);
      out.back().player = player;
    }
    return out;
  }
  Result<ReadAudit> audit_reads() override { return ReadAudit{count(notes_.size()), {}}; }
  [[nodiscard]] std::string tag_of(const std::string& player) const override { return player; }

  Result<std::int64_t> forget_before(Moment sessions_made, Moment sessions_seen, Moment others) override {
    return count(
        std::erase_if(sessions_,
                      [&](const Session& one) { return one.made < sessions_made || one.seen < sessions_seen; }) +
        std::erase_if(pairings_, [&](const Pairing& one) { return one.until < others; }) +
        std::erase_if(attempts_, [&](const auto& one) { return one.second.last < others; }));
  }

 private:
  std::vector<Account> accounts_;
  std::map<std::string, std::vector<Digest>> recovery_;  // by account; those that are left
  std::vector<Session> sessions_;
  std::vector<Pairing> pairings_;
  int made_ = 0;  // pairings
  std::vector<Device> devices_;
  std::vector<CalendarLink> links_;
  std::map<std::string, Attempts> attempts_;
  std::vector<ReadNote> notes_;

  static std::int64_t count(std::size_t number) { return static_cast<std::int64_t>(number); }
  template <class T, class Is>
  static std::optional<T> first(const std::vector<T>& all, Is is) {
    const auto found = std::find_if(all.begin(), all.end(), is);
    return found == all.end() ? std::nullopt : std::optional<T>(*found);
  }
  Account* open_account(const std::string& id) {
    const auto found = std::find_if(accounts_.begin(), accounts_.end(),
                                    [&](const Account& one) { return one.id == id && one.ended == 0; });
    return found == accounts_.end() ? nullptr : &*found;
  }
  template <class Work>
  bool change(const std::string& id, Work work) {
    Account* one = open_account(id);
    if (one != nullptr) work(*one);
    return one != nullptr;
  }
  bool end_open(const std::string& squad, const std::string& by, Moment when) {
    for (CalendarLink& one : links_) {
      if (one.squad != squad || one.ended != 0) continue;
      one.ended = when;
      one.ended_by = by;
      return true;
    }
    return false;
  }
  Session* find_session(const Digest& secret) {
    const auto found =
        std::find_if(sessions_.begin(), sessions_.end(), [&](const Session& one) { return one.secret == secret; });
    return found == sessions_.end() ? nullptr : &*found;
  }
  Device* live_device(const std::string& id) {
    const auto found = std::find_if(devices_.begin(), devices_.end(),
                                    [&](const Device& one) { return one.id == id && one.revoked == 0; });
    return found == devices_.end() ? nullptr : &*found;
  }
};

}  // namespace lanework::store::test
