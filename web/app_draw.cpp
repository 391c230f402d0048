// See app_draw.h. Holds the table of screens and sheets; everything within them is theirs.
#include "app_draw.h"

#include <algorithm>
#include <cmath>

#include "app.h"
#include "drawn_items.h"
#include "engine/workspace_records.h"
#include "engine/workspace_versions.h"
#include "engine/writing.h"
#include "imgui.h"
#include "imgui_internal.h"
#include "kept_rows.h"
#include "mirror.h"
#include "platform.h"
#include "screens.h"
#include "theme.h"
#include "widget_button.h"
#include "widget_gallery.h"
#include "widget_keypad.h"
#include "widget_press.h"
#include "widget_sheet.h"
#include "widget_text.h"

namespace app {
namespace {

struct ScreenRow {
    Screen screen;
    const char* name;  // key in the table of words
    widget::Mark mark;
    screens::Draw draw;
    screens::Draw foot = nullptr;  // its main action, where a thumb reaches it on a phone
};
constexpr ScreenRow kScreens[] = {
    {Screen::book, "nav.book", widget::Mark::book, screens::book, screens::book_foot},
    {Screen::formula, "nav.formula", widget::Mark::formula, screens::formula},
    {Screen::batch, "nav.batch", widget::Mark::batch, screens::batch},
    {Screen::stock, "nav.stock", widget::Mark::stock, screens::stock},
    {Screen::more, "nav.more", widget::Mark::more, screens::more},
};
// Not among the places: contributors open it by its fragment.
constexpr ScreenRow kGallery{Screen::gallery, "gallery.title", widget::Mark::dots, widget::gallery};

// Stand where the formula stands, or beside it.
constexpr ScreenRow kAsked[] = {
    {Screen::checks, "nav.checks", widget::Mark::check, screens::checks},
    {Screen::blend, "nav.blend", widget::Mark::check, screens::blend},
    {Screen::cost, "nav.cost", widget::Mark::check, screens::cost},
    {Screen::label, "nav.label", widget::Mark::check, screens::label},
    {Screen::versions, "nav.versions", widget::Mark::check, screens::versions},
    {Screen::swaps, "nav.swaps", widget::Mark::check, screens::swaps},
};

// Led to from Batch, and stand where it stands.
constexpr ScreenRow kUnderBatch[] = {
    {Screen::papers, "nav.papers", widget::Mark::batch, screens::papers},
    {Screen::workshop, "nav.workshop", widget::Mark::batch, screens::workshop},
};

// Led to from More and from where a recipe begins.
constexpr ScreenRow kLedTo[] = {
    {Screen::reading, "nav.reading", widget::Mark::search, screens::reading},
    {Screen::records, "nav.records", widget::Mark::book, screens::records},
    {Screen::record, "nav.record", widget::Mark::book, screens::record},
};

// Led to from the batch. It has the whole window: hands are busy, and nothing else is to be hit.
constexpr ScreenRow kWeigh{Screen::weigh, "nav.weigh", widget::Mark::batch, screens::weigh,
                           screens::weigh_foot};

bool is_asked(Screen screen) {
    for (const ScreenRow& row : kAsked)
        if (row.screen == screen) return true;
    return false;
}

bool is_under_batch(Screen screen) {
    for (const ScreenRow& row : kUnderBatch)
        if (row.screen == screen) return true;
    return false;
}

const ScreenRow& row_of(Screen screen) {
    for (const ScreenRow& row : kUnderBatch)
        if (row.screen == screen) return row;
    for (const ScreenRow& row : kAsked)
        if (row.screen == screen) return row;
    for (const ScreenRow& row : kLedTo)
        if (row.screen == screen) return row;
    if (screen == Screen::weigh) return kWeigh;
    return screen == Screen::gallery ? kGallery : kScreens[static_cast<int>(screen)];
}

struct SheetRow {
    Sheet sheet;
    const char* title;
    screens::Draw draw;
};
constexpr SheetRow kSheets[] = {
    {Sheet::new_recipe, "new.title", screens::new_recipe},
    {Sheet::from_text, "new.link", screens::from_text},
    {Sheet::paste_list, "new.list", screens::from_text},
    {Sheet::incoming, "incoming.title", screens::incoming},
    {Sheet::pasted, "pasted_ui.title", screens::pasted},
    {Sheet::pasted_line, "pasted_ui.line", screens::pasted_line},
    {Sheet::recipe, "recipe.menu", screens::recipe},
    {Sheet::rename, "recipe.rename", screens::rename},
    {Sheet::product, "product.title", screens::product},
    {Sheet::meant_for, "meant.title", screens::meant_for},
    {Sheet::share, "share.title", screens::share},
    {Sheet::line, "line.title", screens::line},
    {Sheet::hold, "hold.title", screens::hold},
    {Sheet::ingredient, "ingredient.title", screens::ingredient},
    {Sheet::phase, "phase.title", screens::phase},
    {Sheet::to_hundred, "adjust.to_hundred", screens::to_hundred},
    {Sheet::firmness, "adjust.firmness", screens::firmness},
    {Sheet::give_way, "adjust.give_way", screens::give_way},
    {Sheet::fit_amount, "adjust.fit", screens::fit_amount},
    {Sheet::in_amounts, "amounts.title", screens::in_amounts},
    {Sheet::amount, "batch.how_much", screens::amount},
    {Sheet::container, "container.title", screens::container},
    {Sheet::bin, "bin.title", screens::bin},
    {Sheet::tags, "tags.title", screens::tags},
    {Sheet::restore, "restore.title", screens::restore},
    {Sheet::roles, "stock.role", screens::roles},
    {Sheet::card, "ingredient.title", screens::card},
    {Sheet::own_new, "stock.new", screens::own_new},
    {Sheet::own, "own.title", screens::own},
    {Sheet::own_limit, "own.limit_add", screens::own_limit},
    {Sheet::own_parts, "own.parts_from", screens::own_parts},
    {Sheet::own_bin, "own.bin_title", screens::own_bin},
    {Sheet::made, "made.title", screens::made},
    {Sheet::label_said, "label_ui.said", screens::label_said},
    {Sheet::label_colours, "label_ui.colours", screens::label_colours},
    {Sheet::maker, "maker.title", screens::maker},
    {Sheet::customer_card, "ask.card", screens::customer_card},
    {Sheet::source_list, "sources.title", screens::source_list},
    {Sheet::reading_for, "reading_ui.for", screens::reading_for},
    {Sheet::reading_item, "reading_ui.name", screens::reading_item},
    {Sheet::reading_line, "reading_ui.line", screens::reading_line},
    {Sheet::reading_sum, "reading_ui.statement", screens::reading_sum},
    {Sheet::record_new, "record_ui.new", screens::record_new},
    {Sheet::record_entry, "record_ui.entry", screens::record_entry},
    {Sheet::record_line, "line.title", screens::record_line},
    {Sheet::lot, "lot.title", screens::lot},
    {Sheet::trace, "lot.trace", screens::trace},
    {Sheet::pack, "paid.title", screens::pack},
    {Sheet::rates, "rate.title", screens::rates},
    {Sheet::version, "version_ui.title", screens::version},
    {Sheet::weigh_line, "weigh.this_line", screens::weigh_line},
    {Sheet::weigh_adjust, "weigh.adjust", screens::weigh_adjust},
    {Sheet::weigh_steps, "weigh.steps", screens::weigh_steps},
    {Sheet::weigh_end, "weigh.end", screens::weigh_end},
    {Sheet::paper, "nav.papers", screens::paper},
    {Sheet::label_sheet, "label_sheet_ui.title", screens::label_sheet},
};

constexpr ImGuiWindowFlags kPage = ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove |
                                   ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoNav |
                                   ImGuiWindowFlags_NoBringToFrontOnFocus;

struct Place {  // of the parts of the page, CSS pixels
    float left, top, right, bottom;
    bool wide, two_panes, keyboard;
};

std::string screen_title(App& app, const ScreenRow& row) {
    if (row.screen == Screen::book) return app.say("book.title");
    if (row.screen == Screen::record)
        if (const auto* record = workspace::find_record(app.work, app.ui.records.record))
            return record::state_of(*record).number;
    const workspace::Recipe* recipe = open_recipe(app);
    if (row.screen != Screen::weigh && !of_recipe(row.screen)) return app.say(row.name);
    if (!recipe) return app.say(row.name);
    return recipe->title.empty() ? app.say("recipe.untitled") : recipe->title;
}

std::string sheet_title(App& app, const SheetRow& row) {
    const workspace::Recipe* recipe = open_recipe(app);
    if (row.sheet == Sheet::line && recipe && app.ui.line < recipe->formula.lines.size())
        return workspace::display_name(app.known(), recipe->formula.lines[app.ui.line]);
    if (row.sheet == Sheet::card || row.sheet == Sheet::own) {
        formula::Line line;
        line.ingredient = row.sheet == Sheet::card ? app.ui.card : app.ui.own;
        for (const catalogue::Ingredient& mine : app.mine)
            if (mine.id == line.ingredient && !(row.sheet == Sheet::card && app.ui.card_of_recipe))
                return mine.name.empty() ? mine.id : mine.name;
        return workspace::display_name(app.known(), line);
    }
    if (row.sheet == Sheet::version && workspace::find_version(app.work, app.ui.versions.version))
        return version_name(app, app.ui.versions.version);
    if (row.sheet == Sheet::record_entry)
        return app.say("record." + std::string(record::name(app.ui.records.entry.kind)));
    if (row.sheet == Sheet::record_line)
        if (const auto* record = workspace::find_record(app.work, app.ui.records.record);
            record && app.ui.records.known.line < record->lines.size())
            return record->lines[app.ui.records.known.line].name;
    if (row.sheet == Sheet::phase && recipe && app.ui.phase < recipe->formula.phases.size())
        return app.say("phase.name", {{"id", recipe->formula.phases[app.ui.phase].id}});
    if (row.sheet == Sheet::paper && app.ui.paper) return paper_title(app, *app.ui.paper);
    const workspace::Kept* kept = workspace::find(std::as_const(app.work), app.ui.recipe);
    if (row.sheet == Sheet::recipe && kept && !kept->recipe.title.empty()) return kept->recipe.title;
    return app.say(row.title);
}

// How a title stands in the bar: on one line where it fits, else smaller on as many as the bar has room for;
// the bar grows for one that needs more, as far as a third of the window. Cut is what does not fit even
// there.
struct Title {
    std::string words;
    theme::Type type = theme::Type::small;
    ImVec2 size;
    float wrap = 0, bar = 0;
};

Title fitted(std::string words, float room, float window_height) {
    const float bar = theme::top_bar();
    for (const theme::Type type : {theme::Type::title, theme::Type::strong, theme::Type::small}) {
        const ImVec2 line = widget::measure(words, type), wrapped = widget::measure(words, type, room);
        if (line.x <= room) return {std::move(words), type, line, 0, bar};
        if (type != theme::Type::title && wrapped.y <= bar && wrapped.x <= room)
            return {std::move(words), type, wrapped, room, bar};
    }
    const theme::Type type = theme::Type::small;
    const float most = std::max(bar, std::floor(window_height / 3));
    const auto high = [&](const std::string& some) { return widget::measure(some, type, room).y + 12; };
    std::string shown = words;
    for (std::size_t bytes = words.size(); high(shown) > most && bytes > 0; --bytes)
        shown = std::string(writing::start_within(words, bytes)) + "\xE2\x80\xA6";
    if (shown != words) drawn_items::cut(words);
    const ImVec2 size = widget::measure(shown, type, room);
    return {std::move(shown), type, size, room, std::max(bar, size.y + 12)};
}

// How high it is.
float top_bar(App& app, const ScreenRow& row, const Place& place, float window_height) {
    kit::Kit& kit = app.kit;
    const bool menu = of_recipe(row.screen) && open_recipe(app);
    const float buttons = menu ? 3 * theme::kTarget : 0;
    const bool whole = row.screen == Screen::weigh;  // the way back stands before its title
    const float left = place.left + (whole ? theme::kTarget + 4 : theme::kMargin);
    const float room = place.right - left - buttons - 8;
    const std::string title = screen_title(app, row);
    const Title drawn = fitted(title, room, window_height);
    const float y = place.top + (drawn.bar - theme::kTarget) / 2;
    mirror::Node node;
    node.id = widget::id_of("title");
    node.role = mirror::Role::heading;
    node.level = 1;
    node.name = title;
    widget::fill_place(node, ImRect({left, place.top + 4}, {left + room, place.top + drawn.bar - 4}));
    mirror::add(node);
    widget::draw_wrapped({left, place.top + (drawn.bar - drawn.size.y) / 2}, drawn.words, drawn.type,
                         theme::paint(theme::colours().ink), drawn.wrap);
    if (whole) {
        ImGui::SetCursorScreenPos({place.left + 2, y});
        if (widget::mark_button(kit, "back", widget::Mark::back, app.say("weigh.back"))) {
            app.ui.screen = Screen::batch;
            app.ui.again = true;
        }
    }
    if (menu) {
        ImGui::SetCursorScreenPos({place.right - 4 - 3 * theme::kTarget, y});
        if (widget::mark_button(kit, "undo", widget::Mark::undo, app.say("top.undo"), !app.undo.can_back()))
            step_back(app);
        ImGui::SetCursorScreenPos({place.right - 4 - 2 * theme::kTarget, y});
        if (widget::mark_button(kit, "redo", widget::Mark::redo, app.say("top.redo"), !app.undo.can_forth()))
            step_forth(app);
        ImGui::SetCursorScreenPos({place.right - 4 - theme::kTarget, y});
        if (widget::mark_button(kit, "recipe", widget::Mark::dots, app.say("top.recipe"))) {
            app.ui.recipe = app.work.open;
            show(app, Sheet::recipe);
        }
    }
    const float below = place.top + drawn.bar;
    ImGui::GetWindowDrawList()->AddLine({place.left, below}, {place.right, below},
                                        theme::paint(theme::colours().hairline));
    return drawn.bar;
}

// What can be asked about a recipe, of which one is answered: in place of its lines, or beside them.
void questions(App& app, const ScreenRow& row, bool beside) {
    std::vector<const ScreenRow*> rows{beside ? &kScreens[2] : &kScreens[1]};
    for (const ScreenRow& asked : kAsked)  // Swaps are of one line, and led to from there
        if (asked.screen != Screen::swaps || row.screen == Screen::swaps) rows.push_back(&asked);
    std::vector<std::string> names;
    int shown = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        names.push_back(app.say(!beside && i == 0 ? "nav.lines" : rows[i]->name));
        if (rows[i]->screen == row.screen) shown = static_cast<int>(i);
    }
    const int pressed = widget::choice(app.kit, "question", app.say("nav.questions"), names, shown);
    widget::gap(12);
    if (pressed < 0) return;
    app.ui.screen = rows[static_cast<std::size_t>(pressed)]->screen;
    app.kit.keypad.target = 0;
    app.ui.again = true;
}

void pane(App& app, const ScreenRow& row, bool beside, float left, float right, float top, float bottom) {
    ImGui::SetCursorScreenPos({left, top});
    ImGui::BeginChild(
        ("pane " + std::string(row.name)).c_str(), {right - left, std::max(1.0f, bottom - top)}, 0,
        ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoScrollWithMouse);
    int& opened = *ImGui::GetStateStorage()->GetIntRef(ImGui::GetID("opened"));
    if (app.ui.to_top || (of_recipe(row.screen) && opened != app.ui.opened)) ImGui::SetScrollY(0);
    opened = app.ui.opened;
    ImGuiWindow* window = ImGui::GetCurrentWindow();
    app.kit.width = std::min(right - left - 2 * theme::kMargin, theme::reading_width());
    const float indent = (right - left - app.kit.width) / 2;
    ImGui::SetCursorPos({indent, 12});
    ImGui::BeginGroup();
    const bool alone = row.screen == Screen::formula || is_asked(row.screen);
    if ((beside || (alone && !app.ui.side_by_side)) && open_recipe(app))
        kept_rows::row(app.kit, "questions", [&] { questions(app, row, beside); });
    row.draw(app);
    widget::gap(32);
    ImGui::EndGroup();
    if (window->ScrollMax.y > 0) {  // where in the list one is; not to be pressed
        const float view = window->InnerRect.GetHeight(), whole = view + window->ScrollMax.y;
        const float y = window->InnerRect.Min.y + view * window->Scroll.y / whole;
        window->DrawList->AddRectFilled({window->InnerRect.Max.x - 5, y},
                                        {window->InnerRect.Max.x - 2, y + view * view / whole},
                                        theme::paint(theme::colours().edge, 0.6f), 2);
    }
    ImGui::EndChild();
}

constexpr float kLowest = 480;  // a window lower than this has no room for a foot

// Drawn before the list that it stands below: read first, as it is on a wide window.
void foot(App& app, const ScreenRow& row, Place& place, ImVec2 window, bool covered) {
    app.ui.foot = row.foot && !place.wide && !covered && window.y >= kLowest &&
                  (row.screen != Screen::weigh || screens::weigh_has_foot(app));
    if (!app.ui.foot) return;
    const float height = std::max(theme::kTarget, theme::line_height(theme::Type::strong) + 16);
    place.bottom -= height + 16;
    app.kit.width = place.right - place.left - 2 * theme::kMargin;
    ImGui::GetWindowDrawList()->AddLine({place.left, place.bottom}, {place.right, place.bottom},
                                        theme::paint(theme::colours().hairline));
    ImGui::SetCursorScreenPos({place.left + theme::kMargin, place.bottom + 8});
    row.foot(app);
}

void navigation(App& app, const Place& place, ImVec2 window) {
    mirror::Node nav;
    nav.id = widget::id_of("nav");
    nav.role = mirror::Role::navigation;
    nav.name = app.say("nav.name");
    mirror::open(nav);
    const theme::Colours& c = theme::colours();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    int i = 0;
    if (place.wide) {
        list.AddLine({place.left, 0}, {place.left, window.y}, theme::paint(c.hairline));
        widget::draw_wrapped({20, place.top + 16}, app.say("app.name"), theme::Type::title,
                             theme::paint(c.heading), 0);
    } else {
        list.AddRectFilled({0, place.bottom}, window, theme::paint(c.card));
        list.AddLine({0, place.bottom}, {window.x, place.bottom}, theme::paint(c.hairline));
    }
    // Side by side, formula and batch are one place: two of them that show the same would be a riddle.
    const bool side_by_side = window.x >= theme::two_panes_from();
    for (const ScreenRow& row : kScreens) {
        if (side_by_side && row.screen == Screen::batch) continue;
        const bool both = side_by_side && row.screen == Screen::formula;
        const bool of_batch =
            app.ui.screen == Screen::batch || app.ui.screen == Screen::weigh || is_under_batch(app.ui.screen);
        const bool current = app.ui.screen == row.screen ||
                             (of_batch && (both || row.screen == Screen::batch)) ||
                             (row.screen == Screen::formula && is_asked(app.ui.screen)) ||
                             (row.screen == Screen::more &&
                              (app.ui.screen == Screen::records || app.ui.screen == Screen::record));
        const float n = static_cast<float>(i++);
        const ImVec2 size = place.wide ? ImVec2(theme::rail() - 20, theme::grown(50))
                                       : ImVec2(window.x / std::size(kScreens), theme::bar());
        ImGui::SetCursorScreenPos(place.wide ? ImVec2(10, place.top + theme::top_bar() + 8 + n * (size.y + 6))
                                             : ImVec2(n * size.x, place.bottom));
        if (widget::tab(app.kit, row.name, row.mark, app.say(both ? "nav.both" : row.name), current, size,
                        place.wide)) {
            app.ui.screen = row.screen;
            app.kit.keypad.target = 0;
            app.ui.again = true;
        }
    }
    mirror::close();
}

void message(App& app, const Place& place) {
    widget::live(app.kit, app.ui.message_is_problem ? mirror::Role::alert : mirror::Role::status,
                 app.ui.message_is_problem ? "alert" : "message", app.ui.message);
    if (app.ui.message.empty()) return;
    const theme::Colours& c = theme::colours();
    const float width = std::min(place.right - place.left - 24, theme::grown(520));
    // A long one in large letters must not grow over the title.
    const bool long_one =
        widget::measure(app.ui.message, theme::Type::body, width - 32).y > (place.bottom - place.top) / 2;
    const theme::Type type = long_one ? theme::Type::small : theme::Type::body;
    const ImVec2 words = widget::measure(app.ui.message, type, width - 32);
    const float left = (place.left + place.right - width) / 2, bottom = place.bottom - 12;
    ImDrawList& list = *ImGui::GetForegroundDrawList();
    const ImVec2 low{left, bottom - words.y - 24}, high{left + width, bottom};
    list.AddRectFilled(low, high, theme::paint(app.ui.message_is_problem ? c.stop_ground : c.ink),
                       theme::kRound);
    if (app.ui.message_is_problem) list.AddRect(low, high, theme::paint(c.stop), theme::kRound, 0, 1.5f);
    widget::draw_wrapped({left + 16, low.y + 12}, app.ui.message, type,
                         theme::paint(app.ui.message_is_problem ? c.stop : c.paper), width - 32, {0, &list});
}

void keypad_window(App& app, ImVec2 window, float inset, float middle) {
    const float width = std::min(window.x, 460.0f), height = widget::keypad_height() + inset;
    const ImVec2 at{std::clamp(middle - width / 2, 0.0f, window.x - width), window.y - height};
    ImGui::SetNextWindowPos(at);
    ImGui::SetNextWindowSize({width, height});
    ImGui::Begin("##keypad", nullptr, kPage);
    ImGui::BringWindowToDisplayFront(ImGui::GetCurrentWindow());
    ImGui::GetWindowDrawList()->AddRect(at, {at.x + width, window.y + 2}, theme::paint(theme::colours().edge),
                                        0, 0, 1.5f);
    app.kit.width = width - 12;
    ImGui::SetCursorScreenPos({at.x + 6, at.y + 3});
    widget::keypad(app.kit);
    ImGui::End();
}

}  // namespace

