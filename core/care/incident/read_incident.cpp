#include "core/care/incident/read_incident.h"

#include <algorithm>

namespace lanework::care {
namespace {

std::size_t letters(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

class IncidentReader {
 public:
  IncidentReader(const Document& document, Date day) : root_(document.file, &document.root, "", faults_), day_(day) {}

  Result<Incident> read() {
    Incident out;
    out.player = root_.text("player");
    if (const auto date = past_day("date")) out.date = *date;
    if (!root_.has("date")) {
      root_.fault(FaultCode::kMissing, "date", "nothing", "the day it happened, such as 2026-11-26");
    }
    out.time = root_.time("time");
    out.place = line(root_, "place", kMostIncidentLine);
    out.what_happened = line(root_, "what_happened", kMostIncidentLetters);
    out.signs = list("signs");
    out.done = list("done");
    std::vector<TableReader> told = root_.tables("told");
    for (TableReader& table : told) {
      out.told.push_back({table.text("who"), line(table, "by", kMostIncidentLine), table.time("at")});
      limit(table, "who", out.told.back().who, kMostIncidentLine);
      table.finish();
    }
    if (told.size() > kMostIncidentItems) too_many("told", told.size());
    out.reported_by = line(root_, "reported_by", kMostIncidentLine);
    out.reported_on = past_day("reported_on");
    root_.finish();
    if (faults_.empty() && out.reported_on && *out.reported_on < out.date) {
      root_.fault(FaultCode::kContradiction, "reported_on", to_iso(*out.reported_on), "a day not before the incident");
    }
    if (faults_.empty()) return out;
    for (Fault& fault : faults_) {  // a text in the wrong place may be about the player
      if (fault.found.starts_with('\'') && fault.code != FaultCode::kUnknownKey) fault.found = "something else";
    }
    return faults_;
  }

 private:
  Faults faults_;
  TableReader root_;
  Date day_;

  void limit(TableReader& table, std::string_view key, const std::string& text, std::size_t most) {
    if (letters(text) <= most) return;
    table.fault(FaultCode::kOutOfRange, key, std::to_string(letters(text)) + " letters",
                "at most " + std::to_string(most));
  }

  void too_many(std::string_view key, std::size_t count) {
    root_.fault(FaultCode::kOutOfRange, key, std::to_string(count) + " entries",
                "at most " + std::to_string(kMostIncidentItems));
  }

  std::string line(TableReader& table, std::string_view key, std::size_t most) {
    std::string text = table.text_or(key, "");
    limit(table, key, text, most);
    return text;
  }

  std::vector<std::string> list(std::string_view key) {
    std::vector<std::string> texts = root_.texts(key);
    if (texts.size() > kMostIncidentItems) too_many(key, texts.size());
    for (const std::string& text : texts) limit(root_, key, text, kMostIncidentLine);
    return texts;
  }

  std::optional<Date> past_day(std::string_view key) {
    const std::optional<Date> date = root_.date(key);
    if (!date || *date <= day_) return date;
    root_.fault(FaultCode::kBadDate, key, to_iso(*date), "a day not after " + to_iso(day_));
    return {};
  }
};

}  // namespace

Result<Incident> read_incident(const Document& document, Date day) { return IncidentReader(document, day).read(); }

}  // namespace lanework::care
