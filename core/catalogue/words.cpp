#include "core/catalogue/words.h"

namespace lanework::catalogue {

using Words = std::vector<std::string_view>;

const Words& family_words() {
  static const Words kWords = {"pulse-raising", "mobility",     "hip-and-groin", "hamstring",  "trunk",
                               "balance",       "leg-strength", "jump-and-land", "run-and-cut"};
  return kWords;
}
const Words& phase_words() {
  static const Words kWords = {"start", "loosen", "build", "spring", "run"};
  return kWords;
}
const Words& formation_words() {
  static const Words kWords = {"lane", "spread", "pairs"};
  return kWords;
}
const Words& body_area_words() {
  static const Words kWords = {"head",  "neck",      "shoulder",      "elbow",       "wrist-and-hand",
                               "chest", "low-back",  "hip-and-groin", "front-thigh", "back-thigh",
                               "knee",  "lower-leg", "ankle",         "foot"};
  return kWords;
}
const Words& stress_kind_words() {
  static const Words kWords = {"load", "stretch", "impact", "twist", "speed", "contact", "pressure"};
  return kWords;
}
const Words& need_words() {
  static const Words kWords = {"partner", "wall", "ball-each", "ball-a-pair", "mat", "soft-ground", "line"};
  return kWords;
}
const Words& surface_words() {
  static const Words kWords = {"wet", "hard", "uneven", "dark"};
  return kWords;
}
const Words& intensity_words() {
  static const Words kWords = {"low", "medium", "high"};
  return kWords;
}

}  // namespace lanework::catalogue
