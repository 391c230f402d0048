// Keeps the workspace in the host's store: each record on two keys in turn (store.h), the valid one with the
// higher save counter wins, a damaged one is copied to a key of its own, because its turn will come, and is
// shown. Answers come through the arrivals queue.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "engine/store.h"
#include "engine/workspace.h"
#include "platform.h"

namespace keeping {

inline constexpr std::string_view kPrefix = "tarebench:";

struct Damaged {
    std::string key, text;    // key: of the record it was
    std::string aside, slot;  // where its copy stands; where it itself still stands, "" when written over
};

// Of two windows that changed one recipe without knowing of each other, one keeps its place; the other's
// version is to be kept beside it.
struct Loser {
    workspace::Kept kept;
    bool ours = false;  // made in this window
};

enum class Trouble { none, full, refused };

class Keeping {
  public:
    void start();  // asks the host for what is stored
    void receive(const platform::Event& event);
    bool loaded() const { return loaded_; }
    // Once after loading: what was kept. Records that can't be read are in damaged().
    workspace::Workspace take_loaded();
    // Writes what differs from what was written last, and with it what could not be written then. Counts the
    // save on each record; sets its instant of change.
    void save_changes(workspace::Workspace& workspace, std::string_view now);

    // A record another window of this browser wrote; empty when there is none. Adopted, it counts as written.
    std::vector<workspace::Kept> take_foreign();
    void adopt(const workspace::Kept& kept);
    std::vector<workspace::KeptOwn> take_foreign_own();  // own ingredients likewise
    void adopt(const workspace::KeptOwn& kept);
    std::vector<workspace::KeptOwn> take_own_losers();
    // Of what is filed nothing loses: what is here is brought together with it (workspace::take_filed).
    std::vector<workspace::Filed> take_foreign_filed();
    void adopt(const workspace::Filed& filed);
    std::vector<workspace::KeptWeighOut> take_foreign_weighing();  // and weighings under way
    void adopt(const workspace::KeptWeighOut& kept);
    std::vector<Loser> take_losers();  // to be taken before the foreign ones, and added under new ids

    const std::vector<Damaged>& damaged() const { return damaged_; }
    void keep_aside(const std::string& text);  // what a file brought and could not be read
    void forget_damaged();                     // the person has them
    Trouble trouble() const { return trouble_; }

  private:
    struct Place {
        char next = 'a';
        std::uint64_t saves = 0;
    };
    // What another window wrote, settled against what was written here; `lost` gets the version that gave
    // way.
    template <class Entry, class Lost>
    void settle_foreign(const std::string& base, char slot, Entry theirs, std::vector<Entry>& written,
                        std::vector<Entry>& foreign, Lost lost);
    void drop(const std::string& base);
    void write(const std::string& base, std::uint64_t saves, const std::string& json);
    void take_foreign_record(const std::string& base, char slot, const std::string& text);
    void set_aside(const std::string& base, char slot, const std::string& text);

    std::map<std::string, store::Slots> found_;  // base key -> texts
    std::map<std::string, std::string> asides_;  // key -> text
    std::map<std::string, Place> places_;
    std::set<std::string> unsaved_;  // base keys whose last save failed
    bool try_again_ = false;         // without waiting for a change
    std::vector<workspace::Kept> written_;
    std::vector<workspace::Kept> foreign_;
    std::set<std::string> contested_;  // base keys not written, because another window had
    std::vector<Loser> losers_;
    std::vector<workspace::KeptOwn> written_own_, foreign_own_, own_losers_;
    std::vector<workspace::Filed> written_filed_, foreign_filed_;
    std::uint64_t written_filings_ = 0;
    std::vector<workspace::KeptWeighOut> written_weighing_, foreign_weighing_;
    workspace::Settings written_settings_;
    std::string written_open_, written_place_;
    std::vector<Damaged> damaged_;
    Trouble trouble_ = Trouble::none;
    bool loaded_ = false;
};

}  // namespace keeping
