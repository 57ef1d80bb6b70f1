// Emphasis from evidence: once a season, when the lead asks, the club's injuries by body region propose a bounded
// change of the families' weights. It is a proposal with its uncertainty; nothing takes it over but the lead
// (emphasis.toml).
//
// Weights are relative: they say which short dose hurts most when minutes lack. So what is compared is relative too,
// each region's share of the injuries that count against its usual share; hours cancel, and gaps in them do no harm.
// Shares are drawn towards the usual ones (core/evidence/shrunken_share.h), which are uncertain themselves: hence the
// margin.
//
// Only ever one step up. A family is never proposed a lower weight because its injuries are few: they may be few
// because its drills are done, and to do less of what works would bring them back (own judgement). A share is an
// association; it does not show that more of a family's drills would have kept the injuries away.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/evidence/interval.h"
#include "core/findings/emphasis_reference.h"
#include "core/records/season.h"

namespace lanework::findings {

// Injuries that count, each once for every region it hurt, and diagnoses left out by the first reason that holds.
struct RegionCounts {
  std::vector<int> of_region;  // as EmphasisReference::regions
  int all = 0;
  int contact = 0;
  int recurrence = 0;
  int tissue = 0;
  int no_region = 0;  // not known, or several at once

  bool operator==(const RegionCounts&) const = default;
};
// The order of the season's rows is of no matter.
RegionCounts count_regions(const records::Season& season, const EmphasisReference& reference);

struct FamilyWeight {
  std::string key;   // 'hip-and-groin'
  std::string name;  // as people read it
  int weight = 0;    // the catalogue's
};

struct ShareRow {
  int injuries = 0;
  double usual = 0;     // share, 0 .. 1
  double expected = 0;  // injuries, at the usual share
  // Drawn towards the usual share, in times of it.
  double times_usual = 0;
  evidence::Interval limits;
};

// Of each region by itself, as EmphasisReference::regions.
std::vector<ShareRow> region_shares(const RegionCounts& counts, const EmphasisReference& reference, double level);

enum class Judged : std::uint8_t {
  kRaise,      // clearly more than usual: one step up
  kAtHighest,  // clearly more, but the weight is the highest already
  kUnclear,
  kClearlyFewer,  // and yet no step down
  kTooFew,        // injuries of the club, to say anything
  kNoRegion       // no region points to this family alone
};

struct FamilyRow {
  FamilyWeight family;
  std::vector<records::Region> regions;
  ShareRow share;  // of no meaning without regions
  int proposed_weight = 0;
  Judged judged = Judged::kNoRegion;

  [[nodiscard]] bool changes() const { return proposed_weight != family.weight; }
};

struct EmphasisProposal {
  std::vector<FamilyRow> families;  // in their order
  [[nodiscard]] bool any_change() const;
};

struct WeightBounds {
  int step = 1;     // at most, from the catalogue's weight
  int highest = 8;  // that a family may have
};
EmphasisProposal propose_emphasis(const RegionCounts& counts, const EmphasisReference& reference,
                                  const std::vector<FamilyWeight>& families, const WeightBounds& bounds, double level);

}  // namespace lanework::findings
