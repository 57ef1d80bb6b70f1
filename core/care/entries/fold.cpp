#include "core/care/entries/fold.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "core/care/entries/course_keeper.h"
#include "core/care/entries/hold_keeper.h"

namespace lanework::care {
namespace {

bool blank(const std::string& text) { return text.find_first_not_of(" \t") == std::string::npos; }

// Entries of these kinds can only hold a player back further.
bool adds_caution(const What& what) {
  return std::holds_alternative<Hurt>(what) || std::holds_alternative<Soreness>(what) ||
         std::holds_alternative<RestrictionSet>(what) || std::holds_alternative<CourseOpened>(what) ||
         std::holds_alternative<SymptomCheck>(what) || std::holds_alternative<SteppedBack>(what);
}

struct PlayerBook {
  HoldKeeper holds;
  CourseKeeper courses;
};

class Folding {
 public:
  Folding(const PainRule& pain, const ReturnRules& rules, const Ages& ages) : pain_(pain), rules_(rules), ages_(ages) {}

  Knowledge run(std::vector<Entry> entries) {
    std::sort(entries.begin(), entries.end(), [](const Entry& a, const Entry& b) {
      return std::tie(a.receipt, a.id, a.received.moment, a.received.offset_minutes) <
             std::tie(b.receipt, b.id, b.received.moment, b.received.offset_minutes);
    });
    for (Entry& entry : entries) hear(std::move(entry));
    for (auto& [player, book] : books_) {
      book.holds.put_standing(player, out_.standing);
      book.courses.put_standing(out_.standing, out_.courses);
    }
    return std::move(out_);
  }

 private:
  const PainRule& pain_;
  const ReturnRules& rules_;
  const Ages& ages_;
  Knowledge out_;
  std::map<std::string, PlayerBook> books_;
  std::map<EntryId, std::vector<Entry>> received_;  // under an id, each content once
  std::map<EntryId, Entry> heard_;
  std::set<EntryId> taken_back_;
  Moment now_;  // never earlier than before, whatever the receiver's clock does

  PlayerBook& book_of(const std::string& player) {
    return books_.try_emplace(player, PlayerBook{HoldKeeper(pain_, rules_), CourseKeeper(rules_)}).first->second;
  }

  void hear(Entry entry) {
    std::vector<Entry>& under_id = received_[entry.id];
    const auto same = [&](const Entry& before) { return same_content(before, entry); };
    // Sent again: nothing is newer for it, not even the hour.
    if (std::any_of(under_id.begin(), under_id.end(), same)) return;
    const bool came_before = !under_id.empty() || heard_.count(entry.id) > 0;
    under_id.push_back(entry);
    if (heard_.empty()) now_ = entry.received.moment;
    out_.as_known = entry.received;
    if (entry.received.moment < now_) {
      remark(out_.remarks, entry, "the receiver's clock went back: hours count from the latest time it had shown");
    }
    now_ = std::max(now_, entry.received.moment);
    if (came_before) {
      if (!adds_caution(entry.what)) {
        return remark(out_.remarks, entry,
                      "this id came before with other content: the first stands, this one does not count");
      }
      remark(out_.remarks, entry,
             "this id came before with other content: the first stands, and this one adds its caution");
      entry.id += "#" + std::to_string(entry.receipt);
    }
    heard_.emplace(entry.id, entry);
    if (!entry.corrects.empty()) take_back(entry);
    // Taken back before it arrived.
    if (taken_back_.count(entry.id) > 0 && !adds_caution(entry.what)) return;
    std::visit([&](const auto& what) { take(entry, what, book_of(entry.player)); }, entry.what);
  }

