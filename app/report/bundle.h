// What a page carries in itself, embedded in the program when it is built (tools/bundle_charts.mjs).
#pragma once

#include <string_view>

namespace lanework::report {

struct Script {
  std::string_view text;
  std::string_view digest;  // 'sha256-...' of the text: the page's policy allows this script and no other
};

Script chart_bundle();          // web/charts/, bundled and minified
std::string_view page_style();  // page.css
std::string_view page_type();   // the faces of B612 as style rules that hold their data

}  // namespace lanework::report
