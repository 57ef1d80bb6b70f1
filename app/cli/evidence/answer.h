// What every calculator gives: its answer for a program and in words, with the conventions named in both.
#pragma once

#include <string>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/evidence/interval.h"
#include "core/evidence/number_words.h"

namespace CLI {
class App;
}

namespace lanework::cli {

using evidence::as_counted;
using evidence::counted;
using evidence::hours_words;
using evidence::in_digits;
using evidence::level_words;
using evidence::limits_words;
using evidence::p_words;
using evidence::per_1000_hours;

struct EvidenceAnswer {
  Node node;
  std::string text;
  int exit_status = 0;
};

// Flags of every calculator.
struct EvidenceFlags {
  double level_percent = 95;
  bool json = false;

  [[nodiscard]] double level() const { return level_percent / 100; }
};
void add_evidence_flags(CLI::App& command, EvidenceFlags& flags);

// Prints the answer, or the faults; the exit status.
int show(const Result<EvidenceAnswer>& answer, bool json);

// A table with 'answer' and 'version', for the rest to be set in.
Node evidence_node(const char* answer, double level);
// {low, high}; high is left out where there is no upper limit.
Node interval_node(const evidence::Interval& limits, double scale = 1);

// 'so many cannot be estimated because ...': done, but the answer is no.
EvidenceAnswer cannot(const char* answer, double level, const std::string& why);

}  // namespace lanework::cli
