#include <CLI/CLI.hpp>
#include <algorithm>
#include <chrono>
#include <condition_variable>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <mutex>
#include <thread>
#include <utility>

#include "app/cli/card_matter.h"
#include "app/cli/command.h"
#include "app/cli/page_files.h"
#include "app/cli/planned_evening.h"
#include "app/cli/share_out.h"
#include "app/cli/venue_matter.h"

namespace lanework::cli {
namespace {

struct CardsFlags {
  ClubPlanFlags plan;
  std::string out;
  std::string paper = "a4";
  std::vector<std::string> formats = {"pdf"};
  int week = 1;
  bool all_weeks = false;
  unsigned threads = 0;
};

// One evening of one squad: a card and a slip.
struct Job {
  const club::ClubSquad* squad = nullptr;
  const club::PlannedSlot* slot = nullptr;
  std::string stem;  // '2026-11-24', or '2026-11-24-1830' where a squad has two on that day
};

struct Done {
  std::vector<std::string> paths;
  std::size_t pages = 0;
  Faults faults;
  std::string nothing_fits;  // in words, where no session can be planned
};

std::vector<Job> jobs_of(const ClubPlan& plan, const CardsFlags& flags) {
  std::vector<Job> jobs;
  for (const std::size_t at : plan.asked) {
    const std::vector<club::PlannedSlot>& slots = plan.allocation.calendars[at].slots;
    for (const club::PlannedSlot& slot : slots) {
      const int week = days_between(plan.club.settings.block_from, slot.date) / 7 + 1;
      if (!flags.all_weeks && week != flags.week) continue;
      const auto that_day = std::count_if(slots.begin(), slots.end(),
                                          [&](const club::PlannedSlot& other) { return other.date == slot.date; });
      std::string clock = to_text(slot.start);
      clock.erase(std::remove(clock.begin(), clock.end(), ':'), clock.end());
      jobs.push_back({&plan.club.squads[at], &slot, to_iso(slot.date) + (that_day > 1 ? "-" + clock : "")});
    }
  }
  return jobs;
}

std::vector<std::string> drill_ids(const door::PlanAnswer& answer, const catalogue::Catalogue& catalogue) {
  std::vector<std::string> ids;
  for (const session::Item& item : answer.plan.session.items) {
    ids.push_back(catalogue.drills[static_cast<std::size_t>(item.drill)].id);
  }
  return ids;
}

PageFormats formats_of(const CardsFlags& flags) {
  const auto wanted = [&](const char* name) {
    return std::find(flags.formats.begin(), flags.formats.end(), name) != flags.formats.end();
  };
  return {wanted("pdf"), wanted("svg"), wanted("png")};
}

Done print(const ClubPlan& plan, const CardsFlags& flags, const Job& job, plan::KernelWorkspace& workspace) {
  Done done;
  const auto matter = evening_matter(plan, *job.squad, *job.slot);
  if (!matter) return {{}, 0, matter.faults(), {}};
  const door::PlanAnswer answer = door::answer_plan(matter.value(), workspace);
  if (answer.plan.outcome == plan::Outcome::kInfeasible) {
    done.nothing_fits = job.squad->id + " on " + job.stem + ": nothing fits";
    for (const std::string& demand : answer.plan.conflict.demands) done.nothing_fits += "; " + demand;
    return done;
  }
  const auto slip = door::answer_slip(matter.value(), answer);
  if (!slip) return {{}, 0, slip.faults(), {}};
  const draw::Paper paper = paper_named(flags.paper);
  draw::CardMatter card = card_matter(answer, matter.value());
  if (!job.slot->elsewhere) {  // away, the plan of the home ground would mislead
    const auto venue = venue_plan_of(job.slot->strip);
    if (!venue) return {{}, 0, venue.faults(), {}};
    if (venue.value()) card.action_plan = action_plan_matter(*venue.value(), job.slot->date);
  }
  mark_new_spell(plan, *job.squad, job.slot->date, drill_ids(answer, matter.value().catalogue), card);
  const auto card_pages = draw::draw_card(card, paper);
  if (!card_pages) return {{}, 0, card_pages.faults(), {}};
  const auto slip_pages = draw::draw_slip(slip_matter(slip.value(), answer, matter.value()), paper);
  if (!slip_pages) return {{}, 0, slip_pages.faults(), {}};
  std::vector<PageFile> files;
  const PageFormats formats = formats_of(flags);
  if (auto faults = add_page_files(job.stem + "-card", card_pages.value(), formats, files)) return {{}, 0, *faults, {}};
  if (auto faults = add_page_files(job.stem + "-slip", slip_pages.value(), formats, files)) return {{}, 0, *faults, {}};
  auto written = write_page_files(files, (std::filesystem::path(flags.out) / job.squad->id).string());
  if (!written) return {{}, 0, written.faults(), {}};
  done.paths = std::move(written).value();
  done.pages = card_pages.value().sides.size() + slip_pages.value().sides.size();
  return done;
}

// A line at least every second while the others work.
class Progress {
 public:
  explicit Progress(std::size_t count) : count_(count) {}
  void one_more() {
    const std::lock_guard<std::mutex> lock(mutex_);
    ++done_;
    changed_.notify_all();
  }
  void tell_until_done() {
    std::unique_lock<std::mutex> lock(mutex_);
    while (!changed_.wait_for(lock, std::chrono::seconds(1), [&] { return done_ == count_; })) tell();
    tell();
  }

