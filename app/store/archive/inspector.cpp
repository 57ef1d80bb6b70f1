#include "app/store/archive/inspector.h"

#include <utility>

#include "app/store/key_check.h"

namespace lanework::store::archive {

RowDigest::RowDigest() = default;

void RowDigest::add(RecordKind kind, const std::string& payload) {
  link_ = next_link(link_, record_bytes(kind, payload));
}

std::string RowDigest::value() const { return link_text(link_); }

void Inspector::table(const Table& table) {
  table_ = table;
  has_index_ = has_index_ || table.name == "evening";
  findings_.rows[table.name] = 0;
  digest_.add(RecordKind::kTable, table_text(table));
}

std::optional<Fault> Inspector::row(const Cells& cells) {
  ++findings_.rows[table_.name];
  digest_.add(RecordKind::kRow, row_text(cells));
  if (table_.name == "person") return person(cells);
  if (table_.name == "entry") return entry(cells);
  if (table_.name == "compaction") compaction(cells);
  if (table_.name == "evening") {
    index_.found({cell(cells, "day").bytes, cell(cells, "squad").bytes}, cell(cells, "receipt").whole);
  }
  if (table_.name == "quarantine") return aside(cells);
  if (table_.name == "key_check" && !is_key_of(key_, cell(cells, "sealed").bytes)) return another_key(where_);
  return {};
}

Findings Inspector::findings() const {
  Findings out = findings_;
  out.digest = digest_.value();
  out.past = seals_.entries();
  return out;
}

std::optional<Fault> Inspector::end() const {
  if (const auto wrong = seals_.first_wrong())
    return fault("entry " + std::to_string(*wrong) + ", whose content went by no sealed compaction, or is back");
  const auto misplaced = has_index_ ? index_.first_wrong() : std::nullopt;
  if (!misplaced) return {};
  return fault("entry " + std::to_string(*misplaced) + ", which the index of days has wrong");
}

void Inspector::compaction(const Cells& cells) {
  seals_.expect({cell(cells, "number").whole, cell(cells, "made").bytes, cell(cells, "why").bytes,
                 cell(cells, "until_day").bytes, cell(cells, "first").whole, cell(cells, "entries").whole,
                 cell(cells, "seal").bytes});
}

const Cell& Inspector::cell(const Cells& cells, const char* column) const {
  return cells.at(position_of(table_, column));
}

Fault Inspector::fault(std::string found) const {
  return {FaultCode::kFileUnreadable,
          {where_, 0, 0, {}},
          std::move(found),
          "what was taken in, under the key that it was sealed with",
          "is the key the one of this ledger?"};
}

std::optional<Fault> Inspector::person(const Cells& cells) {
  const std::string& tag = cell(cells, "tag").bytes;
  const Cell& sealed_key = cell(cells, "sealed_key");
  if (sealed_key.kind == Cell::Kind::kNull) {
    people_[tag] = std::nullopt;
    ++findings_.erased_people;
    return {};
  }
  const auto bytes = opened(key_, sealed_key.bytes, tag);
  auto key = bytes ? Key::of(*bytes) : std::nullopt;
  if (!key) return fault("a person's key that does not open");
  people_[tag] = std::move(key);
  return {};
}

std::optional<Fault> Inspector::entry(const Cells& cells) {
  const Row row{cell(cells, "receipt").whole,  cell(cells, "id").bytes,     cell(cells, "device").bytes,
                cell(cells, "sequence").whole, cell(cells, "author").bytes, cell(cells, "role").bytes,
                cell(cells, "received").bytes, cell(cells, "person").bytes, cell(cells, "body").bytes};
  const Link link = link_of(cell(cells, "link").bytes);
  const std::string name = "entry " + std::to_string(row.receipt);
  const std::size_t past_column = position_of(table_, "past");  // not in older forms
  const std::int64_t past = past_column < cells.size() ? cells[past_column].whole : 0;
  const bool holds = past != 0 ? is_emptied(row) : follows(findings_.head.link, row, link);
  if (row.receipt != findings_.head.receipt + 1 || !holds) {
    return fault(name + ", which does not follow from those before");
  }
  findings_.head = {row.receipt, link};
  if (past != 0) {
    seals_.passed_over(past, row, link);
    return {};
  }
  index_.expect(row);
  if (row.person.empty()) return {};
  const auto found = people_.find(row.person);
  if (found == people_.end()) return fault(name + ", about somebody who is not there");
  if (!found->second) {
    ++findings_.of_erased;
    return {};
  }
  if (!opened(*found->second, row.body, row.id)) return fault(name + ", which does not open");
  ++findings_.opened;
  return {};
}

std::optional<Fault> Inspector::aside(const Cells& cells) {
  const bool says_whom = position_of(table_, "person") < table_.columns.size();  // not in older forms
  const AsideRow row{cell(cells, "received").bytes,
                     cell(cells, "device").bytes,
                     cell(cells, "author").bytes,
                     cell(cells, "why").bytes,
                     cell(cells, "body").bytes,
                     {},
                     says_whom ? cell(cells, "role").bytes : std::string(),
                     says_whom ? cell(cells, "person").bytes : std::string()};
  const auto about = people_.find(row.person);
  if (!row.person.empty() && about == people_.end())
    return fault("something kept aside about somebody who is not there");
  if (!row.person.empty() && !about->second) return {};
  const Key& key = row.person.empty() ? key_ : *about->second;
  if (opened(key, row.body, aside_context(row))) return {};
  return fault("something kept aside on " + quote(row.received) + ", which does not open");
}

}  // namespace lanework::store::archive
