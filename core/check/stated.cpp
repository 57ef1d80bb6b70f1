#include "core/check/stated.h"

#include <algorithm>
#include <set>
#include <string>
#include <utility>

namespace lanework::check {
namespace {

const Node* of_kind(const Node& table, std::string_view key, Node::Kind kind) {
  const Node* node = table.find(key);
  return node != nullptr && node->kind == kind ? node : nullptr;
}

std::string found_at(const Node& table, std::string_view key) {
  const Node* node = table.find(key);
  return node == nullptr ? "nothing" : found_in_words(*node);
}

const std::vector<Node>& list_at(const Node& table, std::string_view key) {
  static const std::vector<Node> kNone;
  const Node* node = of_kind(table, key, Node::Kind::kArray);
  return node == nullptr ? kNone : node->items;
}

std::string text_at(const Node& table, std::string_view key) {
  const Node* node = of_kind(table, key, Node::Kind::kText);
  return node == nullptr ? "" : node->text;
}

// Compares one table of the answer key by key.
class TableJudge {
 public:
  TableJudge(const Node& table, std::string where, std::vector<Violation>& violations)
      : table_(table), where_(std::move(where)), violations_(violations) {}

  void number(std::string_view key, std::int64_t value, const char* rule) {
    const Node* node = of_kind(table_, key, Node::Kind::kInteger);
    if (node == nullptr || node->integer != value) add(key, rule, std::to_string(value));
  }
  void text(std::string_view key, const std::string& value, const char* rule) {
    const Node* node = of_kind(table_, key, Node::Kind::kText);
    if (node == nullptr || node->text != value) add(key, rule, value);
  }
  void add(std::string_view key, const char* rule, const std::string& allowed) {
    const std::string place = (where_.empty() ? "" : where_ + ", ") + std::string(key);
    violations_.push_back({rule, place, found_at(table_, key), allowed});
  }

