// What every gate keeps, whatever lies behind it: accounts, sessions, pairings, devices, failures; one suite, run on
// each.
#include <gtest/gtest.h>

#include "tests/store/gate_people.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using ledger::Role;
using test::add;
using test::kMorning;
using test::link_for;
using test::must;
using test::pair;
using test::session_of;

using Gates = test::GateOn;
INSTANTIATE_TEST_SUITE_P(Stores, Gates, testing::Values("SQLite", "PostgreSQL"), test::name_of);

// The letter, a dash, and 16 hexadecimal digits.
bool is_id(char letter, const std::string& id) {
  return id.size() == 18 && id[0] == letter && id[1] == '-' &&
         id.find_first_not_of("0123456789abcdef", 2) == std::string::npos;
}

TEST_P(Gates, AnAccountIsHandedOutAsItWasGiven) {
  Account ann;
  ann.sign_in = "ann O'Neil'); DROP TABLE account;--";
  ann.name = "Ann \xE2\x80\xAE <b>";
  ann.role = Role::kLead;
  ann.password = "$argon2id$v=19$m=19456,t=2,p=1$c2FsdA$aGFzaA";
  ann.second_secret = std::string("\0\xFFtwenty bytes of it", 19);
  ann.second_used = 7;
  ann.made = kMorning;
  ann.grants = {{"u13", "2026-08-01", "2027-06-30", false}, {"u11", "2026-11-26", "2026-11-26", true}};
  ASSERT_TRUE(must(gate->add_account(ann)));
  EXPECT_TRUE(is_id('a', ann.id)) << ann.id;
  const auto again = backend.open_gate();
  for (const auto& there : {must(again->account(ann.id)), must(again->account_by_sign_in(ann.sign_in))}) {
    ASSERT_TRUE(there);
    EXPECT_EQ(there->id, ann.id);
    EXPECT_EQ(there->sign_in, ann.sign_in);
    EXPECT_EQ(there->name, ann.name);
    EXPECT_EQ(there->role, Role::kLead);
    EXPECT_EQ(there->password, ann.password);
    EXPECT_EQ(there->second_secret, ann.second_secret);
    EXPECT_EQ(there->second_used, 7);
    EXPECT_EQ(there->made, kMorning);
    EXPECT_EQ(there->ended, 0);
    EXPECT_EQ(there->grants, ann.grants);
  }
}

TEST_P(Gates, ASignInIsOneAccountsAlsoAfterItsEnd) {
  const std::string ann = add(*gate, "ann");
  Account other;
  other.sign_in = "ann";
  other.id = "as it was";
  EXPECT_FALSE(must(gate->add_account(other)));
  EXPECT_EQ(other.id, "as it was");
  EXPECT_TRUE(must(gate->end_account(ann, kMorning)));
  EXPECT_FALSE(must(gate->add_account(other)));
  other.sign_in = "Ann";
  EXPECT_TRUE(must(gate->add_account(other))) << "what is typed is compared as it is";
}

TEST_P(Gates, AccountsComeBySignInByTheirBytes) {
  for (const char* sign_in : {"b", "\xC3\xA4", "Z", "a"}) add(*gate, sign_in);
  must(gate->end_account(must(gate->account_by_sign_in("b"))->id, kMorning));
  std::vector<std::string> seen;
  for (const Account& account : must(gate->accounts())) seen.push_back(account.sign_in);
  EXPECT_EQ(seen, (std::vector<std::string>{"Z", "a", "b", "\xC3\xA4"}));
}