 private:
  const std::size_t count_;
  std::size_t done_ = 0;
  std::mutex mutex_;
  std::condition_variable changed_;
  void tell() const { std::fprintf(stderr, "card %zu of %zu\n", done_, count_); }
};

// Every job's result at its own place: the number of threads changes nothing but the time.
std::vector<Done> print_all(const ClubPlan& plan, const CardsFlags& flags, const std::vector<Job>& jobs) {
  std::vector<Done> all(jobs.size());
  Progress progress(jobs.size());
  std::thread printing([&] {
    share_out(jobs.size(), flags.threads == 0 ? all_cores() : flags.threads, [&]() -> Worker {
      return [&, workspace = std::make_shared<plan::KernelWorkspace>()](std::size_t job) {
        all[job] = print(plan, flags, jobs[job], *workspace);
        progress.one_more();
      };
    });
  });
  progress.tell_until_done();
  printing.join();
  return all;
}

// Why a week has no session: 'no session in week 5: Winter break'.
int nothing_to_print(const ClubPlan& plan, const CardsFlags& flags) {
  std::vector<std::string> reasons;
  for (const std::size_t at : plan.asked) {
    for (const club::MissedSlot& missed : plan.allocation.calendars[at].missed) {
      const int week = days_between(plan.club.settings.block_from, missed.date) / 7 + 1;
      const bool told = std::find(reasons.begin(), reasons.end(), missed.why) != reasons.end();
      if ((flags.all_weeks || week == flags.week) && !told) reasons.push_back(missed.why);
    }
  }
  std::string why;
  for (const std::string& reason : reasons) why += (why.empty() ? ": " : ", ") + reason;
  const std::string when = flags.all_weeks ? "in the block" : "in week " + std::to_string(flags.week);
  std::fprintf(stderr, "no session %s%s\n", when.c_str(), why.c_str());
  return kDone;
}

int report_all(const std::vector<Done>& all, double seconds) {
  Faults faults;
  std::size_t pages = 0;
  bool all_fit = true;
  for (const Done& done : all) {
    faults.insert(faults.end(), done.faults.begin(), done.faults.end());
    for (const std::string& path : done.paths) std::printf("%s\n", path.c_str());
    pages += done.pages;
    if (!done.nothing_fits.empty()) std::fprintf(stderr, "%s\n", done.nothing_fits.c_str());
    all_fit = all_fit && done.nothing_fits.empty();
  }
  if (!faults.empty()) return report(faults);
  std::fprintf(stderr, "%zu pages in %.1f s, %.3f s a page\n", pages, seconds,
               pages == 0 ? 0.0 : seconds / static_cast<double>(pages));
  return all_fit ? kDone : kAnswerIsNo;
}

int cards(const CardsFlags& flags) {
  const auto began = std::chrono::steady_clock::now();
  const auto plan = load_club_plan(flags.plan);
  if (!plan) return report(plan.faults());
  const int weeks = plan.value().club.settings.block_weeks;
  if (flags.week < 1 || flags.week > weeks) {
    return report({{FaultCode::kOutOfRange,
                    {"", 0, 0, "--week"},
                    std::to_string(flags.week),
                    "a week of the block, 1 to " + std::to_string(weeks),
                    {}}});
  }
  const std::vector<Job> jobs = jobs_of(plan.value(), flags);
  if (jobs.empty()) return nothing_to_print(plan.value(), flags);
  const std::vector<Done> all = print_all(plan.value(), flags, jobs);
  return report_all(all, std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count());
}

}  // namespace

void add_cards_command(CLI::App& app, int& exit_status) {
  CLI::App* command = app.add_subcommand("cards", "cards and slips of a week for all squads, or of a squad's block");
  const auto flags = std::make_shared<CardsFlags>();
  add_club_plan_flags(*command, flags->plan, false);
  command->add_option("--out", flags->out, "folder for the pages; a folder a squad in it")->required();
  auto* week = command->add_option("--week", flags->week, "week of the block, from 1; the first if not stated");
  command->add_flag("--all-weeks", flags->all_weeks, "every session of the block")->excludes(week);
  command->add_option("--paper", flags->paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
  command->add_option("--formats", flags->formats, "pdf, svg, png; 'pdf,png' for both; pdf if not stated")
      ->delimiter(',')
      ->check(CLI::IsMember({"pdf", "svg", "png"}));
  command->add_option("--threads", flags->threads, "threads; the pages are the same with any number")
      ->check(CLI::Range(1, 256));
  command->callback([flags, &exit_status] { exit_status = cards(*flags); });
}

}  // namespace lanework::cli
