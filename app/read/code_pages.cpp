#include "app/read/code_pages.h"

#include <unicode/locid.h>
#include <unicode/normalizer2.h>
#include <unicode/ucnv.h>
#include <unicode/ucsdet.h>
#include <unicode/ulocdata.h>
#include <unicode/uniset.h>
#include <unicode/unistr.h>

#include <memory>

namespace lanework::read {
namespace {

struct Closer {
  void operator()(UConverter* converter) const { ucnv_close(converter); }
  void operator()(UCharsetDetector* detector) const { ucsdet_close(detector); }
  void operator()(ULocaleData* data) const { ulocdata_close(data); }
};

// Letters a language is written with, both cases, from the Unicode locale data.
icu::UnicodeSet letters_of(const char* language) {
  icu::UnicodeSet letters;
  UErrorCode status = U_ZERO_ERROR;
  const std::unique_ptr<ULocaleData, Closer> data(ulocdata_open(language, &status));
  if (U_SUCCESS(status)) {
    ulocdata_getExemplarSet(data.get(), letters.toUSet(), USET_ADD_CASE_MAPPINGS, ULOCDATA_ES_STANDARD, &status);
  }
  return letters;
}

struct PageLetters {
  const CodePage* page;
  std::vector<icu::UnicodeSet> languages;
  bool words_without_blanks;  // Chinese, Japanese, Korean: each character is judged by itself
};

const std::vector<PageLetters>& letters_of_pages() {
  static const std::vector<PageLetters> all = [] {
    std::vector<PageLetters> made;
    for (const CodePage& page : code_pages()) {
      PageLetters letters{&page, {}, false};
      for (const char* language : page.languages) letters.languages.push_back(letters_of(language));
      const std::string_view first = page.languages.front();
      letters.words_without_blanks = first == "ja" || first == "zh" || first == "zh_Hant" || first == "ko";
      made.push_back(std::move(letters));
    }
    return made;
  }();
  return all;
}

bool is_letter(UChar32 c) { return u_isalpha(c) || (U_GET_GC_MASK(c) & U_GC_M_MASK) != 0; }

bool only_ascii(const icu::UnicodeString& word) {
  for (int32_t i = 0; i < word.length(); ++i) {
    if (word[i] >= 0x80) return false;
  }
  return true;
}

// 'WoŸniak': a foreign capital inside a word betrays the wrong page.
bool capital_inside(const icu::UnicodeString& word) {
  for (int32_t i = 1; i < word.length(); ++i) {
    if (word[i] >= 0x80 && u_isupper(word[i]) && u_islower(word[i - 1])) return true;
  }
  return false;
}

class FitCounter {
 public:
  explicit FitCounter(const PageLetters& letters) : letters_(letters) {}

  // Share of the words with foreign letters that one of the page's languages can spell, in thousandths;
  // -1 where the text has control characters.
  int permille(const icu::UnicodeString& text) {
    icu::UnicodeString word;
    for (int32_t i = 0; i < text.length(); i = text.moveIndex32(i, 1)) {
      const UChar32 c = text.char32At(i);
      if (c >= 0x80 && u_iscntrl(c)) return -1;
      if (is_letter(c)) {
        word.append(c);
        if (!letters_.words_without_blanks) continue;
      }
      end(word);
      if (c >= 0x80 && !is_letter(c) && !u_ispunct(c) && !u_isblank(c)) ++words_;
    }
    end(word);
    return words_ == 0 ? 0 : points_ * 500 / words_;
  }

 private:
  const PageLetters& letters_;
  int words_ = 0;
  int points_ = 0;  // two a word that can be spelt; one where a foreign small letter begins it, as no name does

