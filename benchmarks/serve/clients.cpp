#include "benchmarks/serve/clients.h"

#include <arpa/inet.h>
#include <netinet/tcp.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <ctime>
#include <stdexcept>
#include <utility>

namespace lanework::bench {

using Clock = std::chrono::steady_clock;

namespace {

// Of this thread, on a core.
double busy_seconds() {
  timespec time{};
  ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_nsec) * 1e-9;
}

}  // namespace

Client::Client(std::uint16_t port) : socket_(::socket(AF_INET, SOCK_STREAM, 0)) {
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_port = htons(port);
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  const int yes = 1;
  ::setsockopt(socket_, IPPROTO_TCP, TCP_NODELAY, &yes, sizeof yes);
  if (::connect(socket_, reinterpret_cast<const sockaddr*>(&address), sizeof address) != 0) {
    throw std::runtime_error("cannot connect");
  }
}

Client::Client(Client&& other) noexcept : socket_(std::exchange(other.socket_, -1)), left_(std::move(other.left_)) {}

Client::~Client() {
  if (socket_ >= 0) ::close(socket_);
}

void Client::ask(const std::string& request) {
  for (std::size_t sent = 0; sent < request.size();) {
    const ssize_t some = ::send(socket_, request.data() + sent, request.size() - sent, MSG_NOSIGNAL);
    if (some <= 0) throw std::runtime_error("cannot send");
    sent += static_cast<std::size_t>(some);
  }
}

int Client::heard() {
  std::array<char, 16'384> bytes;  // NOLINT(cppcoreguidelines-pro-type-member-init): written by recv
  const ssize_t some = ::recv(socket_, bytes.data(), bytes.size(), 0);
  if (some <= 0) throw std::runtime_error("no answer");
  left_.append(bytes.data(), static_cast<std::size_t>(some));
  if (whole_ == 0) {
    const std::size_t end = left_.find("\r\n\r\n");
    if (end == std::string::npos) return 0;
    const std::size_t length = left_.find("Content-Length: ");
    whole_ = end + 4 + (length < end ? std::stoul(left_.substr(length + 16, 12)) : 0);
  }
  if (left_.size() < whole_) return 0;
  const int status = std::stoi(left_.substr(9, 3));
  left_.erase(0, whole_);
  whole_ = 0;
  return status;
}

std::string post(const std::string& path, const std::string& headers, const std::string& body) {
  return "POST " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nLanework-Request: 1\r\n" +
         headers + "Content-Length: " + std::to_string(body.size()) + "\r\n\r\n" + body;
}

std::string get(const std::string& path, const std::string& headers) {
  return "GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\n" + headers + "\r\n";
}

Asked ask_at_once(std::uint16_t port, int clients, double seconds,
                  const std::function<const std::string&(int client, int n)>& next) {
  struct Asking {
    Client client;
    Clock::time_point start;
    int n = 0;
  };
  Asked out;
  std::vector<Asking> asking;
  std::vector<pollfd> waiting;
  for (int c = 0; c < clients; ++c) {
    asking.push_back({Client(port), {}});
    waiting.push_back({asking.back().client.socket(), POLLIN, 0});
  }
  const auto ask = [&](std::size_t c) {
    const std::string& request = next(static_cast<int>(c), asking[c].n++);
    asking[c].start = Clock::now();
    asking[c].client.ask(request);
  };
  const double busy_before = busy_seconds();
  const auto began = Clock::now();
  const auto until = began + std::chrono::duration_cast<Clock::duration>(std::chrono::duration<double>(seconds));
  for (std::size_t c = 0; c < asking.size(); ++c) ask(c);
  for (int left = clients; left > 0;) {
    if (::poll(waiting.data(), waiting.size(), -1) < 0) throw std::runtime_error("cannot wait");
    for (std::size_t c = 0; c < asking.size(); ++c) {
      if (waiting[c].revents == 0) continue;
      const int status = asking[c].client.heard();
      if (status == 0) continue;
      if (status != 200) ++out.refused;
      out.seconds.push_back(std::chrono::duration<double>(Clock::now() - asking[c].start).count());
      if (Clock::now() < until) {
        ask(c);
      } else {
        waiting[c].fd = -1;  // passed over by poll
        --left;
      }
    }
  }
  out.took = std::chrono::duration<double>(Clock::now() - began).count();
  out.busy = busy_seconds() - busy_before;
  std::sort(out.seconds.begin(), out.seconds.end());
  return out;
}

}  // namespace lanework::bench
