// Writes a sample card or slip to standard output, for tests that compare one run with another:
// draw_sample card|slip pdf|svg|png [drills] [letter]
#include <cstdlib>
#include <iostream>
#include <string>
#include <vector>

#include "tests/draw/sample_card.h"

int main(int count, char** arguments) {
  using namespace lanework;
  using namespace lanework::draw;
  const std::vector<std::string> words(arguments + 1, arguments + count);
  if (words.size() < 2) return 2;
  const int drills = words.size() > 2 ? std::atoi(words[2].c_str()) : 14;
  const Paper paper = words.size() > 3 ? Paper::kUsLetter : Paper::kA4;
  const Result<Pages> pages =
      words[0] == "card" ? draw_card(sample_card(drills), paper) : draw_slip(sample_slip(), paper);
  if (!pages) return 1;
  const Result<std::string> bytes = words[1] == "pdf"   ? write_pdf(pages.value())
                                    : words[1] == "svg" ? write_svg(pages.value(), 0)
                                                        : write_png(pages.value(), 0);
  if (!bytes) return 1;
  std::cout << bytes.value();
  return 0;
}