TEST_P(Gates, NobodyIsNobody) {
  EXPECT_FALSE(must(gate->account("a-0000000000000000")));
  EXPECT_FALSE(must(gate->account_by_sign_in("ann")));
  EXPECT_FALSE(must(gate->session(digest_of("x"))));
  EXPECT_FALSE(must(gate->device_by_secret(digest_of("x"))));
  EXPECT_FALSE(must(gate->pairing_by_device(digest_of("x"))));
  EXPECT_FALSE(must(gate->touch_session(digest_of("x"), kMorning)));
  EXPECT_FALSE(must(gate->step_up(digest_of("x"), kMorning)));
  EXPECT_FALSE(must(gate->end_session(digest_of("x"))));
  EXPECT_FALSE(must(gate->revoke_device("d-0000000000000000", kMorning)));
  EXPECT_FALSE(must(gate->device_seen("d-0000000000000000", kMorning, 1)));
  EXPECT_FALSE(must(gate->confirm_pairing("p-0000000000000000", "1234", kMorning)));
  EXPECT_TRUE(must(gate->accounts()).empty());
  EXPECT_TRUE(must(gate->devices()).empty());
}

// What changes an account, each as a call; none of them changes one that is not there or that ended.
using Change = std::function<bool(Gate&, const std::string& account)>;
const std::vector<std::pair<std::string, Change>>& changes() {
  static const std::vector<std::pair<std::string, Change>> kChanges = {
      {"set_password", [](Gate& g, const std::string& a) { return must(g.set_password(a, "hash")); }},
      {"set_second", [](Gate& g, const std::string& a) { return must(g.set_second(a, "secret")); }},
      {"use_second", [](Gate& g, const std::string& a) { return must(g.use_second(a, 5)); }},
      {"set_recovery", [](Gate& g, const std::string& a) { return must(g.set_recovery(a, {digest_of("r")})); }},
      {"use_recovery", [](Gate& g, const std::string& a) { return must(g.use_recovery(a, digest_of("r"), 1)); }},
      {"set_role", [](Gate& g, const std::string& a) { return must(g.set_role(a, Role::kBoard)); }},
      {"set_grants",
       [](Gate& g, const std::string& a) {
         return must(g.set_grants(a, {{"u9", "2026-01-01", "", false}}));
       }},
      {"add_session", [](Gate& g, const std::string& a) { return must(g.add_session(session_of(a, "new " + a))); }},
      {"open_pairing", [](Gate& g, const std::string& a) { return g.open_pairing(link_for(a, "link " + a)).ok(); }},
      {"note_read",
       [](Gate& g, const std::string& a) {
         return must(g.note_read({0, kMorning, a, "", "squad", "", "", 3, ""}));
       }},
      {"end_account", [](Gate& g, const std::string& a) { return must(g.end_account(a, kMorning)); }},
  };
  return kChanges;
}

TEST_P(Gates, EveryChangeIsRefusedForNobodyAndAfterTheEnd) {
  const std::string ann = add(*gate, "ann");
  for (const auto& [name, change] : changes()) {
    EXPECT_FALSE(change(*gate, "a-0000000000000000")) << name;
    EXPECT_TRUE(change(*gate, ann)) << name;
  }
  const Account ended = must(gate->account(ann)).value();
  EXPECT_EQ(ended.ended, kMorning);
  for (const auto& [name, change] : changes()) {
    EXPECT_EQ(change(*gate, ann), name == "note_read") << name;
  }
  const Account still = must(gate->account(ann)).value();
  EXPECT_EQ(still.password, "hash");
  EXPECT_EQ(still.second_secret, "secret");
  EXPECT_EQ(still.second_used, 5);
  EXPECT_EQ(still.role, Role::kBoard);
  EXPECT_EQ(still.grants, ended.grants);
  EXPECT_EQ(still.ended, kMorning);
}

TEST_P(Gates, AStepIsTakenOnceAndNoneBeforeIt) {
  const std::string ann = add(*gate, "ann");
  EXPECT_FALSE(must(gate->use_second(ann, 100))) << "there is no second factor yet";
  must(gate->set_second(ann, "secret"));
  EXPECT_TRUE(must(gate->use_second(ann, 100)));
  EXPECT_FALSE(must(gate->use_second(ann, 100)));
  EXPECT_FALSE(must(gate->use_second(ann, 99)));
  EXPECT_TRUE(must(gate->use_second(ann, 101)));
  must(gate->set_second(ann, "another"));
  EXPECT_FALSE(must(gate->use_second(ann, 101)));
  EXPECT_EQ(must(gate->account(ann))->second_secret, "another");
  must(gate->set_second(ann, ""));
  EXPECT_EQ(must(gate->account(ann))->second_secret, "");
  EXPECT_FALSE(must(gate->use_second(ann, 102)));
}

