#include "app/serve/http/listener.h"

#include <sys/stat.h>

#include <algorithm>
#include <array>
#include <boost/asio.hpp>
#include <boost/asio/ssl.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>
#include <boost/beast/ssl.hpp>
#include <list>
#include <utility>

namespace lanework::serve {
namespace {

namespace asio = boost::asio;
namespace beast = boost::beast;
namespace http = beast::http;
using tcp = asio::ip::tcp;
using beast::error_code;

Fault cannot_listen(const std::string& what, const std::string& found, const std::string& expected) {
  return {FaultCode::kCannotWrite, {what, 0, 0, {}}, found, expected, {}};
}

constexpr int kGone = -1;  // nobody is there any more who would hear a refusal

class BeastListener;

// What a connection does on its way; told to stop by the listener.
struct Connection {
  bool idle = true;
  std::function<void()> close;
};

class BeastListener final : public Listener {
 public:
  BeastListener(Where where, const Limits& limits, Handler handler, Refusal refusal, EdgeCounts& counts)
      : where_(std::move(where)),
        limits_(limits),
        handler_(std::move(handler)),
        refusal_(std::move(refusal)),
        counts_(counts),
        acceptor_(edge_),
        signals_(edge_),
        end_(edge_),
        workers_(static_cast<std::size_t>(std::max(1, where_.threads))) {}

  std::optional<Fault> open() {
    if (where_.tls) {
      if (auto fault = open_tls(*where_.tls)) return fault;
    }
    error_code error;
    const auto address = asio::ip::make_address(where_.address, error);
    if (error) return cannot_listen("--address", quote(where_.address), "an address such as 127.0.0.1 or ::1");
    const tcp::endpoint endpoint(address, where_.port);
    acceptor_.open(endpoint.protocol(), error);
    if (!error) acceptor_.set_option(asio::socket_base::reuse_address(true), error);
    if (!error) acceptor_.bind(endpoint, error);
    if (!error) acceptor_.listen(asio::socket_base::max_listen_connections, error);
    if (error) {
      return cannot_listen(where_.address + ":" + std::to_string(where_.port), error.message(),
                           "an address of this machine and a port that nobody else listens on");
    }
    return {};
  }

  [[nodiscard]] std::uint16_t port() const override { return acceptor_.local_endpoint().port(); }

  void run() override {
    asio::co_spawn(edge_, accept(), asio::detached);
    edge_.run();
    workers_.join();
  }

  void stop() override {
    asio::post(edge_, [this] { begin_end(); });
  }

  void stop_on_signals() override {
    signals_.add(SIGINT);
    signals_.add(SIGTERM);
    signals_.async_wait([this](const error_code& error, int) {
      if (!error) begin_end();
    });
  }

 private:
  Where where_;
  Limits limits_;
  Handler handler_;
  Refusal refusal_;
  EdgeCounts& counts_;
  asio::io_context edge_{1};
  tcp::acceptor acceptor_;
  asio::signal_set signals_;
  asio::steady_timer end_;
  asio::thread_pool workers_;
  std::optional<asio::ssl::context> tls_;
  std::list<Connection> connections_;  // touched on the edge's one thread only
  bool ending_ = false;

  std::optional<Fault> open_tls(const Tls& tls) {
    struct stat about {};
    if (::stat(tls.key_file.c_str(), &about) != 0)
      return cannot_listen(tls.key_file, "nothing", "the key of the certificate");
    if ((about.st_mode & (S_IRWXG | S_IRWXO)) != 0) {
      return cannot_listen(tls.key_file, "a key that others may read",
                           "a key that only its owner may read (chmod 400)");
    }
    error_code error;
    tls_.emplace(asio::ssl::context::tls_server);
    SSL_CTX_set_min_proto_version(tls_->native_handle(), TLS1_2_VERSION);
    SSL_CTX_set_cipher_list(tls_->native_handle(), "ECDHE+AESGCM:ECDHE+CHACHA20");
    tls_->set_options(
        asio::ssl::context::default_workarounds | asio::ssl::context::single_dh_use |
        static_cast<asio::ssl::context::options>(SSL_OP_NO_RENEGOTIATION | SSL_OP_CIPHER_SERVER_PREFERENCE));
    tls_->use_certificate_chain_file(tls.certificate_file, error);
    if (error) return cannot_listen(tls.certificate_file, error.message(), "a certificate chain in PEM");
    tls_->use_private_key_file(tls.key_file, asio::ssl::context::pem, error);
    if (error) return cannot_listen(tls.key_file, error.message(), "the certificate's key in PEM");
    return {};
  }