  void end(icu::UnicodeString& word) {
    if (!word.isEmpty() && !only_ascii(word)) {
      ++words_;
      bool spelt = false;
      for (const icu::UnicodeSet& language : letters_.languages) spelt = spelt || language.containsAll(word);
      if (spelt && !capital_inside(word)) points_ += word[0] >= 0x80 && u_islower(word[0]) ? 1 : 2;
    }
    word.remove();
  }
};

// The detector's confidence in each page, 0 to 100, judged by the languages' letter sequences.
int detected_confidence(std::string_view bytes, const char* encoding) {
  UErrorCode status = U_ZERO_ERROR;
  const std::unique_ptr<UCharsetDetector, Closer> detector(ucsdet_open(&status));
  ucsdet_setText(detector.get(), bytes.data(), static_cast<int32_t>(bytes.size()), &status);
  int32_t count = 0;
  const UCharsetMatch** matches = ucsdet_detectAll(detector.get(), &count, &status);
  if (U_FAILURE(status)) return 0;
  int best = 0;
  for (int32_t i = 0; i < count; ++i) {
    const std::string_view name = ucsdet_getName(matches[i], &status);
    const std::string_view page = encoding;
    const bool same = name == page || (page == "windows-1252" && name == "ISO-8859-1") ||
                      (page == "windows-1250" && name == "ISO-8859-2") ||
                      (page == "windows-1254" && name == "ISO-8859-9");
    if (same) best = std::max(best, static_cast<int>(ucsdet_getConfidence(matches[i], &status)));
  }
  return best;
}

std::optional<icu::UnicodeString> decode(std::string_view bytes, const char* encoding) {
  UErrorCode status = U_ZERO_ERROR;
  const std::unique_ptr<UConverter, Closer> converter(ucnv_open(encoding, &status));
  if (U_FAILURE(status)) return {};
  ucnv_setToUCallBack(converter.get(), UCNV_TO_U_CALLBACK_STOP, nullptr, nullptr, nullptr, &status);
  const icu::UnicodeString text(bytes.data(), static_cast<int32_t>(bytes.size()), converter.get(), status);
  if (U_FAILURE(status)) return {};
  // Vietnamese and Thai pages hold accents apart from their letters.
  icu::UnicodeString composed = icu::Normalizer2::getNFCInstance(status)->normalize(text, status);
  if (U_FAILURE(status)) return {};
  return composed;
}

}  // namespace

std::optional<std::string> to_utf8(std::string_view bytes, const char* encoding) {
  const std::optional<icu::UnicodeString> text = decode(bytes, encoding);
  if (!text) return {};
  std::string out;
  text->toUTF8String(out);
  return out;
}

const std::vector<CodePage>& code_pages() {
  // In the order of preference where a text fits several equally.
  static const std::vector<CodePage> pages = {
      {"windows-1252",
       {"en", "de", "fr", "es", "it", "pt", "nl", "sv", "da", "nb", "fi", "is", "ca", "gl", "eu", "ga", "cy", "sq"}},
      {"windows-1250", {"pl", "cs", "sk", "hu", "sl", "hr", "sr_Latn", "ro"}},
      {"windows-1251", {"ru", "uk", "bg", "be", "mk", "sr"}},
      {"windows-1253", {"el"}},
      {"windows-1254", {"tr", "az"}},
      {"windows-1257", {"lt", "lv", "et"}},
      {"windows-1255", {"he"}},
      {"windows-1256", {"ar", "fa", "ur"}},
      {"windows-1258", {"vi"}},
      {"macintosh", {"de", "fr", "es", "it", "pt", "nl", "sv", "da", "nb"}},
      {"windows-31j", {"ja"}},
      {"gb18030", {"zh"}},
      {"windows-949", {"ko"}},
      {"windows-950", {"zh_Hant"}},
      {"windows-874", {"th"}},  // last: nearly every pair of bytes is also Thai
  };
  return pages;
}

const CodePage* likeliest_code_page(std::string_view bytes) {
  const PageLetters* best = nullptr;
  int best_fit = -1;
  int best_confidence = -1;
  for (const PageLetters& letters : letters_of_pages()) {
    const std::optional<icu::UnicodeString> text = decode(bytes, letters.page->encoding);
    if (!text) continue;
    const int fit = FitCounter(letters).permille(*text);
    if (fit < 0 || fit < best_fit) continue;
    if (fit == best_fit) {  // only then does the order of letters decide, which is little on a list of names
      if (letters.words_without_blanks) continue;
      if (best_confidence < 0) best_confidence = detected_confidence(bytes, best->page->encoding);
      const int confidence = detected_confidence(bytes, letters.page->encoding);
      if (confidence <= best_confidence) continue;
      best_confidence = confidence;
    } else {
      best_confidence = -1;
    }
    best_fit = fit;
    best = &letters;
  }
  return best != nullptr ? best->page : nullptr;
}

}  // namespace lanework::read
