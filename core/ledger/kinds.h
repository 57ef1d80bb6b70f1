// The kinds of entries, from catalogue/ledger/kinds.toml: one table for what may be entered, by whom, about whom, and
// how private it is. Reader, roles and documentation all go by it.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"

namespace lanework::ledger {

enum class DataClass : std::uint8_t { kClub, kPersonal, kHealth };
enum class About : std::uint8_t { kSession, kPlayer, kSquad, kCoach };
enum class Role : std::uint8_t { kLead, kCoach, kRecorder, kBoard, kOperator };
enum class FieldType : std::uint8_t {
  kText,     // at most so many code points
  kTexts,    // at most kMostInList, each at most kMostTextPoints
  kKey,      // an id, as files write them
  kKeys,     // at most kMostInList
  kWhole,    // within limits
  kBoolean,  //
  kDay,      // 2026-11-26
  kWord,     // one of some
  kEntry,    // an EntryId
  kEntries   // at least one, at most kMostInList
};

inline constexpr int kMostInList = 200;
inline constexpr int kMostTextPoints = 200;
inline constexpr int kMostKeyBytes = 64;

struct Field {
  std::string key;
  FieldType type = FieldType::kText;
  std::vector<std::string> words;
  std::int64_t least = 0;
  std::int64_t most = 0;
  bool optional = false;
};

struct Kind {
  std::string key;
  DataClass data_class = DataClass::kHealth;
  About about = About::kPlayer;
  std::vector<Role> enter;
  std::vector<Field> fields;
  bool care = false;    // what follows of it is core/care/entries'
  std::string purpose;  // the consent that it waits for; empty: it waits for none

  [[nodiscard]] const Field* field(std::string_view name) const;
};

struct KindTable {
  std::vector<Kind> kinds;  // in the order of the file
  [[nodiscard]] const Kind* find(std::string_view key) const;
};

const std::vector<std::string_view>& data_class_words();
const std::vector<std::string_view>& about_words();
const std::vector<std::string_view>& role_words();
const std::vector<std::string_view>& field_type_words();

// All faults are collected: unknown words, a key twice, a field named as the envelope's, limits the wrong way round.
Result<KindTable> read_kinds(const Document& document);

// The keys every entry has, and those of whom it is about.
const std::vector<std::string_view>& envelope_keys();
std::vector<std::string_view> keys_about(About about);

}  // namespace lanework::ledger
