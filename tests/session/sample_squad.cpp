#include "tests/session/sample_squad.h"

#include <stdexcept>

#include "core/people/read_restrictions.h"
#include "tests/catalogue/shipped.h"

namespace lanework::session::test {
namespace {

people::Player player(const std::string& id, const std::string& name, int birth_year, std::vector<std::string> squads) {
  people::Player out;
  out.id = id;
  out.name = name;
  out.birth = make_date(birth_year, 3, 14);
  out.squads = std::move(squads);
  return out;
}

Document parsed(const std::string& file, const std::string& toml) {
  auto document = parse_toml(file, toml);
  if (!document) throw std::runtime_error(to_line(document.faults().front()));
  return std::move(document).value();
}

}  // namespace

std::string least_squad() {
  return "name = \"Under-13\"\n"
         "roster = \"roster.csv\"\n"
         "routine = \"early-teens\"\n"
         "strip = \"strip.toml\"\n"
         "[slot]\n"
         "date = 2026-11-26\n"
         "start = 18:00:00\n"
         "minutes = 20\n";
}

std::string exchanged(const std::string& text, const std::string& piece, const std::string& with) {
  const std::size_t at = text.find(piece);
  if (at == std::string::npos || text.find(piece, at + 1) != std::string::npos) throw std::invalid_argument(piece);
  return text.substr(0, at) + with + text.substr(at + piece.size());
}

std::vector<people::Player> sample_roster() {
  return {player("P1", "Ann", 2014, {"U13"}), player("P2", "Bo", 2015, {"U13"}), player("P3", "Cid", 2013, {"U13"}),
          player("P4", "Dee", 2012, {"U13", "U14"}), player("P5", "Eve", 2016, {"U10"})};
}

Result<Squad> squad_of(const std::string& toml) {
  return read_squad(parsed("squad.toml", toml), catalogue::test::shipped_catalogue(), sample_roster());
}

std::string squad_faults(const std::string& toml) {
  const auto squad = squad_of(toml);
  return squad ? "" : catalogue::test::all_lines(squad.faults());
}

people::Restrictions restrictions_of(const std::vector<std::string>& tables) {
  std::string toml;
  for (const std::string& table : tables) toml += "[[restriction]]\n" + table + "\n";
  auto read = people::read_restrictions(parsed("restrictions.toml", toml), {"P1", "P2", "P3", "P4", "P5"},
                                        {"Under-13", "U13", "U14", "U10"});
  if (!read) throw std::runtime_error(to_line(read.faults().front()));
  return std::move(read).value();
}

}  // namespace lanework::session::test
