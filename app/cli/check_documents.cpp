#include "app/cli/check_documents.h"

#include <utility>

#include "core/people/read_players.h"

namespace lanework::cli {
namespace {

Node catalogue_part(const catalogue::CatalogueDocuments& documents) {
  Node drills = Node::make_array();
  for (const Document& drill : documents.drills) drills.items.push_back(drill.root);
  Node node = Node::make_table();
  node.set("drills", std::move(drills));
  node.set("families", documents.families.root);
  node.set("limits", documents.limits.root);
  node.set("gaits", documents.gaits.root);
  return node;
}

}  // namespace

check::BlockDocuments check_documents(const club::ClubDocuments& from) {
  check::BlockDocuments out;
  out.club = from.club;
  for (const club::StripDocument& strip : from.strips) out.strips.push_back({strip.id, strip.file, strip.strip});
  for (const auto& catalogue : from.catalogues) out.catalogues.push_back(catalogue_part(catalogue));
  for (const club::RosterFile& roster : from.rosters) out.rosters.push_back(people::write_players(roster.players));
  for (const club::SquadDocuments& squad : from.squads) {
    out.squads.push_back({squad.id, squad.squad, squad.routine, squad.match_day_routine, squad.restrictions,
                          squad.strip_file, squad.roster, squad.catalogue});
  }
  out.reported = from.reported.root;
  return out;
}

check::SoFarDocuments check_so_far(const door::SoFar& from, const club::Club& club) {
  check::SoFarDocuments out;
  out.today = from.today;
  out.sessions = Node::make_array();
  for (const club::SessionRow& row : from.rows) {
    Node node = Node::make_table();
    node.set("squad", Node::make_text(club.squads[row.squad].id));
    node.set("date", Node::make_text(to_iso(row.date)));
    node.set("start", Node::make_text(to_text(row.start)));
    node.set("happened", Node::make_text(club::to_word(row.happened)));
    node.set("did_it", Node::make_text(club::to_word(row.did_it)));
    if (row.minutes) node.set("minutes", Node::make_integer(*row.minutes));
    Node left_out = Node::make_array();
    for (const std::string& id : row.left_out) left_out.items.push_back(Node::make_text(id));
    node.set("left_out", std::move(left_out));
    out.sessions.items.push_back(std::move(node));
  }
  return out;
}

}  // namespace lanework::cli
