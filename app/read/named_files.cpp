#include "app/read/named_files.h"

#include <algorithm>
#include <filesystem>

#include "app/read/decode_text.h"

namespace lanework::read {
namespace {

namespace fs = std::filesystem;

struct DatesWord {
  const char* word;
  people::DateOrder order;
  people::SerialSystem serials;
};
constexpr DatesWord kDatesWords[] = {
    {"day-first", people::DateOrder::kDayFirst, people::SerialSystem::k1900},
    {"month-first", people::DateOrder::kMonthFirst, people::SerialSystem::k1900},
    {"serial-1904", people::DateOrder::kAsTheColumnTells, people::SerialSystem::k1904},
};

}  // namespace

bool ends_with(const std::string& text, std::string_view ending) {
  return text.size() >= ending.size() && std::string_view(text).substr(text.size() - ending.size()) == ending;
}

Place place_of(const Document& document, std::string_view key) {
  const Node* node = document.root.find(key);
  return {document.file, node != nullptr ? node->line : 0, node != nullptr ? node->column : 0, std::string(key)};
}

std::optional<std::string> named_in(const Document& document, std::string_view key, bool required, Faults& faults) {
  const Node* node = document.root.find(key);
  if (node == nullptr) {
    if (required) faults.push_back({FaultCode::kMissing, place_of(document, key), "nothing", "a file name", {}});
    return {};
  }
  if (node->kind == Node::Kind::kText && !node->text.empty()) return node->text;
  faults.push_back({FaultCode::kWrongType, place_of(document, key), found_in_words(*node), "a file name", {}});
  return {};
}

std::optional<std::string> path_inside(const Document& document, std::string_view key, const std::string& name, int up,
                                       Faults& faults) {
  const fs::path relative = fs::path(name).lexically_normal();
  const auto ups = std::count(relative.begin(), relative.end(), "..");
  const bool leaves = relative.is_absolute() || ups > up;
  if (leaves || name.find('\0') != std::string::npos) {
    faults.push_back(
        {FaultCode::kFileUnreadable,
         place_of(document, key),
         quote(name),
         up > 0 ? "a file in the folder of the squad file or the one above" : "a file in the club's folder",
         {}});
    return {};
  }
  return (fs::path(document.file).parent_path() / relative).string();
}

void find_venue(Document& strip, int up, Faults& faults) {
  auto& entries = strip.root.entries;
  const auto venue = std::find_if(entries.begin(), entries.end(), [](const auto& one) { return one.first == "venue"; });
  if (venue == entries.end()) return;
  const std::optional<std::string> name = named_in(strip, "venue", false, faults);
  const auto path = name ? path_inside(strip, "venue", *name, up, faults) : std::nullopt;
  if (path) {
    venue->second.text = *path;
  } else {
    entries.erase(venue);  // told once
  }
}

RosterStatement roster_statement(const Document& squad, Faults& faults) {
  RosterStatement stated;
  TableReader reader(squad.file, &squad.root, "", faults);
  stated.squad = reader.text_or("in_roster", "");
  if (reader.has("roster_encoding")) {
    stated.encoding = encoding_names()[static_cast<std::size_t>(reader.word("roster_encoding", encoding_names(), 0))];
  }
  std::vector<std::string_view> words;
  for (const DatesWord& row : kDatesWords) words.emplace_back(row.word);
  if (!reader.has("roster_dates")) return stated;
  const DatesWord& row = kDatesWords[reader.word("roster_dates", words, 0)];
  stated.order = row.order;
  stated.serials = row.serials;
  return stated;
}

void forget_roster_statements(Document& squad) {
  auto& entries = squad.root.entries;
  const auto is_statement = [](const auto& entry) {
    return entry.first == "roster_dates" || entry.first == "roster_encoding";
  };
  entries.erase(std::remove_if(entries.begin(), entries.end(), is_statement), entries.end());
}

}  // namespace lanework::read
