#include "app/cli/care/growth_words.h"

#include <algorithm>

#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "core/care/entries/restrictions_document.h"
#include "core/care/growth/growth_effect.h"
#include "core/care/sheet/care_sheet.h"

namespace lanework::cli {
namespace {

using care::short_decimal;
using namespace care::growth;  // NOLINT(google-build-using-namespace): all of this file is about it

std::string how(const GrowthTable& table) {
  return "\nHow this is made (docs/care/growth.md)\n  Each height may be out by " +
         short_decimal(table.measuring_error_cm) + " cm, and rates are told with that error. Fast is from " +
         short_decimal(table.fast_from_cm_a_year) +
         " cm a year on, as in\n  84 academy boys (Monasterio 2024): no line between safe and unsafe.\n"
         "  Spared are those who seem that fast, and those who cannot be told apart from it while the spurt may be "
         "near, or\n"
         "  something is not known: own judgement. So are the share of landings and no new eccentric work. Nothing "
         "shows\n"
         "  that any such change makes injuries fewer. Talk with the player and the family.\n";
}

std::string signed_years(double years) { return (years > 0 ? "+" : "") + short_decimal(years); }

std::string sex_words(Sex sex) { return sex == Sex::kBoy ? "boys' equation" : "girls' equation"; }

class PlayerText {
 public:
  PlayerText(const GrowthTable& table, const GrowthReading& reading) : table_(table), reading_(reading) {}

  std::string write() {
    add_measured();
    if (!reading_.measured.empty()) {
      add_velocity();
      add_offsets();
      add_adult_height();
      add_effect();
    }
    return in_columns(rows_, "  ");
  }

 private:
  const GrowthTable& table_;
  const GrowthReading& reading_;
  std::vector<std::vector<std::string>> rows_;

  void add(const std::string& what, const std::string& said) { rows_.push_back({what, said}); }

  void add_measured() {
    if (reading_.ask_again) add("Agreement", "given before the 16th birthday: ask the player again");
    if (reading_.from_before_agreement > 0) {
      add("Left out", std::to_string(reading_.from_before_agreement) + " measured before the agreement");
    }
    if (reading_.measured.empty()) {
      add("Measured", "not yet");
      return;
    }
    const BodyMeasurement& last = reading_.measured.back();
    add("Measured", std::to_string(reading_.measured.size()) + (reading_.measured.size() == 1 ? " time" : " times") +
                        ", last on " + to_iso(last.date) + ": " + short_decimal(last.height_cm) + " cm; again from " +
                        to_iso(*reading_.due) + " on");
  }

  void add_velocity() {
    if (reading_.velocity) {
      const HeightVelocity& v = *reading_.velocity;
      add("Growing", short_decimal(v.cm_a_year) + " cm a year over " + std::to_string(days_between(v.from, v.to)) +
                         " days, " + short_decimal(v.low) + " to " + short_decimal(v.high) +
                         " with the tape's error: " + in_words(v.velocity) + " by the estimate");
    } else {
      add("Growing",
          "no rate: two heights at least " + std::to_string(table_.least_days_between) + " days apart are needed");
    }
    const char* fast = reading_.fast->grows_fast == GrowsFast::kLikely     ? "likely"
                       : reading_.fast->grows_fast == GrowsFast::kUnlikely ? "unlikely"
                                                                           : "cannot be told";
    add("Growing fast", std::string(fast) + ": " + reading_.fast->why);
  }

  void add_offsets() {
    if (reading_.offsets.empty()) {
      add("From the spurt", "cannot be said: no birth date, or an age outside 8 to 18");
      return;
    }
    const OffsetBand band = offset_band(reading_.offsets);
    add("From the spurt", signed_years(band.low) + " to " + signed_years(band.high) +
                              " years, a year's caution either way included; never a date");
    if (!reading_.sex_known) add("", "no sex is recorded: the equations of both are shown");
    for (const OffsetEstimate& one : reading_.offsets) {
      add("", signed_years(one.years) + " by " + equation_words(one.equation) + ", " + sex_words(one.sex) +
                  ", standard error " + short_decimal(one.standard_error, 2) +
                  (one.error_is_borrowed ? " (Mirwald's; its own was not read)" : "") +
                  (one.outside_best_ages ? "; outside the ages it does best at" : ""));
    }
    if (reading_.ratio) {
      add("", "age is " + short_decimal(100 * reading_.ratio->ratio, 0) +
                  " % of the age at the spurt (Fransen 2018, boys of 8 to 17), with the same caution");
    }
  }

  void add_adult_height() {
    if (!reading_.adult->height) {
      add("Adult height", std::string("not foretold: ") + in_words(reading_.adult->why));
      return;
    }
    const AdultHeight& adult = *reading_.adult->height;
    add("Adult height", short_decimal(adult.cm, 0) + " cm, nine in ten from " + short_decimal(adult.low_cm, 0) +
                            " to " + short_decimal(adult.high_cm, 0) + "; " + short_decimal(adult.reached_percent) +
                            " % reached (Khamis-Roche, coefficients from transcriptions)");
    if (adult.floored_at_height) add("", "the equation gave less than today's height, which is taken");
    for (const HeightBands& bands : table_.bands)
      add("", band_of(bands, adult.reached_percent) + " (" + bands.words + ")");
    add("", "made from white families of Ohio without growth disorders: not valid for every child");
  }

