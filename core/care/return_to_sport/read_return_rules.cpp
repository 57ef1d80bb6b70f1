#include "core/care/return_to_sport/read_return_rules.h"

#include <algorithm>

#include "core/people/instruction.h"

namespace lanework::care {
namespace {

constexpr int kMostHours = 24 * 60;
constexpr std::size_t kMostGates = 31;

class RulesReader {
 public:
  RulesReader(const Document& document, const std::vector<catalogue::Source>& sources)
      : sources_(sources), root_(document.file, &document.root, {}, faults_) {}

  Result<ReturnRules> read() {
    read_same_day(root_.table("same_day"));
    for (TableReader& row : root_.tables("course")) read_course(row);
    if (rules_.courses.empty()) root_.fault(FaultCode::kMissing, "course", "none", "at least one course");
    if (faults_.empty()) {
      for (TableReader& row : root_.tables("rule_set")) read_rule_set(row);
      root_.finish();
    }
    if (!faults_.empty()) return std::move(faults_);
    return std::move(rules_);
  }

 private:
  const std::vector<catalogue::Source>& sources_;
  Faults faults_;
  TableReader root_;
  ReturnRules rules_;

  std::vector<std::string> sources_of(TableReader& table) {
    std::vector<std::string> out = table.texts("sources");
    const auto there = [&](const std::string& key) {
      return std::any_of(sources_.begin(), sources_.end(), [&](const auto& source) { return source.key == key; });
    };
    if (out.empty()) table.fault(FaultCode::kMissing, "sources", "nothing", "at least one key of sources.toml");
    for (const std::string& key : out) {
      if (!there(key)) table.fault(FaultCode::kUnknownName, "sources", quote(key), "a key of sources.toml");
    }
    return out;
  }

  template <class T>
  static std::vector<T> words(TableReader& table, const char* key, const std::vector<std::string_view>& known) {
    std::vector<T> out;
    for (const std::string& text : table.texts(key)) {
      const auto found = std::find(known.begin(), known.end(), text);
      if (found != known.end())
        out.push_back(static_cast<T>(found - known.begin()));
      else
        table.fault(FaultCode::kUnknownName, key, quote(text), "a word such as " + std::string(known.front()));
    }
    return out;
  }

  static std::string coach_words(TableReader& table, const char* key) {
    std::string out = table.text(key);
    if (const std::string word = people::private_word_in(out); !word.empty()) {
      table.fault(FaultCode::kContradiction, key, quote(word), "words for the coach without what is the matter");
    }
    return out;
  }

  void read_same_day(TableReader table) {
    if (!table.present()) return root_.fault(FaultCode::kMissing, "same_day", "nothing", "a table");
    rules_.same_day_places = words<catalogue::BodyArea>(table, "places", catalogue::body_area_words());
    rules_.same_day_hours = static_cast<int>(table.integer("least_hours", 24, kMostHours));
    rules_.same_day_unverified = table.boolean_or("unverified", false);
    sources_of(table);
    table.finish();
  }

  void read_course(TableReader& table) {
    Course course;
    course.id = table.text("id");
    if (rules_.course(course.id) != nullptr)
      table.fault(FaultCode::kDuplicate, "id", quote(course.id), "an id of its own");
    course.name = table.text("name");
    course.places = words<catalogue::BodyArea>(table, "places", catalogue::body_area_words());
    course.never_places = words<catalogue::BodyArea>(table, "never_places", catalogue::body_area_words());
    course.rest_hours = static_cast<int>(table.integer("rest_hours", 0, kMostHours));
    course.waiting = coach_words(table, "waiting");
    course.sources = sources_of(table);
    if (TableReader mild = table.table("mild"); mild.present()) course.mild = read_mild(mild);
    for (TableReader& row : table.tables("gate")) course.gates.push_back(read_gate(row));
    if (course.gates.size() > kMostGates) {
      table.fault(FaultCode::kOutOfRange, "gate", std::to_string(course.gates.size()), "at most 31 gates");
    }
    for (TableReader& row : table.tables("step")) read_step(row, course);
    check_course(table, course);
    table.finish();
    rules_.courses.push_back(std::move(course));
  }

  MildRule read_mild(TableReader& table) {
    MildRule out;
    out.most_points = static_cast<int>(table.integer("most_points", 0, 10));
    out.less_than_minutes = static_cast<int>(table.integer("less_than_minutes", 1, 24 * 60));
    out.unverified = table.boolean_or("unverified", false);
    out.sources = sources_of(table);
    table.finish();
    return out;
  }

  GateRule read_gate(TableReader& table) {
    GateRule out;
    out.key = table.text("key");
    out.name = table.text("name");
    constexpr int kMostDays = 365;
    out.symptom_free_hours = static_cast<int>(table.integer_or("symptom_free_days", 0, 0, kMostDays)) * 24;
    out.sources = sources_of(table);
    table.finish();
    return out;
  }

