#include "app/serve/known_devices.h"

#include <algorithm>

namespace lanework::serve {
namespace {

constexpr std::size_t kMost = 10'000;  // beyond that they are asked for each time

}  // namespace

std::optional<KnownDevice> KnownDevices::find(const store::Digest& secret, std::int64_t version) const {
  const std::lock_guard<std::mutex> guard(lock_);
  if (version != version_) return {};
  const auto found = known_.find(secret);
  return found == known_.end() ? std::nullopt : std::optional<KnownDevice>(found->second);
}

// One that asked before the last change may come here after one that asked since.
void KnownDevices::keep(const KnownDevice& known, std::int64_t version) {
  const std::lock_guard<std::mutex> guard(lock_);
  if (version < version_) return;
  if (version > version_) known_.clear();
  version_ = version;
  if (known_.size() < kMost) known_.insert_or_assign(known.device.secret, known);
}

void KnownDevices::seen(const store::Digest& secret, store::Moment when, std::int64_t sequence) {
  const std::lock_guard<std::mutex> guard(lock_);
  const auto found = known_.find(secret);
  if (found == known_.end()) return;
  found->second.device.seen = std::max(found->second.device.seen, when);
  found->second.device.sequence = std::max(found->second.device.sequence, sequence);
}

}  // namespace lanework::serve
