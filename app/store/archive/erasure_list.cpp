#include "app/store/archive/erasure_list.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <sstream>

#include "app/store/archive/new_file.h"
#include "app/store/archive/records.h"
#include "core/ledger/entry.h"

namespace lanework::store::archive {
namespace {

constexpr std::size_t kCheckBytes = 4;

std::string line_of(const std::string& tag, const std::string& when) {
  const std::string check = link_text(next_link({}, tag + when)).substr(0, kCheckBytes);
  return hex_of(tag) + " " + when + " " + hex_of(check) + "\n";
}

class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  [[nodiscard]] int number() const { return number_; }

 private:
  int number_;
};

}  // namespace

Result<ErasureList> read_erasure_list(const std::string& file) {
  const auto text = read_small_file(file);
  if (!text) return text.faults();
  ErasureList out;
  std::istringstream lines(text.value());
  std::string line;
  for (int number = 1; std::getline(lines, line); ++number) {
    const std::string tag = bytes_of_hex(line.substr(0, line.find(' '))).value_or("");
    const std::size_t from = line.find(' ') + 1;
    const std::string when = from == 0 ? "" : line.substr(from, line.find(' ', from) - from);
    if (tag.size() != kTagBytes || !ledger::is_time_with_offset(when) || line_of(tag, when) != line + "\n") {
      return Fault{FaultCode::kSyntax,
                   {file, number, 0, {}},
                   quote(line),
                   "a line of the list of the erased as 'lanework ledger erase' wrote it",
                   "take the list from where it was not changed; a last line that is cut off erased nobody"};
    }
    out.people.emplace(tag, when);
  }
  return out;
}

std::string erasure_list_text(const ErasureList& list) {
  std::string out;
  for (const auto& [tag, when] : list.people) out += line_of(tag, when);
  return out;
}

std::optional<Fault> add_to_erasure_list(const std::string& file, const std::string& tag, const std::string& when) {
  const Descriptor opened(::open(file.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600));
  const int list = opened.number();
  if (list < 0 || ::flock(list, LOCK_EX) != 0) return cannot_write(file, std::strerror(errno));
  const auto text = read_small_file(file);
  if (!text) return text.faults().front();
  const std::size_t whole = text.value().rfind('\n') + 1;  // 0 where there is no line
  const std::string line = line_of(tag, when);
  const bool written =
      ::ftruncate(list, static_cast<off_t>(whole)) == 0 &&
      ::pwrite(list, line.data(), line.size(), static_cast<off_t>(whole)) == static_cast<ssize_t>(line.size()) &&
      ::fsync(list) == 0 && flush_folder_of(file);
  if (written) return {};
  return cannot_write(file, std::strerror(errno));
}

}  // namespace lanework::store::archive
