#include "core/block/open_part.h"

#include <tuple>

namespace lanework::block {
namespace {

std::vector<std::vector<std::size_t>> sessions_by_week(const Problem& problem) {
  std::vector<std::vector<std::size_t>> out(problem.weeks.size());
  for (std::size_t s = 0; s < problem.sessions.size(); ++s)
    out[static_cast<std::size_t>(problem.sessions[s].week)].push_back(s);
  return out;
}

// Close pairs inside each week, by the position of their sessions.
std::vector<std::vector<std::pair<int, int>>> close_by_week(const Problem& problem,
                                                            const std::vector<std::vector<std::size_t>>& sessions) {
  std::vector<std::vector<std::pair<int, int>>> out(problem.weeks.size());
  for (const auto& [a, b] : problem.close) {
    const int week = problem.sessions[static_cast<std::size_t>(a)].week;
    if (problem.sessions[static_cast<std::size_t>(b)].week != week) continue;
    const auto first = static_cast<int>(sessions[static_cast<std::size_t>(week)].front());
    out[static_cast<std::size_t>(week)].emplace_back(a - first, b - first);
  }
  return out;
}

auto key(const Session& session) {
  return std::tie(session.kind, session.budget, session.ceiling, session.hard, session.unknown);
}
auto key(const Week& week) { return std::tie(week.spell, week.ceiling, week.fixed, week.target, week.begun); }

}  // namespace

std::vector<std::size_t> first_alike(const Problem& problem) {
  const auto sessions = sessions_by_week(problem);
  const auto close = close_by_week(problem, sessions);
  const auto alike = [&](std::size_t a, std::size_t b) {
    if (key(problem.weeks[a]) != key(problem.weeks[b])) return false;
    if (sessions[a].size() != sessions[b].size() || close[a] != close[b]) return false;
    for (std::size_t i = 0; i < sessions[a].size(); ++i) {
      if (key(problem.sessions[sessions[a][i]]) != key(problem.sessions[sessions[b][i]])) return false;
    }
    return true;
  };
  std::vector<std::size_t> out;
  for (std::size_t w = 0; w < problem.weeks.size(); ++w) {
    std::size_t first = 0;
    while (!alike(first, w)) ++first;
    out.push_back(first);
  }
  return out;
}

OpenPart open_part(const Problem& problem, int spell) {
  const std::vector<std::size_t> alike = first_alike(problem);
  const auto sessions = sessions_by_week(problem);
  OpenPart out;
  Problem& part = out.problem;
  part = problem;
  part.sessions.clear();
  part.close.clear();
  part.weeks.clear();
  std::vector<std::size_t> kept;
  std::vector<std::size_t> week_of_part(problem.weeks.size(), 0);
  for (std::size_t w = 0; w < problem.weeks.size(); ++w) {
    if (problem.weeks[w].spell != spell) continue;
    if (alike[w] != w) {
      ++out.times[week_of_part[alike[w]]];
      continue;
    }
    week_of_part[w] = part.weeks.size();
    part.weeks.push_back(problem.weeks[w]);
    out.times.push_back(1);
    kept.push_back(w);
    for (const std::size_t s : sessions[w]) {
      part.sessions.push_back(problem.sessions[s]);
      part.sessions.back().week = static_cast<int>(week_of_part[w]);
    }
  }
  const auto close = close_by_week(problem, sessions);
  int first = 0;
  for (const std::size_t w : kept) {
    for (const auto& [a, b] : close[w]) part.close.emplace_back(first + a, first + b);
    first += static_cast<int>(sessions[w].size());
  }
  return out;
}

}  // namespace lanework::block