TEST_P(Gates, ARecoveryCodeWorksOnceAndNotForAnother) {
  const std::string ann = add(*gate, "ann");
  const std::string bo = add(*gate, "bo");
  must(gate->set_recovery(ann, {digest_of("one"), digest_of("two"), digest_of("two")}));
  EXPECT_FALSE(must(gate->use_recovery(bo, digest_of("one"), kMorning)));
  EXPECT_TRUE(must(gate->use_recovery(ann, digest_of("one"), 0)));
  EXPECT_FALSE(must(gate->use_recovery(ann, digest_of("one"), kMorning)));
  EXPECT_FALSE(must(gate->use_recovery(ann, digest_of("three"), kMorning)));
  must(gate->set_recovery(ann, {digest_of("three")}));
  EXPECT_FALSE(must(gate->use_recovery(ann, digest_of("two"), kMorning)));
  EXPECT_TRUE(must(gate->use_recovery(ann, digest_of("three"), kMorning)));
}

TEST_P(Gates, GrantsTakeThePlaceOfThoseBefore) {
  const std::string ann = add(*gate, "ann");
  must(gate->set_grants(ann, {{"u13", "2026-08-01", "", false}, {"u11", "2026-08-01", "2026-12-31", true}}));
  const std::vector<Grant> grants = {{"u9", "2026-11-26", "2026-11-26", true}};
  EXPECT_TRUE(must(gate->set_grants(ann, grants)));
  EXPECT_EQ(must(gate->account(ann))->grants, grants);
  EXPECT_FALSE(gate->set_grants(ann, {{"u13", "tomorrow", "", false}})) << "no day";
  EXPECT_EQ(must(gate->account(ann))->grants, grants) << "all of it, or nothing";
  must(gate->set_grants(ann, {}));
  EXPECT_TRUE(must(gate->account(ann))->grants.empty());
}

TEST_P(Gates, GrantsChangeOnlyWhereTheyAreAsTheyWereShown) {
  const std::string ann = add(*gate, "ann");
  const std::vector<Grant> first = {{"u13", "2026-08-01", "", false}, {"u11", "2026-08-01", "2026-12-31", true}};
  const std::vector<Grant> second = {{"u9", "2026-11-26", "2026-11-26", true}};
  EXPECT_FALSE(must(gate->change_grants(ann, first, second))) << "there are none";
  EXPECT_TRUE(must(gate->change_grants(ann, {}, first)));
  EXPECT_TRUE(must(gate->change_grants(ann, first, second)));
  EXPECT_FALSE(must(gate->change_grants(ann, first, {}))) << "somebody was here before";
  EXPECT_EQ(must(gate->account(ann))->grants, second);
  must(gate->end_account(ann, kMorning));
  EXPECT_FALSE(must(gate->change_grants(ann, second, {})));
}

// By the password and the second factor from before; nothing that came in by itself comes back.
TEST_P(Gates, WhoWasEndedByMistakeComesInAgain) {
  const std::string ann = add(*gate, "ann");
  must(gate->set_password(ann, "hash"));
  must(gate->set_second(ann, "secret"));
  must(gate->set_grants(ann, {{"u13", "2026-08-01", "", false}}));
  must(gate->add_session(session_of(ann, "a session")));
  must(gate->open_pairing(link_for(ann, "a link")));
  EXPECT_FALSE(must(gate->reopen_account(ann))) << "not ended";
  EXPECT_FALSE(must(gate->reopen_account("a-0000000000000000")));
  Account before = must(gate->account(ann)).value();
  must(gate->end_account(ann, kMorning));
  EXPECT_TRUE(must(gate->reopen_account(ann)));
  EXPECT_FALSE(must(gate->reopen_account(ann)));
  const Account after = must(gate->account(ann)).value();
  EXPECT_EQ(after.ended, 0);
  EXPECT_EQ(after.password, before.password);
  EXPECT_EQ(after.second_secret, before.second_secret);
  EXPECT_EQ(after.grants, before.grants);
  EXPECT_FALSE(must(gate->session(digest_of("a session"))));
  EXPECT_TRUE(must(gate->pairings_of(ann)).empty());
  EXPECT_TRUE(must(gate->add_session(session_of(ann, "another"))));
}

