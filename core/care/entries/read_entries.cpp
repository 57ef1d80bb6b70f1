#include "core/care/entries/read_entries.h"

#include <algorithm>
#include <map>

#include "core/people/what_is_barred.h"

namespace lanework::care {
namespace {

constexpr std::int64_t kMostReceipts = 1'000'000'000;

class EntriesReader {
 public:
  EntriesReader(const Document& document, const ReturnRules& rules, const std::vector<std::string>& players)
      : rules_(rules), players_(players), root_(document.file, &document.root, {}, faults_) {}

  Result<std::vector<Entry>> read() {
    for (TableReader& row : root_.tables("entry")) read_entry(row);
    root_.finish();
    if (!faults_.empty()) return std::move(faults_);
    return std::move(out_);
  }

 private:
  const ReturnRules& rules_;
  const std::vector<std::string>& players_;
  Faults faults_;
  TableReader root_;
  std::vector<Entry> out_;
  std::map<std::int64_t, std::size_t> by_receipt_;

  void read_entry(TableReader& row) {
    Entry entry;
    entry.id = row.text("id");
    entry.receipt = row.integer("receipt", 1, kMostReceipts);
    entry.received = receipt_time(row);
    entry.device_time = row.text_or("device_time", "");
    entry.by = static_cast<By>(row.word("by", by_words()));
    entry.author = row.text_or("author", "");
    entry.player = row.text("player");
    if (!players_.empty() && std::find(players_.begin(), players_.end(), entry.player) == players_.end()) {
      row.fault(FaultCode::kUnknownName, "player", quote(entry.player), "the id of a player of the roster");
    }
    entry.corrects = row.text_or("corrects", "");
    entry.what = read_what(row);
    if (std::holds_alternative<Withdrawn>(entry.what) && entry.corrects.empty()) {
      row.fault(FaultCode::kMissing, "corrects", "nothing", "the id of the entry that it takes back");
    }
    const auto [known, is_new] = by_receipt_.try_emplace(entry.receipt, out_.size());
    if (!is_new && !same_content(out_[known->second], entry)) {
      row.fault(FaultCode::kDuplicate, "receipt",
                std::to_string(entry.receipt) + " of " + quote(out_[known->second].id) + " too",
                "a number of its own for each entry");
    }
    row.finish();
    out_.push_back(std::move(entry));
  }

  static ReceiptTime receipt_time(TableReader& row) {
    const std::string text = row.text("received");
    const std::optional<ReceiptTime> time = parse_receipt_time(text);
    if (!time && !text.empty()) {
      row.fault(FaultCode::kBadDate, "received", quote(text),
                "a time with its offset, such as \"2026-11-22T20:10+01:00\"");
    }
    return time.value_or(ReceiptTime{});
  }

  What read_what(TableReader& row) {
    switch (row.word("kind", kind_words())) {
      case 0:
        return Hurt{place(row), words<PainSign>(row, "signs", pain_sign_words())};
      case 1:
        return soreness(row);
      case 2:
        return RestrictionSet{restriction(row)};
      case 3:
        return Reviewed{names(row), row.date("review")};
      case 4:
        return Lifted{names(row)};
      case 5:
        return course_opened(row);
      case 6:
        return StepBegun{row.text("course"), step(row)};
      case 7:
        return symptom_check(row);
      case 8:
        return SteppedBack{row.text("course"), step(row)};
      case 9:
        return clearance(row);
      default:
        return Withdrawn{};
    }
  }

  static std::optional<catalogue::BodyArea> place(TableReader& row) {
    if (!row.has("place")) return {};
    return static_cast<catalogue::BodyArea>(row.word("place", catalogue::body_area_words()));
  }

  template <class T>
  static std::vector<T> words(TableReader& row, const char* key, const std::vector<std::string_view>& known) {
    std::vector<T> out;
    for (const std::string& text : row.texts(key)) {
      const auto found = std::find(known.begin(), known.end(), text);
      if (found != known.end()) {
        out.push_back(static_cast<T>(found - known.begin()));
        continue;
      }
      std::string list;
      for (const std::string_view one : known) list += (list.empty() ? "" : ", ") + std::string(one);
      row.fault(FaultCode::kUnknownName, key, quote(text), "one of " + list);
    }
    return out;
  }

