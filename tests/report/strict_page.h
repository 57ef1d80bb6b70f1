// Reads a page as strictly as there is: as XML, where one stray '<' or unclosed element fails the whole. What it finds
// is asked for by XPath.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace lanework::report {

class StrictPage {
 public:
  static std::optional<StrictPage> read(const std::string& html);

  [[nodiscard]] std::size_t count(const std::string& path) const;
  // Texts of the elements or attributes found, in the order of the page.
  [[nodiscard]] std::vector<std::string> texts(const std::string& path) const;
  // Of the only one found; otherwise a text that says how many there are.
  [[nodiscard]] std::string text(const std::string& path) const;
  // Names of the elements found.
  [[nodiscard]] std::vector<std::string> names(const std::string& path) const;

 private:
  explicit StrictPage(std::shared_ptr<void> document);
  std::shared_ptr<void> document_;  // the tree of libxml2
};

}  // namespace lanework::report
