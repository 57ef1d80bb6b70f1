#include "core/check/check_block.h"

#include <algorithm>
#include <optional>
#include <set>
#include <tuple>
#include <utility>

#include "core/check/lane_sharing.h"
#include "core/check/read_matter.h"
#include "core/check/so_far.h"
#include "core/check/squad_evenings.h"
#include "core/check/squad_ledger.h"

namespace lanework::check {
namespace {

Result<std::vector<Matter>> read_catalogues(const std::vector<Node>& catalogues) {
  std::vector<Matter> out;
  Faults faults;
  for (const Node& node : catalogues) {
    TableReader table("catalogue", &node, "", faults);
    Matter matter;
    read_drills(table, matter);
    read_tables(table, matter);
    out.push_back(std::move(matter));
  }
  if (!faults.empty()) return faults;
  return out;
}

// One squad's block.
class SquadJudge {
 public:
  SquadJudge(const ClubMatter& club, const SquadWeek& squad, const SquadCalendar& calendar,
             const std::vector<Share>& shares, const StatedBlock& block, const SoFar* so_far)
      : club_(club), squad_(squad), calendar_(calendar), shares_(shares), block_(block), so_far_(so_far) {
    faults_.squad = squad.id;
  }

  // Faults of documents, not of the block.
  Faults judge(SquadEvenings& evenings, BlockReport& report) {
    if (!evenings.faults().empty()) return evenings.faults();
    expect("name", "squad-name", block_.name, squad_.name);
    expect("routine", "squad-routine", block_.routine, squad_.routine);
    judge_day();
    judge_calendar();
    if (const Faults faults = judge_evenings(evenings); !faults.empty()) return faults;
    const Matter& matter = evenings.matter();
    judge_sets(matter, block_, club_.weeks, ledger_, faults_);
    judge_time(matter, club_.weeks, ledger_, faults_);
    if (const StatedBlock* before = block_before(); before != nullptr && ledger_.complete)
      judge_standing(block_, *before, club_.weeks, ledger_, faults_);
    // Numbers of sessions that cannot be understood are no numbers.
    if (ledger_.complete) report.value += judge_numbers(matter, block_, club_.weeks, ledger_, faults_);
    settle_rows();
    report.violations.insert(report.violations.end(), faults_.plain.begin(), faults_.plain.end());
    report.bound += block_.bound;
    for (const EveningLedger& evening : ledger_.evenings) {
      ++report.sessions;
      report.drills += static_cast<std::int64_t>(evening.done.size());
    }
    return {};
  }

 private:
  const ClubMatter& club_;
  const SquadWeek& squad_;
  const SquadCalendar& calendar_;
  const std::vector<Share>& shares_;
  const StatedBlock& block_;
  const SoFar* so_far_;  // null: of a block that has not begun
  SquadFaults faults_;
  SquadLedger ledger_;

  void expect(const std::string& where, const char* rule, const std::string& stated, const std::string& own) {
    if (stated != own) faults_.add(where, rule, quote(stated), quote(own));
  }
  void expect(const std::string& where, const char* rule, std::int64_t stated, std::int64_t own) {
    if (stated != own) faults_.add(where, rule, std::to_string(stated), std::to_string(own));
  }

  [[nodiscard]] const StatedBlock* block_before() const {
    return so_far_ == nullptr || !so_far_->standing ? nullptr : so_far_->standing->find(squad_.id);
  }

  // An answer that was planned on from a day is held against that day and what is told up to it.
  void judge_day() {
    const auto words = [](std::optional<Date> day) { return day ? "planned on from " + to_iso(*day) : "not begun"; };
    const std::optional<Date> stated = block_.rolling ? std::optional<Date>(block_.rolling->today) : std::nullopt;
    const std::optional<Date> own = so_far_ != nullptr ? std::optional<Date>(so_far_->today) : std::nullopt;
    if (stated != own) faults_.add("rolling", "so-far", words(stated), words(own));
    if (so_far_ == nullptr) return;
    const int week = std::clamp((so_far_->today.days_since_epoch - club_.monday.days_since_epoch) / 7, 0,
                                std::max(0, club_.weeks - 1));
    ledger_.begun = spells_of(club_.weeks)[static_cast<std::size_t>(week)] + 1;
  }

  // Drills that the spell had planned in what is over, and nobody has done; only in its first week to come.
  [[nodiscard]] std::set<std::string> still_new(int week) const {
    const std::vector<int> spells = spells_of(club_.weeks);
    std::set<std::string> out;
    std::set<std::string> done;
    for (const EveningLedger& evening : ledger_.evenings) {
      if (!evening.over) {
        if (evening.wish->week != week) return {};
        continue;
      }
      if (evening.match_day() ||
          spells[static_cast<std::size_t>(evening.wish->week)] != spells[static_cast<std::size_t>(week)])
        continue;
      out.insert(evening.planned.begin(), evening.planned.end());
      done.insert(evening.done.begin(), evening.done.end());
    }
    for (const std::string& drill : done) out.erase(drill);
    return out;
  }

