#include "benchmarks/serve/copy_peer.h"

#include <libpq-fe.h>

#include <chrono>
#include <cstdio>
#include <memory>
#include <stdexcept>

namespace lanework::bench {
namespace {

using Connection = std::unique_ptr<PGconn, void (*)(PGconn*)>;

void run(PGconn* connection, const char* statement) {
  PGresult* result = PQexec(connection, statement);
  const auto status = PQresultStatus(result);
  PQclear(result);
  if (status != PGRES_COMMAND_OK && status != PGRES_COPY_IN) throw std::runtime_error(PQerrorMessage(connection));
}

std::string hex(const std::string& bytes) {
  std::string out = "\\\\x";
  for (const char c : bytes) {
    char two[3];
    std::snprintf(two, sizeof two, "%02x", static_cast<unsigned char>(c));
    out += two;
  }
  return out;
}

}  // namespace

double copied_a_second(const std::string& where, int rows, const std::string& body) {
  const Connection connection(PQconnectdb(where.c_str()), PQfinish);
  run(connection.get(),
      "CREATE TABLE copied (club text NOT NULL, receipt bigint NOT NULL, id bytea NOT NULL, device text NOT NULL, "
      "sequence bigint NOT NULL, author text NOT NULL, role text NOT NULL, received text NOT NULL, person bytea, "
      "body bytea NOT NULL, link bytea NOT NULL, PRIMARY KEY (club, receipt), UNIQUE (club, id)); "
      "CREATE INDEX copied_by_device ON copied (club, device, sequence)");
  const std::string body_hex = hex(body);
  const std::string link_hex = hex(std::string(32, 'l'));
  std::string text;
  for (int i = 1; i <= rows; ++i) {
    char id[33];
    std::snprintf(id, sizeof id, "%032x", static_cast<unsigned>(i) * 2654435761U);
    text += "quillmere\t" + std::to_string(i) + "\t\\\\x" + id + "\tdevice-1\t" + std::to_string(i) +
            "\ta-0123456789abcdef\tcoach\t2026-11-26T18:05:00+01:00\t\\N\t" + body_hex + "\t" + link_hex + "\n";
  }
  const auto began = std::chrono::steady_clock::now();
  run(connection.get(), "COPY copied FROM STDIN");
  PQputCopyData(connection.get(), text.data(), static_cast<int>(text.size()));
  PQputCopyEnd(connection.get(), nullptr);
  PGresult* result = PQgetResult(connection.get());
  const bool done = PQresultStatus(result) == PGRES_COMMAND_OK;
  PQclear(result);
  if (!done) throw std::runtime_error(PQerrorMessage(connection.get()));
  return rows / std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count();
}

}  // namespace lanework::bench
