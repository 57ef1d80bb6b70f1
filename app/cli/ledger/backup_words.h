// What a backup holds, in lines for whoever made or restored it.
#pragma once

#include <string>

#include "app/store/archive/read_archive.h"

namespace lanework::cli {

std::string backup_words(const store::archive::Contents& contents);

// 'number 5, link 3f09...': names a state of the books, on every copy of them.
std::string head_words(std::int64_t receipt, const store::Link& link);

}  // namespace lanework::cli
