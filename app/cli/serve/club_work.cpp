#include "app/cli/serve/club_work.h"
#include "app/cli/ledger/season_calendar.h"

#include <memory>
#include <utility>
#include <vector>

#include "app/cli/evidence/season_report.h"
#include "app/cli/ledger/ledger_state.h"
#include "app/cli/ledger/season_package.h"
#include "app/cli/serve/kept_answer.h"
#include "app/cli/serve/printed_pages.h"
#include "app/planning/club_documents.h"
#include "app/planning/folder_stamp.h"
#include "app/planning/pocket.h"
#include "app/planning/season_turn.h"
#include "app/report/page_node.h"
#include "core/findings/left_out.h"

namespace lanework::cli {
namespace {

Node documents_node(const std::vector<planning::ClubDocument>& documents) {
  Node out = Node::make_array();
  for (const planning::ClubDocument& document : documents) {
    Node row = Node::make_table();
    row.set("path", Node::make_text(document.path));
    if (!document.digest.empty()) row.set("digest", Node::make_text(document.digest));
    if (document.content) row.set("content", *document.content);
    out.items.push_back(std::move(row));
  }
  return out;
}

serve::ClubFolderWork folder_work(const planning::PlanningFiles& files) {
  serve::ClubFolderWork out;
  out.documents = [files]() -> Result<Node> {
    const auto documents = planning::club_documents(files.club);
    if (!documents) return documents.faults();
    return documents_node(documents.value());
  };
  out.turn = [files] { return planning::season_turn(files); };
  out.roster = [files](const std::string& name) -> Result<std::optional<Node>> {
    const auto roster = planning::club_roster(files.club, name);
    if (!roster) return roster.faults();
    if (!roster.value()) return std::optional<Node>();
    Node row = Node::make_table();
    row.set("path", Node::make_text(roster.value()->path));
    row.set("digest", Node::make_text(roster.value()->digest));
    row.set("text", Node::make_text(roster.value()->text));
    return std::optional<Node>(std::move(row));
  };
  out.change = [files](const std::vector<serve::FolderChange>& changes) -> Result<serve::FolderChanged> {
    std::vector<planning::DocumentChange> asked;
    for (const serve::FolderChange& change : changes) asked.push_back({change.path, change.text, change.instead_of});
    const auto changed = planning::change_club(files, asked);
    if (!changed) return changed.faults();
    const bool meanwhile = !changed.value().meanwhile.empty();
    return serve::FolderChanged{documents_node(meanwhile ? changed.value().meanwhile : changed.value().now), meanwhile,
                                changed.value().lists};
  };
  return out;
}

}  // namespace

void give_folder(serve::House& house, const planning::PlanningFiles& files) {
  house.pocket = [files](const std::string& squad, const Node& care, Date today, const std::string& standing,
                         serve::Whose whose) {
    return planning::pocket_of(files, squad, care, today, standing,
                               whose == serve::Whose::kPhones ? planning::kOnAPhone : planning::kAtTheDesk);
  };
  house.printed = printed_from(files);
  house.catalogue = [files, kept = std::make_shared<KeptAnswers<std::string>>()] {
    return kept->get("catalogue", planning::folder_stamp({files.club, files.catalogue}), [&]() -> Result<std::string> {
      auto node = planning::catalogue_of(files);
      if (!node) return node.faults();
      node.value().set("version", Node::make_integer(1));
      return to_json(node.value());
    });
  };
  house.folder = folder_work(files);
  house.planned_evenings = planned_evenings(files);
}

serve::PlannedEvenings planned_evenings(const planning::PlanningFiles& files) {
  return [files](Date from, Date until) -> Result<std::vector<ledger::SessionKey>> {
    const auto calendar = planned_season(files.club, files.catalogue, {from, until});
    if (!calendar) return calendar.faults();
    std::vector<ledger::SessionKey> out;
    for (const ledger::CalendarSession& one : calendar.value()) out.push_back(one.key);
    return out;
  };
}

serve::SeasonExports season_exports(const SeasonOfHouse& season) {
  return [season](const std::string& club, Date from, Date to) -> Result<serve::SeasonTaken> {
    const auto open = open_ledger(season.ledger);
    if (!open) return open.faults();
    const auto state = state_of(open.value());
    if (!state) return state.faults();
    const SeasonSheetsAsked asked{{from, to}, season.training_minutes, season.match_minutes, season.calendar};
    const auto sheets = season_sheets(season.ledger, asked, state.value());
    if (!sheets) return sheets.faults();
    const findings::LeftOut left_out{sheets.value().injuries_left_out, sheets.value().people_left_out,
                                     sheets.value().places_left_out, state.value().closed};
    std::string said = findings::left_out_words(left_out, findings::Reader::kLead);
    if (!sheets.value().what_went.empty()) said += (said.empty() ? "" : " ") + sheets.value().what_went;
    auto zip = season_package(club, asked.days, said, sheets.value());
    if (!zip) return zip.faults();
    return serve::SeasonTaken{std::move(zip).value(), sheets.value().people};
  };
}

serve::SeasonReports season_reports(const SeasonOfHouse& season) {
  return [season, kept = std::make_shared<KeptAnswers<std::string>>()](const serve::SeasonAsked& wanted,
                                                                       const std::string& state) {
    SeasonReportAsked asked;
    asked.season.language = wanted.language;
    asked.season.ledger = season.ledger;
    asked.season.catalogue = season.ledger.catalogue;
    asked.season.from = to_iso(wanted.from);
    asked.season.to = to_iso(wanted.to);
    asked.season.usual.calendar = season.calendar;
    asked.season.usual.training_minutes = season.training_minutes;
    asked.season.usual.match_minutes = season.match_minutes;
    asked.club = wanted.club;
    std::vector<std::string> folders = {season.ledger.catalogue};
    if (!season.calendar.empty()) folders.push_back(season.calendar);
    return kept->get(
        wanted.club + ' ' + asked.season.from + ' ' + asked.season.to + ' ' + language_tag(wanted.language),
        state + '\n' + planning::folder_stamp(folders), [&]() -> Result<std::string> {
          auto made = season_report(asked);
          if (!made) return made.faults();
          Node out = report::to_node(made.value().page);
          out.set("version", Node::make_integer(1));
          if (made.value().nothing) out.set("nothing", Node::make_boolean(true));
          return to_json(out);
        });
  };
}

}  // namespace lanework::cli
