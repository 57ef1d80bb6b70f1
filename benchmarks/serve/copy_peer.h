// PostgreSQL's own COPY of rows like the ledger's, into a table like the ledger's: the most that the database takes in.
#pragma once

#include <string>

namespace lanework::bench {

// Rows a second; body: as each row has it.
double copied_a_second(const std::string& where, int rows, const std::string& body);

}  // namespace lanework::bench
