// A report as one HTML file that needs nothing else: it opens without a network, prints on A4 and Letter, and can be
// read without scripts, since every chart has its numbers beside it as a table. Pure: values in, text out.
//
// All texts may come from outside (names of squads and clubs): they are cleaned as on the card
// (app/draw/foreign_text.h) and escaped here, so callers hand them over as they are, one line each.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "app/report/bundle.h"
#include "app/report/chart_data.h"
#include "core/base/two_languages.h"

namespace lanework::report {

struct Paragraph {
  std::string text;
};

struct List {
  std::vector<std::string> items;
};

// 'Act on this now': the one place where the accent stands.
struct Notice {
  std::string lead;  // a few words, bold
  std::string text;
};

struct Column {
  std::string heading;
  bool numeric = false;  // set flush right, figures under figures
};

struct Table {
  std::string caption;
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;  // the first cell names the row; short rows are filled with empty cells
};

struct Chart {
  std::string id;     // words and hyphens; one that stands twice in a page gets a number behind it
  std::string title;  // over the drawing
  std::string says;   // one sentence: what the drawing shows; under the title, and what a screen reader says of it
  ChartData data;
  Table table;  // the same numbers
  // They stand in a table at the page's end too, beside others': on paper this one is left out.
  bool numbers_at_the_end = false;
};

using Block = std::variant<Paragraph, List, Notice, Table, Chart>;

struct Section {
  std::string heading;
  int level = 1;  // 1: a part of the report, 2 and 3 within it; a level that skips one is raised
  std::vector<Block> blocks;
};

struct Page {
  std::string title;
  std::string club;
  std::string season;
  std::string as_of;                       // 'Sunday 31 May 2026, 20:10'
  Language language = Language::kEnglish;  // of the words, the page's own among them
  std::vector<Section> sections;
};

// The whole file. The same page and script give the same bytes.
std::string to_html(const Page& page, const Script& bundle);

}  // namespace lanework::report