  // Every wish is a session or stands among the missed ones; nothing else does.
  void judge_calendar() {
    std::vector<FallenOut> missed = calendar_.fallen_out;
    std::multiset<std::pair<Date, int>> wished;
    for (std::size_t w = 0; w < calendar_.wishes.size(); ++w) {
      const Wish& wish = calendar_.wishes[w];
      if (!shares_[w].takes_place) {
        missed.push_back({wish.date, wish.start_minutes, {"lane"}});
        continue;
      }
      wished.insert({wish.date, wish.start_minutes});
      if (find_session(block_, wish) == nullptr) {
        faults_.add(words_of(wish.date, wish.start_minutes), "session-dropped", "no session",
                    "one: nothing is in its way");
        ledger_.complete = false;
      }
    }
    for (std::size_t i = 0; i < block_.sessions.size(); ++i) {
      const StatedSession& session = block_.sessions[i];
      const auto found = wished.find({session.date, session.start_minutes});
      if (found != wished.end()) {
        wished.erase(found);
      } else {
        faults_.add(words_of(session.date, session.start_minutes), "session-invented", "a session", "none");
        ledger_.complete = false;
      }
      const bool late = i > 0 && std::tie(session.date, session.start_minutes) <
                                     std::tie(block_.sessions[i - 1].date, block_.sessions[i - 1].start_minutes);
      if (late) {
        faults_.add(words_of(session.date, session.start_minutes), "session-order", "after a later one",
                    "sessions by date and start");
      }
    }
    judge_missed(std::move(missed));
  }

  void judge_missed(std::vector<FallenOut> expected) {
    for (const StatedMissed& stated : block_.missed) {
      const std::string where = words_of(stated.date, stated.start_minutes);
      const auto found = std::find_if(expected.begin(), expected.end(), [&](const FallenOut& slot) {
        return slot.date == stated.date && slot.start_minutes == stated.start_minutes;
      });
      if (found == expected.end()) {
        faults_.add(where, "missed-invented", "told as missed: " + quote(stated.why),
                    "nothing: no slot falls out then");
        continue;
      }
      const bool says_why = std::any_of(found->words.begin(), found->words.end(), [&](const std::string& word) {
        return stated.why.find(word) != std::string::npos;
      });
      if (!says_why) faults_.add(where, "missed-why", quote(stated.why), "that it is: " + found->words.front());
      expected.erase(found);
    }
    for (const FallenOut& slot : expected) {
      faults_.add(words_of(slot.date, slot.start_minutes), "missed-dropped", "nothing",
                  "told as missed: " + slot.words.front());
    }
  }

  [[nodiscard]] bool first_week_of_spell(int week) const {
    const std::vector<int> spells = spells_of(club_.weeks);
    const auto w = static_cast<std::size_t>(week);
    return week == 0 || spells[w] != spells[w - 1];
  }

  Faults judge_evenings(SquadEvenings& evenings) {
    for (std::size_t w = 0; w < calendar_.wishes.size(); ++w) {
      const Wish& wish = calendar_.wishes[w];
      const StatedSession* stated = find_session(block_, wish);
      if (stated == nullptr || !shares_[w].takes_place) continue;
      if (Faults faults = evenings.set(wish, shares_[w]); !faults.empty()) return faults;
      judge_frame(wish, *stated, evenings.matter());
      EveningLedger evening;
      evening.wish = &wish;
      evening.stated = stated;
      ledger_.taught = evenings.matter().tonight.taught;
      ledger_.weights = evenings.matter().tonight.weights;
      if (so_far_ != nullptr && so_far_->is_over(squad_.id, wish)) {
        judge_past_session(evenings.matter(), so_far_->find(squad_.id, wish), std::move(evening), ledger_, faults_);
        continue;
      }
      if (wish.match_day) {
        judge_match_day(evenings.matter(), std::move(evening), ledger_, faults_);
        continue;
      }
      const std::int64_t budget = budget_seconds(evenings.matter());
      if (!first_week_of_spell(wish.week)) evenings.know_everything(still_new(wish.week));
      judge_planned_session(evenings.matter(), budget, std::move(evening), ledger_, faults_);
    }
    ledger_.routine = evenings.routine();
    ledger_.free_composition = squad_.free_composition;
    return {};
  }

  void judge_frame(const Wish& wish, const StatedSession& stated, const Matter& matter) {
    const std::string where = words_of(wish.date, wish.start_minutes);
    expect(where, "session-week", stated.week, wish.week + 1);
    expect(where, "session-minutes", stated.minutes, wish.seconds / 60);
    expect(where, "session-strip", stated.strip, wish.strip);
    expect(where, "turnout", stated.turnout, matter.tonight.turnout);
    expect(where, "match-day", stated.match_day ? "a match day" : "no match day",
           wish.match_day ? "a match day" : "no match day");
    const auto days = [](std::optional<std::int64_t> value) {
      return value ? std::to_string(*value) : std::string("no match in sight");
    };
    expect(where, "days-to-match", days(stated.days_to_match), days(wish.days_to_match));
  }

