// The program's frame: arrivals, logic, drawing, saving; and what screens may do. Drawing of the page around
// the screens is in app_draw.cpp, fingers in touch.cpp, the store in keeping.cpp.
#include "app.h"

#include <algorithm>
#include <cfloat>
#include <cstdint>
#include <utility>

#include "app_draw.h"
#include "drawn_items.h"
#include "engine/share.h"
#include "engine/utf8.h"
#include "engine/words_test_language.h"
#include "engine/workspace_made.h"
#include "engine/workspace_records.h"
#include "engine/workspace_weigh_out.h"
#include "engine/writing.h"
#include "imgui.h"
#include "imgui_internal.h"
#include "kept_rows.h"
#include "letters.h"
#include "mirror.h"
#include "picture.h"
#include "platform.h"
#include "presets_data.h"
#include "text_lines.h"
#include "theme.h"
#include "touch.h"
#include "typed.h"
#include "widget_keypad.h"

namespace app {
namespace {

constexpr double kMessageMs = 6000;
const std::vector<catalogue::Ingredient> kNoOwn;
constexpr int kMostFramesAStep =
    16;  // a queued tap takes four; edits and sheets a few more; one more shows that nothing changes

// (What is called in one place only becomes part of it when the page is linked. Browsers compile a function
// when it is first called, all of it: what a start does not need is kept apart by hand where it is long.)
void load_presets(App& app) {
    if (auto presets = store::unpack_presets(presets_data::kPacked)) app.presets = std::move(presets.value());
}

// That of the browser where it is shipped, else English.
[[gnu::noinline]] void choose_words(App& app) {
    const std::string& wanted = platform::window().language;
    if (app.words_for == wanted) return;
    app.words_for = wanted;
    app.analysed.reset();  // what was said of it was in other words
    for (const words::Table& table : app.presets.words)
        if (table.language == "en" || wanted == table.language ||
            wanted.substr(0, wanted.find('-')) == table.language)
            app.words = table;
    if (wanted == words::kTestLanguage) app.words = words::test_language(app.words);
    platform::set_page_language(app.words.language, app.say("app.name"));
}

void follow_preferences(App& app) {
    const platform::Window& window = platform::window();
    const workspace::Settings& settings = app.work.settings;
    const bool dark = settings.theme == workspace::Theme::system ? window.prefers_dark
                                                                 : settings.theme == workspace::Theme::dark;
    theme::Wishes wishes{dark, window.more_contrast, window.pixel_ratio, window.text_scale, std::nullopt};
    if (window.forced_colours) wishes.system = window.system;
    if (theme::apply(wishes)) {
        platform::fonts_changed();
        text_lines::start_over();
        platform::set_page_letters(theme::letter_size(theme::Type::body),
                                   theme::letter_size(theme::Type::figure));
        app.undrawn = true;
    }
    const theme::Colours& c = theme::colours();
    platform::set_page_colours(theme::is_dark(), c.paper, c.on_field, c.field, c.accent);
    const bool comma = settings.sign == workspace::DecimalSign::system
                           ? window.decimal_comma
                           : settings.sign == workspace::DecimalSign::comma;
    app.words.sign = comma ? decimal::Sign::comma : decimal::Sign::point;
}

void key(App& app, const platform::Event& event) {
    const std::string& pressed = event.text;
    if (!event.control && widget::keypad_key(app.kit, pressed, event.shift)) return;
    const bool z = pressed == "z" || pressed == "Z", y = pressed == "y" || pressed == "Y";
    const bool in_sight = of_recipe(app.ui.screen);
    if (!event.control || !in_sight) return;
    if (z && !event.shift) step_back(app);
    if ((z && event.shift) || y) step_forth(app);
}

void escape(App& app, const platform::Event& event) {
    if (event.node != 0 && mirror::focused(event.node) && mirror::is_field(event.node))
        return platform::blur_node();
    if (app.kit.keypad.open())
        app.kit.keypad.target = 0;
    else if (app.ui.sheet != Sheet::none)
        app.ui.escape = true;
    else
        app.ui.screen = back_from(app.ui.screen);
}

[[gnu::noinline]] void receive(App& app, const platform::Event& event) {
    using platform::Kind;
    switch (event.kind) {
        case Kind::pointer_down:
        case Kind::pointer_move:
        case Kind::pointer_up:
        case Kind::pointer_cancel:
        case Kind::wheel:
            touch::receive(event, app.kit);
            break;
        case Kind::key_down:
            key(app, event);
            break;
        case Kind::node_click:
        case Kind::node_focus:
        case Kind::node_blur:
        case Kind::node_input:
        case Kind::node_enter:
        case Kind::node_menu:
            if (event.kind == Kind::node_focus && mirror::is_field(event.node)) app.kit.keypad.target = 0;
            mirror::receive(event);
            break;
        case Kind::node_escape:
            escape(app, event);
            break;
        case Kind::hidden:  // what comes back into sight may have lost its picture meanwhile
            app.undrawn = true;
            app.keeping.receive(event);
            break;
        case Kind::preferences:  // larger letters move what is being edited
        case Kind::resized:
            app.undrawn = true;
            if (mirror::focus() != 0) app.kit.wish_view = mirror::focus();
            break;
        case Kind::fragment:
            take_fragment(app, event.text);
            platform::clear_fragment();
            break;
        case Kind::pasted:
        case Kind::file_opened:
            take_in(app, event.text);
            break;
        case Kind::file_refused:
            tell(app, app.say("file.refused", {{"name", event.key}}), true);
            break;
        case Kind::copied:
            tell(app, app.say("share.copied"));
            break;
        case Kind::copy_failed:
            tell(app, app.say("share.copy_failed"), true);
            break;
        case Kind::context_restored:
            letters::forget_taken();
            [[fallthrough]];
        case Kind::context_lost:
        case Kind::letters_changed:
            text_lines::start_over();
            app.undrawn = true;
            break;
        case Kind::page_update:
            app.ui.update_ready = true;
            tell(app, app.say("page.update_told"));
            break;
        case Kind::awake:
            app.ui.awake = event.text == "yes";
            break;
        case Kind::storage_stands:
            app.ui.storage_lasts = event.text == "yes";
            break;
        default:
            app.keeping.receive(event);
            break;
    }
}

// Another window changed the same recipe. Its version has the recipe's place; ours, or the later one, stands
// beside it. Who has the recipe open here goes on with what is seen.
void keep_beside(App& app, keeping::Loser loser) {
    const std::string id = new_id(), before = loser.kept.id;
    loser.kept.id = id;
    loser.kept.saves = 0;
    loser.kept.changed.clear();
    loser.kept.recipe.title = title_within(app, "recipe.other_window", loser.kept.recipe.title);
    tell(app, app.say("store.other_window", {{"title", loser.kept.recipe.title}}));
    app.work.recipes.insert(app.work.recipes.begin(), std::move(loser.kept));
    if (!loser.ours || app.work.open != before) return;
    app.work.open = id;
    if (app.undo_of == before) app.undo_of = id;  // its steps go with it
}

// What other windows of the page have written meanwhile.
[[gnu::noinline]] void take_foreign(App& app) {
    for (keeping::Loser& loser : app.keeping.take_losers())
        keep_beside(app, std::move(loser));
    for (workspace::Kept& theirs : app.keeping.take_foreign()) {
        app.ui.again = true;
        app.keeping.adopt(theirs);
        if (theirs.id == app.work.open) app.kit.drafts.clear();
        if (workspace::Kept* ours = workspace::find(app.work, theirs.id))
            *ours = std::move(theirs);
        else
            app.work.recipes.push_back(std::move(theirs));
        if (const workspace::Kept* opened = workspace::find(app.work, app.work.open);
            opened && !opened->binned.empty())
            app.work.open.clear();  // put in the bin over there
    }
    for (workspace::KeptWeighOut& theirs : app.keeping.take_foreign_weighing()) {
        app.ui.again = true;
        app.keeping.adopt(theirs);
        workspace::put_weigh_out(app.work, std::move(theirs));
    }
    for (const workspace::KeptOwn& lost : app.keeping.take_own_losers())  // stands beside theirs
        workspace::add_own(app.work, app.presets.catalogue, lost.ingredient, platform::now_utc());
    for (workspace::KeptOwn& theirs : app.keeping.take_foreign_own()) {
        app.ui.again = true;
        app.keeping.adopt(theirs);
        workspace::put_own(app.work, std::move(theirs));
        app.analysed.reset();
    }
    for (workspace::Filed& theirs : app.keeping.take_foreign_filed()) {
        app.ui.again = true;
        app.keeping.adopt(theirs);
        workspace::take_filed(app.work, std::move(theirs));
    }
}

[[gnu::noinline]] void logic(App& app) {
    if (!app.kept_loaded && app.keeping.loaded()) {
        app.kept_loaded = true;
        app.work = app.keeping.take_loaded();
        app.shelf.reset();
        const Screen place = place_called(app.work.place);
        const bool asked_for = app.ui.screen == Screen::gallery;  // by the address, a moment ago
        if (!asked_for && (!of_recipe(place) || !app.work.open.empty())) app.ui.screen = place;
        if (!app.work.open.empty()) open(app, app.work.open, app.ui.screen);
    }
    take_foreign(app);
    follow_preferences(app);
    if (app.ui.screen == Screen::reading) recall_reading(app);
    const bool shows_mine = app.ui.screen == Screen::stock || app.ui.sheet == Sheet::ingredient ||
                            app.ui.sheet == Sheet::card || app.ui.sheet == Sheet::own;
    if (shows_mine) refresh_mine(app);
    const workspace::Recipe* recipe = open_recipe(app);
    // Copied only when it must be: it is the largest thing there is.
    if (const auto& own = recipe ? recipe->own : kNoOwn; app.laid_own != own) {
        app.laid_own = own;
        app.laid = own.empty() ? catalogue::Catalogue() : catalogue::with_own(app.presets.catalogue, own);
    }
    if (!recipe) {
        app.analysis.reset();
        app.analysed.reset();
    } else if (const scales::Bench bench = workspace::bench_of(app.work.settings);
               !app.analysed || *app.analysed != *recipe || app.analysed_on != bench) {
        app.analysed = *recipe;
        app.analysed_on = bench;
        app.report.reset();
        app.labelled.reset();
        app.card.reset();
        app.compared.reset();
        app.workshop.reset();
        app.blend_view.reset();
        app.cost.reset();
        app.per_head.reset();
        app.ceilings.clear();
        app.mine = workspace::mine(app.work, app.presets.catalogue);
        app.analysis = analysis::of(*recipe, app.presets.catalogue, bench, app.mine);
        app.undo.feed(*recipe, platform::now_ms());
        app.ui.again = true;
    }
    if (!app.work.weighing.empty()) follow_timers(app);
    if (!app.ui.message.empty()) {
        const double left = app.ui.message_until_ms - platform::now_ms();
        if (left <= 0)
            app.ui.message.clear();
        else
            platform::request_wake(left + 1);
    }
}

// What moves a list at the most: no row of it changes by that.
bool only_moves(const platform::Event& event) {
    using platform::Kind;
    return event.kind == Kind::pointer_down || event.kind == Kind::pointer_move || event.kind == Kind::wheel;
}

// Something is still to be answered, by this step or since the one before.
bool waits(const App& app) {
    return app.ui.again || app.kit.wish_view != 0 || app.kit.step_from != 0 || app.kit.keypad.arriving ||
           app.kit.long_press_at.x >= 0 || !mirror::answered();
}

[[gnu::noinline]] void frame(App& app, bool happened) {
    const platform::Window& window = platform::window();
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = {window.width, window.height};
    io.DisplayFramebufferScale = {window.pixel_ratio, window.pixel_ratio};
    io.DeltaTime = 1.0f / 60.0f;  // nothing of ours depends on it
    app.ui.again = false;
    logic(app);
    ImGui::NewFrame();
    mirror::begin_frame();
    kept_rows::begin_frame(happened || app.ui.again);
    drawn_items::begin_frame();
    app.kit.words = &app.words;
    app.kit.order.clear();
    const std::uint32_t keypad_of = app.kit.keypad.target;
    const bool to_top = app.ui.to_top;  // wished for while drawing, it is for the next frame
    draw_page(app);
    widget::keypad_go_on(app.kit);
    if (app.kit.keypad.target != keypad_of) app.ui.again = true;  // opened or closed while being drawn
    std::erase_if(app.kit.drafts, [&](const auto& draft) {        // a draft goes with its field
        return std::find(app.kit.order.begin(), app.kit.order.end(), draft.first) == app.kit.order.end();
    });
    app.kit.long_press_at = {-1, -1};
    app.ui.escape = false;
    if (to_top) app.ui.to_top = false;
    ImGui::Render();
}

// What is to be scrolled into view has been asked for and comes with the next frame.
bool scrolling() {
    const ImVector<ImGuiWindow*>& windows = GImGui->Windows;
    return std::any_of(windows.begin(), windows.end(), [](const ImGuiWindow* window) {
        return window->Active && window->ScrollTarget.y < FLT_MAX;
    });
}

bool settled(const App& app) {
    const bool arriving = app.kit.keypad.open() && app.kit.keypad.arriving;
    return !app.ui.again && !arriving && !scrolling() && app.kit.wish_view == 0 &&
           GImGui->InputEventsQueue.empty();
}

// Then the page may be left for a newer one.
void save(App& app) {
    if (app.kept_loaded) app.work.place = place_name(app.ui.screen);
    app.keeping.save_changes(app.work, platform::now_utc());
    if (app.ui.take_update > 0 && --app.ui.take_update == 0) load_update(app);
}

}  // namespace

App& state() {
    static App app;
    return app;
}

void start() {
    App& app = state();
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.ConfigWindowsMoveFromTitleBarOnly = true;
    GImGui->TestEngineHookItems = true;
    load_presets(app);
    app.kit.words = &app.words;
    app.keeping.start();
}

void step(bool draw) {
    App& app = state();
    if (platform::window().width <= 0) return;
    choose_words(app);  // before anything is told in them
    bool happened = app.unsettled, leaving = false;
    for (const platform::Event& event : platform::take_events()) {
        happened = happened || !only_moves(event);
        leaving = leaving || event.kind == platform::Kind::hidden;
        receive(app, event);
    }
    touch::time_passes(platform::now_ms(), app.kit);
    const bool thought = think(app);
    happened = happened || waits(app) || thought;
    if (theme::font(theme::Type::body) == nullptr) follow_preferences(app);
    // Until two frames on end are the same: then all has come to rest, and what is drawn is drawn once.
    // What is only moved stands where it belongs with the first.
    const int grown = letters::grown();
    int frames = 0;
    for (bool same = false; frames < kMostFramesAStep && !(same && settled(app)); ++frames) {
        frame(app, happened);
        const bool changed = picture::follow(app.picture, *ImGui::GetDrawData());
        same = frames > 0 ? !changed : !happened && letters::grown() == grown;
        app.undrawn = app.undrawn || changed;
    }
    app.kit.wish_view = 0;
    mirror::end_frame(!touch::moving());
    lay_paper(app);
    if (std::exchange(app.kit.wish_blur, false)) platform::blur_node();
    if (app.kit.wish_focus != 0) {
        platform::focus_node(app.kit.wish_focus, app.kit.wish_all);
        app.kit.wish_focus = 0;
        app.kit.wish_all = false;
    }
    platform::push_back_guard(app.ui.sheet != Sheet::none || app.kit.keypad.open() ||
                              app.ui.screen != Screen::book);
    platform::keep_awake(app.ui.screen == Screen::weigh && weighing(app));
    // What changed is seen first, and saved in the drawn step that follows; where the page is left, none may.
    if (draw || leaving || !app.undrawn) save(app);
    for (const letters::Part& part : letters::take_drawn())
        platform::letters_drawn(part.x, part.y, part.width, part.height);
    if (draw && std::exchange(app.undrawn, false)) platform::draw(ImGui::GetDrawData());
    app.unsettled = frames >= kMostFramesAStep;
    if (app.unsettled || app.undrawn || to_think(app)) platform::request_frame();
}

workspace::Recipe* open_recipe(App& app) {
    workspace::Kept* kept = workspace::find(app.work, app.work.open);
    return kept ? &kept->recipe : nullptr;
}

void open(App& app, std::string_view id, Screen screen) {
    app.work.open =
        std::string(id);  // from here on that is the id: the one given may be a view of what was there
    app.ui.screen = screen;
    app.ui.opened += app.undo_of != app.work.open;
    app.ui.again = true;
    app.analysed.reset();
    app.kit.drafts.clear();
    app.kit.keypad.target = 0;
    if (const workspace::Recipe* recipe = open_recipe(app); recipe && app.undo_of != app.work.open) {
        app.undo.start(*recipe);
        app.undo_of = app.work.open;
    }
}

void keep(App& app, workspace::Recipe recipe) {
    const std::string id = new_id();
    workspace::add(app.work, id, std::move(recipe), platform::now_utc());
    open(app, id);
    ask_to_keep(app);
}

void bin(App& app, const std::string& id) {
    workspace::bin(app.work, id, platform::now_utc());
    if (app.work.open == id) app.work.open.clear();
    app.ui.screen = Screen::book;
    tell(app, app.say("recipe.binned"));
}

std::string new_id() {
    std::string text;
    const std::uint64_t chance = platform::chance();
    for (int shift = 60; shift >= 0; shift -= 4)
        text += "0123456789abcdef"[chance >> shift & 15];
    return text;
}

std::string title_within(const App& app, std::string_view key, std::string_view title) {
    const auto made = [&](std::string_view from) {
        return writing::without_marks(app.say(key, {{"title", std::string(from)}}));
    };
    return made(utf8::start_within(title, workspace::kMostTitleBytes - made("").size()));
}

workspace::Recipe blank_recipe(const App& app) {
    workspace::Recipe recipe;
    recipe.title = app.say("recipe.new_title");
    recipe.formula.phases.push_back({});
    recipe.batch.division =
        app.work.settings.scales.empty() ? quantity::Mass{100} : app.work.settings.scales.front().division;
    return recipe;
}

void edit(App& app, const result::Result<formula::Formula>& changed) {
    workspace::Recipe* recipe = open_recipe(app);
    if (!recipe) return;
    if (changed)
        recipe->formula = *changed;
    else
        tell(app, words::say(app.words, changed.error()), true);
    app.ui.again = true;
}

void edit(App& app, const result::Result<workspace::Recipe>& changed) {
    edit(app, app.work.open, changed);
}

void edit(App& app, const std::string& id, const result::Result<workspace::Recipe>& changed) {
    workspace::Kept* kept = workspace::find(app.work, id);
    if (!kept) return;
    if (changed)
        kept->recipe = *changed;
    else
        tell(app, words::say(app.words, changed.error()), true);
    app.ui.again = true;
}

void step_back(App& app) {
    if (workspace::Recipe* recipe = open_recipe(app); recipe && app.undo.can_back())
        *recipe = app.undo.back();
    app.kit.drafts.clear();
    app.ui.again = true;
}

void step_forth(App& app) {
    if (workspace::Recipe* recipe = open_recipe(app); recipe && app.undo.can_forth())
        *recipe = app.undo.forth();
    app.kit.drafts.clear();
    app.ui.again = true;
}

void show(App& app, Sheet sheet) {
    if (sheet == Sheet::share) app.ui.share_extent = share::Extent::all;
    if (!app.ui.message_is_problem) app.ui.message.clear();  // what it told of lies beneath; it would cover
    app.ui.sheet = sheet;
    app.kit.keypad.target = 0;
    app.ui.again = true;
}

void close_sheet(App& app) {
    app.ui.sheet = Sheet::none;
    app.kit.sheet.clear();
    app.kit.keypad.target = 0;
    app.ui.again = true;
}

void tell(App& app, std::string message, bool problem) {
    app.ui.message = std::move(message);
    app.ui.message_is_problem = problem;
    app.ui.message_until_ms = platform::now_ms() + kMessageMs;
    app.ui.again = true;
}

// A figure that cannot be read must not be kept as the one that stood there before it.
bool all_read(App& app) {
    for (const auto& [id, draft] : app.kit.drafts)
        if (!draft.problem.empty()) {
            tell(app, draft.problem, true);
            return false;
        }
    return true;
}

bool from_disk() {
    return platform::window().from_disk;
}
bool address_is_hosted(const App& app) {
    return !from_disk() || !app.work.settings.hosted_address.empty();
}

std::string link_address(const App& app, const std::string& link) {
    if (!from_disk()) return platform::window().address + link;
    const std::string& hosted = app.work.settings.hosted_address;
    return typed::words(hosted.substr(0, hosted.find('#'))) + link;
}

void copy_text(App& app, const std::string& text) {
    (void)app;
    platform::copy_text(text);
}
bool can_share() {
    return platform::can_share();
}
void share(const std::string& title, const std::string& address) {
    platform::share(title, address);
}

void save_damaged(App& app) {
    std::string text;
    for (const keeping::Damaged& one : app.keeping.damaged())
        text += one.key + "\n" + one.text + "\n\n";
    platform::save_file("tarebench-damaged.txt", "text/plain", text);
    app.ui.damaged_saved = true;
}

void save_page() {
    platform::save_page();
}
void open_file() {
    platform::open_file();
}

}  // namespace app
