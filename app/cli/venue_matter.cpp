#include "app/cli/venue_matter.h"

#include "app/read/files.h"
#include "core/care/venue/missing.h"
#include "core/care/venue/read_venue.h"

namespace lanework::cli {
namespace {

constexpr std::size_t kMostNamed = 5;  // of what is missing; a longer line is not read on a pitch

const std::vector<draw::SaidTo> kDangerSigns = {
    {"Call emergency services",
     "collapse, fainting or a fit; chest pain, a racing heart; breathing that does not settle; neck or spine pain, "
     "tingling or weakness in arms or legs; a limb out of shape; after a knock to the head: growing headache, "
     "vomiting, "
     "seeing double, odd behaviour."},
    {"A clinician before playing on",
     "swelling; cannot take four steps on it; a knee that locks or gives way; bone sore to touch after a knock; fever; "
     "pain that wakes at night; weight lost without a reason."},
    {"Tell the lead in private, tonight", "a worry about eating or periods, or about how somebody treats a player."},
};

}  // namespace

Result<care::VenuePlan> venue_plan_at(const std::string& path) {
  const auto document = read::read_toml_file(path);
  if (!document) return document.faults();
  return care::read_venue(document.value());
}

Result<std::optional<care::VenuePlan>> venue_plan_of(const session::Strip& strip) {
  if (strip.venue.empty()) return std::optional<care::VenuePlan>();
  auto plan = venue_plan_at(strip.venue);
  if (!plan) return plan.faults();
  return std::optional<care::VenuePlan>(std::move(plan).value());
}

std::string lacks_in_words(const care::VenuePlan& plan, Date day) {
  const std::vector<care::MissingItem> missing = care::missing_on(plan, day);
  if (missing.empty()) return {};
  std::string out = "Plan incomplete: ";
  for (std::size_t i = 0; i < missing.size() && i < kMostNamed; ++i) out += (i > 0 ? ", " : "") + missing[i].words;
  if (missing.size() > kMostNamed) out += ", and " + std::to_string(missing.size() - kMostNamed) + " more";
  return out + ".";
}

draw::ActionPlanMatter action_plan_matter(const care::VenuePlan& plan, Date day) {
  draw::ActionPlanMatter out;
  out.note = plan.name + (plan.map.empty() ? "" : ": " + plan.map) + ". Check it on the night.";
  out.lacks = lacks_in_words(plan, day);
  out.emergency_number = plan.emergency_number;
  out.address = plan.address;
  out.way_in = plan.way_in;
  out.phone = plan.phone;
  out.defibrillator = plan.defibrillator;
  out.first_aid_bag = plan.first_aid_bag;
  out.stays_with_player = plan.stays_with_player;
  out.calls = plan.calls;
  out.meets_ambulance = plan.meets_ambulance;
  out.minds_others = plan.minds_others;
  return out;
}

const std::vector<draw::SaidTo>& danger_signs() { return kDangerSigns; }

}  // namespace lanework::cli
