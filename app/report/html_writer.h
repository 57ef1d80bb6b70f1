// Writes HTML that is well-formed XML too: every text cleaned and escaped, every element closed, so that a strict
// reader of either gets back what was written.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace lanework::report {

using Attributes = std::vector<std::pair<std::string_view, std::string>>;

class HtmlWriter {
 public:
  void open(std::string_view tag, const Attributes& attributes = {});
  void close();  // the innermost that is open
  void text(const std::string& foreign);
  // An element that holds a text and nothing else.
  void element(std::string_view tag, const std::string& foreign, const Attributes& attributes = {});
  // An element that never holds anything: meta.
  void hollow(std::string_view tag, const Attributes& attributes);
  // A script or style: nothing in it is escaped, so it comes from us or through script_json.
  void raw(std::string_view tag, std::string_view content, const Attributes& attributes = {});

  // What was written; everything still open is closed.
  std::string finish();

 private:
  void tag_with(std::string_view tag, const Attributes& attributes, std::string_view end);

  std::string out_ = "<!DOCTYPE html>\n";
  std::vector<std::string> open_;
};

}  // namespace lanework::report
