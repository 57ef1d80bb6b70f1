// A million rows of canonical hours summed from their bytes, beside a bare loop that only finds where cells and rows
// end.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include "core/records/hours_stream.h"
#include "core/records/week_hours.h"
#include "core/records/write_season.h"

namespace lanework::records {
namespace {

constexpr int kSquads = 100;
constexpr int kRows = 1'000'000;

struct Made {
  Period period;
  std::vector<SquadRecord> squads;
  std::string text;
  std::int64_t player_minutes = 0;
};

// By day, so that each row has another squad than the one before.
Made make() {
  Made out;
  const Date first = *make_date(2026, 8, 3);
  out.period = make_period(first, Date{first.days_since_epoch + 300}, Date{first.days_since_epoch + 300}).value();
  for (int i = 0; i < kSquads; ++i) {
    SquadRecord squad;
    squad.id = "quillmere-u" + std::to_string(8 + i % 12) + "-" + std::to_string(i);
    squad.players = 16;
    squad.training_minutes = 75;
    squad.match_minutes = 60;
    squad.on_the_field = 9;
    out.squads.push_back(squad);
  }
  constexpr std::array<const char*, 5> kWarmUps = {"most", "half", "few", "no", ""};
  out.text = canonical_hours_heading() + "\n";
  for (int i = 0; i < kRows; ++i) {
    const std::int64_t mixed = i * std::int64_t{2654435761} % 1'000'003;
    const int minutes = 60 + static_cast<int>(mixed % 30);
    const int players = 10 + static_cast<int>(mixed % 9);
    const Date date{first.days_since_epoch + i / kSquads % 300};
    out.text += out.squads[static_cast<std::size_t>(i % kSquads)].id + "," + to_iso(date) +
                (mixed % 4 == 0 ? ",match," : ",training,") + std::to_string(minutes) + "," + std::to_string(players) +
                ",,," + kWarmUps[static_cast<std::size_t>(mixed % 5)] + ",12,,,yes\n";
    out.player_minutes += std::int64_t{minutes} * players;
  }
  return out;
}

const Made& made() {
  static const Made kMade = make();
  return kMade;
}

void count_rows(benchmark::State& state) {
  state.counters["rows_a_second"] =
      benchmark::Counter(static_cast<double>(state.iterations()) * kRows, benchmark::Counter::kIsRate);
  state.SetBytesProcessed(static_cast<std::int64_t>(state.iterations()) *
                          static_cast<std::int64_t>(made().text.size()));
}

void BM_finding_separators(benchmark::State& state) {
  std::array<std::size_t, 64> ends{};
  for (auto _ : state) {
    std::size_t cells = 0;
    std::size_t rows = 0;
    const std::string& text = made().text;
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (text[i] == ',') {
        ends[cells++ % ends.size()] = i;
      } else if (text[i] == '\n') {
        ends[cells % ends.size()] = i;
        benchmark::DoNotOptimize(ends);
        cells = 0;
        ++rows;
      }
    }
    benchmark::DoNotOptimize(rows);
  }
  count_rows(state);
}
BENCHMARK(BM_finding_separators)->Unit(benchmark::kMillisecond);

void BM_hours_stream(benchmark::State& state) {
  for (auto _ : state) {
    HoursStream stream("hours.csv", made().squads, made().period);
    constexpr std::size_t kPiece = 65536;
    std::string_view rest = made().text;
    for (; !rest.empty(); rest.remove_prefix(std::min(kPiece, rest.size()))) stream.take(rest.substr(0, kPiece));
    auto table = std::move(stream).finish();
    benchmark::DoNotOptimize(table);
  }
  count_rows(state);
}
BENCHMARK(BM_hours_stream)->Unit(benchmark::kMillisecond);

// The answer before the time.
bool sums_are_right() {
  HoursStream stream("hours.csv", made().squads, made().period);
  stream.take(made().text);
  const auto table = std::move(stream).finish();
  if (!table || table.value().rows != kRows) return false;
  std::int64_t sum = 0;
  for (std::size_t squad = 0; squad < made().squads.size(); ++squad) {
    for (std::size_t week = 0; week < table.value().weeks(); ++week) {
      for (const Setting setting : {Setting::kTraining, Setting::kMatch})
        sum += table.value().at(squad, week, setting).hours.count;
    }
  }
  return sum == made().player_minutes;
}

}  // namespace
}  // namespace lanework::records

int main(int argc, char** argv) {
  if (!lanework::records::sums_are_right()) {
    std::fputs("the stream's sums are wrong\n", stderr);
    return 1;
  }
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
