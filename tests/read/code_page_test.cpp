// Which code page a list of names was written in, and UTF-16 without its mark. The names are common ones
// of each language, invented persons; written with the same library's converters.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "app/read/code_pages.h"
#include "app/read/decode_text.h"
#include "tests/read/encode_text.h"

namespace lanework::read {
namespace {

struct NamesOf {
  const char* language;
  const char* encoding;  // what the converter is called
  std::string text;
};

const std::vector<NamesOf> kNames = {
    {"German", "windows-1252", "Name;Geburtsdatum\nJürgen Groß;1\nBärbel Klein;2\nSören Öhlmann;3\n"},
    {"French", "windows-1252", "Nom;Né le\nChloé Lefèvre;1\nFrançois Noël;2\nÉlodie Gaël;3\n"},
    {"Spanish", "windows-1252", "Nombre;Edad\nLucía Muñoz;1\nÁngel Ibáñez;2\nBegoña Peña;3\n"},
    {"Nordic", "windows-1252", "Name;Age\nÅse Sørensen;1\nBjörn Åström;2\nMäkelä Jyrki;3\nÞór;4\n"},
    {"Portuguese", "windows-1252", "Nome;Idade\nJoão Conceição;1\nInês Simões;2\n"},
    {"OneSpanishName", "windows-1252", "Name,Age\nLucia Muñoz,12\nTom Hill,12\n"},
    {"Mixed", "windows-1252", "Name,Age\nZoë Klein,12\nSeán Ó Briain,12\nÅse Dahl,12\nMuñoz Gil,11\nçelik,12\n"},
    {"Polish", "windows-1250", "Imię i nazwisko;Wiek\nŁukasz Woźniak;1\nZofia Kamińska;2\nMałgorzata Żak;3\n"},
    {"Czech", "windows-1250", "Jméno;Věk\nJiří Dvořák;1\nŠárka Němcová;2\nTomáš Beneš;3\n"},
    {"Hungarian", "windows-1250", "Name;Age\nGergő Szűcs;1\nSára Kőműves;2\n"},
    {"Russian", "windows-1251", "Имя;Возраст\nИван Петров;12\nЮлия Щукина;13\n"},
    {"Ukrainian", "windows-1251", "Name;Age\nЇжак Гнатюк;12\nЄва Ґудзь;13\n"},
    {"Greek", "windows-1253", "Όνομα;Ηλικία\nΓιώργος Παππάς;12\nΕλένη Νικολάου;13\n"},
    {"Turkish", "windows-1254", "Ad;Yaş\nÇağla Yıldız;12\nŞule Öztürk;13\nİpek Güneş;12\n"},
    {"Lithuanian", "windows-1257", "Name;Age\nŽemaitė Kazlauskienė;12\nRūta Šimkutė;13\nJūratė Ąžuolas;12\n"},
    {"Hebrew", "windows-1255", "שם;גיל\nשרה לוי;12\nדוד כהן;13\n"},
    {"Arabic", "windows-1256", "الاسم;العمر\nليلى حسن;12\nيوسف علي;13\n"},
    {"MacFrench", "macintosh", "Nom;Âge\nChloé Lefèvre;1\nFrançois Noël;2\nÉlodie Gaël;3\n"},
    {"Japanese", "windows-31j", "氏名,年齢\n佐藤花子,12\n田中太郎,13\n鈴木さくら,12\n"},
    {"Chinese", "gb18030", "姓名,年龄\n王小明,12\n李娜,13\n张伟,12\n"},
    {"Thai", "windows-874", "ชื่อ,อายุ\nสมชาย ใจดี,12\nมาลี ทองคำ,13\n"},
    {"Taiwanese", "windows-950", "姓名,年齡\n陳小明,12\n林怡君,13\n"},
    {"Korean", "windows-949", "이름,나이\n김하늘,12\n이바다,13\n박서준,12\n"},
};

TEST(CodePages, AreToldByTheirLetters) {
  for (const NamesOf& names : kNames) {
    const auto decoded = decode_text("r.csv", encode(names.text, names.encoding));
    ASSERT_TRUE(decoded) << names.language;
    EXPECT_EQ(decoded.value().text, names.text) << names.language << " read as " << decoded.value().encoding;
  }
}

TEST(CodePages, Utf16NeedsNoMark) {
  for (const NamesOf& names : kNames) {
    for (const char* encoding : {"UTF-16LE", "UTF-16BE"}) {
      const auto decoded = decode_text("r.csv", encode(names.text, encoding));
      ASSERT_TRUE(decoded) << names.language << ' ' << encoding << ' ' << to_line(decoded.faults().front());
      EXPECT_EQ(decoded.value().text, names.text) << names.language << ' ' << encoding;
    }
  }
}

// That page keeps accents apart from their letters; they come back in one piece.
TEST(CodePages, VietnameseAccentsJoinTheirLetters) {
  const auto decoded = decode_text("r.csv", encode("Name,Age\nĐư\u0301c Hoàng,12\nLê Hương,13\n", "windows-1258"));
  ASSERT_TRUE(decoded);
  EXPECT_EQ(decoded.value().text, "Name,Age\nĐức Hoàng,12\nLê Hương,13\n");
}

TEST(CodePages, AStatedOneIsTaken) {
  const std::string text = "Name;Wiek\nKamiński;12\n";
  const auto decoded = decode_text("r.csv", encode(text, "windows-1250"), "windows-1250");
  ASSERT_TRUE(decoded);
  EXPECT_EQ(decoded.value().text, text);
}

TEST(CodePages, EveryNameThatCanBeStatedHasAConverter) {
  for (const std::string_view name : encoding_names()) {
    const auto decoded = decode_text("r.csv", encode("Name;Age\n", std::string(name).c_str()), std::string(name));
    ASSERT_TRUE(decoded) << name;
    EXPECT_EQ(decoded.value().text, "Name;Age\n") << name;
  }
}

}  // namespace
}  // namespace lanework::read
