#include "app/cli/serve/release_command.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <memory>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/serve/club_work.h"
#include "app/cli/serve/record_regions.h"
#include "app/cli/serve/rooms_of_ledger.h"
#include "app/serve/releasing.h"

namespace lanework::cli {
namespace {

struct Flags {
  LedgerFlags ledger;
  std::string from;
  std::string until;
  std::string asked;
  std::string calendar;
  bool dry_run = false;
  bool json = false;
};

Result<release::Period> period_of(const Flags& flags) {
  Faults faults;
  const auto read = [&](const char* flag, const std::string& text) {
    if (const auto date = parse_iso_date(text)) return *date;
    const Place place{"", 0, 0, flag};
    faults.push_back({FaultCode::kBadDate, place, quote(text), "a date such as 2026-11-26", {}});
    return Date{};
  };
  const release::Period out{read("--from", flags.from), read("--until", flags.until)};
  if (!faults.empty()) return faults;
  return out;
}

void print_table(const release::Release& release, release::Table table) {
  const auto& rows = release.whole.of(table);
  const bool any =
      std::any_of(rows.begin(), rows.end(), [&](const auto& row) { return release.shows(table, row.first); });
  std::printf("injuries by %s%s\n", release::table_key(table),
              any ? "" : (std::string(": every row is ") + release::kHidden).c_str());
  if (!any) return;
  std::vector<std::vector<std::string>> cells;
  for (const auto& [key, count] : rows) {
    cells.push_back({key, release.shows(table, key) ? std::to_string(count.injuries) : release::kHidden});
  }
  std::fputs(in_columns(cells, "  ").c_str(), stdout);
}

void print_sessions(const release::Release& release) {
  constexpr std::int64_t kMinutes = 60;
  std::vector<std::vector<std::string>> cells = {
      {"squad", "held", "cut short", "missed", "most did it", "half", "few", "player-hours confirmed"}};
  for (const auto& [squad, done] : release.whole.done) {
    cells.push_back({squad});
    for (const std::int64_t count : {done.held, done.cut_short, done.missed, done.most, done.half, done.few,
                                     (done.player_minutes + kMinutes / 2) / kMinutes}) {
      cells.back().push_back(std::to_string(count));
    }
  }
  std::fputs(in_columns(cells, "  ").c_str(), stdout);
}

void print_beside(const release::Release& release) {
  if (release.planned) {
    const release::Planned all = release::of_all(*release.planned);
    std::printf("evenings planned: %lld; nobody told of %lld of them\n", static_cast<long long>(all.evenings),
                static_cast<long long>(all.untold));
  }
  if (release.compared) {
    const release::Compared& one = *release.compared;
    std::printf("rate by that of release %lld (%s to %s): %.2f, 95 %% limits %.2f to %.2f\n",
                static_cast<long long>(one.release), to_iso(one.period.from).c_str(), to_iso(one.period.until).c_str(),
                one.ratio, one.low, one.high);
  }
  if (!release.asked.empty()) std::printf("asked of the board: %s\n", release.asked.c_str());
}

void print_release(const release::Made& made) {
  const release::Release& release = made.release;
  std::printf("Release %lld of %s: %s to %s\n", static_cast<long long>(release.number), release.club.c_str(),
              to_iso(release.period.from).c_str(), to_iso(release.period.until).c_str());
  print_sessions(release);
  print_beside(release);
  if (release.silent) {
    std::puts("Nothing is said of injuries.");
  } else {
    std::printf("all injuries: %lld\n", static_cast<long long>(release.whole.all.injuries));
    for (const release::Table table : release::kEveryTable) print_table(release, table);
  }
  for (const std::string& remark : release.remarks) std::printf("%s\n", remark.c_str());
  std::puts("\nFor the lead alone: what anybody can work out of all releases.");
  for (const std::string& one : made.tried) std::printf("%s\n", one.c_str());
  for (const release::NotGiven& one : made.not_given) std::printf("  %s\n", release::in_words(one).c_str());
}

using PlannedOrNone = std::optional<std::vector<ledger::SessionKey>>;

Result<PlannedOrNone> planned_of(const Flags& flags, const release::Period& period) {
  if (flags.calendar.empty()) return PlannedOrNone();
  const auto catalogue = catalogue_folder(flags.ledger.catalogue);
  if (!catalogue) return catalogue.faults();
  auto planned = planned_evenings({flags.calendar, catalogue.value()})(period.from, period.until);
  if (!planned) return planned.faults();
  return PlannedOrNone(std::move(planned).value());
}

int make(const Flags& flags) {
  const auto period = period_of(flags);
  if (!period) return report(period.faults());
  const auto open = open_ledger(flags.ledger);
  if (!open) return report(open.faults());
  auto room = rooms_of(flags.ledger)();
  if (!room) return report(room.faults());
  const auto regions = record_regions(flags.ledger.catalogue);
  if (!regions) return report(regions.faults());
  const auto planned = planned_of(flags, period.value());
  if (!planned) return report(planned.faults());
  const serve::ReleaseAsked asked{period.value(), flags.asked, planned.value()};
  const serve::Drawn drawn = serve::draw_release(room.value(), open.value().kinds, regions.value(), asked,
                                                 serve::now_at(serve::seconds_of_clock()));
  if (!drawn.made) return report(drawn.refused.faults);
  if (!flags.dry_run) {
    const auto kept = serve::keep_release(room.value(), drawn.made->release);
    if (!kept) return report(kept.faults());
    if (!kept.value()) {
      std::puts("Another release was made meanwhile: look at it first.");
      return kAnswerIsNo;
    }
  }
  if (flags.json) {
    std::printf("%s\n", to_json(serve::for_the_lead(*drawn.made), 2).c_str());
  } else {
    print_release(*drawn.made);
    std::puts(flags.dry_run ? "Nothing was released." : "Released: it stands as it is, whatever is entered later.");
  }
  return kDone;
}

}  // namespace

void add_release_command(CLI::App& app, int& exit_status) {
  CLI::App* command =
      app.add_subcommand("release", "what the board is given of a season or a half, audited (docs/model/release.md)");
  const auto flags = std::make_shared<Flags>();
  add_ledger_flags(*command, flags->ledger);
  command->add_option("--from", flags->from, "the first day")->required();
  command->add_option("--until", flags->until, "the last day; it is over")->required();
  command->add_option("--asked", flags->asked, "what is asked of the board, in your own words; nobody's name");
  command->add_option("--calendar", flags->calendar,
                      "a club's folder: of how many evenings of its calendar nobody told");
  command->add_flag("--dry-run", flags->dry_run, "print it, and keep nothing");
  command->add_flag("--json", flags->json, "as JSON, with what anybody can work out");
  command->callback([flags, &exit_status] { exit_status = make(*flags); });
}

}  // namespace lanework::cli
