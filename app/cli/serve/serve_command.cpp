#include <sys/resource.h>
#include <CLI/CLI.hpp>

#include <cstdio>
#include <filesystem>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/serve/club_work.h"
#include "app/cli/serve/demo.h"
#include "app/cli/serve/injury_papers.h"
#include "app/cli/serve/keeping_flags.h"
#include "app/cli/serve/record_regions.h"
#include "app/cli/serve/rooms_of_ledger.h"
#include "app/cli/serve/worker_thread.h"
#include "app/read/files.h"
#include "app/read/reported.h"
#include "app/serve/service.h"
#include "app/store/archive/backup_notes.h"
#include "app/store/archive/erasure_list.h"

namespace lanework::cli {
namespace {

namespace fs = std::filesystem;

struct ServeFlags {
  LedgerFlags ledger;
  serve::Where where;
  serve::Tls tls;
  std::string origin;
  std::string web;
  std::string common_passwords = "/usr/share/john/password.lst";
  std::string plan_from;
  int training_minutes = 75;  // with the match's, own judgement; the report says how many hours rest on them
  int match_minutes = 60;
  serve::Keeping keeping;
  bool demo = false;
};

constexpr std::size_t kFewestCommonPasswords = 3000;
constexpr int kHashesAtOnce = 2;  // 64 MiB each

bool is_loopback(const std::string& address) { return address == "::1" || address.rfind("127.", 0) == 0; }

std::optional<Faults> check_flags(const ServeFlags& flags) {
  const bool plain = flags.tls.certificate_file.empty();
  if (!plain || is_loopback(flags.where.address)) return {};
  return Faults{{FaultCode::kContradiction,
                 {"", 0, 0, "--address"},
                 flags.where.address + " without TLS",
                 "an address of this machine only (127.0.0.1), or --tls-certificate and --tls-key",
                 "or stand behind a proxy: docs/guides/server.md"}};
}

// Whatever a crash would leave behind would hold what is kept sealed everywhere else.
void leave_no_core() {
  const rlimit none{0, 0};
  static_cast<void>(::setrlimit(RLIMIT_CORE, &none));
}

Result<serve::KnownPasswords> read_known_passwords(const ServeFlags& flags, const store::Lists& lists) {
  const auto list = read::read_file(flags.common_passwords);
  if (!list) return list.faults();
  std::vector<std::string> words = {lists.club};
  for (const store::ListedSquad& squad : lists.squads) {
    words.push_back(squad.id);
    words.push_back(squad.name);
  }
  serve::KnownPasswords out(list.value(), words);
  if (out.size() < kFewestCommonPasswords) {
    return Fault{FaultCode::kOutOfRange,
                 {flags.common_passwords, 0, 0, {}},
                 std::to_string(out.size()) + " passwords",
                 "at least 3000, one a line",
                 "Debian's package john-data has a list"};
  }
  return out;
}

Result<std::unique_ptr<serve::House>> open_house(const ServeFlags& flags, const std::string& catalogue) {
  auto kinds = read_kind_table(catalogue);
  if (!kinds) return kinds.faults();
  const auto document = read::read_toml_file((fs::path(catalogue) / "access" / "matrix.toml").string());
  if (!document) return document.faults();
  auto matrix = access::read_matrix(document.value(), kinds.value());
  if (!matrix) return matrix.faults();
  auto care = read::read_care_rules({catalogue, {}, {}});
  if (!care) return care.faults();
  const std::string web =
      flags.web.empty() ? (fs::path(catalogue).parent_path() / "web" / "served").string() : flags.web;
  auto files = serve::StaticFiles::read(web);
  if (!files) return files.faults();
  const serve::OpenRoom open = rooms_of(flags.ledger);
  auto room = open();
  if (!room) return room.faults();
  const auto lists = room.value().directory->lists();
  if (!lists) return lists.faults();
  auto known = read_known_passwords(flags, lists.value());
  if (!known) return known.faults();
  auto out =
      std::make_unique<serve::House>(std::move(kinds).value(), std::move(matrix).value(),
                                     serve::CareRules{std::move(care.value().pain), std::move(care.value().returns)},
                                     std::move(files).value(), std::move(known).value());
  auto regions = record_regions(flags.ledger.catalogue);
  if (!regions) return regions.faults();
  out->regions = std::move(regions).value();
  out->origin = flags.origin;
  out->secure = flags.where.tls.has_value() || flags.where.behind_proxy;
  out->note_erasure = [file = erased_file(flags.ledger)](const std::string& tag, const std::string& when) {
    return store::archive::add_to_erasure_list(file, tag, when);
  };
  out->keeping = flags.keeping;
  out->backups = [file = backup_notes_file(flags.ledger)] {
    const auto noted = store::archive::read_backup_notes(file);
    return serve::BackupsNoted{noted.last, noted.file, noted.checked, noted.of};
  };
  out->rooms = std::make_unique<serve::Rooms>(open);
  out->writer = std::make_unique<serve::sync::Writer>(open, out->kinds);
  out->hashes = std::make_unique<serve::PasswordHashes>(kHashesAtOnce);
  out->pace = std::make_unique<serve::Pace>();
  out->log = std::make_unique<serve::Log>([](const std::string& line) {
    std::fputs((line + "\n").c_str(), stderr);
    std::fflush(stderr);
  });
  return out;
}

// Who tries the demo finds plans there.
std::optional<Faults> ask_for_the_demo(const LedgerFlags& ledger) {
  auto room = rooms_of(ledger)();
  if (!room) return room.faults();
  const auto lists = room.value().directory->lists();
  if (!lists) return lists.faults();
  std::vector<std::string> squads;
  for (const store::ListedSquad& squad : lists.value().squads) squads.push_back(squad.id);
  const auto asked = ask_for_plans(ledger, squads);
  return asked ? std::nullopt : std::optional<Faults>(asked.faults());
}

int run(ServeFlags flags) {
  if (!flags.tls.certificate_file.empty()) flags.where.tls = flags.tls;
  if (const auto faults = check_flags(flags)) return report(*faults);
  leave_no_core();
  const auto catalogue = catalogue_folder(flags.ledger.catalogue);
  if (!catalogue) return report(catalogue.faults());
  if (flags.demo) {
    const auto made = make_demo(flags.ledger, catalogue.value());
    if (!made) return report(made.faults());
    std::fputs(made.value().c_str(), stdout);
  }
  const auto there = open_ledger(flags.ledger);
  if (!there) return report(there.faults());
  auto house = open_house(flags, catalogue.value());
  if (!house) return report(house.faults());
  if (!flags.plan_from.empty()) give_folder(*house.value(), {flags.plan_from, catalogue.value()});
  const SeasonOfHouse season{flags.ledger, flags.plan_from, flags.training_minutes, flags.match_minutes};
  house.value()->season_report = season_reports(season);
  house.value()->season_export = season_exports(season);
  house.value()->injury_paper = injury_papers({catalogue.value(), flags.plan_from});
  auto service = serve::Service::make(*house.value());
  if (!service) return report(service.faults());
  serve::Service& answers = *service.value();
  auto listener = serve::Listener::open(
      flags.where, {}, [&answers](const serve::Request& request) { return answers.answer(request); },
      [&answers](int status) { return answers.refuse(status); }, house.value()->edge);
  if (!listener) return report(listener.faults());
  const serve::Caretaker caretaker(*house.value(), flags.keeping);
  if (flags.demo && !flags.plan_from.empty()) {
    if (const auto faults = ask_for_the_demo(flags.ledger)) return report(*faults);
  }
  std::optional<WorkerThread> planning;
  if (!flags.plan_from.empty()) {
    planning.emplace(flags.ledger, planning::PlanningFiles{flags.plan_from, catalogue.value()}, house.value()->kinds);
  }
  listener.value()->stop_on_signals();
  std::printf("Lanework is at %s://%s:%u\n", flags.where.tls ? "https" : "http", flags.where.address.c_str(),
              static_cast<unsigned>(listener.value()->port()));
  std::fflush(stdout);
  listener.value()->run();
  std::fputs("What was under way is answered. Good night.\n", stdout);
  return kDone;
}

}  // namespace

void add_serve_command(CLI::App& app, int& exit_status) {
  CLI::App* command =
      app.add_subcommand("serve", "the server: sign-in, sync, and what each role may see (docs/guides/server.md)");
  const auto flags = std::make_shared<ServeFlags>();
  add_ledger_flags(*command, flags->ledger);
  command->add_option("--address", flags->where.address, "where to listen; 127.0.0.1 if not stated");
  command->add_option("--port", flags->where.port, "8765 if not stated; 0 takes any that is free");
  auto* key = command->add_option("--tls-key", flags->tls.key_file, "the certificate's key, PEM, mode 0400");
  key->needs(
      command->add_option("--tls-certificate", flags->tls.certificate_file, "the certificate with its chain, PEM")
          ->needs(key));
  command->add_flag("--behind-proxy", flags->where.behind_proxy,
                    "a proxy on this machine ends TLS and says who called");
  command->add_option("--origin", flags->origin, "how browsers name this server, such as https://warm-up.example");
  command->add_option("--threads", flags->where.threads, "that answer; 8 if not stated")->check(CLI::Range(1, 64));
  command
      ->add_option("--training-minutes", flags->training_minutes,
                   "how long a training usually is, for the season's hours where nobody confirmed them (75)")
      ->check(CLI::Range(1, 600));
  command->add_option("--match-minutes", flags->match_minutes, "the same of a match (60)")->check(CLI::Range(1, 600));
  command->add_option("--web", flags->web, "folder of the web app, if not the shipped one");
  command->add_option("--common-passwords", flags->common_passwords, "passwords that nobody may choose, one a line");
  add_plan_from(*command, flags->plan_from, false);
  add_keeping(*command, flags->keeping);
  command->add_flag("--demo", flags->demo,
                    "make the ledger of the invented club Quillmere Juniors, where there is none yet");
  command->callback([flags, &exit_status] { exit_status = run(*flags); });
}

}  // namespace lanework::cli
