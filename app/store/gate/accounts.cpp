#include <algorithm>

#include "app/store/books.h"
#include "app/store/gate/sql_gate.h"

namespace lanework::store {
namespace {

const std::string kAccounts =
    "SELECT a.id, a.sign_in, a.name, a.role, a.password, a.sealed_second, a.second_used, a.made, a.ended, "
    "g.squad, g.from_day, g.until_day, g.substitute "
    "FROM account a LEFT JOIN squad_grant g ON g.club = a.club AND g.account = a.id WHERE a.club = $1";

std::string second_context(const std::string& account) { return "second factor of " + account; }

Value sealed_second(const Key& key, const std::string& account, const std::string& secret) {
  return secret.empty() ? Value() : Value(Bytes{sealed(key, secret, second_context(account))});
}

}  // namespace

bool SqlGate::hold_account(Call& call, const std::string& account) {
  return call.changes("UPDATE account SET made = made WHERE club = $1 AND id = $2 AND ended = 0", {club_, account});
}

// One row a grant, and one for an account without any.
std::vector<Account> SqlGate::accounts_in(Call& call, const std::vector<std::vector<Value>>& rows) {
  std::vector<Account> out;
  for (const auto& row : rows) {
    if (out.empty() || out.back().id != text_in(row[0])) {
      Account account{text_in(row[0]),  text_in(row[1]),
                      text_in(row[2]),  role_of(text_in(row[3])),
                      text_in(row[4]),  {},
                      whole_in(row[6]), whole_in(row[7]),
                      whole_in(row[8]), {}};
      if (const std::string second = text_in(row[5]); !second.empty()) {
        auto secret = opened(key_, second, second_context(account.id));
        // Were it left out, an account with a second factor would look like one without.
        if (!secret) {
          call.fail({FaultCode::kContradiction,
                     {statements_->name(), 0, 0, {}},
                     "the second factor of " + account.id + " sealed under another key",
                     "the key that this store was made with",
                     {}});
        }
        account.second_secret = std::move(secret).value_or("");
      }
      out.push_back(std::move(account));
    }
    if (text_in(row[9]).empty()) continue;
    out.back().grants.push_back({text_in(row[9]), text_in(row[10]), text_in(row[11]), whole_in(row[12]) != 0});
  }
  return out;
}

void SqlGate::add_grants(Call& call, const std::string& account, const std::vector<Grant>& grants) {
  std::int64_t position = 0;
  for (const Grant& grant : grants) {
    call.changed(
        "INSERT INTO squad_grant (club, account, position, squad, from_day, until_day, substitute) "
        "VALUES ($1, $2, $3, $4, $5, $6, $7)",
        {club_, account, position++, grant.squad, grant.from, text_or_null(grant.until), grant.substitute ? 1 : 0});
  }
}

Result<bool> SqlGate::add_account(Account& account) {
  Call call(*statements_, Call::Of::kMany);
  const std::string id = made_id("a-");
  const bool added = call.changes(
      "INSERT INTO account (club, id, sign_in, name, role, password, sealed_second, second_used, made) "
      "VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9) ON CONFLICT (club, sign_in) DO NOTHING",
      {club_, id, account.sign_in, account.name, role_text(account.role), account.password,
       sealed_second(key_, id, account.second_secret), account.second_used, account.made});
  if (added) add_grants(call, id, account.grants);
  auto out = call.end(added);
  if (out && out.value()) {
    account.id = id;
    account.ended = 0;
  }
  return out;
}

Result<std::optional<Account>> SqlGate::account(const std::string& id) {
  static const std::string kText = kAccounts + " AND a.id = $2 ORDER BY g.position";
  Call call(*statements_);
  auto found = accounts_in(call, call.rows(kText, {club_, id}));
  return call.end(found.empty() ? std::nullopt : std::optional<Account>(std::move(found.front())));
}

Result<std::optional<Account>> SqlGate::account_by_sign_in(const std::string& sign_in) {
  static const std::string kText = kAccounts + " AND a.sign_in = $2 ORDER BY g.position";
  Call call(*statements_);
  auto found = accounts_in(call, call.rows(kText, {club_, sign_in}));
  return call.end(found.empty() ? std::nullopt : std::optional<Account>(std::move(found.front())));
}

Result<std::vector<Account>> SqlGate::accounts() {
  static const std::string kText = kAccounts + " ORDER BY a.sign_in, g.position";
  Call call(*statements_);
  return call.end(accounts_in(call, call.rows(kText, {club_})));
}

Result<bool> SqlGate::set_password(const std::string& account, const std::string& password) {
  Call call(*statements_);
  return call.end(call.changes("UPDATE account SET password = $3 WHERE club = $1 AND id = $2 AND ended = 0",
                               {club_, account, password}));
}

Result<bool> SqlGate::set_second(const std::string& account, const std::string& secret) {
  Call call(*statements_);
  return call.end(call.changes("UPDATE account SET sealed_second = $3 WHERE club = $1 AND id = $2 AND ended = 0",
                               {club_, account, sealed_second(key_, account, secret)}));
}

Result<bool> SqlGate::use_second(const std::string& account, std::int64_t step) {
  Call call(*statements_);
  return call.end(
      call.changes("UPDATE account SET second_used = $3 WHERE club = $1 AND id = $2 AND ended = 0 "
                   "AND sealed_second IS NOT NULL AND second_used < $3",
                   {club_, account, step}));
}

Result<bool> SqlGate::set_recovery(const std::string& account, const std::vector<Digest>& codes) {
  Call call(*statements_, Call::Of::kMany);
  const bool there = hold_account(call, account);
  if (there) call.changed("DELETE FROM recovery_code WHERE club = $1 AND account = $2", {club_, account});
  for (std::size_t i = 0; there && i < codes.size(); ++i) {
    call.changed("INSERT INTO recovery_code (club, account, code) VALUES ($1, $2, $3) ON CONFLICT DO NOTHING",
                 {club_, account, Bytes{codes[i]}});
  }
  return call.end(there);
}

Result<bool> SqlGate::use_recovery(const std::string& account, const Digest& code, Moment when) {
  Call call(*statements_, Call::Of::kMany);
  const bool used = hold_account(call, account) && call.changes(
                                                       "UPDATE recovery_code SET used = $4 "
                                                       "WHERE club = $1 AND account = $2 AND code = $3 AND used = 0",
                                                       {club_, account, Bytes{code}, std::max<Moment>(when, 1)});
  return call.end(used);
}

Result<bool> SqlGate::set_role(const std::string& account, ledger::Role role) {
  Call call(*statements_);
  return call.end(call.changes("UPDATE account SET role = $3 WHERE club = $1 AND id = $2 AND ended = 0",
                               {club_, account, role_text(role)}));
}

Result<bool> SqlGate::set_grants(const std::string& account, const std::vector<Grant>& grants) {
  Call call(*statements_, Call::Of::kMany);
  const bool there = hold_account(call, account);
  if (there) {
    call.changed("DELETE FROM squad_grant WHERE club = $1 AND account = $2", {club_, account});
    add_grants(call, account, grants);
  }
  return call.end(there);
}

Result<bool> SqlGate::change_grants(const std::string& account, const std::vector<Grant>& before,
                                    const std::vector<Grant>& grants) {
  Call call(*statements_, Call::Of::kMany);
  const bool there = hold_account(call, account);
  std::vector<Grant> now;
  for (const auto& row : call.rows("SELECT squad, from_day, until_day, substitute FROM squad_grant WHERE club = $1 AND "
                                   "account = $2 ORDER BY position",
                                   {club_, account})) {
    now.push_back({text_in(row[0]), text_in(row[1]), text_in(row[2]), whole_in(row[3]) != 0});
  }
  const bool changes = there && now == before;
  if (changes) {
    call.changed("DELETE FROM squad_grant WHERE club = $1 AND account = $2", {club_, account});
    add_grants(call, account, grants);
  }
  return call.end(changes);
}

Result<bool> SqlGate::reopen_account(const std::string& account) {
  Call call(*statements_);
  return call.end(
      call.changes("UPDATE account SET ended = 0 WHERE club = $1 AND id = $2 AND ended <> 0", {club_, account}));
}

Result<bool> SqlGate::end_account(const std::string& account, Moment when) {
  Call call(*statements_, Call::Of::kMany);
  const Moment then = std::max<Moment>(when, 1);  // 0 would mean that it has not ended
  const bool ended =
      call.changes("UPDATE account SET ended = $3 WHERE club = $1 AND id = $2 AND ended = 0", {club_, account, then});
  if (ended) {
    call.changed("DELETE FROM web_session WHERE club = $1 AND account = $2", {club_, account});
    call.changed("DELETE FROM pairing WHERE club = $1 AND account = $2", {club_, account});
    call.changed("UPDATE device SET revoked = $3 WHERE club = $1 AND account = $2 AND revoked = 0",
                 {club_, account, then});
  }
  return call.end(ended);
}

}  // namespace lanework::store