 private:
  const Node& table_;
  std::string where_;
  std::vector<Violation>& violations_;
};

// A time of day so many seconds after the start, to the minute, rounded up.
std::string time_of_day(const Matter& matter, std::int64_t seconds) {
  return to_text(TimeOfDay{matter.tonight.start_minutes + static_cast<int>((seconds + 59) / 60)});
}

// Stated only where there is one.
void judge_rest(const Node& stated, const ItemReport& item, TableJudge& judge) {
  if (item.rest_seconds > 0 || stated.find("rest_seconds") != nullptr) {
    judge.number("rest_seconds", item.rest_seconds, "rest-seconds");
  }
}

void judge_items(const Node& answer, const Selection& selection, const Report& report,
                 std::vector<Violation>& violations) {
  const std::vector<Node>& items = list_at(answer, "items");
  for (std::size_t i = 0; i < items.size() && i < selection.size(); ++i) {
    const Drill& drill = *selection[i].drill;
    const ItemReport& item = report.items[i];
    TableJudge judge(items[i], selection[i].where, violations);
    judge.text("name", drill.name, "item-words");
    judge.text("family", drill.family, "item-words");
    judge.text("phase", drill.phase, "item-words");
    judge.text("formation", drill.formation, "item-words");
    judge.text("rung_words", item.rung_words, "item-words");
    judge.text("dose", item.dose_words, "item-words");
    judge_rest(items[i], item, judge);
    judge.number("change_seconds", item.change_seconds, "change-seconds");
    judge.number("takes_seconds", item.takes_seconds, "takes-seconds");
    judge.number("starts_seconds", item.starts_seconds, "starts-seconds");
  }
}

// The middle and the nine-in-ten finish are simulated; what can be held against them is the plan's own arithmetic,
// which nine simulated evenings in ten may undercut by a little (once in 2,000 drawn evenings: by 3 %).
void judge_finish(const Node& time, const Matter& matter, const Report& report, TableJudge& times) {
  const Node* middle = of_kind(time, "simulated_median_seconds", Node::Kind::kInteger);
  const Node* late = of_kind(time, "nine_in_ten_seconds", Node::Kind::kInteger);
  const std::int64_t least = report.planned_seconds * 9 / 10;
  const std::int64_t most = (report.planned_seconds + report.margin_seconds) * 5 / 4;
  if (late == nullptr || late->integer < least || late->integer > most) {
    return times.add("nine_in_ten_seconds", "finish", std::to_string(least) + " to " + std::to_string(most));
  }
  const bool sound =
      middle != nullptr && middle->integer <= late->integer && middle->integer >= report.planned_seconds * 4 / 5;
  if (!sound) return times.add("simulated_median_seconds", "finish", "at most " + std::to_string(late->integer));
  times.text("finish", time_of_day(matter, middle->integer), "finish");
  times.text("finish_nine_in_ten", time_of_day(matter, late->integer), "finish");
}

void judge_times(const Node& answer, const Matter& matter, const Report& report, std::vector<Violation>& violations) {
  TableJudge judge(answer, "", violations);
  judge.number("planned_seconds", report.planned_seconds, "planned-seconds");
  const Node* margin = of_kind(answer, "margin_seconds", Node::Kind::kInteger);
  const std::int64_t most = report.slot_seconds - report.planned_seconds;
  if (margin == nullptr || margin->integer < 0 || margin->integer > most) {
    judge.add("margin_seconds", "slot", "0 to " + std::to_string(most) + ", so that all ends in the slot");
  }
  const Node* time = of_kind(answer, "time", Node::Kind::kTable);
  if (time == nullptr) return judge.add("time", "answer-form", "a table");
  TableJudge times(*time, "time", violations);
  times.number("median_seconds", report.planned_seconds, "planned-seconds");
  times.number("moving_permille", report.moving_permille, "moving");
  judge_finish(*time, matter, report, times);
}

void judge_levels(const Node& answer, const Levels& levels, std::vector<Violation>& violations) {
  const Node* objective = of_kind(answer, "objective", Node::Kind::kTable);
  if (objective == nullptr) return TableJudge(answer, "", violations).add("objective", "answer-form", "a table");
  TableJudge judge(*objective, "objective", violations);
  judge.number("uncovered", levels.uncovered, "level-uncovered");
  judge.number("shortfall", levels.shortfall, "level-shortfall");
  judge.number("changes", levels.changes, "level-changes");
  judge.number("preference", levels.preference, "level-preference");
}

std::string in_words(const Departure& change) {
  std::string words = change.drill + ": " + change.kind;
  if (!change.from.empty()) words += " from " + change.from;
  if (!change.to.empty()) words += " to " + change.to;
  return words;
}

void judge_changes(const Node& answer, const Report& report, std::vector<Violation>& violations) {
  std::multiset<std::string> missing;
  for (const Departure& change : report.changes) missing.insert(in_words(change));
  const std::vector<Node>& stated = list_at(answer, "changes");
  for (std::size_t i = 0; i < stated.size(); ++i) {
    const std::string where = "changes." + std::to_string(i + 1);
    const std::string words = in_words({text_at(stated[i], "kind"), text_at(stated[i], "drill"),
                                        text_at(stated[i], "from"), text_at(stated[i], "to")});
    const auto found = missing.find(words);
    if (found == missing.end()) {
      violations.push_back({"change-untrue", where, words, "changes that were made, each once"});
    } else {
      missing.erase(found);
    }
    if (text_at(stated[i], "why").empty()) violations.push_back({"change-why", where, "no reason", "a reason"});
  }
  for (const std::string& words : missing) {
    violations.push_back({"change-missing", "changes", "not listed", words});
  }
}

void judge_uncovered(const Node& answer, const Report& report, std::vector<Violation>& violations) {
  std::vector<std::string> stated;
  for (const Node& row : list_at(answer, "uncovered")) {
    stated.push_back(text_at(row, "family"));
    if (text_at(row, "cure").empty()) {
      violations.push_back({"uncovered-listed", "uncovered", stated.back() + " without a cure", "the cheapest cure"});
    }
  }
  std::vector<std::string> truly = report.uncovered;
  std::sort(stated.begin(), stated.end());
  std::sort(truly.begin(), truly.end());
  if (stated == truly) return;
  const auto joined = [](const std::vector<std::string>& list) {
    std::string out;
    for (const std::string& word : list) out += (out.empty() ? "" : ", ") + word;
    return out.empty() ? std::string("none") : out;
  };
  violations.push_back({"uncovered-listed", "uncovered", joined(stated), joined(truly)});
}

void judge_loads(const Node& answer, const Report& report, std::vector<Violation>& violations) {
  const std::vector<Node>& rows = list_at(answer, "loads");
  for (const LoadReport& load : report.loads) {
    const auto same = [&](const Node& row) { return text_at(row, "load") == load.load; };
    const auto row = std::find_if(rows.begin(), rows.end(), same);
    if (row == rows.end()) {
      violations.push_back({"load-stated", "loads", "no " + load.load, "every load once"});
      continue;
    }
    TableJudge judge(*row, "loads, " + load.load, violations);
    judge.number("planned", load.planned, "load-stated");
    judge.number("ceiling", load.ceiling, "load-stated");
  }
  if (rows.size() > report.loads.size()) {
    violations.push_back({"load-stated", "loads", std::to_string(rows.size()) + " rows", "every load once"});
  }
}

}  // namespace

std::vector<NamedItem> named_items(const Node& answer, std::vector<Violation>& violations) {
  std::vector<NamedItem> out;
  if (of_kind(answer, "items", Node::Kind::kArray) == nullptr) {
    violations.push_back({"answer-form", "items", found_at(answer, "items"), "a list"});
  }
  for (const Node& item : list_at(answer, "items")) {
    const std::string drill = text_at(item, "drill");
    const std::string where = "item " + std::to_string(out.size() + 1) + " (" + drill + ")";
    const auto number = [&](const char* key) {
      const Node* node = of_kind(item, key, Node::Kind::kInteger);
      return node != nullptr && node->integer > 0 && node->integer < 1000 ? static_cast<int>(node->integer) : 0;
    };
    out.push_back({where, drill, text_at(item, "rung"), {number("sets"), number("amount")}});
  }
  return out;
}

void judge_frame(const Node& answer, const Matter& matter, const Report& report, std::vector<Violation>& violations) {
  TableJudge judge(answer, "", violations);
  judge.number("version", 1, "answer-form");
  const std::string outcome = text_at(answer, "outcome");
  if (outcome != "optimal" && outcome != "infeasible") judge.add("outcome", "answer-form", "optimal or infeasible");
  judge.number("slot_seconds", matter.tonight.slot_seconds, "slot-stated");
  judge.number("turnout", matter.tonight.turnout, "turnout");
  judge.number("gathering_seconds", report.gathering_seconds, "gathering-seconds");
}

void judge_stated(const Node& answer, const Selection& selection, const Matter& matter, const Report& report,
                  std::vector<Violation>& violations) {
  judge_items(answer, selection, report, violations);
  judge_times(answer, matter, report, violations);
  judge_levels(answer, report.levels, violations);
  judge_changes(answer, report, violations);
  judge_uncovered(answer, report, violations);
  judge_loads(answer, report, violations);
  if (answer.find("infeasible") != nullptr) {
    violations.push_back({"answer-form", "infeasible", "beside a session", "only where nothing can be done"});
  }
}

}  // namespace lanework::check
