// A small squad file and roster of the invented club, and ways to get them wrong.
#pragma once

#include <string>
#include <vector>

#include "core/session/squad.h"

namespace lanework::session::test {

// The least that a squad file may say: name, roster, routine, strip, and [slot] with date, start and minutes, on the
// lines 1 to 8.
std::string least_squad();

// The text with one piece exchanged; throws where the piece does not stand there exactly once.
std::string exchanged(const std::string& text, const std::string& piece, const std::string& with);

// Ann (12), Bo (11), Cid (13) and Dee (14) of U13, Dee of U14 too, Eve (10) of U10: ids P1 to P5.
std::vector<people::Player> sample_roster();

Result<Squad> squad_of(const std::string& toml);
// Its fault lines, one a line; empty when there is none.
std::string squad_faults(const std::string& toml);

// Of one line of restrictions.toml each: a table of [[restriction]].
people::Restrictions restrictions_of(const std::vector<std::string>& tables);

}  // namespace lanework::session::test
