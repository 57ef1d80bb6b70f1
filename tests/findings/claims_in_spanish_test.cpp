// The Spanish sentences say what the English ones say: the same claims, with the same numbers in the same order, and no
// English word among them.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <functional>
#include <set>

#include "core/findings/reporting_items.h"
#include "tests/findings/both_languages.h"
#include "tests/findings/told_season.h"

namespace lanework::findings {
namespace {

using Change = std::function<void(SeasonFindings&)>;

WatchedSeason watched_of(int alarms) {
  WatchedSeason out;
  out.weeks.resize(10);
  for (int i = 0; i < alarms; ++i) out.weeks[static_cast<std::size_t>(i)].alarm = true;
  out.false_alarms = 0.48;
  return out;
}

SquadFindings squads_of(int outside) {
  SquadFindings out;
  for (std::size_t squad = 0; squad < 3; ++squad) {
    const int injuries = static_cast<int>(squad) < outside ? 12 : 4;
    out.squads.push_back({squad, injuries, 1000, 4, {}, {0.4, 1.9}, {0.2, 2.5}});
  }
  return out;
}

// Every sentence that there is, by a change of the season that makes it stand.
std::vector<Change> changes_of_records() {
  return {
      [](SeasonFindings&) {},
      [](SeasonFindings& f) {
        f.completeness.weeks = {{20, 40, {}}, {18, 40, {}}};
      },
      [](SeasonFindings& f) { f.whole.rows.front() = row(0, 8000); },
      [](SeasonFindings& f) { f.whole.rows.front() = row(3, 0); },
      [](SeasonFindings& f) { f.severity.back().injuries = 1; },
      [](SeasonFindings& f) {
        f.whole.rows.front().injuries = 1;
        f.whole.rows.front().median_days = 1;
        f.whole.rows.front().open = 1;
      },
      [](SeasonFindings& f) { f.reach.squads = {}; },
      [](SeasonFindings& f) { f.reach.squads.resize(1); },
      [](SeasonFindings& f) { f.reach.squads[0].sessions[3] = 0; },
      [](SeasonFindings& f) {
        f.reach.squads[0].first_half = 1.9;
        f.reach.squads[0].second_half = 1.25;
      },
  };
}

std::vector<Change> changes_of_comparisons() {
  return {
      [](SeasonFindings& f) { f.warm_ups.why_not = "12 / 7"; },
      [](SeasonFindings& f) { f.hours_wanted->more = 0; },
      [](SeasonFindings& f) { f.hours_wanted->more = 4321; },
      [](SeasonFindings& f) { f.prevalence = prevalence_of(0, 0); },
      [](SeasonFindings& f) {
        f.prevalence = prevalence_of(200, 40);
        f.prevalence->injuries_left_out = 1;
      },
      [](SeasonFindings& f) {
        f.prevalence = prevalence_of(200, 40);
        f.prevalence->season.limits.reset();
        f.prevalence->listed = false;
        f.prevalence->injuries_left_out = 12;
      },
      [](SeasonFindings& f) {
        f.often = often_of(0.7, {0.5, 0.9});
        f.often.compared.ratio_by_squads.reset();
      },
      [](SeasonFindings& f) {
        f.often = often_of(0.7, {0.5, 0.9});
        f.often.by_setting = false;
        f.often.needed = evidence::needed_to_treat(3, {2, 4});
      },
  };
}

std::vector<Change> changes() {
  std::vector<Change> out = changes_of_records();
  for (Change& change : changes_of_comparisons()) out.push_back(std::move(change));
  for (const evidence::Interval limits : {evidence::Interval{0.6, 0.9}, {1.1, 1.4}, {0.95, 1.05}, {0.7, 1.4}}) {
    out.push_back([=](SeasonFindings& f) {
      f.warm_ups.limits = limits;
      f.warm_ups.averted = Averted{12.3, {4.2, 19.8}};
      f.often = often_of(0.7, limits);
      f.matches_by_training = Compared{{20, 2000}, {20, 8000}, 4, {limits, 0.5}};
      f.taught = taught_of(0.3, {limits.low - 1, limits.high - 1});
    });
  }
  for (const int count : {0, 1, 2, 7}) {
    out.push_back([=](SeasonFindings& f) {
      f.completeness.open_events = count;
      f.watched = watched_of(count);
      f.squads = squads_of(std::min(count, 3));
      f.histories = histories_of(count == 1 ? 0 : 120, count, 0);
      f.recurrent = recurrent_share(f.histories, 0.95);
      f.completeness.hours = records::PlayerMinutes(60000);
      f.completeness.hours_by_default[1] = records::PlayerMinutes(20000);
      f.completeness.hours_defaulted_and_confirmed = records::PlayerMinutes(count * 1000);
    });
  }
  return out;
}

TEST(ClaimsInSpanish, AreTheEnglishOnesWithTheSameNumbers) {
  std::set<ClaimKind> seen;
  for (const Change& change : changes()) {
    SeasonFindings found = quiet_season();
    change(found);
    for (const Reader reader : {Reader::kLead, Reader::kBoard}) {
      found.asked.language = Language::kEnglish;
      const std::vector<Claim> english = claims(found, reader);
      found.asked.language = Language::kSpanish;
      const std::vector<Claim> spanish = claims(found, reader);
      ASSERT_EQ(english.size(), spanish.size());
      for (std::size_t i = 0; i < english.size(); ++i) {
        seen.insert(english[i].kind);
        EXPECT_EQ(english[i].kind, spanish[i].kind);
        EXPECT_EQ(english[i].too_early, spanish[i].too_early);
        EXPECT_EQ(numbers_in(english[i].sentence, Language::kEnglish),
                  numbers_in(spanish[i].sentence, Language::kSpanish))
            << english[i].sentence << "\n"
            << spanish[i].sentence;
        EXPECT_EQ(english_word_in(spanish[i].sentence), "") << spanish[i].sentence;
        EXPECT_NE(english_word_in(english[i].sentence), "")
            << "the list of English words has none of: " << english[i].sentence;
      }
    }
  }
  EXPECT_EQ(seen.size(), static_cast<std::size_t>(ClaimKind::kCaution) + 1) << "a kind of claim is never made here";
}

// As claims_test has it of the English ones: 'menos' and 'más' only where the interval lies on that side, cause never.
RC_GTEST_PROP(ClaimsInSpanish, NoMoreThanTheIntervalAllows, ()) {
  SeasonFindings found = quiet_season();
  found.asked.language = Language::kSpanish;
  const double low = *rc::gen::inRange(1, 300) / 100.0;
  const double high = low + *rc::gen::inRange(1, 200) / 100.0;
  found.warm_ups.limits = {low, high};
  found.warm_ups.averted = Averted{5, {1 - low, 8}};
  found.often = often_of((low + high) / 2, {low, high});
  found.taught = taught_of(low, {low - 1, high - 1});
  std::string text;
  for (const Claim& claim : claims(found, Reader::kLead)) text += claim.sentence + "\n";
  const auto has = [&](const char* piece) { return text.find(piece) != std::string::npos; };
  RC_ASSERT(has("tuvieron menos lesiones en las semanas") == (high < 1));
  RC_ASSERT(has("tuvieron más lesiones en las semanas") == (low > 1));
  RC_ASSERT(has("por semana tuvieron menos lesiones") == (high < 1));
  RC_ASSERT(has("por semana tuvieron más lesiones") == (low > 1));
  RC_ASSERT(has("recibió formación hicieron más") == (low > 1));
  RC_ASSERT(has("recibió formación hicieron menos") == (high < 1));
  RC_ASSERT(!has("ahorrado") || high < 1);
  for (const char* word :
       {" causa ", " causan", " causó", "previen", "preven", "demuestra", "prueba que", "gracias a", "debido a"})
    RC_ASSERT(!has(word) || (std::string(word) == " causa " && has("Si fuera causa y efecto")));
}

TEST(ReportingItemsInSpanish, AreTheEnglishOnes) {
  SeasonFindings found = quiet_season();
  const std::vector<ReportingItem> english = reporting_items(found);
  found.asked.language = Language::kSpanish;
  const std::vector<ReportingItem> spanish = reporting_items(found);
  ASSERT_EQ(english.size(), spanish.size());
  for (std::size_t i = 0; i < english.size(); ++i) {
    EXPECT_EQ(english[i].number, spanish[i].number);
    EXPECT_EQ(english[i].covered, spanish[i].covered);
    EXPECT_EQ(numbers_in(english[i].how, Language::kEnglish), numbers_in(spanish[i].how, Language::kSpanish));
    EXPECT_EQ(english_word_in(spanish[i].item + " " + spanish[i].how), "") << spanish[i].how;
  }
}

}  // namespace
}  // namespace lanework::findings
