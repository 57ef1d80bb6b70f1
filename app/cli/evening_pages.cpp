#include "app/cli/evening_pages.h"

#include <utility>
#include <vector>

#include "app/cli/card_matter.h"
#include "app/cli/planned_evening.h"
#include "app/cli/venue_matter.h"
#include "core/plan/reason_words.h"

namespace lanework::cli {
namespace {

std::vector<std::string> drill_ids(const door::PlanAnswer& answer, const catalogue::Catalogue& catalogue) {
  std::vector<std::string> ids;
  for (const session::Item& item : answer.plan.session.items) {
    ids.push_back(catalogue.drills[static_cast<std::size_t>(item.drill)].id);
  }
  return ids;
}

std::string nothing_fits(const door::PlanAnswer& answer, const catalogue::Catalogue& catalogue) {
  std::string out = "nothing fits";
  for (const plan::Demand& demand : answer.plan.conflict.demands) out += "; " + plan::words(demand, catalogue);
  return out;
}

// The page in the card's place, which says why.
Result<EveningPages> in_its_place(EveningPages pages, std::string why, const draw::NoticeMatter& page,
                                  draw::Paper paper) {
  auto notice = draw::draw_notice(page, paper);
  if (!notice) return notice.faults();
  pages.card = std::move(notice).value();
  pages.no_session = std::move(why);
  return pages;
}

}  // namespace

Result<EveningPages> evening_pages(door::EveningMatter of_slot, const ClubPlan& plan, const club::ClubSquad& squad,
                                   const club::PlannedSlot& slot, draw::Paper paper, plan::KernelWorkspace& workspace) {
  EveningPages out;
  out.matter = std::make_unique<door::EveningMatter>(std::move(of_slot));
  const door::EveningMatter& matter = *out.matter;
  if (!matter.evening.no_session.empty()) {
    return in_its_place(std::move(out), matter.evening.no_session, notice_matter(matter), paper);
  }
  const door::PlanAnswer answer = door::answer_plan(matter, workspace);
  if (answer.plan.outcome == plan::Outcome::kInfeasible) {
    out.nothing_fits = true;
    std::string why = nothing_fits(answer, matter.catalogue);
    return in_its_place(std::move(out), why, nothing_fits_matter(matter, why), paper);
  }
  const auto slip = door::answer_slip(matter, answer);
  if (!slip) return slip.faults();
  draw::CardMatter card = card_matter(answer, matter);
  if (!slot.elsewhere) {  // away, the plan of the home ground would mislead
    const auto venue = venue_plan_of(slot.strip);
    if (!venue) return venue.faults();
    if (venue.value()) card.action_plan = action_plan_matter(*venue.value(), slot.date);
  }
  mark_new_spell(plan, squad, slot.date, drill_ids(answer, matter.catalogue), card);
  auto card_pages = draw::draw_card(card, paper);
  if (!card_pages) return card_pages.faults();
  out.card = std::move(card_pages).value();
  auto slip_pages = draw::draw_slip(slip_matter(slip.value(), answer, matter), paper);
  if (!slip_pages) return slip_pages.faults();
  out.slip = std::move(slip_pages).value();
  return out;
}

}  // namespace lanework::cli
