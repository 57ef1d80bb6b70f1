#include "app/planning/pocket.h"

#include <algorithm>
#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <tuple>
#include <utility>

#include "app/planning/block_line.h"
#include "app/read/block_answer.h"
#include "app/read/club_folder.h"
#include "app/read/decode_text.h"
#include "app/read/files.h"
#include "app/read/known_sheet.h"
#include "core/care/emergency_sheet/read_emergency_contacts.h"
#include "core/club/allocation.h"
#include "core/door/pocket.h"

namespace lanework::planning {
namespace {

constexpr double kMillimetresInMetre = 1000;
constexpr double kSecondsInMinute = 60;

Node texts_node(const std::vector<std::string>& texts) {
  Node out = Node::make_array();
  for (const std::string& text : texts) out.items.push_back(Node::make_text(text));
  return out;
}

// 20, not 20.0; 7.5 as it is.
Node number_node(double value) {
  const auto whole = static_cast<std::int64_t>(value);
  return static_cast<double>(whole) == value ? Node::make_integer(whole) : Node::make_real(value);
}

Node pins_node(const std::vector<session::Pin>& pins) {
  Node out = Node::make_array();
  for (const session::Pin& pin : pins) {
    Node row = Node::make_table();
    row.set("drill", Node::make_text(pin.drill));
    if (!pin.rung.empty()) row.set("rung", Node::make_text(pin.rung));
    if (pin.sets > 0) row.set("sets", Node::make_integer(pin.sets));
    if (pin.amount > 0) row.set("amount", Node::make_integer(pin.amount));
    out.items.push_back(std::move(row));
  }
  return out;
}

Node routine_lines(const std::vector<catalogue::RoutineLine>& lines, const catalogue::Catalogue& catalogue) {
  Node out = Node::make_array();
  for (const catalogue::RoutineLine& line : lines) {
    const catalogue::Drill& drill = catalogue.drills[static_cast<std::size_t>(line.drill)];
    const catalogue::DoseStep& dose = drill.dose.steps[static_cast<std::size_t>(line.dose)];
    Node row = Node::make_table();
    row.set("id", Node::make_text(drill.id));
    row.set("rung", Node::make_text(drill.rungs[static_cast<std::size_t>(line.rung)].key));
    row.set("sets", Node::make_integer(dose.sets));
    row.set("amount", Node::make_integer(dose.amount));
    out.items.push_back(std::move(row));
  }
  return out;
}

// The documents of one squad, and what is made of them for one slot after the other.
class Pocket {
 public:
  Pocket(const read::ClubFolder& folder, const club::ClubSquad& squad, Date today, const std::string& standing,
         Reach reach)
      : club_(folder.club),
        documents_(folder.documents),
        squad_(squad),
        own_(*std::find_if(documents_.squads.begin(), documents_.squads.end(),
                           [&](const club::SquadDocuments& one) { return one.id == squad.id; })),
        catalogue_(folder.club.catalogue_of(squad)),
        today_(today),
        reach_(reach) {
    if (standing.empty()) return;
    auto answer = read::read_block_answer("the plan that stands", standing);
    if (answer) answer_ = std::move(answer).value();
    if (answer_) block_ = answer_->find(squad.id);
  }

  Result<Node> run() {
    const club::Allocation allocation = club::allocate(club_, club_.settings.block_from, club_.settings.block_weeks);
    const auto index = static_cast<std::size_t>(&squad_ - club_.squads.data());
    Node evenings = Node::make_array();
    for (const club::PlannedSlot& slot : allocation.calendars[index].slots) {
      const int days = days_between(today_, slot.date);
      if (days < 0 || days > reach_.days || evenings.items.size() >= reach_.evenings) continue;
      auto documents = door::pocket_documents(documents_of(slot), catalogue_);
      if (!documents) return documents.faults();
      evenings.items.push_back(evening_node(slot, door::request_of("plan", documents.value())));
    }
    const bool any = !evenings.items.empty();
    Node out = Node::make_table();
    out.set("evenings", std::move(evenings));
    out.set("catalogue", any ? door::catalogue_node(documents_.catalogues[own_.catalogue]) : Node::make_table());
    out.set("action_plans", action_plans());
    return out;
  }

 private:
  const club::Club& club_;
  const club::ClubDocuments& documents_;
  const club::ClubSquad& squad_;
  const club::SquadDocuments& own_;
  const catalogue::Catalogue& catalogue_;
  Date today_;
  Reach reach_;
  std::optional<read::BlockAnswer> answer_;
  const read::SquadBlock* block_ = nullptr;
  std::map<std::string, std::string> venues_;  // by the strip's name

  [[nodiscard]] const read::BlockSession* session_at(const club::PlannedSlot& slot) const {
    if (block_ == nullptr) return nullptr;
    const auto is_it = [&](const read::BlockSession& one) {
      return one.date == slot.date && to_text(one.start) == to_text(slot.start);
    };
    const auto found = std::find_if(block_->sessions.begin(), block_->sessions.end(), is_it);
    return found == block_->sessions.end() ? nullptr : &*found;
  }

