// One request on its way through the house: what was asked, by whom, and what the route may use.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/serve/answer.h"
#include "app/serve/house.h"

namespace lanework::serve {

struct Call {
  House& house;
  const Request& request;
  const access::Route& route;
  std::vector<std::string> values;  // of the path's places, in order
  Now now;
  Room& room;
  Node body;              // of a POST: a table
  access::Viewer viewer;  // account empty: nobody in particular
  std::optional<store::Account> account;
  std::optional<store::Session> session;
  std::optional<store::Device> device;
  // For the book of reads, where the route is noted: filled in by the route.
  std::string read_squad;
  std::string read_player;
  std::int64_t read_people = 0;
  std::string why;                               // for the log: the error's key
  std::optional<store::Versions> versions = {};  // of a device's call: as they were when it was let in

  [[nodiscard]] TableReader reader(Faults& faults) const { return {"", &body, "", faults}; }
  // Under 'account/...' or the like, after a failure; forgets nothing.
  void failed(const std::string& name) const { (void)room.gate->note_failure(name, now.seconds); }
};

using Work = Response (*)(Call&);

struct NamedWork {
  const char* route;  // as the matrix names it
  Work work;
};

// Every route's work, one list a file of routes/.
const std::vector<NamedWork>& works();

}  // namespace lanework::serve
