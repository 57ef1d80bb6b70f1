// Who else may come in: accounts, what they are charged with, their first password.
#include <algorithm>

#include "app/serve/routes/routes.h"
#include "app/serve/session_limits.h"
#include "app/serve/sign_in/account_words.h"
#include "app/serve/sign_in/secret.h"

namespace lanework::serve {
namespace {

constexpr std::size_t kMostNameBytes = 120;
constexpr std::size_t kMostCharges = 40;

Response accounts(Call& call) {
  const auto all = call.room.gate->accounts();
  if (!all) return store_answer(all.faults());
  Node list = Node::make_array();
  for (const store::Account& account : all.value()) list.items.push_back(account_node(account));
  Node body = Node::make_table();
  body.set("accounts", std::move(list));
  return json_answer(200, body);
}

// Squads that are there, days that are days, the later not before the earlier.
std::vector<store::Grant> read_charges(TableReader& reader, const store::Lists& lists, Date today) {
  std::vector<store::Grant> out;
  std::vector<TableReader> tables = reader.tables("charges");
  if (tables.size() > kMostCharges) {
    reader.fault(FaultCode::kOutOfRange, "charges", std::to_string(tables.size()), "at most 40 charges");
  }
  for (TableReader& table : tables) {
    store::Grant grant;
    grant.squad = table.text("squad");
    const auto& squads = lists.squads;
    const bool there =
        std::any_of(squads.begin(), squads.end(), [&](const auto& one) { return one.id == grant.squad; });
    if (!there) table.fault(FaultCode::kUnknownName, "squad", quote(grant.squad), "a squad of the club");
    const auto from = table.date("from");
    const auto until = table.date("until");
    grant.from = to_iso(from.value_or(today));
    if (until) grant.until = to_iso(*until);
    grant.substitute = table.boolean_or("substitute", false);
    if (grant.substitute && !until) {
      table.fault(FaultCode::kMissing, "until", "nothing", "the last day, for a substitute");
    }
    if (until && *until < from.value_or(today)) {
      table.fault(FaultCode::kContradiction, "until", to_iso(*until), "a day not before " + grant.from);
    }
    table.finish();
    out.push_back(std::move(grant));
  }
  return out;
}

// As they were shown: compared, not kept, so a squad that is gone meanwhile may stand in them.
std::vector<store::Grant> read_shown(TableReader& reader) {
  std::vector<store::Grant> out;
  for (TableReader& table : reader.tables("before")) {
    store::Grant grant;
    grant.squad = table.text("squad");
    const auto from = table.date("from");
    const auto until = table.date("until");
    if (!from) table.fault(FaultCode::kMissing, "from", "nothing", "the first day, as it was shown");
    if (from) grant.from = to_iso(*from);
    if (until) grant.until = to_iso(*until);
    grant.substitute = table.boolean_or("substitute", false);
    table.finish();
    out.push_back(std::move(grant));
  }
  return out;
}

// Good once, and for a day; whoever has it chooses the password.
Result<std::string> open_link(Call& call, const std::string& account) {
  const std::string secret = new_secret();
  store::Pairing pairing;
  pairing.account = account;
  pairing.secret = store::digest_of(account_link_form(secret));
  pairing.made = call.now.seconds;
  pairing.until = call.now.seconds + kAccountLinkSeconds;
  const auto opened = call.room.gate->open_pairing(pairing);
  if (!opened) return opened.faults();
  return secret;
}

Response add_account(Call& call) {
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  Faults faults;
  TableReader reader = call.reader(faults);
  store::Account account;
  account.sign_in = sign_in_form(reader.text("sign_in"));
  account.name = reader.text("name");
  const std::vector<std::string_view>& roles = ledger::role_words();
  const int role = reader.word("role", roles);
  if (!account.sign_in.empty() && !is_sign_in(account.sign_in)) {
    reader.fault(FaultCode::kSyntax, "sign_in", quote(account.sign_in),
                 "1 to 64 letters, digits, '.', '-', '_' or '@'");
  }
  if (account.name.size() > kMostNameBytes) {
    reader.fault(FaultCode::kOutOfRange, "name", std::to_string(account.name.size()) + " bytes", "at most 120 bytes");
  }
  account.grants = read_charges(reader, club.value()->lists, call.now.day);
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  account.role = static_cast<ledger::Role>(role);
  account.made = call.now.seconds;
  const auto added = call.room.gate->add_account(account);
  if (!added) return store_answer(added.faults());
  if (!added.value()) return error_answer(409, "sign-in-taken", "Somebody has that name already.");
  const auto link = open_link(call, account.id);
  if (!link) return store_answer(link.faults());
  Node body = account_node(account);
  body.set("link", Node::make_text(link.value()));
  return json_answer(201, body);
}

std::optional<Response> nobody(const Result<std::optional<store::Account>>& account) {
  if (!account) return store_answer(account.faults());
  if (!account.value()) return error_answer(404, "not-found", "There is nothing here for you.");
  return {};
}

// Two leads at once: the second is told what the charges are now.
Response charged_meanwhile(Call& call, const std::string& id) {
  const auto account = call.room.gate->account(id);
  if (auto none = nobody(account)) return std::move(*none);
  Node body = Node::make_table();
  body.set("error", Node::make_text("changed-meanwhile"));
  body.set("what", Node::make_text("Somebody else has changed this meanwhile. Nothing of yours was done."));
  body.set("charges", charges_node(account.value()->grants));
  return json_answer(409, body);
}

Response charge(Call& call) {
  const auto account = call.room.gate->account(call.values[0]);
  if (auto none = nobody(account)) return std::move(*none);
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  Faults faults;
  TableReader reader = call.reader(faults);
  const auto grants = read_charges(reader, club.value()->lists, call.now.day);
  const bool shown = reader.has("before");
  const auto before = read_shown(reader);
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  const std::string& id = account.value()->id;
  const auto set = shown ? call.room.gate->change_grants(id, before, grants) : call.room.gate->set_grants(id, grants);
  if (!set) return store_answer(set.faults());
  if (shown && !set.value()) return charged_meanwhile(call, id);
  Node body = Node::make_table();
  body.set("charges", charges_node(grants));
  return json_answer(200, body);
}

Response link(Call& call) {
  const auto account = call.room.gate->account(call.values[0]);
  if (auto none = nobody(account)) return std::move(*none);
  if (account.value()->ended != 0) return error_answer(409, "account-ended", "That account was ended.");
  const auto secret = open_link(call, account.value()->id);
  if (!secret) return store_answer(secret.faults());
  Node body = Node::make_table();
  body.set("link", Node::make_text(secret.value()));
  body.set("until", Node::make_text(now_at(call.now.seconds + kAccountLinkSeconds).stamp));
  return json_answer(201, body);
}

Response end(Call& call) {
  const auto account = call.room.gate->account(call.values[0]);
  if (auto none = nobody(account)) return std::move(*none);
  if (account.value()->id == call.account->id) {
    return error_answer(409, "your-own", "Somebody else must end your account.");
  }
  const auto ended = call.room.gate->end_account(account.value()->id, call.now.seconds);
  if (!ended) return store_answer(ended.faults());
  return json_answer(200, Node::make_table());
}

// Takes back an end: the same password and second factor, and no device.
Response reopen(Call& call) {
  Faults faults;
  call.reader(faults).finish();
  if (!faults.empty()) return fault_answer(faults);
  const std::string& id = call.values[0];
  const auto opened = call.room.gate->reopen_account(id);
  if (!opened) return store_answer(opened.faults());
  const auto account = call.room.gate->account(id);
  if (auto none = nobody(account)) return std::move(*none);
  if (!opened.value()) return error_answer(409, "not-ended", "That account was not ended.");
  return json_answer(200, account_node(*account.value()));
}

}  // namespace

const std::vector<NamedWork>& account_routes() {
  static const std::vector<NamedWork> kWorks = {{"accounts", accounts},     {"add-account", add_account},
                                                {"charge-account", charge}, {"account-link", link},
                                                {"end-account", end},       {"reopen-account", reopen}};
  return kWorks;
}

}  // namespace lanework::serve
