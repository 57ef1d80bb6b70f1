// A form on paper: what is known stands there, what is not is a line to write on. As many pages as it needs. Like the
// card: finished values in, pages out; texts are drawn as they are.
#pragma once

#include <string>
#include <vector>

#include "app/draw/card.h"

namespace lanework::draw {

struct FormField {
  std::string label;
  std::vector<std::string> known;  // a paragraph each; empty: lines to write on
  int lines = 1;                   // to write on, 1 .. 12
  bool half = false;               // two that follow each other share a row
  std::vector<std::string> boxes;  // to tick, in place of lines
};

struct FormSection {
  std::string heading;
  std::string note;  // may be empty
  std::vector<FormField> fields;
  bool new_page = false;  // begins a page of its own; the foot stands on the one before, too
  bool together = false;  // goes to the next page rather than be parted, where a page can hold it
};

struct FormMatter {
  std::string title;
  std::string for_whom;  // who may have it, over everything
  std::string facts;     // 'Quillmere Juniors, Under-13 Kestrels'
  std::string date_iso;  // written into the PDF
  std::vector<FormSection> sections;
  std::vector<std::string> foot;  // at the end of the last page, and of one that a section ends
};

// Faults: a text that no page can hold.
Result<Pages> draw_form(const FormMatter& matter, Paper paper);

}  // namespace lanework::draw
