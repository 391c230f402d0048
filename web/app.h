// The state of the program and its frame: arrivals, logic, drawing, saving. Screens get the App, draw from
// its analysis and change the workspace only through the edits declared here, which are the engine's.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "engine/analysis.h"
#include "engine/pasted.h"
#include "engine/share.h"
#include "engine/store.h"
#include "engine/workspace.h"
#include "keeping.h"
#include "kit.h"
#include "undo.h"

namespace app {

enum class Screen { book, formula, batch, stock, more };

// What lies over the page; one at a time.
enum class Sheet {
    none,
    new_recipe,
    from_text,
    paste_list,
    incoming,
    pasted,
    pasted_line,
    recipe,
    rename,
    product,
    share,
    line,
    ingredient,
    phase,
    to_hundred,
    firmness,
    give_way,
    fit_amount,
    in_amounts,
    amount,
    container,
    bin,
    tags,
    restore,
    roles,
    card,
    own_new,
    own,
    own_limit,
    own_parts,
    own_bin,
    made,
    source_list
};

struct Wish {       // a change of the whole formula while it is being thought about
    int steps = 0;  // of firmness
    std::optional<quantity::Percent> percent;  // that a line shall have
    std::set<std::size_t> givers;              // the lines that give way
    std::optional<quantity::Mass> amount;      // of one line
};

struct ListIn {  // a pasted list while it is looked at
    std::string text;
    pasted::Said said;
    pasted::List list;
    std::size_t entry = 0;  // the one a sheet concerns
};

struct AmountsIn {  // a formula that is being said in grams or parts
    bool parts = false;
    std::vector<std::optional<std::int64_t>> values;  // of each line
};

struct UiState {
    Screen screen = Screen::book;
    Sheet sheet = Sheet::none;
    std::string recipe;               // the one a sheet concerns
    std::size_t line = 0, phase = 0;  // likewise
    Wish wish;
    bool line_is_new = false, phase_is_new = false;
    bool for_unit = false;      // the container being chosen is what one person gets
    std::string search, typed;  // in a picker; in a text sheet
    std::string book_search, book_tag;
    std::string typed_problem;
    std::optional<workspace::Recipe> incoming;  // understood, not kept yet
    std::optional<ListIn> list_in;              // likewise, a list
    AmountsIn amounts_in;
    std::optional<workspace_backup::Preview> restore;  // likewise, a backup
    std::string stock_search, stock_role;              // in Stock: what is looked for; "" all
    std::string card, own;              // ids: whose card is shown; the own entry being changed
    bool card_of_recipe = false;        // as the open recipe holds it
    bool roles_of_own = false;          // the sheet of roles is for the own entry, not for the filter
    std::string own_limit_of;           // where a limit is to hold that has no figure yet
    std::string own_date, own_date_of;  // a date being typed, and of which own entry
    share::Extent share_extent = share::Extent::all;  // of the recipe that is being shared
    std::string message;                              // shown for a while, spoken once
    double message_until_ms = 0;
    bool to_top = false;  // another recipe was opened: its screens begin at their top
    bool escape = false;  // close what is open, in this frame
    bool again = true;    // something changed that the next frame has to show
    bool message_is_problem = false;
    bool damaged_saved = false;  // the unreadable records were handed over as a file
};

struct App {
    store::Presets presets;
    words::Table words;
    workspace::Workspace work;
    keeping::Keeping keeping;
    bool kept_loaded = false;                    // what was stored has arrived
    std::optional<analysis::Analysis> analysis;  // of the open recipe
    std::optional<workspace::Recipe> analysed;
    scales::Bench analysed_on;
    std::vector<catalogue::Ingredient> mine;  // own ingredients and made parts of this device
    catalogue::Catalogue known;               // shipped, with the open recipe's own ingredients laid over
    Undo<workspace::Recipe> undo;
    std::string undo_of;  // id of the recipe the steps belong to
    UiState ui;
    kit::Kit kit;

    std::string say(std::string_view key, const words::Arguments& arguments = {}) const {
        return words::say(words, key, arguments);
    }
};

void start();          // once: library context, presets, store
void step(bool draw);  // platform::run calls it
App& state();          // for tests

// --- what screens may do ---
workspace::Recipe* open_recipe(App& app);
void open(App& app, std::string_view id, Screen screen = Screen::formula);
void keep(App& app, workspace::Recipe recipe);                         // adds it to the book and opens it
void edit(App& app, const result::Result<formula::Formula>& changed);  // of the open recipe, or says why not
void edit(App& app, const result::Result<workspace::Recipe>& changed);
void edit(App& app, const std::string& id, const result::Result<workspace::Recipe>& changed);  // of any
void bin(App& app, const std::string& id);
void step_back(App& app);
void step_forth(App& app);
void show(App& app, Sheet sheet);
void close_sheet(App& app);
void tell(App& app, std::string message, bool problem = false);
void take_in(App& app, std::string_view text);  // a link, a file's text or a list: shown before it is kept
void read_list(App& app);                       // anew, with what was said about it
workspace::Recipe blank_recipe(const App& app);
std::string new_id();
// `title` within a sentence such as "{title}, copy", shortened where it would be longer than a title may be.
std::string title_within(const App& app, std::string_view key, std::string_view title);

// --- everything as one file ---
void back_up(App& app);
void take_backup(App& app, std::string_view text);  // shown before anything is changed
void put_back(App& app);                            // what is shown
std::string last_backup_words(const App& app);
bool backup_due(const App& app);

// --- own ingredients (app_own.cpp) ---
void refresh_mine(App& app);
void show_card(App& app, const std::string& id, bool of_recipe);
void add_own(App& app, catalogue::Ingredient own);  // and opens it to be filled in
void copy_own(App& app, const catalogue::Ingredient& of);
void edit_own(App& app, catalogue::Ingredient changed);
void bin_own(App& app, const std::string& id);
void restore_own(App& app, const std::string& id);
void erase_own(App& app, const std::string& id);
void keep_own(App& app, const std::string& id);  // of the open recipe
std::string role_words(const App& app,
                       const std::string& role);  // "" for none; a role that has no word as it is
const char* made_key(catalogue::MadeAs as);
source::Standing source_standing(const App& app, std::string_view key);

// Where a figure comes from and how far it may be trusted, in words.
std::string source_words(const App& app, std::string_view key, source::Standing standing);

// --- what screens may ask of the host ---
std::string link_address(const App& app,
                         const std::string& link);  // with the page's or the hosted address before it
bool address_is_hosted(const App& app);
bool from_disk();
void copy_text(App& app, const std::string& text);
bool can_share();
void share(const std::string& title, const std::string& address);
void save_recipe_file(const workspace::Recipe& recipe);
void save_batch_sheet(App& app);  // of the open recipe, as HTML that prints
void save_damaged(App& app);
void save_page();
void open_file();

}  // namespace app
