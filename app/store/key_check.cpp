#include "app/store/key_check.h"

namespace lanework::store {
namespace {

// Not the club's: a ledger may be restored under another name.
constexpr const char* kContext = "key check";
constexpr const char* kText = "the key of this store";

}  // namespace

std::string key_check_text(const Key& key) { return sealed(key, kText, kContext); }

bool is_key_of(const Key& key, const std::string& kept) { return opened(key, kept, kContext) == std::string(kText); }

Fault another_key(const std::string& place) {
  return {FaultCode::kContradiction,
          {place, 0, 0, {}},
          "a key that is not this store's",
          "the key that the store was made with",
          "give its file by --key; where that is lost, nothing here can be read any more"};
}

std::optional<Faults> check_key(Statements& statements, const std::string& club, const Key& key) {
  constexpr const char* kAsk = "SELECT sealed FROM key_check WHERE club = $1";
  {
    Call call(statements);
    const auto kept = call.rows(kAsk, {club});
    auto asked = call.end(kept.empty() ? std::string() : text_in(kept[0][0]));
    if (!asked) return asked.faults();
    if (!kept.empty())
      return is_key_of(key, asked.value()) ? std::nullopt : std::optional<Faults>({another_key(statements.name())});
  }
  Call call(statements, Call::Of::kMany);
  const auto person =
      call.rows("SELECT tag, sealed_key FROM club_person WHERE club = $1 AND sealed_key IS NOT NULL LIMIT 1", {club});
  if (!person.empty() && !opened(key, text_in(person[0][1]), text_in(person[0][0])))
    call.fail(another_key(statements.name()));
  call.changed("INSERT INTO key_check (club, sealed) VALUES ($1, $2) ON CONFLICT DO NOTHING",
               {club, Bytes{key_check_text(key)}});
  // Somebody else may have been first.
  const auto kept = call.rows(kAsk, {club});
  if (!call.failed() && (kept.empty() || !is_key_of(key, text_in(kept[0][0]))))
    call.fail(another_key(statements.name()));
  const auto ended = call.end(true);
  return ended ? std::nullopt : std::optional<Faults>(ended.faults());
}

}  // namespace lanework::store
