// The state of the program and its frame: arrivals, logic, drawing, saving. Screens get the App, draw from
// its analysis and change the workspace only through the edits declared here, which are the engine's.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app_ui.h"
#include "engine/analysis.h"
#include "engine/analysis_blend.h"
#include "engine/ceiling.h"
#include "engine/comparison.h"
#include "engine/cost.h"
#include "engine/documents.h"
#include "engine/labelling.h"
#include "engine/limits_book.h"
#include "engine/qr.h"
#include "engine/reading_said.h"
#include "engine/store.h"
#include "engine/weigh_out_ways.h"
#include "engine/workshop.h"
#include "engine/workspace.h"
#include "engine/workspace_stock.h"
#include "keeping.h"
#include "kit.h"
#include "picture.h"
#include "undo.h"

namespace app {

struct WeighView {  // what stands of the weigh-out that is shown, and the ways on from its line
    std::string id;
    weigh_out::WeighOut of;
    weigh_out::Standing standing;
    bool ways = false;  // the two below are worked out
    std::vector<weigh_out::Option> options;
    std::vector<std::vector<finding::Finding>> remarks;  // of the checks, for each
};

struct BlendAsked {  // what a blend was worked out with, beside the recipe
    std::optional<std::int64_t> temp;
    std::int64_t margin = 0;
    std::uint64_t filings = 0;
    std::string today;
    bool operator==(const BlendAsked&) const = default;
};
struct BlendView {
    BlendAsked asked;
    result::Result<analysis::Blended> made;
    std::vector<blend::Rung> ladder;  // the starters, as one knows them
};

struct App {
    store::Presets presets;
    words::Table words;
    std::optional<std::string> words_for;  // the browser's language that they were chosen for
    workspace::Workspace work;
    keeping::Keeping keeping;
    bool kept_loaded = false;                    // what was stored has arrived
    std::optional<analysis::Analysis> analysis;  // of the open recipe
    std::optional<workspace::Recipe> analysed;
    scales::Bench analysed_on;
    std::optional<limits::Book> book;      // unpacked when the checks are first asked for
    std::optional<safety::Report> report;  // of what is analysed; none: nobody has asked
    std::optional<result::Result<labelling::Labelled>> labelled;  // likewise
    labelling::Details labelled_with;
    std::optional<customer_card::Card> card;                     // likewise
    std::optional<result::Result<workshop::Workshop>> workshop;  // likewise
    workshop::Plan workshop_with;
    std::optional<BlendView> blend_view;            // likewise
    std::vector<workspace::Recipe> compared_sides;  // that stand side by side
    price::Book compared_with;
    std::optional<comparison::Table> compared;
    std::optional<result::Result<cost::Cost>> cost;  // likewise
    std::optional<result::Result<cost::PerHead>> per_head;
    price::Book costed_with;
    std::string costed_of;                  // id of the recipe
    std::optional<workspace::Shelf> shelf;  // as of so many filings
    std::uint64_t shelf_of = 0;
    std::optional<qr::Code> code;  // of the link that is being shared
    std::string code_says;
    std::map<std::size_t, std::optional<ceiling::Ceiling>> ceilings;  // of its lines that were asked for
    std::unique_ptr<::reading::Work> reading;                         // at what a list of ingredients allows
    std::vector<std::size_t> reading_entries;                         // of its items
    std::vector<std::size_t> reading_said;  // its first statements are these of the person
    std::optional<WeighView> weigh_view;
    std::vector<catalogue::Ingredient> mine;      // own ingredients and made parts of this device
    std::vector<catalogue::Ingredient> laid_own;  // the open recipe's own ingredients
    catalogue::Catalogue laid;  // the shipped ones with those laid over, where there are any
    const catalogue::Catalogue& known() const { return laid_own.empty() ? presets.catalogue : laid; }
    Undo<workspace::Recipe> undo;
    std::string undo_of;  // id of the recipe the steps belong to
    UiState ui;
    kit::Kit kit;
    picture::Picture picture;  // of the last frame
    bool undrawn = true;       // it differs from what is on the canvas
    bool unsettled = true;     // the last step left off before all had come to rest

