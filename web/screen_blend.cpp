// The blend of the open recipe, by the questions asked before anything is melted: what is it made of, how
// firm, what are its fats, how heavy. Each figure with how much of the weight it is known for.
#include <algorithm>

#include "app.h"
#include "engine/blend_values.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_chart.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"
#include "widget_tick.h"

namespace screens {
namespace {

using blend::Blend;
using blend::Coverage;
using catalogue::Range;

struct KindRow {  // in the order of blend::Kind
    const char* words;
    unsigned fill;
};
constexpr KindRow kKindRows[] = {
    {"blend_ui.wax", widget::kFull},
    {"blend_ui.hard", widget::kRising | widget::kFalling},
    {"blend_ui.soft", widget::kRising},
    {"blend_ui.liquid", widget::kEmpty},
    {"blend_ui.volatile", widget::kUpright},
    {"blend_ui.water", widget::kLevel},
    {"blend_ui.powder", widget::kUpright | widget::kLevel},
    {"blend_ui.other", widget::kFalling},
    {"blend_ui.unknown", widget::kRising | widget::kFalling | widget::kUpright | widget::kLevel},
};
constexpr const char* kRatings[] = {"blend_ui.rate1", "blend_ui.rate2", "blend_ui.rate3", "blend_ui.rate4",
                                    "blend_ui.rate5"};
constexpr const char* kRoughs[] = {"", "blend_ui.watery", "blend_ui.powdery", "blend_ui.strangers"};

void ask_heading(app::App& app, const char* key) {
    widget::gap(22);
    widget::heading(app.kit, 2, app.say(key));
    widget::gap(6);
}
void small_print(app::App& app, const std::string& words) {
    widget::text(app.kit, words, theme::Type::small, widget::Ink::soft);
}
std::string tenths(const app::App& app, std::int64_t grid) {
    return words::figure(app.words,
                         decimal::scale_nearest(grid, 1, decimal::kOne / 10) * (decimal::kOne / 10));
}
std::string percent(const app::App& app, quantity::Percent share) {
    return app.say("card.percent", {{"range", tenths(app, share.grid)}});
}

void shares_of(app::App& app, const Blend& made) {
    ask_heading(app, "blend_ui.made_of");
    std::vector<widget::Share> parts;
    for (std::size_t i = 0; i < blend::kKinds; ++i)
        if (made.shares[i].grid > 0)
            parts.push_back({app.say(kKindRows[i].words) + " " + percent(app, made.shares[i]),
                             decimal::to_double(made.shares[i].grid) / 100, kKindRows[i].fill});
    widget::shares(app.kit, "shares", app.say("blend_ui.shares"), parts);
    widget::gap(10);
    widget::heading(app.kit, 3, app.say("blend_ui.melting"));
    small_print(app, app.say("blend_ui.melting_about"));
    for (std::size_t i = 0; i < made.melting.size(); ++i) {
        const blend::Melting& one = made.melting[i];
        constexpr std::int64_t kRoom = 20 * decimal::kOne;
        if (one.range_c && one.range_c->max < kRoom) continue;  // liquid
        ImGui::PushID(static_cast<int>(i));                     // two may have one name
        figure_row(app, one.name, percent(app, one.percent),
                   one.range_c ? app.say("blend_ui.melts", {{"range", range_words(app, *one.range_c)}}) +
                                     "; " + app::source_words(app, one.source, one.standing)
                               : app.say("card.unknown"));
        ImGui::PopID();
    }
}

void how_firm(app::App& app, const app::BlendView& view) {
    const blend::Firm& firm = view.made->firm;
    ask_heading(app, "blend_ui.firm");
    if (firm.rough != blend::Rough::fits)
        return widget::text(app.kit, app.say(kRoughs[static_cast<int>(firm.rough)]));
    const blend::Between place = blend::between(firm.firmness, view.ladder);
    widget::text(app.kit, app.say("blend_ui.as_wax", {{"percent", tenths(app, firm.firmness)}}));
    const auto beside = [&](const char* key, const std::optional<std::size_t>& rung) {
        if (rung) widget::text(app.kit, app.say(key, {{"name", view.ladder[*rung].title}}));
    };
    beside("blend_ui.same_as", place.same);
    beside("blend_ui.firmer_than", place.softer);
    beside("blend_ui.softer_than", place.firmer);
    const std::vector<blend::Rated>& rated = app.work.settings.firmness;
    if (const auto rating = blend::expected_rating(firm.firmness, rated))
        widget::text(app.kit,
                     app.say("blend_ui.expected",
                             {{"rating", tenths(app, *rating)},
                              {"word", app.say(kRatings[static_cast<std::size_t>(decimal::scale_nearest(
                                                            *rating, 1, decimal::kOne)) -
                                                        1])}}));
    small_print(app, app.say("blend_ui.firm_about"));
    widget::gap(8);
    int chosen = -1;
    for (const blend::Rated& one : rated)
        if (one.title == app.analysed->title && one.body == firm.body) chosen = one.rating - 1;
    std::vector<std::string> names;
    for (const char* key : kRatings)
        names.push_back(app.say(key));
    small_print(app, app.say("blend_ui.rate"));
    widget::gap(4);
    const int pressed = widget::choice(app.kit, "rate", app.say("blend_ui.rate"), names, chosen);
    if (pressed >= 0) app::rate_firmness(app, pressed == chosen ? 0 : pressed + 1);
}

std::int64_t of_acid(const blend::Profile& profile, const std::string& name) {
    for (const blend::Acid& acid : profile.acids)
        if (acid.name == name) return acid.percent.grid;
    return 0;
}

std::string acid_words(const app::App& app, const std::string& name) {
    std::string key = "acid.";
    for (const char c : name)
        key += c == ':' ? '_' : c;
    const bool numbered = name[0] >= '0' && name[0] <= '9';
    return numbered ? name + " " + app.say(key) : app.say(key);
}

// In the order in which they are laid over it; as many as app::laid_over lists.
constexpr unsigned kFills[] = {widget::kRising,
                               widget::kUpright,
                               widget::kRising | widget::kFalling,
                               widget::kEmpty,
                               widget::kFalling,
                               widget::kUpright | widget::kLevel,
                               widget::kRising | widget::kUpright,
                               widget::kFalling | widget::kUpright};

struct Over {
    std::string name;
    blend::Profile profile;
    unsigned fill;
};

// Boxes to tick, one for each that can be laid over it; gives those that are.
std::vector<Over> chosen_over(app::App& app) {
    std::vector<std::string>& against = app.ui.blend.against;
    std::vector<Over> over;
    const auto others = app::laid_over(app);
    if (others.empty()) return over;
    small_print(app, app.say("blend_ui.over"));
    for (const auto& [id, name] : others) {
        const auto at = std::find(against.begin(), against.end(), id);
        const bool ticked = at != against.end();
        if (const auto profile = ticked ? app::profile_of(app, id) : std::nullopt)
            over.push_back({name, *profile, kFills[over.size() % std::size(kFills)]});
        if (!widget::tick(app.kit, "over " + id, name, ticked)) continue;
        if (ticked)
            against.erase(at);
        else
            against.push_back(id);
        app.ui.again = true;
    }
    widget::gap(8);
    if (over.empty()) return over;
    widget::swatch(app.kit, "this one", widget::kFull, app.analysed->title);
    for (std::size_t i = 0; i < over.size(); ++i)
        widget::swatch(app.kit, "over it " + std::to_string(i), over[i].fill, over[i].name);
    widget::gap(8);
    return over;
}

void acids(app::App& app, const blend::Profile& profile) {
    const std::vector<Over> over = chosen_over(app);
    constexpr std::int64_t kShown = decimal::kOne / 2;  // less than half a percent is not drawn
    std::int64_t most = 1;
    std::vector<std::string> names;
    bool more = true;
    for (std::size_t i = 0; more; ++i) {
        const blend::AcidFacts* acid = blend::acid_at(i);
        more = acid != nullptr;
        const std::string name(acid ? acid->name : "other");
        std::int64_t here = of_acid(profile, name);
        for (const Over& one : over)
            here = std::max(here, of_acid(one.profile, name));
        if (here < kShown) continue;
        names.push_back(name);
        most = std::max(most, here);
    }
    for (const std::string& name : names) {
        widget::Bar bar;
        bar.title = acid_words(app, name);
        const auto add = [&](const blend::Profile& of, unsigned fill) {
            const std::int64_t share = of_acid(of, name);
            bar.figures += (bar.figures.empty() ? "" : " \xC2\xB7 ") + percent(app, {share});
            bar.lengths.push_back({static_cast<double>(share) / static_cast<double>(most), fill});
        };
        add(profile, widget::kFull);
        for (const Over& one : over)
            add(one.profile, one.fill);
        widget::bar(app.kit, name, bar);
    }
    small_print(app, coverage_words(app, profile.of));
}

void value_row(app::App& app, const char* key, const blend::Value& value, const char* about) {
    std::string under = coverage_words(app, value.computed.of);
    if (value.published.range)
        under += "\n" + app.say("blend_ui.published", {{"range", range_words(app, *value.published.range)}}) +
                 " " + coverage_words(app, value.published.of);
    figure_row(app, app.say(key), value.computed.value ? tenths(app, *value.computed.value) : "",
               under + "\n" + app.say(about));
}

void how_heavy(app::App& app, const Blend& made) {
    ask_heading(app, "blend_ui.heavy");
    for (const blend::Dense& one : made.densities) {
        const auto& value = one.density.value;
        figure_row(app, app.say("blend_ui.at", {{"c", words::figure(app.words, one.temp_c_grid)}}),
                   value ? app.say("blend_ui.dense", {{"n", words::figure_fixed(app.words, *value, 3)}}) : "",
                   coverage_words(app, one.density.of));
    }
    if (const auto& setting = made.setting)
        figure_row(
            app, app.say("blend_ui.sinks"),
            setting->at_most
                ? app.say("card.percent",
                          {{"range", range_words(app, {setting->at_least.grid, setting->at_most->grid})}})
                : app.say("pack.min", {{"percent", tenths(app, setting->at_least.grid)}}),
            coverage_words(app, setting->of) + "\n" + app.say("blend_ui.sinks_about"));
    widget::gap(8);
    widget::NumberSpec temp;
    temp.name = app.say("blend_ui.other_temp");
    temp.unit =
        "\xC2\xB0"
        "C";
    temp.read = typed::celsius;
    temp.may_be_empty = true;
    if (const auto change = widget::number_field(app.kit, "temp", app.ui.blend.temp, temp); change.changed)
        app.ui.blend.temp = change.value;
}

void emulsion(app::App& app, const blend::Emulsion& made) {
    ask_heading(app, "blend_ui.emulsion");
    const auto row = [&](const char* key, const blend::Figure& figure) {
        figure_row(app, app.say(key), figure.value ? tenths(app, *figure.value) : "",
                   coverage_words(app, figure.of));
    };
    row("blend_ui.required", made.required);
    row("blend_ui.held", made.emulsifiers.hlb);
    if (made.emulsifiers.higher)
        widget::text(app.kit,
                     app.say("blend_ui.meets", {{"high", made.emulsifiers.higher_name},
                                                {"low", made.emulsifiers.lower_name},
                                                {"percent", tenths(app, made.emulsifiers.higher->grid)}}));
    small_print(app, app.say("blend_ui.hlb_about"));
}

}  // namespace

std::string coverage_words(const app::App& app, const Coverage& of) {
    if (of.known.grid == 0) return app.say("blend_ui.known_none");
    const std::string how = app::source_words(app, "", of.standing);
    if (of.missing.empty()) return app.say("blend_ui.known_all", {{"how", how}});
    std::string names;
    for (const std::string& name : of.missing)
        names += (names.empty() ? "" : ", ") + name;
    return app.say("blend_ui.known_part", {{"known", tenths(app, of.known.grid)},
                                           {"asked", tenths(app, of.asked.grid)},
                                           {"names", names},
                                           {"how", how}});
}

std::string range_words(const app::App& app, const Range& range) {
    if (range.min == range.max) return tenths(app, range.min);
    return app.say("blend_ui.range", {{"low", tenths(app, range.min)}, {"high", tenths(app, range.max)}});
}

void figure_row(app::App& app, const std::string& title, const std::string& right, const std::string& under) {
    widget::RowSpec row;
    row.title = title;
    row.right = right;
    row.under = under;
    row.plain = true;
    widget::row(app.kit, title, row);
    widget::hairline(app.kit);
}

void blend(app::App& app) {
    if (!app::open_recipe(app) || !app.analysed) return nothing_open(app);
    const app::BlendView& view = app::blend_view(app);
    if (!view.made) {
        widget::text(app.kit, words::say(app.words, view.made.error()));
        return small_print(app, app.say("blend_ui.first_hundred"));
    }
    const Blend& made = view.made->blend;
    shares_of(app, made);
    how_firm(app, view);
    keeps(app);
    ask_heading(app, "blend_ui.fats");
    acids(app, made.profile);
    widget::gap(8);
    value_row(app, "blend_ui.iodine", made.iodine, "blend_ui.iodine_about");
    value_row(app, "blend_ui.saponification", made.saponification, "blend_ui.no_lye");
    how_heavy(app, made);
    if (made.emulsion) emulsion(app, *made.emulsion);
}

}  // namespace screens
