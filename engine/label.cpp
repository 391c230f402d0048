// A table of what each market asks for, and the sentences that fill it.
#include "label.h"

#include <array>

namespace label {
namespace {

using declaration::Doubt;
using durability::Mark;
using market::Market;
using source::Standing;

// What a market asks for. Europe: Regulation (EC) 1223/2009, and its copy in Great Britain.
enum class Group { europe, us, ca };
Group group_of(Market market) {
    return market == Market::us ? Group::us : market == Market::ca ? Group::ca : Group::europe;
}

struct Rule {
    Group group;
    Field field;
    std::string_view rule, source;
    Standing standing;
    Aside aside = Aside::none;
};
constexpr std::array<Rule, 20> kRules{{
    {Group::europe, Field::identity, "Art. 19(1)(f)", "eu_1223_19", Standing::document},
    {Group::europe, Field::net, "Art. 19(1)(b)", "eu_1223_19", Standing::document},
    {Group::europe, Field::list, "Art. 19(1)(g), 19(2)", "eu_1223_19", Standing::document, Aside::leaflet},
    {Group::europe, Field::warnings, "Art. 19(1)(d), 19(2)", "eu_1223_19", Standing::document,
     Aside::leaflet},
    {Group::europe, Field::durability, "Art. 19(1)(c)", "eu_1223_19", Standing::document},
    {Group::europe, Field::batch, "Art. 19(1)(e)", "eu_1223_19", Standing::document, Aside::packaging},
    {Group::europe, Field::responsible, "Art. 19(1)(a)", "eu_1223_19", Standing::document},
    {Group::europe, Field::origin, "Art. 19(1)(a)", "eu_1223_19", Standing::document},
    {Group::us, Field::identity, "21 CFR 701.11", "cfr_701_3", Standing::document},
    {Group::us, Field::net, "21 CFR 701.13", "cfr_701_13", Standing::document},
    {Group::us, Field::list, "21 CFR 701.3", "cfr_701_3", Standing::document, Aside::tag},
    {Group::us, Field::warnings, "21 CFR 740.1", "cfr_740", Standing::document},
    {Group::us, Field::responsible, "21 CFR 701.12", "cfr_701_3", Standing::document},
    {Group::us, Field::contact, "FD&C Act s. 609(a)", "memory", Standing::memory},
    {Group::ca, Field::identity, "C.R.C., c. 869, s. 20(b)", "crc_869", Standing::document},
    {Group::ca, Field::net, "C.R.C., c. 417, s. 12 to 21", "crc_417", Standing::document},
    {Group::ca, Field::list, "C.R.C., c. 869, s. 21.2 to 21.5", "crc_869", Standing::document,
     Aside::tag_or_page},
    {Group::ca, Field::warnings, "C.R.C., c. 869, s. 24", "crc_869", Standing::document},
    {Group::ca, Field::responsible, "Consumer Packaging and Labelling Act", "memory", Standing::memory},
    {Group::ca, Field::contact, "C.R.C., c. 869, s. 20(a)", "crc_869", Standing::document},
}};

const Rule* rule_of(Group group, Field field) {
    for (const Rule& rule : kRules)
        if (rule.group == group && rule.field == field) return &rule;
    return nullptr;
}

std::string joined(const std::vector<std::string>& sentences) {
    std::string text;
    for (const std::string& one : sentences)
        text += (text.empty() ? "" : " ") + one;
    return text;
}

std::string_view doubt_key(Doubt doubt) {
    switch (doubt) {
        case Doubt::name_missing:
            return "label.doubt_name";
        case Doubt::shares_unknown:
            return "label.doubt_shares";
        case Doubt::plant_strained:
            return "label.doubt_plant";
        case Doubt::parts_incomplete:
            return "label.doubt_parts";
        case Doubt::close_to_line:
            return "label.doubt_one_percent";
        case Doubt::group_beside_oil:
            return "label.doubt_group";
    }
    return "";
}

struct Setter {
    const Content& content;
    const words::Table& table;
    const Market market;
    const Group group = group_of(market);
    Label made = {};

    bool bilingual() const { return group == Group::ca; }

    Entry& add(Field field, std::string text, bool asked = true) {
        Entry entry;
        entry.field = field;
        entry.text = std::move(text);
        const Rule* rule = rule_of(group, field);
        if (rule != nullptr) {
            entry.rule = rule->rule;
            entry.source = rule->source;
            entry.standing = rule->standing;
            entry.aside = rule->aside;
        }
        entry.state = !entry.text.empty()        ? State::given
                      : rule != nullptr && asked ? State::missing
                                                 : State::not_asked;
        made.entries.push_back(std::move(entry));
        return made.entries.back();
    }
    void remark(std::string_view key, const words::Arguments& arguments = {}) {
        std::string text = words::say(table, key, arguments);
        for (const std::string& one : made.remarks)
            if (one == text) return;
        made.remarks.push_back(std::move(text));
    }

    void identity() {
        std::string text = content.identity;
        if (bilingual()) text += content.identity_french.empty() ? "" : " / " + content.identity_french;
        Entry& entry = add(Field::identity, text);
        if (bilingual() && !text.empty() && content.identity_french.empty()) {
            entry.state = State::doubtful;
            remark("label.french_missing");
        }
    }

    void net() {
        if (!content.net) {
            add(Field::net, "");
            return;
        }
        made.net = net_contents::statement(market, content.form, content.net->mass, content.net->volume,
                                           content.digits);
        Entry& entry = add(Field::net, made.net->text);
        if (!made.net->required) remark("label.net_not_asked");
        if (content.net->usual) entry.state = State::doubtful, remark("label.net_usual");
        if (made.net->doubt == net_contents::Doubt::volume_unknown)
            entry.state = State::doubtful, remark("label.net_volume");
        if (made.net->doubt == net_contents::Doubt::zero) entry.state = State::missing;
    }

