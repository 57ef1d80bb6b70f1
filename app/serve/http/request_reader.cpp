#include "app/serve/http/request_reader.h"

#include <algorithm>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>
#include <iterator>
#include <optional>
#include <utility>

namespace lanework::serve {
namespace {

namespace beast = boost::beast;
namespace http = beast::http;
using beast::error_code;
using Parser = http::request_parser<http::string_body>;

constexpr std::size_t kFirstBytes = 1024;  // what an idle connection holds
constexpr std::size_t kBodyBytes = 16 * 1024;
constexpr std::size_t kLeastBytes = 512;
// "0\r\n\r\n": so many are always to come. Beast 1.81 ends the process where it is given four of them after three.
constexpr std::size_t kLastChunkBytes = 5;

std::string lower(beast::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return out;
}

int status_of(const error_code& error) {
  if (error == http::error::header_limit) return 431;
  if (error == http::error::body_limit) return 413;
  return 400;
}

// Beast reads a body of another coding as none at all, and what follows as the next request; a proxy may not.
bool is_plain_framing(const Parser::value_type& message) {
  const auto codings = message.equal_range(http::field::transfer_encoding);
  const auto count = std::distance(codings.first, codings.second);
  if (count == 0) return true;
  return count == 1 && message.version() == 11 && beast::iequals(codings.first->value(), "chunked");
}

// RFC 9112, 3.2.1: where a path is empty, '/' is to be sent.
bool has_path(const Parser::value_type& message) {
  const beast::string_view target = message.target();
  return !target.empty() && target.front() != '?';
}

}  // namespace

struct RequestReader::State {
  explicit State(const SizeLimits& size_limits) : limits(size_limits), buffer(size_limits.header_bytes + kFirstBytes) {}

  SizeLimits limits;
  beast::flat_buffer buffer;
  std::optional<Parser> parser;  // of the request that is being read
  bool headers_seen = false;
  bool at_end = false;
  int refused = 0;

  Step refuse(int status) {
    refused = status;
    return Step::kRefused;
  }

  // Empty: as far as it should go.
  std::optional<Step> go(bool to_the_end) {
    parser->eager(to_the_end);
    const std::size_t least = to_the_end && parser->chunked() ? kLastChunkBytes : 1;
    while (!(to_the_end ? parser->is_done() : parser->is_header_done())) {
      if (buffer.size() < least) return more();
      error_code error;
      buffer.consume(parser->put(buffer.data(), error));
      if (error == http::error::need_more) return more();
      if (error) return refuse(status_of(error));
    }
    return {};
  }

  // A line of chunks that never ends fills the buffer, and is none.
  Step more() { return at_end || buffer.size() >= buffer.max_size() ? refuse(400) : Step::kMore; }

  Step step() {
    if (refused != 0) return Step::kRefused;
    if (!parser) {
      if (buffer.size() == 0) return at_end ? Step::kEnd : Step::kMore;
      parser.emplace();
      parser->header_limit(static_cast<std::uint32_t>(limits.header_bytes));
      parser->body_limit(limits.body_bytes);
      headers_seen = false;
    }
    if (!headers_seen) {
      if (const auto stopped = go(false)) return *stopped;
      headers_seen = true;
      if (!is_plain_framing(parser->get()) || !has_path(parser->get())) return refuse(400);
      if (beast::iequals(parser->get()[http::field::expect], "100-continue")) return Step::kGoOn;
    }
    return go(true).value_or(Step::kWhole);
  }
};

RequestReader::RequestReader(const SizeLimits& limits) : state_(std::make_unique<State>(limits)) {}
RequestReader::~RequestReader() = default;

RequestReader::Step RequestReader::step() { return state_->step(); }

std::span<char> RequestReader::room() {
  beast::flat_buffer& buffer = state_->buffer;
  const std::size_t wanted = is_idle()   ? kFirstBytes
                             : in_body() ? kBodyBytes
                                         : std::max(kLeastBytes, buffer.capacity() - buffer.size());
  const auto space = buffer.prepare(std::min(wanted, buffer.max_size() - buffer.size()));
  return {static_cast<char*>(space.data()), space.size()};
}

void RequestReader::came(std::size_t bytes) { state_->buffer.commit(bytes); }
void RequestReader::ended() { state_->at_end = true; }

bool RequestReader::is_idle() const { return !state_->parser && state_->buffer.size() == 0; }
bool RequestReader::in_body() const { return state_->parser && state_->headers_seen; }
int RequestReader::refusal() const { return state_->refused; }
unsigned RequestReader::version() const { return state_->parser->get().version(); }
bool RequestReader::keeps_alive() const { return state_->parser->get().keep_alive(); }

Request RequestReader::take() {
  Parser::value_type message = state_->parser->release();
  state_->parser.reset();
  Request out;
  out.method = std::string(message.method_string());
  const beast::string_view target = message.target();
  const std::size_t mark = std::min(target.find('?'), target.size());
  out.path = std::string(target.substr(0, mark));
  if (mark < target.size()) out.query = std::string(target.substr(mark + 1));
  for (const auto& field : message) out.headers.emplace_back(lower(field.name_string()), std::string(field.value()));
  out.body = std::move(message.body());
  return out;
}

}  // namespace lanework::serve
