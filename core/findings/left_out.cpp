#include "core/findings/left_out.h"

namespace lanework::findings {
namespace {

std::string counted(std::int64_t count, const char* one, const char* many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string injuries(const LeftOut& left_out) { return counted(left_out.injuries, "injury", "injuries"); }

std::string for_the_board(const LeftOut& left_out) {
  if (left_out.injuries >= kSmallCell && left_out.people >= kSmallCell)
    return "Left out for want of consent to statistics: " + injuries(left_out) + ".";
  return "Injuries of players without consent to statistics are left out: none, or too few to say how many.";
}

}  // namespace

std::string left_out_words(const LeftOut& left_out, Reader reader) {
  if (reader == Reader::kBoard) return for_the_board(left_out);
  std::string out;
  if (left_out.injuries + left_out.places > 0) {
    out = "Left out for want of consent to statistics: " + injuries(left_out) + " and " +
          counted(left_out.places, "place", "places") + " at sessions.";
  }
  if (left_out.closed > 0) {
    out += (out.empty() ? "" : " ") +
           counted(left_out.closed, "record of an injury or a screen, of any day, is",
                   "records of injuries and screens, of any day, are") +
           " closed for want of consent to a record.";
  }
  return out;
}

}  // namespace lanework::findings
