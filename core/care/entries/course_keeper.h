// The return courses of one player, each moved by its entries. Inside this folder only.
#pragma once

#include <map>
#include <vector>

#include "core/care/entries/hold_keeper.h"

namespace lanework::care {

class CourseKeeper {
 public:
  explicit CourseKeeper(const ReturnRules& rules) : rules_(rules) {}

  void open(const Entry& entry, const CourseOpened& opening, std::optional<int> age, Moment at, HoldKeeper& holds,
            Remarks& remarks);
  // A hurt that was just put among the holds: carried by the courses that it concerns, which start anew unless a
  // clearance of theirs names it.
  void hear_of_hurt(const Entry& entry, const Hurt& hurt, Moment at, HoldKeeper& holds, Remarks& remarks);

  void begin(const Entry& entry, const StepBegun& begun, Moment at, Remarks& remarks);
  // False where there is no such course.
  bool check(const Entry& entry, const SymptomCheck& check, Moment at, Remarks& remarks);
  void step_back(const Entry& entry, const SteppedBack& back, Moment at, Remarks& remarks);
  void clear(const Entry& entry, const ClearanceGiven& clearance, Moment at, Remarks& remarks);
  // By the lead, at the last step.
  void close(const Entry& entry, const EntryId& course, Remarks& remarks);
  void take_back_step(const Entry& by, const StepBegun& begun, Moment at, Remarks& remarks);
  void take_back_clearance(const Entry& by, const EntryId& id, Moment at, Remarks& remarks);
  void take_back_closing(const EntryId& closing);

  [[nodiscard]] bool knows(const EntryId& id) const;
  void put_standing(std::vector<Standing>& standing, std::vector<CourseStanding>& courses) const;

 private:
  struct Gate {
    EntryId clearance;
    int gate;
    EntryIds names;
  };
  struct Kept {
    CourseStanding standing;
    EntryIds awaited;  // named when it was opened, hurts that may still arrive
    std::vector<Gate> given;
    EntryId closed_by;
  };

  const ReturnRules& rules_;
  std::vector<Kept> kept_;

  Kept* find(const EntryId& id);
  bool move(Kept& kept, const Entry& entry, const CourseEvent& event, By by, Moment at, Remarks& remarks);
  static bool concerns(const Kept& kept, const EntryId& id, const Hurt& hurt);
  static void carry(Kept& kept, Hold& hold);
};

}  // namespace lanework::care
