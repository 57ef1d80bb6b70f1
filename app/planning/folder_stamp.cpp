#include "app/planning/folder_stamp.h"

#include <sys/stat.h>

#include <algorithm>
#include <filesystem>

namespace lanework::planning {

std::string folder_stamp(const std::vector<std::string>& folders) {
  namespace fs = std::filesystem;
  std::vector<std::string> lines;
  for (const std::string& folder : folders) {
    std::error_code ended;
    for (fs::recursive_directory_iterator at(folder, ended), last; !ended && at != last; at.increment(ended)) {
      struct stat about {};
      const std::string path = at->path().string();
      if (::stat(path.c_str(), &about) != 0 || !S_ISREG(about.st_mode)) continue;
      lines.push_back(path + '\0' + std::to_string(about.st_ino) + ' ' + std::to_string(about.st_size) + ' ' +
                      std::to_string(about.st_mtim.tv_sec) + '.' + std::to_string(about.st_mtim.tv_nsec) + '\n');
    }
  }
  std::sort(lines.begin(), lines.end());
  std::string out;
  for (const std::string& line : lines) out += line;
  return out;
}

}  // namespace lanework::planning
