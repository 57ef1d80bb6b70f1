// The queue on any database that answers statements.
#include <algorithm>
#include <array>
#include <utility>

#include "app/store/key_check.h"
#include "app/store/queue.h"
#include "app/store/statements.h"

namespace lanework::store {
namespace {

constexpr std::array<const char*, 4> kStates = {"waiting", "taken", "done", "failed"};

JobState state_of(const std::string& word) {
  const auto* const found = std::find(kStates.begin(), kStates.end(), word);
  return static_cast<JobState>(found == kStates.end() ? 0 : found - kStates.begin());
}

constexpr const char* kJobColumns = "number, squad, asked_by, asked, state, takings, worker, until_moment, why";

constexpr const char* kNeverEnded =
    "Whoever planned it did not come to an end, three times. Whoever runs the server must look at it.";

// What stands in a club's files may be quoted in it.
std::string context_of_why(std::int64_t number) { return chained({"planning job", std::to_string(number)}); }

PlanningJob job_in(const std::vector<Value>& row, const Key& key) {
  PlanningJob out;
  std::size_t at = 0;
  out.number = whole_in(row[at++]);
  out.squad = text_in(row[at++]);
  out.asked_by = text_in(row[at++]);
  out.asked = whole_in(row[at++]);
  out.state = state_of(text_in(row[at++]));
  out.takings = whole_in(row[at++]);
  out.worker = text_in(row[at++]);
  out.until = whole_in(row[at++]);
  if (out.state != JobState::kFailed) return out;
  const std::string sealed_why = text_in(row[at]);
  out.why = sealed_why.empty() ? kNeverEnded : opened(key, sealed_why, context_of_why(out.number)).value_or("");
  return out;
}

// What stands beside it is bound to it.
std::string context_of(const KeptPlan& plan) {
  return chained({"plan", plan.squad, std::to_string(plan.made), std::to_string(plan.as_of)});
}

std::string context_of(const std::string& squad, std::int64_t version) {
  return chained({"told evenings", squad, std::to_string(version)});
}

class SqlQueue final : public Queue {
 public:
  SqlQueue(std::unique_ptr<Statements> statements, std::string club, Key key)
      : statements_(std::move(statements)), club_(std::move(club)), key_(std::move(key)) {}

  Result<std::int64_t> ask(const std::string& squad, const std::string& asked_by, std::int64_t when) override {
    // One that waited may be taken between the two statements; then there is room for another.
    constexpr int kTries = 20;
    for (int i = 0; i < kTries; ++i) {
      Call call(*statements_, Call::Of::kMany);
      const auto made = call.rows(
          "INSERT INTO planning_job (club, squad, asked_by, asked) VALUES ($1, $2, $3, $4) "
          "ON CONFLICT DO NOTHING RETURNING number",
          {club_, squad, asked_by, when});
      const auto there = made.empty() ? call.rows(
                                            "SELECT number FROM planning_job WHERE club = $1 AND squad = $2 AND "
                                            "state = 'waiting'",
                                            {club_, squad})
                                      : made;
      const bool none = there.empty() && !call.failed();
      auto number = call.end(there.empty() ? std::int64_t{0} : whole_in(there[0][0]));
      if (!none) return number;
    }
    return Fault{FaultCode::kCannotWrite, {statements_->name(), 0, 0, {}}, "a queue that never rests", "try again", {}};
  }

  Result<std::optional<PlanningJob>> take(const std::string& worker, std::int64_t when,
                                          std::int64_t hold_seconds) override {
    Call call(*statements_, Call::Of::kMany);
    call.changed(
        "UPDATE planning_job SET state = 'failed', until_moment = $2 WHERE club = $1 AND state = 'taken' AND "
        "until_moment < $2 AND takings >= $3",
        {club_, when, kMostTakings});
    const auto rows = call.rows(
        "UPDATE planning_job SET state = 'taken', worker = $2, until_moment = $3, takings = takings + 1 "
        "WHERE club = $1 AND number = (SELECT number FROM planning_job WHERE club = $1 AND "
        "(state = 'waiting' OR (state = 'taken' AND until_moment < $4)) ORDER BY number LIMIT 1" +
            std::string(statements_->passing_over_what_is_locked()) + ") RETURNING " + kJobColumns,
        {club_, worker, when + hold_seconds, when});
    return call.end(rows.empty() ? std::optional<PlanningJob>() : std::optional<PlanningJob>(job_in(rows[0], key_)));
  }

