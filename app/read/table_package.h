// What the columns of some tables are, for programs that others wrote: a descriptor of them all (Frictionless Data,
// Tabular Data Package, version 1; specs.frictionlessdata.io).
#pragma once

#include <string>
#include <vector>

namespace lanework::read {

struct TableColumn {
  std::string name;
  std::string type;  // of Frictionless Table Schema: string, integer, date, time, boolean
  std::string description;
  bool required = false;
  std::string format = {};  // of the type; empty: its default
};

struct PackagedTable {
  std::string name;  // 'sessions': its file is 'sessions.csv', separated by commas, lines end in CRLF, UTF-8
  std::string description;
  std::vector<TableColumn> columns;  // all, in the file's order
};

struct TablePackage {
  std::string club;   // made to a name of lower case letters, digits and hyphens
  std::string what;   // 'block': behind that name
  std::string title;  // as people read it
  std::string description = {};
  std::vector<PackagedTable> tables;
};

inline constexpr const char* kPackageName = "datapackage.json";

// As JSON.
std::string package_descriptor(const TablePackage& package);

}  // namespace lanework::read
