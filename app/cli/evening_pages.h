// One evening of one squad on paper: the card for the grass, and the slip with names for the coach's pocket.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "app/cli/club_plan.h"
#include "app/draw/card.h"
#include "core/door/evening_request.h"
#include "core/plan/kernel.h"

namespace lanework::cli {

struct EveningPages {
  std::unique_ptr<door::EveningMatter> matter;  // the pages point at its figures
  std::optional<draw::Pages> card;              // or the page in its place
  std::optional<draw::Pages> slip;              // empty where there is no session
  std::string no_session;                       // why there is none, in words: 'nothing fits; ...'
  bool nothing_fits = false;
};

// matter: of that slot, as planned_evening.h or the pocket makes it. Faults: of its venue's plan, of text that cannot
// be fitted.
Result<EveningPages> evening_pages(door::EveningMatter matter, const ClubPlan& plan, const club::ClubSquad& squad,
                                   const club::PlannedSlot& slot, draw::Paper paper, plan::KernelWorkspace& workspace);

}  // namespace lanework::cli
