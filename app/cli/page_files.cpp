#include "app/cli/page_files.h"

#include <filesystem>
#include <system_error>
#include <utility>

#include "app/read/files.h"

namespace lanework::cli {
namespace {

std::optional<Faults> add(std::vector<PageFile>& files, const std::string& name, Result<std::string> bytes) {
  if (!bytes) return bytes.faults();
  files.push_back({name, std::move(bytes).value()});
  return {};
}

}  // namespace

std::optional<Faults> add_page_files(const std::string& stem, const draw::Pages& pages, const PageFormats& formats,
                                     std::vector<PageFile>& files) {
  if (formats.pdf) {
    if (auto faults = add(files, stem + ".pdf", draw::write_pdf(pages))) return faults;
  }
  for (int side = 0; side < static_cast<int>(pages.sides.size()); ++side) {
    const std::string name = stem + "-side-" + std::to_string(side + 1);
    if (formats.svg) {
      if (auto faults = add(files, name + ".svg", draw::write_svg(pages, side))) return faults;
    }
    if (formats.png) {
      if (auto faults = add(files, name + ".png", draw::write_png(pages, side))) return faults;
    }
  }
  return {};
}

Result<std::vector<std::string>> write_page_files(const std::vector<PageFile>& files, const std::string& folder) {
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) {
    return Fault{FaultCode::kCannotWrite, {folder, 0, 0, "--out"}, error.message(), "a folder to write to", {}};
  }
  std::vector<std::string> paths;
  for (const PageFile& file : files) {
    const std::string path = (std::filesystem::path(folder) / file.name).string();
    if (const auto fault = read::write_file_atomically(path, file.bytes)) return *fault;
    paths.push_back(path);
  }
  return paths;
}

draw::Paper paper_named(const std::string& name) {
  return name == "letter" ? draw::Paper::kUsLetter : draw::Paper::kA4;
}

}  // namespace lanework::cli
