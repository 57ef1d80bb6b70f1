// The demo club's folder, and a ledger's knowledge made of a few entries.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "app/planning/squad_plan.h"
#include "tests/ledger/shipped_kinds.h"

namespace lanework::planning::test {

inline PlanningFiles demo_files() { return {LANEWORK_SOURCE_DIR "/demo/quillmere", LANEWORK_SOURCE_DIR "/catalogue"}; }

using Said = std::pair<std::string, std::string>;  // kind, fields

inline std::vector<ledger::Received> received_of(const std::vector<Said>& entries) {
  std::vector<ledger::Received> out;
  int n = 0;
  for (const auto& [kind, fields] : entries) {
    ++n;
    out.push_back(ledger::test::received(n, ledger::test::read(ledger::test::entry_text(n, kind, fields, n)).value(),
                                         "phone", "ann", ledger::Role::kLead));
  }
  return out;
}

inline Known known_of(const std::vector<Said>& entries) {
  Known out;
  out.state = ledger::fold(received_of(entries), ledger::test::shipped_kinds());
  out.care = ledger::care_document(out.state, ledger::test::shipped_kinds());
  return out;
}

// Little work, for tests that ask what is planned from, not how well.
inline block::Work little_work() {
  block::Work out;
  out.first_rounds = 10;
  out.splits = 0;
  out.more_splits = 0;
  out.last_splits = 0;
  out.improvements = 0;
  return out;
}

inline Date day(const std::string& iso) { return *parse_iso_date(iso); }

inline std::string kestrels(const std::string& date, const std::string& more) {
  return R"("squad":"u13-kestrels","day":")" + date + R"(","start":"18:00",)" + more;
}

}  // namespace lanework::planning::test
