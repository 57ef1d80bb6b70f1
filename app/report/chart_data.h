// What each kind of chart draws. The scripts of web/charts/ read the same shapes (web/charts/data.ts); a chart's kind
// is the type of its data. Numbers are finite; empty lists are drawn as 'Nothing to show.'.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/document.h"

namespace lanework::report {

struct Reference {
  double value = 0;
  std::string label;  // a few words over the line
};

struct IntervalRow {
  std::string label;
  double estimate = 0;
  double low = 0;
  std::optional<double> high;  // none: no upper limit, drawn as an arrow
  std::string note;            // the numbers in words beside the row; may be empty
};

// Rows with an estimate and its interval, top to bottom as given: rates, ratios, squads drawn in.
struct Intervals {
  std::string x_title;
  std::vector<IntervalRow> rows;
  std::optional<Reference> reference;
  bool log = false;
};

struct FunnelPoint {
  std::string label;
  double expected = 0;
  double ratio = 0;  // seen by expected
};

struct FunnelLine {
  double expected = 0;
  double inner_low = 0;
  double inner_high = 0;
  double outer_low = 0;
  double outer_high = 0;
};

// Squads against what chance alone would do. Only points outside the inner lines have their label drawn.
struct Funnel {
  std::string x_title;
  std::string y_title;
  std::string inner_name;  // '95 in 100 squads'
  std::string outer_name;
  std::vector<FunnelPoint> points;
  std::vector<FunnelLine> lines;  // by rising expected
};

struct WatchedWeek {
  std::string label;
  double events = 0;
  double expected = 0;
  double sum = 0;
  bool alarm = false;
};

// Weekly counts being watched: the sum above, the events below.
struct Watch {
  std::string events_title;  // 'Injuries a week; the stroke: expected'
  std::string sum_title;
  std::vector<WatchedWeek> weeks;
  double decision = 0;
};

struct CurvePoint {
  double value = 0;
  double times = 0;  // the rate there by the rate at the reference
  double low = 0;
  double high = 0;
};

struct CurveHours {
  double value = 0;  // middle of the step
  double hours = 0;
};

// How a rate changes along a value, with the hours it rests on.
struct Curve {
  std::string x_title;
  std::string y_title;
  std::string reference_label;     // of the line at 1
  std::vector<CurvePoint> points;  // by rising value
  std::vector<CurveHours> hours;   // may be empty
  bool log = false;
};

struct Part {
  std::string name;
  std::int64_t count = 0;
};

struct SharesRow {
  std::string label;
  std::vector<Part> parts;  // the same names in the same order in every row, five at most
};

// Parts of a whole, each row to 100 %.
struct Shares {
  std::vector<SharesRow> rows;
};

struct HoursWeek {
  std::string label;
  std::vector<double> hours;  // by setting
  std::int64_t events = 0;
};

// Hours week by week, and the events above them.
struct Weeks {
  std::string hours_title;
  std::string events_title;
  std::vector<std::string> settings;  // five at most
  std::vector<HoursWeek> weeks;
};

using ChartData = std::variant<Intervals, Funnel, Watch, Curve, Shares, Weeks>;

// The table {kind, id, ...} that the scripts read.
Node to_node(const std::string& id, const ChartData& data);

}  // namespace lanework::report
