#include "app/cli/serve/demo.h"

#include <sys/stat.h>

#include <cstdio>
#include <filesystem>
#include <fstream>

#include "app/cli/serve/demo_autumn.h"
#include "app/cli/serve/rooms_of_ledger.h"
#include "app/planning/club_lists.h"
#include "app/read/club_folder.h"
#include "app/serve/now.h"
#include "app/serve/sign_in/account_words.h"
#include "app/serve/sign_in/password_hash.h"
#include "app/serve/sign_in/secret.h"

namespace lanework::cli {
namespace {

namespace fs = std::filesystem;

constexpr const char* kSquad = "u13-kestrels";

class Demo {
 public:
  Demo(serve::Room& room, std::int64_t now) : room_(room), now_(now) {}

  // Variables for a shell: one a line.
  [[nodiscard]] const std::string& lines() const { return lines_; }
  [[nodiscard]] const Faults& faults() const { return faults_; }

  store::Account account(ledger::Role role, const std::string& name, bool second,
                         const std::vector<std::string>& squads) {
    store::Account out;
    const std::string word = serve::role_word(role);
    out.sign_in = word;
    out.name = name;
    out.role = role;
    out.made = now_;
    for (const std::string& squad : squads) out.grants.push_back({squad, "2026-08-01", "", false});
    check(room_.gate->add_account(out));
    const std::string password = serve::new_secret().substr(0, 20);
    check(room_.gate->set_password(out.id, hashes_.make(password)));
    const std::string upper = word == "lead"       ? "LEAD"
                              : word == "coach"    ? "COACH"
                              : word == "recorder" ? "RECORDER"
                              : word == "board"    ? "BOARD"
                                                   : "OPERATOR";
    lines_ += upper + "_PASSWORD=" + password + "\n";
    if (second) {
      const std::string secret = serve::new_time_secret();
      check(room_.gate->set_second(out.id, secret));
      lines_ += upper + "_SECOND=" + serve::base32(secret) + "\n";
    }
    return out;
  }

  std::string device(const store::Account& account, const std::string& variable, const std::string& label) {
    const std::string link = serve::new_secret();
    const std::string secret = serve::new_secret();
    store::Pairing pairing;
    pairing.account = account.id;
    pairing.secret = store::digest_of(serve::device_link_form(link));
    pairing.made = now_;
    pairing.until = now_ + 60;
    const auto opened = room_.gate->open_pairing(pairing);
    if (!check(opened)) return {};
    check(room_.gate->claim_pairing(pairing.secret, store::digest_of(secret), label, "000000", now_));
    const auto device = room_.gate->confirm_pairing(opened.value().id, "000000", now_);
    if (!check(device) || !device.value()) return {};
    lines_ += variable + "=" + secret + "\n";
    return device.value()->id;
  }

  template <class T>
  bool check(const Result<T>& result) {
    if (!result) faults_.insert(faults_.end(), result.faults().begin(), result.faults().end());
    return result.ok();
  }

 private:
  serve::Room& room_;
  std::int64_t now_;
  serve::PasswordHashes hashes_{1};
  std::string lines_;
  Faults faults_;
};

std::optional<Faults> write_private(const fs::path& file, const std::string& text) {
  const mode_t before = ::umask(S_IRWXG | S_IRWXO);
  std::ofstream out(file, std::ios::binary | std::ios::trunc);
  out << text;
  out.flush();
  ::umask(before);
  if (out) return {};
  return Faults{{FaultCode::kCannotWrite, {file.string(), 0, 0, {}}, "nothing", "a file that can be written", {}}};
}

bool is_there(const LedgerFlags& flags) {
  std::error_code ignored;
  return fs::exists(key_file(flags), ignored);
}

}  // namespace

Result<std::string> make_demo(const LedgerFlags& flags, const std::string& catalogue) {
  const fs::path variables = fs::path(flags.folder) / "demo.env";
  if (is_there(flags))
    return "The demo's ledger is there already; who may sign in stands in " + variables.string() + "\n";
  const std::string from = (fs::path(catalogue).parent_path() / "demo" / "quillmere").string();
  const read::ClubFolder folder = read::read_club_folder(from, catalogue);
  if (!folder.faults.empty()) return folder.faults;
  if (auto faults = make_ledger(flags)) return *faults;
  const auto kinds = read_kind_table(catalogue);
  if (!kinds) return kinds.faults();
  auto room = rooms_of(flags)();
  if (!room) return room.faults();
  const serve::Now now = serve::now_at(serve::seconds_of_clock());
  const auto kept = room.value().directory->keep(planning::lists_of(folder.club), now.stamp);
  if (!kept) return kept.faults();
  Demo demo(room.value(), now.seconds);
  const store::Account lead = demo.account(ledger::Role::kLead, "The lead", true, {});
  const store::Account coach = demo.account(ledger::Role::kCoach, "Maren", false, {"u10-wrens", kSquad});
  demo.account(ledger::Role::kRecorder, "The recorder", false, {kSquad});
  demo.account(ledger::Role::kBoard, "The board", true, {});
  demo.account(ledger::Role::kOperator, "The operator", true, {});
  const std::string desk = demo.device(lead, "LEAD_DEVICE", "The lead's laptop");
  const std::string phone = demo.device(coach, "COACH_DEVICE", "Maren's phone");
  const DemoSender by{{phone, coach.id, coach.role, false}, {desk, lead.id, lead.role, false}};
  const auto autumn = invented_autumn(folder.club, now.day, by, kinds.value());
  demo.check(room.value().store->take_in(autumn, kinds.value()));
  if (!demo.faults().empty()) return demo.faults();
  std::size_t entries = 0;
  for (const store::Batch& batch : autumn) entries += batch.entries.size();
  if (auto faults = write_private(variables, demo.lines())) return *faults;
  return "The invented club " + folder.club.settings.name + ": " + std::to_string(folder.club.squads.size()) +
         " squads, " + std::to_string(entries) +
         " entries of an invented autumn.\nWho may sign in (lead, coach, recorder, board, operator) "
         "stands in " +
         variables.string() + "\n";
}

}  // namespace lanework::cli