    void list() {
        const std::string names =
            declaration::text(content.list, market == Market::us ? words::say(table, "label.may_contain")
                                            : bilingual()        ? words::say(table, "label.may_contain_ca")
                                                                 : "+/-");
        Entry& entry = add(
            Field::list,
            words::say(table, bilingual() ? "label.ingredients_ca" : "label.ingredients", {{"list", names}}));
        if (!declaration::complete(content.list)) entry.state = State::doubtful;
        for (const declaration::Remark& one : content.list.remarks) {
            const declaration::Item& item = content.list.items[one.item];
            const std::string name = item.name.empty() ? item.from.front() : item.name;
            if (one.doubt == Doubt::shares_unknown || one.doubt == Doubt::parts_incomplete)
                entry.state = State::doubtful;
            remark(doubt_key(one.doubt), {{"name", name}});
        }
        if (!content.allergens_known && market != Market::us) {
            entry.state = State::doubtful;
            remark("label.allergens_unknown");
        }
        if (!content.allergens_reason.empty()) made.remarks.push_back(content.allergens_reason);
        for (const std::string& name : content.allergens_unknown) {
            entry.state = State::doubtful;
            remark("label.allergens_gap", {{"name", name}});
        }
    }

    void keeping() {
        made.durability = durability::of(market, content.keeping, content.made_on);
        const durability::Durability& found = made.durability;
        std::string text;
        if (found.mark == Mark::best_before && !found.date.empty())
            text = words::say(table, "label.best_before", {{"date", found.date}});
        if (found.mark == Mark::after_opening)
            text = words::say(table, "label.after_opening", {{"months", std::to_string(found.months)}});
        const bool asked = found.mark != Mark::none_needed && found.mark != Mark::none_asked;
        add(Field::durability, text, asked);
        if (found.mark == Mark::unknown) remark("label.keeping_unknown");
        if (found.mark == Mark::opened_unknown) remark("label.opened_unknown");
    }

    std::string warning_words(const char* plain, const char* both,
                              const std::vector<std::string>& sentences) {
        if (sentences.empty()) return "";
        return words::say(table, bilingual() ? both : plain, {{"text", joined(sentences)}});
    }

    void who() {
        const Maker& maker = content.maker;
        std::string text = maker.name;
        if (!maker.address.empty()) text += (text.empty() ? "" : ", ") + maker.address;
        Entry& entry = add(Field::responsible, text);
        if (maker.name.empty() || maker.address.empty()) entry.state = State::missing;
        if (!maker.country.empty()) {
            add(Field::origin, words::say(table, "label.made_in", {{"country", maker.country}}));
        }
        add(Field::contact, maker.contact);
    }

    void letters() {
        if (!content.panel) return;
        const std::optional<std::int64_t> area = type_height::area(*content.panel);
        if (!area) return;
        const std::int64_t amount =
            content.net ? made.net && made.net->volume ? content.net->volume->grid : content.net->mass.grid
                        : 0;
        made.heights =
            type_height::heights(market, *area, content.labelling_area, content.panel->moulded, amount);
        for (Entry& entry : made.entries) {
            if (entry.field == Field::net && content.net) entry.height = made.heights->net;
            if (entry.field == Field::list) entry.height = made.heights->list;
            if (entry.field == Field::warnings) entry.height = made.heights->warnings;
        }
    }

    Label build() {
        made.market = market;
        identity();
        net();
        list();
        add(Field::warnings, warning_words("label.caution", "label.caution_ca", content.warnings), false);
        add(Field::directions, warning_words("label.directions", "label.directions_ca", content.directions),
            false);
        if (bilingual() && (!content.warnings.empty() || !content.directions.empty()))
            remark("label.french_sentences");
        keeping();
        add(Field::batch, content.batch_number.empty()
                              ? ""
                              : words::say(table, "label.batch", {{"number", content.batch_number}}));
        who();
        letters();
        made.text = content.title;
        for (const Entry& entry : made.entries)
            if (!entry.text.empty() && entry.text != content.title)
                made.text += (made.text.empty() ? "" : "\n") + entry.text;
        return std::move(made);
    }
};

}  // namespace

Label of(const Content& content, const words::Table& table) {
    return Setter{content, table, content.list.market}.build();
}

std::string_view field_name(Field field) {
    constexpr std::array<std::string_view, 10> kNames{"identity",   "net",        "list",  "warnings",
                                                      "directions", "durability", "batch", "responsible",
                                                      "origin",     "contact"};
    return kNames[static_cast<std::size_t>(field)];
}

std::string_view field_key(Field field) {
    constexpr std::array<std::string_view, 10> kKeys{
        "label.field_identity",   "label.field_net",        "label.field_list",  "label.field_warnings",
        "label.field_directions", "label.field_durability", "label.field_batch", "label.field_responsible",
        "label.field_origin",     "label.field_contact"};
    return kKeys[static_cast<std::size_t>(field)];
}

std::string_view state_name(State state) {
    constexpr std::array<std::string_view, 4> kNames{"given", "missing", "doubtful", "not_asked"};
    return kNames[static_cast<std::size_t>(state)];
}

std::string_view aside_name(Aside aside) {
    constexpr std::array<std::string_view, 5> kNames{"", "packaging", "leaflet", "tag", "tag_or_page"};
    return kNames[static_cast<std::size_t>(aside)];
}

}  // namespace label
