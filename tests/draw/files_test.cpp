// The files as other programs see them: poppler's pdftotext and pdffonts, an XML reader, a PNG header.
#include <gtest/gtest.h>

#include <cairo.h>

#include <algorithm>
#include <array>
#include <boost/property_tree/ptree.hpp>
#include <boost/property_tree/xml_parser.hpp>
#include <cstdint>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <sstream>

#include "app/draw/card.h"
#include "app/draw/paint.h"
#include "app/draw/qr_code.h"
#include "app/draw/tokens.h"
#include "tests/draw/sample_card.h"

namespace lanework::draw {
namespace {

std::string output_of(const std::string& command) {
  std::string output;
  FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return output;
  std::array<char, 4096> chunk{};
  for (std::size_t got = fread(chunk.data(), 1, chunk.size(), pipe); got > 0;
       got = fread(chunk.data(), 1, chunk.size(), pipe)) {
    output.append(chunk.data(), got);
  }
  pclose(pipe);
  return output;
}

std::string saved(const std::string& name, const std::string& bytes) {
  const std::string path = ::testing::TempDir() + "lanework_" + name;
  std::ofstream(path, std::ios::binary) << bytes;
  return path;
}

std::string text_of(const std::string& pdf) {
  return output_of(std::string(PDFTOTEXT) + " -enc UTF-8 -layout " + saved("text.pdf", pdf) + " -");
}

// Letters only: poppler sets spaces by position and marks directions of its own.
std::string squeezed(const std::string& text) {
  std::string out;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const auto byte = static_cast<unsigned char>(text[at]);
    if (byte <= 0x20) continue;
    if (text.compare(at, 2, "\u00A0") == 0) {
      ++at;
      continue;
    }
    const bool direction = text.compare(at, 2, "\xE2\x80") == 0 && at + 2 < text.size() &&
                           static_cast<unsigned char>(text[at + 2]) >= 0xAA;
    if (direction) {
      at += 2;
      continue;
    }
    out += text[at];
  }
  return out;
}

std::string sample_pdf(const SlipMatter& slip) { return write_pdf(draw_slip(slip, Paper::kA4).value()).value(); }

TEST(Files, AreTheSameBytesFromRunToRun) {
  const Pages card = draw_card(sample_card(14), Paper::kA4).value();
  const std::string program = DRAW_SAMPLE;
  EXPECT_EQ(output_of(program + " card pdf"), write_pdf(card).value());
  EXPECT_EQ(output_of(program + " card svg"), write_svg(card, 0).value());
  EXPECT_EQ(output_of(program + " card png"), write_png(card, 0).value());
  EXPECT_EQ(output_of(program + " slip pdf"), sample_pdf(sample_slip()));
  EXPECT_EQ(write_svg(card, 0).value(), write_svg(card, 0).value());
}

TEST(Files, CardCarriesItsTexts) {
  const CardMatter card = sample_card(14);
  const std::string text = squeezed(text_of(write_pdf(draw_card(card, Paper::kA4).value()).value()));
  std::vector<std::string> expected = {card.squad,
                                       card.club,
                                       card.date_words,
                                       card.finish,
                                       card.restrictions_as_known,
                                       "does not diagnose and does not clear anyone to play",
                                       "Nearest defibrillator",
                                       "20 paces",
                                       "new tonight",
                                       "easier tonight",
                                       card.session_id};
  for (const DrillMatter& drill : card.drills) expected.push_back(drill.dose_words);
  for (const std::string& words : expected) {
    EXPECT_NE(text.find(squeezed(words)), std::string::npos) << words;
  }
}

TEST(Files, SlipCarriesNamesOfEveryScript) {
  const std::vector<std::string> names = {
      "\u0646\u0648\u0631 \u0627\u0644\u0647\u062F\u0649",                    // Arabic
      "\u05E0\u05D5\u05E2\u05D4 \u05DC\u05D5\u05D9",                          // Hebrew
      "\u041E\u043A\u0441\u0430\u043D\u0430",                                 // Cyrillic
      "\u4F50\u85E4 \u7F8E\u54B2",                                            // Han
      "\u3055\u304F\u3089",                                                   // Hiragana
      "\uAE40\uBBFC\uC9C0",                                                   // Hangul
      "\u0905\u0928\u0928\u094D\u092F\u093E \u0936\u0930\u094D\u092E\u093E",  // Devanagari
      "\u0E2A\u0E21\u0E0A\u0E32\u0E22",                                       // Thai
      "Nguy\u1EC5n Th\u1ECB \u00C1nh",                                        // Latin with stacked marks
      "\u0395\u03BB\u03AD\u03BD\u03B7"};                                      // Greek
  for (const std::string& name : names) {
    SlipMatter slip = sample_slip();
    slip.partners = {{{name, "Kit"}, ""}};
    EXPECT_NE(squeezed(text_of(sample_pdf(slip))).find(squeezed(name)), std::string::npos) << name;
  }
}

TEST(Files, TextIsNeverMarkupNorTurned) {
  SlipMatter slip = sample_slip();
  slip.partners = {{{"<b>Bo & Co</b>", "=HYPERLINK(1)"}, "&lt;i&gt; %s \\n"},
                   {{"Ab\u202Edc", "\U0001F600 Zo\u00EB"}, ""}};
  const std::string text = squeezed(text_of(sample_pdf(slip)));
  EXPECT_NE(text.find("<b>Bo&Co</b>"), std::string::npos);
  EXPECT_NE(text.find("=HYPERLINK(1)"), std::string::npos);
  EXPECT_NE(text.find("&lt;i&gt;%s\\n"), std::string::npos);
  EXPECT_NE(text.find("Abdc"), std::string::npos);
  EXPECT_NE(text.find("Zo\u00EB"), std::string::npos);
}

TEST(Files, EmbedEveryFont) {
  const std::string pdf = write_pdf(draw_card(sample_card(14), Paper::kA4).value()).value();
  std::istringstream table(output_of(std::string(PDFFONTS) + " " + saved("fonts.pdf", pdf)));
  std::string line;
  std::getline(table, line);
  const std::size_t column = line.find("emb");
  ASSERT_NE(column, std::string::npos);
  std::getline(table, line);
  int fonts = 0;
  bool own_face = false;
  while (std::getline(table, line)) {
    ++fonts;
    EXPECT_EQ(line.substr(column, 3), "yes") << line;
    own_face = own_face || line.find("B612") != std::string::npos;
  }
  EXPECT_GE(fonts, 2);
  EXPECT_TRUE(own_face);
}

TEST(Files, SvgIsWellFormed) {
  const Pages card = draw_card(sample_card(10), Paper::kUsLetter).value();
  for (int side = 0; side < static_cast<int>(card.sides.size()); ++side) {
    std::istringstream svg(write_svg(card, side).value());
    boost::property_tree::ptree tree;
    ASSERT_NO_THROW(boost::property_tree::read_xml(svg, tree));
    EXPECT_EQ(tree.get<std::string>("svg.<xmlattr>.width"), "612pt");
  }
}

TEST(Files, PngHasTheSizeOfThePage) {
  const Pages card = draw_card(sample_card(10), Paper::kUsLetter).value();
  const std::string png = write_png(card, 0, 72).value();
  ASSERT_GT(png.size(), 24u);
  EXPECT_EQ(png.substr(1, 3), "PNG");
  const auto number = [&](std::size_t at) {
    int value = 0;
    for (std::size_t byte = 0; byte < 4; ++byte) value = value * 256 + static_cast<unsigned char>(png[at + byte]);
    return value;
  };
  EXPECT_EQ(number(16), 612);
  EXPECT_EQ(number(20), 792);
  EXPECT_FALSE(write_png(card, 0, 10000).ok());
  EXPECT_FALSE(write_png(card, 7).ok());
  EXPECT_FALSE(write_svg(card, -1).ok());
}

struct Reading {
  const std::string& bytes;
  std::size_t at = 0;
};

cairo_status_t read_on(void* reading, unsigned char* data, unsigned int length) {
  Reading& from = *static_cast<Reading*>(reading);
  if (from.bytes.size() - from.at < length) return CAIRO_STATUS_READ_ERROR;
  std::copy_n(from.bytes.begin() + static_cast<std::ptrdiff_t>(from.at), length, data);
  from.at += length;
  return CAIRO_STATUS_SUCCESS;
}

// Read back by Cairo, which did not write it.
TEST(Files, PngHoldsWhatWasPainted) {
  const Pages card = draw_card(sample_card(14), Paper::kA4).value();
  const std::string png = write_png(card, 0, 72).value();
  Reading reading{png};
  cairo_surface_t* got = cairo_image_surface_create_from_png_stream(&read_on, &reading);
  ASSERT_EQ(cairo_surface_status(got), CAIRO_STATUS_SUCCESS);
  const int width = cairo_image_surface_get_width(got);
  const int height = cairo_image_surface_get_height(got);
  cairo_surface_t* painted = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height);
  cairo_t* canvas = cairo_create(painted);
  cairo_set_source_rgb(canvas, kPaperColour.red, kPaperColour.green, kPaperColour.blue);
  cairo_paint(canvas);
  paint_page(canvas, card.sides[0], kPaperColour);
  cairo_surface_flush(painted);
  int different = 0;
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const auto word = [&](cairo_surface_t* surface) {
        std::uint32_t pixel = 0;
        std::memcpy(&pixel, cairo_image_surface_get_data(surface) + y * cairo_image_surface_get_stride(surface) + 4 * x,
                    4);
        return pixel & 0xFFFFFFU;
      };
      different += word(got) == word(painted) ? 0 : 1;
    }
  }
  EXPECT_EQ(different, 0);
  cairo_destroy(canvas);
  cairo_surface_destroy(painted);
  cairo_surface_destroy(got);
}

// ISO/IEC 18004: side = 17 + 4 x version; a finder of 7 x 7 in three corners.
TEST(QrCode, IsACodeOfTheSessionId) {
  const ModuleGrid grid = qr_modules(sample_card(1).session_id);
  ASSERT_GT(grid.side, 0);
  EXPECT_EQ((grid.side - 17) % 4, 0);
  const auto finder = [&](int row, int column) {
    for (int at = 0; at < 7; ++at) {
      if (!grid.dark(row, column + at) || !grid.dark(row + 6, column + at) || !grid.dark(row + at, column) ||
          !grid.dark(row + at, column + 6)) {
        return false;
      }
    }
    return grid.dark(row + 3, column + 3) && !grid.dark(row + 1, column + 1);
  };
  EXPECT_TRUE(finder(0, 0));
  EXPECT_TRUE(finder(0, grid.side - 7));
  EXPECT_TRUE(finder(grid.side - 7, 0));
  EXPECT_EQ(qr_modules("").side, 0);
  EXPECT_EQ(qr_modules(std::string(5000, 'x')).side, 0);
}

}  // namespace
}  // namespace lanework::draw
