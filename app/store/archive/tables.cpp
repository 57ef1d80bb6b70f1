#include "app/store/archive/tables.h"

#include <algorithm>
#include <iterator>

namespace lanework::store::archive {

namespace {

constexpr Cell::Kind kWhole = Cell::Kind::kWhole;
constexpr Cell::Kind kText = Cell::Kind::kText;
constexpr Cell::Kind kBytes = Cell::Kind::kBytes;

std::vector<Table> of_the_ledger() {
  return {
      {"person", 1, {{"tag", kBytes}, {"sealed_key", kBytes}, {"made", kText}, {"erased", kText}}, 1, false},
      {"compaction",
       8,
       {{"number", kWhole},
        {"made", kText},
        {"why", kText},
        {"until_day", kText},
        {"first", kWhole},
        {"entries", kWhole},
        {"seal", kBytes}},
       1,
       false},
      {"entry",
       1,
       {{"receipt", kWhole},
        {"id", kBytes},
        {"device", kText},
        {"sequence", kWhole},
        {"author", kText},
        {"role", kText},
        {"received", kText},
        {"person", kBytes},
        {"body", kBytes},
        {"link", kBytes},
        {"past", kWhole, 8}},
       1,
       false},
      {"quarantine",
       1,
       {{"number", kWhole},
        {"received", kText},
        {"device", kText},
        {"author", kText},
        {"why", kText},
        {"body", kBytes},
        {"digest", kBytes, 3},
        {"role", kText, 5},
        {"person", kBytes, 5}},
       1,
       true},
  };
}

// Who may come in, who read what, and the club's lists.
std::vector<Table> beside_the_ledger() {
  return {
      {"account",
       2,
       {{"id", kText},
        {"sign_in", kText},
        {"name", kText},
        {"role", kText},
        {"password", kText},
        {"sealed_second", kBytes},
        {"second_used", kWhole},
        {"made", kWhole},
        {"ended", kWhole}},
       1,
       false},
      {"squad_grant",
       2,
       {{"account", kText},
        {"position", kWhole},
        {"squad", kText},
        {"from_day", kText},
        {"until_day", kText},
        {"substitute", kWhole}},
       2,
       false},
      {"recovery_code", 2, {{"account", kText}, {"code", kBytes}, {"used", kWhole}}, 2, false},
      {"device",
       2,
       {{"id", kText},
        {"account", kText},
        {"secret", kBytes},
        {"label", kText},
        {"paired", kWhole},
        {"seen", kWhole},
        {"sequence", kWhole},
        {"revoked", kWhole}},
       1,
       false},
      {"calendar_link",
       9,
       {{"secret", kBytes},
        {"squad", kText},
        {"made", kWhole},
        {"made_by", kText},
        {"until", kWhole},
        {"asked", kWhole},
        {"ended", kWhole},
        {"ended_by", kText}},
       1,
       false},
      {"read_past", 8, {{"last_number", kWhole}, {"last_link", kBytes}, {"made", kText}, {"seal", kBytes}}, 1, false},
      {"read_head", 2, {{"last_number", kWhole}, {"last_link", kBytes}}, 1, false},
      {"read_note",
       2,
       {{"number", kWhole},
        {"noted", kWhole},
        {"account", kText},
        {"device", kText},
        {"route", kText},
        {"squad", kText},
        {"player", kBytes},
        {"people", kWhole},
        {"link", kBytes}},
       1,
       false},
      {"evening", 3, {{"day", kText}, {"squad", kText}, {"receipt", kWhole}}, 3, false},
      {"squad", 3, {{"id", kText}, {"name", kText}}, 1, false},
      {"player", 3, {{"tag", kBytes}, {"body", kBytes}}, 1, false},
  };
}

// Plans, what the lead decided of what was kept aside, the store's key, and what the board was given.
std::vector<Table> what_was_made_of_it() {
  return {
      {"kept_plan",
       4,
       {{"number", kWhole}, {"squad", kText}, {"made", kWhole}, {"as_of", kWhole}, {"body", kBytes}},
       1,
       true},
      {"told_evenings", 9, {{"squad", kText}, {"version", kWhole}, {"told", kWhole}, {"body", kBytes}}, 1, false},
      {"looked_at",
       5,
       {{"number", kWhole}, {"receipt", kWhole}, {"account", kText}, {"decided", kText}, {"why", kText}},
       1,
       false},
      {"key_check", 5, {{"sealed", kBytes}}, 1, false},
      {"board_release", 6, {{"number", kWhole}, {"shown", kText}, {"counted", kBytes}}, 1, false},
  };
}

}  // namespace

const std::vector<Table>& tables() {
  static const std::vector<Table> kTables = [] {
    std::vector<Table> out = of_the_ledger();
    for (const auto& more : {beside_the_ledger(), what_was_made_of_it()})
      out.insert(out.end(), more.begin(), more.end());
    return out;
  }();
  return kTables;
}

std::vector<Table> tables_of_form(int form) {
  std::vector<Table> out;
  std::copy_if(tables().begin(), tables().end(), std::back_inserter(out),
               [form](const Table& table) { return table.since <= form; });
  for (Table& table : out) {
    std::erase_if(table.columns, [form](const Column& column) { return column.since > form; });
  }
  return out;
}

std::string column_names(const Table& table) {
  std::string out;
  for (const Column& column : table.columns) out += (out.empty() ? "" : ", ") + column.name;
  return out;
}

std::size_t position_of(const Table& table, const std::string& column) {
  const auto found =
      std::find_if(table.columns.begin(), table.columns.end(), [&](const Column& one) { return one.name == column; });
  return static_cast<std::size_t>(found - table.columns.begin());
}

}  // namespace lanework::store::archive