  static std::optional<int> whole(TableReader& row, const char* key, int most) {
    if (!row.has(key)) return {};
    return static_cast<int>(row.integer(key, 0, most));
  }

  static Soreness soreness(TableReader& row) {
    PainReport report;
    report.place = place(row);
    report.before = whole(row, "before", kMostPain);
    report.during = whole(row, "during", kMostPain);
    report.next_morning = whole(row, "next_morning", kMostPain);
    report.signs = words<PainSign>(row, "signs", pain_sign_words());
    return {std::move(report)};
  }

  static people::Restriction restriction(TableReader& row) {
    people::Restriction out;
    people::read_what_is_barred(row, out);
    return out;
  }

  static EntryIds names(TableReader& row) {
    EntryIds out = row.texts("names");
    if (out.empty()) row.fault(FaultCode::kMissing, "names", "nothing", "the ids of the entries it is about");
    return out;
  }

  CourseOpened course_opened(TableReader& row) {
    CourseOpened out;
    out.course = row.text("course");
    if (!out.course.empty() && rules_.course(out.course) == nullptr) {
      std::string list;
      for (const Course& course : rules_.courses) list += (list.empty() ? "" : ", ") + course.id;
      row.fault(FaultCode::kUnknownName, "course", quote(out.course), "one of " + list);
    }
    out.rules = row.text_or("rules", "");
    out.carries = row.texts("carries");
    constexpr int kMostAge = 120;
    out.age = whole(row, "age", kMostAge);
    return out;
  }

  std::string step(TableReader& row) {
    std::string out = row.text("step");
    const auto has = [&](const Course& course) { return course.step_with(out).has_value(); };
    if (!out.empty() && std::none_of(rules_.courses.begin(), rules_.courses.end(), has)) {
      row.fault(FaultCode::kUnknownName, "step", quote(out), "the key of a step of the return rules");
    }
    return out;
  }

  static SymptomCheck symptom_check(TableReader& row) {
    static const std::vector<std::string_view> kTold = {"none", "no-worse", "worse"};
    SymptomCheck out;
    out.course = row.text("course");
    out.told =
        static_cast<SymptomCheck::Told>(row.word("symptoms", kTold, static_cast<int>(SymptomCheck::Told::kWorse)));
    out.worse_points = whole(row, "worse_points", kMostPain);
    constexpr int kMinutesADay = 24 * 60;
    out.worse_minutes = whole(row, "worse_minutes", kMinutesADay);
    out.after_session = row.boolean_or("after_session", false);
    return out;
  }

  ClearanceGiven clearance(TableReader& row) {
    ClearanceGiven out;
    out.names = row.texts("names");
    out.course = row.text_or("course", "");
    out.gate = row.text_or("gate", "");
    out.clinician = row.text("clinician");
    out.profession = row.text("profession");
    if (out.course.empty() != out.gate.empty()) {
      row.fault(FaultCode::kMissing, out.gate.empty() ? "gate" : "course", "nothing",
                "both of course and gate, or neither");
    }
    const auto has = [&](const Course& course) { return course.gate_with(out.gate).has_value(); };
    if (!out.gate.empty() && std::none_of(rules_.courses.begin(), rules_.courses.end(), has)) {
      row.fault(FaultCode::kUnknownName, "gate", quote(out.gate), "the key of a gate of the return rules");
    }
    if (out.names.empty() && out.course.empty()) {
      row.fault(FaultCode::kMissing, "names", "nothing", "the ids of the entries that it answers");
    }
    return out;
  }
};

}  // namespace

Result<std::vector<Entry>> read_entries(const Document& document, const ReturnRules& rules,
                                        const std::vector<std::string>& players) {
  return EntriesReader(document, rules, players).read();
}

}  // namespace lanework::care