  // Where an answer says that the rows of the model cannot all hold, they need not; but then one does not.
  void settle_rows() {
    if (block_.feasible) {
      faults_.plain.insert(faults_.plain.end(), faults_.rows.begin(), faults_.rows.end());
    } else if (faults_.rows.empty()) {
      faults_.add("feasible", "wrongly-infeasible", "false", "true: every row holds");
    }
  }
};

class ClubJudge {
 public:
  ClubJudge(const BlockDocuments& documents, const ClubMatter& club, const StatedAnswer& answer, const SoFar* so_far)
      : documents_(documents), club_(club), answer_(answer), so_far_(so_far) {}

  Result<BlockReport> judge(const std::vector<Matter>& catalogues) {
    BlockReport report;
    report.squads_in_club = static_cast<std::int64_t>(club_.squads.size());
    judge_frame(report.violations);
    std::vector<SquadCalendar> calendars;
    for (const SquadWeek& squad : club_.squads) calendars.push_back(calendar_of(club_, squad));
    const Sharing sharing = share_out(club_, calendars, answer_, report.violations);
    const Node restrictions = all_restrictions(documents_);
    for (std::size_t s = 0; s < club_.squads.size(); ++s) {
      const SquadWeek& squad = club_.squads[s];
      const StatedBlock* block = answer_.find(squad.id);
      if (block == nullptr) continue;
      ++report.squads;
      SquadEvenings evenings(club_, documents_, squad, catalogues[squad.documents->catalogue], restrictions);
      const Faults faults = SquadJudge(club_, squad, calendars[s], sharing[s], *block, so_far_).judge(evenings, report);
      if (!faults.empty()) return faults;
    }
    return report;
  }

 private:
  const BlockDocuments& documents_;
  const ClubMatter& club_;
  const StatedAnswer& answer_;
  const SoFar* so_far_;

  void judge_frame(BlockViolations& violations) {
    const auto expect = [&](const char* where, const std::string& stated, const std::string& own) {
      if (stated != own) violations.push_back({"answer-frame", "", where, quote(stated), quote(own)});
    };
    expect("club", answer_.club, club_.name);
    expect("monday", to_iso(answer_.monday), to_iso(club_.monday));
    expect("weeks", std::to_string(answer_.weeks), std::to_string(club_.weeks));
    std::set<std::string> seen;
    for (const StatedBlock& block : answer_.squads) {
      if (!seen.insert(block.squad).second) {
        violations.push_back({"squad-twice", block.squad, "squads", "twice", "each squad once"});
      }
      if (club_.find(block.squad) == nullptr) {
        violations.push_back({"squad-unknown", block.squad, "squads", quote(block.squad), "a squad of the club"});
      }
    }
  }
};

}  // namespace

Result<BlockReport> check_block(const BlockDocuments& documents, const Document& answer) {
  const Result<StatedAnswer> stated = read_block_answer(answer);
  if (!stated) return stated.faults();
  const Result<ClubMatter> club = read_club_matter(documents);
  if (!club) return club.faults();
  const Result<std::vector<Matter>> catalogues = read_catalogues(documents.catalogues);
  if (!catalogues) return catalogues.faults();
  if (!documents.so_far) return ClubJudge(documents, club.value(), stated.value(), nullptr).judge(catalogues.value());
  const Result<SoFar> so_far = read_so_far(*documents.so_far);
  if (!so_far) return so_far.faults();
  return ClubJudge(documents, club.value(), stated.value(), &so_far.value()).judge(catalogues.value());
}

std::string to_line(const BlockViolation& violation) {
  std::string out = violation.squad.empty() ? "answer" : violation.squad;
  if (!violation.where.empty()) out += ", " + violation.where;
  return out + ": found " + violation.found + ", expected " + violation.expected + " [" + violation.rule + "]";
}

Node to_node(const BlockReport& report) {
  Node node = Node::make_table();
  node.set("answer", Node::make_text("block-check"));
  node.set("version", Node::make_integer(1));
  node.set("ok", Node::make_boolean(report.ok()));
  node.set("squads_in_club", Node::make_integer(report.squads_in_club));
  node.set("squads", Node::make_integer(report.squads));
  node.set("sessions", Node::make_integer(report.sessions));
  node.set("drills", Node::make_integer(report.drills));
  node.set("value", Node::make_integer(report.value));
  node.set("bound", Node::make_integer(report.bound));
  Node list = Node::make_array();
  for (const BlockViolation& violation : report.violations) {
    Node row = Node::make_table();
    row.set("rule", Node::make_text(violation.rule));
    row.set("squad", Node::make_text(violation.squad));
    row.set("where", Node::make_text(violation.where));
    row.set("found", Node::make_text(violation.found));
    row.set("expected", Node::make_text(violation.expected));
    list.items.push_back(std::move(row));
  }
  node.set("violations", std::move(list));
  return node;
}

}  // namespace lanework::check