  void begin_end() {
    if (ending_) return;
    ending_ = true;
    error_code ignored;
    acceptor_.close(ignored);
    signals_.cancel(ignored);
    for (Connection& connection : connections_) {
      if (connection.idle) connection.close();
    }
    if (connections_.empty()) return;
    end_.expires_after(limits_.last_words);
    end_.async_wait([this](const error_code& error) {
      if (error) return;
      for (Connection& connection : connections_) connection.close();
    });
  }

  asio::awaitable<void> accept() {
    while (acceptor_.is_open()) {
      error_code error;
      tcp::socket socket = co_await acceptor_.async_accept(asio::redirect_error(asio::use_awaitable, error));
      if (error == asio::error::operation_aborted || error == asio::error::bad_descriptor) break;
      if (error) {
        // Out of descriptors: those who are here must leave first.
        asio::steady_timer pause(edge_, std::chrono::milliseconds(50));
        co_await pause.async_wait(asio::redirect_error(asio::use_awaitable, error));
        continue;
      }
      ++counts_.connections_taken;
      if (connections_.size() >= limits_.connections) {
        ++counts_.connections_turned_away;
        continue;  // closed as it goes out of scope
      }
      asio::co_spawn(edge_, serve_one(std::move(socket)), asio::detached);
    }
  }

  asio::awaitable<void> serve_one(tcp::socket socket) {
    error_code error;
    socket.set_option(tcp::no_delay(true), error);
    const auto peer = socket.remote_endpoint(error);
    if (error) co_return;
    const auto place = connections_.insert(connections_.end(), Connection{});
    ++counts_.connections_now;
    try {
      if (tls_) {
        beast::ssl_stream<beast::tcp_stream> stream(std::move(socket), *tls_);
        place->close = [&stream] { beast::get_lowest_layer(stream).close(); };
        beast::get_lowest_layer(stream).expires_after(limits_.header);
        co_await stream.async_handshake(asio::ssl::stream_base::server,
                                        asio::redirect_error(asio::use_awaitable, error));
        if (!error) co_await converse(stream, *place, peer.address());
        beast::get_lowest_layer(stream).expires_after(std::chrono::seconds(1));
        if (!error) co_await stream.async_shutdown(asio::redirect_error(asio::use_awaitable, error));
      } else {
        beast::tcp_stream stream(std::move(socket));
        place->close = [&stream] { stream.close(); };
        co_await converse(stream, *place, peer.address());
        stream.socket().shutdown(tcp::socket::shutdown_send, error);
      }
    } catch (const std::exception&) {
      ++counts_.requests_refused;  // nothing of a request's own may end the server
    }
    connections_.erase(place);
    --counts_.connections_now;
    if (ending_ && connections_.empty()) end_.cancel();
  }

  // One connection's requests, one after another.
  template <class Stream>
  asio::awaitable<void> converse(Stream& stream, Connection& self, const asio::ip::address& peer) {
    RequestReader reader(limits_.sizes);
    while (!ending_) {
      const int refused = co_await read(stream, self, reader);
      if (refused == kGone) co_return;
      if (refused != 0) {
        ++counts_.requests_refused;
        co_await write(stream, refusal_(refused), 11, false, false);
        co_await hear_out(stream);
        co_return;
      }
      const unsigned version = reader.version();
      const bool asked_to_keep = reader.keeps_alive();
      Request request = reader.take();
      name_caller(request, peer);
      const bool head = request.method == "HEAD";
      Response response = co_await answer(request);
      if (!co_await write(stream, std::move(response), version, asked_to_keep && !ending_, head)) co_return;
    }
  }

  // Until a request is whole: 0; else what it is refused as, or kGone.
  template <class Stream>
  asio::awaitable<int> read(Stream& stream, Connection& self, RequestReader& reader) {
    auto& line = beast::get_lowest_layer(stream);
    error_code error;
    self.idle = reader.is_idle();
    line.expires_after(self.idle ? limits_.idle : limits_.header);
    bool of_body = false;
    while (true) {
      const auto step = reader.step();
      if (step == RequestReader::Step::kWhole) co_return 0;
      if (step == RequestReader::Step::kRefused) co_return reader.refusal();
      if (step == RequestReader::Step::kEnd) co_return kGone;
      if (!of_body && reader.in_body()) {
        of_body = true;
        line.expires_after(limits_.body);
      }
      if (step == RequestReader::Step::kGoOn) {
        http::response<http::empty_body> go_on(http::status::continue_, reader.version());
        co_await http::async_write(stream, go_on, asio::redirect_error(asio::use_awaitable, error));
        if (error) co_return kGone;
        continue;
      }
      const std::span<char> room = reader.room();
      const std::size_t got = co_await stream.async_read_some(asio::buffer(room.data(), room.size()),
                                                              asio::redirect_error(asio::use_awaitable, error));
      if (error == asio::error::eof && !self.idle) {
        reader.ended();
      } else if (error) {
        // Too slow: the stream has closed the connection, so there is nobody to answer.
        if (error == beast::error::timeout && !self.idle) ++counts_.requests_refused;
        co_return kGone;
      }
      if (self.idle) {
        self.idle = false;
        line.expires_after(limits_.header);
      }
      reader.came(got);
    }
  }

