// A PostgreSQL cluster of the tests' own: on a loopback port and a socket folder of its own, started once for the
// program and gone at its end. Nothing of the machine's own clusters is touched.
#pragma once

#include <string>

namespace lanework::store::test {

class PrivateCluster {
 public:
  // The one of this program; started when it is first asked for. Throws with the server's words where it cannot be.
  static PrivateCluster& instance();
  PrivateCluster(const PrivateCluster&) = delete;
  PrivateCluster& operator=(const PrivateCluster&) = delete;
  ~PrivateCluster();

  // An empty database, and how to reach it.
  std::string new_database();
  // Stops the server as a power cut would, and starts it again.
  void cut_and_restart();

 private:
  PrivateCluster();
  std::string programs_;  // folder of initdb and pg_ctl
  std::string folder_;
  std::string as_user_;  // before every command, where we are root: the server refuses to run as root
  int port_ = 0;
  int databases_ = 0;

  void run(const std::string& command) const;  // throws with what it said
  void start() const;
};

}  // namespace lanework::store::test
