// Writes a sample page to standard output: sample_page [extremes]
#include <iostream>
#include <string_view>

#include "tests/report/sample_page.h"

int main(int count, char** arguments) {
  using namespace lanework::report;
  const bool extremes = count > 1 && std::string_view(arguments[1]) == "extremes";
  std::cout << to_html(extremes ? page_of_extremes() : sample_page(), chart_bundle());
  return std::cout.good() ? 0 : 1;
}
