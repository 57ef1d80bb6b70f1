// Pages to bytes: PDF, SVG, PNG.
#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <cairo.h>

#include <cmath>
#include <memory>

#include "app/draw/card.h"
#include "app/draw/paint.h"
#include "app/draw/png_bytes.h"

namespace lanework::draw {
namespace {

using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;
using Canvas = std::unique_ptr<cairo_t, decltype(&cairo_destroy)>;

cairo_status_t collect(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

Fault cannot_write(const std::string& format, cairo_status_t status) {
  return {FaultCode::kCannotWrite, {"", 0, 0, format}, cairo_status_to_string(status), "a page that can be drawn", ""};
}

Fault no_such_side(int side, const Pages& pages) {
  return {FaultCode::kOutOfRange,
          {"", 0, 0, "side"},
          std::to_string(side),
          "a side from 0 to " + std::to_string(static_cast<int>(pages.sides.size()) - 1),
          ""};
}

bool has_side(const Pages& pages, int side) { return side >= 0 && side < static_cast<int>(pages.sides.size()); }

void fill(cairo_t* canvas, Colour colour) {
  cairo_set_source_rgb(canvas, colour.red, colour.green, colour.blue);
  cairo_paint(canvas);
}

// cairo counts surfaces over the life of the process and writes the count into the SVG.
std::string without_surface_count(std::string svg) {
  const std::string prefix = "\"surface";
  for (std::size_t at = svg.find(prefix); at != std::string::npos; at = svg.find(prefix, at)) {
    const std::size_t from = at + prefix.size();
    std::size_t to = from;
    while (to < svg.size() && svg[to] >= '0' && svg[to] <= '9') ++to;
    svg.replace(from, to - from, "-page");
    at = from;
  }
  return svg;
}

}  // namespace

Result<std::string> write_pdf(const Pages& pages) {
  std::string bytes;
  const Surface surface(cairo_pdf_surface_create_for_stream(&collect, &bytes, pages.width, pages.height),
                        &cairo_surface_destroy);
  cairo_pdf_surface_restrict_to_version(surface.get(), CAIRO_PDF_VERSION_1_5);
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, pages.title.c_str());
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "Lanework");
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, pages.created.c_str());
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_MOD_DATE, pages.created.c_str());
  const Canvas canvas(cairo_create(surface.get()), &cairo_destroy);
  for (const Page& page : pages.sides) {
    paint_page(canvas.get(), page, {1, 1, 1});
    cairo_show_page(canvas.get());
  }
  cairo_surface_finish(surface.get());
  const cairo_status_t status = cairo_surface_status(surface.get());
  if (status != CAIRO_STATUS_SUCCESS) return cannot_write("pdf", status);
  return bytes;
}

Result<std::string> write_svg(const Pages& pages, int side) {
  if (!has_side(pages, side)) return no_such_side(side, pages);
  std::string bytes;
  const Surface surface(cairo_svg_surface_create_for_stream(&collect, &bytes, pages.width, pages.height),
                        &cairo_surface_destroy);
  const Canvas canvas(cairo_create(surface.get()), &cairo_destroy);
  fill(canvas.get(), kPaperColour);
  paint_page(canvas.get(), pages.sides[static_cast<std::size_t>(side)], kPaperColour);
  cairo_show_page(canvas.get());
  cairo_surface_finish(surface.get());
  const cairo_status_t status = cairo_surface_status(surface.get());
  if (status != CAIRO_STATUS_SUCCESS) return cannot_write("svg", status);
  return without_surface_count(std::move(bytes));
}

Result<std::string> write_png(const Pages& pages, int side, int dots_per_inch) {
  if (!has_side(pages, side)) return no_such_side(side, pages);
  if (dots_per_inch < 36 || dots_per_inch > 600) {
    return Fault{FaultCode::kOutOfRange, {"", 0, 0, "dots per inch"}, std::to_string(dots_per_inch), "36 to 600", ""};
  }
  const double scale = dots_per_inch / 72.0;
  const Surface surface(
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(std::lround(pages.width * scale)),
                                 static_cast<int>(std::lround(pages.height * scale))),
      &cairo_surface_destroy);
  const Canvas canvas(cairo_create(surface.get()), &cairo_destroy);
  fill(canvas.get(), kPaperColour);
  cairo_scale(canvas.get(), scale, scale);
  paint_page(canvas.get(), pages.sides[static_cast<std::size_t>(side)], kPaperColour);
  cairo_surface_flush(surface.get());
  const cairo_status_t status = cairo_surface_status(surface.get());
  if (status != CAIRO_STATUS_SUCCESS) return cannot_write("png", status);
  std::string bytes =
      png_bytes({cairo_image_surface_get_data(surface.get()), cairo_image_surface_get_width(surface.get()),
                 cairo_image_surface_get_height(surface.get()), cairo_image_surface_get_stride(surface.get())},
                dots_per_inch);
  if (bytes.empty()) return cannot_write("png", CAIRO_STATUS_WRITE_ERROR);
  return bytes;
}

}  // namespace lanework::draw
