#include "tests/store/private_cluster.h"

#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <stdexcept>

namespace lanework::store::test {
namespace {

namespace fs = std::filesystem;

// The newest version that is installed.
std::string programs() {
  std::string newest;
  std::error_code ignored;
  for (const auto& version : fs::directory_iterator("/usr/lib/postgresql", ignored)) {
    const fs::path folder = version.path() / "bin";
    if (fs::exists(folder / "initdb", ignored) && folder.string() > newest) newest = folder.string();
  }
  if (newest.empty()) throw std::runtime_error("no PostgreSQL server in /usr/lib/postgresql");
  return newest;
}

int free_port() {
  const int socket = ::socket(AF_INET, SOCK_STREAM, 0);
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  socklen_t length = sizeof address;
  ::bind(socket, reinterpret_cast<sockaddr*>(&address), length);
  ::getsockname(socket, reinterpret_cast<sockaddr*>(&address), &length);
  ::close(socket);
  return ntohs(address.sin_port);
}

}  // namespace

PrivateCluster& PrivateCluster::instance() {
  static PrivateCluster cluster;
  return cluster;
}

PrivateCluster::PrivateCluster() : programs_(programs()) {
  std::string name = (fs::temp_directory_path() / "lanework-cluster-XXXXXX").string();
  if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder for a cluster");
  folder_ = name;
  if (::geteuid() == 0) {
    as_user_ = "setpriv --reuid=postgres --regid=postgres --clear-groups ";
    run("chown postgres " + folder_);
  }
  run(as_user_ + programs_ + "/initdb -D " + folder_ +
      "/data -U lanework -A trust -E UTF8 --locale=C --data-checksums");
  port_ = free_port();
  start();
}

PrivateCluster::~PrivateCluster() {
  const std::string stop =
      as_user_ + programs_ + "/pg_ctl -D " + folder_ + "/data -m immediate -w stop >/dev/null 2>&1";
  static_cast<void>(std::system(stop.c_str()));
  std::error_code ignored;
  fs::remove_all(folder_, ignored);
}

void PrivateCluster::start() const {
  run(as_user_ + programs_ + "/pg_ctl -D " + folder_ + "/data -l " + folder_ +
      "/log -w -o \"-c listen_addresses=127.0.0.1 -c recovery_init_sync_method=syncfs -p " + std::to_string(port_) +
      " -k " + folder_ + "\" start");
}

void PrivateCluster::cut_and_restart() {
  run(as_user_ + programs_ + "/pg_ctl -D " + folder_ + "/data -m immediate -w stop");
  start();
}

std::string PrivateCluster::new_database() {
  const std::string name = "club" + std::to_string(++databases_);
  run(programs_ + "/createdb -h 127.0.0.1 -p " + std::to_string(port_) + " -U lanework -E UTF8 -T template0 " + name);
  return "host=127.0.0.1 port=" + std::to_string(port_) + " user=lanework dbname=" + name;
}

// Output goes to a file: a server that a pipe waits for would never let go of it.
void PrivateCluster::run(const std::string& command) const {
  const std::string log = folder_ + "/said";
  const int status = std::system(("cd / && " + command + " >" + log + " 2>&1 </dev/null").c_str());
  if (status == 0) return;
  std::string words;
  if (std::FILE* file = std::fopen(log.c_str(), "r")) {
    std::array<char, 2000> bytes{};
    words.assign(bytes.data(), std::fread(bytes.data(), 1, bytes.size(), file));
    std::fclose(file);
  }
  throw std::runtime_error(command + ": " + words);
}

}  // namespace lanework::store::test