TEST_P(Gates, ASessionIsFoundByItsSecretUntilItEnds) {
  const std::string ann = add(*gate, "ann");
  ASSERT_TRUE(must(gate->add_session(session_of(ann, "cookie"))));
  EXPECT_FALSE(must(gate->add_session(session_of(ann, "cookie")))) << "there already";
  EXPECT_TRUE(must(gate->touch_session(digest_of("cookie"), kMorning + 60)));
  EXPECT_TRUE(must(gate->touch_session(digest_of("cookie"), kMorning + 30)));
  EXPECT_TRUE(must(gate->step_up(digest_of("cookie"), kMorning + 45)));
  const auto again = backend.open_gate();
  const Session there = must(again->session(digest_of("cookie"))).value();
  EXPECT_EQ(there.account, ann);
  EXPECT_EQ(there.secret, digest_of("cookie"));
  EXPECT_EQ(there.made, kMorning);
  EXPECT_EQ(there.seen, kMorning + 60) << "an earlier moment changes nothing";
  EXPECT_EQ(there.stepped_up, kMorning + 45);
  EXPECT_TRUE(there.second_shown);
  EXPECT_TRUE(must(gate->end_session(digest_of("cookie"))));
  EXPECT_FALSE(must(gate->session(digest_of("cookie"))));
  EXPECT_FALSE(must(gate->end_session(digest_of("cookie"))));
}

TEST_P(Gates, OtherSessionsOfAnAccountEndAtOnce) {
  const std::string ann = add(*gate, "ann");
  const std::string bo = add(*gate, "bo");
  for (int i = 0; i < 4; ++i) must(gate->add_session(session_of(ann, "ann " + std::to_string(i), kMorning - i)));
  must(gate->add_session(session_of(bo, "bo")));
  const auto sessions = must(gate->sessions_of(ann));
  ASSERT_EQ(sessions.size(), 4U);
  EXPECT_EQ(sessions.front().secret, digest_of("ann 3")) << "by made";
  EXPECT_EQ(must(gate->end_sessions_of(ann, digest_of("ann 2"))), 3);
  EXPECT_TRUE(must(gate->session(digest_of("ann 2"))));
  EXPECT_EQ(must(gate->end_sessions_of(ann, "")), 1);
  EXPECT_TRUE(must(gate->session(digest_of("bo"))));
}

TEST_P(Gates, TheEndOfAnAccountIsThatOfItsSessionsDevicesAndPairings) {
  const std::string ann = add(*gate, "ann");
  const std::string bo = add(*gate, "bo");
  const Device phone = pair(*gate, ann, "ann's key");
  const Device lost = pair(*gate, ann, "lost key");
  must(gate->revoke_device(lost.id, kMorning + 1));
  const Device other = pair(*gate, bo, "bo's key");
  must(gate->add_session(session_of(ann, "cookie")));
  must(gate->add_session(session_of(bo, "bo")));
  const Pairing open = must(gate->open_pairing(link_for(ann, "a further link")));
  EXPECT_TRUE(must(gate->end_account(ann, kMorning + 9)));
  EXPECT_FALSE(must(gate->end_account(ann, kMorning + 10)));
  EXPECT_EQ(must(gate->account(ann))->ended, kMorning + 9);
  EXPECT_FALSE(must(gate->session(digest_of("cookie"))));
  EXPECT_TRUE(must(gate->sessions_of(ann)).empty());
  EXPECT_EQ(must(gate->device_by_secret(phone.secret))->revoked, kMorning + 9);
  EXPECT_EQ(must(gate->device_by_secret(lost.secret))->revoked, kMorning + 1);
  EXPECT_EQ(must(gate->claim_pairing(open.secret, digest_of("new"), "", "1", kMorning)), Claim::kUnknown);
  EXPECT_TRUE(must(gate->session(digest_of("bo"))));
  EXPECT_EQ(must(gate->device_by_secret(other.secret))->revoked, 0);
}

