#include "app/serve/static_files.h"

#include <sodium.h>
#include <zlib.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace lanework::serve {
namespace {

namespace fs = std::filesystem;

struct TypeOf {
  std::string_view ending;
  std::string_view type;
};
constexpr std::array<TypeOf, 10> kTypes = {{{".html", "text/html; charset=utf-8"},
                                            {".css", "text/css; charset=utf-8"},
                                            {".js", "text/javascript; charset=utf-8"},
                                            {".json", "application/json; charset=utf-8"},
                                            {".webmanifest", "application/manifest+json; charset=utf-8"},
                                            {".svg", "image/svg+xml; charset=utf-8"},
                                            {".png", "image/png"},
                                            {".woff2", "font/woff2"},
                                            {".txt", "text/plain; charset=utf-8"},
                                            {".wasm", "application/wasm"}}};

constexpr const char* kBrotliEnding = ".br";

std::string_view type_of(const fs::path& file) {
  const std::string ending = file.extension().string();
  const auto found =
      std::find_if(kTypes.begin(), kTypes.end(), [&](const TypeOf& one) { return one.ending == ending; });
  return found == kTypes.end() ? std::string_view() : found->type;
}

std::string tag_of(const std::string& bytes) {
  std::array<unsigned char, 16> digest{};
  crypto_generichash(digest.data(), digest.size(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size(),
                     nullptr, 0);
  std::array<char, 2 * 16 + 1> text{};
  sodium_bin2hex(text.data(), text.size(), digest.data(), digest.size());
  return std::string("\"") + text.data() + "\"";
}

// 'main-3f9a2c1d.js' by hex digits, or 'main-5KQ7ZP2M.js' by esbuild's own.
bool has_hash(const std::string& stem) {
  const std::size_t dash = stem.rfind('-');
  return dash != std::string::npos && stem.size() - dash - 1 >= 8 &&
         std::all_of(stem.begin() + static_cast<std::ptrdiff_t>(dash) + 1, stem.end(),
                     [](char c) { return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'f'); });
}

// RFC 1952; the same bytes for the same file.
std::string gzipped(const std::string& bytes) {
  constexpr int kGzip = 15 + 16;
  z_stream stream{};
  if (deflateInit2(&stream, Z_BEST_COMPRESSION, Z_DEFLATED, kGzip, 9, Z_DEFAULT_STRATEGY) != Z_OK) return bytes;
  std::string out(deflateBound(&stream, static_cast<uLong>(bytes.size())), '\0');
  stream.next_in = reinterpret_cast<Bytef*>(
      const_cast<char*>(bytes.data()));  // NOLINT(cppcoreguidelines-pro-type-const-cast): only read
  stream.avail_in = static_cast<uInt>(bytes.size());
  stream.next_out = reinterpret_cast<Bytef*>(out.data());
  stream.avail_out = static_cast<uInt>(out.size());
  const bool whole = deflate(&stream, Z_FINISH) == Z_STREAM_END;
  out.resize(stream.total_out);
  deflateEnd(&stream);
  return whole ? out : bytes;
}

// Whether an Accept-Encoding names this coding, and not with a weight of nought (RFC 9110, 12.5.3).
bool takes(std::string_view accepted, std::string_view coding) {
  while (!accepted.empty()) {
    std::string_view one = accepted.substr(0, accepted.find(','));
    accepted.remove_prefix(std::min(accepted.size(), one.size() + 1));
    one.remove_prefix(std::min(one.size(), one.find_first_not_of(' ')));
    if (one.substr(0, one.find_first_of(" ;")) != coding) continue;
    return one.find("q=0") == std::string_view::npos ||
           one.find_first_of("123456789", one.find("q=0") + 3) < one.size();
  }
  return false;
}

struct ReadFolder {
  std::map<std::string, std::string> bytes;  // by path below the folder
  Faults faults;
};

ReadFolder read_folder(const std::string& folder) {
  ReadFolder out;
  std::error_code error;
  for (auto entry = fs::recursive_directory_iterator(folder, error);
       !error && entry != fs::recursive_directory_iterator(); entry.increment(error)) {
    if (!entry->is_regular_file()) continue;
    std::ifstream in(entry->path(), std::ios::binary);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    if (!in) {
      out.faults.push_back(
          {FaultCode::kFileUnreadable, {entry->path().string(), 0, 0, {}}, "a file that cannot be read", "a file", {}});
    }
    out.bytes.emplace(fs::relative(entry->path(), folder).generic_string(), bytes.str());
  }
  if (error) {
    out.faults.push_back(
        {FaultCode::kFileUnreadable, {folder, 0, 0, {}}, error.message(), "a folder of files to serve", {}});
  }
  return out;
}

}  // namespace

Result<StaticFiles> StaticFiles::read(const std::string& folder) {
  auto [all, faults] = read_folder(folder);
  StaticFiles out;
  for (const auto& [name, bytes] : all) {
    const fs::path path(name);
    const bool beside = path.extension() == kBrotliEnding && all.count((path.parent_path() / path.stem()).string()) > 0;
    if (beside) continue;
    const std::string_view type = type_of(path);
    if (type.empty()) {
      faults.push_back({FaultCode::kUnknownName,
                        {(folder / path).string(), 0, 0, {}},
                        quote(path.extension().string()),
                        "an ending that is served: html, css, js, json, webmanifest, svg, png, woff2, txt, wasm, or br "
                        "beside one of them",
                        {}});
      continue;
    }
    File file{
        std::string(type), tag_of(bytes), has_hash(path.stem().string()), std::make_shared<const std::string>(bytes),
        nullptr,           nullptr};
    const auto smaller = [plain = bytes.size()](std::string packed) {
      return packed.size() < plain ? std::make_shared<const std::string>(std::move(packed)) : nullptr;
    };
    const bool packed_already = type == "image/png" || type == "font/woff2";
    if (!packed_already) file.by_gzip = smaller(gzipped(bytes));
    const auto brotli = all.find(name + kBrotliEnding);
    if (brotli != all.end()) file.by_brotli = smaller(brotli->second);
    out.files_.emplace("/" + name, std::move(file));
  }
  if (!faults.empty()) return faults;
  return out;
}

std::optional<Response> StaticFiles::answer(const Request& request) const {
  // A folder is its page, named with the stroke at its end or without: a page's own files are named from the root.
  std::string path(request.path);
  if (path.ends_with('/')) path += "index.html";
  auto found = files_.find(path);
  if (found == files_.end()) found = files_.find(path + "/index.html");
  if (found == files_.end()) return {};
  const File& file = found->second;
  Response out;
  out.with("ETag", file.tag).with("Vary", "Accept-Encoding");
  out.with("Cache-Control", file.hashed ? "public, max-age=31536000, immutable" : "no-cache");
  if (request.header("if-none-match").find(file.tag) != std::string_view::npos) {
    out.status = 304;
    return out;
  }
  out.with("Content-Type", file.type);
  out.file = file.plain;
  const std::string_view accepted = request.header("accept-encoding");
  if (file.by_brotli && takes(accepted, "br")) {
    out.with("Content-Encoding", "br");
    out.file = file.by_brotli;
  } else if (file.by_gzip && takes(accepted, "gzip")) {
    out.with("Content-Encoding", "gzip");
    out.file = file.by_gzip;
  }
  return out;
}

}  // namespace lanework::serve
