#include "app/store/archive/sealed_stream.h"

#include <sodium.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <utility>

#include "app/store/archive/records.h"

namespace lanework::store::archive {
namespace {

constexpr std::string_view kMagic = "lanework-backup1";
constexpr std::size_t kPieceBytes = 65536;
constexpr std::size_t kSealedKeyBytes = kKeyBytes + crypto_box_SEALBYTES;
constexpr std::size_t kHeadBytes = 16 + 32 + kSealedKeyBytes + crypto_secretstream_xchacha20poly1305_HEADERBYTES;
static_assert(kMagic.size() == 16);
static_assert(crypto_box_PUBLICKEYBYTES == 32);
static_assert(crypto_box_SECRETKEYBYTES == kKeyBytes);
static_assert(crypto_secretstream_xchacha20poly1305_KEYBYTES == kKeyBytes);

unsigned char* raw(std::string& bytes) { return reinterpret_cast<unsigned char*>(bytes.data()); }
const unsigned char* raw(std::string_view bytes) { return reinterpret_cast<const unsigned char*>(bytes.data()); }

Fault not_sound(const std::string& file, std::string found, std::string hint = {}) {
  return {FaultCode::kFileUnreadable,
          {file, 0, 0, {}},
          std::move(found),
          "a backup as 'lanework backup' wrote it, every byte of it",
          std::move(hint)};
}

struct CloseFile {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

}  // namespace

struct SealingWriter::State {
  NewFile* file = nullptr;
  Key key = Key::made();
  crypto_secretstream_xchacha20poly1305_state stream{};
  std::string head;
  std::string piece;  // not sealed yet
  bool first = true;

  ~State() { sodium_memzero(&stream, sizeof stream); }
};

SealingWriter::SealingWriter(std::unique_ptr<State> state) : state_(std::move(state)) {}
SealingWriter::SealingWriter(SealingWriter&&) noexcept = default;
SealingWriter& SealingWriter::operator=(SealingWriter&&) noexcept = default;
SealingWriter::~SealingWriter() = default;

const Key& SealingWriter::key() const { return state_->key; }

Result<SealingWriter> SealingWriter::start(NewFile& file, const PublicKey& to) {
  auto state = std::make_unique<State>();
  state->file = &file;
  std::string sealed_key(kSealedKeyBytes, '\0');
  if (crypto_box_seal(raw(sealed_key), state->key.bytes().data(), kKeyBytes, to.data()) != 0) {
    return Fault{FaultCode::kContradiction, {"", 0, 0, {}}, "a public key that is none", "the key of backups", {}};
  }
  std::string stream_head(crypto_secretstream_xchacha20poly1305_HEADERBYTES, '\0');
  crypto_secretstream_xchacha20poly1305_init_push(&state->stream, raw(stream_head), state->key.bytes().data());
  state->head = std::string(kMagic) + std::string(to.begin(), to.end()) + sealed_key + stream_head;
  if (auto fault = file.write(state->head)) return *fault;
  return SealingWriter(std::move(state));
}

std::optional<Fault> SealingWriter::write(std::string_view bytes) {
  while (!bytes.empty()) {
    const std::size_t some = std::min(bytes.size(), kPieceBytes - state_->piece.size());
    state_->piece += bytes.substr(0, some);
    bytes.remove_prefix(some);
    if (state_->piece.size() == kPieceBytes && !bytes.empty()) {
      if (auto fault = seal_piece(false)) return fault;
    }
  }
  return {};
}

// The head is bound to the first piece, and by it to all.
std::optional<Fault> SealingWriter::seal_piece(bool last) {
  std::string out(state_->piece.size() + crypto_secretstream_xchacha20poly1305_ABYTES, '\0');
  const std::string_view bound = state_->first ? std::string_view(state_->head) : std::string_view();
  crypto_secretstream_xchacha20poly1305_push(
      &state_->stream, raw(out), nullptr, raw(std::string_view(state_->piece)), state_->piece.size(), raw(bound),
      bound.size(),
      last ? crypto_secretstream_xchacha20poly1305_TAG_FINAL : crypto_secretstream_xchacha20poly1305_TAG_MESSAGE);
  state_->first = false;
  state_->piece.clear();
  return state_->file->write(out);
}

std::optional<Fault> SealingWriter::finish() {
  if (auto fault = seal_piece(true)) return fault;
  return state_->file->flush();
}

struct OpeningReader::State {
  std::string name;
  std::unique_ptr<std::FILE, CloseFile> file;
  crypto_secretstream_xchacha20poly1305_state stream{};
  std::string head;
  bool first = true;
  bool ended = false;