  // Without the catalogue, which all evenings share.
  door::EveningDocuments documents_of(const club::PlannedSlot& slot) {
    door::EveningDocuments out;
    out.squad = {own_.squad.file, squad_document(slot)};
    out.routine = {slot.match_day ? own_.match_day_routine.file : own_.routine.file, routine_document(slot)};
    out.strip = {"strip", strip_document(slot)};
    out.restrictions = {"restrictions", Node::make_table()};
    out.held_back = squad_.restrictions;
    out.roster = squad_.players;
    return out;
  }

  // The squad's file as it would state that evening alone.
  [[nodiscard]] Node squad_document(const club::PlannedSlot& slot) const {
    const session::Squad on = club::squad_on(club_, squad_, slot);
    Node out = own_.squad.root;
    Node when = Node::make_table();
    when.set("date", Node::make_text(to_iso(slot.date)));
    when.set("start", Node::make_text(to_text(slot.start) + ":00"));
    when.set("minutes", number_node(static_cast<double>(slot.length.count) / kSecondsInMinute));
    if (slot.days_to_match) when.set("days_to_match", Node::make_integer(*slot.days_to_match));
    out.set("slot", std::move(when));
    Node tonight = Node::make_table();
    if (on.turnout) tonight.set("turnout", Node::make_integer(*on.turnout));
    if (!on.bans.empty()) tonight.set("bans", texts_node(on.bans));
    if (!on.pins.empty()) tonight.set("pins", pins_node(on.pins));
    out.set("tonight", std::move(tonight));
    Node kit = Node::make_table();
    kit.set("cones", Node::make_integer(on.kit.cones));
    kit.set("balls", Node::make_integer(on.kit.balls));
    kit.set("mats", Node::make_integer(on.kit.mats));
    out.set("kit", std::move(kit));
    out.set("taught", taught_by(slot));
    return out;
  }

  // Drills of the block's earlier sessions have been told and done by then, but for those that are known not to have
  // been.
  [[nodiscard]] Node taught_by(const club::PlannedSlot& slot) const {
    std::map<std::string, int> times;
    for (const auto& [drill, exposure] : squad_.squad.taught) times[drill] = exposure.times;
    for (const read::BlockSession& session : block_ == nullptr ? std::vector<read::BlockSession>() : block_->sessions) {
      if (std::tie(session.date, session.start) >= std::tie(slot.date, slot.start)) continue;
      for (const read::BlockDrill& drill : session.drills) times[drill.drill] += drill.done.value_or(true) ? 1 : 0;
    }
    Node out = Node::make_table();
    for (const auto& [drill, count] : times) out.set(drill, Node::make_integer(count));
    return out;
  }

  // The session of the plan that stands as the routine that tonight is changed from; else the house routine.
  [[nodiscard]] Node routine_document(const club::PlannedSlot& slot) const {
    const catalogue::Routine& house = club::routine_of(squad_, slot);
    Node out = slot.match_day ? own_.match_day_routine.root : own_.routine.root;
    std::vector<catalogue::RoutineLine> lines;
    const read::BlockSession* session = session_at(slot);
    if (session != nullptr) {
      for (const read::BlockDrill& drill : session->drills) {
        if (const auto line = line_of(drill, catalogue_)) lines.push_back(*line);
      }
    }
    const auto phase = [&](const catalogue::RoutineLine& line) {
      return catalogue_.drills[static_cast<std::size_t>(line.drill)].phase;
    };
    std::stable_sort(lines.begin(), lines.end(), [&](const auto& a, const auto& b) { return phase(a) < phase(b); });
    out.set("drill", routine_lines(lines.empty() ? house.lines : lines, catalogue_));
    // It was planned under this squad's ceilings, which the youngest of the routine's band need not have.
    const auto age = club::age_on(squad_, slot.date);
    if (!lines.empty() && age) {
      Node ages = Node::make_table();
      ages.set("from", Node::make_integer(*age));
      ages.set("to", Node::make_integer(std::max(*age, house.age_to)));
      out.set("ages", std::move(ages));
    }
    return out;
  }

  // The lanes that the squad has of it, and the same share of its width.
  Node strip_document(const club::PlannedSlot& slot) {
    const auto is_it = [&](const club::StripDocument& one) { return one.id == slot.strip_id; };
    const auto found = std::find_if(documents_.strips.begin(), documents_.strips.end(), is_it);
    Node out = found == documents_.strips.end() ? Node::make_table() : found->strip.root;
    const auto venue =
        std::find_if(out.entries.begin(), out.entries.end(), [](const auto& one) { return one.first == "venue"; });
    if (venue != out.entries.end()) {
      if (!slot.elsewhere) venues_[slot.strip.name] = venue->second.text;
      out.entries.erase(venue);
    }
    out.set("lanes", Node::make_integer(slot.strip.lanes));
    Node area = Node::make_table();
    area.set("width", number_node(static_cast<double>(slot.strip.area_width.count) / kMillimetresInMetre));
    area.set("length", number_node(static_cast<double>(slot.strip.area_length.count) / kMillimetresInMetre));
    out.set("area_metres", std::move(area));
    return out;
  }

