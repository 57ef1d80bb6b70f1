#include "app/draw/figure_drawing.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <vector>

#include "tests/figure/figure_text.h"

namespace lanework::draw {
namespace {

constexpr int kWidth = 300;
constexpr int kHeight = 240;

// The drawing as brightness 0..255, row by row, on white.
std::vector<int> drawn(const figure::Figure& figure, const Box& box, const FigureLook& look = {}) {
  cairo_surface_t* surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, kWidth, kHeight);
  cairo_t* cr = cairo_create(surface);
  cairo_set_source_rgb(cr, 1, 1, 1);
  cairo_paint(cr);
  draw_figure(cr, box, figure, look);
  EXPECT_EQ(cairo_status(cr), CAIRO_STATUS_SUCCESS);
  cairo_surface_flush(surface);
  const unsigned char* data = cairo_image_surface_get_data(surface);
  const int stride = cairo_image_surface_get_stride(surface);
  std::vector<int> out;
  for (int y = 0; y < kHeight; ++y) {
    for (int x = 0; x < kWidth; ++x) out.push_back(data[y * stride + 4 * x + 1]);
  }
  cairo_destroy(cr);
  cairo_surface_destroy(surface);
  return out;
}

int count(const std::vector<int>& picture, int least, int most) {
  int n = 0;
  for (const int v : picture) n += v >= least && v <= most ? 1 : 0;
  return n;
}

const char* const kLunge = R"(
[figure]
view = "side"
main = "low"
ghost = "high"
arrow = { from = "pelvis", direction = "down" }
props = [{ kind = "cone", forward = 0.5 }, { kind = "ball", at = "hand_near" }, { kind = "wall", forward = -0.6 },
         { kind = "mat" }, { kind = "bench", forward = 0.9 }, { kind = "line", forward = 0.2 },
         { kind = "band", from = "hand_near", to = "foot_near" }]
[[figure.pose]]
label = "high"
contacts = ["feet"]
[[figure.pose]]
label = "low"
at = 0.5
contacts = ["foot_near", "toes_far"]
settle = ["knee_far"]
angles = { hip_near = 80, knee_near = 85, hip_far = -15, knee_far = 60 }
[figure.pose.partner]
forward = 1.0
contacts = ["feet"]
)";

TEST(FigureDrawing, StaysInItsBox) {
  for (const char* facing : {"right", "left"}) {
    std::string text = kLunge;
    text.insert(text.find("main ="), std::string("facing = \"") + facing + "\"\n");
    const figure::Figure figure = figure::sound_figure(text);
    const Box box{40, 30, 200, 150};
    const auto picture = drawn(figure, box);
    EXPECT_GT(count(picture, 0, 60), 500);
    for (int y = 0; y < kHeight; ++y) {
      for (int x = 0; x < kWidth; ++x) {
        const bool within = x >= 39 && x <= 241 && y >= 29 && y <= 181;
        if (within) continue;
        ASSERT_EQ(picture[static_cast<std::size_t>(y * kWidth + x)], 255) << x << ' ' << y;
      }
    }
  }
}

// A figure that faces left is the picture of the one that faces right, mirrored.
TEST(FigureDrawing, FacingLeftMirrorsThePicture) {
  figure::Figure figure = figure::sound_figure(kLunge);
  const Box box{0, 0, kWidth, kHeight};
  const auto right = drawn(figure, box);
  figure.turned = true;
  const auto left = drawn(figure, box);
  int differing = 0;
  for (int y = 0; y < kHeight; ++y) {
    for (int x = 0; x < kWidth; ++x) {
      const int a = right[static_cast<std::size_t>(y * kWidth + x)];
      const int b = left[static_cast<std::size_t>(y * kWidth + kWidth - 1 - x)];
      differing += a - b > 64 || b - a > 64 ? 1 : 0;
    }
  }
  EXPECT_LT(differing, 60);
}

// Near limbs are dark and far limbs clearly lighter, with no help from colour.
TEST(FigureDrawing, FarLimbsAreLighterThanNearOnes) {
  const auto dark_and_light = [](const char* side) {
    const std::string hip = std::string("hip_") + side;
    const figure::Figure figure = figure::sound_figure(
        "[figure]\nview = \"side\"\n[[figure.pose]]\ncontacts = [\"feet\"]\nangles = { " + hip + " = 60 }");
    const auto picture = drawn(figure, {0, 0, kWidth, kHeight});
    return std::pair{count(picture, 0, 60), count(picture, 180, 225)};
  };
  const auto [near_dark, near_light] = dark_and_light("near");
  const auto [far_dark, far_light] = dark_and_light("far");
  EXPECT_GT(near_dark + near_light / 2, far_dark);
  EXPECT_GT(far_light, 300);
}

TEST(FigureDrawing, AnEmptyFigureLeavesThePageAlone) { EXPECT_EQ(count(drawn({}, {0, 0, 100, 100}), 0, 254), 0); }

TEST(FigureDrawing, TheSameFigureGivesTheSamePicture) {
  const figure::Figure figure = figure::sound_figure(kLunge);
  EXPECT_EQ(drawn(figure, {0, 0, kWidth, kHeight}), drawn(figure, {0, 0, kWidth, kHeight}));
}

}  // namespace
}  // namespace lanework::draw
