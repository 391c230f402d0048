// tarebench read: a list of ingredients, and what else is known, to the percentages that can stand behind it.
// The list comes name by name ("listed") or as it was printed ("list"); then what is incidental, free and
// printed with a percent is taken as offered.
#include "declaration_read.h"
#include "door.h"
#include "reading_list.h"
#include "reading_said.h"
#include "store_json.h"
#include "store_limits.h"

namespace door {
namespace {

using reading::Problem;
using reading::Statement;
using result::Code;
using store_json::Fields;
using store_json::Json;

struct Question {
    Problem problem;
    reading::Sold sold;
    reading::Wish wish;
    std::vector<std::string> places;    // of each statement: "limits[0]"
    std::vector<std::string> not_used;  // allergens of which nothing could be said
    bool limits = false;                // of law and usual, too
};

// The object of a list at `at`, for each of them.
template <class Take>
void each(Fields& fields, std::string_view key, const Take& take) {
    const Json* const list = fields.list(key);
    if (list == nullptr) return;
    for (std::size_t i = 0; i < list->size(); ++i)
        take((*list)[i], store_json::indexed(fields.place(key), i));
}

void keep(Question& question, Statement statement, std::string place) {
    question.problem.statements.push_back(std::move(statement));
    question.places.push_back(std::move(place));
}

std::size_t item_of(const Json& value, const std::string& place, const Question& question,
                    store_json::Failure& failure) {
    if (!value.is_number_unsigned()) {
        failure.at(Code::field_type, place);
        return 0;
    }
    const auto item = value.get<std::uint64_t>();
    if (item < question.problem.items.size()) return static_cast<std::size_t>(item);
    failure.at(Code::item_missing, place, std::to_string(item));
    return 0;
}

// At least one of the two.
void take_range(Fields& fields, Statement& statement) {
    statement.min = fields.figure("min");
    statement.max = fields.figure("max");
    if (!statement.min && !statement.max) fields.need("max");
    fields.finish();
}

void take_listed(Fields& fields, Question& question) {
    each(fields, "listed", [&](const Json& value, const std::string& place) {
        Fields one(value, place, fields.failure());
        reading::Item item{one.text("ingredient"), one.text("name"), one.flag("free"), {}};
        if (item.ingredient.empty() && item.name.empty()) one.need("ingredient");
        one.finish();
        question.problem.items.push_back(std::move(item));
    });
}

void take_allergens(Fields& fields, std::string_view key, bool declared, Question& question,
                    const catalogue::Catalogue& shipped, const limits::Book& book) {
    each(fields, key, [&](const Json& value, const std::string& place) {
        const std::string name = store_json::text_of(value, place, fields.failure());
        const auto allergen = reading::find_allergen(name, question.sold, book);
        Statement statement;
        if (allergen && (declared || allergen->required))
            statement =
                declared
                    ? reading::declared(question.problem.items, *allergen, question.sold, shipped, book)
                    : reading::undeclared(question.problem.items, *allergen, question.sold, shipped, book);
        if (statement.terms.empty())
            question.not_used.push_back(name);
        else
            keep(question, std::move(statement), place);
    });
}

result::Result<Question> question_of(std::string_view input, const catalogue::Catalogue& shipped,
                                     const limits::Book& book) {
    const result::Result<Json> json = store_json::parse(input);
    if (!json) return json.error();
    store_json::Failure failure;
    Fields fields(*json, "", failure);
    Question question;
    question.sold = {fields.text("product"), fields.text("market"), fields.text("date")};
    if (!question.sold.market.empty() && !market::of_id(question.sold.market))
        return result::Error{Code::field_unknown_value, "market", question.sold.market};
    if (fields.has("list")) {
        const auto read = declaration_read::read(fields.text("list"), shipped);
        if (read.cut)
            return result::Error{Code::too_many, "list", std::to_string(declaration_read::kMostItems)};
        reading_list::Made made = reading_list::problem_of(reading_list::entries_of(read, shipped, book),
                                                           question.sold, shipped, book, false);
        question.problem = std::move(made.problem);
        question.places.assign(question.problem.statements.size(), "list");
        question.not_used = std::move(made.not_said);
    } else {
        fields.need("listed");
        take_listed(fields, question);
    }
    if (const Json* const after = fields.any("one_percent_after"); after != nullptr && !after->is_null())
        if (const auto place = fields.whole("one_percent_after"))
            question.problem.line_after =
                static_cast<std::size_t>(std::min<std::uint64_t>(*place, 1'000'000));
    each(fields, "limits", [&](const Json& value, const std::string& place) {
        Fields one(value, place, failure);
        one.need("item");
        const Json* const item = one.any("item");
        Statement statement = reading::amount(
            item == nullptr ? 0 : item_of(*item, one.place("item"), question, failure), {}, {});
        take_range(one, statement);
        keep(question, std::move(statement), place);
    });
    each(fields, "groups", [&](const Json& value, const std::string& place) {
        Fields one(value, place, failure);
        std::vector<std::size_t> items;
        one.need("items");
        each(one, "items", [&](const Json& item, const std::string& at) {
            items.push_back(item_of(item, at, question, failure));
        });
        Statement statement = reading::group(one.text("name"), items, {}, {});
        take_range(one, statement);
        keep(question, std::move(statement), place);
    });
    each(fields, "properties", [&](const Json& value, const std::string& place) {
        Fields one(value, place, failure);
        const std::string name = one.needed_text("property");
        auto statement = reading::property(name, question.problem.items, {}, {}, shipped);
        if (!statement) {
            failure.at(Code::field_unknown_value, one.place("property"), name);
            return;
        }
        take_range(one, *statement);
        keep(question, std::move(*statement), place);
    });
    take_allergens(fields, "incidental", true, question, shipped, book);
    take_allergens(fields, "undeclared", false, question, shipped, book);
    const auto count = [&](std::string_view key, std::size_t usual, std::size_t most) {
        const std::uint64_t number = fields.whole(key).value_or(usual);
        if (number > most) failure.at(Code::number_too_large, std::string(key), std::to_string(number));
        return static_cast<std::size_t>(std::min<std::uint64_t>(number, most));
    };
    question.wish.draws = count("samples", question.wish.draws, reading::kMostDraws);
    question.wish.suggestions = count("suggest", question.wish.suggestions, reading::kMostSuggestions);
    question.wish.seed = fields.whole("seed").value_or(question.wish.seed);
    if (fields.flag("known_limits"))
        for (Statement& limit : reading::limits_of(question.problem.items, question.sold, shipped, book))
            keep(question, std::move(limit), "known_limits");
    fields.finish();
    if (failure.failed()) return *failure.error;
    result::Result<Problem> checked = reading::checked(question.problem);
    if (!checked) {
        result::Error error = checked.error();  // a statement's place as the file has it
        for (std::size_t i = question.places.size(); i-- > 0;) {
            const std::string own = "statements[" + std::to_string(i) + "]";
            if (error.place.rfind(own, 0) == 0)
                error.place = question.places[i] + error.place.substr(own.size());
        }
        return error;
    }
    return question;
}

void pair_percent(store_json::Writer& writer, std::string_view key, double value,
                  decimal::Toward toward = decimal::Toward::nearest) {
    writer.pair_figure(key, decimal::rounded(value, toward));
}

void write_range(store_json::Writer& writer, const reading::Range& range) {
    pair_percent(writer, "min", range.min, decimal::Toward::below);
    pair_percent(writer, "max", range.max, decimal::Toward::above);
}

std::string place_of(const Question& question, const reading::Said& said) {
    if (said.what == reading::Said::What::line) return "one_percent_after";
    if (said.what != reading::Said::What::statement) return "list";
    return question.places[said.at];
}

void write_conflict(store_json::Writer& writer, const Question& question, const reading::Names& names,
                    const reading::Conflict& conflict, const words::Table& table) {
    const auto list = [&](std::string_view key, const auto& all, const auto& said_of) {
        writer.key(key);
        writer.list();
        for (const auto& one : all) {
            writer.flat_object();
            writer.pair("place", place_of(question, said_of(one)));
            writer.pair("text", reading::say(table, question.problem, names, one));
            writer.end();
        }
        writer.end();
    };
    const auto self = [](const reading::Said& one) { return one; };
    list("conflict", conflict.said, self);
    list("beside", conflict.beside, self);
    list("mends", conflict.mends, [](const reading::Mend& one) { return one.said; });
}

void write_lines(store_json::Writer& writer, const Question& question, const reading::Answer& answer) {
    writer.key("lines");
    writer.list();
    for (std::size_t i = 0; i < answer.items.size(); ++i) {
        const reading::Item& item = question.problem.items[i];
        writer.flat_object();
        writer.key("item");
        writer.whole(i);
        item.ingredient.empty() ? writer.pair("name", item.name) : writer.pair("ingredient", item.ingredient);
        write_range(writer, answer.items[i]);
        if (i < answer.likely.size()) {
            pair_percent(writer, "mean", answer.likely[i].mean);
            pair_percent(writer, "p05", answer.likely[i].p05);
            pair_percent(writer, "p50", answer.likely[i].median);
            pair_percent(writer, "p95", answer.likely[i].p95);
        }
        writer.end();
    }
    writer.end();
}

void write_statements(store_json::Writer& writer, const Question& question, const reading::Names& names,
                      const reading::Answer& answer, const words::Table& table) {
    writer.key("statements");
    writer.list();
    for (const reading::Gain& gain : answer.gains) {
        writer.flat_object();
        writer.pair("place", place_of(question, gain.said));
        writer.pair("text", reading::say(table, question.problem, names, gain.said));
        if (gain.said.what == reading::Said::What::statement)
            write_range(writer, answer.statements[gain.said.at]);
        pair_percent(writer, "narrows", gain.narrower);
        writer.pair("gain", reading::say(table, question.problem, names, gain));
        writer.end();
    }
    writer.end();
}

void write_method(store_json::Writer& writer, const reading::Answer& answer) {
    constexpr std::string_view kMethods[] = {"none", "exact", "walk", "single"};
    writer.key("one_percent_after");
    writer.list();
    for (const reading::Place& place : answer.places) {
        writer.flat_object();
        writer.key("after");
        writer.whole(place.after);
        pair_percent(writer, "share", place.share);
        writer.end();
    }
    writer.end();
    writer.pair("method", kMethods[static_cast<int>(answer.method)]);
    writer.key("settled");
    writer.flag(answer.settled && !answer.partial);
}

void write_suggestions(store_json::Writer& writer, const reading::Answer& answer) {
    writer.key("suggestions");
    writer.list();
    for (const reading::Suggestion& one : answer.suggestions) {
        writer.flat_object();
        writer.key("percents");
        writer.list();
        for (const quantity::Percent percent : one.percents)
            writer.figure(percent.grid);
        writer.end();
        writer.key("fits");
        writer.flag(one.fits);
        writer.end();
    }
    writer.end();
}

}  // namespace

Answer read(std::string_view input, const store::Presets& presets, std::string_view limits) {
    const result::Result<limits::Book> book = limits.empty() ? limits::Book{} : store::unpack_limits(limits);
    if (!book) return refuse(book.error(), presets);
    const auto question = question_of(input, presets.catalogue, *book);
    if (!question) return refuse(question.error(), presets);
    const words::Table& table = english(presets);
    const reading::Answer answer = reading::answer(question->problem, question->wish);
    reading::Names names;
    for (const reading::Item& item : question->problem.items) {
        const catalogue::Ingredient* const known =
            catalogue::find_ingredient(presets.catalogue, item.ingredient);
        names.push_back(known != nullptr ? known->name : item.name.empty() ? item.ingredient : item.name);
    }
    store_json::Writer writer(store_json::Layout::indented);
    writer.object();
    writer.key("feasible");
    writer.flag(answer.state == reading::State::fits);
    if (answer.state == reading::State::unknown) {
        writer.key("unknown");
        writer.flag(true);
    }
    write_lines(writer, *question, answer);
    if (answer.state == reading::State::fits) {
        write_method(writer, answer);
        write_statements(writer, *question, names, answer, table);
        write_suggestions(writer, answer);
    }
    write_conflict(writer, *question, names, answer.conflict, table);
    writer.key("not_used");
    writer.list();
    for (const std::string& name : question->not_used)
        writer.text(name);
    writer.end();
    return {0, writer.finish(), ""};
}

}  // namespace door
