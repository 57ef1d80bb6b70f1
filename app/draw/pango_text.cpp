#include "app/draw/pango_text.h"

#include <pango/pangocairo.h>

#include <cmath>
#include <string_view>

#include "app/draw/foreign_text.h"
#include "app/draw/tokens.h"

namespace lanework::draw {
namespace {

constexpr double kUnbounded = 4000;  // points; wider than any sheet

// Sizes and breaks must not depend on the machine's locale, screen or hinting.
void settle(PangoContext* context) {
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context, options);
  cairo_font_options_destroy(options);
  pango_cairo_context_set_resolution(context, 72);
  pango_context_set_round_glyph_positions(context, FALSE);
  pango_context_set_language(context, pango_language_from_string("en"));
  pango_context_set_base_dir(context, PANGO_DIRECTION_LTR);
}

void insert_attribute(PangoAttrList* list, PangoAttribute* attribute, std::size_t from, std::size_t to) {
  attribute->start_index = static_cast<guint>(from);
  attribute->end_index = static_cast<guint>(to);
  pango_attr_list_insert(list, attribute);
}

// A dose such as '2 x 20 s' stays on one line, and a number with what it counts: '3 passes'.
std::string unbroken(const std::string& text) {
  constexpr std::string_view kTimes = "\u00D7";
  const auto digit = [](char letter) { return letter >= '0' && letter <= '9'; };
  const auto small = [](char letter) { return letter >= 'a' && letter <= 'z'; };
  const std::string_view all = text;
  std::string out;
  for (std::size_t at = 0; at < all.size(); ++at) {
    const bool before_times = all.substr(at + 1).starts_with(kTimes);
    const bool after_times = all.substr(0, at).ends_with(kTimes);
    const bool unit = at > 0 && at + 1 < all.size() && digit(all[at - 1]) && small(all[at + 1]);
    if (all[at] == ' ' && (before_times || after_times || unit)) {
      out += "\u00A0";
    } else {
      out += all[at];
    }
  }
  return out;
}

// After a lead that is read from the right, a mark keeps the rest in its own direction.
std::string joined(const Text& text) {
  if (text.lead.empty() || text.text.empty()) return unbroken(text.lead + text.text);
  const bool turned = reads_from_right(text.lead);
  return unbroken(text.lead) + (turned ? "\u200E " : " ") + unbroken(text.text);
}

// Paragraphs keep their own direction, but all stand at the same edge of the box; with a lead of ours the
// page's direction holds.
void align(PangoLayout* layout, const Text& text) {
  pango_layout_set_auto_dir(layout, text.lead.empty() ? TRUE : FALSE);
  const bool turned = pango_layout_get_direction(layout, 0) == PANGO_DIRECTION_RTL;
  const bool right = (text.align == Align::kRight) != turned;
  pango_layout_set_alignment(layout, text.align == Align::kCentre ? PANGO_ALIGN_CENTER
                                     : right                      ? PANGO_ALIGN_RIGHT
                                                                  : PANGO_ALIGN_LEFT);
}

Owned<PangoLayout> make_layout(PangoContext* context, const Text& text) {
  Owned<PangoLayout> layout(pango_layout_new(context));
  const Typeface face = typeface(text.style);
  PangoFontDescription* description = pango_font_description_from_string(kFamilies);
  pango_font_description_set_absolute_size(description, face.size * PANGO_SCALE);
  pango_font_description_set_weight(description, face.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description(layout.get(), description);
  pango_font_description_free(description);
  const std::string whole = joined(text);
  pango_layout_set_text(layout.get(), whole.data(), static_cast<int>(whole.size()));
  PangoAttrList* attributes = pango_attr_list_new();
  insert_attribute(attributes, pango_attr_font_features_new("tnum=1"), 0, whole.size());
  if (!text.lead.empty()) {
    insert_attribute(attributes, pango_attr_weight_new(PANGO_WEIGHT_BOLD), 0, unbroken(text.lead).size());
  }
  pango_layout_set_attributes(layout.get(), attributes);
  pango_attr_list_unref(attributes);
  pango_layout_set_width(layout.get(), static_cast<int>(std::floor(text.box.width * PANGO_SCALE)));
  pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
  pango_layout_set_ellipsize(layout.get(), PANGO_ELLIPSIZE_END);
  pango_layout_set_height(layout.get(), -text.max_lines);
  align(layout.get(), text);
  return layout;
}

Extent extent_in(PangoContext* context, const Text& text) {
  const Owned<PangoLayout> layout = make_layout(context, text);
  PangoRectangle logical;
  pango_layout_get_extents(layout.get(), nullptr, &logical);
  return {static_cast<double>(logical.width) / PANGO_SCALE, static_cast<double>(logical.height) / PANGO_SCALE,
          pango_layout_is_ellipsized(layout.get()) != FALSE,
          static_cast<double>(pango_layout_get_baseline(layout.get())) / PANGO_SCALE};
}

Colour colour_of(Ink ink) {
  switch (ink) {
    case Ink::kInk:
      return kInkColour;
    case Ink::kSoft:
      return kSoftColour;
    case Ink::kChalk:
      return kChalkColour;
    case Ink::kAccent:
      return kAccentColour;
    case Ink::kPaper:
      return {1, 1, 1};
  }
  return kInkColour;
}

}  // namespace

void ObjectRelease::operator()(void* object) const { g_object_unref(object); }

PangoMeasure::PangoMeasure() : context_(pango_font_map_create_context(pango_cairo_font_map_get_default())) {
  settle(context_.get());
}

const Extent& PangoMeasure::unbroken(const std::string& lead, const std::string& text, TextStyle style) const {
  const Unbroken key{lead, text, style};
  const auto found = unbroken_.find(key);
  if (found != unbroken_.end()) return found->second;
  return unbroken_.emplace(key, extent_in(context_.get(), {{0, 0, kUnbounded, 0}, style, lead, text})).first->second;
}

Extent PangoMeasure::extent(const std::string& lead, const std::string& text, TextStyle style, double width,
                            int max_lines) const {
  // Most texts of a card stand on one line at every width that the layout tries: they are shaped once.
  const Extent& line = unbroken(lead, text, style);
  if (!line.cut && line.width <= std::floor(width * PANGO_SCALE) / PANGO_SCALE) return line;
  const Key key{lead, text, style, width, max_lines};
  const auto found = seen_.find(key);
  if (found != seen_.end()) return found->second;
  const Text mark{{0, 0, width, 0}, style, lead, text, Align::kLeft, max_lines, Ink::kInk};
  return seen_.emplace(key, extent_in(context_.get(), mark)).first->second;
}

PangoPainter::PangoPainter(cairo_t* canvas) : canvas_(canvas), context_(pango_cairo_create_context(canvas)) {
  settle(context_.get());
}

void PangoPainter::paint(const Text& text) const {
  const Owned<PangoLayout> layout = make_layout(context_.get(), text);
  const Colour colour = colour_of(text.ink);
  cairo_set_source_rgb(canvas_, colour.red, colour.green, colour.blue);
  cairo_move_to(canvas_, text.box.x, text.box.y);
  pango_cairo_show_layout(canvas_, layout.get());
}

}  // namespace lanework::draw
