// Many at the gate at once, each with a connection of its own: what works once works once.
#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <functional>
#include <latch>
#include <mutex>
#include <set>
#include <thread>

#include "tests/store/gate_people.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using test::add;
using test::kMorning;
using test::link_for;
using test::must;
using test::said;
using test::session_of;

class AtOnce : public test::GateOn {
 protected:
  std::string ann = add(*gate, "ann");

  // Each with a gate of its own; all begin when the last has opened it. How many said yes; a fault is a failure.
  int together(int people, const std::function<bool(Gate&, int)>& act) {
    std::latch ready(people);
    std::atomic<int> yes = 0;
    std::vector<std::thread> threads;
    std::mutex faults_guard;
    std::string faults;
    for (int i = 0; i < people; ++i) {
      threads.emplace_back([&, i] {
        std::unique_ptr<Gate> own;
        const auto guarded = [&](const auto& work) {
          try {
            work();
          } catch (const std::exception& error) {
            const std::lock_guard<std::mutex> lock(faults_guard);
            faults += std::string(error.what()) + "\n";
          }
        };
        guarded([&] { own = backend.open_gate(); });
        ready.arrive_and_wait();
        if (own) {
          guarded([&] {
            if (act(*own, i)) ++yes;
          });
        }
      });
    }
    for (std::thread& thread : threads) thread.join();
    EXPECT_EQ(faults, "");
    return yes;
  }
};
INSTANTIATE_TEST_SUITE_P(Stores, AtOnce, testing::Values("SQLite", "PostgreSQL"), test::name_of);

TEST_P(AtOnce, OneOfFiftyClaimsALinkAndThenNobodyGetsInByIt) {
  const Pairing open = must(gate->open_pairing(link_for(ann, "link")));
  std::atomic<int> twice = 0;
  const int claimed = together(50, [&](Gate& own, int i) {
    const Claim claim =
        must(own.claim_pairing(open.secret, digest_of("key " + std::to_string(i)), "phone", "1", kMorning));
    if (claim == Claim::kTwice) ++twice;
    return claim == Claim::kClaimed;
  });
  EXPECT_EQ(claimed, 1);
  EXPECT_EQ(twice, 49);
  EXPECT_EQ(must(gate->pairings_of(ann)).front().state, PairingState::kSuspended);
  EXPECT_FALSE(must(gate->confirm_pairing(open.id, "1", kMorning)));
  EXPECT_TRUE(must(gate->devices()).empty());
}

TEST_P(AtOnce, OfTwentyLinksOfASquadThatAreMadeAtOnceOneIsOpen) {
  const int made = together(20, [&](Gate& own, int i) {
    return must(own.add_calendar_link(
        {digest_of("link " + std::to_string(i)), "u13", kMorning, ann, kMorning + 600, 0, 0, ""}));
  });
  EXPECT_EQ(made, 20);
  const auto links = must(gate->calendar_links());
  EXPECT_EQ(links.size(), 20U);
  EXPECT_EQ(std::count_if(links.begin(), links.end(), [](const CalendarLink& one) { return one.ended == 0; }), 1);
  EXPECT_EQ(together(20, [&](Gate& own, int) { return must(own.end_calendar_link("u13", ann, kMorning)); }), 1);
}

TEST_P(AtOnce, AStepIsTakenByOneOfTwenty) {
  must(gate->set_second(ann, "secret"));
  EXPECT_EQ(together(20, [&](Gate& own, int) { return must(own.use_second(ann, 100)); }), 1);
  together(20, [&](Gate& own, int i) { return must(own.use_second(ann, 101 + i)); });
  EXPECT_EQ(must(gate->account(ann))->second_used, 120) << "the highest was taken, whatever came before it";
}

TEST_P(AtOnce, ARecoveryCodeIsUsedByOneOfTwenty) {
  must(gate->set_recovery(ann, {digest_of("code"), digest_of("other")}));
  EXPECT_EQ(together(20, [&](Gate& own, int) { return must(own.use_recovery(ann, digest_of("code"), kMorning)); }), 1);
  EXPECT_TRUE(must(gate->use_recovery(ann, digest_of("other"), kMorning)));
}

