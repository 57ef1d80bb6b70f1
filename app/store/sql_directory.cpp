// The lists on any database that answers statements.
#include <map>
#include <memory>
#include <utility>

#include "app/store/books.h"
#include "app/store/directory.h"
#include "app/store/key_check.h"
#include "app/store/statements.h"
#include "core/base/document.h"

namespace lanework::store {
namespace {

std::string context_of(const std::string& tag) { return "on the lists/" + tag; }

std::string to_body(const ListedPlayer& player) {
  Node node = Node::make_table();
  node.set("id", Node::make_text(player.id));
  Node squads = Node::make_array();
  for (const std::string& squad : player.squads) squads.items.push_back(Node::make_text(squad));
  node.set("squads", std::move(squads));
  node.set("name", Node::make_text(player.name));
  node.set("age_group", Node::make_text(player.age_group));
  return to_json(node);
}

std::optional<ListedPlayer> from_body(const std::string& body) {
  const auto document = parse_json("lists", body);
  if (!document) return {};
  const auto text = [&](const char* key) {
    const Node* found = document.value().root.find(key);
    return found == nullptr ? std::string() : found->text;
  };
  ListedPlayer out{text("id"), {}, text("name"), text("age_group")};
  if (const Node* squads = document.value().root.find("squads")) {
    for (const Node& squad : squads->items) out.squads.push_back(squad.text);
  }
  return out;
}

class SqlDirectory final : public Directory {
 public:
  SqlDirectory(std::unique_ptr<Statements> statements, std::string club, Key key)
      : statements_(std::move(statements)), club_(std::move(club)), key_(std::move(key)) {}

  Result<Versions> versions() override {
    Call call(*statements_);
    const auto rows = call.rows("SELECT version, people_version FROM lists WHERE club = $1", {club_});
    return call.end(rows.empty() ? Versions{} : Versions{whole_in(rows[0][0]), whole_in(rows[0][1])});
  }

  Result<std::string> ledger_id() override {
    Call call(*statements_);
    const auto rows = call.rows("SELECT ledger_id FROM lists WHERE club = $1", {club_});
    return call.end(rows.empty() ? std::string() : text_in(rows[0][0]));
  }

  Result<Lists> lists() override {
    Call call(*statements_, Call::Of::kMany);
    Lists out;
    const auto names = call.rows("SELECT name FROM lists WHERE club = $1", {club_});
    if (!names.empty()) out.club = text_in(names[0][0]);
    for (const auto& row : call.rows("SELECT id, name FROM squad WHERE club = $1 ORDER BY id", {club_})) {
      out.squads.push_back({text_in(row[0]), text_in(row[1])});
    }
    std::map<std::string, ListedPlayer> players;
    for (const auto& row :
         call.rows("SELECT p.tag, o.sealed_key, p.body FROM player p JOIN club_person o "
                   "ON o.club = p.club AND o.tag = p.tag WHERE p.club = $1 AND o.sealed_key IS NOT NULL",
                   {club_})) {
      auto player = opened_player(text_in(row[0]), text_in(row[1]), text_in(row[2]));
      if (!player) {
        call.fail(unreadable());
        break;
      }
      std::string id = player->id;
      players.emplace(std::move(id), std::move(*player));
    }
    for (auto& [id, player] : players) out.players.push_back(std::move(player));
    return call.end(std::move(out));
  }

  Result<std::int64_t> keep(const Lists& lists, const std::string& when) override {
    Call call(*statements_, Call::Of::kMany);
    call.changed("UPDATE lists SET version = version + 1, name = $2 WHERE club = $1", {club_, lists.club});
    call.changed("DELETE FROM player WHERE club = $1", {club_});
    call.changed("DELETE FROM squad WHERE club = $1", {club_});
    for (const ListedSquad& squad : lists.squads) {
      call.changed("INSERT INTO squad (club, id, name) VALUES ($1, $2, $3)", {club_, squad.id, squad.name});
    }
    std::int64_t erased = 0;
    for (const ListedPlayer& player : lists.players) {
      const std::string tag = tag_text(key_, player.id);
      const auto key = key_of(call, tag, when);
      if (!key) {
        ++erased;
        continue;
      }
      call.changed("INSERT INTO player (club, tag, body) VALUES ($1, $2, $3)",
                   {club_, Bytes{tag}, Bytes{sealed(*key, to_body(player), context_of(tag))}});
    }
    return call.end(erased);
  }

  Result<bool> forget(const std::string& player) override {
    Call call(*statements_, Call::Of::kMany);
    const bool there =
        call.changes("DELETE FROM player WHERE club = $1 AND tag = $2", {club_, Bytes{tag_text(key_, player)}});
    if (there) call.changed("UPDATE lists SET version = version + 1 WHERE club = $1", {club_});
    return call.end(there);
  }

 private:
  std::unique_ptr<Statements> statements_;
  std::string club_;
  Key key_;

  [[nodiscard]] Fault unreadable() const {
    return {FaultCode::kContradiction,
            {statements_->name(), 0, 0, {}},
            "lists sealed under another key",
            "the key that this store was made with",
            {}};
  }

  [[nodiscard]] std::optional<ListedPlayer> opened_player(const std::string& tag, const std::string& sealed_key,
                                                          const std::string& body) const {
    const auto bytes = opened(key_, sealed_key, tag);
    const auto key = bytes ? Key::of(*bytes) : std::optional<Key>();
    const auto text = key ? opened(*key, body, context_of(tag)) : std::nullopt;
    return text ? from_body(*text) : std::nullopt;
  }

  // The person's, made where there is none; empty: erased.
  std::optional<Key> key_of(Call& call, const std::string& tag, const std::string& when) {
    const auto rows = call.rows("SELECT sealed_key FROM club_person WHERE club = $1 AND tag = $2", {club_, Bytes{tag}});
    if (!rows.empty()) {
      const std::string sealed_key = text_in(rows[0][0]);
      if (sealed_key.empty()) return {};
      const auto bytes = opened(key_, sealed_key, tag);
      if (!bytes) call.fail(unreadable());
      return bytes ? Key::of(*bytes) : std::nullopt;
    }
    Key key = Key::made();
    call.changed("INSERT INTO club_person (club, tag, sealed_key, made) VALUES ($1, $2, $3, $4)",
                 {club_, Bytes{tag}, Bytes{sealed(key_, bytes_text(key), tag)}, when});
    return key;
  }
};

}  // namespace

Result<std::unique_ptr<Directory>> open_sqlite_directory(const std::string& file, Key key) {
  auto statements = open_sqlite_statements(file);
  if (!statements) return statements.faults();
  if (auto faults = check_key(*statements.value(), "", key)) return *faults;
  return std::unique_ptr<Directory>(
      std::make_unique<SqlDirectory>(std::move(statements).value(), std::string(), std::move(key)));
}

Result<std::unique_ptr<Directory>> open_postgres_directory(const std::string& where, const std::string& club, Key key) {
  auto statements = open_postgres_statements(where, club);
  if (!statements) return statements.faults();
  if (auto faults = check_key(*statements.value(), club, key)) return *faults;
  return std::unique_ptr<Directory>(
      std::make_unique<SqlDirectory>(std::move(statements).value(), club, std::move(key)));
}

}  // namespace lanework::store
