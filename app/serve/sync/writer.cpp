#include "app/serve/sync/writer.h"

#include <utility>

namespace lanework::serve::sync {

Writer::Writer(OpenRoom open, const ledger::KindTable& kinds, std::size_t most)
    : open_(std::move(open)), kinds_(kinds), most_(most), thread_([this] { run(); }) {}

Writer::~Writer() {
  {
    const std::lock_guard<std::mutex> guard(lock_);
    ending_ = true;
  }
  came_.notify_one();
  thread_.join();
}

Result<std::vector<store::EntryVerdict>> Writer::take_in(store::Batch batch) {
  Job job{std::move(batch), {}};
  auto done = job.done.get_future();
  {
    const std::lock_guard<std::mutex> guard(lock_);
    waiting_.push_back(std::move(job));
  }
  came_.notify_one();
  return done.get();
}

void Writer::run() {
  std::unique_ptr<Room> room;
  std::vector<Job> jobs;
  while (true) {
    {
      std::unique_lock<std::mutex> guard(lock_);
      came_.wait(guard, [this] { return ending_ || !waiting_.empty(); });
      if (waiting_.empty()) return;
      for (; !waiting_.empty() && jobs.size() < most_; waiting_.pop_front())
        jobs.push_back(std::move(waiting_.front()));
    }
    if (!room) {
      auto opened = open_();
      if (opened) {
        room = std::make_unique<Room>(std::move(opened).value());
      } else {
        for (Job& job : jobs) job.done.set_value(opened.faults());
      }
    }
    if (room) take_in_together(jobs, *room->store);
    jobs.clear();
  }
}

void Writer::take_in_together(std::vector<Job>& jobs, store::Store& store) {
  std::vector<store::Batch> batches;
  batches.reserve(jobs.size());
  for (Job& job : jobs) batches.push_back(std::move(job.batch));
  auto verdicts = store.take_in(batches, kinds_);
  ++transactions_;
  for (std::size_t i = 0; i < jobs.size(); ++i) {
    if (verdicts) {
      jobs[i].done.set_value(std::move(verdicts.value()[i]));
    } else {
      jobs[i].done.set_value(verdicts.faults());
    }
  }
}

}  // namespace lanework::serve::sync
