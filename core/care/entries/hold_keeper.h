// What holds one player back by itself: hurts, soreness, restrictions; and what lifts it. Inside this folder only.
#pragma once

#include <set>
#include <vector>

#include "core/care/entries/remarks.h"
#include "core/care/entries/standing.h"
#include "core/care/pain/pain_rule.h"

namespace lanework::care {

struct Hold {
  EntryId id;
  std::int64_t receipt = 0;
  ReceiptTime received;
  Moment at;  // no earlier than any entry before
  What what;
  bool lifted = false;
  bool carried = false;  // by a return course: the course holds the player back instead
  std::optional<Date> review;

  [[nodiscard]] std::optional<catalogue::BodyArea> place() const;
};

class HoldKeeper {
 public:
  HoldKeeper(const PainRule& pain, const ReturnRules& rules) : pain_(pain), rules_(rules) {}

  // Hurt, Soreness, RestrictionSet, or symptoms told of a course that is not known.
  void add(const Entry& entry, Moment at, Remarks& remarks);
  void review(const Entry& entry, const Reviewed& reviewed, Remarks& remarks);
  // Of a clinician by name; anything else is not to be handed in.
  void clear(const Entry& entry, const ClearanceGiven& clearance);
  // One of the names of an entry by the lead that lifts.
  void lift(const Entry& entry, const EntryId& name, Moment at, Remarks& remarks);
  // Take back what a clearance or a lifting has done; what rested on it holds again.
  void take_back_clearance(const EntryId& clearance);
  void take_back_lifting(const EntryId& lifting);

  [[nodiscard]] bool knows(const EntryId& id) const;
  [[nodiscard]] std::vector<Hold>& holds() { return holds_; }
  void put_standing(const std::string& player, std::vector<Standing>& out) const;

 private:
  struct Given {
    EntryId id;
    EntryIds names;
  };
  struct Lifting {
    EntryId id;
    EntryId hold;
    EntryIds rests_on;  // clearances
  };

  const PainRule& pain_;
  const ReturnRules& rules_;
  std::vector<Hold> holds_;
  std::vector<Given> clearances_;
  std::vector<Lifting> liftings_;

  [[nodiscard]] EntryIds clearances_that_name(const EntryId& id) const;
  [[nodiscard]] bool needs_clearance(const Hold& hold) const;
  [[nodiscard]] bool same_day_rule_holds(const Hold& hold) const;
  [[nodiscard]] std::vector<const Hold*> soreness_at(const std::optional<catalogue::BodyArea>& place) const;
  [[nodiscard]] PainJudgement judged(const std::vector<const Hold*>& soreness) const;
  void hold_again(const EntryId& id);
};

}  // namespace lanework::care