TEST_P(Gates, ALinkBecomesADeviceOnceTheCodeWasCompared) {
  const std::string ann = add(*gate, "ann");
  const Pairing open = must(gate->open_pairing(link_for(ann, "link")));
  EXPECT_TRUE(is_id('p', open.id)) << open.id;
  EXPECT_FALSE(must(gate->confirm_pairing(open.id, "", kMorning))) << "not claimed yet";
  EXPECT_EQ(must(gate->claim_pairing(open.secret, digest_of("key"), "Ann's phone", "4711", open.until)),
            Claim::kClaimed);
  const Pairing claimed = must(gate->pairing_by_device(digest_of("key"))).value();
  EXPECT_EQ(claimed.id, open.id);
  EXPECT_EQ(claimed.account, ann);
  EXPECT_EQ(claimed.secret, open.secret);
  EXPECT_EQ(claimed.label, "Ann's phone");
  EXPECT_EQ(claimed.code, "4711");
  EXPECT_EQ(claimed.made, kMorning);
  EXPECT_EQ(claimed.until, kMorning + 600);
  EXPECT_EQ(claimed.state, PairingState::kClaimed);
  EXPECT_FALSE(must(gate->device_by_secret(digest_of("key")))) << "nobody has confirmed it";
  EXPECT_FALSE(must(gate->confirm_pairing(open.id, "4712", kMorning))) << "another code";
  const auto device = must(gate->confirm_pairing(open.id, "4711", kMorning + 5));
  ASSERT_TRUE(device);
  EXPECT_TRUE(is_id('d', device->id)) << device->id;
  EXPECT_FALSE(must(gate->confirm_pairing(open.id, "4711", kMorning + 5))) << "once";
  const auto again = backend.open_gate();
  const Device there = must(again->device_by_secret(digest_of("key"))).value();
  EXPECT_EQ(there.id, device->id);
  EXPECT_EQ(there.account, ann);
  EXPECT_EQ(there.label, "Ann's phone");
  EXPECT_EQ(there.paired, kMorning + 5);
  EXPECT_EQ(there.revoked, 0);
  EXPECT_EQ(must(again->pairings_of(ann)).front().state, PairingState::kConfirmed);
}

TEST_P(Gates, ACodeOfOnePairingIsNoneOfAnother) {
  const std::string ann = add(*gate, "ann");
  const Pairing one = must(gate->open_pairing(link_for(ann, "one")));
  const Pairing two = must(gate->open_pairing(link_for(ann, "two", kMorning + 1)));
  must(gate->claim_pairing(one.secret, digest_of("key one"), "", "1111", kMorning));
  must(gate->claim_pairing(two.secret, digest_of("key two"), "", "2222", kMorning));
  EXPECT_FALSE(must(gate->confirm_pairing(two.id, "1111", kMorning)));
  EXPECT_EQ(must(gate->pairings_of(ann)).front().id, two.id) << "the latest first";
  EXPECT_EQ(must(gate->pairings_of(ann)).size(), 2U);
}

TEST_P(Gates, AfterASecondClaimNobodyGetsInByTheLink) {
  const std::string ann = add(*gate, "ann");
  const Pairing open = must(gate->open_pairing(link_for(ann, "link")));
  EXPECT_EQ(must(gate->claim_pairing(open.secret, digest_of("first"), "", "1111", kMorning)), Claim::kClaimed);
  EXPECT_EQ(must(gate->claim_pairing(open.secret, digest_of("second"), "", "2222", kMorning)), Claim::kTwice);
  EXPECT_EQ(must(gate->claim_pairing(open.secret, digest_of("third"), "", "3333", kMorning)), Claim::kTwice);
  EXPECT_EQ(must(gate->pairings_of(ann)).front().state, PairingState::kSuspended);
  for (const char* code : {"1111", "2222", "3333", ""})
    EXPECT_FALSE(must(gate->confirm_pairing(open.id, code, kMorning)));
  EXPECT_TRUE(must(gate->devices()).empty());
}

