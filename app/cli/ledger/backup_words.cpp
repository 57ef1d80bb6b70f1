#include "app/cli/ledger/backup_words.h"

namespace lanework::cli {

std::string head_words(std::int64_t receipt, const store::Link& link) {
  return "number " + std::to_string(receipt) + ", link " + store::archive::hex_of(store::link_text(link));
}

std::string backup_words(const store::archive::Contents& contents) {
  const auto& found = contents.findings;
  std::string out = "Of " + contents.header.made + ", from " + contents.header.database + ", form " +
                    std::to_string(contents.header.form) + ":";
  for (const auto& [table, rows] : found.rows) out += " " + std::to_string(rows) + " of " + table + ",";
  out.back() = '\n';
  out += "The last entry: " + head_words(found.head.receipt, found.head.link) + "\n";
  out += "The chain holds from the first entry to the last; " + std::to_string(found.opened) +
         " entries about people, each opened; " + std::to_string(found.of_erased) + " of " +
         std::to_string(found.erased_people) + " erased people, which nothing opens\n";
  return out;
}

}  // namespace lanework::cli
