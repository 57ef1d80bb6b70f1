#include "app/serve/open_records.h"

#include <utility>

namespace lanework::serve {

Result<bool> OpenRecords::may_show(const ledger::Entry& entry) {
  if (ledger::purpose_of(entry, kinds_).empty()) return true;
  const Node* named = entry.whole.find("player");
  if (named == nullptr || named->kind != Node::Kind::kText) return false;
  auto known = consents_.find(named->text);
  if (known == consents_.end()) {
    const auto about = store_.entries_about(named->text, kinds_);
    if (!about) return about.faults();
    known = consents_.emplace(named->text, ledger::consents_among(about.value(), kinds_)).first;
  }
  return ledger::is_open(entry, known->second, kinds_);
}

Result<bool> OpenRecords::may_show_text(const std::string& bytes) {
  auto document = parse_json("kept aside", bytes);
  if (!document) return true;
  ledger::Entry meant;
  meant.whole = std::move(document.value().root);
  const Node* kind = meant.whole.find("kind");
  if (kind != nullptr && kind->kind == Node::Kind::kText) meant.kind = kind->text;
  return may_show(meant);
}

}  // namespace lanework::serve
