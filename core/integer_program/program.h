// A mixed-integer program as a table of rows and columns, with whole coefficients: what every text format is
// written from. Minimised. The columns that are integer are binary.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace lanework::integer_program {

enum class Sense { kAtMost, kAtLeast, kEqual };

struct Term {
  int column;
  std::int64_t coefficient;  // never 0
};

struct Row {
  std::string name;
  Sense sense = Sense::kEqual;
  std::int64_t bound = 0;
  std::vector<Term> terms;  // ascending by column; not empty
};

inline constexpr std::int64_t kNoUpper = -1;

struct Column {
  std::string name;
  bool integer = false;    // then binary
  std::int64_t lower = 0;  // equal to upper: fixed
  std::int64_t upper = 1;  // kNoUpper: none
};

struct Program {
  std::string name;   // one word, as MPS wants it: 'session_level1'
  std::string title;  // the first comment of the LP text: 'session, level 1'
  std::vector<Column> columns;
  std::vector<Term> objective;  // minimised; may be empty
  std::vector<Row> rows;
};

}  // namespace lanework::integer_program
