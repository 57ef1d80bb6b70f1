#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <map>
#include <memory>
#include <optional>
#include <utility>

#include "app/cli/care/private_pages.h"
#include "app/cli/club_plan.h"
#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/ledger/timeline_command.h"
#include "app/cli/page_files.h"
#include "app/cli/serve/rooms_of_ledger.h"
#include "app/cli/today.h"
#include "app/draw/form.h"
#include "app/draw/form_words.h"
#include "app/planning/planned_evenings.h"
#include "app/read/files.h"
#include "app/serve/now.h"
#include "core/catalogue/read_catalogue.h"
#include "core/ledger/consent.h"
#include "core/ledger/timeline.h"

namespace lanework::cli {
namespace {

constexpr const char* kForTheGuardian =
    "For the guardian of this child, handed over in person by the lead, who has made sure who asks. It names a child.";
constexpr const char* kWhatItIs =
    "Everything that the club's ledger holds of this child on that day, as it was entered; people without medical "
    "training entered it, and it is no diagnosis. Cards and plans that were made from files are not in the ledger.";

struct TimelineFlags {
  LedgerFlags ledger;
  std::string player;
  std::string out;
  std::string paper = "a4";
  int days = 365;
  bool own_copy = false;
};

using Names = std::map<std::string, std::string>;  // of accounts

std::string who(const Names& names, const std::string& account) {
  const auto found = names.find(account);
  return found == names.end() ? account : found->second;
}

draw::FormSection section_of(const char* heading, const char* none, const std::vector<ledger::TimelineLine>& lines,
                             const Names& names) {
  draw::FormSection out;
  out.heading = heading;
  if (lines.empty()) out.note = none;
  for (const ledger::TimelineLine& line : lines) {
    const std::string role(ledger::role_words()[static_cast<std::size_t>(line.role)]);
    out.fields.push_back({ledger::minute_of(line.received),
                          {line.what, "entered by " + who(names, line.author) + ", " + role},
                          1,
                          false,
                          {}});
  }
  return out;
}

draw::FormSection looked(const std::vector<store::ReadNote>& notes, const Names& names) {
  draw::FormSection out;
  out.heading = "Who asked for what stands here";
  if (notes.empty())
    out.note = "Nobody by the server. What was read as part of a squad's list is not kept child by child.";
  for (const store::ReadNote& note : notes) {
    out.fields.push_back({ledger::minute_of(serve::now_at(note.when).stamp),
                          {who(names, note.account) + ": " + note.route},
                          1,
                          false,
                          {}});
  }
  return out;
}

Result<draw::FormSection> planned(store::Queue& queue, const catalogue::Catalogue& catalogue,
                                  const std::vector<std::string>& squads, Date from, const serve::Now& now) {
  draw::FormSection out;
  out.heading = "What was planned for the squad";
  for (const std::string& squad : squads) {
    constexpr std::size_t kMostPlans = 10'000;
    const auto kept = queue.plans(squad, kMostPlans);
    if (!kept) return kept.faults();
    std::vector<planning::MadePlan> plans;
    for (auto plan = kept.value().rbegin(); plan != kept.value().rend(); ++plan) {
      const auto whole = queue.plan_at(squad, plan->made);
      if (!whole) return whole.faults();
      if (whole.value()) plans.push_back({serve::now_at(plan->made).stamp, whole.value()->text});
    }
    for (const planning::PlannedEvening& evening : planning::planned_evenings(squad, plans, from, now.stamp)) {
      std::string drills;
      for (const std::string& id : evening.drills) drills += (drills.empty() ? "" : "; ") + drill_name(id, catalogue);
      out.fields.push_back(
          {evening.begins,
           {squad + ", " + std::to_string(evening.minutes) + " min: " + drills, "planned " + evening.planned},
           1,
           false,
           {}});
    }
  }
  if (out.fields.empty()) out.note = "The server made no plan for an evening of these days.";
  return out;
}

Result<catalogue::Catalogue> shipped_catalogue(const std::string& asked) {
  const auto folder = catalogue_folder(asked);
  if (!folder) return folder.faults();
  const auto documents = read::read_catalogue_folders({folder.value()});
  if (!documents) return documents.faults();
  return catalogue::read_catalogue(documents.value());
}

Result<draw::FormMatter> read_matter(const TimelineFlags& flags, const ledger::KindTable& kinds, serve::Room& room) {
  const auto lists = room.directory->lists();
  if (!lists) return lists.faults();
  const auto& players = lists.value().players;
  const auto player =
      std::find_if(players.begin(), players.end(), [&](const auto& one) { return one.id == flags.player; });
  if (player == players.end()) {
    return Fault{FaultCode::kUnknownName,
                 {"", 0, 0, "PLAYER"},
                 quote(flags.player),
                 "the id of a player on the club's lists",
                 "'lanework import' brings the lists in"};
  }
  const serve::Now now = serve::now_at(serve::seconds_of_clock());
  auto about = room.store->entries_about(flags.player, kinds);
  if (!about) return about.faults();
  ledger::Open shown{about.value(), 0};
  if (!flags.own_copy) shown = ledger::only_open(std::move(about).value(), kinds);
  const auto evenings = room.store->entries_of_days(Date{now.day.days_since_epoch - flags.days}, now.day, kinds);
  if (!evenings) return evenings.faults();
  constexpr std::size_t kMostReads = 500;
  const auto reads = room.gate->reads(flags.player, kMostReads);
  if (!reads) return reads.faults();
  const auto accounts = room.gate->accounts();
  if (!accounts) return accounts.faults();
  const auto catalogue = shipped_catalogue(flags.ledger.catalogue);
  if (!catalogue) return catalogue.faults();
  auto plans =
      planned(*room.queue, catalogue.value(), player->squads, Date{now.day.days_since_epoch - flags.days}, now);
  if (!plans) return plans.faults();
  Names names;
  for (const store::Account& account : accounts.value()) names.emplace(account.id, account.name);
  draw::FormMatter out;
  out.title = "What is kept about one child";
  out.for_whom = kForTheGuardian;
  std::string squads;
  for (const std::string& squad : player->squads) squads += (squads.empty() ? "" : ", ") + squad;
  out.facts = lists.value().club + ": " + player->name + " (" + player->id + "), " + squads + ", " + to_words(now.day);
  out.date_iso = to_iso(now.day);
  const std::string counted =
      "Warm-ups at which the child was counted by name, of the last " + std::to_string(flags.days) + " days";
  out.sections = {
      section_of("What was entered", "Nothing was ever entered about this child.", ledger::entered_about(shown.entries),
                 names),
      section_of(counted.c_str(), "None by name.", ledger::counted_at(evenings.value(), flags.player, kinds), names),
      std::move(plans).value(), looked(reads.value(), names)};
  out.foot = {kWhatItIs, draw::words::kFormRules};
  if (shown.left_out > 0) {
    out.foot.insert(out.foot.begin(), "Not shown for want of consent to an injury record: " +
                                          std::to_string(shown.left_out) + " entries (--own-copy shows them).");
  }
  return out;
}

int write(const TimelineFlags& flags) {
  const auto open = open_ledger(flags.ledger);
  if (!open) return report(open.faults());
  auto room = rooms_of(flags.ledger)();
  if (!room) return report(room.faults());
  const auto matter = read_matter(flags, open.value().kinds, room.value());
  if (!matter) return report(matter.faults());
  const auto pages = draw::draw_form(matter.value(), paper_named(flags.paper));
  if (!pages) return report(pages.faults());
  const auto written = write_private_pages("about-one-child", pages.value(), flags.out);
  if (!written) return report(written.faults());
  std::printf("%s\n%s\n", written.value().c_str(), kForTheGuardian);
  return kDone;
}

}  // namespace

void add_timeline_command(CLI::App& ledger, int& exit_status) {
  CLI::App* command =
      ledger.add_subcommand("timeline", "one child's page for a guardian: what was entered, counted and read, as PDF");
  const auto flags = std::make_shared<TimelineFlags>();
  add_ledger_flags(*command, flags->ledger);
  command->add_option("PLAYER", flags->player, "id of the lists")->required();
  command->add_option("--out", flags->out, "folder for the page")->required();
  command->add_option("--days", flags->days, "how far back evenings are looked through; 365 if not stated")
      ->check(CLI::Range(1, 3660));
  command->add_flag("--own-copy", flags->own_copy,
                    "the family's own copy: also what is closed to everybody else for want of consent");
  command->add_option("--paper", flags->paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
  command->callback([flags, &exit_status] { exit_status = write(*flags); });
}

}  // namespace lanework::cli
