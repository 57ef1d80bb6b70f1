#include "app/report/html_writer.h"

#include "app/draw/foreign_text.h"

namespace lanework::report {
namespace {

void append_escaped(std::string& out, const std::string& foreign) {
  for (const char c : draw::clean_text(foreign, draw::kAnyLength)) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out += c;
    }
  }
}

}  // namespace

void HtmlWriter::tag_with(std::string_view tag, const Attributes& attributes, std::string_view end) {
  out_ += '<';
  out_ += tag;
  for (const auto& [name, value] : attributes) {
    out_ += ' ';
    out_ += name;
    out_ += "=\"";
    append_escaped(out_, value);
    out_ += '"';
  }
  out_ += end;
}

void HtmlWriter::open(std::string_view tag, const Attributes& attributes) {
  tag_with(tag, attributes, ">\n");
  open_.emplace_back(tag);
}

void HtmlWriter::close() {
  out_ += "</" + open_.back() + ">\n";
  open_.pop_back();
}

void HtmlWriter::text(const std::string& foreign) { append_escaped(out_, foreign); }

void HtmlWriter::element(std::string_view tag, const std::string& foreign, const Attributes& attributes) {
  tag_with(tag, attributes, ">");
  append_escaped(out_, foreign);
  out_ += "</";
  out_ += tag;
  out_ += ">\n";
}

void HtmlWriter::hollow(std::string_view tag, const Attributes& attributes) { tag_with(tag, attributes, " />\n"); }

void HtmlWriter::raw(std::string_view tag, std::string_view content, const Attributes& attributes) {
  tag_with(tag, attributes, ">");
  out_ += content;
  out_ += "</";
  out_ += tag;
  out_ += ">\n";
}

std::string HtmlWriter::finish() {
  while (!open_.empty()) close();
  return std::move(out_);
}

}  // namespace lanework::report
