#include "app/report/blocks.h"

#include <algorithm>

namespace lanework::report {
namespace {

Attributes class_of(bool numeric) { return numeric ? Attributes{{"class", "number"}} : Attributes{}; }

constexpr std::size_t kShortRows = 12;
constexpr std::size_t kSlimColumns = 7;
constexpr std::ptrdiff_t kSlimWords = 2;
constexpr std::size_t kSlimBytes = 32;  // of a row's heading, which keeps its line there
constexpr std::size_t kNarrowColumns = 4;

// How a table may be set: a short one stands whole on a page, and if it is narrow too beside another where there is
// room; a long one of a few columns of numbers stands in two columns on paper.
std::string frame_class(const Table& table) {
  if (table.rows.size() <= kShortRows)
    return table.columns.size() <= kNarrowColumns ? "wide short narrow" : "wide short";
  const auto words =
      std::count_if(table.columns.begin(), table.columns.end(), [](const Column& column) { return !column.numeric; });
  const bool headings_are_short = std::all_of(table.rows.begin(), table.rows.end(), [](const auto& row) {
    return row.empty() || row.front().size() <= kSlimBytes;
  });
  return headings_are_short && words <= kSlimWords && table.columns.size() <= kSlimColumns ? "wide slim" : "wide";
}

void write_row(HtmlWriter& html, const Table& table, const std::vector<std::string>& row) {
  html.open("tr");
  for (std::size_t at = 0; at < std::max(table.columns.size(), row.size()); ++at) {
    const std::string cell = at < row.size() ? row[at] : std::string();
    Attributes attributes = class_of(at < table.columns.size() && table.columns[at].numeric);
    if (at == 0) attributes.emplace_back("scope", "row");
    html.element(at == 0 ? "th" : "td", cell, attributes);
  }
  html.close();
}

// A table wider than a phone scrolls in its own frame, which the keyboard can reach.
void write_table(HtmlWriter& html, const Table& table, const Speaker& speaker) {
  html.open("div",
            {{"class", frame_class(table)}, {"role", "region"}, {"aria-label", table.caption}, {"tabindex", "0"}});
  html.open("table");
  html.element("caption", table.caption);
  html.open("thead");
  html.open("tr");
  for (const Column& column : table.columns) {
    Attributes attributes = class_of(column.numeric);
    attributes.emplace_back("scope", "col");
    html.element("th", column.heading, attributes);
  }
  html.close();
  html.close();
  html.open("tbody");
  for (const std::vector<std::string>& row : table.rows) write_row(html, table, row);
  if (table.rows.empty()) {
    html.open("tr");
    html.element("td", speaker.say(Words{"Nothing to show.", "Nada que mostrar."}),
                 {{"colspan", std::to_string(std::max<std::size_t>(table.columns.size(), 1))}});
    html.close();
  }
  html.close();
  html.close();
  html.close();
}

struct BlockWriter {
  HtmlWriter& html;
  Speaker speaker;

  void operator()(const Paragraph& block) const { html.element("p", block.text); }

  void operator()(const List& block) const {
    if (block.items.empty()) return;
    html.open("ul");
    for (const std::string& item : block.items) html.element("li", item);
    html.close();
  }

  void operator()(const Notice& block) const {
    html.open("p", {{"class", "notice"}, {"role", "note"}});
    html.element("strong", block.lead);
    html.text(block.text);
    html.close();
  }

  void operator()(const Table& block) const { write_table(html, block, speaker); }

  // The table stands open in the page, so that it is there without scripts and on paper; scripts fold it away.
  void operator()(const Chart& block) const {
    html.open("figure", {{"data-chart", block.id}});
    html.open("figcaption");
    html.element("p", block.title, {{"class", "title"}});
    html.element("p", block.says, {{"class", "says"}});
    html.close();
    html.element("div", "", {{"class", "drawing"}});
    html.close();
    html.open("details", {{"class", block.numbers_at_the_end ? "numbers elsewhere" : "numbers"}, {"open", "open"}});
    html.element("summary", speaker.say(Words{"The numbers", "Los números"}));
    write_table(html, block.table, speaker);
    html.close();
  }
};

}  // namespace

void write_block(HtmlWriter& html, const Block& block, Language language) {
  std::visit(BlockWriter{html, Speaker(language)}, block);
}

}  // namespace lanework::report
