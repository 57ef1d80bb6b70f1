#include "app/cli/care/known_before_matter.h"

#include "app/cli/care/entry_files.h"
#include "app/read/files.h"
#include "core/care/entries/read_entries.h"
#include "core/care/incident/known_before.h"
#include "core/people/instruction.h"
#include "core/people/what_is_barred.h"

namespace lanework::cli {
namespace {

std::string plain(std::string_view key) {
  std::string out(key);
  for (char& c : out) c = c == '-' ? ' ' : c;
  return out;
}

std::string listed(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& one : words) out += (out.empty() ? "" : ", ") + one;
  return out;
}

template <class T>
std::string listed(const std::vector<T>& values, const std::vector<std::string_view>& known) {
  std::vector<std::string> words;
  for (const T value : values) words.push_back(plain(catalogue::word(known, value)));
  return listed(words);
}

// 'Sunday 22 November 2026 20:10, 2 days before'
std::string when(care::ReceiptTime time, Date day) {
  const int days = days_between(care::local_day(time), day);
  return care::to_day_words(time) + (days == 0   ? ", the same day"
                                     : days == 1 ? ", the day before"
                                                 : ", " + std::to_string(days) + " days before");
}

std::string place_words(const std::optional<catalogue::BodyArea>& place) {
  return place ? plain(catalogue::word(catalogue::body_area_words(), *place)) : "place not known";
}

std::string sign_words(const std::vector<care::PainSign>& signs, const care::PainRule& rule) {
  std::vector<std::string> words;
  for (const care::PainSign sign : signs) words.push_back(rule.sign(sign).words);
  return words.empty() ? "" : ", " + listed(words);
}

std::string number_words(const care::PainReport& report, const care::PainRule& rule) {
  const std::pair<const char*, std::optional<int>> numbers[] = {
      {" before", report.before}, {" during", report.during}, {" the next morning", report.next_morning}};
  std::string out = "sore, " + place_words(report.place);
  for (const auto& [moment, number] : numbers) {
    if (number) out += ", " + std::to_string(*number) + " of 10" + moment;
  }
  return out + sign_words(report.signs, rule);
}

// What an entry says beside the coach's words.
std::string told(const care::Entry& entry, const people::Restriction& restriction, const care::PainRule& rule) {
  if (const auto* sore = std::get_if<care::Soreness>(&entry.what)) return number_words(sore->report, rule);
  if (!std::holds_alternative<care::RestrictionSet>(entry.what)) return "symptoms told";
  const std::string areas = listed(restriction.areas, catalogue::body_area_words());
  const std::string kinds = listed(restriction.kinds, catalogue::stress_kind_words());
  std::string out = "set" + (areas.empty() ? "" : " for " + areas) + (kinds.empty() ? "" : " against " + kinds);
  if (restriction.allowed_grade > 0) {
    const auto grade = static_cast<std::size_t>(restriction.allowed_grade);
    out += ", " + std::string(people::allowed_words().at(grade)) + " allowed";
  }
  if (restriction.landings_percent < 100) {
    out += ", " + std::to_string(restriction.landings_percent) + " % of the landings of others";
  }
  return out + (restriction.new_eccentric_ok ? "" : ", nothing eccentric that is new");
}

std::string held_words(const care::HeldBefore& held, const care::PainRule& rule, Date day) {
  std::string out = people::instruction_for(held.restriction, day);
  for (const care::Entry& entry : held.stems_from) {
    out += "; " + told(entry, held.restriction, rule) + ", " + when(entry.received, day);
  }
  return out;
}

std::string hurt_words(const care::Entry& entry, const care::PainRule& rule, Date day) {
  const auto& hurt = std::get<care::Hurt>(entry.what);
  return place_words(hurt.place) + sign_words(hurt.signs, rule) + "; told " + when(entry.received, day);
}

std::string course_words(const care::CourseStanding& standing, Date day) {
  const care::Course& course = standing.in_force.course;
  std::string out = course.name + ": step " + std::to_string(standing.state.step + 1) + " of " +
                    std::to_string(course.steps.size()) + ", '" + course.step(standing.state.step).name + "', " +
                    (standing.state.begun ? "begun " : "not begun, since ") + when(standing.since, day);
  std::vector<std::string> shut;
  for (std::size_t gate = 0; gate < course.gates.size(); ++gate) {
    if (!standing.state.is_open(static_cast<int>(gate))) shut.push_back(course.gates[gate].name);
  }
  std::vector<std::string> held;
  for (const people::Restriction& restriction : care::restrictions_at(course, standing.state, standing.places)) {
    held.push_back(people::instruction_for(restriction, day));
  }
  return out + (held.empty() ? "; held back from nothing" : "; held back meanwhile: " + listed(held)) +
         (shut.empty() ? "; no gate is shut" : "; still shut: " + listed(shut));
}

std::string as_known_words(const std::optional<care::ReceiptTime>& as_known, const care::Incident& incident) {
  std::string out =
      as_known ? "As known " + when(*as_known, incident.date) + "." : "Nothing had been entered before it.";
  if (!incident.time) out += " The time of the incident is not known: entries of that day are left out.";
  return out;
}

}  // namespace

draw::KnownBeforeMatter known_before_matter(const std::vector<care::Entry>& entries, const read::PainAndReturn& rules,
                                            const care::Incident& incident, const care::Ages& ages) {
  const care::KnownBefore known = care::known_before(entries, incident, rules.pain, rules.returns, ages);
  draw::KnownBeforeMatter out;
  out.as_known = as_known_words(known.as_known, incident);
  for (const care::HeldBefore& held : known.held) out.held.push_back(held_words(held, rules.pain, incident.date));
  for (const care::Entry& hurt : known.hurts) out.hurts.push_back(hurt_words(hurt, rules.pain, incident.date));
  for (const care::CourseStanding& course : known.courses) out.courses.push_back(course_words(course, incident.date));
  return out;
}

Result<draw::KnownBeforeMatter> known_before_matter(const EnteredFiles& files, const care::Incident& incident,
                                                    const care::Ages& ages) {
  const auto rules = read_care_rules(files.catalogue, files.return_rules);
  if (!rules) return rules.faults();
  const auto document = read::read_toml_file(files.entries);
  if (!document) return document.faults();
  const auto entries = care::read_entries(document.value(), rules.value().returns, {});
  if (!entries) return entries.faults();
  return known_before_matter(entries.value(), rules.value(), incident, ages);
}

}  // namespace lanework::cli
