#include "core/catalogue/named_sources.h"

#include <gtest/gtest.h>

namespace lanework::catalogue {
namespace {

std::vector<std::string> lines_of(const char* text) {
  Source known;
  known.key = "andersen-2002";
  Faults faults;
  check_named_sources(parse_toml("a.toml", text).value(), {known}, faults);
  std::vector<std::string> out;
  for (const Fault& fault : faults) out.push_back(to_line(fault));
  return out;
}

using Lines = std::vector<std::string>;

TEST(NamedSources, KnownOnesAreNoFault) {
  EXPECT_EQ(lines_of("source = \"andersen-2002\"\n[a]\nsources = [\"andersen-2002\"]\n"), Lines{});
}

TEST(NamedSources, EachUnknownOneIsToldWithItsPlaceHoweverDeep) {
  EXPECT_EQ(lines_of("source = \"x\"\n[[table]]\n[[table.band]]\n\nsources = [\"andersen-2002\", \"y\",\n\"z\"]\n"),
            (Lines{"a.toml:1:1: source: found 'x', expected a key of sources.toml",
                   "a.toml:5:1: table.1.band.1.sources: found 'y', expected a key of sources.toml",
                   "a.toml:5:1: table.1.band.1.sources: found 'z', expected a key of sources.toml"}));
  EXPECT_EQ(lines_of("rows = [{ sources = [\"y\"] }]\n"),
            Lines{"a.toml:1:11: rows.1.sources: found 'y', expected a key of sources.toml"});
}

TEST(NamedSources, WhatIsNoTextAndWhatIsNoSourceIsLeftAlone) {
  EXPECT_EQ(lines_of("source = 4\nsources = [true]\nresource = \"x\"\n"), Lines{});
}

}  // namespace
}  // namespace lanework::catalogue