TEST_P(AtOnce, APairingIsConfirmedByOneOfTwenty) {
  const Pairing open = must(gate->open_pairing(link_for(ann, "link")));
  must(gate->claim_pairing(open.secret, digest_of("key"), "", "1", kMorning));
  EXPECT_EQ(together(20, [&](Gate& own, int) { return must(own.confirm_pairing(open.id, "1", kMorning)).has_value(); }),
            1);
  EXPECT_EQ(must(gate->devices()).size(), 1U);
}

// Whichever is first: a device that the code was compared for, or a link that nobody gets in by.
TEST_P(AtOnce, AConfirmationAndASecondClaimDoNotBothWin) {
  for (int round = 0; round < 10; ++round) {
    const std::string name = std::to_string(round);
    const Pairing open = must(gate->open_pairing(link_for(ann, "link " + name, kMorning + round)));
    must(gate->claim_pairing(open.secret, digest_of("key " + name), "", "1", kMorning));
    std::atomic<int> confirmed = 0;
    together(2, [&](Gate& own, int i) {
      if (i == 0)
        return must(own.claim_pairing(open.secret, digest_of("late " + name), "", "2", kMorning)) == Claim::kTwice;
      if (must(own.confirm_pairing(open.id, "1", kMorning))) ++confirmed;
      return true;
    });
    const PairingState state = must(gate->pairings_of(ann)).front().state;
    EXPECT_EQ(state, confirmed == 1 ? PairingState::kConfirmed : PairingState::kSuspended);
    EXPECT_EQ(must(gate->device_by_secret(digest_of("key " + name))).has_value(), confirmed == 1);
    EXPECT_FALSE(must(gate->device_by_secret(digest_of("late " + name))));
  }
}

TEST_P(AtOnce, EveryFailureIsCounted) {
  std::mutex guard;
  std::multiset<std::int64_t> seen;
  together(20, [&](Gate& own, int) {
    for (int n = 0; n < 5; ++n) {
      const std::int64_t failures = must(own.note_failure("account/ann", kMorning)).failures;
      const std::lock_guard<std::mutex> lock(guard);
      seen.insert(failures);
    }
    return true;
  });
  EXPECT_EQ(must(gate->attempts("account/ann")).failures, 100);
  EXPECT_EQ(std::set<std::int64_t>(seen.begin(), seen.end()).size(), 100U) << "each was told another number";
}

TEST_P(AtOnce, ASignInIsTakenByOneOfTwenty) {
  EXPECT_EQ(together(20,
                     [&](Gate& own, int) {
                       Account account;
                       account.sign_in = "bo";
                       return must(own.add_account(account));
                     }),
            1);
  EXPECT_EQ(must(gate->accounts()).size(), 2U);
}

TEST_P(AtOnce, EveryReadIsNotedOnceInOneChain) {
  EXPECT_EQ(together(8,
                     [&](Gate& own, int) {
                       bool noted = true;
                       for (int n = 0; n < 20; ++n) {
                         noted = must(own.note_read({0, kMorning, ann, "", "route", "u13", "Q07", 1, ""})) && noted;
                       }
                       return noted;
                     }),
            8);
  const ReadAudit audit = must(gate->audit_reads());
  EXPECT_EQ(audit.notes, 160);
  EXPECT_FALSE(audit.broken_at);
}

// Nothing of an account is left open, also of what was being made at the moment at which it ended.
TEST_P(AtOnce, NothingIsMadeForAnAccountThatEnds) {
  for (int round = 0; round < 5; ++round) {
    const std::string name = std::to_string(round);
    const std::string bo = add(*gate, "bo " + name);
    const Pairing open = must(gate->open_pairing(link_for(bo, "link " + name)));
    must(gate->claim_pairing(open.secret, digest_of("key " + name), "", "1", kMorning));
    together(12, [&](Gate& own, int i) {
      if (i == 5) return must(own.end_account(bo, kMorning));
      if (i == 6) return must(own.confirm_pairing(open.id, "1", kMorning)).has_value();
      return must(own.add_session(session_of(bo, name + "/" + std::to_string(i))));
    });
    EXPECT_TRUE(must(gate->sessions_of(bo)).empty());
    for (const Device& device : must(gate->devices())) EXPECT_NE(device.revoked, 0);
  }
  EXPECT_EQ(said(backend, "SELECT count(*) FROM web_session"), "0|");
  EXPECT_EQ(said(backend, "SELECT count(*) FROM pairing"), "0|");
}

}  // namespace
}  // namespace lanework::store
