// Texts from outside come back from a strict reading of the page as they went in (cleaned as on the card), wherever
// they stand, and none of them becomes markup.
#include <gtest/gtest.h>

#include "app/draw/foreign_text.h"
#include "app/report/page.h"
#include "app/report/script_json.h"
#include "tests/report/any_text.h"
#include "tests/report/strict_page.h"

namespace lanework::report {
namespace {

constexpr Script kNoScript{"void 0;", "sha256-none"};

Page page_of(const std::string& text) {
  const Table table{text, {{text}, {text, true}}, {{text, text}}};
  const Chart chart{text, text, text, Shares{{{text, {{text, 3}}}}}, table};
  return {text,
          text,
          text,
          text,
          Language::kEnglish,
          {{text, 1, {Paragraph{text}, List{{text}}, Notice{text, text}, table, chart}}, {text, 1, {}}, {text, 1, {}}}};
}

// Where a text stands alone: every one of these paths must give back that text.
const std::vector<std::string> kPlaces = {"//header/h1",
                                          "//header/p[@class='club']",
                                          "//h2",
                                          "//nav//a",
                                          "//main/p[not(@class)]",
                                          "//li[not(a)]",
                                          "//strong",
                                          "//caption",
                                          "//thead//th",
                                          "//tbody//th",
                                          "//td",
                                          "//p[@class='title']",
                                          "//p[@class='says']",
                                          "//div/@aria-label",
                                          "//figure/@data-chart"};

void expect_comes_back(const std::string& text) {
  const std::optional<StrictPage> page = StrictPage::read(to_html(page_of(text), kNoScript));
  RC_ASSERT(page.has_value());
  const std::string cleaned = draw::clean_text(text, draw::kAnyLength);
  for (const std::string& place : kPlaces) {
    const std::vector<std::string> found = page->texts(place);
    RC_ASSERT(!found.empty());
    for (const std::string& one : found) RC_ASSERT(one == cleaned);
  }
  RC_ASSERT(page->text("//title") == draw::clean_text(text + ", " + text + ", " + text, draw::kAnyLength));
  const Result<Document> json = parse_json("page", R"({"charts":)" + page->text("//script[@id='report-charts']") + "}");
  RC_ASSERT(json.ok());
  const Node& chart = json.value().root.find("charts")->items.front();
  RC_ASSERT(chart.find("id")->text == cleaned);
  RC_ASSERT(chart.find("rows")->items.front().find("label")->text == cleaned);
}

TEST(ForeignText, ComesBackFromAStrictReading) {
  EXPECT_TRUE(rc::check([] { expect_comes_back(*any_text()); }));
}

std::vector<std::string> elements_of(const std::string& text) {
  const std::optional<StrictPage> page = StrictPage::read(to_html(page_of(text), kNoScript));
  return page ? page->names("//* | //@*") : std::vector<std::string>{"not well formed"};
}

TEST(ForeignText, NeverBecomesMarkup) {
  const std::vector<std::string> plain = elements_of("plain");
  ASSERT_GT(plain.size(), 80U);
  for (const char* text :
       {"<script>alert(1)</script>", "</script><script>alert(1)</script>", "\" onload=\"alert(1)", "' onclick='x",
        "</style><b>", "</title><img>", "<!-- ", "-->", "]]>", "<![CDATA[", "&#60;b&#62;", "<?php ?>"}) {
    EXPECT_EQ(elements_of(text), plain) << text;
  }
}

TEST(ForeignText, InDataCannotEndTheScript) {
  EXPECT_TRUE(rc::check([] {
    Node table = Node::make_table();
    table.set("text", Node::make_text(*any_text()));
    const std::string json = script_json(table);
    for (const char letter : {'<', '>', '&'}) RC_ASSERT(json.find(letter) == std::string::npos);
  }));
}

TEST(ForeignText, LosesWhatWouldTurnTheReadingDirection) {
  const std::string html = to_html(page_of("a\u202Eb\u2066c\u200Fd"), kNoScript);
  for (const char* mark : {"\u202E", "\u2066", "\u200F", "\\u202e", "\\u2066", "\\u200f"}) {
    EXPECT_EQ(html.find(mark), std::string::npos);
  }
  EXPECT_NE(html.find("<h1>abcd</h1>"), std::string::npos);
}

TEST(ForeignText, IsNotCutHoweverLong) {
  const std::string text(5000, 'x');
  EXPECT_NE(to_html(page_of(text), kNoScript).find("<h1>" + text + "</h1>"), std::string::npos);
}

}  // namespace
}  // namespace lanework::report
