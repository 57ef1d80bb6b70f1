// Work shared out among threads: each takes the next number until none is left, and keeps its own memory. The count of
// threads changes nothing but the time.
#pragma once

#include <cstddef>
#include <functional>

namespace lanework::cli {

// What one thread does with the numbers it takes.
using Worker = std::function<void(std::size_t)>;

// Every number below count, in threads of their own, at least one; 'hire' is called once by each of them. Comes back
// when all is done.
void share_out(std::size_t count, unsigned threads, const std::function<Worker()>& hire);

// As many as the machine has, at least 1.
unsigned all_cores();

}  // namespace lanework::cli
