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

// 'main-3f9a2c1d.js': what esbuild and its like write.
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

bool takes_gzip(std::string_view accepted) {
  const std::size_t at = accepted.find("gzip");
  if (at == std::string_view::npos) return false;
  const std::string_view rest = accepted.substr(at + 4, accepted.find(',', at) - at - 4);
  return rest.find("q=0") == std::string_view::npos || rest.find("q=0.") != std::string_view::npos;
}

}  // namespace

Result<StaticFiles> StaticFiles::read(const std::string& folder) {
  StaticFiles out;
  Faults faults;
  std::error_code error;
  for (auto entry = fs::recursive_directory_iterator(folder, error);
       !error && entry != fs::recursive_directory_iterator(); entry.increment(error)) {
    if (!entry->is_regular_file()) continue;
    const fs::path& path = entry->path();
    const std::string_view type = type_of(path);
    if (type.empty()) {
      faults.push_back({FaultCode::kUnknownName,
                        {path.string(), 0, 0, {}},
                        quote(path.extension().string()),
                        "an ending that is served: html, css, js, json, webmanifest, svg, png, woff2, txt, wasm",
                        {}});
      continue;
    }
    std::ifstream in(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    if (!in) {
      faults.push_back(
          {FaultCode::kFileUnreadable, {path.string(), 0, 0, {}}, "a file that cannot be read", "a file", {}});
      continue;
    }
    File file{std::string(type), tag_of(bytes.str()), has_hash(path.stem().string()),
              std::make_shared<const std::string>(bytes.str()), nullptr};
    const bool packed_already = type == "image/png" || type == "font/woff2";
    if (!packed_already) {
      auto small = std::make_shared<const std::string>(gzipped(*file.plain));
      if (small->size() < file.plain->size()) file.compressed = std::move(small);
    }
    out.files_.emplace("/" + fs::relative(path, folder).generic_string(), std::move(file));
  }
  if (error) {
    faults.push_back(
        {FaultCode::kFileUnreadable, {folder, 0, 0, {}}, error.message(), "a folder of files to serve", {}});
  }
  if (!faults.empty()) return faults;
  return out;
}

std::optional<Response> StaticFiles::answer(const Request& request) const {
  const auto found =
      files_.find(request.path == "/" ? std::string_view("/index.html") : std::string_view(request.path));
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
  if (file.compressed && takes_gzip(request.header("accept-encoding"))) {
    out.with("Content-Encoding", "gzip");
    out.file = file.compressed;
  }
  return out;
}

}  // namespace lanework::serve
