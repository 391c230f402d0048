#include "customer_card.h"

#include <algorithm>
#include <array>

#include "sorting.h"

namespace customer_card {
namespace {

using finding::Code;

struct Origin {
    Code code;
    Topic topic;
    std::string_view key;
};
constexpr std::array<Origin, 7> kOrigins{{{Code::origin_nut, Topic::nuts, "ask.nuts"},
                                          {Code::origin_soya, Topic::foods, "ask.soya"},
                                          {Code::origin_gluten, Topic::foods, "ask.gluten"},
                                          {Code::origin_sesame, Topic::foods, "ask.sesame"},
                                          {Code::origin_bee, Topic::animal, "ask.bee"},
                                          {Code::origin_wool, Topic::animal, "ask.wool"},
                                          {Code::origin_depends, Topic::animal, "ask.depends"}}};

bool is_oil(const catalogue::Ingredient& one) {
    return one.role == "essential_oil" || one.role == "extract" || one.role == "fragrance";
}

// A name once, in the order of coming.
struct Names {
    std::vector<std::string> all;
    void add(const std::string& name) {
        if (std::find(all.begin(), all.end(), name) == all.end()) all.push_back(name);
    }
    std::string joined() const {
        std::string text;
        for (const std::string& one : all)
            text += (text.empty() ? "" : ", ") + one;
        return text;
    }
};

struct Setter {
    const Asked& asked;
    const words::Table& table;
    Card card = {};

    std::string name_of(const std::string& subject) const {
        for (const catalogue::Ingredient* one : asked.held)
            if (one->id == subject && !one->name.empty()) return one->name;
        return subject;
    }

    Answer& answer(Topic topic) { return card.answers[static_cast<std::size_t>(topic)]; }
    void tell(Topic topic, std::string_view key, const Names& names, words::Arguments more = {}) {
        if (names.all.empty()) return;
        more.emplace_back("names", names.joined());
        answer(topic).sentences.push_back(words::say(table, key, more));
        answer(topic).named = true;
    }
    void none(Topic topic, std::string_view key) {
        if (answer(topic).sentences.empty()) answer(topic).sentences.push_back(words::say(table, key));
    }

    void origins() {
        for (const Origin& origin : kOrigins) {
            Names names;
            if (asked.findings != nullptr)
                for (const finding::Finding& one : *asked.findings)
                    if (one.code == origin.code) names.add(name_of(one.subject));
            tell(origin.topic, origin.key, names);
        }
        const bool looked = asked.findings != nullptr;
        none(Topic::nuts, looked ? "ask.nuts_none" : "ask.not_looked");
        none(Topic::foods, looked ? "ask.foods_none" : "ask.not_looked");
        none(Topic::animal, looked ? "ask.animal_none" : "ask.not_looked");
    }

    void scents() {
        Names names;
        for (const declaration::Named& one : asked.allergens.value_or(std::vector<declaration::Named>{}))
            names.add(one.label_name);
        tell(Topic::scents, "ask.scents", names);
        const Names oils = oils_in_it();
        if (!asked.allergens || (!asked.allergens_asked && !oils.all.empty())) {
            none(Topic::scents, "ask.scents_unknown");
        } else {
            none(Topic::scents, "ask.scents_none");
        }
    }

    Names oils_in_it() const {
        Names names;
        for (const catalogue::Ingredient* one : asked.held)
            if (is_oil(*one)) names.add(one->name);
        return names;
    }

    bool concerns(const limits::Caution& caution, const catalogue::Ingredient& one) const {
        if (caution.ingredients.empty()) return is_oil(one);
        return std::find(caution.ingredients.begin(), caution.ingredients.end(), one.id) !=
                   caution.ingredients.end() ||
               (one.own && std::find(caution.ingredients.begin(), caution.ingredients.end(), one.based_on) !=
                               caution.ingredients.end());
    }

    void pregnancy() {
        Names named;
        if (asked.book != nullptr)
            for (const catalogue::Ingredient* one : asked.held)
                for (const limits::Caution& caution : asked.book->cautions)
                    if (caution.pregnancy && concerns(caution, *one)) named.add(one->name);
        tell(Topic::pregnancy, "ask.pregnancy", named);
        tell(Topic::pregnancy, "ask.pregnancy_oils", oils_in_it());
        none(Topic::pregnancy, "ask.oils_none");
    }

    // By age, the highest first, each oil where its own limit is highest; those for the face apart.
    void children() {
        struct Age {
            std::int64_t months;
            bool near_face;
            Names names;
        };
        std::vector<Age> ages;
        const auto put = [&](std::int64_t months, bool near_face, const std::string& name) {
            for (Age& one : ages)
                if (one.months == months && one.near_face == near_face) return one.names.add(name);
            ages.push_back({months, near_face, {}});
            ages.back().names.add(name);
        };
        for (const catalogue::Ingredient* one : asked.held) {
            std::int64_t anywhere = 0, near_face = 0;
            if (asked.book != nullptr)
                for (const limits::Caution& caution : asked.book->cautions) {
                    if (!concerns(caution, *one)) continue;
                    const std::int64_t months = std::max(caution.stop_months, caution.warn_months);
                    std::int64_t& most = caution.places.empty() ? anywhere : near_face;
                    most = std::max(most, months);
                }
            if (anywhere > 0) put(anywhere, false, one->name);
            if (near_face > anywhere) put(near_face, true, one->name);
        }
        sorting::stable(ages, [](const Age& a, const Age& b) { return a.months > b.months; });
        for (const Age& one : ages) {
            const bool years = one.months % 12 == 0;
            const std::int64_t count = years ? one.months / 12 : one.months;
            const std::string age =
                words::say(table, years ? "ask.years" : "ask.months", {{"n", std::to_string(count)}});
            tell(Topic::children, one.near_face ? "ask.children_face" : "ask.children", one.names,
                 {{"age", age}});
        }
        if (!oils_in_it().all.empty())
            answer(Topic::children).sentences.push_back(words::say(table, "ask.babies"));
        none(Topic::children, "ask.oils_none");
    }

    Card build() {
        card.title = asked.title;
        for (int topic = 0; topic < kTopics; ++topic)
            card.answers.push_back({static_cast<Topic>(topic), {}, false});
        origins();
        scents();
        pregnancy();
        children();
        card.unknown = asked.unknown;
        card.text = card.title;
        for (const Answer& one : card.answers)
            for (const std::string& sentence : one.sentences)
                card.text += (card.text.empty() ? "" : "\n") + sentence;
        if (!card.unknown.empty())
            card.text += "\n" + words::say(table, "ask.unknown", {{"names", Names{card.unknown}.joined()}});
        card.text += "\n" + words::say(table, "ask.no_promise");
        return std::move(card);
    }
};

}  // namespace

Card of(const Asked& asked, const words::Table& table) {
    return Setter{asked, table}.build();
}

std::string_view topic_name(Topic topic) {
    constexpr std::array<std::string_view, kTopics> kNames{"nuts",   "foods",     "animal",
                                                           "scents", "pregnancy", "children"};
    return kNames[static_cast<std::size_t>(topic)];
}

}  // namespace customer_card
