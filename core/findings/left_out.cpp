#include "core/findings/left_out.h"

namespace lanework::findings {
namespace {

std::string injuries(const LeftOut& left_out, const Speaker& speaker) {
  return speaker.say(
      left_out.injuries == 1 ? Sentence<1>{"{} injury", "{} lesión"} : Sentence<1>{"{} injuries", "{} lesiones"},
      left_out.injuries);
}

std::string places(const LeftOut& left_out, const Speaker& speaker) {
  return speaker.say(left_out.places == 1 ? Sentence<1>{"{} place", "{} plaza"} : Sentence<1>{"{} places", "{} plazas"},
                     left_out.places);
}

std::string for_the_board(const LeftOut& left_out, const Speaker& speaker) {
  if (left_out.injuries >= kSmallCell && left_out.people >= kSmallCell)
    return speaker.say({"Left out for want of consent to statistics: {}.",
                        "Sin contar, por falta de consentimiento para estadísticas: {}."},
                       injuries(left_out, speaker));
  return speaker.say(
      Words{"Injuries of players without consent to statistics are left out: none, or too few to say how many.",
            "No se cuentan las lesiones de jugadores sin consentimiento para estadísticas: ninguna, o demasiado pocas "
            "para decir cuántas."});
}

}  // namespace

std::string left_out_words(const LeftOut& left_out, Reader reader, Language language) {
  const Speaker speaker(language);
  if (reader == Reader::kBoard) return for_the_board(left_out, speaker);
  std::string out;
  if (left_out.injuries + left_out.places > 0) {
    out = speaker.say({"Left out for want of consent to statistics: {} and {} at sessions.",
                       "Sin contar, por falta de consentimiento para estadísticas: {} y {} en sesiones."},
                      injuries(left_out, speaker), places(left_out, speaker));
  }
  if (left_out.closed > 0) {
    const Sentence<1> closed =
        left_out.closed == 1
            ? Sentence<1>{"{} record of an injury or a screen, of any day, is closed for want of consent to a record.",
                          "{} registro de una lesión o de una prueba, de cualquier día, está cerrado por falta de "
                          "consentimiento para un registro."}
            : Sentence<1>{"{} records of injuries and screens, of any day, are closed for want of consent to a record.",
                          "{} registros de lesiones y pruebas, de cualquier día, están cerrados por falta de "
                          "consentimiento para un registro."};
    out += (out.empty() ? "" : " ") + speaker.say(closed, left_out.closed);
  }
  return out;
}

}  // namespace lanework::findings