  Result<bool> hold_on(const Held& held, std::int64_t until) override {
    Call call(*statements_);
    return call.end(
        call.changes("UPDATE planning_job SET until_moment = $5 WHERE club = $1 AND number = $2 AND "
                     "state = 'taken' AND worker = $3 AND takings = $4",
                     {club_, held.number, held.worker, held.taking, until}));
  }

  Result<bool> finish(const Held& held, std::int64_t when, const KeptPlan& plan) override {
    Call call(*statements_, Call::Of::kMany);
    const bool still = ended(call, held, "done", when, {});
    if (still) {
      KeptPlan kept = plan;
      kept.made = when;
      call.changed("INSERT INTO kept_plan (club, squad, made, as_of, body) VALUES ($1, $2, $3, $4, $5)",
                   {club_, kept.squad, kept.made, kept.as_of, Bytes{sealed(key_, kept.text, context_of(kept))}});
    }
    return call.end(still);
  }

  Result<bool> fail(const Held& held, std::int64_t when, const std::string& why) override {
    Call call(*statements_);
    return call.end(ended(call, held, "failed", when, why));
  }

  Result<bool> withdraw(std::int64_t number, std::int64_t when, const std::string& why) override {
    Call call(*statements_);
    return call.end(call.changes(
        "UPDATE planning_job SET state = 'failed', until_moment = $3, why = $4 WHERE club = $1 AND number = "
        "$2 AND state = 'waiting'",
        {club_, number, when, Bytes{sealed(key_, why, context_of_why(number))}}));
  }

  Result<std::vector<PlanningJob>> jobs(std::size_t most) override {
    Call call(*statements_);
    std::vector<PlanningJob> out;
    for (const auto& row : call.rows(
             std::string("SELECT ") + kJobColumns + " FROM planning_job WHERE club = $1 ORDER BY number DESC LIMIT $2",
             {club_, static_cast<std::int64_t>(most)})) {
      out.push_back(job_in(row, key_));
    }
    return call.end(std::move(out));
  }

  Result<std::optional<KeptPlan>> latest_plan(const std::string& squad) override {
    return one_plan(squad,
                    "SELECT number, made, as_of, body FROM kept_plan WHERE club = $1 AND squad = $2 "
                    "ORDER BY number DESC LIMIT 1",
                    {club_, squad});
  }

  Result<std::optional<KeptPlan>> plan_at(const std::string& squad, std::int64_t when) override {
    return one_plan(squad,
                    "SELECT number, made, as_of, body FROM kept_plan WHERE club = $1 AND squad = $2 AND made <= $3 "
                    "ORDER BY number DESC LIMIT 1",
                    {club_, squad, when});
  }

  Result<std::vector<KeptPlan>> plans(const std::string& squad, std::size_t most) override {
    Call call(*statements_);
    std::vector<KeptPlan> out;
    for (const auto& row : call.rows("SELECT number, made, as_of FROM kept_plan WHERE club = $1 AND squad = $2 "
                                     "ORDER BY number DESC LIMIT $3",
                                     {club_, squad, static_cast<std::int64_t>(most)})) {
      out.push_back({whole_in(row[0]), squad, whole_in(row[1]), whole_in(row[2]), {}});
    }
    return call.end(std::move(out));
  }

  Result<ToldEvenings> told(const std::string& squad) override {
    Call call(*statements_);
    ToldEvenings out;
    for (const auto& row :
         call.rows("SELECT version, body FROM told_evenings WHERE club = $1 AND squad = $2", {club_, squad})) {
      out.version = whole_in(row[0]);
      auto text = opened(key_, text_in(row[1]), context_of(squad, out.version));
      if (!text) {
        call.fail(does_not_open("what calendars were told"));
        break;
      }
      out.text = std::move(*text);
    }
    return call.end(std::move(out));
  }

