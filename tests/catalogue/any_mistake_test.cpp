// Mistakes made anywhere at random, in any shipped drill: told, at their place, and never worse.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <sstream>

#include "tests/catalogue/mutate.h"
#include "tests/catalogue/shipped.h"

namespace lanework::catalogue::test {
namespace {

// Paths of everything outside the figures, whose own tests stand in its folder.
void collect(const Node& node, const std::string& path, std::vector<std::string>& out) {
  if (!path.empty()) out.push_back(path);
  const std::string prefix = path.empty() ? "" : path + ".";
  for (const auto& [key, child] : node.entries) {
    if (path.empty() && (key == "figure" || key == "rung_figure")) continue;
    collect(child, prefix + key, out);
  }
  for (std::size_t i = 0; i < node.items.size(); ++i) collect(node.items[i], prefix + std::to_string(i + 1), out);
}

std::vector<std::string> paths_of(const Document& document) {
  std::vector<std::string> out;
  collect(document.root, "", out);
  return out;
}

Document any_drill() {
  const std::vector<Document>& drills = shipped_documents().drills;
  return drills[*rc::gen::inRange<std::size_t>(0, drills.size())];
}

bool names(const Faults& faults, const std::string& path) {
  for (const Fault& fault : faults) {
    const std::string& field = fault.place.field;
    // A text in a list is named by its list.
    if (path == field || path.compare(0, field.size() + 1, field + ".") == 0) return true;
  }
  return false;
}

TEST(AnyMistake, AWrongTypeIsToldAtItsField) {
  EXPECT_TRUE(rc::check([] {
    Document document = any_drill();
    const std::vector<std::string> paths = paths_of(document);
    const std::string path = paths[*rc::gen::inRange<std::size_t>(0, paths.size())];
    Node& node = node_at(document.root, path);
    const bool was_boolean = node.kind == Node::Kind::kBoolean;
    const Node wrong = was_boolean ? Node::make_text("yes") : Node::make_boolean(true);
    const int line = node.line;
    node = wrong;
    node.line = line;
    const Result<Drill> drill = read_drill(document);
    RC_ASSERT(!drill.ok());
    RC_ASSERT(names(drill.faults(), path));
  }));
}

TEST(AnyMistake, AnUnknownKeyIsToldAtItsField) {
  EXPECT_TRUE(rc::check([] {
    Document document = any_drill();
    std::vector<std::string> tables;
    for (const std::string& path : paths_of(document)) {
      if (node_at(document.root, path).kind == Node::Kind::kTable) tables.push_back(path + ".");
    }
    tables.push_back("");
    const std::string path = tables[*rc::gen::inRange<std::size_t>(0, tables.size())] + "surprise";
    set(document, path, 1);
    const Result<Drill> drill = read_drill(document);
    RC_ASSERT(!drill.ok());
    RC_ASSERT(drill.faults().size() == 1U);
    RC_ASSERT(drill.faults().front().code == FaultCode::kUnknownKey);
    RC_ASSERT(drill.faults().front().place.field == path);
  }));
}

TEST(AnyMistake, ANegativeNumberIsToldAtItsField) {
  EXPECT_TRUE(rc::check([] {
    Document document = any_drill();
    std::vector<std::string> numbers;
    for (const std::string& path : paths_of(document)) {
      const Node::Kind kind = node_at(document.root, path).kind;
      if (kind == Node::Kind::kInteger || kind == Node::Kind::kReal) numbers.push_back(path);
    }
    const std::string path = numbers[*rc::gen::inRange<std::size_t>(0, numbers.size())];
    set(document, path, *rc::gen::inRange(-1000, 0));
    const Result<Drill> drill = read_drill(document);
    RC_ASSERT(!drill.ok());
    RC_ASSERT(drill.faults().size() == 1U);
    RC_ASSERT(drill.faults().front().code == FaultCode::kOutOfRange);
    RC_ASSERT(drill.faults().front().place.field == path);
  }));
}

// Whatever is taken away: the drill still reads, or the faults say where, all in the drill's file.
TEST(AnyMistake, AnythingTakenAwayIsToldOrOptional) {
  EXPECT_TRUE(rc::check([] {
    Document document = any_drill();
    for (int i = *rc::gen::inRange(1, 4); i > 0; --i) {
      const std::vector<std::string> paths = paths_of(document);
      remove(document, paths[*rc::gen::inRange<std::size_t>(0, paths.size())]);
    }
    const Result<Drill> drill = read_drill(document);
    if (drill.ok()) return;
    for (const Fault& fault : drill.faults()) {
      RC_ASSERT(fault.place.file == document.file);
      RC_ASSERT(!fault.place.field.empty());
      RC_ASSERT(!fault.found.empty());
      RC_ASSERT(!fault.expected.empty());
      RC_ASSERT(to_line(fault).find('\n') == std::string::npos);
    }
  }));
}

// Half-written files: cut anywhere, the reader says so or reads what is left.
TEST(AnyMistake, ACutFileIsToldInOneLineEach) {
  std::vector<std::string> texts;
  for (const Document& document : shipped_documents().drills) {
    std::ifstream in(shipped_folder() / "drills" / document.file, std::ios::binary);
    texts.emplace_back((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
  }
  EXPECT_TRUE(rc::check([&texts] {
    const std::string& text = texts[*rc::gen::inRange<std::size_t>(0, texts.size())];
    const auto kept = *rc::gen::inRange<std::size_t>(0, text.size());
    const Result<Document> document = parse_toml("cut.toml", text.substr(0, kept));
    if (!document.ok()) {
      RC_ASSERT(document.faults().size() == 1U);
      RC_ASSERT(document.faults().front().place.line > 0);
      return;
    }
    const Result<Drill> drill = read_drill(document.value());
    RC_ASSERT(!drill.ok());  // the id is not the file's name, and more
    for (const Fault& fault : drill.faults()) RC_ASSERT(to_line(fault).find('\n') == std::string::npos);
  }));
}

}  // namespace
}  // namespace lanework::catalogue::test
