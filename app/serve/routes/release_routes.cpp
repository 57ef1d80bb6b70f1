// The board's releases: drawn and made by the lead, read by both.
#include <algorithm>

#include "app/serve/releasing.h"
#include "app/serve/routes/routes.h"

namespace lanework::serve {
namespace {

constexpr std::size_t kMostAskedBytes = 2400;  // 600 letters, whatever the script

struct Asked {
  std::optional<Drawn> drawn;  // empty: not understood
  Faults faults;
};

Asked asked(Call& call) {
  Asked out;
  TableReader reader = call.reader(out.faults);
  const auto from = reader.date("from");
  const auto until = reader.date("until");
  if (!from) reader.fault(FaultCode::kMissing, "from", "nothing", "the first day");
  if (!until) reader.fault(FaultCode::kMissing, "until", "nothing", "the last day");
  const std::string text = reader.text_or("asked", "");
  if (text.size() > kMostAskedBytes) {
    reader.fault(FaultCode::kOutOfRange, "asked", std::to_string(text.size()) + " bytes", "at most 2400 bytes");
  }
  reader.finish();
  if (!out.faults.empty()) return out;
  ReleaseAsked wanted{{*from, *until}, text};
  // A folder with a fault is as none: the page then says nothing of what was planned.
  if (call.house.planned_evenings && *from <= *until) {
    auto planned = call.house.planned_evenings(*from, *until);
    if (planned) wanted.planned = std::move(planned).value();
  }
  out.drawn = draw_release(call.room, call.house.kinds, call.house.regions, wanted, call.now);
  return out;
}

// Of a period that may not be given out, or an audit that fails: which number would come out, and what to do.
Response refused(const Refused& why) {
  if (why.by_store) return store_answer(why.faults);
  return error_answer(409, "not-released", to_line(why.faults.front()), why.key);
}

Response preview(Call& call) {
  const Asked said = asked(call);
  if (!said.drawn) return fault_answer(said.faults);
  if (!said.drawn->made) return refused(said.drawn->refused);
  return json_answer(200, for_the_lead(*said.drawn->made));
}

Response make(Call& call) {
  const Asked said = asked(call);
  if (!said.drawn) return fault_answer(said.faults);
  if (!said.drawn->made) return refused(said.drawn->refused);
  const auto kept = keep_release(call.room, said.drawn->made->release);
  if (!kept) return store_answer(kept.faults());
  if (!kept.value()) {
    return error_answer(409, "not-released", "Another release was made meanwhile: look at it first.", "made-meanwhile");
  }
  return json_answer(201, for_the_lead(*said.drawn->made));
}

Response list(Call& call) {
  const auto releases = releases_so_far(call.room);
  if (!releases) return store_answer(releases.faults());
  Node rows = Node::make_array();
  for (const release::Release& one : releases.value()) {
    Node row = Node::make_table();
    row.set("release", Node::make_integer(one.number));
    row.set("from", Node::make_text(to_iso(one.period.from)));
    row.set("until", Node::make_text(to_iso(one.period.until)));
    row.set("made", Node::make_text(one.made));
    rows.items.push_back(std::move(row));
  }
  Node body = Node::make_table();
  body.set("releases", std::move(rows));
  return json_answer(200, body);
}

// The bytes that were kept.
Response one(Call& call) {
  const auto kept = kept_releases(call.room);
  if (!kept) return store_answer(kept.faults());
  const auto found = std::find_if(kept.value().begin(), kept.value().end(), [&](const store::KeptRelease& each) {
    return std::to_string(each.number) == call.values[0];
  });
  if (found == kept.value().end()) return error_answer(404, "not-found", "There is nothing here for you.");
  Response out = json_answer(200, Node::make_table());
  out.body = found->shown + "\n";
  return out;
}

}  // namespace

const std::vector<NamedWork>& release_routes() {
  static const std::vector<NamedWork> kWorks = {
      {"releases", list}, {"release", one}, {"preview-release", preview}, {"make-release", make}};
  return kWorks;
}

}  // namespace lanework::serve