  Result<bool> tell(const std::string& squad, std::int64_t instead_of, const std::string& text,
                    std::int64_t when) override {
    Call call(*statements_);
    const std::int64_t version = instead_of + 1;
    const Bytes body{sealed(key_, text, context_of(squad, version))};
    if (instead_of == 0) {
      return call.end(
          call.changes("INSERT INTO told_evenings (club, squad, version, told, body) VALUES ($1, $2, $3, $4, $5) "
                       "ON CONFLICT DO NOTHING",
                       {club_, squad, version, when, body}));
    }
    return call.end(
        call.changes("UPDATE told_evenings SET version = $3, told = $4, body = $5 WHERE club = $1 AND squad = $2 AND "
                     "version = $6",
                     {club_, squad, version, when, body, instead_of}));
  }

  Result<std::int64_t> forget_before(std::int64_t when) override {
    Call call(*statements_, Call::Of::kMany);
    std::int64_t gone =
        call.changed("DELETE FROM planning_job WHERE club = $1 AND state IN ('done', 'failed') AND until_moment < $2",
                     {club_, when});
    gone += call.changed(
        "DELETE FROM kept_plan WHERE club = $1 AND made < $2 AND number < (SELECT max(later.number) FROM kept_plan "
        "AS later WHERE later.club = $1 AND later.squad = kept_plan.squad)",
        {club_, when});
    gone += call.changed("DELETE FROM told_evenings WHERE club = $1 AND told < $2", {club_, when});
    return call.end(gone);
  }

 private:
  std::unique_ptr<Statements> statements_;
  std::string club_;
  Key key_;

  [[nodiscard]] Fault does_not_open(const std::string& what) const {
    return {FaultCode::kContradiction,
            {statements_->name(), 0, 0, {}},
            what + " that does not open",
            "the key that this store was made with, and " + what + " as it was written",
            {}};
  }

  Result<std::optional<KeptPlan>> one_plan(const std::string& squad, const std::string& asked,
                                           const std::vector<Value>& values) {
    Call call(*statements_);
    std::optional<KeptPlan> out;
    for (const auto& row : call.rows(asked, values)) {
      KeptPlan plan{whole_in(row[0]), squad, whole_in(row[1]), whole_in(row[2]), {}};
      auto text = opened(key_, text_in(row[3]), context_of(plan));
      if (!text) {
        call.fail(does_not_open("a plan"));
        break;
      }
      plan.text = std::move(*text);
      out = std::move(plan);
    }
    return call.end(std::move(out));
  }

  bool ended(Call& call, const Held& held, const std::string& state, std::int64_t when, const std::string& why) const {
    return call.changes(
        "UPDATE planning_job SET state = $5, until_moment = $6, why = $7 WHERE club = $1 AND number = $2 AND "
        "state = 'taken' AND worker = $3 AND takings = $4",
        {club_, held.number, held.worker, held.taking, state, when,
         why.empty() ? Value() : Value(Bytes{sealed(key_, why, context_of_why(held.number))})});
  }
};

}  // namespace

const char* to_word(JobState state) { return kStates.at(static_cast<std::size_t>(state)); }

Result<std::unique_ptr<Queue>> open_sqlite_queue(const std::string& file, Key key) {
  auto statements = open_sqlite_statements(file);
  if (!statements) return statements.faults();
  if (auto faults = check_key(*statements.value(), "", key)) return *faults;
  return std::unique_ptr<Queue>(
      std::make_unique<SqlQueue>(std::move(statements).value(), std::string(), std::move(key)));
}

Result<std::unique_ptr<Queue>> open_postgres_queue(const std::string& where, const std::string& club, Key key) {
  auto statements = open_postgres_statements(where, club);
  if (!statements) return statements.faults();
  if (auto faults = check_key(*statements.value(), club, key)) return *faults;
  return std::unique_ptr<Queue>(std::make_unique<SqlQueue>(std::move(statements).value(), club, std::move(key)));
}

}  // namespace lanework::store
