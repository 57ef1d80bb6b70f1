// One evening of one squad on paper: the card for the grass, and the slip with names for the coach's pocket.
#pragma once

#include <functional>
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

// What else is known of the evening is put into it, such as its weather.
using JudgeEvening = std::function<std::optional<Faults>(session::Evening&)>;

// Faults: of the evening (evening_matter), of its venue's plan, of text that cannot be fitted.
Result<EveningPages> evening_pages(const ClubPlan& plan, const club::ClubSquad& squad, const club::PlannedSlot& slot,
                                   draw::Paper paper, plan::KernelWorkspace& workspace, const JudgeEvening& judge = {});

}  // namespace lanework::cli
