// What 'care growth', 'care load' and 'care screen' share: an answer for the lead's eyes, in words and for a program.
#pragma once

#include <string>

#include "core/base/date.h"
#include "core/base/document.h"
#include "core/base/result.h"

namespace CLI {
class App;
}

namespace lanework::cli {

struct LeadFlags {
  std::string sheet;
  std::string day;
  std::string player;
  std::string catalogue;
  bool json = false;
};
// --date, --player, --catalogue, --json and the sheet itself.
void add_lead_flags(CLI::App& command, LeadFlags& flags, const char* sheet_words);

struct LeadAnswer {
  Node node;
  std::string text;
  int exit_status = 0;
};
// A table with 'answer', 'version', 'date' and 'first', and the words that stand over every text.
LeadAnswer lead_answer(const char* answer, const std::string& heading, Date day);

// Prints the answer, or the faults; the exit status.
int show(const Result<LeadAnswer>& answer, bool json);

// A table of catalogue/care, such as 'growth.toml'.
Result<Document> care_document(const LeadFlags& flags, const char* name);

// --player names nobody of the file.
Fault unknown_player(const LeadFlags& flags, const std::string& file);

inline constexpr const char* kLocalRulesFirst = "Local rules and licensed practice come first.";

}  // namespace lanework::cli
