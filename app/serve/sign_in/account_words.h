// Accounts as they are typed and as they are answered.
#pragma once

#include <string>

#include "app/store/gate.h"
#include "core/base/document.h"

namespace lanework::serve {

// As it is compared: without blanks at its ends, ASCII in lower case.
std::string sign_in_form(const std::string& typed);
// 1 to 64 bytes of letters, digits, '.', '-', '_' and '@'.
bool is_sign_in(const std::string& form);

std::string role_word(ledger::Role role);

Node account_node(const store::Account& account);  // without anything secret
Node charges_node(const std::vector<store::Grant>& grants);

// What the digest of a link is made of: so a link to pair a device sets no password, one to a calendar pairs none, and
// so on.
std::string account_link_form(const std::string& secret);
std::string device_link_form(const std::string& secret);
std::string calendar_link_form(const std::string& secret);

}  // namespace lanework::serve