TEST_P(Gates, AClaimAfterTheConfirmationIsToldAndTheDeviceStays) {
  const std::string ann = add(*gate, "ann");
  const Device phone = pair(*gate, ann, "key");
  EXPECT_EQ(must(gate->claim_pairing(digest_of("link for key"), digest_of("late"), "", "9", kMorning)), Claim::kTwice);
  EXPECT_EQ(must(gate->pairings_of(ann)).front().state, PairingState::kConfirmed);
  EXPECT_EQ(must(gate->device_by_secret(phone.secret))->revoked, 0);
  EXPECT_FALSE(must(gate->device_by_secret(digest_of("late"))));
}

TEST_P(Gates, ALinkEndsAtItsTime) {
  const std::string ann = add(*gate, "ann");
  const Pairing open = must(gate->open_pairing(link_for(ann, "link")));
  EXPECT_EQ(must(gate->claim_pairing(open.secret, digest_of("k"), "", "1", open.until + 1)), Claim::kUnknown);
  EXPECT_EQ(must(gate->claim_pairing(digest_of("no such"), digest_of("k"), "", "1", kMorning)), Claim::kUnknown);
  EXPECT_EQ(must(gate->claim_pairing(open.secret, digest_of("k"), "", "1", open.until)), Claim::kClaimed);
  EXPECT_EQ(must(gate->claim_pairing(open.secret, digest_of("l"), "", "1", open.until + 1)), Claim::kUnknown);
  EXPECT_FALSE(must(gate->confirm_pairing(open.id, "1", open.until + 1)));
  EXPECT_TRUE(must(gate->confirm_pairing(open.id, "1", open.until)));
  EXPECT_EQ(must(gate->claim_pairing(open.secret, digest_of("l"), "", "1", open.until)), Claim::kTwice);
}

TEST_P(Gates, ADevicesKeyIsNotClaimedWithAgain) {
  const std::string ann = add(*gate, "ann");
  pair(*gate, ann, "key");
  const Pairing next = must(gate->open_pairing(link_for(ann, "next")));
  EXPECT_EQ(must(gate->claim_pairing(next.secret, digest_of("key"), "", "1", kMorning)), Claim::kUnknown);
  EXPECT_EQ(must(gate->claim_pairing(next.secret, digest_of("other"), "", "1", kMorning)), Claim::kClaimed);
}

TEST_P(Gates, ADeviceIsSeenForwardsUntilItIsRevoked) {
  const std::string ann = add(*gate, "ann");
  const Device phone = pair(*gate, ann, "key");
  const Device tablet = pair(*gate, ann, "tablet", kMorning - 1);
  EXPECT_TRUE(must(gate->device_seen(phone.id, kMorning + 60, 12)));
  EXPECT_TRUE(must(gate->device_seen(phone.id, kMorning + 30, 11)));
  Device there = must(gate->device_by_secret(phone.secret)).value();
  EXPECT_EQ(there.seen, kMorning + 60);
  EXPECT_EQ(there.sequence, 12);
  EXPECT_TRUE(must(gate->revoke_device(phone.id, kMorning + 90)));
  EXPECT_FALSE(must(gate->revoke_device(phone.id, kMorning + 99)));
  EXPECT_FALSE(must(gate->device_seen(phone.id, kMorning + 95, 13)));
  there = must(gate->device_by_secret(phone.secret)).value();
  EXPECT_EQ(there.revoked, kMorning + 90);
  EXPECT_EQ(there.sequence, 12);
  const auto devices = must(gate->devices());
  ASSERT_EQ(devices.size(), 2U);
  EXPECT_EQ(devices.front().id, tablet.id) << "by paired";
}

