// A gate with people at it, for the tests of what they may do.
#pragma once

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>
#include <utility>

#include "tests/store/backend.h"

namespace lanework::store::test {

inline constexpr Moment kMorning = 1'795'680'000;

template <class T>
T must(Result<T> result) {
  if (!result) throw std::runtime_error(to_line(result.faults().front()));
  return std::move(result).value();
}

// Whose id the gate made.
inline std::string add(Gate& gate, const std::string& sign_in, ledger::Role role = ledger::Role::kCoach) {
  Account account;
  account.sign_in = sign_in;
  account.name = "Name of " + sign_in;
  account.role = role;
  account.made = kMorning;
  if (!must(gate.add_account(account))) throw std::runtime_error(sign_in + " is taken");
  return account.id;
}

inline Session session_of(const std::string& account, const std::string& secret, Moment made = kMorning) {
  return {digest_of(secret), account, made, made, 0, false};
}

inline Pairing link_for(const std::string& account, const std::string& secret, Moment made = kMorning) {
  Pairing out;
  out.account = account;
  out.secret = digest_of(secret);
  out.made = made;
  out.until = made + 600;
  return out;
}

// A device that was paired as people do it.
inline Device pair(Gate& gate, const std::string& account, const std::string& key, Moment when = kMorning) {
  const Pairing open = must(gate.open_pairing(link_for(account, "link for " + key, when)));
  must(gate.claim_pairing(open.secret, digest_of(key), "phone of " + account, "1234", when));
  return must(gate.confirm_pairing(open.id, "1234", when)).value();
}

// On SQLite and on PostgreSQL, as the parameter says.
class GateOn : public testing::TestWithParam<const char*> {
 protected:
  Backend backend{GetParam()};
  std::unique_ptr<Gate> gate = backend.open_gate();
};

inline std::string name_of(const testing::TestParamInfo<const char*>& one) { return one.param; }

}  // namespace lanework::store::test
