// Bytes of any length in one file, sealed piece by piece (libsodium's secretstream) under a key of the file's own,
// which is sealed to the backups' public key (crypto_box_seal). Every byte of the file is bound: one that is another,
// one that is missing and one too many are all faults. Layout: docs/formats/backup.md.
#pragma once

#include <cstdio>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "app/store/archive/backup_keys.h"
#include "app/store/archive/new_file.h"

namespace lanework::store::archive {

class SealingWriter {
 public:
  // Writes the file's head.
  static Result<SealingWriter> start(NewFile& file, const PublicKey& to);
  SealingWriter(SealingWriter&&) noexcept;
  SealingWriter& operator=(SealingWriter&&) noexcept;
  ~SealingWriter();

  std::optional<Fault> write(std::string_view bytes);
  std::optional<Fault> finish();         // the last piece, which says that it is the last; then on the disk
  [[nodiscard]] const Key& key() const;  // the file's own, to read it back before it is forgotten

 private:
  struct State;
  explicit SealingWriter(std::unique_ptr<State> state);
  std::unique_ptr<State> state_;
  std::optional<Fault> seal_piece(bool last);
};

class OpeningReader {
 public:
  // Faults: no backup; made for another key; the private key does not open it.
  static Result<OpeningReader> open(const std::string& file, const Key& private_key);
  // By the file's own key, as who wrote it has it.
  static Result<OpeningReader> open_by_own_key(const std::string& file, const Key& key);
  OpeningReader(OpeningReader&&) noexcept;
  OpeningReader& operator=(OpeningReader&&) noexcept;
  ~OpeningReader();

  // The next piece; empty at the end, when the last piece said that it is and nothing follows.
  Result<std::string> next();
  [[nodiscard]] const std::string& file() const;

 private:
  struct State;
  explicit OpeningReader(std::unique_ptr<State> state);
  static Result<OpeningReader> started(std::unique_ptr<State> state, const Key& key);
  std::unique_ptr<State> state_;
};

}  // namespace lanework::store::archive