    std::string say(std::string_view key, const words::Arguments& arguments = {}) const {
        return words::say(words, key, arguments);
    }
    std::string grams(quantity::Mass mass) const {
        return say("unit.grams", {{"n", words::figure(words, mass.grid)}});
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
bool all_read(
    App& app);  // no field says what cannot be read; or tells what is wrong with the first that does
void take_in(App& app, std::string_view text);  // a link, a file's text or a list: shown before it is kept
void take_fragment(App& app, std::string_view text);  // what stood after the '#' of the page's address
void read_list(App& app);                             // anew, with what was said about it
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

// --- what a list of ingredients allows (app_reading.cpp) ---
void read_ingredients(App& app);  // what was pasted; or says why not
void ask_anew(App& app);          // what is said of the list changed
bool to_think(const App& app);    // whether it is to be worked at, which is so while it is in sight
bool think(App& app);             // works at it for a moment; whether it did
std::string entry_name(const App& app, const reading_list::Entry& entry);
::reading::Names item_names(const App& app);
// Turns a statement of the question on or off: one of the person's, or of what is known.
void turn_statement(App& app, std::size_t statement);
// Does what would mend a question that nothing fits; false where that is not the person's to change.
bool may_mend(const App& app, const ::reading::Mend& mend);
void mend(App& app, const ::reading::Mend& mend);
void recall_reading(App& app);    // what was kept of an earlier time, once
void remember_reading(App& app);  // what was decided and said, so that it is there another time
void keep_suggestion(App& app, std::size_t which);  // as a recipe of the book, its origin noted
void keep_suggestions(App& app);
void keep_as_versions(App& app);  // all suggestions, of one recipe

// --- batch records, lots and versions (app_records.cpp) ---
std::string today();
void begin_record(App& app);  // asks for number, day and maker of a record of the open recipe's batch
void write_record(App& app);  // files it as asked, and shows it
void show_record(App& app, const std::string& id);
bool add_entry(App& app, record::Entry entry);  // to the one that is shown; or says why not
void begin_entry(App& app, record::Kind kind, const record::Entry* corrects = nullptr);
void show_lot(App& app, const std::string& ingredient, const std::string& id);  // "" a new one
void keep_lot(App& app);                                                        // as it stands in its sheet
void show_trace(App& app, std::string ingredient, std::vector<std::string> numbers);
void label_batch(App& app, const record::Record& record);  // its number and day on the label of its recipe
void keep_version(App& app, std::string_view name);        // of the open recipe
void name_version(App& app, const std::string& id, std::string_view name);
void pin_version(App& app, const std::string& id, bool pinned);
void take_version(App& app, const std::string& id);               // the open recipe is that again
void branch_version(App& app, const std::string& id);             // a recipe of its own
std::string version_name(const App& app, const std::string& id);  // "as it is now" for ""

// --- side by side, and what could stand in a line's place (app_swap.cpp) ---
const comparison::Table& compared(App& app, std::vector<workspace::Recipe> sides);
void take_swap(App& app, formula::Formula formula);

// --- what things cost, and what is left of them (app_cost.cpp) ---
const result::Result<cost::Cost>& cost_of(App& app);  // of what is analysed, by this device's prices
// Nothing: no currency is said, or no workshop can be.
std::optional<cost::PerHead> per_head(App& app);
const workspace::Shelf& shelf(App& app);
std::string money(const App& app, money::Amount amount);  // in the currency that is reckoned in
void edit_prices(App& app, const result::Result<price::Book>& changed);
void show_packs(App& app, price::Of of, const std::string& what);
bool keep_pack(App& app);  // as it stands in its sheet; or says why not
// What was taken from the shelf for one line of a record, or why nothing was; "" where no lot was named.
std::string taken_words(App& app, const workspace::Taking& taking);

// --- a batch on the scale (app_weigh.cpp) ---
const workspace::KeptWeighOut* weighing(const App& app);   // of the open recipe; null: none is under way
void weigh(App& app);                                      // goes on with it, or begins one
const WeighView& weigh_view(App& app, bool ways = false);  // only while one is under way
void set_weighing(App& app, weigh_out::WeighOut changed);
void pour(App& app);  // what was typed, or as much as was asked for, is in
void take_way(App& app, const weigh_out::WeighOut& after);
void take_adjustment(App& app, const weigh_out::WeighOut& after);  // to the first line that is to be added
void take_jug(App& app, quantity::Mass empty);
void fill_first(App& app, quantity::Mass net);
void start_timer(App& app, const std::string& what, std::int64_t minutes);
std::optional<std::int64_t> seconds_left(const weigh_out::Timer& timer);
void follow_timers(App& app);    // for step(): tells when one is over, and wakes for the next
void record_weighing(App& app);  // as a batch record; what an adjustment made of the recipe as a version
void drop_weighing(App& app);

const safety::Report& checks(App& app);  // of what is analysed, worked out when it is first asked for
// How much of a line may be; null where that cannot be said: the rest line, a locked one.
const ceiling::Ceiling* ceiling_of(App& app, std::size_t line);
// What a line brings, and the percent at which it brings what is held.
std::vector<formula::Hold> brought(App& app, std::size_t line);
std::optional<result::Result<ceiling::Kept>> keeping(App& app, std::size_t line);  // none: nothing is held
const limits::Book* limits_book(App& app);
// What the label of what is analysed says in its market, and what is answered at the stall; likewise.
const result::Result<labelling::Labelled>& labelled(App& app);
const customer_card::Card& customer_card(App& app);
documents::LabelPaper label_paper(const App& app);
void edit_maker(App& app, label::Maker maker);
void edit(App& app, const result::Result<workspace::Settings>& changed);  // or says why not
const result::Result<workshop::Workshop>& workshop_of(
    App& app);  // of what is analysed, by this device's plan
const std::optional<qr::Code>& code_of(App& app, const std::string& address);
// What the open recipe is made of, how firm it is and how long it keeps (app_blend.cpp).
const BlendView& blend_view(App& app);
// Ids and names of what its fatty acids may be laid beside: its versions, other recipes.
std::vector<std::pair<std::string, std::string>> laid_over(const App& app);
std::optional<blend::Profile> profile_of(const App& app, const std::string& id);
void rate_firmness(App& app, int rating);  // of what is open, 0: not any more
// A finding's subject and constituent as a person calls them.
std::string subject_name(const App& app, const finding::Finding& finding);
std::string constituent_name(const App& app, const finding::Finding& finding);

// Where a figure comes from and how far it may be trusted, in words.
std::string source_words(const App& app, std::string_view key, source::Standing standing);

// --- what screens may ask of the host ---
std::string link_address(const App& app,
                         const std::string& link);  // with the page's or the hosted address before it
bool address_is_hosted(const App& app);
bool from_disk();
bool installed();            // started from the home screen
void ask_to_keep(App& app);  // the browser, after something was made that is worth keeping
void take_update(App& app);  // or says what has to be finished first
void load_update(App& app);  // for step(): or says that nothing can be stored
void copy_text(App& app, const std::string& text);
bool can_share();
void share(const std::string& title, const std::string& address);
void save_recipe_file(const workspace::Recipe& recipe);
// Of the open recipe, or the record that is shown: printed, or handed over as a file; or read on the page.
void give(App& app, Paper paper, bool print = false);
void read(App& app, Paper paper);
void lay_paper(App& app);  // for step(): where the sheet has room for it
std::string paper_title(const App& app, Paper paper);
void save_damaged(App& app);
void save_page();
void open_file();

}  // namespace app