  [[nodiscard]] Node evening_node(const club::PlannedSlot& slot, const Node& request) const {
    Node documents = Node::make_table();
    for (const char* part : {"routine", "strip", "squad", "permissions", "roster"}) {
      documents.set(part, *request.find(part));
    }
    Node out = Node::make_table();
    out.set("day", Node::make_text(to_iso(slot.date)));
    out.set("start", Node::make_text(to_text(slot.start)));
    out.set("minutes", number_node(static_cast<double>(slot.length.count) / kSecondsInMinute));
    if (slot.days_to_match) out.set("days_to_match", Node::make_integer(*slot.days_to_match));
    out.set("match_day", Node::make_boolean(slot.match_day));
    out.set("elsewhere", Node::make_boolean(slot.elsewhere));
    out.set("strip", Node::make_text(slot.strip.name));
    out.set("documents", std::move(documents));
    return out;
  }

  [[nodiscard]] Node action_plans() const {
    Node out = Node::make_array();
    for (const auto& [strip, file] : venues_) {
      const auto venue = read::read_toml_file(file);
      if (!venue) continue;  // the rest of the evening is no worse for it; the club's check tells of the file
      Node row = Node::make_table();
      row.set("strip", Node::make_text(strip));
      row.set("venue", venue.value().root);
      out.items.push_back(std::move(row));
    }
    return out;
  }
};

// Of a sheet with a fault nobody is on the phone, and the rest of the evening is no worse for it: the lead makes the
// page from the same sheet and is told there.
Node emergency_of(const std::string& club, const std::vector<people::Player>& players, Date today) {
  Node out = Node::make_array();
  const std::string path = club + "/emergency.csv";
  if (!std::filesystem::exists(path)) return out;
  const people::TextForms forms = read::unicode_text_forms();
  const auto sheet = read::read_known_sheet(path, care::emergency_columns(), forms);
  if (!sheet) return out;
  const auto contacts = care::read_emergency_contacts(sheet.value(), forms, players, today);
  if (!contacts) return out;
  for (const care::EmergencyContact& contact : contacts.value().contacts) {
    if (!contact.on_phone) continue;
    Node row = Node::make_table();
    row.set("player", Node::make_text(contact.player));
    row.set("guardian", Node::make_text(contact.guardian));
    row.set("phone", Node::make_text(contact.phone));
    if (!contact.allergy.empty()) row.set("allergy", Node::make_text(contact.allergy));
    if (!contact.inhaler.empty()) row.set("inhaler", Node::make_text(contact.inhaler));
    if (!contact.other.empty()) row.set("other", Node::make_text(contact.other));
    out.items.push_back(std::move(row));
  }
  return out;
}

std::string id_of(const Document& drill) {
  const Node* id = drill.root.find("id");
  return id == nullptr ? std::string() : id->text;
}

}  // namespace

Result<Node> pocket_of(const PlanningFiles& files, const std::string& squad, const Node& care, Date today,
                       const std::string& standing, Reach reach) {
  const read::ClubFolder folder = read::read_club_folder(files.club, files.catalogue, care);
  if (!folder.faults.empty()) return folder.faults;
  const club::ClubSquad* found = folder.club.find(squad);
  if (found == nullptr) {
    return Fault{FaultCode::kUnknownName,
                 {files.club + "/squads", 0, 0, {}},
                 quote(squad),
                 "the id of a squad of the club: the name of its file in squads/, without .toml",
                 {}};
  }
  auto out = Pocket(folder, *found, today, standing, reach).run();
  if (out && reach.emergency) out.value().set("emergency", emergency_of(files.club, found->players, today));
  return out;
}

Result<Node> catalogue_of(const PlanningFiles& files) {
  auto shipped = read::read_catalogue_folders({files.catalogue});
  if (!shipped) return shipped.faults();
  catalogue::CatalogueDocuments all = std::move(shipped).value();
  std::set<std::string> ids;
  for (const Document& drill : all.drills) ids.insert(id_of(drill));
  std::vector<std::string> own;
  if (std::filesystem::exists(files.club + "/club.toml")) {
    const read::ClubFolder folder = read::read_club_folder(files.club, files.catalogue);
    if (!folder.faults.empty()) return folder.faults;
    const auto& catalogues = folder.documents.catalogues;
    if (!catalogues.empty()) all = catalogues.front();
    for (const catalogue::CatalogueDocuments& one : catalogues) {
      for (const Document& drill : one.drills) {
        if (!ids.insert(id_of(drill)).second) continue;
        own.push_back(id_of(drill));
        all.drills.push_back(drill);
      }
    }
  }
  Node routines = Node::make_array();
  for (const std::string& path : read::files_in(files.catalogue + "/routines", ".toml")) {
    auto routine = read::read_toml_file(path);
    if (!routine) return routine.faults();
    routines.items.push_back(std::move(routine.value().root));
  }
  Node out = Node::make_table();
  out.set("catalogue", door::catalogue_node(all));
  out.set("own", texts_node(own));
  out.set("routines", std::move(routines));
  return out;
}

}  // namespace lanework::planning
