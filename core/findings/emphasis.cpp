#include "core/findings/emphasis.h"

#include <algorithm>
#include <optional>
#include <set>

#include "core/evidence/shrunken_share.h"

namespace lanework::findings {
namespace {

using records::InjuryRecord;

template <class Value>
bool among(const std::vector<Value>& list, const std::optional<Value>& value) {
  return value && std::find(list.begin(), list.end(), *value) != list.end();
}

// Where the diagnosis counts: a position in the reference's regions; else the tally of its reason goes up.
std::optional<std::size_t> counted_at(const InjuryRecord& injury, const EmphasisReference& reference,
                                      RegionCounts& counts) {
  if (among(reference.leave_out_contact, injury.contact)) {
    ++counts.contact;
  } else if (among(reference.leave_out_recurrence, injury.recurrence)) {
    ++counts.recurrence;
  } else if (among(reference.leave_out_tissue, injury.tissue)) {
    ++counts.tissue;
  } else {
    for (std::size_t i = 0; i < reference.regions.size(); ++i) {
      if (injury.region == reference.regions[i].region) return i;
    }
    ++counts.no_region;
  }
  return {};
}

ShareRow share_row(int injuries, int usual_percent, int all, const EmphasisReference& reference, double level) {
  ShareRow row;
  row.injuries = injuries;
  row.usual = usual_percent / 100.0;
  row.expected = all * row.usual;
  const evidence::ShrunkenShare found =
      evidence::shrunken_share(injuries, all, {row.usual, static_cast<double>(reference.weighs_as_injuries)}, level);
  row.times_usual = found.estimate / row.usual;
  row.limits = {found.limits.low / row.usual, found.limits.high / row.usual};
  return row;
}

Judged judge(const FamilyRow& row, int all, const EmphasisReference& reference, const WeightBounds& bounds) {
  if (row.regions.empty()) return Judged::kNoRegion;
  if (all < reference.fewest_injuries) return Judged::kTooFew;
  if (row.share.limits.low > 1 + reference.margin_percent / 100.0) {
    return row.family.weight + bounds.step > bounds.highest ? Judged::kAtHighest : Judged::kRaise;
  }
  return row.share.limits.high < 1 ? Judged::kClearlyFewer : Judged::kUnclear;
}

}  // namespace

RegionCounts count_regions(const records::Season& season, const EmphasisReference& reference) {
  RegionCounts counts;
  counts.of_region.assign(reference.regions.size(), 0);
  for (const records::InjuryEvent& event : records::events_of(season.injuries)) {
    std::set<std::size_t> hurt;
    for (const std::uint32_t diagnosis : event.diagnoses) {
      if (const auto at = counted_at(season.injuries[diagnosis], reference, counts)) hurt.insert(*at);
    }
    for (const std::size_t at : hurt) ++counts.of_region[at];
    counts.all += static_cast<int>(hurt.size());
  }
  return counts;
}

std::vector<ShareRow> region_shares(const RegionCounts& counts, const EmphasisReference& reference, double level) {
  std::vector<ShareRow> out;
  for (std::size_t i = 0; i < reference.regions.size(); ++i) {
    out.push_back(share_row(counts.of_region[i], reference.regions[i].usual_percent, counts.all, reference, level));
  }
  return out;
}

EmphasisProposal propose_emphasis(const RegionCounts& counts, const EmphasisReference& reference,
                                  const std::vector<FamilyWeight>& families, const WeightBounds& bounds, double level) {
  EmphasisProposal out;
  for (const FamilyWeight& family : families) {
    FamilyRow row;
    row.family = family;
    int injuries = 0;
    int usual_percent = 0;
    for (std::size_t i = 0; i < reference.regions.size(); ++i) {
      const RegionReference& region = reference.regions[i];
      if (std::find(region.families.begin(), region.families.end(), family.key) == region.families.end()) continue;
      row.regions.push_back(region.region);
      injuries += counts.of_region[i];
      usual_percent += region.usual_percent;
    }
    if (!row.regions.empty()) row.share = share_row(injuries, usual_percent, counts.all, reference, level);
    row.judged = judge(row, counts.all, reference, bounds);
    row.proposed_weight = family.weight + (row.judged == Judged::kRaise ? bounds.step : 0);
    out.families.push_back(std::move(row));
  }
  return out;
}

bool EmphasisProposal::any_change() const {
  return std::any_of(families.begin(), families.end(), [](const FamilyRow& row) { return row.changes(); });
}

}  // namespace lanework::findings
