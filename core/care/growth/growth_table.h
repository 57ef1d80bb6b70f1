// The numbers behind growth that are a table: catalogue/care/growth.toml, each with its sources.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"

namespace lanework::care::growth {

struct ValueRange {
  double least = 0;
  double most = 0;
};

// What a player of an age may plausibly measure: wide, so that only slips lie outside. own judgement
struct PlausibleRow {
  int age = 0;  // whole years; the last row holds for everybody older, the first for everybody younger
  ValueRange height_cm;
  ValueRange mass_kg;
};

// Adult height = b0 + b1 height + b2 mass + b3 midparent height, in inches and pounds.
struct AdultHeightCoefficients {
  double constant = 0;
  double height = 0;
  double mass = 0;
  double midparent = 0;
};
struct AdultHeightRow {
  double age = 0;  // years, in halves
  AdultHeightCoefficients boys;
  AdultHeightCoefficients girls;
};

// One way of naming shares of adult height; a band reaches from its own 'from' to the next one's.
struct HeightBand {
  double from_percent = 0;
  std::string name;
};
struct HeightBands {
  std::string key;
  std::string words;  // what the shares are of, and where the edges come from
  bool unverified = false;
  std::vector<HeightBand> bands;  // the first from 0
  std::vector<std::string> sources;
};

struct GrowthTable {
  int least_days_between = 90;
  int most_days_between = 400;  // further apart, a rate is a mean over what has passed
  int old_after_days = 180;     // since the last measurement: what is known is old
  double measuring_error_cm = 0;
  double slow_below_cm_a_year = 0;
  double fast_from_cm_a_year = 0;
  ValueRange sitting_share;  // of height
  ValueRange parent_cm;
  double most_cm_a_year = 0;
  int contacts_percent = 50;
  std::vector<PlausibleRow> plausible;
  std::vector<AdultHeightRow> adult_height;  // by age, in halves of a year
  double adult_error_boys_cm = 0;            // nine in ten lie within it
  double adult_error_girls_cm = 0;
  std::vector<HeightBands> bands;
  std::vector<std::string> sources;  // of all that has none of its own
};

// Faults: keys that lack or are not known, numbers outside their limits, rows that do not follow each other.
Result<GrowthTable> read_growth_table(const Document& document);

const PlausibleRow& plausible_at(const GrowthTable& table, int age);

}  // namespace lanework::care::growth
