// The independent verifier of sessions. It reads the raw documents of a request itself, has its own clock and
// its own reading of the model, and shares nothing with the planner but core/base. Rules and their keys:
// docs/model/check.md.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"

namespace lanework::check {

// One broken rule, in words that can be shown as they are.
struct Violation {
  std::string rule;   // key of docs/model/check.md
  std::string where;  // 'item 3 (side-plank)', 'planned_seconds'
  std::string found;
  std::string allowed;
};

// The levels of the objective, as docs/model/session.md defines them.
struct Levels {
  std::int64_t uncovered = 0;
  std::int64_t shortfall = 0;
  std::int64_t changes = 0;
  std::int64_t preference = 0;
};

struct ItemReport {
  std::string drill;  // id
  std::string name;
  std::string rung_words;
  std::string dose_words;
  std::int64_t rest_seconds = 0;
  std::int64_t change_seconds = 0;
  std::int64_t takes_seconds = 0;
  std::int64_t starts_seconds = 0;
};

// In whole units: what is planned rounded up, the ceiling rounded down.
struct LoadReport {
  std::string load;  // contacts, eccentric repetitions, hard-running metres, new drills
  std::int64_t planned = 0;
  std::int64_t ceiling = 0;
};

// A departure from the routine, without its reason.
struct Departure {
  std::string kind;   // left-out new-drill smaller-dose larger-dose easier-rung harder-rung
  std::string drill;  // id
  std::string from;
  std::string to;
};

// Everything recomputed from the request and the drills, rungs and doses of the plan.
struct Report {
  bool infeasible = false;  // the answer says that nothing can be done tonight; then the rest is empty
  std::vector<Violation> violations;
  Levels levels;
  std::vector<ItemReport> items;  // those that exist
  std::int64_t turnout = 0;
  std::int64_t age = 0;
  std::int64_t slot_seconds = 0;
  std::int64_t gathering_seconds = 0;
  std::int64_t planned_seconds = 0;
  std::int64_t margin_seconds = 0;  // of this very session: nine nights in ten end within planned + margin
  std::int64_t moving_permille = 0;
  std::vector<LoadReport> loads;
  std::vector<Departure> changes;
  std::vector<std::string> uncovered;  // families

  [[nodiscard]] bool ok() const { return violations.empty(); }
};

// request: a whole 'plan' request; answer: the whole answer (docs/formats/door.md). Faults only where the
// request cannot be read or the answer is not that of a plan.
Result<Report> check_session(const Node& request, const Node& answer);

// A plan edited by hand (docs/formats/edited-plan.md). Its times are given back, not judged against stated ones.
Result<Report> check_edited(const Node& request, const Document& edited);

// Either of the two, whichever the document is: a saved answer, or an edited plan.
Result<Report> check_plan(const Node& request, const Document& plan);

// One line a violation, for people.
std::string to_line(const Violation& violation);
// For programs.
Node to_node(const Report& report);

}  // namespace lanework::check
