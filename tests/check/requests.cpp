#include "tests/check/requests.h"

#include <algorithm>
#include <filesystem>
#include <stdexcept>

#include "app/read/evening_files.h"
#include "core/door/door.h"
#include "core/door/evening_request.h"

namespace lanework::check::test {
namespace {

[[noreturn]] void fail(const Faults& faults) {
  std::string all;
  for (const Fault& fault : faults) all += to_line(fault) + "\n";
  throw std::runtime_error(all);
}

std::vector<std::string> steps_of(const std::string& path) {
  std::vector<std::string> steps = {""};
  for (const char c : path) {
    if (c == '.') {
      steps.emplace_back();
    } else {
      steps.back() += c;
    }
  }
  return steps;
}

Node* child(Node& node, const std::string& step) {
  if (node.kind == Node::Kind::kArray) {
    const std::size_t index = std::stoul(step);
    return index < node.items.size() ? &node.items[index] : nullptr;
  }
  for (auto& [key, value] : node.entries) {
    if (key == step) return &value;
  }
  return nullptr;
}

}  // namespace

Node demo_request(const std::string& squad, const std::string& routine) {
  const std::filesystem::path root = LANEWORK_SOURCE_DIR;
  read::EveningOverrides overrides;
  if (!routine.empty()) overrides.routine = routine;
  auto files = read::read_evening_files((root / "demo/quillmere/squads" / squad).string(),
                                        (root / "catalogue").string(), overrides);
  if (!files) fail(files.faults());
  read::EveningFiles& f = files.value();
  return door::request_of("plan", {f.catalogue, f.routine, f.strip, f.squad, f.restrictions, f.roster});
}

Node planned(const Node& request) {
  auto answer = parse_json("answer", door::run(to_json(request)));
  if (!answer) fail(answer.faults());
  const Node* faults = answer.value().root.find("faults");
  if (faults != nullptr) throw std::runtime_error(to_json(*faults));
  return answer.value().root;
}

Node& at(Node& root, const std::string& path) {
  Node* node = &root;
  for (const std::string& step : steps_of(path)) {
    node = child(*node, step);
    if (node == nullptr) throw std::out_of_range(path);
  }
  return *node;
}

void put(Node& root, const std::string& path, Node value) {
  std::vector<std::string> steps = steps_of(path);
  const std::string last = steps.back();
  steps.pop_back();
  Node* node = &root;
  for (const std::string& step : steps) {
    Node* next = child(*node, step);
    if (next == nullptr) {
      node->set(step, Node::make_table());
      next = child(*node, step);
    }
    node = next;
  }
  if (node->kind == Node::Kind::kArray) {
    node->items.at(std::stoul(last)) = std::move(value);
  } else {
    node->set(last, std::move(value));
  }
}

void erase(Node& root, const std::string& path) {
  const std::size_t dot = path.rfind('.');
  Node& parent = dot == std::string::npos ? root : at(root, path.substr(0, dot));
  const std::string last = path.substr(dot == std::string::npos ? 0 : dot + 1);
  if (parent.kind == Node::Kind::kArray) {
    parent.items.erase(parent.items.begin() + std::stol(last));
    return;
  }
  auto& entries = parent.entries;
  entries.erase(std::remove_if(entries.begin(), entries.end(), [&](const auto& entry) { return entry.first == last; }),
                entries.end());
}

Node text(const std::string& value) { return Node::make_text(value); }
Node number(std::int64_t value) { return Node::make_integer(value); }
Node real(double value) {
  Node node;
  node.kind = Node::Kind::kReal;
  node.real = value;
  return node;
}
Node yes() { return Node::make_boolean(true); }
Node texts(const std::vector<std::string>& values) {
  Node node = Node::make_array();
  for (const std::string& value : values) node.items.push_back(text(value));
  return node;
}

Report report_of(const Node& request, const Node& answer) {
  auto report = check_session(request, answer);
  if (!report) fail(report.faults());
  return report.value();
}

std::string lines(const Report& report) {
  std::string out;
  for (const Violation& violation : report.violations) out += to_line(violation) + "\n";
  return out;
}

bool breaks(const Report& report, const std::string& rule) {
  return std::any_of(report.violations.begin(), report.violations.end(),
                     [&](const Violation& violation) { return violation.rule == rule; });
}

}  // namespace lanework::check::test
