#include "app/store/archive/backup_notes.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <set>
#include <sstream>

#include "app/store/archive/new_file.h"
#include "core/base/document.h"
#include "core/ledger/entry.h"

namespace lanework::store::archive {
namespace {

constexpr const char* kMade = "made";
constexpr const char* kFile = "file";
constexpr const char* kChecked = "checked";

std::string text_at(const Node& line, const char* key) {
  const Node* value = line.find(key);
  return value != nullptr && value->kind == Node::Kind::kText ? value->text : std::string();
}

struct Noted {
  BackupsNoted latest;
  std::set<std::string> made;
};

Noted read(const std::string& notes) {
  Noted out;
  const auto text = read_small_file(notes);
  if (!text) return out;
  std::istringstream lines(text.value());
  for (std::string line; std::getline(lines, line);) {
    const auto document = parse_json(notes, line);
    const std::string made = document ? text_at(document.value().root, kMade) : std::string();
    if (!ledger::is_time_with_offset(made)) continue;
    const std::string checked = text_at(document.value().root, kChecked);
    if (ledger::is_time_with_offset(checked)) {
      out.latest.checked = checked;
      out.latest.of = made;
    } else {
      out.latest.last = made;
      out.latest.file = text_at(document.value().root, kFile);
      out.made.insert(made);
    }
  }
  return out;
}

// On the disk when this returns. What a power cut left of a line that was never finished is taken off first.
std::optional<Fault> add_line(const std::string& notes, const Node& line) {
  const int file = ::open(notes.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (file < 0) return cannot_write(notes, std::strerror(errno));
  const auto end = [&](bool written) {
    const int why = errno;
    ::close(file);
    return written ? std::nullopt : std::optional<Fault>(cannot_write(notes, std::strerror(why)));
  };
  if (::flock(file, LOCK_EX) != 0) return end(false);
  const auto text = read_small_file(notes);
  if (!text) return end(false);
  const auto whole = static_cast<off_t>(text.value().rfind('\n') + 1);  // 0 where there is no line
  const std::string bytes = to_json(line) + "\n";
  return end(::ftruncate(file, whole) == 0 &&
             ::pwrite(file, bytes.data(), bytes.size(), whole) == static_cast<ssize_t>(bytes.size()) &&
             ::fsync(file) == 0);
}

Fault not_noted(const std::string& notes, const std::string& made) {
  return {FaultCode::kUnknownName,
          {notes, 0, 0, {}},
          made,
          "a backup of this ledger, by the time at which it was written",
          "'lanework backup check' prints it: 'Of 2026-11-26T18:05:00+01:00'"};
}

}  // namespace

BackupsNoted read_backup_notes(const std::string& notes) { return read(notes).latest; }

std::optional<Fault> note_backup(const std::string& notes, const std::string& made, const std::string& file) {
  Node line = Node::make_table();
  line.set(kMade, Node::make_text(made));
  line.set(kFile, Node::make_text(file));
  return add_line(notes, line);
}

std::optional<Fault> note_checked(const std::string& notes, const std::string& made, const std::string& when) {
  if (read(notes).made.count(made) == 0) return not_noted(notes, made);
  Node line = Node::make_table();
  line.set(kMade, Node::make_text(made));
  line.set(kChecked, Node::make_text(when));
  return add_line(notes, line);
}

}  // namespace lanework::store::archive
