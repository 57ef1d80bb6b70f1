// Who may do what and who sees what, from one table: catalogue/access/matrix.toml. Whatever is not in it is refused.
// The server asks here for every request, every entry and every field; the tests are made from the same table.
// docs/formats/access.md.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/access/relation.h"
#include "core/base/document.h"
#include "core/ledger/kinds.h"

namespace lanework::access {

// How somebody shows who they are.
enum class By : std::uint8_t {
  kNobody,      // whoever comes
  kBrowser,     // a session of an account
  kDevice,      // a paired device
  kThisMachine  // a caller on the server's own machine
};

enum class Reach : std::uint8_t {
  kNothing,  // about no squad in particular: whoever has the role may
  kSquad     // about one squad: the relation to it decides
};

struct Route {
  std::string name;                   // 'sync'
  std::string method;                 // 'GET' or 'POST'
  std::vector<std::string> segments;  // of the path; '{squad}' is a place for one
  By by = By::kNobody;
  Reach reach = Reach::kNothing;
  bool step_up = false;   // the second factor must have been shown just now
  bool half_way = false;  // open also before the second factor was shown
  bool noted = false;     // reads what is about people: goes into the book of reads
  // By role; of reach kNothing only 'own' counts.
  std::array<std::array<bool, kRelationCount>, kRoleCount> may{};
};

struct PathMatch {
  const Route* route = nullptr;
  std::vector<std::string> values;  // of the places, in order
};

// Who sees a field.
enum class Sees : std::uint8_t {
  kNo,
  kWrote,    // who entered it, on the day of receipt
  kOwn,      // who is charged with the squad
  kEvening,  // that, and a substitute
  kClub      // whoever has the role
};

using SeesRow = std::array<Sees, kRoleCount>;

struct FieldRule {
  std::string key;
  SeesRow sees{};
};

// Of a kind of entries, or of a view that is worked out from them ('roster', 'standing').
struct FieldRules {
  std::string key;
  std::vector<FieldRule> fields;
  [[nodiscard]] const FieldRule* field(std::string_view name) const;
};

struct Matrix {
  std::vector<Route> routes;
  std::vector<FieldRules> kinds;
  std::vector<FieldRules> views;

  [[nodiscard]] const Route* route(std::string_view name) const;
  // Of that method and path ('/api/squads/u13/standing'); a place takes one segment that is an id.
  [[nodiscard]] std::optional<PathMatch> match(std::string_view method, std::string_view path) const;
  // The methods that path has; empty: no such path.
  [[nodiscard]] std::vector<std::string> methods(std::string_view path) const;
  [[nodiscard]] const FieldRules* kind(std::string_view key) const;
  [[nodiscard]] const FieldRules* view(std::string_view key) const;
};

const std::vector<std::string_view>& by_words();
const std::vector<std::string_view>& reach_words();
const std::vector<std::string_view>& sees_words();

// All faults are collected. A kind of entries that is not in the table, a field of it that is not, a role without its
// cell, a route twice: each is a fault, so that nothing is open, or hidden, because somebody forgot it.
Result<Matrix> read_matrix(const Document& document, const ledger::KindTable& kinds);

bool may(const Route& route, ledger::Role role, Relation relation);
bool sees(Sees rule, Relation relation, bool wrote_today);

}  // namespace lanework::access
