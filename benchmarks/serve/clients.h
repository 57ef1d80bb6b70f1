// Clients that ask over sockets and wait for each answer, all on one thread; and clients that only hold a connection.
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

  // Both throw where the connection is gone.
  void ask(const std::string& request);
  int heard();  // what has come so far: the status once the answer is whole, 0 until then
  [[nodiscard]] int socket() const { return socket_; }

 private:
  int socket_ = -1;
  std::string left_;
  std::size_t whole_ = 0;  // bytes of the answer; 0: not known yet
};

std::string post(const std::string& path, const std::string& headers, const std::string& body);
std::string get(const std::string& path, const std::string& headers);

// Each asks again and again for so long; the seconds of every answer, sorted. next(client, n): its nth request, which
// stays as it is until the next call for that client.
struct Asked {
  std::vector<double> seconds;
  double took = 0;
  double busy = 0;  // of the clients' own thread, CPU seconds
  std::int64_t refused = 0;
};
Asked ask_at_once(std::uint16_t port, int clients, double seconds,
                  const std::function<const std::string&(int client, int n)>& next);

}  // namespace lanework::bench
