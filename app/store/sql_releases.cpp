// The board's releases on any database that answers statements.
#include <utility>

#include "app/store/releases.h"
#include "app/store/statements.h"

namespace lanework::store {
namespace {

std::string context_of(std::int64_t number, const std::string& shown) {
  return "release/" + std::to_string(number) + "/" + shown;
}

class SqlReleases final : public Releases {
 public:
  SqlReleases(std::unique_ptr<Statements> statements, std::string club, Key key)
      : statements_(std::move(statements)), club_(std::move(club)), key_(std::move(key)) {}

  Result<std::vector<KeptRelease>> all() override {
    Call call(*statements_);
    std::vector<KeptRelease> out;
    for (const auto& row :
         call.rows("SELECT number, shown, counted FROM board_release WHERE club = $1 ORDER BY number", {club_})) {
      KeptRelease one{whole_in(row[0]), text_in(row[1]), {}};
      auto counted = opened(key_, text_in(row[2]), context_of(one.number, one.shown));
      if (!counted) {
        call.fail({FaultCode::kContradiction,
                   {statements_->name(), 0, 0, {}},
                   "release " + std::to_string(one.number) + ", whose seal does not open",
                   "what was given out, and the key that this store was made with",
                   {}});
        break;
      }
      one.counted = std::move(*counted);
      out.push_back(std::move(one));
    }
    return call.end(std::move(out));
  }

  Result<bool> keep(const KeptRelease& release) override {
    Call call(*statements_, Call::Of::kMany);
    const auto there = call.rows("SELECT count(*) FROM board_release WHERE club = $1", {club_});
    if (!there.empty() && whole_in(there[0][0]) + 1 != release.number) return call.end(false);
    // The number is the primary key: of two that are kept at once one finds it taken.
    const bool kept = call.changes(
        "INSERT INTO board_release (club, number, shown, counted) VALUES ($1, $2, $3, $4) ON CONFLICT DO NOTHING",
        {club_, release.number, release.shown,
         Bytes{sealed(key_, release.counted, context_of(release.number, release.shown))}});
    return call.end(kept);
  }

 private:
  std::unique_ptr<Statements> statements_;
  std::string club_;
  Key key_;
};

}  // namespace

Result<std::unique_ptr<Releases>> open_sqlite_releases(const std::string& file, Key key) {
  auto statements = open_sqlite_statements(file);
  if (!statements) return statements.faults();
  return std::unique_ptr<Releases>(
      std::make_unique<SqlReleases>(std::move(statements).value(), std::string(), std::move(key)));
}

Result<std::unique_ptr<Releases>> open_postgres_releases(const std::string& where, const std::string& club, Key key) {
  auto statements = open_postgres_statements(where, club);
  if (!statements) return statements.faults();
  return std::unique_ptr<Releases>(std::make_unique<SqlReleases>(std::move(statements).value(), club, std::move(key)));
}

}  // namespace lanework::store
