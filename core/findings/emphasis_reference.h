// What a club's injuries by body region are held against before a change of emphasis is proposed, and which families'
// drills are meant for which region: catalogue/emphasis_reference.toml, with the source of every number. Whoever keeps
// the file may put a league's own shares in the place of ours.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/records/terms.h"

namespace lanework::findings {

struct RegionReference {
  records::Region region{};
  int usual_percent = 0;              // of all injuries that count
  std::vector<std::string> families;  // keys; empty: no drill is meant for it
  std::vector<std::string> sources;
};

struct EmphasisReference {
  int weighs_as_injuries = 0;  // as many injuries say as much as the usual shares do
  int margin_percent = 0;      // a share is more than usual where its lower limit lies so far above
  int fewest_injuries = 0;     // with fewer that count nothing is proposed
  // Diagnoses that no warm-up bears on, or that ask for less and not for more.
  std::vector<records::Contact> leave_out_contact;
  std::vector<records::Recurrence> leave_out_recurrence;
  std::vector<records::Tissue> leave_out_tissue;
  std::vector<RegionReference> regions;  // in the order of the terms; shares sum to 100
  std::vector<std::string> sources;
};

// families: their keys. Faults: terms or families that are not known, a region that lacks or stands twice, shares that
// do not sum to 100.
Result<EmphasisReference> read_emphasis_reference(const Document& document, const records::Terms& terms,
                                                  const std::vector<std::string>& families);

}  // namespace lanework::findings
