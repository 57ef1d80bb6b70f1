#include "app/store/postgres/connection.h"

#include <libpq-fe.h>

#include <algorithm>
#include <string_view>

namespace lanework::store::postgres {
namespace {

constexpr int kOldestServer = 150000;
constexpr int kBinary = 1;
// Of PostgreSQL's catalogue of types.
constexpr unsigned kByteaType = 17;
constexpr unsigned kByteaArrayType = 1001;
constexpr unsigned kBigintType = 20;

// Ours to set, for this connection.
constexpr const char* kSet =
    "SET synchronous_commit = on; SET statement_timeout = '30s'; SET lock_timeout = '10s'; "
    "SET idle_in_transaction_session_timeout = '30s'; SET TimeZone = 'UTC'; SET client_min_messages = warning";

// What must hold then; the server's own settings are told, not set.
struct Setting {
  const char* name;
  const char* holds;
};
constexpr Setting kSettings[] = {{"fsync", "on"},
                                 {"synchronous_commit", "on"},
                                 {"full_page_writes", "on"},
                                 {"data_sync_retry", "off"},
                                 {"server_encoding", "UTF8"},
                                 {"standard_conforming_strings", "on"}};

std::string one_line(std::string_view words) {
  std::string out;
  for (const char c : words) {
    if (c == '\n') break;
    out += c;
  }
  return out;
}

std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + "\"";
}

// In network order.
void add_word(std::string& out, std::uint64_t value, int bytes) {
  for (int shift = 8 * (bytes - 1); shift >= 0; shift -= 8) out += static_cast<char>(value >> shift & 255U);
}

}  // namespace

Parameters& Parameters::text(std::string value) {
  values_.push_back({std::move(value), false, false, 0});
  return *this;
}

Parameters& Parameters::integer(std::int64_t value) {
  values_.push_back({std::to_string(value), false, false, kBigintType});
  return *this;
}

Parameters& Parameters::bytes(std::string value) {
  values_.push_back({std::move(value), true, false, kByteaType});
  return *this;
}

Parameters& Parameters::null() {
  values_.push_back({{}, false, true, 0});
  return *this;
}

Parameters& Parameters::texts(const std::vector<std::string>& elements) {
  std::string out = "{";
  for (const std::string& element : elements) out += (out.size() > 1 ? "," : "") + quoted(element);
  return text(out + "}");
}

// PostgreSQL's binary form of an array, as its array_recv reads it: dimensions, whether there are nulls, the elements'
// type, how many, from which index; then each with its length, -1 for null. All in network order.
Parameters& Parameters::bytes_list(const std::vector<std::optional<std::string>>& elements) {
  const bool nulls = std::any_of(elements.begin(), elements.end(), [](const auto& one) { return !one; });
  std::string out;
  const auto word = [&out](std::uint32_t value) { add_word(out, value, 4); };
  word(elements.empty() ? 0 : 1);
  word(nulls ? 1 : 0);
  word(kByteaType);
  if (!elements.empty()) {
    word(static_cast<std::uint32_t>(elements.size()));
    word(1);
  }
  for (const auto& element : elements) {
    word(element ? static_cast<std::uint32_t>(element->size()) : UINT32_MAX);
    if (element) out += *element;
  }
  values_.push_back({std::move(out), true, false, kByteaArrayType});
  return *this;
}

// The signature, flags and the length of an extension, as 'COPY, File Formats, Binary Format' of its manual has them.
CopiedRows::CopiedRows(std::uint16_t columns) : columns_(columns), bytes_("PGCOPY\n\377\r\n\0", 11) {
  bytes_.append(8, '\0');
}

CopiedRows& CopiedRows::row() {
  add_word(bytes_, columns_, 2);
  return *this;
}

CopiedRows& CopiedRows::text(std::string_view value) {
  add_word(bytes_, value.size(), 4);
  bytes_ += value;
  return *this;
}

