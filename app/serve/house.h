// What all requests share: the tables, the clock, the hashes, the counters, and the lists of the club as last read.
#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "app/serve/http/listener.h"
#include "app/serve/keeping.h"
#include "app/serve/known_devices.h"
#include "app/serve/log.h"
#include "app/serve/metrics.h"
#include "app/serve/now.h"
#include "app/serve/pace.h"
#include "app/serve/rooms.h"
#include "app/serve/sign_in/password_hash.h"
#include "app/serve/sign_in/password_rule.h"
#include "app/serve/static_files.h"
#include "app/serve/sync/writer.h"
#include "core/access/viewer.h"
#include "core/base/two_languages.h"
#include "core/care/entries/fold.h"
#include "core/care/incident/incident.h"
#include "core/release/counts.h"

namespace lanework::serve {

// What stands of restrictions and courses is worked out by these.
struct CareRules {
  care::PainRule pain;
  care::ReturnRules courses;
};

// What a phone or the desk is given of a squad's coming evenings, from the club's folder and the care document of its
// players (app/planning/pocket.h); standing: the plan that stands, or empty. Faults: of the folder.
enum class Whose : std::uint8_t { kPhones, kDesks };
using Pocket = std::function<Result<Node>(const std::string& squad, const Node& care, Date today,
                                          const std::string& standing, Whose whose)>;

// Pages of a squad's evenings from one day to another, to print (app/cli/evening_pages.h); start: of one evening alone.
struct PagesAsked {
  std::string squad;
  Date from;
  Date to;
  std::optional<TimeOfDay> start;
  bool with_names = false;  // the slip for the coach's pocket; else the card
};
struct PagesMade {
  std::string pdf;         // empty: there is no such evening, or nothing fits the one that was asked for
  std::string no_session;  // why not; among several evenings a page says so
};
// A squad's calendar for whoever follows it by its link (core/club/followed_calendar.h), and what it was told by it.
struct Followed {
  std::string calendar;  // iCalendar
  std::string told;      // to keep, and to hand in as 'before' the next time
};
// What leaves the house on paper and as a calendar; empty where there is no folder. Faults: of the folder. care,
// standing: as for Pocket.
struct Printed {
  std::function<Result<PagesMade>(const PagesAsked& asked, const Node& care, const std::string& standing)> pages;
  // The pack for a coach's first evening with the squad, as PDF; empty: no such squad.
  std::function<Result<std::string>(const std::string& squad)> clinic_pack;
  // The squad's sessions as iCalendar; empty likewise. when: seconds since 1970.
  std::function<Result<std::string>(const std::string& squad, const std::string& standing, std::int64_t when)> calendar;
  // Empty: no such squad.
  std::function<Result<std::optional<Followed>>(const std::string& squad, const std::string& before, const Now& now)>
      followed;
};

// One document of the club's folder, as the desk changes it (app/planning/club_documents.h).
struct FolderChange {
  std::string path;
  std::optional<std::string> text;  // empty: it is to go
  std::string instead_of;           // the digest of what is there; empty: nothing is
};
struct FolderChanged {
  Node documents = Node::make_array();  // {"path", "digest", "content"}: as they are now, or what came meanwhile
  bool meanwhile = false;               // somebody else was first, and nothing was done
  std::optional<store::Lists> lists;    // of the club as it is now
};
struct ClubFolderWork {
  std::function<Result<Node>()> documents;  // empty where there is no folder
  std::function<Result<FolderChanged>(const std::vector<FolderChange>& changes)> change;
  // What it would be next season, as changes (app/planning/season_turn.h); nothing is written.
  std::function<Result<Node>()> turn;
  // {"path", "digest", "text"} of a roster; empty: there is none of that name.
  std::function<Result<std::optional<Node>>(const std::string& name)> roster;
};

// An answer's whole text, which may be kept and given again.
using Text = std::shared_ptr<const std::string>;

// A season's report as JSON (app/report/page_node.h). state: names what the store holds, so that a report of the same
// state need not be worked out again. Faults: of the records.
struct SeasonAsked {
  std::string club;
  Date from;
  Date to;
  Language language = Language::kEnglish;
};
using SeasonReports = std::function<Result<Text>(const SeasonAsked& asked, const std::string& state)>;

// The season as files in one ZIP, for programs that others wrote.
struct SeasonTaken {
  std::string zip;
  std::int64_t people = 0;  // who stand in it, by their ids
};
using SeasonExports = std::function<Result<SeasonTaken>(const std::string& club, Date from, Date to)>;

// The evenings that the club's folder has of those days, up to today. Faults: of the folder.
using PlannedEvenings = std::function<Result<std::vector<ledger::SessionKey>>(Date from, Date until)>;

// What a paper about an injury is made of.
struct PaperAsked {
  enum class Which : std::uint8_t { kIncident, kReferral };
  Which which = Which::kIncident;
  care::Incident incident;    // with the player's id
  Node care;                  // what was entered about the player (ledger::care_document)
  bool known_before = true;   // with what stood of the player when it happened
  bool letter_paper = false;  // else A4
  std::string club;
  std::string squad;  // its id
  std::string squad_name;
  std::string player_name;
};
// A PDF.
using InjuryPapers = std::function<Result<std::string>(const PaperAsked& asked)>;

// When backups were written and checked, as far as anybody noted it; empty texts: not.
struct BackupsNoted {
  std::string last;
  std::string file;
  std::string checked;
  std::string checked_one;  // when the one that was checked was written
};

struct ClubLists {
  std::int64_t version = -1;
  store::Lists lists;
  access::SquadsOfPlayer squads_of;
  std::string ledger_id;
};

struct House {
  House(ledger::KindTable kinds_of_entries, access::Matrix who_may, CareRules care_rules, StaticFiles web,
        KnownPasswords common_passwords);

  ledger::KindTable kinds;
  access::Matrix matrix;
  CareRules care;
  std::vector<release::Named> regions;  // that the board's releases count injuries by
  StaticFiles files;
  KnownPasswords known_passwords;
  Clock clock = seconds_of_clock;
  std::string origin;   // 'https://club.example:8765', where it is known; else the Host of each request
  bool secure = false;  // TLS here or at a proxy: cookies say so and browsers are told to stay with it
  Pocket pocket;        // empty where there is no folder to plan from
  Printed printed;      // empty with it
  std::function<Result<Text>()> catalogue;  // planning::catalogue_of as JSON; empty with it
  SeasonReports season_report;
  SeasonExports season_export;
  PlannedEvenings planned_evenings;  // empty where there is no folder
  InjuryPapers injury_paper;
  std::function<BackupsNoted()> backups;  // empty where nobody can say
  Keeping keeping;
  ClubFolderWork folder;            // its functions are empty with it
  store::ErasureNote note_erasure;  // puts somebody on the list that a restore goes by
  std::unique_ptr<Rooms> rooms;
  std::unique_ptr<sync::Writer> writer;
  std::unique_ptr<PasswordHashes> hashes;
  std::unique_ptr<Log> log;
  Metrics metrics;
  std::unique_ptr<Pace> pace;
  Pace calendar_pace{{60, 60}};  // of calendars that follow a squad, by the network that they ask from
  EdgeCounts edge;
  KnownDevices known_devices;

  // The lists as they are now; read anew only where they have changed.
  Result<std::shared_ptr<const ClubLists>> club(Room& room);
  // The same where the version was just asked for.
  Result<std::shared_ptr<const ClubLists>> club(Room& room, std::int64_t version);

 private:
  std::mutex lists_lock_;
  std::shared_ptr<const ClubLists> lists_;
};

}  // namespace lanework::serve
