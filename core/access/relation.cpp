#include "core/access/relation.h"

namespace lanework::access {

const std::array<std::string_view, kRelationCount>& relation_words() {
  static const std::array<std::string_view, kRelationCount> kWords = {"own", "substitute", "former", "other"};
  return kWords;
}

Relation relation_to(ledger::Role role, const std::vector<Charge>& charges, std::string_view squad, Date day) {
  if (role == ledger::Role::kLead) return Relation::kOwn;
  if (role == ledger::Role::kBoard || role == ledger::Role::kOperator) return Relation::kOther;
  Relation best = Relation::kOther;
  for (const Charge& charge : charges) {
    if (charge.squad != squad || day < charge.from) continue;
    Relation here = charge.substitute ? Relation::kSubstitute : Relation::kOwn;
    if (day > charge.until) here = Relation::kFormer;
    if (here < best) best = here;
  }
  return best;
}

}  // namespace lanework::access
