// A file layer under SQLite, over the one of this machine: it counts what is read, written, cut, flushed, opened and
// deleted, fails the call that a test names, and knows what a power cut would leave on the disk.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <random>
#include <string>
#include <vector>

namespace lanework::store::test {

// While one lives, every connection that is opened goes through it. One at a time.
class FailingVfs {
 public:
  enum class How : std::uint8_t {
    kError,  // the disk does not answer
    kShort,  // reads give nothing where something is, writes find no room
    kOff     // the power is gone: nothing answers any more, and what was not flushed is as it may be
  };
  FailingVfs();
  FailingVfs(const FailingVfs&) = delete;
  FailingVfs& operator=(const FailingVfs&) = delete;
  ~FailingVfs();

  // Counts from now on, and fails the nth call: only that, or every one from there on.
  void fail(int nth, How how, bool from_there_on);
  void stop();
  [[nodiscard]] bool failed() const { return failed_; }
  [[nodiscard]] int calls() const { return calls_; }

  // What one power cut may leave of the files, by name: what was flushed, and of later writes any sectors of 512 or
  // 4096 bytes in any order.
  [[nodiscard]] std::map<std::string, std::string> survivors(std::mt19937& random) const;

  // For the file layer's own functions.
  struct Change {
    enum class Kind : std::uint8_t { kWrite, kCut, kRemove } kind = Kind::kWrite;
    std::size_t at = 0;  // or the length after a cut
    std::string bytes;
  };
  struct Image {
    std::optional<std::string> flushed;  // empty: no such file
    std::vector<Change> later;
  };
  bool fails_now();
  [[nodiscard]] How how() const { return how_; }
  Image* image_of(const std::string& path);
  void change(Image* image, Change change) const;
  void flushed(Image* image) const;

 private:
  int calls_ = 0;
  int fail_at_ = 0;
  How how_ = How::kError;
  bool from_there_on_ = false;
  bool failed_ = false;
  std::map<std::string, Image> images_;
};

}  // namespace lanework::store::test
