// The parts of a season's page, each from what was found; an empty part has no blocks. Inside this folder only.
#pragma once

#include <vector>

#include "app/cli/evidence/season_page/season_page.h"
#include "core/evidence/number_words.h"

namespace lanework::cli {

// In the language that was asked for.
evidence::NumberWords words_of(const SeasonPageMatter& matter);

// The heading of a column of limits: '95 % limits'.
std::string limits_heading(const SeasonPageMatter& matter);

// What is said in short of one kind of finding.
std::vector<report::Block> claim_paragraphs(const SeasonPageMatter& matter, findings::ClaimKind kind);

report::Section in_short(const SeasonPageMatter& matter);
report::Section completeness_section(const SeasonPageMatter& matter);
std::vector<report::Section> question_sections(const SeasonPageMatter& matter);
std::vector<report::Section> warm_up_sections(const SeasonPageMatter& matter);
report::Section taught_section(const SeasonPageMatter& matter);
report::Section often_section(const SeasonPageMatter& matter);
report::Section prevalence_section(const SeasonPageMatter& matter);
std::vector<report::Section> rate_sections(const SeasonPageMatter& matter);
std::vector<report::Section> squad_sections(const SeasonPageMatter& matter);
report::Section watch_section(const SeasonPageMatter& matter);
std::vector<report::Section> method_sections(const SeasonPageMatter& matter);

}  // namespace lanework::cli
