#include "benchmarks/serve/clients.h"

#include <arpa/inet.h>
#include <netinet/tcp.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <mutex>
#include <stdexcept>
#include <thread>
#include <utility>

namespace lanework::bench {

using Clock = std::chrono::steady_clock;

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

int Client::ask(const std::string& request) {
  for (std::size_t sent = 0; sent < request.size();) {
    const ssize_t some = ::send(socket_, request.data() + sent, request.size() - sent, MSG_NOSIGNAL);
    if (some <= 0) throw std::runtime_error("cannot send");
    sent += static_cast<std::size_t>(some);
  }
  std::size_t whole = std::string::npos;
  while (whole == std::string::npos || left_.size() < whole) {
    const std::size_t end = left_.find("\r\n\r\n");
    if (end != std::string::npos) {
      const std::size_t length = left_.find("Content-Length: ");
      whole = end + 4 + (length < end ? std::stoul(left_.substr(length + 16, 12)) : 0);
      if (left_.size() >= whole) break;
    }
    std::array<char, 16'384> bytes{};
    const ssize_t some = ::recv(socket_, bytes.data(), bytes.size(), 0);
    if (some <= 0) throw std::runtime_error("no answer");
    left_.append(bytes.data(), static_cast<std::size_t>(some));
  }
  const int status = std::stoi(left_.substr(9, 3));
  left_.erase(0, whole);
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
                  const std::function<std::string(int client, int n)>& next) {
  Asked out;
  std::mutex lock;
  std::vector<std::thread> threads;
  const auto began = Clock::now();
  const auto until = began + std::chrono::duration_cast<Clock::duration>(std::chrono::duration<double>(seconds));
  for (int c = 0; c < clients; ++c) {
    threads.emplace_back([&, c] {
      Client client(port);
      std::vector<double> mine;
      std::int64_t refused = 0;
      for (int n = 0; Clock::now() < until; ++n) {
        const std::string request = next(c, n);
        const auto start = Clock::now();
        if (client.ask(request) != 200) ++refused;
        mine.push_back(std::chrono::duration<double>(Clock::now() - start).count());
      }
      const std::lock_guard<std::mutex> guard(lock);
      out.seconds.insert(out.seconds.end(), mine.begin(), mine.end());
      out.refused += refused;
    });
  }
  for (std::thread& thread : threads) thread.join();
  out.took = std::chrono::duration<double>(Clock::now() - began).count();
  std::sort(out.seconds.begin(), out.seconds.end());
  return out;
}

}  // namespace lanework::bench
