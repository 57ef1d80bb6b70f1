#include "app/draw/text_measure.h"

namespace lanework::draw {

std::vector<std::string> cut_texts(const Page& page, const TextMeasure& measure) {
  std::vector<std::string> cut;
  for (const Mark& mark : page.marks) {
    const Text* text = std::get_if<Text>(&mark);
    if (text == nullptr) continue;
    if (measure.extent(text->lead, text->text, text->style, text->box.width, text->max_lines).cut) {
      cut.push_back(text->lead + (text->lead.empty() ? "" : " ") + text->text);
    }
  }
  return cut;
}

}  // namespace lanework::draw
