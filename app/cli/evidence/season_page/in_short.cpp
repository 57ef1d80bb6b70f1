#include "app/cli/evidence/season_page/sections.h"

namespace lanework::cli {

std::vector<report::Block> claim_paragraphs(const SeasonPageMatter& matter, findings::ClaimKind kind) {
  std::vector<report::Block> out;
  for (const findings::Claim& claim : findings::claims(*matter.found, matter.reader))
    if (claim.kind == kind) out.emplace_back(report::Paragraph{claim.sentence});
  return out;
}

report::Section in_short(const SeasonPageMatter& matter) {
  report::Section section{"In short", 1, {}};
  if (!matter.what_went.empty()) section.blocks.emplace_back(report::Notice{"Not all is there.", matter.what_went});
  report::List list;
  for (const findings::Claim& claim : findings::claims(*matter.found, matter.reader))
    if (findings::is_for_summary(claim)) list.items.push_back(claim.sentence);
  section.blocks.emplace_back(std::move(list));
  section.blocks.emplace_back(
      report::Paragraph{"Nothing here diagnoses or clears anybody. Local rules and licensed practice come first."});
  return section;
}

}  // namespace lanework::cli
