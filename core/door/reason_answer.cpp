#include "core/door/reason_answer.h"

#include <string>
#include <utility>

#include "core/door/reason_node.h"

namespace lanework::door {
namespace {

using catalogue::Catalogue;

const char* load_code(session::Load load) {
  switch (load) {
    case session::Load::kContacts:
      return "contacts";
    case session::Load::kEccentric:
      return "eccentric";
    case session::Load::kHardRunning:
      return "hard-running";
    case session::Load::kNewDrills:
      return "new-drills";
  }
  return "";
}

struct ReasonNode {
  const Catalogue& catalogue;

  [[nodiscard]] const std::string& id(int drill) const { return catalogue.drills[static_cast<std::size_t>(drill)].id; }

  Node operator()(const session::Bar& bar) const { return std::visit(*this, bar); }
  Node operator()(const session::NoTime& time) const { return std::visit(*this, time); }

  Node operator()(const session::Banned&) const { return Coded("banned").done(); }
  Node operator()(const session::TooYoung& bar) const { return Coded("too-young").with("age", bar.from_age).done(); }
  Node operator()(const session::TooOld& bar) const { return Coded("too-old").with("age", bar.to_age).done(); }
  Node operator()(const session::SquadHeldBack&) const { return Coded("squad-held-back").done(); }
  Node operator()(const session::Lacks& bar) const {
    Coded out = Coded("needs").with("need", catalogue::word(catalogue::need_words(), bar.need));
    return bar.count > 0 ? out.with("count", bar.count).done() : out.done();
  }
  Node operator()(const session::WrongSurface& bar) const {
    return Coded("not-on").with("surface", catalogue::word(catalogue::surface_words(), bar.surface)).done();
  }
  Node operator()(const session::LaneTooShort& bar) const {
    return Coded("lane-too-short").with("metres", bar.metres).done();
  }
  Node operator()(const session::TooFewCones& bar) const {
    return Coded("too-few-cones").with("cones", bar.cones).done();
  }
  Node operator()(const session::NoneKeepsCeilings&) const { return Coded("none-keeps-ceilings").done(); }
  Node operator()(const session::NewEccentricNearMatch&) const { return Coded("new-eccentric-near-match").done(); }

  Node operator()(const session::SlotTooShort& why) const {
    return Coded("slot-too-short")
        .with("needed_seconds", why.needed.count)
        .with("slot_seconds", why.slot.count)
        .with("breaks_seconds", why.breaks.count)
        .done();
  }
  Node operator()(const session::RoomFor& why) const {
    return Coded("room-for").with("drills", ids_node(catalogue, why.drills)).done();
  }
  Node operator()(const session::KeepsCeiling& why) const {
    return Coded("keeps-ceiling")
        .with("load", load_code(why.load))
        .with("most", why.most)
        .with("age", why.age)
        .with("days_to_match", why.days_to_match)
        .done();
  }
  Node operator()(const session::KeepsCeilings& why) const {
    return Coded("keeps-ceilings").with("days_to_match", why.days_to_match).done();
  }
  Node operator()(const session::TimeAndCeilings& why) const {
    return Coded("time-and-ceilings").with("time", (*this)(why.time)).done();
  }
  Node operator()(const session::MoreOfAnother&) const { return Coded("more-of-another").done(); }
  Node operator()(const session::Pinned&) const { return Coded("pinned").done(); }
  Node operator()(const session::StandsIn& why) const {
    return Coded("stands-in").with("drill", id(why.drill)).with("because", (*this)(why.because)).done();
  }
  Node operator()(const session::Covers& why) const {
    return Coded("covers").with("family", catalogue::word(catalogue::family_words(), why.family)).done();
  }

  Node operator()(const plan::MoreTime& cure) const {
    return Coded("more-time").with("seconds", cure.seconds.count).done();
  }
  Node operator()(const plan::NoneCanBeDone& cure) const {
    Coded out("none-can-be-done");
    if (cure.drill < 0) return out.done();
    out.with("drill", id(cure.drill));
    return cure.because ? out.with("because", (*this)(*cure.because)).done() : out.done();
  }
  Node operator()(const plan::NobodyWasTaught& cure) const {
    return Coded("nobody-was-taught").with("most_new", cure.most_new).done();
  }
  Node operator()(const plan::CeilingsOrPins&) const { return Coded("ceilings-or-pins").done(); }

  Node operator()(const plan::CeilingDemand& demand) const {
    return Coded("ceiling")
        .with("load", load_code(demand.load))
        .with("most", demand.most)
        .with("age", demand.age)
        .with("match_in_sight", Node::make_boolean(demand.match_in_sight))
        .done();
  }
  Node operator()(const plan::PinDemand& demand) const {
    Coded out = Coded("pinned").with("drill", id(demand.drill));
    if (demand.rung >= 0) {
      const catalogue::Drill& drill = catalogue.drills[static_cast<std::size_t>(demand.drill)];
      out.with("rung", drill.rungs[static_cast<std::size_t>(demand.rung)].key);
    }
    return demand.bar ? out.with("because", (*this)(*demand.bar)).done() : out.done();
  }
  Node operator()(const plan::NoSession& demand) const { return Coded("no-session").with("why", demand.why).done(); }
  Node operator()(const plan::SlotDemand& demand) const {
    return Coded("slot").with("seconds", demand.slot.count).done();
  }
};

}  // namespace

Node to_node(const session::Reason& reason, const Catalogue& catalogue) {
  return std::visit(ReasonNode{catalogue}, reason);
}
Node to_node(const plan::Cure& cure, const Catalogue& catalogue) { return std::visit(ReasonNode{catalogue}, cure); }
Node to_node(const plan::Demand& demand, const Catalogue& catalogue) {
  return std::visit(ReasonNode{catalogue}, demand);
}

Node to_node(const plan::WayOut& way, const Catalogue& catalogue) {
  Node out = Node::make_table();
  if (way.slot) out.set("slot_seconds", Node::make_integer(way.slot->count));
  out.set("lift", ids_node(catalogue, way.lift));
  out.set("any_one", Node::make_boolean(way.any_one_of_them));
  if (way.another_day) out.set("another_day", Node::make_boolean(true));
  return out;
}

Node to_node(const plan::Gain& gain, const Catalogue& catalogue) {
  Node out = Node::make_table();
  if (gain.covers) {
    out.set("covers", Node::make_text(std::string(catalogue::word(catalogue::family_words(), *gain.covers))));
    return out;
  }
  const catalogue::Drill& drill = catalogue.drills[static_cast<std::size_t>(gain.drill)];
  const catalogue::DoseStep& step = drill.dose.steps[static_cast<std::size_t>(gain.dose)];
  out.set("drill", Node::make_text(drill.id));
  out.set("sets", Node::make_integer(step.sets));
  out.set("amount", Node::make_integer(step.amount));
  return out;
}

}  // namespace lanework::door
