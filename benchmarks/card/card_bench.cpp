// How long a card takes, from its matter to bytes (PNG at 144 dots per inch): goal 60 ms a page. Peer: the same number
// of lines of text set by Pango and written by Cairo with no layout of ours, the floor that the libraries allow.
#include <benchmark/benchmark.h>
#include <cairo-pdf.h>
#include <pango/pangocairo.h>

#include "app/draw/card.h"
#include "tests/draw/sample_card.h"

namespace {

using namespace lanework::draw;

enum class Format { kPdf, kSvg, kPng };

std::size_t write(const Pages& pages, Format format) {
  if (format == Format::kPdf) return write_pdf(pages).value().size();
  std::size_t bytes = 0;
  for (int side = 0; side < static_cast<int>(pages.sides.size()); ++side) {
    bytes += (format == Format::kSvg ? write_svg(pages, side) : write_png(pages, side, 144)).value().size();
  }
  return bytes;
}

void card(benchmark::State& state, Format format) {
  const CardMatter matter = sample_card(static_cast<int>(state.range(0)));
  double pages = 0;
  for (auto _ : state) {
    const Pages drawn = draw_card(matter, Paper::kA4).value();
    benchmark::DoNotOptimize(write(drawn, format));
    pages += static_cast<double>(drawn.sides.size());
  }
  state.counters["s_a_page"] = benchmark::Counter(pages, benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
}

cairo_status_t count_bytes(void* total, const unsigned char*, unsigned int length) {
  *static_cast<std::size_t*>(total) += length;
  return CAIRO_STATUS_SUCCESS;
}

// Peer: 120 lines, about as many as a card has, one paragraph, one font list.
void plain_text(benchmark::State& state) {
  std::string text;
  for (int line = 0; line < 120; ++line) text += "Side plank, knees down, 2 x 20 s a side\n";
  for (auto _ : state) {
    std::size_t bytes = 0;
    cairo_surface_t* surface = cairo_pdf_surface_create_for_stream(&count_bytes, &bytes, 595, 842);
    cairo_t* canvas = cairo_create(surface);
    PangoLayout* layout = pango_cairo_create_layout(canvas);
    PangoFontDescription* font = pango_font_description_from_string("B612 5");
    pango_layout_set_font_description(layout, font);
    pango_font_description_free(font);
    pango_layout_set_text(layout, text.c_str(), -1);
    pango_cairo_show_layout(canvas, layout);
    g_object_unref(layout);
    cairo_destroy(canvas);
    cairo_surface_finish(surface);
    cairo_surface_destroy(surface);
    benchmark::DoNotOptimize(bytes);
  }
}

BENCHMARK_CAPTURE(card, pdf, Format::kPdf)->Arg(8)->Arg(14)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(card, svg, Format::kSvg)->Arg(14)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(card, png, Format::kPng)->Arg(14)->Unit(benchmark::kMillisecond);
BENCHMARK(plain_text)->Unit(benchmark::kMillisecond);

}  // namespace
