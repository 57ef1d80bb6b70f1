#include "app/store/seals.h"

#include <algorithm>

namespace lanework::store {
namespace {

constexpr const char* kPurpose = "what is past";

}  // namespace

void RowsOfCompaction::add(const Row& row, const Link& link) {
  if (count_ == 0) first_ = row.receipt;
  ++count_;
  link_ = next_link(link_, chained({std::to_string(row.receipt), row.device, std::to_string(row.sequence), row.role,
                                    link_text(link)}));
}

std::string seal_of(const Key& key, const Compaction& compaction, const RowsOfCompaction& rows) {
  return keyed_digest(
      key, kPurpose,
      chained({"compaction", std::to_string(compaction.number), compaction.made, compaction.why, compaction.until_day,
               std::to_string(compaction.first), std::to_string(compaction.entries), link_text(rows.link())}));
}

std::string seal_of_reads(const Key& key, std::int64_t last_number, const Link& last_link, const std::string& made) {
  return keyed_digest(key, kPurpose, chained({"reads", std::to_string(last_number), link_text(last_link), made}));
}

std::int64_t Seals::entries() const {
  std::int64_t out = 0;
  for (const auto& [number, rows] : rows_) out += rows.count();
  return out;
}

std::optional<std::int64_t> Seals::first_wrong() const {
  std::optional<std::int64_t> out;
  const auto note = [&](std::int64_t receipt) { out = std::min(out.value_or(receipt), receipt); };
  for (const auto& [number, rows] : rows_) {
    if (compactions_.count(number) == 0) note(rows.first());
  }
  for (const auto& [number, compaction] : compactions_) {
    const auto found = rows_.find(number);
    const RowsOfCompaction rows = found == rows_.end() ? RowsOfCompaction() : found->second;
    const bool holds = rows.first() == compaction.first && rows.count() == compaction.entries &&
                       seal_of(key_, compaction, rows) == compaction.seal;
    if (!holds) note(rows.count() == 0 ? compaction.first : std::min(rows.first(), compaction.first));
  }
  return out;
}

std::string id_of_emptied(std::int64_t receipt) {
  std::string out(16, '\0');
  for (std::size_t i = 0; i < sizeof receipt; ++i) {
    out[15 - i] = static_cast<char>(static_cast<std::uint64_t>(receipt) >> (8 * i) & 0xFFU);
  }
  return out;
}

bool is_emptied(const Row& row) {
  return row.id == id_of_emptied(row.receipt) && row.author.empty() && row.received.empty() && row.person.empty() &&
         row.body.empty();
}

}  // namespace lanework::store
