// The gate on any database that answers statements: the SQL stands here once. By what it is about: accounts.cpp,
// sessions.cpp, devices.cpp, calendar_links.cpp, reads.cpp.
#pragma once

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "app/store/gate.h"
#include "app/store/statements.h"

namespace lanework::store {

class SqlGate final : public Gate {
 public:
  // club: '' where the whole database is one club's.
  SqlGate(std::unique_ptr<Statements> statements, std::string club, Key key)
      : statements_(std::move(statements)), club_(std::move(club)), key_(std::move(key)) {}

  Result<bool> add_account(Account& account) override;
  Result<std::optional<Account>> account(const std::string& id) override;
  Result<std::optional<Account>> account_by_sign_in(const std::string& sign_in) override;
  Result<std::vector<Account>> accounts() override;
  Result<bool> set_password(const std::string& account, const std::string& password) override;
  Result<bool> set_second(const std::string& account, const std::string& secret) override;
  Result<bool> use_second(const std::string& account, std::int64_t step) override;
  Result<bool> set_recovery(const std::string& account, const std::vector<Digest>& codes) override;
  Result<bool> use_recovery(const std::string& account, const Digest& code, Moment when) override;
  Result<bool> set_role(const std::string& account, ledger::Role role) override;
  Result<bool> set_grants(const std::string& account, const std::vector<Grant>& grants) override;
  Result<bool> change_grants(const std::string& account, const std::vector<Grant>& before,
                             const std::vector<Grant>& grants) override;
  Result<bool> end_account(const std::string& account, Moment when) override;
  Result<bool> reopen_account(const std::string& account) override;
  Result<bool> add_session(const Session& session) override;
  Result<std::optional<Session>> session(const Digest& secret) override;
  Result<bool> touch_session(const Digest& secret, Moment seen) override;
  Result<bool> step_up(const Digest& secret, Moment when) override;
  Result<std::vector<Session>> sessions_of(const std::string& account) override;
  Result<bool> end_session(const Digest& secret) override;
  Result<std::int64_t> end_sessions_of(const std::string& account, const Digest& keep) override;
  Result<Pairing> open_pairing(const Pairing& pairing) override;
  Result<Claim> claim_pairing(const Digest& link, const Digest& device, const std::string& label,
                              const std::string& code, Moment when) override;
  Result<std::vector<Pairing>> pairings_of(const std::string& account) override;
  Result<std::optional<Pairing>> pairing_by_device(const Digest& device) override;
  Result<std::optional<Device>> confirm_pairing(const std::string& pairing, const std::string& code,
                                                Moment when) override;
  Result<std::optional<Device>> device_by_secret(const Digest& secret) override;
  Result<std::vector<Device>> devices() override;
  Result<bool> device_seen(const std::string& device, Moment when, std::int64_t sequence) override;
  Result<bool> revoke_device(const std::string& device, Moment when) override;
  Result<bool> add_calendar_link(const CalendarLink& link) override;
  Result<std::optional<CalendarLink>> calendar_link(const Digest& secret) override;
  Result<std::vector<CalendarLink>> calendar_links() override;
  Result<bool> end_calendar_link(const std::string& squad, const std::string& by, Moment when) override;
  Result<bool> calendar_link_asked(const Digest& secret, Moment day) override;
  Result<Attempts> attempts(const std::string& name) override;
  Result<Attempts> note_failure(const std::string& name, Moment when) override;
  Result<bool> forget_failures(const std::string& name) override;
  Result<bool> note_read(const ReadNote& note) override;
  Result<std::vector<ReadNote>> reads(const std::string& player, std::size_t most) override;
  Result<ReadAudit> audit_reads() override;
  [[nodiscard]] std::string tag_of(const std::string& player) const override;
  Result<std::int64_t> forget_before(Moment sessions_made, Moment sessions_seen, Moment others) override;

 private:
  std::unique_ptr<Statements> statements_;
  std::string club_;
  Key key_;

  // Waits for whoever changes the account now, then keeps others from it until the call ends. False where it is none or
  // has ended. Always the first that a call holds, so that no two calls wait for each other.
  bool hold_account(Call& call, const std::string& account);
  std::vector<Account> accounts_in(Call& call, const std::vector<std::vector<Value>>& rows);
  void add_grants(Call& call, const std::string& account, const std::vector<Grant>& grants);
};

}  // namespace lanework::store
