// The server without a socket, over a store of its own: requests in, answers out, under a clock that the test sets.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "app/serve/service.h"
#include "tests/store/sqlite_file.h"

namespace lanework::serve::test {

class HouseOfTest {
 public:
  HouseOfTest();

  Response ask(const std::string& method, const std::string& path, const std::string& body = "",
               const std::string& cookie = "", const std::string& device = "");
  // A session of that account, its second factor shown just now; gives the cookie.
  std::string session(const std::string& account);
  // A paired device of that account; gives its secret.
  std::string device(const std::string& account);
  std::string account(ledger::Role role, const std::vector<store::Grant>& grants = {});

  [[nodiscard]] std::string file() const { return file_.file("quillmere"); }
  [[nodiscard]] Room& room() { return *room_; }
  [[nodiscard]] House& house() { return *house_; }
  [[nodiscard]] Service& service() { return *service_; }
  [[nodiscard]] const std::vector<std::string>& log() const { return log_; }
  std::int64_t now = 1'795'700'000;  // 26 November 2026

 private:
  store::test::SqliteFile file_;
  std::vector<std::string> log_;
  std::unique_ptr<House> house_;
  std::unique_ptr<Service> service_;
  std::unique_ptr<Room> room_;
  int accounts_ = 0;
};

// The shipped rules of pain and of coming back.
CareRules shipped_care();

}  // namespace lanework::serve::test
