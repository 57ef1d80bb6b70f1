#include "core/care/environment/take_band.h"

#include <algorithm>
#include <utility>

namespace lanework::care::environment {
namespace {

BandVerdict verdict_at(const BandTable& table, std::size_t band, Found found, const MeasuredAge& age) {
  BandVerdict out;
  out.topic = found.topic;
  out.judged = true;
  out.table = &table;
  out.band = std::min(band, table.bands.size() - 1);
  out.unused_to_heat = found.unused_to_heat;
  out.number = std::move(found.number);
  out.cautions = std::move(found.cautions);
  const Band& taken = table.bands[out.band];
  out.change = found.unused_to_heat ? taken.unused_to_heat : taken.usual;
  const bool unverified = found.unverified || table.standing == Standing::kUnverified;
  out.change.reasons = {{found.topic, out.number + "; the band " + taken.limits + ": " + taken.words, table.source,
                         unverified, age.minutes}};
  return out;
}

}  // namespace

BandVerdict take_band(const BandTable& table, Found found, const MeasuredAge& age) {
  std::size_t band = found.band + found.raised_by;
  if (age.stale()) {
    ++band;
    found.cautions.push_back((age.minutes ? "older than " + std::to_string(age.stale_after) + " minutes"
                                          : std::string("nobody says when it was measured")) +
                             ": one band more careful; measure again");
  }
  return verdict_at(table, band, std::move(found), age);
}

BandVerdict not_judged(Topic topic, const std::string& sentence, const std::string& source, const MeasuredAge& age) {
  BandVerdict out;
  out.topic = topic;
  out.number = sentence;
  out.change.reasons = {{topic, sentence, source, false, age.minutes}};
  return out;
}

BandVerdict taken_for_second_band(const BandTable& table, Topic topic, const std::string& sentence, bool unused_to_heat,
                                  std::vector<std::string> cautions) {
  cautions.insert(cautions.begin(), "not known: taken for the second band; measure before anybody starts");
  Found found{topic, 0, sentence, std::move(cautions), 1, unused_to_heat, false};
  return verdict_at(table, 1, std::move(found), {});
}

}  // namespace lanework::care::environment
