// The lists of work, one a file here.
#pragma once

#include "app/serve/call.h"

namespace lanework::serve {

// 404, and the log says 'folder': what a club's folder says wrongly is told by 'lanework club check', not by a server.
Response folder_has_a_fault(Call& call);

const std::vector<NamedWork>& server_routes();
const std::vector<NamedWork>& sign_in_routes();
const std::vector<NamedWork>& second_factor_routes();
const std::vector<NamedWork>& account_routes();
const std::vector<NamedWork>& device_routes();
const std::vector<NamedWork>& sync_routes();
const std::vector<NamedWork>& squad_routes();
const std::vector<NamedWork>& overview_routes();
const std::vector<NamedWork>& folder_routes();
const std::vector<NamedWork>& season_routes();
const std::vector<NamedWork>& injury_routes();
const std::vector<NamedWork>& player_routes();
const std::vector<NamedWork>& plan_routes();
const std::vector<NamedWork>& page_routes();
const std::vector<NamedWork>& calendar_routes();
const std::vector<NamedWork>& people_routes();
const std::vector<NamedWork>& release_routes();
const std::vector<NamedWork>& house_routes();
const std::vector<NamedWork>& injury_paper_routes();

}  // namespace lanework::serve