CopiedRows& CopiedRows::integer(std::int64_t value) {
  add_word(bytes_, 8, 4);
  add_word(bytes_, static_cast<std::uint64_t>(value), 8);
  return *this;
}

CopiedRows& CopiedRows::null() {
  add_word(bytes_, UINT32_MAX, 4);
  return *this;
}

void Rows::Clear::operator()(pg_result* result) const { PQclear(result); }

int Rows::count() const { return PQntuples(result_.get()); }

int Rows::columns() const { return PQnfields(result_.get()); }

Rows::Kind Rows::kind(int column) const {
  switch (PQftype(result_.get(), column)) {
    case kBigintType:
      return Kind::kInteger;
    case kByteaType:
      return Kind::kBytes;
    default:
      return Kind::kText;
  }
}

std::int64_t Rows::integer(int row, int column) const {
  const char* bytes = PQgetvalue(result_.get(), row, column);
  const int length = PQgetlength(result_.get(), row, column);
  std::uint64_t out = 0;
  for (int i = 0; i < length; ++i) out = out << 8 | static_cast<unsigned char>(bytes[i]);
  return static_cast<std::int64_t>(out);
}

std::string Rows::text(int row, int column) const {
  return {PQgetvalue(result_.get(), row, column), static_cast<std::size_t>(PQgetlength(result_.get(), row, column))};
}

bool Rows::is_null(int row, int column) const { return PQgetisnull(result_.get(), row, column) != 0; }

std::int64_t Rows::affected() const {
  const char* count = PQcmdTuples(result_.get());
  return *count == '\0' ? 0 : std::stoll(count);
}

void Connection::Finish::operator()(pg_conn* connection) const { PQfinish(connection); }

Result<Connection> Connection::open(const std::string& where) {
  Connection out;
  out.connection_.reset(PQconnectdb(where.c_str()));
  out.name_ = "PostgreSQL";
  if (PQstatus(out.connection_.get()) != CONNECTION_OK) return out.fault(PQerrorMessage(out.connection_.get()));
  out.name_ = std::string(PQhost(out.connection_.get())) + "/" + PQdb(out.connection_.get());
  if (auto faults = out.set_up()) return *faults;
  return out;
}

std::optional<Faults> Connection::revive() {
  // What a server that went away left behind, without waiting: else whoever asks first after a restart learns of it by
  // a refusal. Its last words come first, then the end.
  pg_conn* const connection = connection_.get();
  bool there = PQstatus(connection) == CONNECTION_OK;
  for (int look = 0; there && look < 2; ++look) there = PQconsumeInput(connection) == 1;
  if (there && PQstatus(connection) == CONNECTION_OK) return {};
  prepared_.clear();
  PQreset(connection_.get());
  if (PQstatus(connection_.get()) != CONNECTION_OK) return Faults{fault(PQerrorMessage(connection_.get()))};
  return set_up();
}

std::optional<Faults> Connection::set_up() {
  if (PQserverVersion(connection_.get()) < kOldestServer) {
    return Faults{{FaultCode::kContradiction,
                   {name_, 0, 0, {}},
                   "version " + std::to_string(PQserverVersion(connection_.get()) / 10000),
                   "PostgreSQL 15 or newer",
                   {}}};
  }
  PQsetClientEncoding(connection_.get(), "UTF8");
  if (auto failed = run(kSet)) return Faults{*failed};
  for (const Setting& setting : kSettings) {
    const auto read = ask((std::string("SHOW ") + setting.name).c_str());
    if (!read) return read.faults();
    const std::string there = read.value().count() == 1 ? read.value().text(0, 0) : "nothing";
    if (there == setting.holds) continue;
    return Faults{{FaultCode::kContradiction,
                   {name_, 0, 0, setting.name},
                   there,
                   setting.holds,
                   "what a ledger acknowledges must be on the disk"}};
  }
  return {};
}

