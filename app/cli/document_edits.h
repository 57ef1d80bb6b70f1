// Flags folded into the documents they stand in for, so that a flag and a line of a file are one thing.
#pragma once

#include <string>

#include "core/base/document.h"

namespace lanework::cli {

// The list or table under a key, put there where there is none; null where something of another kind stands, which is
// told when the file is read.
Node* kept_or_put(Node& parent, const std::string& key, Node made);
void set_in(Node& root, const std::string& table, const std::string& key, Node value);
void add_to(Node& parent, const std::string& key, Node value);

}  // namespace lanework::cli
