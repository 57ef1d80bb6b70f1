// The terms of injury and hours records: what each field may say, the consensus' terms among them
// (catalogue/record_terms.toml, with the source of every term), and the words they are read from.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/base/two_languages.h"

namespace lanework::records {

enum class Field : std::uint8_t {
  kSetting,
  kOnset,
  kContact,
  kRegion,
  kTissue,
  kSide,
  kActivity,
  kRecurrence,
  kSex,
  kWarmUp
};
inline constexpr std::size_t kFields = 10;

// Fields whose terms the program tells apart, in the order of their rows. 'Not known' is an empty optional everywhere.
enum class Setting : std::uint8_t { kTraining, kMatch };
inline constexpr std::size_t kSettings = 2;
enum class Onset : std::uint8_t { kAcuteSudden, kRepetitiveSudden, kRepetitiveGradual };
enum class Contact : std::uint8_t { kNone, kIndirectAthlete, kIndirectObject, kDirectAthlete, kDirectObject };
enum class Side : std::uint8_t { kLeft, kRight, kBoth, kMiddle };
// Subsequent injuries: same place and type once healed (re-injury) or before (exacerbation); same place, other type;
// other place.
enum class Recurrence : std::uint8_t { kFirst, kReInjury, kExacerbation, kLocal, kNew };
enum class Sex : std::uint8_t { kGirls, kBoys, kMixed };
enum class WarmUp : std::uint8_t { kMost, kHalf, kFew, kNo };
inline constexpr std::size_t kWarmUps = 4;
// Fields whose terms are data: positions in Terms.
enum class Region : std::uint8_t {};
enum class Tissue : std::uint8_t {};
enum class Activity : std::uint8_t {};

enum class RegionGroup : std::uint8_t { kHeadAndNeck, kUpperLimb, kTrunk, kLowerLimb, kSeveral };

struct Term {
  std::string key;    // as the canonical files have it
  std::string shown;  // as people read it
  std::string shown_in_spanish;
  std::string group;  // of regions and tissues: 'lower-limb', 'bone'; else empty
  std::vector<std::string> sources;

  [[nodiscard]] const std::string& in(Language language) const {
    return language == Language::kSpanish ? shown_in_spanish : shown;
  }
};

class Terms {
 public:
  [[nodiscard]] const std::vector<Term>& of(Field field) const { return rows_[index(field)]; }
  template <class Value>
  [[nodiscard]] const Term& term(Field field, Value value) const {
    return of(field)[static_cast<std::size_t>(value)];
  }
  [[nodiscard]] RegionGroup group(Region region) const { return region_groups_[static_cast<std::size_t>(region)]; }

  // The term that has this key.
  [[nodiscard]] std::optional<std::uint8_t> with_key(Field field, std::string_view key) const;
  // The term that these words mean, as people::plain_words leaves them.
  [[nodiscard]] std::optional<std::uint8_t> meant_by(Field field, const std::string& words) const;
  // Do the words say that nobody knows?
  [[nodiscard]] bool not_known(const std::string& words) const;

  static std::size_t index(Field field) { return static_cast<std::size_t>(field); }

 private:
  friend class TermsReader;
  std::array<std::vector<Term>, kFields> rows_;
  std::array<std::unordered_map<std::string, std::uint8_t>, kFields> words_;
  std::vector<RegionGroup> region_groups_;
  std::vector<std::string> not_known_;
};

const char* field_key(Field field);  // 'warm-up', as the tables of the file are named
Words field_name(Field field);       // 'body region', as people read it
const char* region_group_name(RegionGroup group);

// Of record_terms.toml. Faults: rows the program knows that lack or stand in another order, words with two meanings.
Result<Terms> read_terms(const Document& document);

}  // namespace lanework::records
