#include "app/cli/evidence/season_page/sections.h"

namespace lanework::cli {

evidence::NumberWords words_of(const SeasonPageMatter& matter) {
  return evidence::NumberWords(matter.found->asked.language);
}

std::string limits_heading(const SeasonPageMatter& matter) {
  const evidence::NumberWords words = words_of(matter);
  return words.say({"{} limits", "IC del {}"}, words.level_words(matter.found->asked.level));
}

std::vector<report::Block> claim_paragraphs(const SeasonPageMatter& matter, findings::ClaimKind kind) {
  std::vector<report::Block> out;
  for (const findings::Claim& claim : findings::claims(*matter.found, matter.reader))
    if (claim.kind == kind) out.emplace_back(report::Paragraph{claim.sentence});
  return out;
}

report::Section in_short(const SeasonPageMatter& matter) {
  const evidence::NumberWords words = words_of(matter);
  report::Section section{words.say(Words{"In short", "En breve"}), 1, {}};
  if (!matter.what_went.empty())
    section.blocks.emplace_back(
        report::Notice{words.say(Words{"Not all is there.", "No está todo."}), matter.what_went});
  report::List list;
  for (const findings::Claim& claim : findings::claims(*matter.found, matter.reader))
    if (findings::is_for_summary(claim)) list.items.push_back(claim.sentence);
  section.blocks.emplace_back(std::move(list));
  section.blocks.emplace_back(report::Paragraph{
      words.say(Words{"Nothing here diagnoses or clears anybody. Local rules and licensed practice come first.",
                      "Nada de esto diagnostica ni da el alta a nadie. Las normas locales y la práctica profesional "
                      "van primero."})});
  return section;
}

}  // namespace lanework::cli
