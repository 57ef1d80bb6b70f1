#include "core/findings/emphasis_reference.h"

#include <algorithm>
#include <utility>

namespace lanework::findings {
namespace {

using records::Field;

class ReferenceReader {
 public:
  ReferenceReader(const Document& document, const records::Terms& terms, const std::vector<std::string>& families)
      : terms_(terms), families_(families), root_(document.file, &document.root, {}, faults_) {}

  Result<EmphasisReference> read() {
    out_.weighs_as_injuries = static_cast<int>(root_.integer("weighs_as_injuries", 1, 10000));
    out_.margin_percent = static_cast<int>(root_.integer("margin_percent", 0, 200));
    out_.fewest_injuries = static_cast<int>(root_.integer("fewest_injuries", 1, 10000));
    read_terms("leave_out_contact", Field::kContact, out_.leave_out_contact);
    read_terms("leave_out_recurrence", Field::kRecurrence, out_.leave_out_recurrence);
    read_terms("leave_out_tissue", Field::kTissue, out_.leave_out_tissue);
    out_.sources = read_sources(root_);
    for (TableReader& row : root_.tables("region")) read_region(row);
    if (faults_.empty()) check_regions();
    root_.finish();
    if (!faults_.empty()) return std::move(faults_);
    std::sort(out_.regions.begin(), out_.regions.end(),
              [](const RegionReference& a, const RegionReference& b) { return a.region < b.region; });
    return std::move(out_);
  }

 private:
  const records::Terms& terms_;
  const std::vector<std::string>& families_;
  Faults faults_;
  TableReader root_;
  EmphasisReference out_;

  static std::vector<std::string> read_sources(TableReader& table) {
    std::vector<std::string> out = table.texts("sources");
    if (out.empty()) table.fault(FaultCode::kMissing, "sources", "nothing", "at least one key of sources.toml");
    return out;
  }

  std::optional<std::uint8_t> term(TableReader& table, const char* key, Field field, const std::string& text) {
    const auto found = terms_.with_key(field, text);
    if (!found && !text.empty()) {
      table.fault(FaultCode::kUnknownName, key, quote(text),
                  std::string("a key of ") + records::field_key(field) + " in record_terms.toml");
    }
    return found;
  }

  template <class Value>
  void read_terms(const char* key, Field field, std::vector<Value>& into) {
    for (const std::string& text : root_.texts(key)) {
      if (const auto found = term(root_, key, field, text)) into.push_back(static_cast<Value>(*found));
    }
  }

  void read_region(TableReader& table) {
    RegionReference out;
    const auto region = term(table, "key", Field::kRegion, table.text("key"));
    out.usual_percent = static_cast<int>(table.integer("usual_percent", 1, 99));
    out.families = table.texts("families");
    for (const std::string& family : out.families) {
      if (std::find(families_.begin(), families_.end(), family) != families_.end()) continue;
      table.fault(FaultCode::kUnknownName, "families", quote(family), "keys of families.toml");
    }
    out.sources = read_sources(table);
    table.finish();
    if (!region) return;
    out.region = static_cast<records::Region>(*region);
    const bool several = terms_.group(out.region) == records::RegionGroup::kSeveral;
    const auto same = [&](const RegionReference& other) { return other.region == out.region; };
    if (several || std::any_of(out_.regions.begin(), out_.regions.end(), same)) {
      table.fault(several ? FaultCode::kUnknownName : FaultCode::kDuplicate, "key",
                  quote(terms_.term(Field::kRegion, out.region).key),
                  several ? "a region of the body" : "each region once");
    }
    out_.regions.push_back(std::move(out));
  }

  void check_regions() {
    int sum = 0;
    for (const RegionReference& row : out_.regions) sum += row.usual_percent;
    const auto& all = terms_.of(Field::kRegion);
    for (std::size_t i = 0; i < all.size(); ++i) {
      const auto region = static_cast<records::Region>(i);
      if (terms_.group(region) == records::RegionGroup::kSeveral) continue;
      const auto same = [&](const RegionReference& row) { return row.region == region; };
      if (std::any_of(out_.regions.begin(), out_.regions.end(), same)) continue;
      root_.fault(FaultCode::kMissing, "region", "no row " + quote(all[i].key), "a row for each region");
    }
    if (faults_.empty() && sum != 100) {
      root_.fault(FaultCode::kOutOfRange, "region", "usual shares of " + std::to_string(sum) + " % together", "100 %");
    }
    for (const std::string& family : families_) check_family(family);
  }

  // What every region points to is set apart by nothing.
  void check_family(const std::string& family) {
    const auto points = [&](const RegionReference& row) {
      return std::find(row.families.begin(), row.families.end(), family) != row.families.end();
    };
    if (!std::all_of(out_.regions.begin(), out_.regions.end(), points)) return;
    root_.fault(FaultCode::kContradiction, "region", quote(family) + " in every region", "some regions only");
  }
};

}  // namespace

Result<EmphasisReference> read_emphasis_reference(const Document& document, const records::Terms& terms,
                                                  const std::vector<std::string>& families) {
  return ReferenceReader(document, terms, families).read();
}

}  // namespace lanework::findings
