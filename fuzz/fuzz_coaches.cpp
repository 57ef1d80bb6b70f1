// Any text as coaches.toml: coaches that keep their promises, or clear faults.
#include <cstddef>
#include <cstdint>
#include <set>
#include <string>

#include "core/club/coaches.h"
#include "fuzz/toml_input.h"

namespace {

using lanework::club::Coach;
using lanework::fuzz::promise;
using lanework::fuzz::promise_one_line;

const std::vector<std::string>& squads() {
  static const std::vector<std::string> kSquads = {"u10-wrens", "u13-kestrels", "u16-merlins"};
  return kSquads;
}

void promise_there(const std::string& text, const char* what) {
  promise(!text.empty(), what);
  promise_one_line(text, what);
}

void check_coach(const Coach& coach) {
  promise_there(coach.id, "a coach has an id of one line");
  std::set<std::string> own;
  for (const std::string& squad : coach.squads) {
    promise(own.insert(squad).second, "a coach has a squad once");
    const std::vector<Coach> alone = {coach};
    promise(lanework::club::coaches_of(alone, squad).size() == 1, "a coach is found by a squad");
  }
  for (std::size_t i = 0; i < coach.taught.size(); ++i) {
    promise(i == 0 || coach.taught[i - 1].date <= coach.taught[i].date, "what was taught comes by date");
    promise_there(coach.taught[i].by, "somebody taught it");
    promise_there(coach.taught[i].what, "something was taught");
  }
  promise_there(lanework::club::taught_in_words(coach), "who taught is told in one line");
}

void check_document(const lanework::Document& document) {
  lanework::Faults faults;
  const std::vector<Coach> coaches = lanework::club::read_coaches(document, squads(), faults);
  if (!faults.empty()) return lanework::fuzz::promise_clear_faults(faults, lanework::fuzz::kFile);
  std::set<std::string> ids;
  for (const Coach& coach : coaches) {
    promise(ids.insert(coach.id).second, "ids of coaches differ");
    check_coach(coach);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  return lanework::fuzz::with_toml(data, size, check_document);
}
