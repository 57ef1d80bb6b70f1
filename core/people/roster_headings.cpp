#include "core/people/roster_headings.h"

#include <algorithm>
#include <array>

namespace lanework::people {
namespace {

struct Synonyms {
  RosterColumn meaning;
  MeasureUnit unit;  // assumed where neither heading nor cell states one
  std::string_view words;
};

// Written without accents and punctuation, separated by bars. 'weight' in English states no unit: some
// clubs weigh in pounds. In the other languages kilograms go without saying.
constexpr std::array<Synonyms, 13> kSynonyms = {{
    {RosterColumn::kId, MeasureUnit::kNone,
     "id|player id|member id|member no|member number|membership no|membership number|registration no|"
     "registration number|licence no|licence number|license number|spieler id|mitgliedsnummer|"
     "passnummer|numero de licence|licence|licencia|numero de socio|tessera|numero tessera|lidnummer|numer licencji|"
     "medlemsnummer"},
    {RosterColumn::kName, MeasureUnit::kNone,
     "name|player|player name|players name|name of player|full name|fullname|athlete|athlete name|child|child name|"
     "childs name|spieler|spielerin|spielername|vor und nachname|name vorname|nom|nom complet|nom et prenom|"
     "nom prenom|joueur|joueuse|nombre|nombre completo|nombre y apellidos|jugador|jugadora|nome|nome completo|"
     "nome e cognome|giocatore|giocatrice|jogador|jogadora|naam|volledige naam|speler|speelster|imie i nazwisko|"
     "zawodnik|zawodniczka|namn|spelare|navn|spiller|jmeno a prijmeni|hrac|nev|ime i prezime|ime in priimek|"
     "имя и фамилия|фамилия и имя|имя фамилия|фамилия имя|фио|игрок|імя та прізвище|прізвище та імя|гравець|"
     "ονοματεπωνυμο|παικτης|ad soyad|adi soyadi|oyuncu|שם|שם מלא|الاسم|اسم اللاعب|姓名|氏名|名前|이름|성명"},
    {RosterColumn::kGivenName, MeasureUnit::kNone,
     "first name|firstname|given name|forename|vorname|prenom|nombre de pila|primeiro nome|voornaam|imie|fornamn|"
     "fornavn|jmeno|keresztnev|ime|имя|имя игрока|імя|ονομα|ad|adi|שם פרטי"},
    {RosterColumn::kFamilyName, MeasureUnit::kNone,
     "last name|lastname|surname|family name|nachname|familienname|nom de famille|apellido|apellidos|cognome|apelido|"
     "sobrenome|achternaam|nazwisko|efternamn|efternavn|etternavn|prijmeni|vezeteknev|prezime|priimek|фамилия|"
     "прізвище|επωνυμο|επιθετο|soyad|soyadi|שם משפחה"},
    {RosterColumn::kShirt, MeasureUnit::kNone,
     "shirt|shirt no|shirt number|squad number|jersey|jersey no|jersey number|kit number|trikot|trikotnummer|"
     "ruckennummer|maillot|numero de maillot|dorsal|maglia|numero di maglia|camisola|rugnummer|numer na koszulce|"
     "trojnummer|draktnummer|troyenummer"},
    {RosterColumn::kBirth, MeasureUnit::kNone,
     "date of birth|dateofbirth|dob|d o b|birth date|birthdate|birth|birthday|born|geburtsdatum|geburtstag|geboren|"
     "geboren am|geb|geb datum|date de naissance|naissance|ne le|nee le|ne e le|fecha de nacimiento|fecha nacimiento|"
     "nacimiento|f nacimiento|data di nascita|nascita|nato il|nata il|data de nascimento|nascimento|geboortedatum|"
     "data urodzenia|fodelsedatum|fodt|fodselsdato|fodselsdag|datum narozeni|szuletesi datum|szuletesi ido|"
     "datum rodenja|datum rojstva|дата рождения|дата народження|ημερομηνια γεννησης|dogum tarihi|תאריך לידה|"
     "تاريخ الميلاد|出生日期|生年月日|생년월일"},
    {RosterColumn::kAge, MeasureUnit::kNone,
     "age|alter|edad|eta|idade|leeftijd|wiek|alder|vek|eletkor|starost|возраст|вік|ηλικια|yas|גיל|العمر|年龄|年齢|"
     "나이"},
    {RosterColumn::kSquads, MeasureUnit::kNone,
     "squad|squads|team|teams|squad name|team name|training group|mannschaft|mannschaften|team mannschaft|equipe|"
     "equipes|equipo|equipos|squadra|squadre|equipa|equipas|ploeg|elftal|druzyna|druzyny|lag|hold|druzstvo|csapat|"
     "ekipa|команда|команды|команди|ομαδα|takim|קבוצה|الفريق|球队|チーム|팀"},
    {RosterColumn::kSizeGroup, MeasureUnit::kNone,
     "size group|sizegroup|pairing group|partner group|grossengruppe|groupe de taille|grupo de tamano|"
     "gruppo di taglia|lengtegroep"},
    {RosterColumn::kBodyMass, MeasureUnit::kNone, "weight|body weight|bodyweight|mass|body mass|bodymass"},
    {RosterColumn::kBodyMass, MeasureUnit::kKilogram,
     "gewicht|korpergewicht|poids|peso|peso corporal|peso corporeo|lichaamsgewicht|waga|masa ciala|vikt|kroppsvikt|"
     "vekt|vaegt|hmotnost|vaha|testsuly|вес|вага|βαρος|משקל|الوزن|体重|체중|몸무게"},
    {RosterColumn::kHeight, MeasureUnit::kNone,
     "height|stature|body height|grosse|korpergrosse|taille|estatura|altura|altezza|statura|lengte|lichaamslengte|"
     "wzrost|langd|kroppslangd|hoyde|hojde|vyska|magassag|visina|рост|зріст|υψος|boy|גובה|الطول|身高|身長|키"},
    {RosterColumn::kContact, MeasureUnit::kNone,
     "contact ok|contact okay|contact allowed|contact consent|contact agreed|contact drills|contact drills ok|"
     "consent to contact|physical contact|body contact|partner contact|shoulder contact|korperkontakt|kontakt ok|"
     "korperkontakt erlaubt|contact physique|contact autorise|contacto fisico|contacto permitido|contatto fisico|"
     "contatto consentito|contato fisico|lichamelijk contact|kontakt fizyczny|fysisk kontakt|kroppskontakt"},
}};

std::vector<std::string> words_of(std::string_view cell, const TextForms& forms) {
  std::string text = loose_form(forms, cell);
  text.erase(std::remove(text.begin(), text.end(), '\''), text.end());
  for (char& c : text) {
    if (std::string_view("()[]{}<>:;,.*_/\\-#?!+=|\n\r\t").find(c) != std::string_view::npos) c = ' ';
  }
  std::vector<std::string> words;
  std::string word;
  for (const char c : tidy(text)) {
    if (c != ' ') {
      word += c;
      continue;
    }
    words.push_back(word);
    word.clear();
  }
  if (!word.empty()) words.push_back(word);
  return words;
}

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
  return text;
}

bool one_of(std::string_view word, std::initializer_list<std::string_view> list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

// 'dd mm yyyy' at the end of a heading, also in German, French, Spanish, Italian and Polish letters.
DateOrder take_date_order(std::vector<std::string>& words) {
  if (words.size() < 4) return DateOrder::kAsTheColumnTells;
  const auto day = [](const std::string& word) { return one_of(word, {"d", "dd", "t", "tt", "j", "jj", "g", "gg"}); };
  const auto month = [](const std::string& word) { return one_of(word, {"m", "mm"}); };
  const auto year = [](const std::string& word) {
    return one_of(word, {"yy", "yyyy", "jj", "jjjj", "aa", "aaaa", "rr", "rrrr"});
  };
  const std::string first = words[words.size() - 3];
  const std::string second = words[words.size() - 2];
  const std::string third = words[words.size() - 1];
  DateOrder order = DateOrder::kAsTheColumnTells;
  if (day(first) && month(second) && year(third)) {
    order = DateOrder::kDayFirst;
  } else if (month(first) && day(second) && year(third)) {
    order = DateOrder::kMonthFirst;
  } else if (!(year(first) && month(second) && day(third))) {
    return order;
  }
  words.resize(words.size() - 3);
  return order;
}

// 'kg' of 'body mass in kg'.
MeasureUnit take_unit(std::vector<std::string>& words) {
  if (words.size() < 2) return MeasureUnit::kNone;
  const MeasureUnit unit = unit_named(words.back());
  if (unit == MeasureUnit::kNone) return unit;
  words.pop_back();
  if (words.size() > 1 && one_of(words.back(), {"in", "en", "em"})) words.pop_back();
  return unit;
}

// Is the text one of the words between the bars?
bool stands_in(std::string_view list, std::string_view text) {
  for (std::size_t at = list.find(text); at != std::string_view::npos; at = list.find(text, at + 1)) {
    const std::size_t end = at + text.size();
    if ((at == 0 || list[at - 1] == '|') && (end == list.size() || list[end] == '|')) return true;
  }
  return false;
}

const Synonyms* synonyms_with(const std::string& text) {
  const auto row = std::find_if(kSynonyms.begin(), kSynonyms.end(),
                                [&text](const Synonyms& synonyms) { return stands_in(synonyms.words, text); });
  return row != kSynonyms.end() ? &*row : nullptr;
}

Headings headings_of(const SheetRow& row, const TextForms& forms) {
  Headings headings;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    std::optional<Heading> heading = read_heading(row.cells[i].text, forms);
    if (!heading) continue;
    heading->column = static_cast<int>(i);
    headings.known.push_back(std::move(*heading));
  }
  return headings;
}

constexpr std::size_t kMostTitleRows = 40;

}  // namespace

