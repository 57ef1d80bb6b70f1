// lanework_figures: draws the figures of drill files, for those who write them. One PNG a drill and a sheet
// of them all; with --rungs, a rung's own figure too. Faults of [figure] and [rung_figure] tables and parts that miss
// the ground go to standard error. With --draw, a shuffled few without names, and the answers in a file of their own
// (docs/fresh-eyes.md).
#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include "app/draw/figure_drawing.h"
#include "core/base/document.h"
#include "core/base/random.h"
#include "core/figure/standing.h"

namespace {

using lanework::Faults;
using lanework::TableReader;
using lanework::draw::Box;
using lanework::figure::Figure;

constexpr double kPixelsPerPoint = 3;
constexpr double kPointsPerMillimetre = 72.0 / 25.4;

struct Options {
  std::vector<std::string> files;
  std::string out = "figures";
  double width_mm = 50;
  int columns = 5;
  bool poses = false;
  bool hide_names = false;
  bool sheet_only = false;
  bool rungs = false;
  int draw = 0;
  std::uint64_t seed = 1;
  std::string answers;
};

struct Card {
  std::string name;
  const Figure* figure;
  int pose;
};

struct Drawn {
  std::string id;
  std::string name;
  Figure figure;
};

// The words of each rung by its key, for the names of the pictures.
std::vector<std::pair<std::string, std::string>> rung_words(TableReader& drill) {
  std::vector<std::pair<std::string, std::string>> out;
  for (TableReader& rung : drill.tables("rung")) {
    const std::string key = rung.text_or("key", {});
    if (!key.empty()) out.emplace_back(key, rung.text_or("change", key));
  }
  return out;
}

// The drill's own figure first, then those of its rungs.
bool read_drill(const std::string& file, bool rungs, std::vector<Drawn>& out) {
  std::ifstream stream(file, std::ios::binary);
  const std::string text((std::istreambuf_iterator<char>(stream)), {});
  const auto document = lanework::parse_toml(file, text);
  Faults faults;
  if (!document) {
    faults = document.faults();
  } else {
    TableReader root(file, &document.value().root, "", faults);
    Drawn drill;
    drill.id = std::filesystem::path(file).stem().string();
    drill.name = root.text_or("name", drill.id);
    TableReader table = root.table("figure");
    if (!table.present()) std::fprintf(stderr, "%s: no [figure] table\n", file.c_str());
    drill.figure = lanework::figure::read_figure(table);
    std::vector<Drawn> found = {drill};
    TableReader figures = root.table("rung_figure");
    for (const auto& [key, words] : rung_words(root)) {
      TableReader own = figures.table(key);
      if (own.present())
        found.push_back({drill.id + "--" + key, drill.name + ": " + words, lanework::figure::read_figure(own)});
    }
    figures.finish();
    for (std::size_t i = 0; i < found.size() && faults.empty(); ++i) {
      if (!found[i].figure.empty() && (i == 0 || rungs)) out.push_back(std::move(found[i]));
    }
  }
  for (const auto& fault : faults) std::fprintf(stderr, "%s\n", lanework::to_line(fault).c_str());
  return faults.empty();
}

void remark(const Drawn& drill) {
  for (const auto& pose : drill.figure.poses) {
    for (const std::string& line : lanework::figure::remarks_on(pose)) {
      std::fprintf(stderr, "%s: pose '%s': %s\n", drill.id.c_str(), pose.label.c_str(), line.c_str());
    }
  }
}

// A white picture of the given size in points; the caller destroys both.
struct Canvas {
  cairo_surface_t* surface;
  cairo_t* cr;
  Canvas(double width, double height)
      : surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(width * kPixelsPerPoint),
                                           static_cast<int>(height * kPixelsPerPoint))),
        cr(cairo_create(surface)) {
    cairo_scale(cr, kPixelsPerPoint, kPixelsPerPoint);
    const auto paper = lanework::draw::kPaperColour;
    cairo_set_source_rgb(cr, paper.red, paper.green, paper.blue);
    cairo_paint(cr);
  }
  Canvas(const Canvas&) = delete;
  Canvas& operator=(const Canvas&) = delete;
  ~Canvas() {
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
  }
  bool write(const std::string& file) const {
    const bool ok = cairo_surface_write_to_png(surface, file.c_str()) == CAIRO_STATUS_SUCCESS;
    if (!ok) std::fprintf(stderr, "%s: cannot be written\n", file.c_str());
    return ok;
  }
};

