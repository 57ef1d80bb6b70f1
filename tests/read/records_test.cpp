// The files of a season on the disk: bytes of any encoding, canonical files written and read again, hours summed from a
// file in pieces.
#include "app/read/read_records.h"

#include <gtest/gtest.h>

#include "core/records/week_hours.h"
#include "tests/read/encode_text.h"
#include "tests/read/scratch_folder.h"

namespace lanework::read {
namespace {

const records::Terms& terms() {
  static const Result<records::Terms> kTerms = read_record_terms(LANEWORK_SOURCE_DIR "/catalogue");
  return kTerms.value();
}

records::Period period() {
  return records::make_period(*parse_iso_date("2026-08-03"), *parse_iso_date("2027-05-30"),
                              *parse_iso_date("2027-05-30"))
      .value();
}

RecordFiles sample() {
  return {{"squads.csv", "squad,name,players,training minutes\nu13,Mäuse,16,75\n"},
          {"hours.csv", "squad,date,setting,minutes\nMäuse,2026-11-24,training,60\nu13,2026-11-26,training,\n"},
          {"injuries.csv", "squad,date,note\nu13,2026-11-24,Übung\n"},
          {}};
}

TEST(RecordFiles, OfAnyEncoding) {
  const records::ReadSeason plain = read_records(sample(), terms(), {}, period());
  ASSERT_TRUE(plain.faults.empty()) << to_line(plain.faults.front());
  for (const char* encoding : {"windows-1252", "UTF-16LE"}) {
    RecordFiles coded = sample();
    for (NamedText* text : {&coded.squads, &coded.hours, &coded.injuries}) text->bytes = encode(text->bytes, encoding);
    EXPECT_EQ(read_records(coded, terms(), {}, period()).season, plain.season) << encoding;
  }
}

TEST(RecordFiles, FaultsOfBytesAreThoseOfAllFiles) {
  RecordFiles broken = sample();
  broken.hours.bytes = "squad,date\n\"u13";
  broken.injuries.bytes = std::string("PK\x03\x04\0\0", 6);
  const Faults faults = read_records(broken, terms(), {}, period()).faults;
  ASSERT_EQ(faults.size(), 2U);
  EXPECT_EQ(faults[0].place.file, "hours.csv");
  EXPECT_EQ(faults[1].place.file, "injuries.csv");
  broken.squads.bytes = std::string(kMostRecordBytes + 1, 'x');
  EXPECT_EQ(read_records(broken, terms(), {}, period()).faults.size(), 3U);
}

TEST(RecordFiles, CanonicalOnesAreWrittenReadAndSummed) {
  const ScratchFolder folder;
  const records::ReadSeason plain = read_records(sample(), terms(), {}, period());
  EXPECT_FALSE(record_files_in(folder.path("")).ok());
  EXPECT_TRUE(write_canonical_files(folder.path(""), records::canonical_files(plain.season, terms())).empty());
  const auto files = record_files_in(folder.path(""));
  ASSERT_TRUE(files.ok());
  EXPECT_TRUE(files.value().players.has_value());
  const records::ReadSeason again = read_records(files.value(), terms(), {}, period());
  EXPECT_EQ(again.season, plain.season);

  const auto squads = read_squad_records(files.value().squads, terms(), {}, period());
  ASSERT_TRUE(squads.ok());
  const auto table = sum_hours_file(folder.path("hours.csv"), squads.value(), period());
  ASSERT_TRUE(table.ok());
  EXPECT_EQ(table.value(), records::hours_by_week(plain.season));
  EXPECT_FALSE(sum_hours_file(folder.path("no.csv"), squads.value(), period()).ok());
  EXPECT_EQ(write_canonical_files(folder.path("nowhere"), {}).size(), 4U);
}

TEST(RecordFiles, AMappingIsAFileToo) {
  const ScratchFolder folder;
  folder.write("mapping.toml", "[hours.words.squad]\nu13 = [\"Spatzen\"]\n");
  const auto mapping = read_record_mapping(folder.path("mapping.toml"), terms());
  ASSERT_TRUE(mapping.ok());
  RecordFiles files = sample();
  files.hours.bytes = "squad,date,setting\nSpatzen,2026-11-24,training\n";
  EXPECT_EQ(read_records(files, terms(), mapping.value(), period()).season.exposures.size(), 1U);
  EXPECT_FALSE(read_record_mapping(folder.path("no.toml"), terms()).ok());
}

}  // namespace
}  // namespace lanework::read
