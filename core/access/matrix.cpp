#include "core/access/matrix.h"

#include <algorithm>
#include <set>

namespace lanework::access {
namespace {

using ledger::Kind;
using ledger::KindTable;

template <class Rows, class Key>
const auto* found_by_key(const Rows& rows, Key key) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.key == key; });
  return found == rows.end() ? nullptr : &*found;
}

bool is_place(std::string_view segment) {
  return segment.size() > 2 && segment.front() == '{' && segment.back() == '}';
}

// What may stand in a path: nothing that a file system, a shell or a browser reads as more than a name.
bool is_id(std::string_view segment) {
  constexpr std::size_t kMost = 64;
  return !segment.empty() && segment.size() <= kMost && segment.front() != '.' &&
         std::all_of(segment.begin(), segment.end(), [](char c) {
           return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_' ||
                  c == '.';
         });
}

std::vector<std::string> segments_of(std::string_view path) {
  std::vector<std::string> out;
  if (path.empty() || path.front() != '/') return out;
  path.remove_prefix(1);
  while (true) {
    const std::size_t slash = path.find('/');
    out.emplace_back(path.substr(0, slash));
    if (slash == std::string_view::npos) return out;
    path.remove_prefix(slash + 1);
  }
}

bool fits(const Route& route, const std::vector<std::string>& segments, std::vector<std::string>* values) {
  if (route.segments.size() != segments.size()) return false;
  for (std::size_t i = 0; i < segments.size(); ++i) {
    if (is_place(route.segments[i])) {
      if (!is_id(segments[i])) return false;
      if (values != nullptr) values->push_back(segments[i]);
    } else if (route.segments[i] != segments[i]) {
      return false;
    }
  }
  return true;
}

class MatrixReader {
 public:
  MatrixReader(const Document& document, const KindTable& kinds)
      : root_(document.file, &document.root, "", faults_), kinds_(kinds) {}

  Result<Matrix> read() {
    for (TableReader& table : root_.tables("route")) read_route(table);
    for (TableReader& table : root_.tables("kind")) matrix_.kinds.push_back(read_rules(table, true));
    for (TableReader& table : root_.tables("view")) matrix_.views.push_back(read_rules(table, false));
    for (const Kind& kind : kinds_.kinds) {
      if (matrix_.kind(kind.key) == nullptr) {
        root_.fault(FaultCode::kMissing, "kind", "nothing about '" + kind.key + "'",
                    "a [[kind]] for every kind of entry");
      }
    }
    if (matrix_.routes.empty()) root_.fault(FaultCode::kMissing, "route", "no routes", "at least one route");
    root_.finish();
    if (!faults_.empty()) return faults_;
    return std::move(matrix_);
  }

 private:
  Faults faults_;
  TableReader root_;
  const KindTable& kinds_;
  Matrix matrix_;

  void read_route(TableReader& table) {
    Route route;
    route.name = table.text("name");
    static const std::vector<std::string_view> kMethods = {"GET", "POST"};
    const std::size_t before = table.faults_so_far();
    const int method = table.word("method", kMethods);
    route.segments = segments_of(table.text("path"));
    const int by = table.word("by", by_words());
    const int reach = table.word("about", reach_words(), 0);
    if (table.faults_so_far() != before) {
      table.finish();
      return;
    }
    route.method = std::string(kMethods[static_cast<std::size_t>(method)]);
    route.by = static_cast<By>(by);
    route.reach = static_cast<Reach>(reach);
    route.step_up = table.boolean_or("step_up", false);
    route.half_way = table.boolean_or("before_second_factor", false);
    route.noted = table.boolean_or("noted", false);
    if (route.by == By::kBrowser || route.by == By::kDevice) read_cells(table, route);
    check_new(table, route);
    table.finish();
    matrix_.routes.push_back(std::move(route));
  }

  // Every role has its cell: a list of relations, or for what is about no squad yes or no.
  static void read_cells(TableReader& table, Route& route) {
    for (std::size_t role = 0; role < kRoleCount; ++role) {
      const std::string_view key = ledger::role_words()[role];
      if (route.reach == Reach::kNothing) {
        static const std::vector<std::string_view> kYesNo = {"no", "yes"};
        const std::size_t before = table.faults_so_far();
        const int word = table.word(key, kYesNo);
        if (table.faults_so_far() == before) route.may[role][0] = word == 1;
        continue;
      }
      if (!table.has(key)) {
        table.fault(FaultCode::kMissing, key, "nothing", "the relations to the squad that let this role in, or []");
        continue;
      }
      for (const std::string& relation : table.texts(key)) {
        const auto& words = relation_words();
        const auto found = std::find(words.begin(), words.end(), relation);
        if (found == words.end()) {
          table.fault(FaultCode::kUnknownName, key, quote(relation), "own, substitute, former or other");
        } else {
          route.may[role][static_cast<std::size_t>(found - words.begin())] = true;
        }
      }
    }
  }

