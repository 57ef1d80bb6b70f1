// A request and its answer as values: what the routes see of HTTP. RFC 9110.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace lanework::serve {

struct Request {
  std::string method;
  std::string path;                                          // as sent, without the query; nothing is decoded
  std::string query;                                         // after the '?'
  std::vector<std::pair<std::string, std::string>> headers;  // names in lower case
  std::string body;
  std::string address;           // of the caller, without a port
  bool on_this_machine = false;  // the caller is this machine itself, with no proxy between
  bool secure = false;           // over TLS, here or at the proxy

  // The first of that name; empty: none.
  [[nodiscard]] std::string_view header(std::string_view name) const;
  [[nodiscard]] int count(std::string_view name) const;
};

struct Response {
  int status = 200;
  std::vector<std::pair<std::string, std::string>> headers;
  std::string body;
  std::shared_ptr<const std::string> file;  // in place of the body, where it is one of the server's own files

  Response& with(std::string name, std::string value);
  [[nodiscard]] std::string_view header(std::string_view name) const;
};

// Called on one of several threads at once; may wait for the disk.
using Handler = std::function<Response(const Request&)>;
// The answer where there is no whole request to hand on: 400, 413, 431, 500, 503.
using Refusal = std::function<Response(int status)>;

}  // namespace lanework::serve
