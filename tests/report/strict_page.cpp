#include "tests/report/strict_page.h"

#include <libxml/parser.h>
#include <libxml/xpath.h>

#include <stdexcept>
#include <utility>

namespace lanework::report {
namespace {

using Found = std::unique_ptr<xmlXPathObject, decltype(&xmlXPathFreeObject)>;

template <class Read>
std::vector<std::string> each(xmlDoc* document, const std::string& path, Read read) {
  const std::unique_ptr<xmlXPathContext, decltype(&xmlXPathFreeContext)> context(xmlXPathNewContext(document),
                                                                                 &xmlXPathFreeContext);
  const Found found(xmlXPathEvalExpression(reinterpret_cast<const xmlChar*>(path.c_str()), context.get()),
                    &xmlXPathFreeObject);
  if (!found || found->type != XPATH_NODESET) throw std::invalid_argument("no path to elements: " + path);
  std::vector<std::string> values;
  const int count = found->nodesetval == nullptr ? 0 : found->nodesetval->nodeNr;
  for (int at = 0; at < count; ++at) values.push_back(read(found->nodesetval->nodeTab[at]));
  return values;
}

std::string content_of(xmlNode* node) {
  xmlChar* content = xmlNodeGetContent(node);
  std::string text = reinterpret_cast<const char*>(content);
  xmlFree(content);
  return text;
}

}  // namespace

StrictPage::StrictPage(std::shared_ptr<void> document) : document_(std::move(document)) {}

std::optional<StrictPage> StrictPage::read(const std::string& html) {
  xmlDoc* document = xmlReadMemory(html.data(), static_cast<int>(html.size()), "page", "UTF-8",
                                   XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING | XML_PARSE_HUGE);
  if (document == nullptr) return std::nullopt;
  return StrictPage(std::shared_ptr<xmlDoc>(document, &xmlFreeDoc));
}

std::size_t StrictPage::count(const std::string& path) const { return texts(path).size(); }

std::vector<std::string> StrictPage::texts(const std::string& path) const {
  return each(static_cast<xmlDoc*>(document_.get()), path, content_of);
}

std::string StrictPage::text(const std::string& path) const {
  const std::vector<std::string> found = texts(path);
  return found.size() == 1 ? found.front() : std::to_string(found.size()) + " of " + path;
}

std::vector<std::string> StrictPage::names(const std::string& path) const {
  return each(static_cast<xmlDoc*>(document_.get()), path,
              [](xmlNode* node) { return std::string(reinterpret_cast<const char*>(node->name)); });
}

}  // namespace lanework::report
