// Whether what lies in folders is what lay there before, without reading it.
#pragma once

#include <string>
#include <vector>

namespace lanework::planning {

// Of every file in them: its path, its size, when it was changed and which file it is (so that a folder put in
// another's place is another). Two that are the same are of the same content, but for a file that somebody changed
// within the clock's grain and left as long as it was. What cannot be read is left out.
std::string folder_stamp(const std::vector<std::string>& folders);

}  // namespace lanework::planning
