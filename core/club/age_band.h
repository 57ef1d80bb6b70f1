// Age bands as squads are named by them: 'U13', 'U-13', 'Under-13', 'under 13'.
#pragma once

#include <optional>
#include <string>

namespace lanework::club {

// The first band in the text: 13 for 'Under-13 Kestrels'. Empty where there is none.
std::optional<int> band_in(const std::string& text);

// The text with its first band exchanged; unchanged where there is none.
std::string with_band(const std::string& text, int band);

}  // namespace lanework::club
