#include "app/cli/care/private_pages.h"

#include <sys/stat.h>

#include "app/cli/page_files.h"

namespace lanework::cli {

Result<std::string> write_private_pages(const std::string& stem, const draw::Pages& pages, const std::string& folder) {
  std::vector<PageFile> files;
  if (const auto faults = add_page_files(stem, pages, {true, false, false}, files)) return *faults;
  const mode_t before = ::umask(S_IRWXG | S_IRWXO);
  auto written = write_page_files(files, folder);
  ::umask(before);
  if (!written) return written.faults();
  return written.value().front();
}

}  // namespace lanework::cli
