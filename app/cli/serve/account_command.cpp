#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <memory>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/serve/rooms_of_ledger.h"
#include "app/serve/now.h"
#include "app/serve/session_limits.h"
#include "app/serve/sign_in/account_words.h"
#include "app/serve/sign_in/secret.h"

namespace lanework::cli {
namespace {

struct AccountFlags {
  LedgerFlags ledger;
  std::string sign_in;
  std::string name;
  std::string role = "lead";
  std::vector<std::string> squads;
};

Result<std::unique_ptr<serve::Room>> room_of(const LedgerFlags& flags) {
  const auto open = open_ledger(flags);
  if (!open) return open.faults();
  auto room = rooms_of(flags)();
  if (!room) return room.faults();
  return std::make_unique<serve::Room>(std::move(room).value());
}

// Good once and for a day; kept as a digest only.
Result<std::string> new_link(serve::Room& room, const std::string& account) {
  const std::string secret = serve::new_secret();
  const std::int64_t now = serve::seconds_of_clock();
  store::Pairing pairing;
  pairing.account = account;
  pairing.secret = store::digest_of(serve::account_link_form(secret));
  pairing.made = now;
  pairing.until = now + serve::kAccountLinkSeconds;
  const auto opened = room.gate->open_pairing(pairing);
  if (!opened) return opened.faults();
  return secret;
}

void say_link(const std::string& secret) {
  std::printf("Good once, for a day; whoever has it chooses the password:\n  %s\n", secret.c_str());
}

int add(const AccountFlags& flags) {
  auto room = room_of(flags.ledger);
  if (!room) return report(room.faults());
  store::Account account;
  account.sign_in = serve::sign_in_form(flags.sign_in);
  account.name = flags.name.empty() ? flags.sign_in : flags.name;
  if (!serve::is_sign_in(account.sign_in)) {
    return report({{FaultCode::kSyntax,
                    {"", 0, 0, "--sign-in"},
                    quote(flags.sign_in),
                    "1 to 64 letters, digits, '.', '-', '_' or '@'",
                    {}}});
  }
  const auto& roles = ledger::role_words();
  account.role = static_cast<ledger::Role>(std::find(roles.begin(), roles.end(), flags.role) - roles.begin());
  account.made = serve::seconds_of_clock();
  const auto lists = room.value()->directory->lists();
  if (!lists) return report(lists.faults());
  for (const std::string& squad : flags.squads) {
    const auto& squads = lists.value().squads;
    if (std::none_of(squads.begin(), squads.end(), [&](const auto& one) { return one.id == squad; })) {
      return report({{FaultCode::kUnknownName,
                      {"", 0, 0, "--squad"},
                      quote(squad),
                      "a squad of the club",
                      "'lanework import' brings the club's squads in"}});
    }
    account.grants.push_back({squad, to_iso(serve::day_of(account.made)), "", false});
  }
  const auto added = room.value()->gate->add_account(account);
  if (!added) return report(added.faults());
  if (!added.value()) {
    return report(
        {{FaultCode::kDuplicate, {"", 0, 0, "--sign-in"}, quote(flags.sign_in), "a name that nobody has yet", {}}});
  }
  const auto link = new_link(*room.value(), account.id);
  if (!link) return report(link.faults());
  std::printf("%s: %s, %s\n", account.id.c_str(), account.sign_in.c_str(), flags.role.c_str());
  say_link(link.value());
  return kDone;
}

int link(const AccountFlags& flags) {
  auto room = room_of(flags.ledger);
  if (!room) return report(room.faults());
  const auto account = room.value()->gate->account_by_sign_in(serve::sign_in_form(flags.sign_in));
  if (!account) return report(account.faults());
  if (!account.value() || account.value()->ended != 0) {
    return report({{FaultCode::kUnknownName, {"", 0, 0, "--sign-in"}, quote(flags.sign_in), "somebody's name", {}}});
  }
  const auto secret = new_link(*room.value(), account.value()->id);
  if (!secret) return report(secret.faults());
  say_link(secret.value());
  return kDone;
}

int list(const AccountFlags& flags) {
  auto room = room_of(flags.ledger);
  if (!room) return report(room.faults());
  const auto accounts = room.value()->gate->accounts();
  if (!accounts) return report(accounts.faults());
  std::vector<std::vector<std::string>> rows;
  for (const store::Account& account : accounts.value()) {
    std::string squads;
    for (const store::Grant& grant : account.grants) squads += (squads.empty() ? "" : ", ") + grant.squad;
    rows.push_back({account.id, account.sign_in, serve::role_word(account.role),
                    account.ended != 0              ? "ended"
                    : account.password.empty()      ? "no password yet"
                    : account.second_secret.empty() ? "no second factor"
                                                    : "two factors",
                    squads});
  }
  std::fputs(rows.empty() ? "Nobody yet.\n" : in_columns(rows, "").c_str(), stdout);
  return kDone;
}

}  // namespace

void add_account_command(CLI::App& app, int& exit_status) {
  CLI::App* account = app.add_subcommand("account", "who may sign in to the server");
  account->require_subcommand(1);
  const auto flags = std::make_shared<AccountFlags>();
  const auto sub = [&](const char* name, const char* help, int (*work)(const AccountFlags&)) {
    CLI::App* command = account->add_subcommand(name, help);
    add_ledger_flags(*command, flags->ledger);
    command->callback([flags, work, &exit_status] { exit_status = work(*flags); });
    return command;
  };
  CLI::App* adding = sub("add", "a new account, with a link to set its password; the first is the lead's", add);
  adding->add_option("--sign-in", flags->sign_in, "what is typed to sign in")->required();
  adding->add_option("--name", flags->name, "as others see it");
  adding->add_option("--role", flags->role, "lead (if not stated), coach, recorder, board, operator")
      ->check(CLI::IsMember({"lead", "coach", "recorder", "board", "operator"}));
  adding->add_option("--squad", flags->squads,
                     "a squad that a coach or recorder is charged with, from today; again for more");
  CLI::App* linking = sub("link", "another link to set a password, for somebody who lost it", link);
  linking->add_option("--sign-in", flags->sign_in, "whose")->required();
  sub("list", "who there is", list);
}

}  // namespace lanework::cli
