// Reads one request from each file named and writes each answer to the file of the same name with '.answer'.
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>

#include "core/door/door.h"

int main(int count, char** arguments) {
  for (int index = 1; index < count; ++index) {
    const std::string name = arguments[index];
    std::ifstream in(name, std::ios::binary);
    const std::string request{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
    std::ofstream out(name + ".answer", std::ios::binary);
    out << lanework::door::run(request);
    if (!in || !out.flush()) {
      std::cerr << name << ": cannot be read, or its answer cannot be written\n";
      return 2;
    }
  }
}