std::optional<Fault> Connection::prepare(const char* statement, const Parameters& parameters) {
  std::vector<Oid> types;
  for (const Parameters::Value& value : parameters.values_) types.push_back(value.type);
  std::string name = "s" + std::to_string(prepared_.size());
  const Rows made(PQprepare(connection_.get(), name.c_str(), statement, static_cast<int>(types.size()), types.data()));
  if (PQresultStatus(made.result_.get()) != PGRES_COMMAND_OK) return fault(PQerrorMessage(connection_.get()));
  prepared_.emplace(statement, std::move(name));
  return {};
}

Result<Rows> Connection::ask(const char* statement, const Parameters& parameters) {
  if (prepared_.find(std::string_view(statement)) == prepared_.end()) {
    if (auto failed = prepare(statement, parameters)) return *failed;
  }
  std::vector<const char*> values;
  std::vector<int> lengths;
  std::vector<int> formats;
  for (const Parameters::Value& value : parameters.values_) {
    values.push_back(value.null ? nullptr : value.text.c_str());
    lengths.push_back(static_cast<int>(value.text.size()));
    formats.push_back(value.binary ? kBinary : 0);
  }
  Rows rows(PQexecPrepared(connection_.get(), prepared_.find(std::string_view(statement))->second.c_str(),
                           static_cast<int>(values.size()), values.data(), lengths.data(), formats.data(), kBinary));
  pg_result* result = rows.result_.get();
  const ExecStatusType status = PQresultStatus(result);
  if (status == PGRES_TUPLES_OK || status == PGRES_COMMAND_OK) return rows;
  return fault(result == nullptr ? PQerrorMessage(connection_.get()) : PQresultErrorMessage(result));
}

std::optional<Fault> Connection::copy(const char* statement, const CopiedRows& rows) {
  constexpr std::size_t kAtOnce = 1U << 20U;
  pg_conn* const connection = connection_.get();
  {
    const Rows begun(PQexec(connection, statement));
    if (PQresultStatus(begun.result_.get()) != PGRES_COPY_IN) return fault(PQerrorMessage(connection));
  }
  std::string last;
  add_word(last, 0xFFFF, 2);
  bool sent = true;
  for (std::size_t at = 0; sent && at < rows.bytes_.size(); at += kAtOnce) {
    const std::size_t some = std::min(kAtOnce, rows.bytes_.size() - at);
    sent = PQputCopyData(connection, rows.bytes_.data() + at, static_cast<int>(some)) == 1;
  }
  sent = sent && PQputCopyData(connection, last.data(), static_cast<int>(last.size())) == 1 &&
         PQputCopyEnd(connection, nullptr) == 1;
  std::optional<Fault> out;
  if (!sent) out = fault(PQerrorMessage(connection));
  while (pg_result* const result = PQgetResult(connection)) {
    const Rows ended(result);
    const ExecStatusType status = PQresultStatus(result);
    if (status == PGRES_COMMAND_OK) continue;
    if (!out) out = fault(PQresultErrorMessage(result));
    if (status == PGRES_COPY_IN) break;  // the connection is lost: nothing ends it any more
  }
  return out;
}

std::optional<Fault> Connection::run(const char* statements) {
  const Rows rows(PQexec(connection_.get(), statements));
  const ExecStatusType status = PQresultStatus(rows.result_.get());
  if (status == PGRES_COMMAND_OK || status == PGRES_TUPLES_OK) return {};
  return fault(PQerrorMessage(connection_.get()));
}

// Its first line says what, later ones where in the data.
Fault Connection::fault(const std::string& words) const {
  return {FaultCode::kCannotWrite, {name_, 0, 0, {}}, one_line(words), "a database that answers", {}};
}

Transaction::~Transaction() {
  if (open_) static_cast<void>(connection_.run("ROLLBACK"));
}

std::optional<Fault> Transaction::begin() {
  auto fault = connection_.run("BEGIN");
  open_ = !fault;
  return fault;
}

std::optional<Fault> Transaction::commit() {
  open_ = false;  // after a failed one there is nothing left to roll back
  return connection_.run("COMMIT");
}

}  // namespace lanework::store::postgres
