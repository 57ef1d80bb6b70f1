#include "app/cli/serve/printed_pages.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "app/cli/evening_pages.h"
#include "app/read/club_folder.h"

namespace lanework::cli {
namespace {

// A plan of another block is none of this one.
std::optional<read::BlockAnswer> standing_answer(const std::string& text, const club::Settings& settings) {
  if (text.empty()) return {};
  auto answer = read::read_block_answer("the plan that stands", text);
  if (!answer || answer.value().monday != settings.block_from) return {};
  return std::move(answer).value();
}

bool is_asked(const club::PlannedSlot& slot, const serve::PagesAsked& asked) {
  return slot.date >= asked.from && slot.date <= asked.to && (!asked.start || slot.start == *asked.start);
}

// One document of all sides; empty where there are none.
Result<std::string> one_pdf(const std::vector<const draw::Pages*>& all) {
  if (all.empty()) return std::string();
  draw::Pages joined = *all.front();
  for (std::size_t i = 1; i < all.size(); ++i) {
    joined.sides.insert(joined.sides.end(), all[i]->sides.begin(), all[i]->sides.end());
  }
  return draw::write_pdf(joined);
}

}  // namespace

Result<serve::PagesMade> printed_pages(const planning::PlanningFiles& files, const serve::PagesAsked& asked,
                                       const Node& care, const std::string& standing) {
  read::ClubFolder folder = read::read_club_folder(files.club, files.catalogue, care);
  if (!folder.faults.empty()) return folder.faults;
  ClubPlan plan;
  plan.club = std::move(folder.club);
  const club::Settings& settings = plan.club.settings;
  plan.allocation = club::allocate(plan.club, settings.block_from, settings.block_weeks);
  plan.answer = standing_answer(standing, settings);
  const club::ClubSquad* squad = plan.club.find(asked.squad);
  if (squad == nullptr) return serve::PagesMade{};
  const auto index = static_cast<std::size_t>(squad - plan.club.squads.data());

  plan::KernelWorkspace workspace;
  std::vector<EveningPages> evenings;
  serve::PagesMade out;
  for (const club::PlannedSlot& slot : plan.allocation.calendars[index].slots) {
    if (!is_asked(slot, asked)) continue;
    auto made = evening_pages(plan, *squad, slot, draw::Paper::kA4, workspace);
    if (!made) return made.faults();
    if (asked.start && made.value().nothing_fits) out.no_session = made.value().no_session;
    evenings.push_back(std::move(made).value());
  }
  if (!out.no_session.empty()) return out;
  std::vector<const draw::Pages*> pages;
  for (const EveningPages& evening : evenings) {
    const auto& page = asked.with_names ? evening.slip : evening.card;
    if (page) pages.push_back(&*page);
  }
  auto pdf = one_pdf(pages);
  if (!pdf) return pdf.faults();
  out.pdf = std::move(pdf).value();
  return out;
}

}  // namespace lanework::cli