  ~State() { sodium_memzero(&stream, sizeof stream); }

  static Result<std::unique_ptr<State>> with_head(const std::string& name) {
    auto out = std::make_unique<State>();
    out->name = name;
    out->file.reset(std::fopen(name.c_str(), "rbe"));
    if (!out->file) {
      return Fault{FaultCode::kFileUnreadable, {name, 0, 0, {}}, std::strerror(errno), "a file that can be read", {}};
    }
    out->head.resize(kHeadBytes);
    const std::size_t length = std::fread(out->head.data(), 1, kHeadBytes, out->file.get());
    if (length < kHeadBytes || out->head.compare(0, kMagic.size(), kMagic) != 0) {
      return not_sound(name, length < kHeadBytes ? "a file that is too short for one" : "a file that is none");
    }
    return out;
  }
};

OpeningReader::OpeningReader(std::unique_ptr<State> state) : state_(std::move(state)) {}
OpeningReader::OpeningReader(OpeningReader&&) noexcept = default;
OpeningReader& OpeningReader::operator=(OpeningReader&&) noexcept = default;
OpeningReader::~OpeningReader() = default;

const std::string& OpeningReader::file() const { return state_->name; }

Result<OpeningReader> OpeningReader::open(const std::string& file, const Key& private_key) {
  auto state = State::with_head(file);
  if (!state) return state.faults();
  const std::string& head = state.value()->head;
  const PublicKey ours = public_of(private_key);
  if (!std::equal(ours.begin(), ours.end(), raw(std::string_view(head)) + kMagic.size())) {
    return not_sound(file, "one that was made for another key, or a byte of it is another",
                     "the private key must be the other half of the public one that 'lanework backup' was given");
  }
  std::string bytes(kKeyBytes, '\0');
  const bool opened = crypto_box_seal_open(raw(bytes), raw(std::string_view(head)) + kMagic.size() + 32,
                                           kSealedKeyBytes, ours.data(), private_key.bytes().data()) == 0;
  const auto key = Key::of(bytes);
  sodium_memzero(bytes.data(), bytes.size());
  if (!opened) return not_sound(file, "a head that the private key does not open");
  return started(std::move(state).value(), *key);
}

Result<OpeningReader> OpeningReader::open_by_own_key(const std::string& file, const Key& key) {
  auto state = State::with_head(file);
  if (!state) return state.faults();
  return started(std::move(state).value(), key);
}

Result<OpeningReader> OpeningReader::started(std::unique_ptr<State> state, const Key& key) {
  const unsigned char* stream_head =
      raw(std::string_view(state->head)) + kHeadBytes - crypto_secretstream_xchacha20poly1305_HEADERBYTES;
  if (crypto_secretstream_xchacha20poly1305_init_pull(&state->stream, stream_head, key.bytes().data()) != 0) {
    return not_sound(state->name, "a head that opens nothing");
  }
  return OpeningReader(std::move(state));
}

Result<std::string> OpeningReader::next() {
  State& state = *state_;
  if (state.ended) return std::string();
  std::string piece(kPieceBytes + crypto_secretstream_xchacha20poly1305_ABYTES, '\0');
  const std::size_t length = std::fread(piece.data(), 1, piece.size(), state.file.get());
  if (std::ferror(state.file.get()) != 0) return not_sound(state.name, std::strerror(errno));
  if (length < crypto_secretstream_xchacha20poly1305_ABYTES) return not_sound(state.name, "one that was cut off");
  std::string out(length - crypto_secretstream_xchacha20poly1305_ABYTES, '\0');
  unsigned char tag = 0;
  const std::string_view bound = state.first ? std::string_view(state.head) : std::string_view();
  const int failed = crypto_secretstream_xchacha20poly1305_pull(
      &state.stream, raw(out), nullptr, &tag, raw(std::string_view(piece)), length, raw(bound), bound.size());
  if (failed != 0) return not_sound(state.name, "one of which a byte is another, or that was cut off");
  state.first = false;
  state.ended = tag == crypto_secretstream_xchacha20poly1305_TAG_FINAL;
  if (state.ended && std::fgetc(state.file.get()) != EOF) return not_sound(state.name, "bytes after its end");
  if (!state.ended && out.size() < kPieceBytes) return not_sound(state.name, "one that was cut off");
  if (out.empty() && !state.ended) return not_sound(state.name, "an empty piece");
  return out;
}

}  // namespace lanework::store::archive
