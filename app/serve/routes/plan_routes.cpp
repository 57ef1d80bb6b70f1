// The plans of blocks: asked for by the lead, made by workers, read by whoever stands before the squad.
#include <algorithm>
#include <set>

#include "app/serve/routes/routes.h"

namespace lanework::serve {
namespace {

constexpr std::size_t kMostJobs = 200;

bool is_squad(const store::Lists& lists, const std::string& id) {
  return std::any_of(lists.squads.begin(), lists.squads.end(), [&](const auto& squad) { return squad.id == id; });
}

// Those that are named, each once; all where none is.
std::set<std::string> squads_asked(Call& call, const store::Lists& lists, Faults& faults) {
  std::set<std::string> out;
  TableReader reader = call.reader(faults);
  for (const std::string& id : reader.texts("squads")) {
    if (!is_squad(lists, id)) reader.fault(FaultCode::kUnknownName, "squads", quote(id), "ids of squads of the club");
    out.insert(id);
  }
  reader.finish();
  if (out.empty()) {
    for (const store::ListedSquad& squad : lists.squads) out.insert(squad.id);
  }
  return out;
}

Response ask_for_plans(Call& call) {
  const auto club = call.house.club(call.room);
  if (!club) return store_answer(club.faults());
  Faults faults;
  const std::set<std::string> squads = squads_asked(call, club.value()->lists, faults);
  if (!faults.empty()) return fault_answer(faults);
  Node jobs = Node::make_array();
  for (const std::string& squad : squads) {
    const auto number = call.room.queue->ask(squad, call.account->id, call.now.seconds);
    if (!number) return store_answer(number.faults());
    Node row = Node::make_table();
    row.set("number", Node::make_integer(number.value()));
    row.set("squad", Node::make_text(squad));
    jobs.items.push_back(std::move(row));
  }
  Node body = Node::make_table();
  body.set("jobs", std::move(jobs));
  return json_answer(202, body);
}

Node job_node(const store::PlanningJob& job) {
  Node row = Node::make_table();
  row.set("number", Node::make_integer(job.number));
  row.set("squad", Node::make_text(job.squad));
  row.set("asked", Node::make_text(now_at(job.asked).stamp));
  row.set("state", Node::make_text(store::to_word(job.state)));
  const bool over = job.state == store::JobState::kDone || job.state == store::JobState::kFailed;
  if (over) row.set("ended", Node::make_text(now_at(job.until).stamp));
  if (!job.why.empty()) row.set("why", Node::make_text(job.why));
  return row;
}

Response planning(Call& call) {
  const auto jobs = call.room.queue->jobs(kMostJobs);
  if (!jobs) return store_answer(jobs.faults());
  Node list = Node::make_array();
  for (const store::PlanningJob& job : jobs.value()) {
    list.items.push_back(
        access::visible_row(job_node(job), job.squad, call.viewer, *call.house.matrix.view("planning")));
  }
  Node body = Node::make_table();
  body.set("jobs", std::move(list));
  return json_answer(200, body);
}

// A worker that is at it is not disturbed: what it brings is as good as any plan.
Response withdraw(Call& call) {
  Faults faults;
  TableReader reader = call.reader(faults);
  reader.finish();
  if (!faults.empty()) return fault_answer(faults);
  const std::string& text = call.values[0];
  constexpr std::size_t kMostDigits = 15;
  const bool is_number = !text.empty() && text.size() <= kMostDigits &&
                         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
  const std::int64_t number = is_number ? std::stoll(text) : 0;
  const auto gone = call.room.queue->withdraw(number, call.now.seconds, "It was withdrawn before anybody planned it.");
  if (!gone) return store_answer(gone.faults());
  if (gone.value()) return json_answer(200, Node::make_table());
  const auto jobs = call.room.queue->jobs(kMostJobs);
  if (!jobs) return store_answer(jobs.faults());
  const auto& all = jobs.value();
  const bool there = std::any_of(all.begin(), all.end(), [&](const auto& job) { return job.number == number; });
  if (!there) return error_answer(404, "not-found", "There is nothing here for you.");
  return error_answer(409, "under-way", "It is being planned, or over, and cannot be withdrawn any more.");
}

Response plan(Call& call) {
  const std::string& squad = call.values[0];
  const auto latest = call.room.queue->latest_plan(squad);
  if (!latest) return store_answer(latest.faults());
  Node row = Node::make_table();
  row.set("squad", Node::make_text(squad));
  if (latest.value()) {
    auto document = parse_json("plan", latest.value()->text);
    if (!document) return store_answer(document.faults());
    row.set("made", Node::make_text(now_at(latest.value()->made).stamp));
    row.set("as_of", Node::make_integer(latest.value()->as_of));
    row.set("plan", std::move(document.value().root));
  }
  return json_answer(200, access::visible_row(row, squad, call.viewer, *call.house.matrix.view("plan")));
}

}  // namespace

const std::vector<NamedWork>& plan_routes() {
  static const std::vector<NamedWork> kWorks = {{"ask-for-plans", ask_for_plans},
                                                {"planning", planning},
                                                {"withdraw-planning", withdraw},
                                                {"plan", plan},
                                                {"plan-of-device", plan}};
  return kWorks;
}

}  // namespace lanework::serve
