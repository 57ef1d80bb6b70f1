#include "app/serve/metrics.h"

#include <algorithm>
#include <numeric>
#include <sstream>

namespace lanework::serve {
namespace {

void heading(std::ostringstream& out, const char* name, const char* type, const char* help) {
  out << "# HELP " << name << ' ' << help << "\n# TYPE " << name << ' ' << type << '\n';
}

}  // namespace

void Metrics::answered(const std::string& route, int status, double seconds) {
  const std::lock_guard<std::mutex> guard(lock_);
  Of& of = routes_[route];
  ++of.by_class[static_cast<std::size_t>(std::clamp(status / 100, 0, 5))];
  const auto at = std::lower_bound(kSecondsUpTo.begin(), kSecondsUpTo.end(), seconds);
  ++of.within[static_cast<std::size_t>(at - kSecondsUpTo.begin())];
  of.seconds += seconds;
}

void Metrics::entries(const std::string& verdict, std::int64_t count) {
  const std::lock_guard<std::mutex> guard(lock_);
  verdicts_[verdict] += count;
}

std::string Metrics::text(const EdgeCounts& edge) const {
  const std::lock_guard<std::mutex> guard(lock_);
  std::ostringstream out;
  heading(out, "lanework_requests_total", "counter", "Requests answered, by route and class of status.");
  for (const auto& [route, of] : routes_) {
    for (std::size_t i = 1; i < of.by_class.size(); ++i) {
      if (of.by_class[i] == 0) continue;
      out << "lanework_requests_total{route=\"" << route << "\",class=\"" << i << "xx\"} " << of.by_class[i] << '\n';
    }
  }
  heading(out, "lanework_request_seconds", "histogram", "Time from the whole request to the whole answer.");
  for (const auto& [route, of] : routes_) {
    std::int64_t so_far = 0;
    for (std::size_t i = 0; i < kSecondsUpTo.size(); ++i) {
      so_far += of.within[i];
      out << "lanework_request_seconds_bucket{route=\"" << route << "\",le=\"" << kSecondsUpTo[i] << "\"} " << so_far
          << '\n';
    }
    so_far += of.within.back();
    out << "lanework_request_seconds_bucket{route=\"" << route << "\",le=\"+Inf\"} " << so_far << '\n'
        << "lanework_request_seconds_sum{route=\"" << route << "\"} " << of.seconds << '\n'
        << "lanework_request_seconds_count{route=\"" << route << "\"} " << so_far << '\n';
  }
  heading(out, "lanework_entries_total", "counter", "Entries received, by verdict.");
  for (const auto& [verdict, count] : verdicts_) {
    out << "lanework_entries_total{verdict=\"" << verdict << "\"} " << count << '\n';
  }
  const auto gauge = [&](const char* name, const char* type, const char* help, std::int64_t value) {
    heading(out, name, type, help);
    out << name << ' ' << value << '\n';
  };
  gauge("lanework_connections", "gauge", "Connections open now.", edge.connections_now);
  gauge("lanework_connections_total", "counter", "Connections taken.", edge.connections_taken);
  gauge("lanework_connections_turned_away_total", "counter", "Connections closed at once, the most being open.",
        edge.connections_turned_away);
  gauge("lanework_requests_waiting", "gauge", "Requests that wait for a thread or are being answered.",
        edge.requests_waiting);
  gauge("lanework_requests_refused_total", "counter", "What came and was no whole request, or one too many.",
        edge.requests_refused);
  return out.str();
}

}  // namespace lanework::serve
