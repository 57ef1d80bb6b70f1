// Any text as coaches.toml: coaches that keep their promises, or clear faults.
#include <cstddef>
#include <cstdint>
#include <set>
#include <string>

#include "core/club/coaches.h"
#include "fuzz/promise.h"

namespace {

using lanework::club::Coach;
using lanework::fuzz::promise;

const std::vector<std::string>& squads() {
  static const std::vector<std::string> kSquads = {"u10-wrens", "u13-kestrels", "u16-merlins"};
  return kSquads;
}

void promise_one_line(const std::string& text, const char* what) {
  promise(!text.empty(), what);
  for (const char c : text) promise(static_cast<unsigned char>(c) >= 0x20 && c != 0x7F, what);
}

void check_coach(const Coach& coach) {
  promise_one_line(coach.id, "a coach has an id of one line");
  std::set<std::string> own;
  for (const std::string& squad : coach.squads) {
    promise(own.insert(squad).second, "a coach has a squad once");
    const std::vector<Coach> alone = {coach};
    promise(lanework::club::coaches_of(alone, squad).size() == 1, "a coach is found by a squad");
  }
  for (std::size_t i = 0; i < coach.taught.size(); ++i) {
    promise(i == 0 || coach.taught[i - 1].date <= coach.taught[i].date, "what was taught comes by date");
    promise_one_line(coach.taught[i].by, "somebody taught it");
    promise_one_line(coach.taught[i].what, "something was taught");
  }
  promise_one_line(lanework::club::taught_in_words(coach), "who taught is told in one line");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(data, data + size);
  const auto document = lanework::parse_toml("coaches.toml", text);
  if (!document) {
    lanework::fuzz::promise_clear_faults(document.faults(), "coaches.toml");
    return 0;
  }
  lanework::Faults faults;
  const std::vector<Coach> coaches = lanework::club::read_coaches(document.value(), squads(), faults);
  if (!faults.empty()) {
    lanework::fuzz::promise_clear_faults(faults, "coaches.toml");
    return 0;
  }
  std::set<std::string> ids;
  for (const Coach& coach : coaches) {
    promise(ids.insert(coach.id).second, "ids of coaches differ");
    check_coach(coach);
  }
  return 0;
}
