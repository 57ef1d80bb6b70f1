#include "core/check/privacy.h"

#include <algorithm>
#include <set>
#include <string>
#include <string_view>

namespace lanework::check {
namespace {

using Words = std::vector<std::string>;

constexpr std::size_t kShortestNamePart = 3;
constexpr std::int64_t kLeastGrams = 10'000;

// Runs of letters and digits; everything beyond ASCII counts as a letter.
Words words_of(std::string_view text) {
  Words out;
  std::string word;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    const bool inside = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || byte >= 0x80;
    if (inside) {
      word += c;
    } else if (!word.empty()) {
      out.push_back(std::move(word));
      word.clear();
    }
  }
  if (!word.empty()) out.push_back(std::move(word));
  return out;
}

Words lowered(Words words) {
  for (std::string& word : words) {
    for (char& c : word) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return words;
}

bool contains(const Words& text, const Words& sought) {
  return !sought.empty() && std::search(text.begin(), text.end(), sought.begin(), sought.end()) != text.end();
}

bool only_digits(const std::string& text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

class PrivacyJudge {
 public:
  PrivacyJudge(const Node& catalogue, const Secrets& secrets, std::vector<Violation>& violations)
      : secrets_(secrets), violations_(violations) {
    collect(catalogue);
    for (const std::string& name : secrets.names) add_name(name);
    for (const std::string& id : secrets.ids) {
      if (!only_digits(id) && !usual(lowered(words_of(id)))) ids_.push_back(words_of(id));
    }
    for (const std::string& text : secrets.instructions) {
      Words instruction = lowered(words_of(text));
      if (instruction.size() > 1 && !usual(instruction)) instructions_.push_back(std::move(instruction));
    }
  }

  void judge(const Node& node, const std::string& where) {
    if (node.kind == Node::Kind::kText) judge_text(node.text, where);
    if (node.kind == Node::Kind::kInteger && node.integer >= kLeastGrams) {
      const auto& grams = secrets_.grams;
      if (std::find(grams.begin(), grams.end(), node.integer) != grams.end()) add(where, "the mass of a player");
    }
    const std::string before = where.empty() ? "" : where + ".";
    for (std::size_t i = 0; i < node.items.size(); ++i) {
      std::string place = before;
      judge(node.items[i], place.append(std::to_string(i + 1)));
    }
    for (const auto& [key, value] : node.entries) {
      std::string place = before;
      judge(value, place.append(key));
    }
  }

 private:
  const Secrets& secrets_;
  std::vector<Violation>& violations_;
  std::set<std::string> usual_words_;
  std::vector<Words> usual_texts_;
  std::vector<Words> names_;  // whole names of two words and more, lower case
  std::vector<Words> parts_;  // one word each, as written
  std::vector<Words> ids_;
  std::vector<Words> instructions_;

  void collect(const Node& node) {
    if (node.kind == Node::Kind::kText) {
      Words words = lowered(words_of(node.text));
      usual_words_.insert(words.begin(), words.end());
      usual_texts_.push_back(std::move(words));
    }
    for (const Node& item : node.items) collect(item);
    for (const auto& [key, value] : node.entries) collect(value);
  }
  [[nodiscard]] bool usual(const Words& words) const {
    return std::any_of(usual_texts_.begin(), usual_texts_.end(), [&](const Words& t) { return contains(t, words); });
  }
  void add_name(const std::string& name) {
    const Words words = words_of(name);
    if (words.size() > 1 && !usual(lowered(words))) names_.push_back(lowered(words));
    for (const std::string& word : words) {
      const bool told = word.size() >= kShortestNamePart && !only_digits(word);
      if (told && usual_words_.count(lowered({word}).front()) == 0) parts_.push_back({word});
    }
  }
  void add(const std::string& where, const std::string& found) {
    violations_.push_back({"private", where, found, "nothing about a single player"});
  }
  [[nodiscard]] static bool any_in(const std::vector<Words>& sought, const Words& text) {
    return std::any_of(sought.begin(), sought.end(), [&](const Words& words) { return contains(text, words); });
  }

  void judge_text(const std::string& text, const std::string& where) {
    const Words words = words_of(text);
    const Words lower = lowered(words);
    // The lead's own words for a day may be somebody's name: 'Sunday 20:10'.
    const bool parts_count = where != "restrictions_as_known";
    if (any_in(names_, lower) || (parts_count && any_in(parts_, words))) {
      add(where, "the name of a player");
    } else if (any_in(ids_, words)) {
      add(where, "the id of a player");
    } else if (any_in(instructions_, lower)) {
      add(where, "the restriction of a player");
    }
    for (const std::int64_t grams : secrets_.grams) {
      if (grams >= kLeastGrams && contains(words, {std::to_string(grams)})) add(where, "the mass of a player");
    }
  }
};

}  // namespace

void judge_privacy(const Node& answer, const Node& catalogue, const Secrets& secrets,
                   std::vector<Violation>& violations) {
  PrivacyJudge(catalogue, secrets, violations).judge(answer, "");
}

}  // namespace lanework::check
