#include "core/ledger/consent.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace lanework::ledger {
namespace {

constexpr std::string_view kConsent = "consent";

std::string text_at(const Node& table, std::string_view key) {
  const Node* node = table.find(key);
  return node != nullptr && node->kind == Node::Kind::kText ? node->text : std::string();
}

}  // namespace

std::string_view consent_word(Consent consent) {
  constexpr std::array<std::string_view, 3> kWords = {"never-asked", "given", "withheld"};
  return kWords.at(static_cast<std::size_t>(consent));
}

std::vector<std::string> purposes(const KindTable& kinds) {
  const Kind* kind = kinds.find(kConsent);
  const Field* field = kind == nullptr ? nullptr : kind->field("purpose");
  return field == nullptr ? std::vector<std::string>() : field->words;
}

Consent consent_of(const State& state, const std::string& player, std::string_view purpose) {
  Consent out = Consent::kNeverAsked;
  const ConsentKey first{player, std::string(purpose), {}, {}};
  for (auto at = state.consents.lower_bound(first); at != state.consents.end(); ++at) {
    const auto& [key, answer] = *at;
    if (key.player != player || key.purpose != purpose) break;
    if (text_at(answer, "answer") != "given") return Consent::kWithheld;
    if (key.by == "guardian") out = Consent::kGiven;
  }
  return out;
}

State consents_among(const std::vector<Received>& entries, const KindTable& kinds) {
  std::vector<Received> consents;
  std::copy_if(entries.begin(), entries.end(), std::back_inserter(consents),
               [](const Received& one) { return one.entry.kind == kConsent; });
  return fold(std::move(consents), kinds);
}

std::string_view purpose_of(const Entry& entry, const KindTable& kinds) {
  const Kind* kind = kinds.find(entry.kind);
  return kind == nullptr ? std::string_view() : std::string_view(kind->purpose);
}

bool is_open(const Entry& entry, const State& consents, const KindTable& kinds) {
  const std::string_view purpose = purpose_of(entry, kinds);
  return purpose.empty() || consent_of(consents, text_at(entry.whole, "player"), purpose) == Consent::kGiven;
}

Open only_open(std::vector<Received> entries, const KindTable& kinds) {
  const State consents = consents_among(entries, kinds);
  Open out;
  out.entries.reserve(entries.size());
  for (Received& one : entries) {
    if (is_open(one.entry, consents, kinds)) {
      out.entries.push_back(std::move(one));
    } else {
      ++out.left_out;
    }
  }
  return out;
}

void close_records(State& state, const KindTable& kinds) {
  const auto closed = [&](std::string_view kind, const std::string& player) {
    const Kind* found = kinds.find(kind);
    return found != nullptr && !found->purpose.empty() && consent_of(state, player, found->purpose) != Consent::kGiven;
  };
  const auto injuries =
      std::erase_if(state.injuries, [&](const auto& one) { return closed("injury-opened", one.second.player); });
  const auto screenings =
      std::erase_if(state.screenings, [&](const Node& one) { return closed("screening", text_at(one, "player")); });
  state.closed += static_cast<std::int64_t>(injuries + screenings);
}

}  // namespace lanework::ledger
