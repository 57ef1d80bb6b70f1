// A made-up player who may be measured.
#pragma once

#include "core/care/growth/growth_person.h"
#include "tests/care/comma_sheet.h"
#include "tests/care/shipped_growth.h"

namespace lanework::care::growth::test {

using care::test::day;

// Born 2013-11-26, agreed on 2026-01-10; 13.0 years on 2026-11-26.
inline GrowthPerson a_player(std::optional<Sex> sex = Sex::kBoy) {
  GrowthPerson out;
  out.player = "Q07";
  out.born = day("2013-11-26");
  out.sex = sex;
  out.mother_cm = 165;
  out.father_cm = 180;
  out.agreement.consent = day("2026-01-09");
  out.agreement.assent = day("2026-01-10");
  return out;
}

inline BodyMeasurement height_on(const char* iso, double cm) { return {day(iso), cm, {}, {}, 0}; }

}  // namespace lanework::care::growth::test
