#include "core/plan/reason_words.h"

#include <algorithm>

#include "core/plan/duration_words.h"

namespace lanework::plan {
namespace {

using catalogue::Catalogue;
using catalogue::Drill;
using catalogue::Need;

constexpr std::size_t kMostBought = 3;  // things named in one sentence

const Drill& drill_at(const Catalogue& catalogue, int index) {
  return catalogue.drills[static_cast<std::size_t>(index)];
}

std::string need_words(const session::Lacks& lacks) {
  switch (lacks.need) {
    case Need::kPartner:
      return "it needs a partner";
    case Need::kWall:
      return "it needs a wall";
    case Need::kBallEach:
      return "it needs a ball each: " + std::to_string(lacks.count) + " balls";
    case Need::kBallAPair:
      return "it needs a ball a pair: " + std::to_string(lacks.count) + " balls";
    case Need::kMat:
      return "it needs a mat each";
    case Need::kSoftGround:
      return "it needs soft ground";
    case Need::kLine:
      return "it needs a painted line";
  }
  return "";
}

std::string near_match(std::optional<int> days) {
  if (!days) return "";
  if (*days == 0) return " on a match day";
  return *days == 1 ? " the day before a match" : " two days before a match";
}

struct BarWords {
  std::string operator()(const session::Banned&) const { return "it is banned tonight"; }
  std::string operator()(const session::TooYoung& bar) const {
    return "it is for players of " + std::to_string(bar.from_age) + " and older";
  }
  std::string operator()(const session::TooOld& bar) const {
    return "it is for players up to " + std::to_string(bar.to_age);
  }
  std::string operator()(const session::SquadHeldBack&) const { return "the whole squad is held back from it"; }
  std::string operator()(const session::Lacks& bar) const { return need_words(bar); }
  std::string operator()(const session::WrongSurface& bar) const {
    if (bar.surface == catalogue::Surface::kDark) return "it is not done in the dark";
    return "it is not done on " + std::string(catalogue::word(catalogue::surface_words(), bar.surface)) + " ground";
  }
  std::string operator()(const session::LaneTooShort& bar) const {
    return "it needs a lane of " + std::to_string(bar.metres) + " m";
  }
  std::string operator()(const session::TooFewCones& bar) const {
    return "its lanes need " + std::to_string(bar.cones) + " cones or painted lines";
  }
  std::string operator()(const session::NoneKeepsCeilings&) const {
    return "no way of doing it keeps tonight's ceilings";
  }
  std::string operator()(const session::NewEccentricNearMatch&) const {
    return "no eccentric work is new this close to a match";
  }
};

struct ReasonWords {
  const Catalogue& catalogue;

  std::string operator()(const session::Bar& bar) const { return words(bar); }
  std::string operator()(const session::NoTime& time) const { return std::visit(*this, time); }
  std::string operator()(const session::SlotTooShort& why) const {
    const std::string breaks =
        why.breaks.count > 0 ? "with breaks of " + in_words(why.breaks.count) + " " : std::string();
    return "the routine " + breaks + "needs " + in_words(why.needed.count) + ", the slot is " +
           in_words(why.slot.count);
  }
  std::string operator()(const session::RoomFor& why) const {
    std::string names;
    for (const int drill : why.drills) names += (names.empty() ? "" : " and ") + drill_at(catalogue, drill).name;
    return "to make room for " + (names.empty() ? "the doses asked for" : names);
  }
  std::string operator()(const session::KeepsCeiling& why) const {
    return std::string("keeps ") + load_words(why.load) + " at " + std::to_string(why.most) +
           " or fewer, the ceiling at age " + std::to_string(why.age) + near_match(why.days_to_match);
  }
  std::string operator()(const session::KeepsCeilings& why) const {
    return "keeps within the youth ceilings" + near_match(why.days_to_match);
  }
  std::string operator()(const session::TimeAndCeilings& why) const {
    return std::visit(*this, why.time) + ", and youth ceilings hold";
  }
  std::string operator()(const session::MoreOfAnother&) const { return "more of another drill is wanted"; }
  std::string operator()(const session::Pinned&) const { return "it is pinned"; }
  std::string operator()(const session::StandsIn& why) const {
    return drill_at(catalogue, why.drill).name + " cannot be done, " + words(why.because);
  }
  std::string operator()(const session::Covers& why) const { return "covers " + catalogue.family(why.family).name; }
};

struct CureWords {
  const Catalogue& catalogue;