const Heading* Headings::find(RosterColumn meaning) const {
  for (const Heading& heading : known) {
    if (heading.meaning == meaning) return &heading;
  }
  return nullptr;
}

std::string plain_words(std::string_view cell, const TextForms& forms) { return joined(words_of(cell, forms)); }

std::optional<Heading> read_heading(std::string_view cell, const TextForms& forms) {
  constexpr std::size_t kLongestHeading = 80;
  if (cell.empty() || cell.size() > kLongestHeading || cell.find('|') != std::string_view::npos) return {};
  std::vector<std::string> words = words_of(cell, forms);
  Heading heading;
  heading.as_written = tidy(cell);
  heading.date_order = take_date_order(words);
  const Synonyms* row = words.empty() ? nullptr : synonyms_with(joined(words));
  if (row == nullptr) {
    heading.unit = take_unit(words);
    row = words.empty() ? nullptr : synonyms_with(joined(words));
  }
  if (row == nullptr) return {};
  heading.meaning = row->meaning;
  if (heading.unit == MeasureUnit::kNone) heading.unit = row->unit;
  return heading;
}

std::optional<Headings> find_headings(const Sheet& sheet, const TextForms& forms) {
  std::optional<Headings> best;
  for (std::size_t i = 0; i < sheet.rows.size() && i < kMostTitleRows; ++i) {
    Headings headings = headings_of(sheet.rows[i], forms);
    const bool names = headings.find(RosterColumn::kName) != nullptr ||
                       headings.find(RosterColumn::kGivenName) != nullptr ||
                       headings.find(RosterColumn::kFamilyName) != nullptr;
    if (!names || (best && best->known.size() >= headings.known.size())) continue;
    headings.row = static_cast<int>(i);
    best = std::move(headings);
  }
  return best;
}

int count_known_headings(const Sheet& sheet, const TextForms& forms) {
  const std::optional<Headings> headings = find_headings(sheet, forms);
  return headings ? static_cast<int>(headings->known.size()) : 0;
}

}  // namespace lanework::people