std::string place_name(Screen screen) {
    const Screen place = screen == Screen::gallery  ? Screen::book  // nobody comes back to it
                         : screen == Screen::record ? Screen::records
                                                    : screen;
    const std::string_view key = row_of(place).name;
    return std::string(key.substr(key.find('.') + 1));
}

bool of_recipe(Screen screen) {
    return screen == Screen::formula || screen == Screen::batch || is_asked(screen) || is_under_batch(screen);
}

Screen back_from(Screen screen) {
    if (screen == Screen::record) return Screen::records;
    return is_under_batch(screen) || screen == Screen::weigh ? Screen::batch : Screen::book;
}

Screen place_called(std::string_view name) {
    for (const ScreenRow& row : kAsked)
        if (place_name(row.screen) == name) return row.screen;
    if (place_name(Screen::weigh) == name) return Screen::weigh;
    for (const ScreenRow& row : kUnderBatch)
        if (place_name(row.screen) == name) return row.screen;
    for (const ScreenRow& row : kLedTo)
        if (place_name(row.screen) == name) return row.screen;
    for (const ScreenRow& row : kScreens)
        if (place_name(row.screen) == name) return row.screen;
    return kScreens[0].screen;
}

[[gnu::noinline]] void draw_page(App& app) {  // see app.cpp
    const platform::Window& window = platform::window();
    const ImVec2 size{window.width, window.height};
    const bool keypad = app.kit.keypad.open();
    const float taken = keypad ? widget::keypad_height() + window.inset_bottom : window.keyboard;
    Place place{};
    place.wide = size.x >= theme::wide_from();
    place.left = window.inset_left + (place.wide ? theme::rail() : 0);
    place.right = size.x - window.inset_right;
    place.top = window.inset_top;
    const bool bar_below = !place.wide && app.ui.screen != Screen::weigh;
    place.bottom = taken > 0 ? size.y - taken : size.y - window.inset_bottom - (bar_below ? theme::bar() : 0);
    place.two_panes = size.x >= theme::two_panes_from() && of_recipe(app.ui.screen) && open_recipe(app);
    app.ui.side_by_side = place.two_panes;

    const SheetRow* sheet = nullptr;
    for (const SheetRow& row : kSheets)
        if (row.sheet == app.ui.sheet) sheet = &row;
    app.kit.beneath_sheet = sheet != nullptr;

    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(size);
    ImGui::Begin("##page", nullptr, kPage | (sheet ? ImGuiWindowFlags_NoMouseInputs : 0));
    const ScreenRow& current = row_of(app.ui.screen);
    mirror::Node main;
    main.id = widget::id_of("main");
    main.role = mirror::Role::main;
    mirror::open(main);
    ImGui::SetCursorScreenPos({place.left, place.top});
    kept_rows::row(app.kit, "top",
                   [&] { widget::go_to(place.left, place.top + top_bar(app, current, place, size.y)); });
    const float bar = ImGui::GetCursorScreenPos().y - place.top;
    const Place whole = place;
    foot(app, current, place, size, taken > 0);
    const float top = place.top + bar + 1;
    if (place.two_panes) {
        const float middle = place.left + (place.right - place.left) * 0.52f;
        pane(app, kScreens[1], false, place.left, middle, top, place.bottom);
        ImGui::GetWindowDrawList()->AddLine({middle, top}, {middle, place.bottom},
                                            theme::paint(theme::colours().hairline));
        pane(app, is_asked(current.screen) || is_under_batch(current.screen) ? current : kScreens[2], true,
             middle, place.right, top, place.bottom);
    } else {
        pane(app, current, false, place.left, place.right, top, place.bottom);
    }
    mirror::close();
    if (place.wide || (taken <= 0 && bar_below)) {
        ImGui::SetCursorScreenPos({0, place.wide ? 0 : whole.bottom});
        kept_rows::row(app.kit, "navigation", [&] {
            navigation(app, whole, size);
            widget::go_to(0, size.y);
        });
    }
    message(app, place);
    ImGui::End();
    app.kit.beneath_sheet = false;

    if (sheet) {
        widget::SheetPlace where{size, taken > 0 ? taken : window.inset_bottom, window.inset_top};
        where.whole = sheet->sheet == Sheet::ingredient || sheet->sheet == Sheet::pasted_line ||
                      sheet->sheet == Sheet::card || sheet->sheet == Sheet::own ||
                      sheet->sheet == Sheet::customer_card || sheet->sheet == Sheet::trace ||
                      sheet->sheet == Sheet::paper;
        where.wide = sheet->sheet == Sheet::paper;
        if (widget::begin_sheet(app.kit, sheet->title, sheet_title(app, *sheet), where, app.ui.escape)) {
            sheet->draw(app);
            if (app.kit.keypad.open())
                keypad_window(app, size, window.inset_bottom,
                              size.x / 2);  // within the dialog, or it would be inert
            widget::end_sheet(app.kit);
        } else {
            close_sheet(app);
        }
    }
    if (!sheet && app.kit.keypad.open())
        keypad_window(app, size, window.inset_bottom, (place.left + place.right) / 2);
}

}  // namespace app