  void add_effect() {
    const GrowthEffect effect = effect_of(table_, reading_);
    const auto restriction = restriction_of(effect, reading_);
    if (!restriction) {
      add("Changed", "nothing");
      return;
    }
    add("Changed", std::to_string(effect.contacts_percent) +
                       " % of the landings, no eccentric work that is new; looked at again from " +
                       to_iso(*reading_.due) + " on");
    add("", "the coach reads: '" + restriction->instruction + "'");
  }
};

Node offsets_node(const GrowthReading& reading) {
  static constexpr std::array<const char*, 3> kKeys = {"mirwald-2002", "moore-2015-sitting", "moore-2015-stature"};
  Node out = Node::make_array();
  for (const OffsetEstimate& one : reading.offsets) {
    Node node = Node::make_table();
    node.set("equation", Node::make_text(kKeys.at(static_cast<std::size_t>(one.equation))));
    node.set("sex", Node::make_text(one.sex == Sex::kBoy ? "boy" : "girl"));
    node.set("years", Node::make_real(one.years));
    node.set("standard_error", Node::make_real(one.standard_error));
    node.set("error_is_borrowed", Node::make_boolean(one.error_is_borrowed));
    out.items.push_back(std::move(node));
  }
  return out;
}

void set_velocity(const GrowthReading& reading, Node& node) {
  if (!reading.velocity) return;
  Node out = Node::make_table();
  out.set("from", Node::make_text(to_iso(reading.velocity->from)));
  out.set("to", Node::make_text(to_iso(reading.velocity->to)));
  out.set("cm_a_year", Node::make_real(reading.velocity->cm_a_year));
  out.set("low", Node::make_real(reading.velocity->low));
  out.set("high", Node::make_real(reading.velocity->high));
  out.set("class", Node::make_text(in_words(reading.velocity->velocity)));
  node.set("velocity", std::move(out));
}

void set_adult_height(const GrowthReading& reading, Node& node) {
  if (!reading.adult->height) {
    node.set("no_adult_height_because", Node::make_text(in_words(reading.adult->why)));
    return;
  }
  const AdultHeight& adult = *reading.adult->height;
  Node out = Node::make_table();
  out.set("cm", Node::make_real(adult.cm));
  out.set("low_cm", Node::make_real(adult.low_cm));
  out.set("high_cm", Node::make_real(adult.high_cm));
  out.set("reached_percent", Node::make_real(adult.reached_percent));
  out.set("floored_at_height", Node::make_boolean(adult.floored_at_height));
  node.set("adult_height", std::move(out));
}

Node player_node(const GrowthTable& table, const GrowthReading& reading) {
  static constexpr std::array<const char*, 3> kFast = {"likely", "cannot-be-told", "unlikely"};
  Node out = Node::make_table();
  out.set("player", Node::make_text(reading.player));
  out.set("agreement", Node::make_text(in_words(reading.state)));
  out.set("shown", Node::make_boolean(reading.state == AgreementState::kOn));
  if (reading.state != AgreementState::kOn) return out;
  out.set("measured", Node::make_integer(static_cast<std::int64_t>(reading.measured.size())));
  out.set("from_before_agreement", Node::make_integer(reading.from_before_agreement));
  if (reading.measured.empty()) return out;
  out.set("last", Node::make_text(to_iso(reading.measured.back().date)));
  out.set("due", Node::make_text(to_iso(*reading.due)));
  out.set("height_cm", Node::make_real(reading.measured.back().height_cm));
  set_velocity(reading, out);
  out.set("offsets", offsets_node(reading));
  if (reading.ratio) out.set("ratio", Node::make_real(reading.ratio->ratio));
  set_adult_height(reading, out);
  out.set("grows_fast", Node::make_text(kFast.at(static_cast<std::size_t>(reading.fast->grows_fast))));
  out.set("because", Node::make_text(reading.fast->why));
  const GrowthEffect effect = effect_of(table, reading);
  Node changed = Node::make_table();
  changed.set("contacts_percent", Node::make_integer(effect.contacts_percent));
  changed.set("new_eccentric_ok", Node::make_boolean(effect.new_eccentric_ok));
  out.set("effect", std::move(changed));
  return out;
}

}  // namespace

LeadAnswer growth_answer(const GrowthMatter& matter) {
  LeadAnswer out = lead_answer("care-growth", "Growth", matter.day);
  Node players = Node::make_array();
  bool anybody = false;
  for (const GrowthReading& reading : matter.readings) {
    players.items.push_back(player_node(matter.table, reading));
    const bool on = reading.state == AgreementState::kOn;
    anybody = anybody || on;
    out.text +=
        "\n" + reading.player +
        (on ? "\n" + PlayerText(matter.table, reading).write() : "  " + std::string(in_words(reading.state)) + "\n");
  }
  out.node.set("players", std::move(players));
  out.node.set("rows_not_read", Node::make_integer(matter.rows_not_read));
  if (matter.rows_not_read > 0) {
    out.text += "\nRows of players who are not listed, or whose agreement does not hold, were not read: " +
                std::to_string(matter.rows_not_read) + "\n";
  }
  if (anybody) out.text += how(matter.table);
  out.exit_status = anybody ? kDone : kAnswerIsNo;
  return out;
}

LeadAnswer growth_restrictions(const GrowthMatter& matter) {
  LeadAnswer out;
  std::vector<care::Standing> spared;
  for (const GrowthReading& reading : matter.readings) {
    const auto restriction = restriction_of(effect_of(matter.table, reading), reading);
    if (restriction) spared.push_back({*restriction, {}, false, {}});
  }
  out.exit_status = spared.empty() ? kAnswerIsNo : kDone;
  out.node = care::restrictions_document(spared, {});
  if (spared.empty()) out.node.set("restriction", Node::make_array());
  out.text = out.exit_status == kDone ? to_toml(out.node) : "# nobody\n";
  return out;
}

}  // namespace lanework::cli
