// What comes in from outside: a link, a file or a list, told apart here. Nothing is kept before it was shown.
#include <algorithm>

#include "app.h"
#include "engine/share.h"
#include "typed.h"

namespace app {
namespace {

bool is_space(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

// The part of a message that may be a link: what stands without a space around its '#'.
std::string_view link_within(std::string_view text) {
    const std::size_t hash = text.find('#');
    if (hash == std::string_view::npos) return text;
    std::size_t start = hash, end = hash;
    while (start > 0 && !is_space(text[start - 1]))
        start -= 1;
    while (end < text.size() && !is_space(text[end]))
        end += 1;
    return text.substr(start, end - start);
}

void refuse(App& app, std::string problem) {
    if (app.ui.sheet == Sheet::from_text || app.ui.sheet == Sheet::paste_list)
        app.ui.typed_problem = std::move(problem);
    else
        tell(app, std::move(problem), true);
    app.ui.again = true;
}

std::string sentence(const App& app, const result::Error& error) {
    const std::string words = words::say(app.words, error);
    return error.place.empty() ? words : error.place + ": " + words;
}

void show_recipe(App& app, workspace::Recipe recipe) {
    app.ui.incoming = std::move(recipe);
    show(app, Sheet::incoming);
}

// Not taken for a link, nor a link for it: read as base64url it would begin with a version past any link's.
constexpr std::string_view kOfGallery = "gallery";

}  // namespace

void take_fragment(App& app, std::string_view text) {
    if (text != kOfGallery) return take_in(app, text);
    close_sheet(app);
    app.ui.screen = Screen::gallery;
}

void read_list(App& app) {
    if (!app.ui.list_in) return;
    ListIn& in = *app.ui.list_in;
    in.list = pasted::read(in.text, app.presets.catalogue, in.said);
    app.ui.again = true;
}

// A text of one word is a link or nothing; several words that are no list and hold no link are told as such.
void take_in(App& app, std::string_view text) {
    const std::string words = typed::words(text);
    if (!words.empty() && words.front() == '{') {
        if (store::is_backup(words)) return take_backup(app, words);
        auto recipe = store::read_recipe(words);
        if (!recipe) return refuse(app, sentence(app, recipe.error()));
        return show_recipe(app, std::move(recipe.value()));
    }
    auto recipe = share::read(link_within(words), app.presets.catalogue);
    if (recipe) return show_recipe(app, std::move(recipe.value()));
    if (std::none_of(words.begin(), words.end(), is_space)) return refuse(app, sentence(app, recipe.error()));
    ListIn in{words, {}, pasted::read(words, app.presets.catalogue), 0};
    if (pasted::looks_like_list(in.list)) {
        app.ui.list_in = std::move(in);
        return show(app, Sheet::pasted);
    }
    const bool address = words.find("://") != std::string::npos;
    refuse(app, address ? sentence(app, recipe.error()) : app.say("pasted_ui.nothing"));
}

}  // namespace app
