// What every store does alike, whatever its rows lie in: verdicts, sealing under people's keys, the chain. A shelf is
// the rows of one club inside one call.
#pragma once

#include <array>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/store/sealing.h"
#include "app/store/store.h"

namespace lanework::store {

using Link = std::array<std::uint8_t, kDigestBytes>;

// One entry as it lies there.
struct Row {
  std::int64_t receipt = 0;
  std::string id;  // 16 bytes
  std::string device;
  std::int64_t sequence = 0;
  std::string author;
  std::string role;
  std::string received;
  std::string person;  // a tag; empty: nobody in particular
  std::string body;    // sealed where there is a person
  std::string day{};   // of an evening: what lies in the index of days; not part of the chain
  std::string squad{};
};

struct PersonRow {
  std::optional<std::string> sealed_key;  // empty: destroyed
};

struct AsideRow {
  std::string received;
  std::string device;
  std::string author;
  std::string why;
  std::string body;
  std::string digest{};  // of sender and content: kept aside once
  std::string role{};    // empty: an older version's
  std::string person{};  // a tag; empty: about nobody in particular
};

struct LastRow {
  std::int64_t receipt = 0;
  Link link{};
};

// Faults are remembered and end the call: after one nothing that is returned counts.
class Shelf {
 public:
  virtual ~Shelf() = default;
  // These ids will be asked about; for shelves that are far away.
  virtual void expect(const std::vector<std::string>& ids, const std::vector<std::string>& tags) = 0;
  virtual LastRow last() = 0;
  virtual std::optional<Row> by_id(const std::string& id) = 0;  // receipt, person and body of it
  virtual std::optional<PersonRow> person(const std::string& tag) = 0;
  // Everything about that person, by receipt, with what this call added.
  virtual std::vector<Row> about(const std::string& tag) = 0;
  virtual void add_person(const std::string& tag, const std::string& sealed_key, const std::string& made) = 0;
  virtual void add(const Row& row, const Link& link) = 0;
  virtual void set_aside(const AsideRow& row) = 0;
  virtual std::optional<AsideRow> aside(std::int64_t number) = 0;
  virtual void take_away_aside(std::int64_t number) = 0;
  virtual void write_down(const Decided& decided) = 0;
  virtual const std::optional<Fault>& failed() const = 0;
};

class Books {
 public:
  Books(const Key& key, Shelf& shelf) : key_(key), shelf_(shelf) {}

  // The caller begins and commits.
  std::vector<std::vector<EntryVerdict>> take_in(const std::vector<Batch>& batches, const ledger::KindTable& kinds);

  // The same for what was kept aside, whose row has that number.
  LookedAt take_in_kept(std::int64_t number, const Decision& by, const ledger::KindTable& kinds);
  LookedAt drop_kept(std::int64_t number, const Decision& by);
  // Empty where the person was erased, and where it does not open, as for entries.
  std::optional<std::string> readable_aside(const AsideRow& row);

  // Empty where the person was erased. Empty too where it does not open though the person was not: that is remembered.
  std::optional<std::string> readable(const Row& row);
  // The first row that should open and does not: bytes of it are others, or the store's key is. After one nothing that
  // is returned counts.
  [[nodiscard]] const std::optional<Fault>& damaged() const { return damaged_; }
  // Empty where it lies there as nothing that was ever taken in.
  static std::optional<ledger::Received> received_of(const Row& row, const std::string& text,
                                                     const ledger::KindTable& kinds);

 private:
  const Key& key_;
  Shelf& shelf_;
  struct Person {
    std::optional<Key> key;  // empty: erased, or not to be had
    bool erased = false;
  };
  LastRow last_;
  std::map<std::string, Person> people_;           // by tag
  std::map<std::string, ledger::State> consents_;  // by tag: those about whom something waits for one
  std::optional<Fault> damaged_;

  [[nodiscard]] bool was_erased(const std::string& tag);
  const ledger::State& consents_of(const std::string& tag, const ledger::KindTable& kinds);
  bool is_closed(const ledger::Entry& entry, const ledger::KindTable& kinds);
  const Person& person_of(const std::string& tag, const std::string* make);
  void remember_damage(const std::string& what);
  EntryVerdict take_in_one(const Batch& batch, const Incoming& incoming, const ledger::KindTable& kinds);
  EntryVerdict take_note_of_unread(const Batch& batch, const Unread& unread, const ledger::KindTable& kinds);
  struct Aside {
    std::string bytes;
    std::string why;
    std::string player;  // empty: nobody in particular
    std::string once;    // what is kept once of each device
  };
  bool set_aside(const Batch& batch, const Aside& aside);  // false: about somebody who was erased, and not kept
  EntryVerdict add(const Sender& sender, const std::string& received, const ledger::Entry& entry,
                   const std::string& bytes);
  LookedAt take_in_text(const AsideRow& row, const std::string& text, const ledger::KindTable& kinds);
};

class IndexOfDays;
class Seals;

// Goes over rows by receipt, from the first. Of a row that was emptied the link counts as it stands; whether it was
// emptied by its time is the seals' to say; the days at which entries are found are the index's.
class Auditor {
 public:
  Auditor(Books& books, Seals& seals, IndexOfDays& index) : books_(books), seals_(seals), index_(index) {}
  // past: the number of the compaction that emptied it; 0: none. False at the first break.
  bool goes_on(const Row& row, const Link& link, std::int64_t past);
  // After all rows, and all of the index.
  [[nodiscard]] Audit audit() const;

 private:
  Books& books_;
  Seals& seals_;
  IndexOfDays& index_;
  Link last_{};
  Audit audit_;
};

// Entries as they are handed out, each of which must follow from the row before it, link by link; at most so many.
class HandingOut {
 public:
  HandingOut(Books& books, const ledger::KindTable& kinds, std::string store,
             std::size_t most = static_cast<std::size_t>(-1));
  // 'before' is the link of the row before it. False at the first fault, and where it is enough.
  bool goes_on(const Link& before, const Row& row, const Link& link);
  [[nodiscard]] bool is_enough() const { return fault_ || out_.size() >= most_; }
  Result<std::vector<ledger::Received>> out();  // a fault rather than a part

 private:
  Books& books_;
  const ledger::KindTable& kinds_;
  std::string store_;
  std::size_t most_;
  std::vector<ledger::Received> out_;
  std::optional<Fault> fault_;

  void take(const Row& row);
};

// Whether the link is the one that the row has after 'last'.
bool follows(const Link& last, const Row& row, const Link& link);

// Whom an entry is about, also where its kind is a newer version's; empty: nobody in particular.
std::string person_in(const ledger::Entry& entry);

// For rows in a store of that name that no taking in has written.
Fault not_an_entry(const Row& row, const std::string& store);

// A row as the chain goes over it.
std::string text_of(const Row& row);

// What was changed by something else than a taking in.
Fault changed(const std::string& store, const std::string& what);

std::string role_text(ledger::Role role);
ledger::Role role_of(const std::string& word);  // one that role_text gave
std::string bytes_text(const Key& key);
std::string tag_text(const Key& key, const std::string& person);
Link link_of(const std::string& bytes);
std::string link_text(const Link& link);

// What is kept aside is bound to what stands beside it, since no chain goes over it.
std::string aside_context(const AsideRow& row);

}  // namespace lanework::store
