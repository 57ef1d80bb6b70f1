// An evening's documents as a coach's device holds them: what is needed to plan, to make the slip and to run it, and
// nothing of a player but a name, an age and what to do. docs/formats/permissions.md.
#pragma once

#include "core/base/result.h"
#include "core/door/evening_request.h"

namespace lanework::door {

// The same evening with permissions in place of restrictions and of the partners' measure, and with the squad's own
// players only. Whoever plans it gets the same plan and the same swaps, byte for byte; partners as near as an order of
// them allows. Faults: of the documents.
Result<EveningDocuments> pocket_documents(EveningDocuments documents);
// With a catalogue that is read already, which many evenings share; that of the documents is not looked at.
Result<EveningDocuments> pocket_documents(EveningDocuments documents, const catalogue::Catalogue& catalogue);

}  // namespace lanework::door
