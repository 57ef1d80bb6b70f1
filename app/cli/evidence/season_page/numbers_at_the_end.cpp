#include "app/cli/evidence/season_page/numbers_at_the_end.h"

#include <algorithm>
#include <utility>

namespace lanework::cli {
namespace {

struct Together {
  Words caption;
  std::vector<const char*> charts;  // whose rows are the same
};

const std::vector<Together>& tables_at_the_end() {
  static const std::vector<Together> kTables = {
      {{"Squads: sessions by how many did the warm-up", "Equipos: sesiones según cuántos hicieron el calentamiento"},
       {"warm-ups-done"}},
      {{"Squads: injuries, drawn towards the club and beside what chance would do",
        "Equipos: lesiones, acercadas al club y junto a lo que haría el azar"},
       {"squads-drawn-in", "squads-funnel"}},
      {{"Weeks: hours, injuries and what was expected", "Semanas: horas, lesiones y lo esperado"}, {"weeks", "watch"}},
      {{"The rate by warm-ups a week, against none", "La tasa según los calentamientos por semana, frente a ninguno"},
       {"dose"}},
      {{"Weeks after about two or more warm-ups a week by the others",
        "Semanas tras unos dos o más calentamientos por semana, frente a las demás"},
       {"often"}},
      {{"Players out with an injury, month by month", "Jugadores de baja por lesión, mes a mes"}, {"prevalence"}},
  };
  return kTables;
}

report::Chart* chart_of(report::Page& page, const std::string& id) {
  for (report::Section& section : page.sections) {
    for (report::Block& block : section.blocks) {
      auto* chart = std::get_if<report::Chart>(&block);
      if (chart != nullptr && chart->id == id) return chart;
    }
  }
  return nullptr;
}

bool has_column(const report::Table& table, const std::string& heading) {
  return std::any_of(table.columns.begin(), table.columns.end(),
                     [&](const report::Column& column) { return column.heading == heading; });
}

// Columns of 'more' that 'table' has not yet, row beside row. REQUIRES: the same rows in the same order.
void put_beside(report::Table& table, const report::Table& more) {
  std::vector<std::size_t> wanted;
  for (std::size_t at = 1; at < more.columns.size(); ++at)
    if (!has_column(table, more.columns[at].heading)) wanted.push_back(at);
  for (const std::size_t at : wanted) {
    table.columns.push_back(more.columns[at]);
    for (std::size_t row = 0; row < table.rows.size(); ++row) table.rows[row].push_back(more.rows[row][at]);
  }
}

}  // namespace

void move_numbers_to_the_end(report::Page& page) {
  const Speaker speaker(page.language);
  report::Section section{speaker.say(Words{"The numbers of the charts", "Los números de los gráficos"}), 1, {}};
  for (const Together& together : tables_at_the_end()) {
    report::Table table;
    for (const char* id : together.charts) {
      report::Chart* chart = chart_of(page, id);
      if (chart == nullptr) continue;
      chart->numbers_at_the_end = true;
      if (table.columns.empty()) {
        table = chart->table;
      } else {
        put_beside(table, chart->table);
      }
    }
    if (table.columns.empty()) continue;
    table.caption = speaker.say(together.caption);
    section.blocks.emplace_back(std::move(table));
  }
  if (!section.blocks.empty()) page.sections.push_back(std::move(section));
}

}  // namespace lanework::cli
