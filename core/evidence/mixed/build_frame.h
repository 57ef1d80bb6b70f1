// From a table of text to the frame of a model: which columns count, which are watched for, and what may bear on the
// rate, as numbers, as categories against a reference, or as a smooth curve.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/evidence/data_table.h"
#include "core/evidence/mixed/frame.h"
#include "core/evidence/mixed/natural_spline.h"

namespace lanework::evidence {

enum class TermKind : std::uint8_t { kNumber, kCategory, kCurve };

struct TermWanted {
  TermKind kind = TermKind::kNumber;
  std::string column;
  std::string reference;  // of a category; empty: the one with the most hours
  int degrees = 4;        // of a curve
};

inline constexpr int kMostCurveDegrees = 10;
inline constexpr std::size_t kMostCategories = 200;
inline constexpr std::size_t kMostColumns = 60;

struct ModelWanted {
  std::string events;
  std::string hours;
  std::string squad;  // empty: squads do not differ by themselves
  std::string club;   // empty: squads are not nested in clubs
  std::vector<TermWanted> terms;
};

// A term's place among the columns of the design.
struct FrameTerm {
  TermKind kind = TermKind::kNumber;
  std::string column;
  std::string reference;
  std::size_t first = 0;
  std::size_t count = 0;
  std::optional<NaturalSpline> curve;
};

struct BuiltFrame {
  Frame frame;  // the first column is the intercept
  std::vector<FrameTerm> terms;
  std::vector<std::string> squads;  // in the order of the frame
  std::vector<std::string> clubs;
  std::size_t rows_without_hours = 0;  // and without events, left out
  double hours = 0;
};

// Faults: cells that cannot be read, events in a row without hours, columns that are not there or stand twice, a
// category or a curve without enough different values.
Result<BuiltFrame> build_frame(const DataTable& table, const ModelWanted& wanted);

}  // namespace lanework::evidence
