// Blocks of the demo club as planned, the documents they are held against, and changes of both.
#pragma once

#include <functional>
#include <set>
#include <stdexcept>
#include <string>
#include <vector>

#include "app/read/club_folder.h"
#include "core/check/check_block.h"
#include "core/club/club.h"
#include "tests/check/requests.h"

namespace lanework::check::test {

const read::ClubFolder& demo();

// Little work: a block need not be good to be sound.
Node planned_blocks(const club::Club& club, const std::set<std::string>& squads);

// 0: Dunnocks, three evenings 48 h apart, lanes 1 and 2 beside 2: Jackdaws; 1: Kestrels, two matches, a week of
// holidays.
const Node& sound_answer();

std::string lines(const BlockReport& report);
BlockReport report_of(const BlockDocuments& documents, const Node& answer);

struct Matters {
  BlockDocuments club;
  Node answer;

  Node& kestrels() { return at(answer, "squads.1"); }
  Node& file(const std::string& squad) {
    for (SquadDocuments& documents : club.squads) {
      if (documents.id == squad) return documents.squad.root;
    }
    throw std::out_of_range(squad);
  }
  Node& limits() { return at(club.catalogues.at(0), "limits"); }
  void each_band(const std::string& key, std::int64_t value) {
    for (Node& band : at(limits(), "ceilings").items) band.set(key, number(value));
  }
  void strip(const std::string& key, const Node& value) {
    for (StripDocument& strip : club.strips) put(strip.strip.root, key, value);
  }
};

struct Mutation {
  const char* name;
  const char* rule;
  bool alone;  // nothing else may be found wrong
  std::function<void(Matters&)> apply;
};

// Each mutation applied to the sound matters is found, by its rule or by that alone.
void expect_each_is_found(const Matters& sound, const std::vector<Mutation>& mutations);

// Of a block that has begun (rolling_mutation_test.cpp).
const std::vector<Mutation>& rolling_mutations();

}  // namespace lanework::check::test