  // What lessened caution is undone; what added it stands beside its correction until it is lifted.
  void take_back(const Entry& by) {
    taken_back_.insert(by.corrects);
    const auto found = heard_.find(by.corrects);
    if (found == heard_.end() || found->first == by.id) return;
    const Entry& entry = found->second;
    PlayerBook& book = book_of(entry.player);
    if (std::holds_alternative<ClearanceGiven>(entry.what)) {
      book.holds.take_back_clearance(entry.id);
      book.courses.take_back_clearance(by, entry.id, now_, out_.remarks);
    } else if (std::holds_alternative<Lifted>(entry.what)) {
      book.holds.take_back_lifting(entry.id);
      book.courses.take_back_closing(entry.id);
    } else if (const auto* begun = std::get_if<StepBegun>(&entry.what)) {
      book.courses.take_back_step(by, *begun, now_, out_.remarks);
    } else {
      remark(out_.remarks, by,
             "corrects " + entry.id + ", which stands too: a correction does not lessen caution, " +
                 (adds_caution(entry.what) ? "the lead lifts it" : "a new entry does"));
    }
  }

  void take(const Entry& entry, const Hurt& hurt, PlayerBook& book) {
    book.holds.add(entry, now_, out_.remarks);
    book.courses.hear_of_hurt(entry, hurt, now_, book.holds, out_.remarks);
  }
  void take(const Entry& entry, const Soreness& /*soreness*/, PlayerBook& book) {
    book.holds.add(entry, now_, out_.remarks);
  }
  void take(const Entry& entry, const RestrictionSet& /*set*/, PlayerBook& book) {
    book.holds.add(entry, now_, out_.remarks);
  }

  void take(const Entry& entry, const Reviewed& reviewed, PlayerBook& book) {
    if (entry.by != By::kLead && entry.by != By::kClinician) {
      return remark(out_.remarks, entry, "refused: the lead or a clinician reviews");
    }
    book.holds.review(entry, reviewed, out_.remarks);
  }

  void take(const Entry& entry, const Lifted& lifted, PlayerBook& book) {
    if (entry.by != By::kLead) return remark(out_.remarks, entry, "refused: the lead lifts, nobody else");
    for (const EntryId& name : lifted.names) {
      if (book.courses.knows(name))
        book.courses.close(entry, name, out_.remarks);
      else
        book.holds.lift(entry, name, now_, out_.remarks);
    }
  }

  void take(const Entry& entry, const CourseOpened& opening, PlayerBook& book) {
    const auto age = ages_.find(entry.player);
    book.courses.open(entry, opening, age == ages_.end() ? std::nullopt : std::optional<int>(age->second), now_,
                      book.holds, out_.remarks);
  }

  void take(const Entry& entry, const StepBegun& begun, PlayerBook& book) {
    book.courses.begin(entry, begun, now_, out_.remarks);
  }
  void take(const Entry& entry, const SteppedBack& back, PlayerBook& book) {
    book.courses.step_back(entry, back, now_, out_.remarks);
  }

  void take(const Entry& entry, const SymptomCheck& check, PlayerBook& book) {
    if (book.courses.check(entry, check, now_, out_.remarks)) return;
    remark(out_.remarks, entry, "names the course " + check.course + ", which was not received before it");
    // Symptoms all the same: they hold the player back by themselves.
    if (check.told != SymptomCheck::Told::kNone) book.holds.add(entry, now_, out_.remarks);
  }

  void take(const Entry& entry, const ClearanceGiven& clearance, PlayerBook& book) {
    if (entry.by != By::kClinician || blank(clearance.clinician) || blank(clearance.profession)) {
      return remark(out_.remarks, entry, "refused: a clearance is a named clinician's, with name and profession");
    }
    book.holds.clear(entry, clearance);
    if (!clearance.course.empty()) book.courses.clear(entry, clearance, now_, out_.remarks);
  }

  void take(const Entry& entry, const Withdrawn& /*withdrawn*/, PlayerBook& /*book*/) {
    if (entry.corrects.empty()) remark(out_.remarks, entry, "withdraws nothing: it names no entry");
  }
};

}  // namespace

Knowledge fold(std::vector<Entry> entries, const PainRule& pain, const ReturnRules& rules, const Ages& ages) {
  return Folding(pain, rules, ages).run(std::move(entries));
}

std::vector<Standing> holding_on(const std::vector<Standing>& standing, Date day) {
  std::vector<Standing> out;
  std::copy_if(standing.begin(), standing.end(), std::back_inserter(out),
               [&](const Standing& one) { return people::holds_on(one.restriction, day); });
  return out;
}

}  // namespace lanework::care
