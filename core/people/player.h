// Players and restrictions, as the lead knows them. Names and measures stay on the lead's side: what a
// coach gets is made by swaps.h and partners.h and carries instructions only.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/base/date.h"
#include "core/catalogue/words.h"

namespace lanework::people {

struct Player {
  std::string id;     // the roster's own, or made from the name's position: 'P07'
  std::string name;   // as written, any script
  std::string shirt;  // shirt number as written, may be empty
  std::optional<Date> birth;
  std::optional<int> stated_age;       // where the roster has ages, not birth dates
  std::vector<std::string> squads;     // a player may be in two
  std::optional<int> size_group;       // the lead's private group, 1 the smallest
  std::optional<int> body_mass_grams;  // only where the club has chosen to measure
  bool contact_ok = true;              // shoulder contact and partner holds are fine with player and family
  int row = 0;                         // line of the roster it came from
};

// Age on the day: from the birth date, else as stated, else empty.
std::optional<int> age_on(const Player& player, Date day);

// What is barred by its name, as a coach's device knows it (permissions.h).
struct BarredByName {
  std::vector<std::pair<std::string, std::string>> rungs;  // drill id and rung key, ascending
  bool contact = false;                                    // also holds and pushes of a partner
  bool operator==(const BarredByName&) const = default;
};

// What one player, or the whole squad, must avoid now. No diagnosis has a place here.
struct Restriction {
  std::string player;                        // Player::id; empty for a whole squad
  std::vector<catalogue::BodyArea> areas;    // empty: every area
  std::vector<catalogue::StressKind> kinds;  // empty: every kind
  int allowed_grade = 0;                     // 0 nothing, 1 light, 2 moderate, 3 heavy is still fine
  std::optional<Date> until;                 // last day it holds
  std::optional<Date> review;                // the lead looks at it again; it holds until lifted
  bool sits_out = false;                     // does not warm up with the squad at all
  std::string instruction;                   // the coach's words: 'no jumping'; made from kinds when empty
  std::string squad;                         // the squad's name as players carry it; only where player is empty
  int landings_percent = 100;                // 0..100 of what others may land in a session; only for a player
  bool new_eccentric_ok = true;        // may eccentric work that the squad has not done be given? only for a player
  std::optional<BarredByName> barred;  // in place of areas, kinds and allowed_grade
};

struct Restrictions {
  std::vector<Restriction> list;
  std::string as_known;  // 'Sunday 20:10', as the pages print it; empty when never stated
};

// 'Sunday 20:10, reports Thursday 17:52': the age of the restrictions file and of what was reported; either may be
// empty.
std::string known_together(const std::string& restrictions, const std::string& reports);

// A restriction holds on a day unless its until date has passed; a review date never lifts it.
bool holds_on(const Restriction& restriction, Date day);

// Who may stand with whom, as the club decided.
enum class PartnerMeasure { kAge, kSizeGroup, kBodyMass };
// The others for one player, best first; who is not among them may not stand with this player.
struct PartnerOrder {
  std::string player;
  std::vector<std::string> others;
  std::vector<std::string> without_contact;  // of these, with whom the non-contact version is done
  bool operator==(const PartnerOrder&) const = default;
};
using PartnerOrders = std::vector<PartnerOrder>;

struct PartnerRules {
  PartnerMeasure measure = PartnerMeasure::kAge;
  std::optional<PartnerOrders> orders;  // in place of the measure: two are the nearer, the earlier each has the other
  std::vector<std::pair<std::string, std::string>> forbidden;  // player ids
};

}  // namespace lanework::people