  // Whoever is still sending would lose the answer: closing with bytes unread resets the connection (RFC 9112, 9.6).
  template <class Stream>
  asio::awaitable<void> hear_out(Stream& stream) {
    constexpr std::size_t kMost = 8 * 1024 * 1024;
    auto& line = beast::get_lowest_layer(stream);
    error_code error;
    line.socket().shutdown(tcp::socket::shutdown_send, error);
    line.expires_after(limits_.hear_out);
    std::array<char, 16 * 1024> passed_over{};
    for (std::size_t heard = 0; !error && heard < kMost;) {
      heard +=
          co_await line.async_read_some(asio::buffer(passed_over), asio::redirect_error(asio::use_awaitable, error));
    }
  }

  asio::awaitable<Response> answer(const Request& request) {
    if (counts_.requests_waiting >= static_cast<std::int64_t>(limits_.waiting)) {
      ++counts_.requests_refused;
      Response busy = refusal_(503);
      co_return busy.with("Retry-After", "5");
    }
    ++counts_.requests_waiting;
    const auto work = [this, &request]() -> asio::awaitable<Response> {
      try {
        co_return handler_(request);
      } catch (const std::exception&) {
        co_return refusal_(500);  // the impossible; told apart by the handler's own log
      }
    };
    Response out = co_await asio::co_spawn(workers_, work(), asio::use_awaitable);
    --counts_.requests_waiting;
    co_return out;
  }

  void name_caller(Request& out, const asio::ip::address& peer) const {
    out.address = peer.to_string();
    out.secure = tls_.has_value();
    out.on_this_machine = peer.is_loopback();
    if (where_.behind_proxy && peer.is_loopback()) {
      // The last address is the one that the proxy itself saw; what stands before it is the caller's own word.
      const std::string_view chain = out.header("x-forwarded-for");
      const std::size_t comma = chain.rfind(',');
      std::string_view last = comma == std::string_view::npos ? chain : chain.substr(comma + 1);
      while (!last.empty() && last.front() == ' ') last.remove_prefix(1);
      out.on_this_machine = chain.empty();
      if (!last.empty()) out.address = std::string(last);
      out.secure = out.header("x-forwarded-proto") == "https";
    }
  }

  template <class Stream>
  asio::awaitable<bool> write(Stream& stream, Response response, unsigned version, bool keep, bool head) {
    http::response<http::string_body> message(static_cast<http::status>(response.status), version);
    for (const auto& [name, value] : response.headers) message.insert(name, value);
    const std::size_t size = response.file ? response.file->size() : response.body.size();
    if (!head && response.file) message.body() = *response.file;
    if (!head && !response.file) message.body() = std::move(response.body);
    const bool bodiless = response.status == 204 || response.status == 304;
    if (!bodiless) message.content_length(size);
    message.keep_alive(keep);
    beast::get_lowest_layer(stream).expires_after(limits_.answer);
    error_code error;
    if (head) {
      http::response_serializer<http::string_body> serializer(message);
      serializer.split(true);
      co_await http::async_write_header(stream, serializer, asio::redirect_error(asio::use_awaitable, error));
    } else {
      co_await http::async_write(stream, message, asio::redirect_error(asio::use_awaitable, error));
    }
    co_return !error && keep;
  }
};

}  // namespace

Result<std::unique_ptr<Listener>> Listener::open(const Where& where, const Limits& limits, Handler handler,
                                                 Refusal refusal, EdgeCounts& counts) {
  auto out = std::make_unique<BeastListener>(where, limits, std::move(handler), std::move(refusal), counts);
  if (auto fault = out->open()) return *fault;
  return std::unique_ptr<Listener>(std::move(out));
}

}  // namespace lanework::serve
