// An invented autumn of a club's evenings, as entries in the order in which they came: the same club and the same day
// give the same entries.
#pragma once

#include <string>
#include <vector>

#include "app/store/store.h"
#include "core/club/club.h"

namespace lanework::cli {

struct DemoSender {
  store::Sender coach;
  store::Sender lead;
};

// Up to and without 'today'. REQUIRES: kinds are the shipped ones.
std::vector<store::Batch> invented_autumn(const club::Club& club, Date today, const DemoSender& by,
                                          const ledger::KindTable& kinds);

}  // namespace lanework::cli
