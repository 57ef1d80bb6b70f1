// The web app's files, read once when the server starts and compressed once by gzip: no path of a request ever reaches
// the file system. What lies beside a file with '.br' after its name is the same by brotli, made by whoever made the
// folder. A file whose name holds a hash of its content ('main-3f9a2c1d.js') is kept by browsers for a year.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>

#include "app/serve/http/message.h"
#include "core/base/result.h"

namespace lanework::serve {

class StaticFiles {
 public:
  // Every file below the folder. Faults: it cannot be read, or a file is of a type that is not served (its ending).
  static Result<StaticFiles> read(const std::string& folder);

  // Empty: no such file. '/' is '/index.html'; '/desk' and '/desk/' are '/desk/index.html'.
  [[nodiscard]] std::optional<Response> answer(const Request& request) const;

 private:
  struct File {
    std::string type;
    std::string tag;  // the entity's tag, by its content
    bool hashed = false;
    std::shared_ptr<const std::string> plain;
    std::shared_ptr<const std::string> by_gzip;    // null where that is no smaller
    std::shared_ptr<const std::string> by_brotli;  // null where there is none beside it, or it is no smaller
  };
  std::map<std::string, File, std::less<>> files_;  // by path
};

}  // namespace lanework::serve
