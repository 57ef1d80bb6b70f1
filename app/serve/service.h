// From a request to its answer: files, routes, refusals; every answer with the house's headers, one line of log, one
// count. Nothing here knows of sockets.
#pragma once

#include <memory>

#include "app/serve/house.h"

namespace lanework::serve {

class Service {
 public:
  // Faults: a route of the matrix that nobody answers, or work that has no route.
  static Result<std::unique_ptr<Service>> make(House& house);

  Response answer(const Request& request);  // from several threads at once; never throws
  Response refuse(int status) const;        // where there is no whole request

 private:
  explicit Service(House& house) : house_(house) {}
  House& house_;

  Response routed(const Request& request, std::string& route, std::string& why, std::string& account,
                  std::string& device);
  Response worked(const Request& request, const access::PathMatch& match, std::string& why, std::string& account,
                  std::string& device);
  Response other_method(const Request& request) const;
  void dress(Response& response, bool of_file) const;
};

}  // namespace lanework::serve
