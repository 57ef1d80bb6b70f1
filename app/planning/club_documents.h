// The club's folder as documents that the lead changes at the desk: read with a digest each, and changed all together
// or not at all, after the whole club was read with the change in it. docs/model/club_documents.md.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/planning/squad_plan.h"
#include "app/store/directory.h"
#include "core/base/document.h"
#include "core/base/result.h"

namespace lanework::planning {

inline constexpr std::size_t kMostChanges = 120;  // documents in one change: a club of a hundred squads set up at once
inline constexpr std::size_t kMostDocumentBytes = 262'144;

// club.toml, coaches.toml, emphasis.toml, what lies in squads/, strips/, routines/, venues/ and drills/, and rosters
// and restrictions.toml beside club.toml. Of a roster and of restrictions only that they are there: they name children,
// and no desk wants all of them.
struct ClubDocument {
  std::string path;             // within the folder: 'squads/u13-kestrels.toml'
  std::string digest;           // of its bytes, in hexadecimal digits
  std::optional<Node> content;  // of TOML that can be read
};

struct DocumentChange {
  std::string path;
  std::optional<std::string> text;  // the bytes to be; empty: it is to go
  std::string instead_of;           // the digest of what is there; empty: nothing is
};

struct ChangedClub {
  std::vector<ClubDocument> meanwhile;  // what is other than the change thought; where there is any, nothing was done
  std::vector<ClubDocument> now;        // of the paths that were changed and are there
  std::optional<store::Lists> lists;    // of the club as it is now
};

// As a change names what is there.
std::string digest_of_document(const std::string& bytes);

// A roster beside club.toml ('roster.csv') as it stands, for the lead to amend; empty: there is none of that name.
struct Roster {
  std::string path;
  std::string digest;
  std::string text;
};
Result<std::optional<Roster>> club_roster(const std::string& club, const std::string& name);

// May such a file be written by a change?
bool is_club_path(const std::string& path);

// In order of the paths; none where there is no folder yet. Faults: it cannot be read.
Result<std::vector<ClubDocument>> club_documents(const std::string& club);

// Faults: of the club as it would be, with places in it; a path that is none of the club's; the folder cannot be
// written. Then nothing has changed. Two at once go one after the other, in this process and any other on this machine.
Result<ChangedClub> change_club(const PlanningFiles& files, const std::vector<DocumentChange>& changes);

}  // namespace lanework::planning