  std::string operator()(const MoreTime& cure) const {
    return "with " + in_words(cure.seconds.count) + " more it would be covered";
  }
  std::string operator()(const NoneCanBeDone& cure) const {
    return "no drill of it can be done tonight (" + drill_at(catalogue, cure.drill).name + ": " +
           (cure.because ? words(*cure.because) : "") + ")";
  }
  std::string operator()(const NobodyWasTaught& cure) const {
    return "it would take a drill nobody has been taught, and " + std::to_string(cure.most_new) +
           " new ones are the most tonight";
  }
  std::string operator()(const CeilingsOrPins&) const {
    return "youth ceilings or pins keep it out, whatever the time";
  }
};

struct DemandWords {
  const Catalogue& catalogue;

  std::string operator()(const NoSession& demand) const { return demand.why; }
  std::string operator()(const CeilingDemand& demand) const {
    if (demand.load == Load::kNewDrills) return "at most " + std::to_string(demand.most) + " new drills in a session";
    return "at most " + std::to_string(demand.most) + " " + load_words(demand.load) + " at age " +
           std::to_string(demand.age) + (demand.match_in_sight ? " this close to the match" : "");
  }
  std::string operator()(const PinDemand& demand) const {
    const Drill& drill = drill_at(catalogue, demand.drill);
    std::string out = drill.name + " is pinned";
    if (demand.rung >= 0) out += " at '" + drill.rungs[static_cast<std::size_t>(demand.rung)].change + "'";
    return demand.bar ? out + ", but " + words(*demand.bar) : out;
  }
  std::string operator()(const SlotDemand& demand) const { return "the slot of " + in_words(demand.slot.count); }
};

std::string joined(const std::vector<int>& drills, const char* between, const Catalogue& catalogue) {
  std::string out;
  for (const int drill : drills) out += (out.empty() ? "" : between) + drill_at(catalogue, drill).name;
  return out;
}

std::string way_words(const WayOut& way, const Catalogue& catalogue) {
  if (way.another_day) return "another day, or another place that is safe";
  std::string out;
  if (way.slot) out = "a slot of " + in_words(way.slot->count) + " would do; one second less would not";
  if (way.lift.empty()) return out;
  const char* between = way.any_one_of_them ? " or " : (way.barred ? " and on " : " and ");
  return out + (out.empty() ? "lift the pin on " : "; or lift the pin on ") + joined(way.lift, between, catalogue);
}

}  // namespace

std::string words(const session::Bar& bar) { return std::visit(BarWords{}, bar); }

std::string words(const session::Reason& reason, const Catalogue& catalogue) {
  return std::visit(ReasonWords{catalogue}, reason);
}

std::string words(const Cure& cure, const Catalogue& catalogue) { return std::visit(CureWords{catalogue}, cure); }

std::string words(const MinutePrice& price, const Catalogue& catalogue) {
  std::string out;
  for (std::size_t g = 0; g < std::min(price.buys.size(), kMostBought); ++g) {
    const Gain& gain = price.buys[g];
    out += g == 0 ? "" : ", ";
    if (gain.covers) {
      out += catalogue.family(*gain.covers).name + " covered";
      continue;
    }
    const Drill& drill = drill_at(catalogue, gain.drill);
    out += drill.name + " " + catalogue::dose_in_words(drill, drill.dose.steps[static_cast<std::size_t>(gain.dose)]);
  }
  if (price.buys.size() > kMostBought) out += " and " + std::to_string(price.buys.size() - kMostBought) + " more";
  return out;
}

std::string words(const Demand& demand, const Catalogue& catalogue) {
  return std::visit(DemandWords{catalogue}, demand);
}

std::string words(const std::vector<WayOut>& ways, const Catalogue& catalogue) {
  std::string out;
  for (const WayOut& way : ways) {
    out += (out.empty() ? "" : "; the rest is too much as well: ") + way_words(way, catalogue);
  }
  return out;
}

}  // namespace lanework::plan
