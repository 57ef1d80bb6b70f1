// The page's structure, and that nothing in it comes from elsewhere.
#include "app/report/page.h"

#include <gtest/gtest.h>

#include <regex>

#include "core/base/document.h"
#include "tests/report/sample_page.h"
#include "tests/report/strict_page.h"

namespace lanework::report {
namespace {

constexpr Script kNoScript{"void 0;", "sha256-none"};

StrictPage read(const Page& page) {
  const std::optional<StrictPage> read = StrictPage::read(to_html(page, kNoScript));
  if (!read) throw std::runtime_error("the page is not well formed");
  return *read;
}

Page page_with(std::vector<Section> sections) {
  return {"Report", "Quillmere Juniors", "2025/26", "today", Language::kEnglish, std::move(sections)};
}

Chart small_chart(const std::string& id) {
  return {id,
          "Title",
          "Says.",
          Shares{{{"Kites", {{"done", 3}}}}},
          {"Caption", {{"Squad"}, {"Done", true}}, {{"Kites", "3"}}}};
}

TEST(Page, SaysWhatItIs) {
  const StrictPage page = read(sample_page());
  EXPECT_EQ(page.text("/html/@lang"), "en");
  EXPECT_EQ(page.text("/html/head/title"), "The season's report, Quillmere Juniors, Season 2025/26");
  EXPECT_EQ(page.text("//h1"), "The season's report");
  EXPECT_EQ(page.text("//header/p[@class='facts']"), "Season 2025/26. As known on Sunday 31 May 2026, 20:10.");
  EXPECT_EQ(page.text("/html/head/meta[1]/@charset"), "utf-8");
}

TEST(Page, HeadingsStepDownOneAtATime) {
  const StrictPage page =
      read(page_with({{"deep at once", 3, {}}, {"again", 3, {}}, {"third", 7, {}}, {"fourth", 9, {}}, {"up", -2, {}}}));
  EXPECT_EQ(page.names("//h1 | //h2 | //h3 | //h4 | //h5"),
            (std::vector<std::string>{"h1", "h2", "h3", "h4", "h4", "h2"}));
}

TEST(Page, ContentsLeadToTheParts) {
  const StrictPage page = read(sample_page());
  const std::vector<std::string> links = page.texts("//nav//a/@href");
  ASSERT_EQ(links.size(), page.count("//h2"));
  for (std::size_t at = 0; at < links.size(); ++at) {
    EXPECT_EQ(page.text("//h2[@id='" + links[at].substr(1) + "']"), page.texts("//nav//a")[at]);
  }
  EXPECT_EQ(read(page_with({{"one", 1, {}}, {"two", 1, {}}})).count("//nav"), 0U);
}

TEST(Page, EveryChartHasItsWordsAndItsTable) {
  for (const Page& sample : {sample_page(), page_of_extremes()}) {
    const StrictPage page = read(sample);
    const std::size_t charts = page.count("//figure");
    EXPECT_GT(charts, 7U);
    EXPECT_EQ(page.count("//figure[@data-chart]/figcaption[p[@class='title'] and p[@class='says']]"), charts);
    EXPECT_EQ(page.count("//figure/div[@class='drawing']"), charts);
    EXPECT_EQ(page.count("//figure/following-sibling::*[1][self::details[@open]/div/table]"), charts);
  }
}

TEST(Page, TablesNameTheirRowsAndColumns) {
  const StrictPage page = read(page_of_extremes());
  EXPECT_EQ(page.count("//table"), page.count("//table/caption"));
  EXPECT_EQ(page.count("//thead/tr/th[not(@scope='col')]"), 0U);
  EXPECT_EQ(page.count("//tbody/tr/th[not(@scope='row')]"), 0U);
  EXPECT_EQ(page.count("//tbody/tr[th]"), page.count("//tbody/tr/th"));
  EXPECT_EQ(page.count("//tbody/tr[not(th)]"), 6U);  // those of the six charts without data
  EXPECT_EQ(page.count("//div[@role='region'][@tabindex='0'][@aria-label]/table"), page.count("//table"));
}

TEST(Page, NumbersAreSetApartAndNoCellIsLost) {
  const Table table{
      "Caption", {{"Squad"}, {"Hours", true}, {"Word"}}, {{"Kites", "12"}, {"Herons", "7", "few", "one more"}}};
  const StrictPage page = read(page_with({{"Part", 1, {table}}}));
  EXPECT_EQ(page.texts("//tbody//*[@class='number']"), (std::vector<std::string>{"12", "7"}));
  EXPECT_EQ(page.texts("//thead//*[@class='number']"), std::vector<std::string>{"Hours"});
  EXPECT_EQ(page.texts("//tbody/tr[1]/*"), (std::vector<std::string>{"Kites", "12", ""}));
  EXPECT_EQ(page.texts("//tbody/tr[2]/*"), (std::vector<std::string>{"Herons", "7", "few", "one more"}));
}

TEST(Page, LongAndSlimTablesAreMarkedForPaper) {
  const auto frame = [](std::size_t rows, std::size_t columns, bool numeric = true) {
    Table table{"Caption", std::vector<Column>(columns, Column{"x", numeric}),
                std::vector<std::vector<std::string>>(rows)};
    return read(page_with({{"Part", 1, {table}}})).text("//div[table]/@class");
  };
  EXPECT_EQ(frame(12, 9), "wide short");
  EXPECT_EQ(frame(12, 4), "wide short narrow");
  EXPECT_EQ(frame(13, 7), "wide slim");
  EXPECT_EQ(frame(13, 8), "wide");
  EXPECT_EQ(frame(13, 4, false), "wide");  // words need the whole width
  EXPECT_EQ(frame(13, 0), "wide slim");
}

TEST(Page, ParagraphsListsAndNotices) {
  const StrictPage page =
      read(page_with({{"Part", 1, {Paragraph{"a"}, List{{"b", "c"}}, List{}, Notice{"now", "do it"}}}}));
  EXPECT_EQ(page.texts("//main/p[not(@class)]"), std::vector<std::string>{"a"});
  EXPECT_EQ(page.texts("//main/ul/li"), (std::vector<std::string>{"b", "c"}));
  EXPECT_EQ(page.count("//main/ul"), 1U);
  EXPECT_EQ(page.text("//main/p[@class='notice']/strong"), "now");
  EXPECT_NE(page.text("//main/p[@class='notice']").find("do it"), std::string::npos);
}

TEST(Page, ChartsAreFoundByIdsThatStandOnce) {
  const StrictPage page = read(page_with(
      {{"Part", 1, {small_chart("same"), small_chart("same"), small_chart("same-2"), small_chart("other")}}}));
  const std::vector<std::string> ids = {"same", "same-2", "same-2-2", "other"};
  EXPECT_EQ(page.texts("//figure/@data-chart"), ids);
  const Result<Document> json = parse_json("page", R"({"charts":)" + page.text("//script[@id='report-charts']") + "}");
  ASSERT_TRUE(json);
  std::vector<std::string> drawn;
  for (const Node& chart : json.value().root.find("charts")->items) drawn.push_back(chart.find("id")->text);
  EXPECT_EQ(drawn, ids);
}

TEST(Page, OnlyItsOwnScriptMayRun) {
  const StrictPage page = read(sample_page());
  EXPECT_EQ(page.text("//meta[@http-equiv='Content-Security-Policy']/@content"),
            "default-src 'none'; script-src 'sha256-none'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; "
            "form-action 'none'");
  EXPECT_EQ(page.count("//script"), 2U);
  EXPECT_EQ(page.text("//script[not(@type)]"), "void 0;");
  EXPECT_EQ(page.count("//meta[@http-equiv]/preceding-sibling::*"), 1U);  // the policy holds for all that follows
}

// 'http' stands in the page as the name of a kind of meta element and in the names of the XML namespaces that a script
// must give to make an SVG; neither is fetched.
TEST(Page, NothingComesFromElsewhere) {
  for (const Page& sample : {sample_page(), page_of_extremes()}) {
    std::string html = to_html(sample, chart_bundle());
    EXPECT_GT(chart_bundle().text.size(), 50000U);
    EXPECT_NE(html.find(chart_bundle().text), std::string::npos);
    html = std::regex_replace(
        html,
        std::regex(
            R"(http-equiv|http://www\.w3\.org/(2000/svg|2000/xmlns/|1999/xhtml|1999/xlink|XML/1998/namespace)(?="))"),
        "");
    for (const char* word : {"http", "src=", "@import", "srcset", "<link", "<img", "<iframe", "XMLHttpRequest",
                             "WebSocket", "importScripts", "sendBeacon"}) {
      EXPECT_EQ(html.find(word), std::string::npos) << word << ": " << html.substr(html.find(word), 80);
    }
    for (std::size_t at = html.find("url("); at != std::string::npos; at = html.find("url(", at + 1)) {
      const std::string target = html.substr(at + 4, 12);
      EXPECT_TRUE(target.starts_with("data:font/") || target.starts_with("#") || target.starts_with("${")) << target;
    }
  }
}

TEST(Page, TheScriptCannotEndItsElement) {
  const std::string_view script = chart_bundle().text;
  EXPECT_EQ(script.find("</script"), std::string_view::npos);
  EXPECT_EQ(script.find("<!--"), std::string_view::npos);
  EXPECT_TRUE(chart_bundle().digest.starts_with("sha256-"));
  EXPECT_EQ(chart_bundle().digest.size(), 51U);
}

TEST(Page, TheSamePageGivesTheSameBytes) {
  EXPECT_EQ(to_html(sample_page(), chart_bundle()), to_html(sample_page(), chart_bundle()));
  EXPECT_NE(to_html(sample_page(), chart_bundle()), to_html(page_of_extremes(), chart_bundle()));
}

}  // namespace
}  // namespace lanework::report
