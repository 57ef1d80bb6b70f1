#include "app/report/page.h"

#include <algorithm>
#include <set>

#include "app/report/blocks.h"
#include "app/report/html_writer.h"
#include "app/report/script_json.h"
#include "app/report/style_tokens.h"

namespace lanework::report {
namespace {

constexpr int kDeepest = 3;
constexpr std::size_t kFewSections = 2;  // so many need no list of contents

// Levels that never skip one, and ids that stand once.
Page put_in_order(Page page) {
  int above = 0;
  std::set<std::string> taken;
  for (Section& section : page.sections) {
    section.level = std::clamp(section.level, 1, std::min(above + 1, kDeepest));
    above = section.level;
    for (Block& block : section.blocks) {
      auto* chart = std::get_if<Chart>(&block);
      if (chart == nullptr) continue;
      const std::string wanted = chart->id;
      for (int number = 2; !taken.insert(chart->id).second; ++number) chart->id = wanted + "-" + std::to_string(number);
    }
  }
  return page;
}

std::string anchor(std::size_t section) { return "section-" + std::to_string(section + 1); }

// Nothing may be fetched, nothing run but our own script. Drawings carry style of their own, which can fetch nothing.
std::string policy(const Script& bundle) {
  return "default-src 'none'; script-src '" + std::string(bundle.digest) +
         "'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'";
}

void write_head(HtmlWriter& html, const Page& page, const Script& bundle) {
  html.open("head");
  html.hollow("meta", {{"charset", "utf-8"}});
  html.hollow("meta", {{"http-equiv", "Content-Security-Policy"}, {"content", policy(bundle)}});
  html.hollow("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
  html.hollow("meta", {{"name", "color-scheme"}, {"content", "light"}});
  html.element("title", page.title + ", " + page.club + ", " + page.season);
  html.raw("style", style_tokens() + std::string(page_type()) + "\n" + std::string(page_style()));
  html.close();
}

void write_contents(HtmlWriter& html, const Page& page) {
  const auto parts = std::count_if(page.sections.begin(), page.sections.end(),
                                   [](const Section& section) { return section.level == 1; });
  if (parts <= static_cast<std::ptrdiff_t>(kFewSections)) return;
  html.open("nav", {{"aria-label", Speaker(page.language).say(Words{"Contents", "Contenido"})}});
  html.open("ul");
  for (std::size_t at = 0; at < page.sections.size(); ++at) {
    if (page.sections[at].level > 1) continue;
    html.open("li");
    html.element("a", page.sections[at].heading, {{"href", "#" + anchor(at)}});
    html.close();
  }
  html.close();
  html.close();
}

void write_body(HtmlWriter& html, const Page& page) {
  html.open("header");
  html.element("p", page.club, {{"class", "club"}});
  html.element("h1", page.title);
  html.element("p", Speaker(page.language).say({"{}. As known on {}.", "{}. A fecha de {}."}, page.season, page.as_of),
               {{"class", "facts"}});
  html.close();
  write_contents(html, page);
  html.open("main");
  for (std::size_t at = 0; at < page.sections.size(); ++at) {
    const Section& section = page.sections[at];
    html.element("h" + std::to_string(section.level + 1), section.heading, {{"id", anchor(at)}});
    for (const Block& block : section.blocks) write_block(html, block, page.language);
  }
  html.close();
}

std::string charts_json(const Page& page) {
  Node charts = Node::make_array();
  for (const Section& section : page.sections) {
    for (const Block& block : section.blocks) {
      if (const auto* chart = std::get_if<Chart>(&block)) charts.items.push_back(to_node(chart->id, chart->data));
    }
  }
  return script_json(charts);
}

}  // namespace

std::string to_html(const Page& page, const Script& bundle) {
  const Page ordered = put_in_order(page);
  HtmlWriter html;
  html.open("html", {{"lang", language_tag(ordered.language)}});
  write_head(html, ordered, bundle);
  html.open("body");
  write_body(html, ordered);
  html.raw("script", charts_json(ordered), {{"type", "application/json"}, {"id", "report-charts"}});
  html.raw("script", bundle.text);
  return html.finish();
}

}  // namespace lanework::report