TEST_P(Gates, FailuresAreCountedByNameUntilForgotten) {
  EXPECT_EQ(must(gate->attempts("address/10.0.0.1")).failures, 0);
  EXPECT_EQ(must(gate->note_failure("address/10.0.0.1", kMorning)).failures, 1);
  const Attempts second = must(gate->note_failure("address/10.0.0.1", kMorning + 3));
  EXPECT_EQ(second.failures, 2);
  EXPECT_EQ(second.last, kMorning + 3);
  EXPECT_EQ(must(gate->note_failure("account/ann", kMorning)).failures, 1);
  EXPECT_EQ(must(backend.open_gate()->attempts("address/10.0.0.1")).failures, 2);
  EXPECT_TRUE(must(gate->forget_failures("address/10.0.0.1")));
  EXPECT_FALSE(must(gate->forget_failures("address/10.0.0.1")));
  EXPECT_EQ(must(gate->attempts("address/10.0.0.1")).failures, 0);
  EXPECT_EQ(must(gate->attempts("account/ann")).failures, 1);
}

TEST_P(Gates, WhatIsPastItsTimeIsForgotten) {
  const std::string ann = add(*gate, "ann");
  Session old = session_of(ann, "old", 100);
  old.seen = 900;
  Session idle = session_of(ann, "idle", 500);
  Session fresh = session_of(ann, "fresh", 500);
  fresh.seen = 800;
  for (const Session& session : {old, idle, fresh}) must(gate->add_session(session));
  must(gate->open_pairing(link_for(ann, "old link", 0)));
  must(gate->open_pairing(link_for(ann, "new link", 1)));
  must(gate->note_failure("old", 599));
  must(gate->note_failure("new", 601));
  EXPECT_EQ(must(gate->forget_before(200, 600, 601)), 4);
  EXPECT_EQ(must(gate->forget_before(200, 600, 601)), 0);
  EXPECT_FALSE(must(gate->session(old.secret)));
  EXPECT_FALSE(must(gate->session(idle.secret)));
  EXPECT_TRUE(must(gate->session(fresh.secret)));
  ASSERT_EQ(must(gate->pairings_of(ann)).size(), 1U);
  EXPECT_EQ(must(gate->pairings_of(ann)).front().secret, digest_of("new link"));
  EXPECT_EQ(must(gate->attempts("old")).failures, 0);
  EXPECT_EQ(must(gate->attempts("new")).failures, 1);
}

TEST_P(Gates, AnotherKeyIsAFaultAndNotAnAccountWithoutASecondFactor) {
  const std::string ann = add(*gate, "ann");
  must(gate->set_second(ann, "secret"));
  // Where nothing says yet which key it is, as in a store of an older version (else it would not open, key_check_test).
  if (backend.where().empty()) {
    EXPECT_EQ(test::Raw(backend.file().file("quillmere")).run("DELETE FROM key_check"), "");
  } else {
    test::said(backend.where(), "DELETE FROM key_check");
  }
  auto other = backend.where().empty() ? open_sqlite_gate(backend.file().file("quillmere"), Key::made())
                                       : open_postgres_gate(backend.where(), "quillmere", Key::made());
  ASSERT_TRUE(other);
  EXPECT_FALSE(other.value()->account(ann));
  EXPECT_FALSE(other.value()->account_by_sign_in("ann"));
  EXPECT_FALSE(other.value()->accounts());
}

TEST_P(Gates, WhatIsNoDigestAndATextWithAZeroByteAreFaults) {
  const std::string ann = add(*gate, "ann");
  Session session = session_of(ann, "cookie");
  session.secret = "the cookie itself";
  EXPECT_FALSE(gate->add_session(session));
  EXPECT_FALSE(gate->set_recovery(ann, {"the code itself"}));
  EXPECT_FALSE(gate->open_pairing({"", ann, "the link itself", "", "", "", 0, 9, PairingState::kOpen}));
  EXPECT_FALSE(gate->account_by_sign_in(std::string("ann\0bo", 6)));
  EXPECT_TRUE(must(gate->account_by_sign_in("ann"))) << "and the gate goes on";
}

}  // namespace
}  // namespace lanework::store
