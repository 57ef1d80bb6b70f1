#include "core/door/evening_request.h"

#include <algorithm>

#include "core/people/permissions.h"
#include "core/people/read_players.h"
#include "core/people/read_restrictions.h"

namespace lanework::door {
namespace {

void append(Faults& all, const Faults& more) { all.insert(all.end(), more.begin(), more.end()); }

std::vector<std::string> player_ids(const std::vector<people::Player>& roster) {
  std::vector<std::string> ids;
  for (const people::Player& player : roster) ids.push_back(player.id);
  return ids;
}

std::vector<std::string> squad_names(const std::vector<people::Player>& roster, const session::Squad& squad) {
  std::vector<std::string> names = {squad.name};
  if (!squad.in_roster.empty()) names.push_back(squad.in_roster);
  for (const people::Player& player : roster) {
    for (const std::string& name : player.squads) {
      if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
  }
  return names;
}

// A part of the request as a document of its own; faults then name the part as their file.
class PartReader {
 public:
  explicit PartReader(const Node& request) : request_(request) {}

  Document table(const Node& from, const std::string& key, bool required) {
    const Node* node = from.find(key);
    if (node != nullptr && node->kind == Node::Kind::kTable) return {key, *node};
    if (node != nullptr || required) {
      faults_.push_back({FaultCode::kMissing,
                         {"request", 0, 0, key},
                         node == nullptr ? "nothing" : found_in_words(*node),
                         "a table",
                         {}});
    }
    return {key, Node::make_table()};
  }

  void read_catalogue(catalogue::CatalogueDocuments& out) {
    const Document catalogue = table(request_, "catalogue", true);
    out.families = table(catalogue.root, "families", true);
    out.limits = table(catalogue.root, "limits", true);
    out.gaits = table(catalogue.root, "gaits", true);
    out.sources = table(catalogue.root, "sources", true);
    read_drills(catalogue.root, out);
  }

  void read(EveningDocuments& out) {
    if (request_.find("held") == nullptr) {
      read_catalogue(out.catalogue);
    } else {
      one_of("held", "catalogue");
    }
    out.routine = table(request_, "routine", true);
    out.strip = table(request_, "strip", true);
    out.squad = table(request_, "squad", true);
    out.restrictions = table(request_, "restrictions", false);
    if (request_.find("permissions") != nullptr) out.permissions = table(request_, "permissions", true);
    if (out.permissions) one_of("permissions", "restrictions");
    const Node* roster = request_.find("roster");
    const Node nobody = Node::make_array();
    auto players = people::read_players("roster", roster == nullptr ? nobody : *roster);
    if (players) {
      out.roster = std::move(players).value();
    } else {
      append(faults_, players.faults());
    }
  }
  Faults& faults() { return faults_; }

 private:
  const Node& request_;
  Faults faults_;

  // The first is there; the second must not be.
  void one_of(const std::string& first, const std::string& second) {
    if (request_.find(second) == nullptr) return;
    faults_.push_back(
        {FaultCode::kContradiction, {"request", 0, 0, first}, second + " and " + first, "one of them", {}});
  }

  void read_drills(const Node& catalogue, catalogue::CatalogueDocuments& out) {
    const Node* drills = catalogue.find("drills");
    if (drills == nullptr || drills->kind != Node::Kind::kArray) {
      faults_.push_back(
          {FaultCode::kMissing, {"request", 0, 0, "catalogue.drills"}, "nothing", "a list of drills", {}});
      return;
    }
    for (const Node& drill : drills->items) {
      const Node* id = drill.find("id");
      const bool named = id != nullptr && id->kind == Node::Kind::kText;
      out.drills.push_back({(named ? id->text : "drill") + ".toml", drill});
    }
  }
};

// What holds players back, in whichever of its two forms; with permissions come the partners' orders.
Result<people::Restrictions> read_holding_back(const EveningDocuments& documents, const catalogue::Catalogue& catalogue,
                                               session::Squad& squad) {
  if (documents.held_back) return *documents.held_back;
  if (!documents.permissions) {
    return people::read_restrictions(documents.restrictions, player_ids(documents.roster),
                                     squad_names(documents.roster, squad));
  }
  auto permissions = people::read_permissions(*documents.permissions, player_ids(documents.roster), catalogue);
  if (!permissions) return permissions.faults();
  squad.partners.orders = std::move(permissions.value().partners);
  return std::move(permissions.value().restrictions);
}

}  // namespace

Result<EveningMatter> read_evening(EveningDocuments documents) {
  auto catalogue = catalogue::read_catalogue(documents.catalogue);
  if (catalogue) return read_evening(std::move(documents), std::move(catalogue).value());
  Faults faults = catalogue.faults();
  const auto strip = session::read_strip(documents.strip);
  if (!strip) append(faults, strip.faults());
  return faults;
}

Result<EveningMatter> read_evening(EveningDocuments documents, catalogue::Catalogue catalogue) {
  Faults faults;
  auto strip = session::read_strip(documents.strip);
  if (!strip) append(faults, strip.faults());
  auto routine = catalogue::read_routine(documents.routine, catalogue);
  if (!routine) append(faults, routine.faults());
  auto squad = session::read_squad(documents.squad, catalogue, documents.roster);
  if (!squad) {
    append(faults, squad.faults());
    return faults;
  }
  auto restrictions = read_holding_back(documents, catalogue, squad.value());
  if (!restrictions) append(faults, restrictions.faults());
  if (!faults.empty()) return faults;
  auto evening = session::make_evening(squad.value(), strip.value(), documents.roster, restrictions.value());
  if (!evening) return evening.faults();
  return EveningMatter{std::move(catalogue),      std::move(routine).value(),      std::move(strip).value(),
                       std::move(squad).value(),  std::move(restrictions).value(), std::move(documents.roster),
                       std::move(evening).value()};
}

Result<EveningDocuments> documents_of(const Node& request) {
  EveningDocuments out;
  PartReader reader(request);
  reader.read(out);
  Faults& faults = reader.faults();
  for (const auto& [key, value] : request.entries) {
    const bool known = key == "request" || key == "catalogue" || key == "routine" || key == "strip" || key == "squad" ||
                       key == "restrictions" || key == "permissions" || key == "roster" || key == "held" ||
                       key == "spread";
    if (!known) {
      faults.push_back({FaultCode::kUnknownKey,
                        {"request", 0, 0, key},
                        quote(key),
                        "request, catalogue, held, routine, strip, squad, restrictions, permissions, roster or spread",
                        {}});
    }
  }
  if (!faults.empty()) return faults;
  return out;
}

Result<catalogue::CatalogueDocuments> catalogue_documents_of(const Node& request) {
  catalogue::CatalogueDocuments out;
  PartReader reader(request);
  reader.read_catalogue(out);
  if (!reader.faults().empty()) return reader.faults();
  return out;
}

Node catalogue_node(const catalogue::CatalogueDocuments& documents) {
  Node catalogue = Node::make_table();
  Node drills = Node::make_array();
  for (const Document& drill : documents.drills) drills.items.push_back(drill.root);
  catalogue.set("drills", std::move(drills));
  catalogue.set("families", documents.families.root);
  catalogue.set("limits", documents.limits.root);
  catalogue.set("gaits", documents.gaits.root);
  catalogue.set("sources", documents.sources.root);
  return catalogue;
}

Node request_of(const std::string& name, const EveningDocuments& documents) {
  Node request = Node::make_table();
  request.set("request", Node::make_text(name));
  request.set("catalogue", catalogue_node(documents.catalogue));
  request.set("routine", documents.routine.root);
  request.set("strip", documents.strip.root);
  request.set("squad", documents.squad.root);
  if (documents.permissions) {
    request.set("permissions", documents.permissions->root);
  } else {
    request.set("restrictions", documents.restrictions.root);
  }
  request.set("roster", people::write_players(documents.roster));
  return request;
}

}  // namespace lanework::door
