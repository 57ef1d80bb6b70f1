#include <algorithm>
#include <set>
#include <string>

#include "app/read/files.h"
#include "core/care/entries/fold.h"
#include "core/care/entries/read_entries.h"
#include "core/care/entries/restrictions_document.h"
#include "core/care/pain/read_pain_rule.h"
#include "core/care/return_to_sport/read_return_rules.h"
#include "core/catalogue/read_catalogue.h"
#include "core/people/read_restrictions.h"
#include "fuzz/care_promises.h"
#include "fuzz/toml_input.h"

namespace lanework::fuzz {
namespace {

using namespace care;

const std::string kCatalogue = LANEWORK_SOURCE_DIR "/catalogue";

struct ShippedRules {
  std::vector<catalogue::Source> sources;
  PainRule pain;
  ReturnRules returns;
};

const ShippedRules& shipped() {
  static const ShippedRules kShipped = [] {
    const auto table = [](const char* name) { return read::read_toml_file(kCatalogue + "/" + name).value(); };
    auto sources = catalogue::read_sources(table("sources.toml")).value();
    auto pain = read_pain_rule(table("care/pain.toml"), sources).value();
    auto returns = read_return_rules(table("care/return_rules.toml"), sources).value();
    return ShippedRules{std::move(sources), std::move(pain), std::move(returns)};
  }();
  return kShipped;
}

bool alike(const people::Restriction& a, const people::Restriction& b) {
  return a.player == b.player && RestrictionSet{a} == RestrictionSet{b};
}

bool alike(const Standing& a, const Standing& b) {
  return alike(a.restriction, b.restriction) && a.stems_from == b.stems_from &&
         a.needs_clearance == b.needs_clearance && a.why == b.why;
}

bool alike(const CourseStanding& a, const CourseStanding& b) {
  return a.player == b.player && a.id == b.id && a.in_force.course.id == b.in_force.course.id &&
         a.in_force.notes == b.in_force.notes && a.state == b.state && a.since == b.since && a.age == b.age &&
         a.carries == b.carries && a.places == b.places && a.closed == b.closed;
}

template <class T>
bool alike(const std::vector<T>& a, const std::vector<T>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const T& x, const T& y) { return alike(x, y); });
}

bool alike(const Knowledge& a, const Knowledge& b) {
  return alike(a.standing, b.standing) && alike(a.courses, b.courses) && a.remarks == b.remarks &&
         a.as_known == b.as_known;
}

void check_order(const std::vector<Entry>& entries, const Knowledge& known) {
  const auto folded = [](const std::vector<Entry>& list) { return fold(list, shipped().pain, shipped().returns); };
  promise(alike(folded(entries), known), "entries folded twice give the same");
  std::vector<Entry> turned(entries.rbegin(), entries.rend());
  promise(alike(folded(turned), known), "entries in the opposite order give the same");
  std::rotate(turned.begin(), turned.begin() + static_cast<std::ptrdiff_t>(turned.size() / 2), turned.end());
  turned.insert(turned.end(), entries.begin(), entries.end());
  promise(alike(folded(turned), known), "entries handed in twice, in another order, give the same");
}

// As the file that a squad names.
void check_written_restrictions(const std::vector<Entry>& entries, const Knowledge& known) {
  std::vector<std::string> players;
  for (const Entry& entry : entries) players.push_back(entry.player);
  const std::string written = to_toml(restrictions_document(known.standing, known.as_known));
  const auto document = parse_toml(kFile, written);
  promise(document.ok(), "what stands is written as TOML");
  const auto read = people::read_restrictions(document.value(), players, {});
  promise(read.ok(), "what stands is written as restrictions");
  const std::vector<people::Restriction>& list = read.value().list;
  promise(std::equal(list.begin(), list.end(), known.standing.begin(), known.standing.end(),
                     [](const people::Restriction& a, const Standing& b) { return alike(a, b.restriction); }),
          "restrictions are read as they were written");
}

void check_hurts(const std::vector<Entry>& entries, const Knowledge& known) {
  std::set<std::string> hurt;
  for (const Entry& entry : entries) {
    if (std::holds_alternative<ClearanceGiven>(entry.what)) return;
    if (std::holds_alternative<Hurt>(entry.what)) hurt.insert(entry.player);
  }
  for (const Standing& one : known.standing) {
    if (one.restriction.sits_out) hurt.erase(one.restriction.player);
  }
  promise(hurt.empty(), "without a clearance who was hurt sits out");
}

}  // namespace

void check_care_rules(const Document& document) {
  const auto pain = read_pain_rule(document, shipped().sources);
  if (!pain) promise_placed_faults(pain.faults());
  const auto returns = read_return_rules(document, shipped().sources);
  if (!returns) promise_placed_faults(returns.faults());
}

void check_entries(const Document& document) {
  const auto read = read_entries(document, shipped().returns, {});
  if (!read) return promise_placed_faults(read.faults());
  const std::vector<Entry>& entries = read.value();
  const Knowledge known = fold(entries, shipped().pain, shipped().returns);
  promise(known.as_known.has_value() == !entries.empty(), "something is known where something was received");
  for (const Remark& remark : known.remarks) promise_one_line(remark.words, "a remark is one line");
  check_order(entries, known);
  check_written_restrictions(entries, known);
  check_hurts(entries, known);
}

}  // namespace lanework::fuzz