  void read_step(TableReader& table, Course& course) {
    StepRule step;
    step.key = table.text("key");
    step.name = table.text("name");
    step.risk = static_cast<Risk>(table.word("risk", risk_words()));
    if (const std::string gate = table.text_or("gate", ""); !gate.empty()) {
      step.gate = course.gate_with(gate);
      if (!step.gate) table.fault(FaultCode::kUnknownName, "gate", quote(gate), "the key of a gate of this course");
    }
    step.symptom_free = table.boolean_or("symptom_free", false);
    step.least_hours = static_cast<int>(table.integer("least_hours", 0, kMostHours));
    step.least_exposures = static_cast<int>(table.integer("least_exposures", 0, 20));
    step.back_to_unverified = table.boolean_or("back_to_unverified", false);
    if (table.has("heart_rate_percent")) {
      for (const std::int64_t percent : table.scaled_list("heart_rate_percent", 2, 1, 30, 100)) {
        step.heart_rate_percent.push_back(static_cast<int>(percent));
      }
    }
    step.allows = table.text("allows");
    for (TableReader& row : table.tables("restrictions")) step.restrictions.push_back(read_restriction(row));
    step.sources = sources_of(table);
    if (course.step_with(step.key)) table.fault(FaultCode::kDuplicate, "key", quote(step.key), "a key of its own");
    if (!course.steps.empty() && step.risk < course.steps.back().risk) {
      table.fault(FaultCode::kContradiction, "risk", quote(std::string(catalogue::word(risk_words(), step.risk))),
                  "no less risk than at the step before");
    }
    // Itself or one before it.
    const std::string back = table.text("back_to");
    course.steps.push_back(std::move(step));
    const std::optional<int> to = course.step_with(back);
    if (!to) table.fault(FaultCode::kUnknownName, "back_to", quote(back), "this step or one before it");
    course.steps.back().back_to = to.value_or(0);
    table.finish();
  }

  static StepRestriction read_restriction(TableReader& table) {
    static const std::vector<std::string_view> kAllowed = {"none", "light", "moderate"};
    StepRestriction out;
    out.restriction.sits_out = table.boolean_or("sits_out", false);
    out.restriction.areas = words<catalogue::BodyArea>(table, "areas", catalogue::body_area_words());
    out.restriction.kinds = words<catalogue::StressKind>(table, "kinds", catalogue::stress_kind_words());
    out.restriction.allowed_grade = table.word("allowed", kAllowed, 0);
    out.at_place = table.boolean_or("at_place", false);
    out.restriction.instruction = coach_words(table, "instruction");
    table.finish();
    return out;
  }

  static void check_course(TableReader& table, const Course& course) {
    if (course.steps.size() < 2) {
      table.fault(FaultCode::kMissing, "step", std::to_string(course.steps.size()) + " steps", "at least two steps");
    }
    for (std::size_t i = 0; i < course.gates.size(); ++i) {
      const auto guards = [&](const StepRule& step) { return step.gate == static_cast<int>(i); };
      const auto count = std::count_if(course.steps.begin(), course.steps.end(), guards);
      const bool first = !course.steps.empty() && guards(course.steps.front());
      if (count == 1 && !first) continue;
      table.fault(FaultCode::kContradiction, "gate",
                  quote(course.gates[i].key) + " before " + std::to_string(count) + " steps",
                  "each gate before one step, and none before the first");
    }
  }

  void read_rule_set(TableReader& table) {
    RuleSet out;
    out.id = table.text("id");
    out.name = table.text("name");
    out.sources = sources_of(table);
    const auto same = [&](const RuleSet& other) { return other.id == out.id; };
    if (std::any_of(rules_.rule_sets.begin(), rules_.rule_sets.end(), same)) {
      table.fault(FaultCode::kDuplicate, "id", quote(out.id), "an id of its own");
    }
    for (TableReader& row : table.tables("demand")) out.demands.push_back(read_demand(row));
    table.finish();
    rules_.rule_sets.push_back(std::move(out));
  }

  Demand read_demand(TableReader& table) {
    Demand out;
    out.course = table.text("course");
    out.gate = table.text("gate");
    const Course* course = rules_.course(out.course);
    if (course == nullptr) {
      table.fault(FaultCode::kUnknownName, "course", quote(out.course), "the id of a course");
    } else if (!course->gate_with(out.gate)) {
      table.fault(FaultCode::kUnknownName, "gate", quote(out.gate), "the key of a gate of that course");
    }
    constexpr int kMostAge = 130;
    out.ages_up_to = static_cast<int>(table.integer_or("ages_up_to", kMostAge, 5, kMostAge));
    out.symptom_free_days = static_cast<int>(table.integer("symptom_free_days", 1, 365));
    table.finish();
    return out;
  }
};

}  // namespace

Result<ReturnRules> read_return_rules(const Document& document, const std::vector<catalogue::Source>& sources) {
  return RulesReader(document, sources).read();
}

}  // namespace lanework::care
