#include "app/serve/sign_in/account_words.h"

#include <algorithm>

namespace lanework::serve {

std::string sign_in_form(const std::string& typed) {
  const std::size_t from = typed.find_first_not_of(' ');
  if (from == std::string::npos) return {};
  std::string out = typed.substr(from, typed.find_last_not_of(' ') - from + 1);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return out;
}

bool is_sign_in(const std::string& form) {
  constexpr std::size_t kMost = 64;
  return !form.empty() && form.size() <= kMost && std::all_of(form.begin(), form.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '.' || c == '-' || c == '_' || c == '@';
  });
}

std::string role_word(ledger::Role role) { return std::string(ledger::role_words()[static_cast<std::size_t>(role)]); }

Node charges_node(const std::vector<store::Grant>& grants) {
  Node out = Node::make_array();
  for (const store::Grant& grant : grants) {
    Node row = Node::make_table();
    row.set("squad", Node::make_text(grant.squad));
    row.set("from", Node::make_text(grant.from));
    if (!grant.until.empty()) row.set("until", Node::make_text(grant.until));
    if (grant.substitute) row.set("substitute", Node::make_boolean(true));
    out.items.push_back(std::move(row));
  }
  return out;
}

Node account_node(const store::Account& account) {
  Node out = Node::make_table();
  out.set("account", Node::make_text(account.id));
  out.set("sign_in", Node::make_text(account.sign_in));
  out.set("name", Node::make_text(account.name));
  out.set("role", Node::make_text(role_word(account.role)));
  out.set("ended", Node::make_boolean(account.ended != 0));
  out.set("has_password", Node::make_boolean(!account.password.empty()));
  out.set("has_second_factor", Node::make_boolean(!account.second_secret.empty()));
  out.set("charges", charges_node(account.grants));
  return out;
}

std::string account_link_form(const std::string& secret) { return "password/" + secret; }
std::string device_link_form(const std::string& secret) { return "device/" + secret; }
std::string calendar_link_form(const std::string& secret) { return "calendar/" + secret; }

}  // namespace lanework::serve
