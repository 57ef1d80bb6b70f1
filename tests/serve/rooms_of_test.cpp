#include <fstream>
#include <sstream>
#include <stdexcept>

#include "app/serve/sign_in/account_words.h"
#include "app/serve/sign_in/secret.h"
#include "app/store/sqlite/sqlite_store.h"
#include "core/care/pain/read_pain_rule.h"
#include "core/care/return_to_sport/read_return_rules.h"
#include "core/catalogue/read_catalogue.h"
#include "tests/access/shipped_matrix.h"
#include "tests/serve/house_of_test.h"

namespace lanework::serve::test {
namespace {

template <class T>
T must(Result<T> result) {
  if (!result) throw std::runtime_error(to_line(result.faults().front()));
  return std::move(result).value();
}

Document shipped(const std::string& name) {
  const std::string file = std::string(LANEWORK_SOURCE_DIR) + "/catalogue/" + name;
  std::ifstream in(file, std::ios::binary);
  std::ostringstream bytes;
  bytes << in.rdbuf();
  return must(parse_toml(file, bytes.str()));
}

}  // namespace

CareRules shipped_care() {
  const auto sources = must(catalogue::read_sources(shipped("sources.toml")));
  return {must(care::read_pain_rule(shipped("care/pain.toml"), sources)),
          must(care::read_return_rules(shipped("care/return_rules.toml"), sources))};
}

HouseOfTest::HouseOfTest() {
  const std::string file = file_.file("quillmere");
  const std::string key = file_.key_file();
  const OpenRoom open = [file, key]() -> Result<Room> {
    return Room{must(store::open_sqlite_store(file, must(store::read_key_file(key)))),
                must(store::open_sqlite_gate(file, must(store::read_key_file(key)))),
                must(store::open_sqlite_directory(file, must(store::read_key_file(key)))),
                must(store::open_sqlite_queue(file, must(store::read_key_file(key)))),
                [file, key] { return store::open_sqlite_releases(file, must(store::read_key_file(key))); },
                [file, key] { return store::open_sqlite_past(file, must(store::read_key_file(key))); }};
  };
  house_ = std::make_unique<House>(ledger::test::shipped_kinds(), access::test::shipped_matrix(), shipped_care(),
                                   must(StaticFiles::read(std::string(LANEWORK_SOURCE_DIR) + "/web/served")),
                                   KnownPasswords("password\n", {}));
  house_->clock = [this] { return now; };
  house_->rooms = std::make_unique<Rooms>(open);
  house_->writer = std::make_unique<sync::Writer>(open, house_->kinds);
  house_->hashes = std::make_unique<PasswordHashes>(2);
  house_->note_erasure = [](const std::string&, const std::string&) { return std::optional<Fault>(); };
  house_->pocket = [](const std::string&, const Node&, Date, const std::string&, Whose) -> Result<Node> {
    Node out = Node::make_table();
    out.set("evenings", Node::make_array());
    out.set("catalogue", Node::make_table());
    out.set("action_plans", Node::make_array());
    return out;
  };
  house_->printed.pages = [](const PagesAsked&, const Node&, const std::string&) -> Result<PagesMade> {
    return PagesMade{"%PDF-", ""};
  };
  house_->folder.turn = []() -> Result<Node> { return Node::make_table(); };
  house_->folder.roster = [](const std::string&) -> Result<std::optional<Node>> {
    return std::optional<Node>(Node::make_table());
  };
  house_->printed.clinic_pack = [](const std::string&) -> Result<std::string> { return std::string("%PDF-"); };
  house_->printed.calendar = [](const std::string&, const std::string&, std::int64_t) -> Result<std::string> {
    return std::string("BEGIN:VCALENDAR");
  };
  house_->printed.followed = [](const std::string& squad, const std::string& before,
                                const Now&) -> Result<std::optional<Followed>> {
    return std::optional<Followed>({"BEGIN:VCALENDAR\r\nX-SQUAD:" + squad + "\r\n", before.empty() ? "told" : before});
  };
  house_->season_export = [](const std::string&, Date, Date) -> Result<SeasonTaken> { return SeasonTaken{"PK", 1}; };
  house_->injury_paper = [](const PaperAsked&) -> Result<std::string> { return std::string("%PDF-"); };
  house_->pace = std::make_unique<Pace>();
  house_->log = std::make_unique<Log>([this](const std::string& line) { log_.push_back(line); });
  room_ = std::make_unique<Room>(must(open()));
  service_ = must(Service::make(*house_));
  const store::Lists lists{"Quillmere Juniors",
                           {{"u13", "Under-13"}, {"u16", "Under-16"}},
                           {{"Q07", {"u13"}, "Amara", "under 13"}, {"Q20", {"u16"}, "Bea", "under 16"}}};
  must(room_->directory->keep(lists, "2026-11-26T18:05:00+00:00"));
}

Response HouseOfTest::ask(const std::string& method, const std::string& path, const std::string& body,
                          const std::string& cookie, const std::string& device) {
  Request request;
  request.method = method;
  request.path = path;
  request.body = body;
  request.address = "127.0.0.1";
  request.on_this_machine = true;
  request.headers = {{"host", "127.0.0.1:8765"}};
  if (method == "POST") {
    request.headers.emplace_back("content-type", "application/json");
    request.headers.emplace_back("lanework-request", "1");
  }
  if (!cookie.empty()) request.headers.emplace_back("cookie", "lanework=" + cookie);
  if (!device.empty()) request.headers.emplace_back("authorization", "Bearer " + device);
  return service_->answer(request);
}

std::string HouseOfTest::account(ledger::Role role, const std::vector<store::Grant>& grants) {
  store::Account account;
  account.sign_in = "somebody" + std::to_string(++accounts_);
  account.name = "Somebody";
  account.role = role;
  account.made = now;
  account.grants = grants;
  if (!must(room_->gate->add_account(account))) throw std::runtime_error("taken");
  return account.id;
}

std::string HouseOfTest::session(const std::string& account) {
  const std::string secret = new_secret();
  must(room_->gate->add_session({store::digest_of(secret), account, now, now, now, true}));
  return secret;
}

std::string HouseOfTest::device(const std::string& account) {
  const std::string secret = new_secret();
  store::Pairing pairing;
  pairing.account = account;
  pairing.secret = store::digest_of(device_link_form(new_secret()));
  pairing.made = now;
  pairing.until = now + 600;
  const auto opened = must(room_->gate->open_pairing(pairing));
  must(room_->gate->claim_pairing(pairing.secret, store::digest_of(secret), "a phone", "123456", now));
  if (!must(room_->gate->confirm_pairing(opened.id, "123456", now))) throw std::runtime_error("not paired");
  return secret;
}

}  // namespace lanework::serve::test
