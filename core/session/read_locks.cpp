#include "core/session/read_locks.h"

#include <algorithm>
#include <tuple>

namespace lanework::session {
namespace {

void expect_rung(TableReader& table, const std::string& rung, const catalogue::Drill& drill) {
  if (rung.empty() || catalogue::rung_index(drill, rung) >= 0) return;
  std::string known;
  for (const catalogue::Rung& one : drill.rungs) known += (known.empty() ? "" : ", ") + one.key;
  table.fault(FaultCode::kUnknownName, "rung", quote(rung), "one of " + known);
}

void check_pin(TableReader& table, const Pin& pin, const catalogue::Drill& drill) {
  expect_rung(table, pin.rung, drill);
  const bool half = table.has("sets") != table.has("amount");
  if (half) table.fault(FaultCode::kContradiction, "sets", "sets or amount alone", "both, or neither");
  if (pin.sets > 0 && pin.amount > 0 && catalogue::dose_index(drill, pin.sets, pin.amount) < 0) {
    std::string known;
    for (const catalogue::DoseStep& step : drill.dose.steps) {
      known += (known.empty() ? "" : ", ") + std::to_string(step.sets) + " and " + std::to_string(step.amount);
    }
    table.fault(FaultCode::kUnknownName, "sets", std::to_string(pin.sets) + " and " + std::to_string(pin.amount),
                "sets and amount of one of the drill's doses: " + known);
  }
}

}  // namespace

void expect_drill(TableReader& table, std::string_view key, const std::string& id,
                  const catalogue::Catalogue& catalogue) {
  if (catalogue.find(id) != nullptr) return;
  table.fault(FaultCode::kUnknownName, key, quote(id), "the id of a drill of the catalogue",
              "'lanework catalogue list' shows them");
}

std::vector<Pin> read_pins(TableReader& table, const catalogue::Catalogue& catalogue) {
  std::vector<Pin> pins;
  for (TableReader row : table.tables("pins")) {
    Pin pin;
    pin.drill = row.text("drill");
    pin.rung = row.text_or("rung", "");
    pin.sets = static_cast<int>(row.integer_or("sets", 0, 1, 20));
    pin.amount = static_cast<int>(row.integer_or("amount", 0, 1, 600));
    row.finish();
    if (pin.drill.empty()) continue;
    expect_drill(row, "drill", pin.drill, catalogue);
    const catalogue::Drill* drill = catalogue.find(pin.drill);
    if (drill == nullptr) continue;
    const auto same_drill = [&](const Pin& other) { return other.drill == pin.drill; };
    if (std::any_of(pins.begin(), pins.end(), same_drill)) {
      row.fault(FaultCode::kDuplicate, "drill", quote(pin.drill) + " twice", "each drill once");
    }
    check_pin(row, pin, *drill);
    pins.push_back(std::move(pin));
  }
  return pins;
}

std::vector<ConfirmedRung> read_rungs(TableReader& root, const catalogue::Catalogue& catalogue) {
  std::vector<ConfirmedRung> out;
  for (TableReader& row : root.tables("rung")) {
    ConfirmedRung one;
    one.drill = row.text("drill");
    one.rung = row.text("rung");
    const auto from = row.date("from");
    if (!from && !row.has("from"))
      row.fault(FaultCode::kMissing, "from", "nothing", "the day from which it holds, such as 2026-12-07");
    row.finish();
    if (one.drill.empty() || !from) continue;
    one.from = *from;
    expect_drill(row, "drill", one.drill, catalogue);
    const catalogue::Drill* drill = catalogue.find(one.drill);
    if (drill == nullptr) continue;
    expect_rung(row, one.rung, *drill);
    const auto same = [&](const ConfirmedRung& other) { return other.drill == one.drill && other.from == one.from; };
    if (std::any_of(out.begin(), out.end(), same)) {
      row.fault(FaultCode::kDuplicate, "drill", quote(one.drill) + " twice from " + to_iso(one.from),
                "each drill once a day");
    }
    out.push_back(std::move(one));
  }
  std::sort(out.begin(), out.end(), [](const ConfirmedRung& a, const ConfirmedRung& b) {
    return std::tie(a.drill, a.from.days_since_epoch) < std::tie(b.drill, b.from.days_since_epoch);
  });
  return out;
}

std::vector<std::string> read_bans(TableReader& table, const catalogue::Catalogue& catalogue) {
  std::vector<std::string> bans = table.texts("bans");
  for (const std::string& id : bans) expect_drill(table, "bans", id, catalogue);
  return bans;
}

}  // namespace lanework::session
