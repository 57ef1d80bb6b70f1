// A sheet whose columns a reader knows (people::SheetColumns), from its bytes: encodings, separators and quoted cells
// as a roster's.
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/people/sheet_columns.h"

namespace lanework::read {

// file: the name that faults are told under. Faults: what decode_text and read_separated_values tell.
Result<people::Sheet> known_sheet_of(const std::string& file, const std::string& bytes,
                                     const people::KnownColumns& known, const people::TextForms& forms);

// The same from disk, and the faults of read_file.
Result<people::Sheet> read_known_sheet(const std::string& path, const people::KnownColumns& known,
                                       const people::TextForms& forms, const Place& from = {});

}  // namespace lanework::read
