// One draw function per screen and per sheet, all of one shape; the table of them is in app_draw.cpp.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace app {
struct App;
}

namespace batch {
struct Containers;
}
namespace blend {
struct Coverage;
}
namespace catalogue {
struct Range;
}

namespace comparison {
struct Table;
}

namespace screens {

using Draw = void (*)(app::App&);

void book(app::App& app);
void book_foot(app::App& app);
void formula(app::App& app);
void batch(app::App& app);
void checks(app::App& app);
void cost(app::App& app);
void label(app::App& app);
void blend(app::App& app);
void stock(app::App& app);
void versions(app::App& app);
void swaps(app::App& app);
void reading(app::App& app);
void records(app::App& app);
void record(app::App& app);
void weigh(app::App& app);
void weigh_foot(app::App& app);
bool weigh_has_foot(const app::App& app);
void more(app::App& app);
void papers(app::App& app);
void workshop(app::App& app);

void backup(app::App& app);           // the part of More
void backup_reminder(app::App& app);  // where it is due; at the head of the book
void nothing_open(app::App& app);     // in place of formula and batch while no recipe is open

// Parts that several screens and sheets show.
void keeps(app::App& app);      // of Blend: by the raw materials on the shelf
void meant_row(app::App& app);  // for whom and where; leads to where that is said
// A figure with what it is of and how far it is known, read as one.
void figure_row(app::App& app, const std::string& title, const std::string& right, const std::string& under);
std::string coverage_words(const app::App& app, const blend::Coverage& of);
std::string range_words(const app::App& app, const catalogue::Range& range);
void batch_total(app::App& app);  // what is weighed in all, and what goes into each container
void stock_left(app::App& app);   // how far what is at hand goes
void scales(app::App& app);       // the bench of this device
// One kind of container and how its fill is said; true: it is to be taken away. Not counted: one unit of it.
bool container_card(app::App& app, batch::Containers& one, std::size_t index, bool counted);
void update_offer(app::App& app);      // a newer version of the hosted page
void storage_standing(app::App& app);  // how long what is stored lasts
// How much of a line may be used, and with `reasons` what limits it and what is not known.
void ceiling_of_line(app::App& app, std::size_t line, bool reasons);
void held_on_line(app::App& app, std::size_t line);  // what it is to bring, where that was said
// A search among the shipped ingredients; the id that was chosen from what it found.
std::optional<std::string> picked(app::App& app, std::string_view chosen);
void weigh_ways(app::App& app);    // from a line that has too much or too little
void weigh_timers(app::App& app);  // those that run
std::string weigh_name(const app::App& app, std::size_t line);
void made_needs(app::App& app);  // below the grams of a batch: the made parts it takes
void lots_of_card(app::App& app, std::string_view ingredient);
// Sides of a recipe, figure by figure; each side has a name.
void compared(app::App& app, const comparison::Table& table, const std::vector<std::string>& sides);
// A field for a day, which says the form of one while it holds none; the text after each change.
std::optional<std::string> day_field(app::App& app, std::string_view key, const std::string& name,
                                     const std::string& value);

// Sheets: what they hold; their frame is drawn by the caller.
void new_recipe(app::App& app);
void from_text(app::App& app);
void incoming(app::App& app);
void pasted(app::App& app);
void pasted_line(app::App& app);
void recipe(app::App& app);
void rename(app::App& app);
void product(app::App& app);
void meant_for(app::App& app);  // whom and which market
void share(app::App& app);
void line(app::App& app);
void hold(app::App& app);
void ingredient(app::App& app);
void phase(app::App& app);
void to_hundred(app::App& app);
void firmness(app::App& app);
void give_way(app::App& app);
void fit_amount(app::App& app);
void in_amounts(app::App& app);
void amount(app::App& app);
void container(app::App& app);
void bin(app::App& app);
void tags(app::App& app);
void restore(app::App& app);
void roles(app::App& app);
void card(app::App& app);
void own_new(app::App& app);
void own(app::App& app);
void own_limit(app::App& app);
void own_parts(app::App& app);
void own_bin(app::App& app);
void made(app::App& app);
void label_said(app::App& app);
void label_colours(app::App& app);
void maker(app::App& app);
void customer_card(app::App& app);
void source_list(app::App& app);
void reading_for(app::App& app);   // which kind of product, where and when
void reading_item(app::App& app);  // one name of the list
void reading_line(app::App& app);  // where the 1 % line falls
void reading_sum(app::App& app);   // of several, or something measured
void record_new(app::App& app);
void record_entry(app::App& app);
void record_line(app::App& app);
void lot(app::App& app);
void trace(app::App& app);  // which batches a lot went into, and where those went
void pack(app::App& app);   // what is paid for one thing
void rates(app::App& app);  // of exchange
void version(app::App& app);
void weigh_line(app::App& app);  // lot, what is at hand, another jug
void weigh_adjust(app::App& app);
void weigh_steps(app::App& app);
void weigh_end(app::App& app);
void paper(app::App& app);  // one to be read
void label_sheet(app::App& app);

}  // namespace screens
