#include "benchmarks/evidence/r_peer.h"

#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace lanework::bench {

std::vector<PeerFit> fits_by_r(const SimulatedUnion& made) {
  const std::filesystem::path file =
      std::filesystem::temp_directory_path() / ("lanework-bench-" + std::to_string(getpid()) + ".csv");
  std::ofstream(file) << to_csv(made);
  const std::string command =
      "Rscript --vanilla " LANEWORK_SOURCE_DIR "/benchmarks/evidence/fits.R " + file.string() + " 2>/dev/null";
  std::vector<PeerFit> out;
  if (FILE* pipe = popen(command.c_str(), "r")) {
    std::array<char, 4096> line{};
    while (std::fgets(line.data(), static_cast<int>(line.size()), pipe) != nullptr) {
      std::istringstream words(line.data());
      PeerFit fit;
      words >> fit.model >> fit.seconds;
      for (double value = 0; words >> value;) fit.coefficients.push_back(value);
      out.push_back(std::move(fit));
    }
    pclose(pipe);
  }
  std::filesystem::remove(file);
  return out;
}

}  // namespace lanework::bench
