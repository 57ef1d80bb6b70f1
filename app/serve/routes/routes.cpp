#include "app/serve/routes/routes.h"

namespace lanework::serve {

Response folder_has_a_fault(Call& call) {
  call.why = "folder";
  return error_answer(404, "not-found", "The club's folder has a fault; 'lanework club check' tells which.");
}

const std::vector<NamedWork>& works() {
  static const std::vector<NamedWork> kAll = [] {
    std::vector<NamedWork> out;
    for (const auto* some :
         {&server_routes(), &sign_in_routes(), &second_factor_routes(), &account_routes(), &device_routes(),
          &sync_routes(), &squad_routes(), &overview_routes(), &folder_routes(), &season_routes(), &injury_routes(),
          &player_routes(), &plan_routes(), &page_routes(), &calendar_routes(), &people_routes(), &release_routes(),
          &house_routes(), &injury_paper_routes()}) {
      out.insert(out.end(), some->begin(), some->end());
    }
    return out;
  }();
  return kAll;
}

}  // namespace lanework::serve
