#include "core/access/viewer.h"

#include <algorithm>

namespace lanework::access {
namespace {

using ledger::Entry;
using ledger::Kind;
using ledger::KindTable;

std::string text_at(const Node& node, std::string_view key) {
  const Node* found = node.find(key);
  return found != nullptr && found->kind == Node::Kind::kText ? found->text : std::string();
}

// A session's entries go by whoever had the squad on its day, or has it now; what is about a player by who has it now.
Relation nearest(const Viewer& viewer, const Entry& entry, const std::vector<std::string>& squads) {
  const Relation now = relation_to_any(viewer, squads, viewer.today);
  const auto day = parse_iso_date(text_at(entry.whole, "day"));
  if (!day || now != Relation::kOther) return now;
  const Relation then = relation_to_any(viewer, squads, *day);
  return then == Relation::kSubstitute && *day == viewer.today ? then : now;
}

}  // namespace

Relation relation_of(const Viewer& viewer, std::string_view squad, Date day) {
  if (squad.empty()) return viewer.role == ledger::Role::kLead ? Relation::kOwn : Relation::kOther;
  return relation_to(viewer.role, viewer.charges, squad, day);
}

Relation relation_to_any(const Viewer& viewer, const std::vector<std::string>& squads, Date day) {
  if (squads.empty()) return relation_of(viewer, "", day);
  Relation best = Relation::kOther;
  for (const std::string& squad : squads) best = std::min(best, relation_of(viewer, squad, day));
  return best;
}

std::vector<std::string> squads_of(const Entry& entry, const KindTable& kinds, const SquadsOfPlayer& players) {
  const Kind* kind = kinds.find(entry.kind);
  if (kind == nullptr || kind->about == ledger::About::kPlayer) {
    const auto found = players.find(text_at(entry.whole, "player"));
    return found == players.end() ? std::vector<std::string>() : found->second;
  }
  const std::string squad = kind->about == ledger::About::kCoach ? std::string() : text_at(entry.whole, "squad");
  return squad.empty() ? std::vector<std::string>() : std::vector<std::string>{squad};
}

std::optional<Node> visible_entry(const ledger::Received& received, Date received_on, const Viewer& viewer,
                                  const Matrix& matrix, const KindTable& kinds, const SquadsOfPlayer& players) {
  const Entry& entry = received.entry;
  const Kind* kind = kinds.find(entry.kind);
  const FieldRules* rules = matrix.kind(entry.kind);
  const Relation relation = nearest(viewer, entry, squads_of(entry, kinds, players));
  const bool wrote_today = received.author == viewer.account && received_on == viewer.today;
  const auto role = static_cast<std::size_t>(viewer.role);
  // A kind of a newer version: how private it is nobody here knows, so it goes back to the lead and its author only.
  const bool newer = kind == nullptr || rules == nullptr;
  if (newer && viewer.role != ledger::Role::kLead && !wrote_today) return {};
  const auto lets = [&](std::string_view key) {
    if (newer) return true;
    const FieldRule* rule = rules->field(key);
    return rule != nullptr && sees(rule->sees[role], relation, wrote_today);
  };
  if (!lets("envelope")) return {};
  const auto about = newer ? std::vector<std::string_view>() : ledger::keys_about(kind->about);
  const auto& envelope = ledger::envelope_keys();
  Node out = Node::make_table();
  for (const auto& [key, value] : entry.whole.entries) {
    const bool of_envelope = std::find(envelope.begin(), envelope.end(), key) != envelope.end() ||
                             std::find(about.begin(), about.end(), key) != about.end();
    // A key that no version here knows goes with the lead only.
    const bool known = newer || of_envelope || rules->field(key) != nullptr;
    if (known ? of_envelope || lets(key) : viewer.role == ledger::Role::kLead) out.entries.emplace_back(key, value);
  }
  out.set("receipt", Node::make_integer(received.receipt));
  out.set("received", Node::make_text(received.received));
  return out;
}

Node visible_row(const Node& row, std::string_view squad, const Viewer& viewer, const FieldRules& view) {
  const Relation relation = relation_of(viewer, squad, viewer.today);
  const auto role = static_cast<std::size_t>(viewer.role);
  Node out = Node::make_table();
  for (const auto& [key, value] : row.entries) {
    const FieldRule* rule = view.field(key);
    if (rule != nullptr && sees(rule->sees[role], relation, false)) out.set(key, value);
  }
  return out;
}

}  // namespace lanework::access
