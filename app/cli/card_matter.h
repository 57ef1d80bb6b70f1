// From the door's answers to what a card and a slip are made of.
#pragma once

#include "app/draw/card.h"
#include "app/draw/notice.h"
#include "core/door/plan_answer.h"
#include "core/door/slip_answer.h"

namespace lanework::cli {

// An adult's walking step, in which the card gives metres as paces (common practice).
inline constexpr int kPaceMillimetres = 750;

// General lines of when to stop: common practice; local rules and licensed practice come first.
const std::vector<std::string>& stop_always();
draw::StripMatter strip_matter(const session::Strip& strip);

// REQUIRES: the plan is optimal. matter must outlive the pages drawn (figures are pointed at).
draw::CardMatter card_matter(const door::PlanAnswer& answer, const door::EveningMatter& matter);
// Where there is no session tonight.
draw::NoticeMatter notice_matter(const door::EveningMatter& matter);
// Where nothing fits, and why: 'nothing fits; the slot of 5 min'.
draw::NoticeMatter nothing_fits_matter(const door::EveningMatter& matter, const std::string& why);

draw::SlipMatter slip_matter(const door::Slip& slip, const door::PlanAnswer& answer, const door::EveningMatter& matter);

// A name for this session made from date, squad and items: letters, digits and hyphens. It opens nothing.
std::string session_id(const door::PlanAnswer& answer, const door::EveningMatter& matter);

}  // namespace lanework::cli
