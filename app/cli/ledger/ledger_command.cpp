#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <map>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/ledger/backup_words.h"
#include "app/cli/ledger/consents_command.h"
#include "app/cli/ledger/ledger_folder.h"
#include "app/cli/ledger/ledger_state.h"
#include "app/cli/ledger/season_sheets.h"
#include "app/cli/ledger/timeline_command.h"
#include "app/cli/ledger/what_remains.h"
#include "app/read/files.h"
#include "app/read/new_folder.h"
#include "app/store/archive/erasure_list.h"

namespace lanework::cli {
namespace {

constexpr std::size_t kMostInBatch = 500;

struct Flags {
  LedgerFlags ledger;
  std::string batch;
  std::string device;
  std::string author;
  std::string role = "coach";
  std::string received;
  std::string player;
  std::string out;
  std::string from;
  std::string until;
  SeasonSheetsAsked sheets;
  bool json = false;
};

const char* verdict_word(store::Verdict verdict) {
  switch (verdict) {
    case store::Verdict::kStored:
      return "stored";
    case store::Verdict::kKnown:
      return "known already";
    case store::Verdict::kOtherContent:
      return "other content than before: the first stands";
    case store::Verdict::kQuarantined:
      return "kept aside";
    case store::Verdict::kErased:
      return "about somebody who was erased: dropped";
    case store::Verdict::kNoConsent:
      return "refused";
  }
  return "";
}

// A JSON object with 'entries'. One that is wrong is told, and keeps the others from being taken in.
Result<std::vector<ledger::Entry>> read_batch(const std::string& file, const ledger::KindTable& kinds) {
  const auto bytes = read::read_file(file);
  if (!bytes) return bytes.faults();
  const auto document = parse_json(file, bytes.value());
  if (!document) return document.faults();
  const Node* list = document.value().root.find("entries");
  if (list == nullptr || list->kind != Node::Kind::kArray || list->items.empty() || list->items.size() > kMostInBatch) {
    return Fault{FaultCode::kMissing, {file, 0, 0, "entries"}, "no list of 1 to 500", "a list of 1 to 500 entries", {}};
  }
  std::vector<ledger::Entry> out;
  Faults faults;
  for (std::size_t i = 0; i < list->items.size(); ++i) {
    auto entry = ledger::read_entry(list->items[i], "entries." + std::to_string(i + 1), kinds);
    if (entry) {
      out.push_back(std::move(entry).value());
      continue;
    }
    for (Fault fault : entry.faults()) {
      fault.place.file = file;
      faults.push_back(std::move(fault));
    }
  }
  if (!faults.empty()) return faults;
  return out;
}

Result<std::string> received_at(const Flags& flags) {
  if (flags.received.empty()) return stamp_now();
  if (ledger::is_time_with_offset(flags.received)) return flags.received;
  return Fault{FaultCode::kBadDate,
               {"", 0, 0, "--received"},
               quote(flags.received),
               "a time with its offset, such as 2026-11-26T18:05:00+01:00",
               {}};
}

int make(const Flags& flags) {
  if (const auto faults = make_ledger(flags.ledger)) return report(*faults);
  std::printf("An empty ledger: %s\nKeep its key apart from it and from every backup of it.\n",
              flags.ledger.folder.c_str());
  return kDone;
}

int add(const Flags& flags) {
  const auto open = open_ledger(flags.ledger);
  if (!open) return report(open.faults());
  const auto received = received_at(flags);
  if (!received) return report(received.faults());
  const auto entries = read_batch(flags.batch, open.value().kinds);
  if (!entries) return report(entries.faults());
  const auto& roles = ledger::role_words();
  const auto role = static_cast<ledger::Role>(std::find(roles.begin(), roles.end(), flags.role) - roles.begin());
  const auto verdicts = open.value().store->take_in({flags.device, flags.author, role, false}, entries.value(),
                                                    open.value().kinds, received.value());
  if (!verdicts) return report(verdicts.faults());
  bool all_in = true;
  for (const store::EntryVerdict& verdict : verdicts.value()) {
    const bool in = verdict.verdict == store::Verdict::kStored || verdict.verdict == store::Verdict::kKnown;
    all_in = all_in && in;
    std::string line = to_text(verdict.id) + "  " + verdict_word(verdict.verdict);
    if (verdict.receipt > 0) line += ", number " + std::to_string(verdict.receipt);
    if (!verdict.why.empty()) line += ": " + verdict.why;
    std::printf("%s\n", line.c_str());
  }
  return all_in ? kDone : kAnswerIsNo;
}

std::string state_text(const ledger::State& state) {
  std::string out = std::to_string(state.latest_receipt) + " is the latest number; " +
                    std::to_string(state.sessions.size()) + " sessions, " + std::to_string(state.care.size()) +
                    " entries for care, " + std::to_string(state.injuries.size()) + " injuries\n";
  for (const ledger::Gap& gap : state.gaps) {
    out += "missing of " + gap.device + ": " + std::to_string(gap.from) +
           (gap.to > gap.from ? " to " + std::to_string(gap.to) : "") + "\n";
  }
  for (const ledger::Odd& odd : state.odd) out += to_text(odd.id) + " " + odd.what + "\n";
  if (state.not_known > 0) out += std::to_string(state.not_known) + " entries of a newer version are kept\n";
  for (const auto& [key, session] : state.sessions) {
    out += key.squad + " " + key.day + " " + key.start + ": ";
    const Node* happened = session.wrap_up ? session.wrap_up->find("happened") : nullptr;
    out += happened != nullptr ? happened->text : session.started ? "started" : "not wrapped up";
    if (session.attendance) out += ", " + std::to_string(session.attendance->find("there")->integer) + " there";
    if (session.twice) out += ", wrapped up by two";
    out += "\n";
  }
  return out;
}

int show_state(const Flags& flags) {
  const auto open = open_ledger(flags.ledger);
  if (!open) return report(open.faults());
  const auto known = state_of(open.value());
  if (!known) return report(known.faults());
  const ledger::State& state = known.value();
  if (!flags.out.empty()) {
    const std::string text = "# Made by 'lanework ledger state' from the ledger: make it anew rather than edit it.\n" +
                             to_toml(ledger::care_document(state, open.value().kinds));
    if (const auto fault = read::write_file_atomically(flags.out, text)) return report({*fault});
  }
  std::string text = flags.json ? to_json(to_node(state), 2) + "\n" : state_text(state);
  if (!flags.json && state.closed > 0) {
    text += std::to_string(state.closed) + " injuries and screenings are not shown: no consent to a record\n";
  }
  std::fputs(text.c_str(), stdout);
  return kDone;
}

Result<ledger::SheetDays> days_of(const Flags& flags) {
  Faults faults;
  const auto read = [&](const char* flag, const std::string& text) {
    const auto date = parse_iso_date(text);
    if (!date) faults.push_back({FaultCode::kBadDate, {"", 0, 0, flag}, quote(text), "a date such as 2026-11-26", {}});
    return date.value_or(Date{});
  };
  const ledger::SheetDays out{read("--from", flags.from), read("--until", flags.until)};
  if (!faults.empty()) return faults;
  if (out.from <= out.until) return out;
  return Fault{FaultCode::kContradiction, {"", 0, 0, "--until"}, flags.until, "a day not before " + flags.from, {}};
}

int write_sheets(const Flags& flags) {
  const auto days = days_of(flags);
  if (!days) return report(days.faults());
  const auto open = open_ledger(flags.ledger);
  if (!open) return report(open.faults());
  const auto state = state_of(open.value());
  if (!state) return report(state.faults());
  SeasonSheetsAsked asked = flags.sheets;
  asked.days = days.value();
  const auto sheets = season_sheets(flags.ledger, asked, state.value());
  if (!sheets) return report(sheets.faults());
  const std::map<std::string, std::string>& files = sheets.value().files;
  const Faults faults = read::write_folder_atomically(flags.out, files, [](const std::string&) { return Faults(); });
  if (!faults.empty()) return report(faults);
  const auto rows = [&](const char* file) {
    const std::string& text = files.at(file);
    return static_cast<long>(std::count(text.begin(), text.end(), '\n')) - 1;
  };
  const auto counted = [&](const char* file, const char* one, const char* many) {
    return std::to_string(rows(file)) + (rows(file) == 1 ? one : many);
  };
  std::printf("%s: %s for 'block --sessions', %s and %s for 'evidence'\n", flags.out.c_str(),
              counted("sessions.csv", " session", " sessions").c_str(),
              counted("hours.csv", " row of hours", " rows of hours").c_str(),
              counted("injuries.csv", " injury", " injuries").c_str());
  if (!sheets.value().what_went.empty()) std::printf("%s\n", sheets.value().what_went.c_str());
  if (state.value().closed + sheets.value().injuries_left_out + sheets.value().places_left_out > 0) {
    std::printf("Left out for want of consent: %lld injuries and %lld places at sessions; %lld records are closed.\n",
                static_cast<long long>(sheets.value().injuries_left_out),
                static_cast<long long>(sheets.value().places_left_out), static_cast<long long>(state.value().closed));
  }
  return kDone;
}

// People whom the list has as erased and whose keys are there all the same: an erasure that was cut off, or a restore
// that did not go by the list.
Result<std::int64_t> not_erased_yet(const Flags& flags) {
  std::error_code ignored;
  if (!std::filesystem::exists(erased_file(flags.ledger), ignored)) return std::int64_t{0};
  const auto list = store::archive::read_erasure_list(erased_file(flags.ledger));
  if (!list) return list.faults();
  const auto snapshot = open_snapshot(flags.ledger);
  if (!snapshot) return snapshot.faults();
  std::int64_t out = 0;
  const store::archive::Table& person = store::archive::tables().front();
  const auto fault = snapshot.value()->each(person, [&](const store::archive::Cells& cells) {
    const bool has_key = cells.at(position_of(person, "sealed_key")).kind != store::archive::Cell::Kind::kNull;
    if (has_key && list.value().people.count(cells.at(position_of(person, "tag")).bytes) > 0) ++out;
    return std::optional<Fault>();
  });
  if (fault) return *fault;
  return out;
}

int check(const Flags& flags) {
  const auto open = open_ledger(flags.ledger);
  if (!open) return report(open.faults());
  const auto audited = open.value().store->audit();
  if (!audited) return report(audited.faults());
  const store::Audit& audit = audited.value();
  if (const auto wrong = audit.broken_at ? audit.broken_at : audit.damaged_at) {
    std::printf("%s at number %lld: what lies there is not what was taken in%s.\n",
                audit.broken_at ? "The chain breaks" : "The seal does not open", static_cast<long long>(*wrong),
                audit.broken_at ? "" : ", or the key is another ledger's");
    return kAnswerIsNo;
  }
  const auto aside = open.value().store->quarantined();
  if (!aside) return report(aside.faults());
  const auto readable = not_erased_yet(flags);
  if (!readable) return report(readable.faults());
  std::printf("%lld entries, %lld of erased people, %zu kept aside\n", static_cast<long long>(audit.entries),
              static_cast<long long>(audit.unreadable), aside.value().size());
  if (audit.past > 0) {
    std::printf("%lld of the entries went by their time, or with whom they were about; the chain goes on over them.\n",
                static_cast<long long>(audit.past));
  }
  if (audit.entries > 0) std::printf("the last: %s\n", head_words(audit.entries, audit.head).c_str());
  for (const store::Quarantined& one : aside.value()) {
    std::printf("kept aside %s of %s: %s\n", one.received.c_str(), one.device.c_str(), one.why.c_str());
  }
  if (readable.value() == 0) return kDone;
  std::printf("%lld people are on the list of the erased and can still be read: erase them again.\n",
              static_cast<long long>(readable.value()));
  return kAnswerIsNo;
}

int erase(const Flags& flags) {
  const auto open = open_ledger(flags.ledger);
  if (!open) return report(open.faults());
  const auto received = received_at(flags);
  if (!received) return report(received.faults());
  const auto note = [&](const std::string& tag, const std::string& when) {
    return store::archive::add_to_erasure_list(erased_file(flags.ledger), tag, when);
  };
  const auto remains = what_will_remain(open.value(), flags.player);
  if (!remains) return report(remains.faults());
  const auto erased = open.value().store->erase_person(flags.player, received.value(), note);
  if (!erased) return report(erased.faults());
  if (!erased.value()) {
    std::printf("Nothing was entered about that player, or the player is erased already.\n");
    return kAnswerIsNo;
  }
  std::printf(
      "Erased: the player's key is destroyed.\n"
      "%s"
      "Keep a copy of %s apart from the backups: a restore goes by it.\n",
      what_remains_words(remains.value(), flags.player).c_str(), erased_file(flags.ledger).c_str());
  return kDone;
}

}  // namespace

void add_ledger_command(CLI::App& app, int& exit_status) {
  CLI::App* ledger = app.add_subcommand("ledger", "what happened: taken in, never changed, folded to what stands");
  ledger->require_subcommand(1);
  const auto flags = std::make_shared<Flags>();
  const auto sub = [&](const char* name, const char* help, int (*work)(const Flags&)) {
    CLI::App* command = ledger->add_subcommand(name, help);
    add_ledger_flags(*command, flags->ledger);
    command->callback([flags, work, &exit_status] { exit_status = work(*flags); });
    return command;
  };
  sub("new", "make an empty ledger and its key", make);
  CLI::App* adding = sub("add", "take in a batch of entries as one device's; sent again it changes nothing", add);
  adding->add_option("BATCH", flags->batch, "a JSON object with 'entries' (docs/formats/ledger.md)")->required();
  adding->add_option("--device", flags->device, "the device they come from")->required();
  adding->add_option("--author", flags->author, "who made them")->required();
  adding->add_option("--role", flags->role, "lead, coach, recorder; coach if not stated")
      ->check(CLI::IsMember({"lead", "coach", "recorder", "board", "operator"}));
  CLI::App* showing = sub("state", "what stands", show_state);
  showing->add_option("--care", flags->out, "also write the entries that care reads (docs/formats/entries.md) here");
  showing->add_flag("--json", flags->json, "the whole state as JSON");
  CLI::App* writing = sub("sheets", "what happened, as the spreadsheets that blocks and reports read", write_sheets);
  writing->add_option("--from", flags->from, "the first day")->required();
  writing->add_option("--until", flags->until, "the last day")->required();
  writing->add_option("--to", flags->out, "a folder that does not exist yet")->required();
  add_usual_hours(*writing, flags->sheets);
  add_timeline_command(*ledger, exit_status);
  add_consents_command(*ledger, exit_status);
  CLI::App* checking = sub("check", "go through the books: the chain, who was erased, what is kept aside", check);
  CLI::App* erasing =
      sub("erase", "destroy a player's key: what was entered about the player can no longer be read", erase);
  erasing->add_option("PLAYER", flags->player, "id of the roster")->required();
  for (CLI::App* command : {checking, erasing}) {
    command->add_option("--erased", flags->ledger.erased, "the list of the erased, if not erased.list in that folder");
  }
  for (CLI::App* command : {adding, erasing}) {
    command->add_option("--received", flags->received, "the receiver's clock, such as 2026-11-26T18:05:00+01:00 (now)");
  }
}

}  // namespace lanework::cli
