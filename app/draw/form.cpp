#include "app/draw/form.h"

#include <algorithm>

#include "app/draw/card_layout.h"
#include "app/draw/clean_matter.h"
#include "app/draw/lists.h"
#include "app/draw/pango_text.h"
#include "app/draw/pen.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr double kWritingLine = 20;
constexpr double kGapBelowField = 5;
constexpr double kGapBelowSection = 9;
constexpr double kBox = 8;
constexpr double kBoxIndent = 14;
constexpr int kMostLines = 60;
constexpr int kFootLines = 3;

// Height of one field; without a page the pen only measures.
double draw_field(const FormField& field, Point at, double width, const Pen& pen) {
  const Setting body{TextStyle::kPocket, kMostLines, Ink::kInk, Align::kLeft};
  double y = at.y;
  y += pen.text({at.x, y}, width, {TextStyle::kNote, 2, Ink::kSoft, Align::kLeft}, field.label);
  for (const std::string& paragraph : field.known) y += pen.text({at.x, y}, width, body, paragraph);
  if (!field.known.empty()) return y - at.y + kGapBelowField;
  for (const std::string& words : field.boxes) {
    pen.rectangle({at.x + 1, y + 3, kBox, kBox}, Ink::kInk, 0.9);
    y += 2 + pen.text({at.x + kBoxIndent, y}, width - kBoxIndent, body, words);
  }
  if (!field.boxes.empty()) return y - at.y + kGapBelowField;
  for (int line = 0; line < field.lines; ++line) {
    y += line == 0 ? kWritingLine - 6 : kWritingLine;
    pen.line({at.x, y}, {at.x + width, y}, 0.7, Ink::kSoft);
  }
  return y - at.y + kGapBelowField;
}

// A field, or two halves that stand beside each other.
struct FormRow {
  const FormField* left = nullptr;
  const FormField* right = nullptr;
};

std::vector<FormRow> rows_of(const FormSection& section) {
  std::vector<FormRow> rows;
  for (const FormField& field : section.fields) {
    const bool joins = field.half && !rows.empty() && rows.back().left->half && rows.back().right == nullptr;
    if (joins) {
      rows.back().right = &field;
    } else {
      rows.push_back({&field, nullptr});
    }
  }
  return rows;
}

double draw_row(const FormRow& row, Point at, double width, const Pen& pen) {
  const double half = (width - kGutter) / 2;
  const double left = draw_field(*row.left, at, row.left->half ? half : width, pen);
  if (row.right == nullptr) return left;
  return std::max(left, draw_field(*row.right, {at.x + half + kGutter, at.y}, half, pen));
}

class FormLayout {
 public:
  FormLayout(const FormMatter& matter, const Sheet& sheet, const TextMeasure& measure)
      : matter_(matter), content_(content_of(sheet)), measure_(measure) {}

  Result<std::vector<Page>> lay_out() {
    new_page();
    for (const FormSection& section : matter_.sections) {
      if (!put_section(section)) {
        return Fault{FaultCode::kOutOfRange, {"", 0, 0, section.heading}, "a text longer than a page", "what fits", {}};
      }
    }
    end_page();
    number_pages();
    return std::move(pages_);
  }

 private:
  const FormMatter& matter_;
  Box content_;
  const TextMeasure& measure_;
  std::vector<Page> pages_;
  double y_ = 0;

  Pen pen() { return {measure_, &pages_.back()}; }

  void new_page() {
    pages_.emplace_back();
    const double width = content_.width;
    y_ = content_.y;
    const bool first = pages_.size() == 1;
    y_ += pen().text({content_.x, y_}, width * 0.75, {first ? TextStyle::kTitle : TextStyle::kName, 1}, matter_.title);
    y_ += pen().text({content_.x, y_}, width, {TextStyle::kBodyBold, 3}, matter_.for_whom);
    y_ += pen().text({content_.x, y_}, width, {TextStyle::kBody, 2, Ink::kSoft}, matter_.facts);
    pen().region("title", {content_.x, content_.y, width, y_ - content_.y});
    y_ += 6;
  }

  void end_page() {
    const double foot = draw_foot({}, Pen(measure_, nullptr));
    if (y_ + foot > content_.bottom()) new_page();
    draw_foot({content_.x, content_.bottom() - foot}, pen());
    pen().region("foot", {content_.x, content_.bottom() - foot, content_.width, foot});
  }

  double heading(const FormSection& section, Point at, const Pen& pen) {
    pen.line({at.x, at.y}, {at.x + content_.width, at.y}, kChalkLine, Ink::kChalk);
    double y = at.y + 4;
    y += flow_heading(section.heading, {at.x, y}, content_.width, false, pen);
    y += pen.text({at.x, y}, content_.width, {TextStyle::kNote, 3, Ink::kSoft}, section.note);
    return y - at.y + 4;
  }

  // False where a row is higher than a page.
  bool put_section(const FormSection& section) {
    const Pen ruler(measure_, nullptr);
    const std::vector<FormRow> rows = rows_of(section);
    const double head = heading(section, {}, ruler);
    const double first = rows.empty() ? 0 : draw_row(rows.front(), {}, content_.width, ruler);
    double whole = head;
    for (const FormRow& row : rows) whole += draw_row(row, {}, content_.width, ruler);
    const bool parted = section.together && y_ + whole > content_.bottom();
    if (section.new_page) end_page();
    if (section.new_page || parted || y_ + head + first > content_.bottom()) new_page();
    y_ += heading(section, {content_.x, y_}, pen());
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const double height = draw_row(rows[i], {}, content_.width, ruler);
      if (y_ + height > content_.bottom()) new_page();
      if (y_ + height > content_.bottom()) return false;
      draw_row(rows[i], {content_.x, y_}, content_.width, pen());
      pen().region(section.heading + " " + std::to_string(i), {content_.x, y_, content_.width, height});
      y_ += height;
    }
    y_ += kGapBelowSection - kGapBelowField;
    return true;
  }

  double draw_foot(Point at, const Pen& pen) {
    double y = at.y + 6;
    pen.line({at.x, at.y + 2}, {at.x + content_.width, at.y + 2}, kChalkLine, Ink::kChalk);
    for (const std::string& line : matter_.foot) {
      y += pen.text({at.x, y}, content_.width, {TextStyle::kNote, kFootLines}, line);
    }
    return y - at.y;
  }

  void number_pages() {
    if (pages_.size() < 2) return;
    for (std::size_t i = 0; i < pages_.size(); ++i) {
      const double x = content_.x + content_.width * 0.75;
      Pen(measure_, &pages_[i])
          .text({x, content_.y}, content_.right() - x, {TextStyle::kBody, 1, Ink::kSoft, Align::kRight},
                "page " + std::to_string(i + 1) + " of " + std::to_string(pages_.size()));
    }
  }
};

}  // namespace

Result<Pages> draw_form(const FormMatter& matter, Paper paper) {
  const FormMatter clean = cleaned(matter);
  const Sheet sheet = sheet_of(paper);
  auto sides = FormLayout(clean, sheet, PangoMeasure()).lay_out();
  if (!sides) return sides.faults();
  return Pages{sheet.width, sheet.height, clean.title, clean.date_iso + "T00:00:00Z", std::move(sides).value()};
}

}  // namespace lanework::draw
