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

#include "app/cli/care/evening_weather.h"
#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/evening_pages.h"
#include "app/cli/page_files.h"
#include "app/cli/planned_evening.h"
#include "app/cli/share_out.h"

namespace lanework::cli {
namespace {

struct CardsFlags {
  ClubPlanFlags plan;
  std::string out;
  std::string paper = "a4";
  std::vector<std::string> formats = {"pdf"};
  int week = 1;
  bool all_weeks = false;
  std::string date;     // only this day's
  std::string weather;  // of that day
  std::string now;
  unsigned threads = 0;
};

// What all evenings of the day share.
struct Tonight {
  std::optional<Date> date;
  std::optional<EveningWeather> weather;
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
  std::string no_session;  // in words, where none can be planned or there must be none
};

// Of the block's weeks the one that is asked for, or all, or one day.
bool is_asked(const ClubPlan& plan, const CardsFlags& flags, const Tonight& tonight, Date date) {
  if (tonight.date) return date == *tonight.date;
  return flags.all_weeks || days_between(plan.club.settings.block_from, date) / 7 + 1 == flags.week;
}

std::vector<Job> jobs_of(const ClubPlan& plan, const CardsFlags& flags, const Tonight& tonight) {
  std::vector<Job> jobs;
  for (const std::size_t at : plan.asked) {
    const std::vector<club::PlannedSlot>& slots = plan.allocation.calendars[at].slots;
    for (const club::PlannedSlot& slot : slots) {
      if (!is_asked(plan, flags, tonight, slot.date)) continue;
      const auto that_day = std::count_if(slots.begin(), slots.end(),
                                          [&](const club::PlannedSlot& other) { return other.date == slot.date; });
      std::string clock = to_text(slot.start);
      clock.erase(std::remove(clock.begin(), clock.end(), ':'), clock.end());
      jobs.push_back({&plan.club.squads[at], &slot, to_iso(slot.date) + (that_day > 1 ? "-" + clock : "")});
    }
  }
  return jobs;
}

PageFormats formats_of(const CardsFlags& flags) {
  const auto wanted = [&](const char* name) {
    return std::find(flags.formats.begin(), flags.formats.end(), name) != flags.formats.end();
  };
  return {wanted("pdf"), wanted("svg"), wanted("png")};
}

// A session that began before anything was measured is judged by what was measured then.
std::optional<Faults> judge_weather(const EveningWeather& weather, const CardsFlags& flags,
                                    const club::ClubSquad& squad, session::Evening& evening) {
  const care::environment::Moment start = care::environment::moment_of(evening.date, evening.start);
  std::string now = flags.now;
  if (now.empty()) now = care::environment::to_iso(std::max(start, weather.weather.measured_at.value_or(start)));
  const auto change = weather_change(weather, {now, start, evening.slot, club::age_on(squad, evening.date)});
  if (!change) return change.faults();
  put_change(change.value(), evening);
  return {};
}

Done print(const ClubPlan& plan, const CardsFlags& flags, const Tonight& tonight, const Job& job,
           plan::KernelWorkspace& workspace) {
  auto matter = evening_matter(plan, *job.squad, *job.slot);
  if (!matter) return {{}, 0, matter.faults(), {}};
  if (tonight.weather) {
    if (auto faults = judge_weather(*tonight.weather, flags, *job.squad, matter.value().evening))
      return {{}, 0, *faults, {}};
  }
  const auto made =
      evening_pages(std::move(matter).value(), plan, *job.squad, *job.slot, paper_named(flags.paper), workspace);
  if (!made) return {{}, 0, made.faults(), {}};
  const EveningPages& pages = made.value();
  Done done;
  if (!pages.no_session.empty()) done.no_session = job.squad->id + " on " + job.stem + ": " + pages.no_session;
  std::vector<PageFile> files;
  const auto add = [&](const std::optional<draw::Pages>& page, const char* name) {
    if (!page) return;
    done.pages += page->sides.size();
    const auto faults = add_page_files(job.stem + name, *page, formats_of(flags), files);
    if (faults) done.faults.insert(done.faults.end(), faults->begin(), faults->end());
  };
  if (!pages.nothing_fits) add(pages.card, "-card");  // a page that nobody can use would be taken for one
  add(pages.slip, "-slip");
  if (!done.faults.empty() || files.empty()) return done;
  auto written = write_page_files(files, (std::filesystem::path(flags.out) / job.squad->id).string());
  if (!written) return {{}, 0, written.faults(), {}};
  done.paths = std::move(written).value();
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
std::vector<Done> print_all(const ClubPlan& plan, const CardsFlags& flags, const Tonight& tonight,
                            const std::vector<Job>& jobs) {
  std::vector<Done> all(jobs.size());
  Progress progress(jobs.size());
  std::thread printing([&] {
    share_out(jobs.size(), flags.threads == 0 ? all_cores() : flags.threads, [&]() -> Worker {
      return [&, workspace = std::make_shared<plan::KernelWorkspace>()](std::size_t job) {
        all[job] = print(plan, flags, tonight, jobs[job], *workspace);
        progress.one_more();
      };
    });
  });
  progress.tell_until_done();
  printing.join();
  return all;
}

// Why a week has no session: 'no session in week 5: Winter break'.
int nothing_to_print(const ClubPlan& plan, const CardsFlags& flags, const Tonight& tonight) {
  std::vector<std::string> reasons;
  for (const std::size_t at : plan.asked) {
    for (const club::MissedSlot& missed : plan.allocation.calendars[at].missed) {
      const bool told = std::find(reasons.begin(), reasons.end(), missed.why) != reasons.end();
      if (is_asked(plan, flags, tonight, missed.date) && !told) reasons.push_back(missed.why);
    }
  }
  std::string why;
  for (const std::string& reason : reasons) why += (why.empty() ? ": " : ", ") + reason;
  std::string when = flags.all_weeks ? "in the block" : "in week " + std::to_string(flags.week);
  if (tonight.date) when = "on " + to_iso(*tonight.date);
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
    if (!done.no_session.empty()) std::fprintf(stderr, "%s\n", done.no_session.c_str());
    all_fit = all_fit && done.no_session.empty();
  }
  if (!faults.empty()) return report(faults);
  std::fprintf(stderr, "%zu pages in %.1f s, %.3f s a page\n", pages, seconds,
               pages == 0 ? 0.0 : seconds / static_cast<double>(pages));
  return all_fit ? kDone : kAnswerIsNo;
}

Result<Tonight> tonight_of(const CardsFlags& flags, const ClubPlan& plan) {
  Tonight out;
  if (!flags.date.empty()) {
    out.date = parse_iso_date(flags.date);
    const club::Settings& settings = plan.club.settings;
    const Date last{settings.block_from.days_since_epoch + 7 * settings.block_weeks - 1};
    if (!out.date || *out.date < settings.block_from || last < *out.date) {
      return Fault{out.date ? FaultCode::kOutOfRange : FaultCode::kBadDate,
                   {"", 0, 0, "--date"},
                   quote(flags.date),
                   "a day of the block, " + to_iso(settings.block_from) + " to " + to_iso(last),
                   {}};
    }
  }
  if (flags.weather.empty()) return out;
  const auto folder = catalogue_folder(flags.plan.catalogue);
  if (!folder) return folder.faults();
  const std::string club = (std::filesystem::path(flags.plan.club) / "club.toml").string();
  auto weather =
      read_evening_weather(flags.weather, folder.value(), {plan.club.settings.region, {club, 0, 0, "care.region"}});
  if (!weather) return weather.faults();
  out.weather = std::move(weather).value();
  return out;
}

int cards(const CardsFlags& flags) {
  const auto began = std::chrono::steady_clock::now();
  const auto plan = load_club_plan(flags.plan);
  if (!plan) return report(plan.faults());
  const auto tonight = tonight_of(flags, plan.value());
  if (!tonight) return report(tonight.faults());
  const int weeks = plan.value().club.settings.block_weeks;
  if (flags.week < 1 || flags.week > weeks) {
    return report({{FaultCode::kOutOfRange,
                    {"", 0, 0, "--week"},
                    std::to_string(flags.week),
                    "a week of the block, 1 to " + std::to_string(weeks),
                    {}}});
  }
  const std::vector<Job> jobs = jobs_of(plan.value(), flags, tonight.value());
  if (jobs.empty()) return nothing_to_print(plan.value(), flags, tonight.value());
  const std::vector<Done> all = print_all(plan.value(), flags, tonight.value(), jobs);
  return report_all(all, std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count());
}

}  // namespace

void add_cards_command(CLI::App& app, int& exit_status) {
  CLI::App* command = app.add_subcommand("cards", "cards and slips of a week for all squads, or of a squad's block");
  const auto flags = std::make_shared<CardsFlags>();
  add_club_plan_flags(*command, flags->plan, false);
  command->add_option("--out", flags->out, "folder for the pages; a folder a squad in it")->required();
  auto* week = command->add_option("--week", flags->week, "week of the block, from 1; the first if not stated");
  auto* all = command->add_flag("--all-weeks", flags->all_weeks, "every session of the block")->excludes(week);
  auto* date =
      command->add_option("--date", flags->date, "only the sessions of this day")->excludes(week)->excludes(all);
  auto* weather = command->add_option("--weather", flags->weather, "that day's weather (docs/formats/weather.md)");
  weather->needs(date);
  command->add_option("--now", flags->now, "the moment at which the weather is asked about; each start if not stated")
      ->needs(weather);
  command->add_option("--paper", flags->paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
  command->add_option("--formats", flags->formats, "pdf, svg, png; 'pdf,png' for both; pdf if not stated")
      ->delimiter(',')
      ->check(CLI::IsMember({"pdf", "svg", "png"}));
  command->add_option("--threads", flags->threads, "threads; the pages are the same with any number")
      ->check(CLI::Range(1, 256));
  command->callback([flags, &exit_status] { exit_status = cards(*flags); });
}

}  // namespace lanework::cli
