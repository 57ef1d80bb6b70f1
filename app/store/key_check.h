// Whether a key is the one that a store was made with, asked whenever one is opened: with another key nothing is read,
// and nothing may be taken in that nobody could read later.
#pragma once

#include <optional>
#include <string>

#include "app/store/sealing.h"
#include "app/store/statements.h"

namespace lanework::store {

// Where nothing says yet which key it is, and no person's key does, this one is written down. Faults: another key, in
// one line; the store cannot be read or written.
std::optional<Faults> check_key(Statements& statements, const std::string& club, const Key& key);

// The text to keep, and whether one that was kept was made with that key.
std::string key_check_text(const Key& key);
bool is_key_of(const Key& key, const std::string& kept);

// place: the store.
Fault another_key(const std::string& place);

}  // namespace lanework::store
