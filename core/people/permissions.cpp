#include "core/people/permissions.h"

#include <algorithm>
#include <utility>

#include "core/people/contact.h"
#include "core/people/instruction.h"
#include "core/people/partners.h"
#include "core/people/swaps.h"

namespace lanework::people {
namespace {

constexpr int kWhole = 100;
constexpr int kHeavy = 3;

BarredByName barred_by(const Restriction& restriction, const catalogue::Catalogue& catalogue) {
  BarredByName out;
  out.contact = bars_contact(restriction);
  if (restriction.sits_out) return out;
  for (const catalogue::Drill& drill : catalogue.drills) {
    for (const catalogue::Rung& rung : drill.rungs) {
      if (!permits(restriction, drill, rung)) out.rungs.emplace_back(drill.id, rung.key);
    }
  }
  std::sort(out.rungs.begin(), out.rungs.end());
  return out;
}

// What is said without the end stays, so that the end is said by whoever knows what day it is.
Restriction by_name(const Restriction& restriction, const catalogue::Catalogue& catalogue) {
  Restriction without_end = restriction;
  without_end.until.reset();
  Restriction out;
  out.player = restriction.player;
  out.squad = restriction.squad;
  out.allowed_grade = kHeavy;
  out.until = restriction.until;
  out.sits_out = restriction.sits_out;
  out.instruction = instruction_for(without_end);
  out.landings_percent = restriction.landings_percent;
  out.new_eccentric_ok = restriction.new_eccentric_ok;
  out.barred = restriction.barred ? restriction.barred : barred_by(restriction, catalogue);
  return out;
}

bool is_among(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

// Collects the rows of one permissions table.
class PermissionsReader {
 public:
  PermissionsReader(const std::vector<std::string>& players, const catalogue::Catalogue& catalogue)
      : players_(players), catalogue_(catalogue) {}

  Permissions read(TableReader& reader) {
    Permissions out;
    out.restrictions.as_known = reader.text_or("as_known", "");
    for (TableReader& row : reader.tables("permission")) out.restrictions.list.push_back(read_row(row));
    for (TableReader& row : reader.tables("partners")) out.partners.push_back(read_order(row));
    reader.finish();
    return out;
  }

 private:
  const std::vector<std::string>& players_;
  const catalogue::Catalogue& catalogue_;

  std::string known_player(TableReader& reader, std::string_view key, std::string id) const {
    if (!id.empty() && !is_among(players_, id)) {
      reader.fault(FaultCode::kUnknownName, key, quote(id), "the id of a player of the roster");
    }
    return id;
  }

  Restriction read_row(TableReader& reader) const {
    Restriction out;
    out.player = known_player(reader, "player", reader.text_or("player", ""));
    out.squad = reader.text_or("squad", "");
    if (out.player.empty() == out.squad.empty()) {
      reader.fault(FaultCode::kContradiction, "player",
                   out.player.empty() ? "neither player nor squad" : "player and squad", "one of them");
    }
    out.allowed_grade = kHeavy;
    out.instruction = reader.text("instruction");
    out.until = reader.date("until");
    out.sits_out = reader.boolean_or("sits_out", false);
    out.landings_percent = static_cast<int>(reader.integer_or("landings_percent", kWhole, 0, kWhole));
    out.new_eccentric_ok = reader.boolean_or("new_eccentric", true);
    out.barred = BarredByName{read_rungs(reader), !reader.boolean_or("contact", true)};
    reader.finish();
    return out;
  }

  std::vector<std::pair<std::string, std::string>> read_rungs(TableReader& reader) const {
    std::vector<std::pair<std::string, std::string>> out;
    for (const std::vector<std::string>& names : reader.text_lists("bars")) {
      const catalogue::Drill* drill = names.empty() ? nullptr : catalogue_.find(names.front());
      if (drill == nullptr) {
        reader.fault(FaultCode::kUnknownName, "bars", quote(names.empty() ? "" : names.front()),
                     "the id of a drill, and the keys of its rungs that are barred");
        continue;
      }
      for (std::size_t i = 1; i < names.size(); ++i) {
        const auto is_it = [&](const catalogue::Rung& rung) { return rung.key == names[i]; };
        if (std::none_of(drill->rungs.begin(), drill->rungs.end(), is_it)) {
          reader.fault(FaultCode::kUnknownName, "bars", quote(names[i]), "a rung of " + quote(drill->id));
        }
        out.emplace_back(drill->id, names[i]);
      }
      for (const catalogue::Rung& rung : drill->rungs) {
        if (names.size() == 1) out.emplace_back(drill->id, rung.key);
      }
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
  }

  PartnerOrder read_order(TableReader& reader) const {
    PartnerOrder out;
    out.player = known_player(reader, "player", reader.text("player"));
    for (std::string& other : reader.texts("others")) {
      if (other == out.player || is_among(out.others, other)) {
        reader.fault(FaultCode::kDuplicate, "others", quote(other), "each other player once");
        continue;
      }
      out.others.push_back(known_player(reader, "others", std::move(other)));
    }
    for (std::string& other : reader.texts("without_contact")) {
      if (!is_among(out.others, other)) {
        reader.fault(FaultCode::kUnknownName, "without_contact", quote(other), "one of 'others'");
      }
      out.without_contact.push_back(std::move(other));
    }
    reader.finish();
    return out;
  }
};

Node texts_node(const std::vector<std::string>& texts) {
  Node out = Node::make_array();
  for (const std::string& text : texts) out.items.push_back(Node::make_text(text));
  return out;
}

// A drill's rungs together; none is named where all are barred.
Node bars_node(const BarredByName& barred, const catalogue::Catalogue& catalogue) {
  Node out = Node::make_array();
  for (auto from = barred.rungs.begin(); from != barred.rungs.end();) {
    const auto to = std::find_if(from, barred.rungs.end(), [&](const auto& rung) { return rung.first != from->first; });
    const catalogue::Drill* drill = catalogue.find(from->first);
    std::vector<std::string> names = {from->first};
    const bool all = drill != nullptr && drill->rungs.size() == static_cast<std::size_t>(to - from);
    for (auto rung = from; !all && rung != to; ++rung) names.push_back(rung->second);
    out.items.push_back(texts_node(names));
    from = to;
  }
  return out;
}

Node row_node(const Restriction& row, const catalogue::Catalogue& catalogue) {
  Node out = Node::make_table();
  out.set(row.player.empty() ? "squad" : "player", Node::make_text(row.player.empty() ? row.squad : row.player));
  out.set("instruction", Node::make_text(row.instruction));
  if (row.until) out.set("until", Node::make_text(to_iso(*row.until)));
  if (row.sits_out) out.set("sits_out", Node::make_boolean(true));
  if (row.landings_percent < kWhole) out.set("landings_percent", Node::make_integer(row.landings_percent));
  if (!row.new_eccentric_ok) out.set("new_eccentric", Node::make_boolean(false));
  if (!row.barred) return out;
  if (row.barred->contact) out.set("contact", Node::make_boolean(false));
  if (!row.barred->rungs.empty()) out.set("bars", bars_node(*row.barred, catalogue));
  return out;
}

}  // namespace

Result<Permissions> permissions_of(const Restrictions& restrictions, const std::vector<Player>& players,
                                   const PartnerRules& rules, Date from, const catalogue::Catalogue& catalogue) {
  Permissions out;
  out.restrictions.as_known = restrictions.as_known;
  for (const Restriction& restriction : restrictions.list) {
    const auto is_about = [&](const Player& player) { return player.id == restriction.player; };
    const bool about_nobody_here =
        !restriction.player.empty() && std::none_of(players.begin(), players.end(), is_about);
    if (about_nobody_here || !holds_on(restriction, from)) continue;
    out.restrictions.list.push_back(by_name(restriction, catalogue));
  }
  if (players.empty()) return out;
  const auto partners = pair_up(players, rules, from);
  if (!partners) return partners.faults();
  for (std::size_t p = 0; p < players.size(); ++p) {
    PartnerOrder order{players[p].id, {}, {}};
    for (const int other : partners.value().permitted[p]) {
      const Player& one = players[static_cast<std::size_t>(other)];
      order.others.push_back(one.id);
      if (do_without_contact(players[p], one, rules.measure)) order.without_contact.push_back(one.id);
    }
    out.partners.push_back(std::move(order));
  }
  return out;
}

Result<Permissions> read_permissions(const Document& document, const std::vector<std::string>& players,
                                     const catalogue::Catalogue& catalogue) {
  Faults faults;
  TableReader reader(document.file, &document.root, "", faults);
  Permissions out = PermissionsReader(players, catalogue).read(reader);
  if (!faults.empty()) return faults;
  return out;
}

Node write_permissions(const Permissions& permissions, const catalogue::Catalogue& catalogue) {
  Node out = Node::make_table();
  if (!permissions.restrictions.as_known.empty()) {
    out.set("as_known", Node::make_text(permissions.restrictions.as_known));
  }
  Node rows = Node::make_array();
  for (const Restriction& row : permissions.restrictions.list) rows.items.push_back(row_node(row, catalogue));
  out.set("permission", std::move(rows));
  Node orders = Node::make_array();
  for (const PartnerOrder& order : permissions.partners) {
    Node row = Node::make_table();
    row.set("player", Node::make_text(order.player));
    row.set("others", texts_node(order.others));
    if (!order.without_contact.empty()) row.set("without_contact", texts_node(order.without_contact));
    orders.items.push_back(std::move(row));
  }
  out.set("partners", std::move(orders));
  return out;
}

}  // namespace lanework::people
