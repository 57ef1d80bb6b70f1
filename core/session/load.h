// What a session has ceilings for.
#pragma once

namespace lanework::session {

// The first three are the youth ceilings.
enum class Load { kContacts, kEccentric, kHardRunning, kNewDrills };
inline constexpr int kLoads = 4;

}  // namespace lanework::session
