// Which device and account a secret is of, remembered from one call of the device to the next. What is remembered holds
// as long as nothing changed about who may do what: the caller asks the store for that number first, at each call, so
// that a revocation, an end, or a squad taken away holds from the next call on, also at the other servers.
#pragma once

#include <cstdint>
#include <map>
#include <mutex>
#include <optional>

#include "app/store/gate.h"

namespace lanework::serve {

struct KnownDevice {
  store::Device device;
  store::Account account;
};

class KnownDevices {
 public:
  // version: Versions::people, read before what is kept was, or before asking.
  std::optional<KnownDevice> find(const store::Digest& secret, std::int64_t version) const;
  void keep(const KnownDevice& known, std::int64_t version);
  // When it was seen changes nothing about who may do what, and raises no version.
  void seen(const store::Digest& secret, store::Moment when, std::int64_t sequence);

 private:
  mutable std::mutex lock_;
  std::int64_t version_ = -1;
  std::map<store::Digest, KnownDevice> known_;  // all of that version
};

}  // namespace lanework::serve
