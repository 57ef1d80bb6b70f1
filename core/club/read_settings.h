// club.toml to Settings. Inside this folder only.
#pragma once

#include "core/club/read_club.h"

namespace lanework::club {

// all_drills: what pins and bans may name. Strips come from documents.strips; faults are added to the list.
Settings read_settings(const ClubDocuments& documents, const catalogue::Catalogue& all_drills, Faults& faults);

}  // namespace lanework::club
