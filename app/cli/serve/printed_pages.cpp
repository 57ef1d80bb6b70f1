#include "app/cli/serve/printed_pages.h"

#include <chrono>
#include <map>
#include <memory>
#include <utility>
#include <vector>

#include "app/cli/calendar_events.h"
#include "app/cli/clinic_source.h"
#include "app/cli/evening_pages.h"
#include "app/cli/serve/kept_answer.h"
#include "app/planning/folder_stamp.h"
#include "app/planning/pocket.h"
#include "app/read/club_folder.h"
#include "core/club/followed_calendar.h"
#include "core/door/evening_request.h"

namespace lanework::cli {
namespace {

// A plan of another block is none of this one.
std::optional<read::BlockAnswer> standing_answer(const std::string& text, const club::Settings& settings) {
  if (text.empty()) return {};
  auto answer = read::read_block_answer("the plan that stands", text);
  if (!answer || answer.value().monday != settings.block_from) return {};
  return std::move(answer).value();
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

Result<ClubPlan> plan_of(const planning::PlanningFiles& files, const Node& care, const std::string& standing) {
  read::ClubFolder folder = read::read_club_folder(files.club, files.catalogue, care);
  if (!folder.faults.empty()) return folder.faults;
  ClubPlan plan;
  plan.club = std::move(folder.club);
  const club::Settings& settings = plan.club.settings;
  plan.allocation = club::allocate(plan.club, settings.block_from, settings.block_weeks);
  plan.answer = standing_answer(standing, settings);
  return plan;
}

// The evenings as the coach's phone has them, so that paper and phone say the same, also who stands with whom.
using Matters = std::map<std::pair<std::string, std::string>, door::EveningMatter>;  // by day and start

Result<Matters> matters_of(const planning::PlanningFiles& files, const serve::PagesAsked& asked, const Node& care,
                           const std::string& standing) {
  constexpr std::size_t kMostEvenings = 60;
  const planning::Reach reach{days_between(asked.from, asked.to), kMostEvenings, false};
  auto pocket = planning::pocket_of(files, asked.squad, care, asked.from, standing, reach);
  if (!pocket) return pocket.faults();
  Matters out;
  for (const Node& evening : pocket.value().find("evenings")->items) {
    const std::string start = evening.find("start")->text;
    if (asked.start && start != to_text(*asked.start)) continue;
    Node request = *evening.find("documents");
    request.set("catalogue", *pocket.value().find("catalogue"));
    auto documents = door::documents_of(request);
    if (!documents) return documents.faults();
    auto matter = door::read_evening(std::move(documents).value());
    if (!matter) return matter.faults();
    out.emplace(std::pair(evening.find("day")->text, start), std::move(matter).value());
  }
  return out;
}

Result<serve::PagesMade> pages_of(const planning::PlanningFiles& files, const serve::PagesAsked& asked,
                                  const Node& care, const std::string& standing) {
  const auto plan = plan_of(files, care, standing);
  if (!plan) return plan.faults();
  const club::ClubSquad* squad = plan.value().club.find(asked.squad);
  if (squad == nullptr) return serve::PagesMade{};
  auto matters = matters_of(files, asked, care, standing);
  if (!matters) return matters.faults();
  const auto index = static_cast<std::size_t>(squad - plan.value().club.squads.data());
  plan::KernelWorkspace workspace;
  std::vector<EveningPages> evenings;
  for (const club::PlannedSlot& slot : plan.value().allocation.calendars[index].slots) {
    auto found = matters.value().find(std::pair(to_iso(slot.date), to_text(slot.start)));
    if (found == matters.value().end()) continue;
    auto made = evening_pages(std::move(found->second), plan.value(), *squad, slot, draw::Paper::kA4, workspace);
    if (!made) return made.faults();
    if (asked.start && made.value().nothing_fits) return serve::PagesMade{{}, made.value().no_session};
    evenings.push_back(std::move(made).value());
  }
  std::vector<const draw::Pages*> pages;
  for (const EveningPages& evening : evenings) {
    const auto& page = asked.with_names ? evening.slip : evening.card;
    if (page) pages.push_back(&*page);
  }
  auto pdf = one_pdf(pages);
  if (!pdf) return pdf.faults();
  return serve::PagesMade{std::move(pdf).value(), {}};
}

Result<std::string> clinic_pack_of(const planning::PlanningFiles& files, const std::string& id) {
  const read::ClubFolder folder = read::read_club_folder(files.club, files.catalogue);
  if (!folder.faults.empty()) return folder.faults;
  const club::ClubSquad* squad = folder.club.find(id);
  if (squad == nullptr) return std::string();
  const auto source = clinic_source_of(folder.club, *squad);
  if (!source) return source.faults();
  const auto pack = draw::draw_clinic(clinic_matter(source.value()), draw::Paper::kA4);
  if (!pack) return pack.faults();
  return draw::write_pdf(pack.value());
}

Result<std::string> calendar_of(const ClubPlan& plan, const std::string& id, std::int64_t when) {
  const club::ClubSquad* squad = plan.club.find(id);
  if (squad == nullptr) return std::string();
  return club::to_icalendar(calendar_events(plan, *squad),
                            calendar_stamp(std::chrono::system_clock::time_point(std::chrono::seconds(when))));
}

// Of the whole club at once, since lanes are shared out among all: as long as the folder is as it was it is not read
// anew.
struct ClubEvenings {
  std::map<std::string, std::pair<club::FollowedSquad, std::vector<club::FollowedEvening>>> squads;
  Date from;
};

Result<ClubEvenings> club_evenings(const planning::PlanningFiles& files) {
  const auto plan = plan_of(files, Node::make_table(), {});
  if (!plan) return plan.faults();
  const club::Club& club = plan.value().club;
  ClubEvenings out{{}, club.settings.block_from};
  for (std::size_t i = 0; i < club.squads.size(); ++i) {
    const club::ClubSquad& squad = club.squads[i];
    out.squads.try_emplace(squad.id, club::FollowedSquad{club.settings.name, squad.id, squad.squad.name},
                           club::followed_evenings(plan.value().allocation.calendars[i]));
  }
  return out;
}

using KeptEvenings = KeptAnswers<ClubEvenings>;

Result<std::optional<serve::Followed>> followed_of(const planning::PlanningFiles& files, KeptEvenings& kept,
                                                   const std::string& id, const std::string& before,
                                                   const serve::Now& now) {
  const auto club =
      kept.get("evenings", planning::folder_stamp({files.club, files.catalogue}), [&] { return club_evenings(files); });
  if (!club) return club.faults();
  const auto squad = club.value()->squads.find(id);
  if (squad == club.value()->squads.end()) return std::optional<serve::Followed>();
  const auto& [who, planned] = squad->second;
  const auto said = club::said_now(club::read_kept_text(before), planned, club.value()->from, now.day, now.seconds);
  return std::optional<serve::Followed>({club::to_icalendar(who, said), club::to_kept_text(said)});
}

}  // namespace

serve::Printed printed_from(const planning::PlanningFiles& files) {
  serve::Printed out;
  out.pages = [files](const serve::PagesAsked& asked, const Node& care, const std::string& standing) {
    return pages_of(files, asked, care, standing);
  };
  out.clinic_pack = [files](const std::string& squad) { return clinic_pack_of(files, squad); };
  out.calendar = [files](const std::string& squad, const std::string& standing,
                         std::int64_t when) -> Result<std::string> {
    const auto plan = plan_of(files, Node::make_table(), standing);
    if (!plan) return plan.faults();
    return calendar_of(plan.value(), squad, when);
  };
  out.followed = [files, kept = std::make_shared<KeptEvenings>()](const std::string& squad, const std::string& before,
                                                                  const serve::Now& now) {
    return followed_of(files, *kept, squad, before, now);
  };
  return out;
}

}  // namespace lanework::cli
