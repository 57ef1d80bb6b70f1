// Clients that ask over sockets and wait for each answer, and clients that only hold a connection.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace lanework::bench {

class Client {
 public:
  explicit Client(std::uint16_t port);
  Client(const Client&) = delete;
  Client& operator=(const Client&) = delete;
  Client(Client&& other) noexcept;
  ~Client();
  // The status; throws where the connection is gone.
  int ask(const std::string& request);

 private:
  int socket_ = -1;
  std::string left_;
};

std::string post(const std::string& path, const std::string& headers, const std::string& body);
std::string get(const std::string& path, const std::string& headers);

// Each asks again and again for so long; the seconds of every answer, sorted. next(client, n): its nth request.
struct Asked {
  std::vector<double> seconds;
  double took = 0;
  std::int64_t refused = 0;
};
Asked ask_at_once(std::uint16_t port, int clients, double seconds,
                  const std::function<std::string(int client, int n)>& next);

}  // namespace lanework::bench
