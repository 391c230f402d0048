// What is shown now and what is being thought about: screen, sheet and what each of them holds for the
// moment. Nothing here is kept when the page is left, but for the screen itself.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "engine/labelling.h"
#include "engine/pasted.h"
#include "engine/quantity.h"
#include "engine/reading_list.h"
#include "engine/share.h"
#include "engine/workspace.h"
#include "engine/workspace_backup.h"
#include "widget_gallery.h"

namespace app {

enum class Screen {
    book,
    formula,
    batch,
    stock,
    more,
    gallery,
    checks,
    cost,
    label,
    versions,
    reading,
    records,
    record,
    weigh,
    papers,
    workshop,
    swaps,
    blend
};

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
    meant_for,
    share,
    line,
    hold,
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
    label_said,
    label_colours,
    maker,
    customer_card,
    label_sheet,
    source_list,
    reading_for,
    reading_item,
    reading_line,
    reading_sum,
    record_new,
    record_entry,
    record_line,
    lot,
    trace,
    pack,
    rates,
    version,
    weigh_line,
    weigh_adjust,
    weigh_steps,
    weigh_end,
    paper
};

// Of the open recipe, as HTML that is read, prints and is handed over as a file.
enum class Paper {
    batch_sheet,
    labels,
    customer_card,
    assessor_pack,
    handout,
    handouts,
    shopping_list,
    test_print,
    workshop,
    batch_record  // of the record that is shown
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

struct LabelIn {                       // of one printing
    std::string of;                    // the recipe
    labelling::Details details;        // the maker is the device's
    std::string directions, cautions;  // being typed, a sentence a line
    std::string made_on;               // likewise, a day
    std::size_t copies = 0;            // 0: as many as the batch has containers
    float along = 0;                   // of a wide label, what lies to the left
    bool smaller = false;              // a wide label is shown whole
    std::size_t used = 0;              // cells that are gone from the first sheet
    bool flap = false;                 // a wrap has one
};

struct ReadingIn {              // a list of ingredients of which it is asked what it allows
    std::string text, trouble;  // as it was pasted; why it could not be read
    std::string title;          // of the recipes that come of it
    reading::Sold sold{"lip_balm", "", ""};
    std::vector<reading_list::Entry> entries;  // none: nothing was read yet
    std::optional<std::size_t> line_after;     // so many of the items hold 1 % or more
    std::vector<reading::Statement> said;      // by the person; Term::item is a place among the entries
    std::vector<std::string> turned;           // other statements that are not switched as they come, by key
    std::size_t entry = 0;                     // the one a sheet concerns
    std::optional<std::size_t> statement;      // of `said`, likewise; none: a new one
    reading::Statement draft;                  // while it is being said
    bool all_said = false;                     // what is switched off is listed too
    bool stopped = false;                      // not worked at any more
    bool recalled = false;                     // what was kept of an earlier time was taken up
};

struct RecordsIn {       // batch records and lots, and what is being written into them
    std::string record;  // id of the one that is shown
    std::string search;
    record::Entry entry;           // a new one, or a correction
    record::Known known;           // of a line
    std::string number, day, who;  // of a record that is about to be begun
    std::string lot;               // id of the one being corrected, "" a new one
    lot::Lot lot_in;
    std::string lot_of;  // the ingredient, and below the numbers of the lot that is followed
    std::vector<std::string> lot_numbers;
    bool all_entries = false;  // as they were written, those that do not hold too
};

struct PriceIn {  // what is paid for one thing, while it is entered
    price::Of of = price::Of::label;
    std::string what;               // id or name
    std::optional<std::size_t> at;  // of the packs of the book; none: a further one
    bool entering = false;
    price::Pack pack;
    std::optional<std::int64_t> paid, delivery;  // on the grid, until the currency is known
    price::Rate rate;
    std::optional<std::string> currency;  // to reckon in, being typed
    price::By by[2] = {};                 // of the wholesale and the retail price, while they have no figure
};

struct VersionsIn {
    std::string name;                // that the recipe as it stands is to be kept under
    std::string version;             // id of the one a sheet concerns
    std::string against;             // id of the one it is compared with, "" the recipe as it stands
    std::string named;               // its own name, being typed
    bool beside = false;             // several are laid side by side
    std::vector<std::string> sides;  // which; "" the recipe as it stands
};

struct SwapIn {            // what could stand in a line's place
    std::string of;        // the ingredient of the line
    std::string by;        // the one that is worked out
    bool nearest = false;  // of several the nearest formula
    std::vector<std::string> several;
    bool others_move = false;
};

struct BlendIn {
    std::optional<std::int64_t> temp;  // another one that the density is asked at
    std::int64_t margin = 0;           // months kept in hand
    std::vector<std::string> against;  // ids of those whose fatty acids are laid over
};

struct WeighIn {                               // at the bench
    bool ways = false;                         // what can be done about a line that is short is shown
    std::optional<quantity::Percent> percent;  // that a line shall have
    std::size_t line = 0;                      // which
    bool rest = false;                         // the rest line gives way
    std::optional<quantity::Mass> jug;         // empty weight of another jug
    bool dropping = false;                     // asked whether to drop it all
    std::set<std::string> told;                // timers that are over and were told of
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
    LabelIn label;
    ReadingIn reading;
    RecordsIn records;
    PriceIn price;
    VersionsIn versions;
    SwapIn swap;
    bool all_compared = false;  // what is the same on all sides is listed too
    BlendIn blend;
    WeighIn weigh;
    std::optional<bool> awake;                         // the screen stays lit; nothing: not known yet
    std::optional<Paper> paper;                        // that is being read
    float paper_at[4] = {0, 0, 0, 0};                  // where: left, top, width, height
    std::string workshop_starts;                       // being typed
    std::optional<workspace_backup::Preview> restore;  // likewise, a backup
    std::string stock_search, stock_role;              // in Stock: what is looked for; "" all
    std::string card, own;              // ids: whose card is shown; the own entry being changed
    bool card_of_recipe = false;        // as the open recipe holds it
    bool roles_of_own = false;          // the sheet of roles is for the own entry, not for the filter
    std::string own_limit_of;           // where a limit is to hold that has no figure yet
    std::string own_date, own_date_of;  // a date being typed, and of which own entry
    share::Extent share_extent = share::Extent::all;  // of the recipe that is being shared
    widget::Tried tried;                              // in the gallery of widgets
    std::string message;                              // shown for a while, spoken once
    double message_until_ms = 0;
    std::string meant_date, meant_date_of;  // the same of a recipe
    bool side_by_side = false;              // a recipe's lines stand beside what is asked about them
    bool all_checks = false;                // what was checked is listed line by line
    bool all_unmade = false;                // what could not be checked likewise
    bool update_ready = false;              // a new version of the hosted page waits
    int take_update = 0;  // load it after so many steps, when what was just written is known to be kept
    std::optional<bool> storage_lasts;  // whether the browser has agreed to keep what is stored
    bool foot = false;                  // the screen's main action stands below the list
    bool to_top = false;                // the screen begins at its top
    int opened = 0;                     // how often another recipe was: its screens begin at their top
    bool escape = false;                // close what is open, in this frame
    bool again = true;                  // something changed that the next frame has to show
    bool message_is_problem = false;
    bool damaged_saved = false;  // the unreadable records were handed over as a file
};

}  // namespace app