void draw_card(cairo_t* cr, const Card& card, const Box& box, bool named) {
  lanework::draw::FigureLook look;
  look.paper = lanework::draw::kPaperColour;
  look.pose = card.pose;
  const double words = named ? 10 : 0;
  lanework::draw::draw_figure(cr, {box.x + 4, box.y + 4, box.width - 8, box.height - 8 - words}, *card.figure, look);
  if (!named) return;
  cairo_set_source_rgb(cr, 0.1, 0.1, 0.1);
  cairo_select_font_face(cr, "sans", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size(cr, 7);
  cairo_text_extents_t extents;
  cairo_text_extents(cr, card.name.c_str(), &extents);
  cairo_set_font_size(cr, 7 * std::min(1.0, (box.width - 12) / extents.width));
  cairo_move_to(cr, box.x + 6, box.bottom() - 4);
  cairo_show_text(cr, card.name.c_str());
}

bool draw_all(const Options& options, const std::vector<Drawn>& drills) {
  const double width = options.width_mm * kPointsPerMillimetre;
  const double height = 0.8 * width;
  std::vector<Card> cards;
  bool ok = true;
  for (const Drawn& drill : drills) {
    if (!options.sheet_only) {
      const Canvas canvas(width, height);
      draw_card(canvas.cr, {drill.name, &drill.figure, -1}, {0, 0, width, height}, !options.hide_names);
      ok = canvas.write(options.out + "/" + drill.id + ".png") && ok;
    }
    if (!options.poses) cards.push_back({drill.name, &drill.figure, -1});
    for (std::size_t i = 0; options.poses && i < drill.figure.poses.size(); ++i) {
      cards.push_back({drill.name + ": " + drill.figure.poses[i].label, &drill.figure, static_cast<int>(i)});
    }
  }
  if (cards.empty()) return ok;
  const int columns = std::min(options.columns, static_cast<int>(cards.size()));
  const int rows = (static_cast<int>(cards.size()) + columns - 1) / columns;
  const Canvas sheet(columns * width, rows * height);
  for (std::size_t i = 0; i < cards.size(); ++i) {
    const int column = static_cast<int>(i) % columns;
    const int row = static_cast<int>(i) / columns;
    draw_card(sheet.cr, cards[i], {column * width, row * height, width, height}, !options.hide_names);
  }
  return sheet.write(options.out + "/sheet.png") && ok;
}

// A few drills in an order that only the seed decides: sorted by a random word each, ties by id.
std::vector<Drawn> shuffled(std::vector<Drawn> drills, int count, std::uint64_t seed) {
  std::sort(drills.begin(), drills.end(), [](const Drawn& a, const Drawn& b) { return a.id < b.id; });
  std::vector<std::pair<std::uint32_t, std::size_t>> order;
  for (std::size_t i = 0; i < drills.size(); ++i) {
    order.emplace_back(lanework::philox({static_cast<std::uint32_t>(i), 0, 0, 0}, lanework::random_key(seed))[0], i);
  }
  std::sort(order.begin(), order.end());
  std::vector<Drawn> out;
  for (std::size_t i = 0; i < order.size() && out.size() < static_cast<std::size_t>(count); ++i) {
    out.push_back(std::move(drills[order[i].second]));
  }
  return out;
}

// Renames the drills to their numbers, and writes which is which.
bool hide_answers(std::vector<Drawn>& drills, const std::string& file) {
  std::ofstream answers(file);
  answers << "picture,drill,name\n";
  for (std::size_t i = 0; i < drills.size(); ++i) {
    const std::string number = (i < 9 ? "0" : "") + std::to_string(i + 1);
    answers << number << ',' << drills[i].id << ",\"" << drills[i].name << "\"\n";
    drills[i].id = number;
  }
  answers.flush();
  if (!answers) std::fprintf(stderr, "%s: cannot be written\n", file.c_str());
  return static_cast<bool>(answers);
}

}  // namespace

int main(int argc, char** argv) {
  Options options;
  CLI::App app{"Draws the figures of drill files as PNG: one a drill, and sheet.png with all of them."};
  app.add_option("files", options.files, "drill files (TOML)")->required();
  app.add_option("--out", options.out, "folder for the pictures");
  app.add_option("--width", options.width_mm, "width of one picture in millimetres")->check(CLI::Range(15.0, 300.0));
  app.add_option("--columns", options.columns, "pictures in a row of the sheet")->check(CLI::Range(1, 20));
  app.add_flag("--poses", options.poses, "every key pose on the sheet, not the main picture");
  app.add_flag("--hide-names", options.hide_names, "no names");
  app.add_flag("--sheet-only", options.sheet_only, "no single pictures");
  app.add_flag("--rungs", options.rungs, "the own figures of rungs too, each after its drill's");
  auto* answers = app.add_option("--answers", options.answers, "with --draw: where to write which picture is which");
  app.add_option("--draw", options.draw, "only so many drills, shuffled, numbered, without names")
      ->check(CLI::Range(1, 99))
      ->needs(answers);
  app.add_option("--seed", options.seed, "of the shuffle");
  CLI11_PARSE(app, argc, argv);

  std::vector<Drawn> drills;
  bool sound = true;
  for (const std::string& file : options.files) sound = read_drill(file, options.rungs, drills) && sound;
  for (const Drawn& drill : drills) remark(drill);
  std::error_code failed;
  std::filesystem::create_directories(options.out, failed);
  if (failed) {
    std::fprintf(stderr, "%s: cannot be made\n", options.out.c_str());
    return 2;
  }
  if (options.draw > 0) {
    drills = shuffled(std::move(drills), options.draw, options.seed);
    options.hide_names = true;
    if (!hide_answers(drills, options.answers)) return 2;
  }
  return draw_all(options, drills) && sound ? 0 : 2;
}
