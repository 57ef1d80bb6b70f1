// Whoever has the database has no way in with it, and cannot tell about whom was read.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "tests/store/gate_people.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using test::kMorning;
using test::link_for;
using test::must;
using test::pair;
using test::said;
using test::session_of;

const std::vector<std::string> kSecrets = {"JBSWY3DPEHPK3PXP of a second factor",
                                           "a cookie that signs in",
                                           "link for a key of a phone",
                                           "a key of a phone",
                                           "a recovery code on paper",
                                           "Quentin-Q07",
                                           "the address of a calendar"};

void live(Gate& gate) {
  Account account;
  account.sign_in = "ann-signs-in";
  account.second_secret = kSecrets[0];
  must(gate.add_account(account));
  must(gate.set_second(account.id, kSecrets[0]));
  must(gate.add_session(session_of(account.id, kSecrets[1])));
  pair(gate, account.id, kSecrets[3]);
  must(gate.set_recovery(account.id, {digest_of(kSecrets[4])}));
  must(gate.note_read({0, kMorning, account.id, "", "route", "u13", kSecrets[5], 1, ""}));
  must(gate.add_calendar_link({digest_of(kSecrets[6]), "u13", kMorning, account.id, kMorning + 1, 0, 0, ""}));
  ASSERT_EQ(must(gate.account(account.id))->second_secret, kSecrets[0]);
}

std::string bytes_of_file(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

TEST(GateSecrets, DoNotLieInTheClearInASqliteFile) {
  const test::Backend backend("SQLite");
  const std::string file = backend.file().file("quillmere");
  std::string seen;
  {
    const auto gate = backend.open_gate();
    live(*gate);
    seen = bytes_of_file(file) + bytes_of_file(file + "-wal");
  }
  seen += bytes_of_file(file);
  for (const std::string& secret : kSecrets) EXPECT_EQ(seen.find(secret), std::string::npos) << secret;
  EXPECT_NE(seen.find("ann-signs-in"), std::string::npos) << "nothing was looked at";
}

TEST(GateSecrets, DoNotLieInTheClearInPostgres) {
  const test::Backend backend("PostgreSQL");
  const auto gate = backend.open_gate();
  live(*gate);
  std::string seen;
  for (const char* table :
       {"account", "recovery_code", "web_session", "pairing", "device", "calendar_link", "read_head", "read_note"}) {
    const std::string rows = said(backend, std::string("SELECT t::text FROM ") + table + " t");
    EXPECT_NE(rows.find("quillmere"), std::string::npos) << table << ": nothing was looked at";
    seen += rows;
  }
  for (const std::string& secret : kSecrets) {
    EXPECT_EQ(seen.find(secret), std::string::npos) << secret;
    EXPECT_EQ(seen.find(hexadecimal(secret)), std::string::npos) << secret;
  }
  EXPECT_NE(seen.find(hexadecimal(digest_of(kSecrets[1]))), std::string::npos) << "its digest does";
}

// A second factor of one account put in another's row is not taken for its own.
TEST(GateSecrets, ASealedSecondFactorIsItsAccountsAlone) {
  const test::Backend backend("SQLite");
  const auto gate = backend.open_gate();
  const std::string ann = test::add(*gate, "ann");
  const std::string bo = test::add(*gate, "bo");
  must(gate->set_second(ann, "secret"));
  said(backend, "UPDATE account SET sealed_second = (SELECT sealed_second FROM account WHERE sign_in = 'ann')");
  EXPECT_TRUE(gate->account(ann));
  EXPECT_FALSE(gate->account(bo));
}

// Known answers of BLAKE2b with 32 bytes, by Python's hashlib.
TEST(GateSecrets, ADigestIsBlake2b) {
  EXPECT_EQ(hexadecimal(digest_of("")), "0e5751c026e543b2e8ab2eb06099daa1d1e5df47778f7787faab45cdf12fe3a8");
  EXPECT_EQ(hexadecimal(digest_of("abc")), "bddd813c634239723171ef3fee98579b94964e3bb1cb3e427262c8c068d52319");
}

TEST(GateSecrets, IdsDoNotComeTwice) {
  std::set<std::string> seen;
  for (int i = 0; i < 10'000; ++i) seen.insert(made_id("d-"));
  EXPECT_EQ(seen.size(), 10'000U);
}

// One club's people are nobody at another's.
TEST(GateSecrets, ClubsInOneDatabaseDoNotSeeEachOther) {
  const test::Backend backend("PostgreSQL");
  const auto ours = backend.open_gate("ours");
  const auto theirs = backend.open_gate("theirs");
  const std::string ann = test::add(*ours, "ann");
  const Device phone = pair(*ours, ann, "key");
  const Pairing open = must(ours->open_pairing(link_for(ann, "link")));
  must(ours->add_session(session_of(ann, "cookie")));
  must(ours->note_read({0, kMorning, ann, "", "route", "", "Q07", 1, ""}));
  must(ours->note_failure("address", kMorning));
  must(ours->add_calendar_link({digest_of("calendar"), "u13", kMorning, ann, kMorning + 1, 0, 0, ""}));
  EXPECT_FALSE(must(theirs->calendar_link(digest_of("calendar"))));
  EXPECT_TRUE(must(theirs->calendar_links()).empty());
  EXPECT_FALSE(must(theirs->account(ann)));
  EXPECT_FALSE(must(theirs->account_by_sign_in("ann")));
  EXPECT_FALSE(must(theirs->session(digest_of("cookie"))));
  EXPECT_FALSE(must(theirs->device_by_secret(phone.secret)));
  EXPECT_FALSE(must(theirs->end_account(ann, kMorning)));
  EXPECT_FALSE(must(theirs->revoke_device(phone.id, kMorning)));
  EXPECT_EQ(must(theirs->claim_pairing(open.secret, digest_of("k"), "", "1", kMorning)), Claim::kUnknown);
  EXPECT_TRUE(must(theirs->accounts()).empty());
  EXPECT_TRUE(must(theirs->reads("Q07", 9)).empty());
  EXPECT_EQ(must(theirs->attempts("address")).failures, 0);
  EXPECT_EQ(must(theirs->forget_before(kMorning * 2, kMorning * 2, kMorning * 2)), 0);
  EXPECT_EQ(must(theirs->audit_reads()).notes, 0);
  EXPECT_NE(test::add(*theirs, "ann"), ann);
  EXPECT_TRUE(must(ours->session(digest_of("cookie"))));
}

}  // namespace
}  // namespace lanework::store