  void check_new(TableReader& table, const Route& route) {
    for (const Route& other : matrix_.routes) {
      if (other.name == route.name) table.fault(FaultCode::kDuplicate, "name", quote(route.name), "a name of its own");
      if (other.method == route.method && other.segments == route.segments) {
        table.fault(FaultCode::kDuplicate, "path", "the path of " + quote(other.name), "a path of its own");
      }
    }
    const auto places = std::count(route.segments.begin(), route.segments.end(), "{squad}");
    if ((route.reach == Reach::kSquad) != (places == 1)) {
      table.fault(FaultCode::kContradiction, "about", "a path with " + std::to_string(places) + " places for a squad",
                  "about = \"squad\" where, and only where, the path has {squad} once");
    }
  }

  // 'fields': a table of key to five words, in the order of the roles.
  FieldRules read_rules(TableReader& table, bool of_kind) {
    FieldRules out;
    out.key = table.text("key");
    TableReader fields = table.table("fields");
    for (const std::string& key : fields.keys()) out.fields.push_back({key, read_row(fields, key)});
    const auto& rows = of_kind ? matrix_.kinds : matrix_.views;
    if (found_by_key(rows, out.key) != nullptr) {
      table.fault(FaultCode::kDuplicate, "key", quote(out.key), "each kind and each view once");
    }
    if (of_kind) check_fields(table, out);
    table.finish();
    return out;
  }

  static SeesRow read_row(TableReader& fields, const std::string& key) {
    SeesRow row{};
    const std::vector<std::string> words = fields.texts(key);
    if (words.size() != kRoleCount) {
      fields.fault(FaultCode::kMissing, key, std::to_string(words.size()) + " words",
                   "five words, for lead, coach, recorder, board, operator");
      return row;
    }
    for (std::size_t role = 0; role < kRoleCount; ++role) {
      const auto& known = sees_words();
      const auto found = std::find(known.begin(), known.end(), words[role]);
      if (found == known.end()) {
        fields.fault(FaultCode::kUnknownName, key, quote(words[role]), "no, wrote, own, evening or club");
      } else {
        row[role] = static_cast<Sees>(found - known.begin());
      }
    }
    return row;
  }

  void check_fields(TableReader& table, const FieldRules& rules) {
    const Kind* kind = kinds_.find(rules.key);
    if (kind == nullptr) {
      table.fault(FaultCode::kUnknownName, "key", quote(rules.key), "a kind of entries");
      return;
    }
    std::set<std::string_view> wanted = {"envelope"};
    for (const ledger::Field& field : kind->fields) wanted.insert(field.key);
    for (const std::string_view key : wanted) {
      if (rules.field(key) == nullptr) {
        table.fault(FaultCode::kMissing, "fields", "nothing about '" + std::string(key) + "'",
                    "a line for 'envelope' and for every field of the kind");
      }
    }
    for (const FieldRule& field : rules.fields) {
      if (wanted.count(field.key) == 0) {
        table.fault(FaultCode::kUnknownName, "fields", quote(field.key), "'envelope' or a field of " + rules.key);
      }
    }
  }
};

}  // namespace

const FieldRule* FieldRules::field(std::string_view name) const { return found_by_key(fields, name); }

const Route* Matrix::route(std::string_view name) const {
  const auto found = std::find_if(routes.begin(), routes.end(), [&](const Route& one) { return one.name == name; });
  return found == routes.end() ? nullptr : &*found;
}

std::optional<PathMatch> Matrix::match(std::string_view method, std::string_view path) const {
  const std::vector<std::string> segments = segments_of(path);
  for (const Route& route : routes) {
    PathMatch out{&route, {}};
    if (route.method == method && fits(route, segments, &out.values)) return out;
  }
  return {};
}

std::vector<std::string> Matrix::methods(std::string_view path) const {
  const std::vector<std::string> segments = segments_of(path);
  std::vector<std::string> out;
  for (const Route& route : routes) {
    if (fits(route, segments, nullptr)) out.push_back(route.method);
  }
  return out;
}

const FieldRules* Matrix::kind(std::string_view key) const { return found_by_key(kinds, key); }
const FieldRules* Matrix::view(std::string_view key) const { return found_by_key(views, key); }

const std::vector<std::string_view>& by_words() {
  static const std::vector<std::string_view> kWords = {"nobody", "browser", "device", "this-machine"};
  return kWords;
}

const std::vector<std::string_view>& reach_words() {
  static const std::vector<std::string_view> kWords = {"nothing", "squad"};
  return kWords;
}

const std::vector<std::string_view>& sees_words() {
  static const std::vector<std::string_view> kWords = {"no", "wrote", "own", "evening", "club"};
  return kWords;
}

Result<Matrix> read_matrix(const Document& document, const KindTable& kinds) {
  return MatrixReader(document, kinds).read();
}

bool may(const Route& route, ledger::Role role, Relation relation) {
  const auto& row = route.may[static_cast<std::size_t>(role)];
  return route.reach == Reach::kNothing ? row[0] : row[static_cast<std::size_t>(relation)];
}

bool sees(Sees rule, Relation relation, bool wrote_today) {
  switch (rule) {
    case Sees::kNo:
      return false;
    case Sees::kWrote:
      return wrote_today;
    case Sees::kOwn:
      return wrote_today || relation == Relation::kOwn;
    case Sees::kEvening:
      return wrote_today || relation == Relation::kOwn || relation == Relation::kSubstitute;
    case Sees::kClub:
      return true;
  }
  return false;
}

}  // namespace lanework::access
