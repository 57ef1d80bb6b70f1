// Requests of the demo club, made from its files, and ways to change them and their answers.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/check/check_session.h"

namespace lanework::check::test {

// squad: a file name under demo/quillmere/squads; routine: id of a shipped routine, empty for the squad's own.
Node demo_request(const std::string& squad, const std::string& routine = "");

// The real planner through the door.
Node planned(const Node& request);

// A value inside a tree by a dotted path, counting lists from 0: 'items.2.takes_seconds'. Throws where it is not.
Node& at(Node& root, const std::string& path);
// Sets a key of the table at a path; missing tables on the way are made.
void put(Node& root, const std::string& path, Node value);
void erase(Node& root, const std::string& path);

Node text(const std::string& value);
Node number(std::int64_t value);
Node real(double value);
Node yes();
Node texts(const std::vector<std::string>& values);

// The report, or a test failure's exception with the faults.
Report report_of(const Node& request, const Node& answer);
std::string lines(const Report& report);
bool breaks(const Report& report, const std::string& rule);

}  // namespace lanework::check::test
