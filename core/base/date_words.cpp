#include "core/base/date_words.h"

#include <array>

namespace lanework {
namespace {

constexpr std::array<Words, 12> kMonths = {{{"January", "enero"},
                                            {"February", "febrero"},
                                            {"March", "marzo"},
                                            {"April", "abril"},
                                            {"May", "mayo"},
                                            {"June", "junio"},
                                            {"July", "julio"},
                                            {"August", "agosto"},
                                            {"September", "septiembre"},
                                            {"October", "octubre"},
                                            {"November", "noviembre"},
                                            {"December", "diciembre"}}};
constexpr std::array<Words, 7> kWeekdays = {{{"Monday", "lunes"},
                                             {"Tuesday", "martes"},
                                             {"Wednesday", "miércoles"},
                                             {"Thursday", "jueves"},
                                             {"Friday", "viernes"},
                                             {"Saturday", "sábado"},
                                             {"Sunday", "domingo"}}};

}  // namespace

std::string weekday_name(Date date, Language language) {
  const int index = ((date.days_since_epoch + 3) % 7 + 7) % 7;  // 1970-01-01 was a Thursday
  return std::string(kWeekdays.at(static_cast<std::size_t>(index)).in(language));
}

std::string weekday_name(Date date) { return weekday_name(date, Language::kEnglish); }

std::string to_words(Date date, Language language) {
  const CivilDate c = civil(date);
  const Words month = kMonths.at(static_cast<std::size_t>(c.month - 1));
  return Speaker(language).say({"{} {} {} {}", "{} {} de {} de {}"}, weekday_name(date, language), c.day,
                               std::string(month.in(language)), c.year);
}

std::string to_words(Date date) { return to_words(date, Language::kEnglish); }

}  // namespace lanework
