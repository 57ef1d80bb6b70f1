#include "core/catalogue/named_sources.h"

#include <algorithm>

namespace lanework::catalogue {
namespace {

class NamedSources {
 public:
  NamedSources(const Document& document, const std::vector<Source>& sources, Faults& faults)
      : file_(document.file), sources_(sources), faults_(faults) {}

  void check(const Node& node, const std::string& path) {
    for (const auto& [key, value] : node.entries) {
      const std::string field = path.empty() ? key : path + "." + key;
      if (key == "source" || key == "sources") check_names(value, value, field);
      check(value, field);
    }
    for (std::size_t i = 0; i < node.items.size(); ++i) check(node.items[i], path + "." + std::to_string(i + 1));
  }

 private:
  const std::string& file_;
  const std::vector<Source>& sources_;
  Faults& faults_;

  // at: the key, where a text of a list is told too.
  void check_names(const Node& value, const Node& at, const std::string& field) {
    for (const Node& item : value.items) check_names(item, at, field);
    if (value.kind != Node::Kind::kText) return;
    const auto same = [&](const Source& source) { return source.key == value.text; };
    if (std::any_of(sources_.begin(), sources_.end(), same)) return;
    faults_.push_back(
        {FaultCode::kUnknownName, {file_, at.line, at.column, field}, quote(value.text), "a key of sources.toml", {}});
  }
};

}  // namespace

void check_named_sources(const Document& document, const std::vector<Source>& sources, Faults& faults) {
  NamedSources(document, sources, faults).check(document.root, {});
}

}  // namespace lanework::catalogue
