#include "core/release/withhold.h"

#include <algorithm>

#include "core/release/audit.h"

namespace lanework::release {
namespace {

std::set<std::string>& hidden_in(Release& release, Table table) {
  return release.hidden[static_cast<std::size_t>(table)];
}

// Those that are shown, the smallest first.
std::vector<std::string> shown_rows(const Release& release, Table table) {
  std::vector<std::string> out;
  for (const auto& [key, count] : release.whole.of(table)) {
    if (release.shows(table, key)) out.push_back(key);
  }
  std::stable_sort(out.begin(), out.end(), [&](const std::string& a, const std::string& b) {
    return release.whole.of(table).at(a).injuries < release.whole.of(table).at(b).injuries;
  });
  return out;
}

bool is_safe(const Release& release, const std::vector<Release>& earlier, Table table) {
  return exposed_in(release, earlier, table).empty();
}

// One more row that makes it safe, the smallest that does; where none does alone, the smallest of all, and again.
// False: every row is hidden and it is not safe.
bool hide_until_safe(Release& release, const std::vector<Release>& earlier, Table table) {
  std::set<std::string>& hidden = hidden_in(release, table);
  while (!is_safe(release, earlier, table)) {
    const std::vector<std::string> shown = shown_rows(release, table);
    if (shown.empty()) return false;
    bool safe = false;
    for (std::size_t i = 0; i < shown.size() && !safe; ++i) {
      hidden.insert(shown[i]);
      safe = is_safe(release, earlier, table);
      if (!safe) hidden.erase(shown[i]);
    }
    if (safe) return true;
    hidden.insert(shown.front());
  }
  return true;
}

// The largest first: what turned out not to be needed is shown again.
void show_again(Release& release, const std::vector<Release>& earlier, Table table,
                const std::vector<std::string>& hidden_besides) {
  std::set<std::string>& hidden = hidden_in(release, table);
  for (auto key = hidden_besides.rbegin(); key != hidden_besides.rend(); ++key) {
    if (hidden.erase(*key) == 0) continue;
    if (!is_safe(release, earlier, table)) hidden.insert(*key);
  }
}

}  // namespace

std::vector<std::string> withhold(Release& release, const std::vector<Release>& earlier) {
  const auto say_nothing = [&](const NotGiven& why) {
    release.silent = true;
    release.hidden = {};
    return std::vector<std::string>{
        "Nothing is said of injuries: with all injuries together shown, this would come out: " + in_words(why) + "."};
  };
  if (const auto totals = exposed_totals(release, earlier); !totals.empty()) return say_nothing(totals.front());
  std::vector<std::string> tried;
  for (const Table table : kEveryTable) {
    for (const auto& [key, count] : release.whole.of(table)) {
      if (is_small(count)) hidden_in(release, table).insert(key);
    }
    const std::vector<NotGiven> exposed = exposed_in(release, earlier, table);
    if (exposed.empty()) continue;
    const std::vector<std::string> others = shown_rows(release, table);
    if (!hide_until_safe(release, earlier, table)) return say_nothing(exposed.front());
    show_again(release, earlier, table, others);
    std::string besides;
    for (const std::string& key : others) {
      if (!release.shows(table, key)) besides += (besides.empty() ? "" : ", ") + key;
    }
    tried.push_back("Of " + std::string(table_key(table)) + " also hidden: " + besides +
                    ". Else this would come out: " + in_words(exposed.front()) + ".");
  }
  return tried;
}

}  // namespace lanework::release
