#include "app/report/page_node.h"

#include "app/report/script_json.h"

namespace lanework::report {
namespace {

Node text_node(const std::string& text) { return Node::make_text(text); }

Node texts_node(const std::vector<std::string>& texts) {
  Node out = Node::make_array();
  for (const std::string& text : texts) out.items.push_back(text_node(text));
  return out;
}

Node kind_of(const char* kind) {
  Node out = Node::make_table();
  out.set("kind", Node::make_text(kind));
  return out;
}

struct BlockNode {
  Node operator()(const Paragraph& block) const {
    Node out = kind_of("paragraph");
    out.set("text", text_node(block.text));
    return out;
  }
  Node operator()(const List& block) const {
    Node out = kind_of("list");
    out.set("items", texts_node(block.items));
    return out;
  }
  Node operator()(const Notice& block) const {
    Node out = kind_of("notice");
    out.set("lead", text_node(block.lead));
    out.set("text", text_node(block.text));
    return out;
  }
  Node operator()(const Table& block) const {
    Node out = kind_of("table");
    out.set("caption", text_node(block.caption));
    Node columns = Node::make_array();
    for (const Column& column : block.columns) {
      Node one = Node::make_table();
      one.set("heading", text_node(column.heading));
      one.set("numeric", Node::make_boolean(column.numeric));
      columns.items.push_back(std::move(one));
    }
    out.set("columns", std::move(columns));
    Node rows = Node::make_array();
    for (const auto& row : block.rows) {
      Node cells = texts_node(row);
      while (cells.items.size() < block.columns.size()) cells.items.push_back(Node::make_text(""));
      rows.items.push_back(std::move(cells));
    }
    out.set("rows", std::move(rows));
    return out;
  }
  Node operator()(const Chart& block) const {
    Node out = kind_of("chart");
    out.set("id", Node::make_text(block.id));
    out.set("title", text_node(block.title));
    out.set("says", text_node(block.says));
    out.set("data", to_node(block.id, block.data));
    out.set("table", (*this)(block.table));
    if (block.numbers_at_the_end) out.set("numbers_at_the_end", Node::make_boolean(true));
    return out;
  }
};

}  // namespace

Node to_node(const Page& page) {
  Node out = Node::make_table();
  out.set("title", text_node(page.title));
  out.set("club", text_node(page.club));
  out.set("season", text_node(page.season));
  out.set("as_of", text_node(page.as_of));
  out.set("language", Node::make_text(language_tag(page.language)));
  Node sections = Node::make_array();
  for (const Section& section : page.sections) {
    Node one = Node::make_table();
    one.set("heading", text_node(section.heading));
    one.set("level", Node::make_integer(section.level));
    Node blocks = Node::make_array();
    for (const Block& block : section.blocks) blocks.items.push_back(std::visit(BlockNode{}, block));
    one.set("blocks", std::move(blocks));
    sections.items.push_back(std::move(one));
  }
  out.set("sections", std::move(sections));
  clean_texts(out);
  return out;
}

}  // namespace lanework::report
