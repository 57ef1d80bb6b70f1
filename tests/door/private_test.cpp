// Nothing that a coach gets says what a player weighs, measures, when they were born, or where and why it hurts.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "core/base/date.h"
#include "core/catalogue/words.h"
#include "core/people/instruction.h"
#include "tests/door/demo.h"

namespace lanework::door::test {
namespace {

// Drills are named by what they are ('knee-hug walk'); that is no word about a player. All texts of the catalogue are
// taken out of an answer before it is searched, the longest first.
void collect_texts(const Node& node, std::vector<std::string>& out) {
  if (node.kind == Node::Kind::kText && node.text.size() > 2) out.push_back(node.text);
  for (const auto& [key, child] : node.entries) collect_texts(child, out);
  for (const Node& item : node.items) collect_texts(item, out);
}

std::string without_catalogue(std::string answer, Node& request) {
  std::vector<std::string> texts;
  for (Node& drill : at(request, "catalogue.drills").items) {
    for (const char* key : {"id", "name", "rung", "cues"}) {
      if (const Node* node = drill.find(key)) {
        Node named = *node;
        for (Node& rung : named.items) {
          if (rung.kind == Node::Kind::kTable) erase(rung, "stress");
        }
        collect_texts(named, texts);
      }
    }
  }
  // The families have names of their own.
  texts.insert(texts.end(), {"hip-and-groin", "hip and groin", "hamstring"});
  std::sort(texts.begin(), texts.end(), [](const std::string& a, const std::string& b) {
    return a.size() != b.size() ? a.size() > b.size() : a < b;
  });
  for (const std::string& text : texts) {
    for (std::size_t at = answer.find(text); at != std::string::npos; at = answer.find(text)) {
      answer.replace(at, text.size(), "~");
    }
  }
  return answer;
}

std::vector<std::string> area_words() {
  std::vector<std::string> out;
  for (const std::string_view area : catalogue::body_area_words()) {
    std::string words(area);
    std::replace(words.begin(), words.end(), '-', ' ');
    out.emplace_back(area);
    if (words != area) out.push_back(words);
  }
  out.insert(out.end(), {"groin", "thigh", "hamstring", "shin", "calf", "spine", "wrist"});
  return out;
}

// 41537 g in the ways that somebody may write it.
std::vector<std::string> mass_words(std::int64_t grams) {
  const std::string all = std::to_string(grams);
  const std::string kilos = std::to_string(grams / 1000);
  const std::string tenths = std::to_string(grams % 1000 / 100);
  return {all, kilos + "." + tenths, kilos + "," + tenths, kilos + " kg", kilos + "kg"};
}

struct Marked {
  Node request;
  std::vector<std::string> secrets;
};

// Every player a mass, a size group and a birth date that cannot be taken for anything else.
Marked marked_request(const char* squad, const char* measure) {
  Marked out{demo_request(squad), {}};
  int i = 0;
  for (Node& player : at(out.request, "roster").items) {
    const std::int64_t grams = 41537 + 1013 * i;
    const std::int64_t group = 701 + 7 * i;
    player.set("body_mass_grams", number(grams));
    player.set("size_group", number(group));
    const std::vector<std::string> masses = mass_words(grams);
    out.secrets.insert(out.secrets.end(), masses.begin(), masses.end());
    out.secrets.push_back(std::to_string(group));
    const std::string birth = at(player, "birth").text;
    out.secrets.push_back(birth);
    out.secrets.push_back(birth.substr(0, 7));
    ++i;
  }
  put(out.request, "squad.partners.measure", text(measure));
  return out;
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

// Whole words: 'no kneeling' says what to avoid and nothing of a knee.
std::string found_in(const std::string& answer, const std::vector<std::string>& secrets) {
  for (const std::string& secret : secrets) {
    for (std::size_t at = answer.find(secret); at != std::string::npos; at = answer.find(secret, at + 1)) {
      const std::size_t end = at + secret.size();
      const bool begins = at == 0 || !is_letter(answer[at - 1]) || !is_letter(secret.front());
      const bool ends = end == answer.size() || !is_letter(answer[end]) || !is_letter(secret.back());
      if (begins && ends) return secret;
    }
  }
  return "";
}

TEST(Private, TheSearchFindsWhatItIsFor) {
  Marked marked = marked_request("u13-kestrels.toml", "body-mass");
  EXPECT_NE(found_in("stands with 41,5", marked.secrets), "");
  EXPECT_NE(found_in("born " + at(marked.request, "roster.3.birth").text, marked.secrets), "");
  EXPECT_EQ(without_catalogue("Knee-hug walk: sore knee", marked.request), "~: sore knee");
  EXPECT_NE(found_in("~: sore knee", area_words()), "");
  EXPECT_EQ(found_in("no kneeling", area_words()), "");
}

// Another birth date that leaves the youngest as old as they were says nothing either.
TEST(Private, APlanKnowsOfBirthDatesOnlyTheYoungestsAge) {
  for (const char* squad : kSquads) {
    Node request = demo_request(squad);
    const std::string before = answered(request);
    for (Node& player : at(request, "roster").items) {
      Node& birth = at(player, "birth");
      const Date evening = *make_date(2026, 11, 26);
      const int age = age_in_years(*parse_iso_date(birth.text), evening);
      birth = text(std::to_string(2026 - age) + "-01-01");
    }
    EXPECT_EQ(answered(request), before) << squad;
  }
}

TEST(Private, NoMassNoSizeNoBirthDateInAnyAnswer) {
  for (const char* squad : kSquads) {
    for (const char* measure : {"age", "size-group", "body-mass"}) {
      const Marked marked = marked_request(squad, measure);
      // A plan does not know them: it is the same to the byte without. Numbers of a slip are doses and dates only.
      EXPECT_EQ(answered(marked.request), answered(demo_request(squad))) << squad << " by " << measure;
      EXPECT_EQ(found_in(answered(marked.request, "slip"), marked.secrets), "") << squad << " by " << measure;
    }
  }
}

TEST(Private, NoPlayerInAPlan) {
  for (const char* squad : kSquads) {
    Node request = demo_request(squad);
    std::vector<std::string> names;
    for (Node& player : at(request, "roster").items) {
      names.push_back("\"" + at(player, "id").text + "\"");
      names.push_back(at(player, "name").text);
    }
    EXPECT_EQ(found_in(answered(request), names), "") << squad;
  }
}

// Restrictions of any area and kind: the plan does not show them at all, the slip says what to avoid and never where.
TEST(Private, NoAreaOfTheBodyInAnyAnswer) {
  const std::vector<Node> requests = {demo_request(kSquads[0]), demo_request(kSquads[1]), demo_request(kSquads[2])};
  const std::vector<std::string> areas = area_words();
  EXPECT_TRUE(rc::check([&] {
    Node request = requests.at(*rc::gen::inRange<std::size_t>(0, requests.size()));
    const std::string plan = answered(request);
    Node list = Node::make_array();
    const std::vector<Node>& roster = at(request, "roster").items;
    for (const Node& player : roster) {
      if (*rc::gen::inRange(0, 3) > 0) continue;
      Node row = Node::make_table();
      row.set("player", *player.find("id"));
      const auto word = [](const std::vector<std::string_view>& words) {
        return std::string(words.at(*rc::gen::inRange<std::size_t>(0, words.size())));
      };
      row.set("areas", texts({word(catalogue::body_area_words()), word(catalogue::body_area_words())}));
      if (*rc::gen::arbitrary<bool>()) row.set("kinds", texts({word(catalogue::stress_kind_words())}));
      row.set("allowed", text(*rc::gen::element<std::string>("none", "light", "moderate")));
      if (*rc::gen::arbitrary<bool>()) row.set("until", text("2026-12-24"));
      list.items.push_back(row);
    }
    // Whoever sat out before is counted in now.
    put(request, "squad.tonight.turnout", *parse_json("plan", plan).value().root.find("turnout"));
    put(request, "restrictions.restriction", list);
    RC_ASSERT(found_in(without_catalogue(answered(request), request), areas) == "");
    const std::string slip = answered(request, "slip");
    RC_ASSERT(slip.find("\"answer\":\"slip\"") != std::string::npos);
    RC_ASSERT(found_in(without_catalogue(slip, request), areas) == "");
  }));
}

// A restriction of the whole squad does change the plan; its reasons name what to avoid, never where it hurts.
TEST(Private, AWholeSquadsRestrictionNamesNoArea) {
  const std::vector<std::string> areas = area_words();
  for (const char* squad : kSquads) {
    for (const std::string_view area : catalogue::body_area_words()) {
      Node request = demo_request(squad);
      Node row = Node::make_table();
      row.set("squad", at(request, "squad.name"));
      row.set("areas", texts({std::string(area)}));
      row.set("allowed", text("light"));
      put(request, "restrictions.restriction", Node::make_array());
      at(request, "restrictions.restriction").items.push_back(row);
      const std::string plan = answered(request);
      EXPECT_EQ(found_in(without_catalogue(plan, request), areas), "") << squad << ", " << area << "\n" << plan;
    }
  }
}

}  // namespace
}  // namespace lanework::door::test
