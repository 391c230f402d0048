#include "reading_said.h"

namespace reading {
namespace {

constexpr std::size_t kNamed = 3;  // names of a group; the others are counted

std::string figure(const words::Table& table, const std::optional<std::int64_t>& grid) {
    return grid ? words::figure(table, *grid) : std::string();
}

bool exact(const Statement& statement) {
    return statement.min && statement.max && *statement.min == *statement.max;
}

// What is bounded, as the beginning of a sentence.
std::string subject_of(const words::Table& table, const Names& names, const Statement& statement) {
    if (statement.kind == Kind::group && !statement.subject.empty()) return statement.subject;
    if (statement.kind == Kind::property) {
        if (statement.subject == "density") return words::say(table, "reading.density");
        if (statement.subject == "iodine_value") return words::say(table, "reading.iodine_value");
        if (statement.subject == "saponification_value")
            return words::say(table, "reading.saponification_value");
        return words::say(table, "reading.wax_share");
    }
    return list_of(table, names, statement);
}

std::string unit_of(const words::Table& table, const Statement& statement) {
    if (statement.kind != Kind::property || statement.subject == "wax_share")
        return words::say(table, "reading.unit_percent");
    if (statement.subject == "density") return words::say(table, "reading.unit_density");
    return words::say(table,
                      statement.subject == "iodine_value" ? "reading.unit_iodine" : "reading.unit_lye");
}

const std::string& name_of(const Names& names, std::size_t item) {
    static const std::string none;
    return item < names.size() ? names[item] : none;
}

}  // namespace

std::string list_of(const words::Table& table, const Names& names, const Statement& statement) {
    std::string list;
    std::size_t named = 0;
    for (const Term& term : statement.terms) {
        if (named == kNamed && statement.terms.size() > kNamed + 1)
            return words::say(table, "reading.and_more",
                              {{"names", list}, {"n", std::to_string(statement.terms.size() - named)}});
        list += (list.empty() ? "" : ", ") + name_of(names, term.item);
        ++named;
    }
    return list;
}

std::string say(const words::Table& table, const Problem&, const Names& names, const Statement& statement) {
    const words::Arguments arguments = {{"what", subject_of(table, names, statement)},
                                        {"names", list_of(table, names, statement)},
                                        {"subject", statement.subject},
                                        {"min", figure(table, statement.min)},
                                        {"max", figure(table, statement.max)},
                                        {"unit", unit_of(table, statement)}};
    if (statement.kind == Kind::declared) return words::say(table, "reading.declared", arguments);
    if (statement.kind == Kind::undeclared) return words::say(table, "reading.undeclared", arguments);
    if (statement.kind == Kind::limit)
        return words::say(table, statement.subject == "usual" ? "reading.usual" : "reading.limit", arguments);
    if (exact(statement)) return words::say(table, "reading.exactly", arguments);
    if (statement.min && statement.max) return words::say(table, "reading.between", arguments);
    return words::say(table, statement.min ? "reading.at_least" : "reading.at_most", arguments);
}

std::string say(const words::Table& table, const Problem& problem, const Names& names, const Said& said) {
    const std::string line = words::figure(table, problem.line.grid);
    switch (said.what) {
        case Said::What::statement:
            return say(table, problem, names, problem.statements[said.at]);
        case Said::What::line:
            if (said.at == 0) return words::say(table, "reading.line_first", {{"line", line}});
            return words::say(table, "reading.line_after",
                              {{"name", name_of(names, said.at - 1)}, {"line", line}});
        case Said::What::total:
            return words::say(table, "reading.total");
        case Said::What::order: {
            std::size_t next = said.at + 1;
            while (next < problem.items.size() && problem.items[next].free)
                ++next;
            return words::say(table, "reading.order",
                              {{"name", name_of(names, said.at)}, {"other", name_of(names, next)}});
        }
        case Said::What::above:
            return words::say(table, "reading.above", {{"name", name_of(names, said.at)}, {"line", line}});
        case Said::What::below:
            return words::say(table, "reading.below", {{"name", name_of(names, said.at)}, {"line", line}});
    }
    return "";
}

std::string say(const words::Table& table, const Problem& problem, const Names& names, const Mend& mend) {
    if (mend.said.what == Said::What::line) {
        if (mend.figure == 0) return words::say(table, "reading.mend_line_first");
        return words::say(table, "reading.mend_line",
                          {{"name", name_of(names, static_cast<std::size_t>(mend.figure) - 1)}});
    }
    const Statement& of = problem.statements[mend.said.at];
    const words::Arguments arguments = {{"what", subject_of(table, names, of)},
                                        {"subject", of.subject},
                                        {"figure", words::figure(table, mend.figure)},
                                        {"unit", unit_of(table, of)}};
    if (of.kind == Kind::declared || of.kind == Kind::undeclared)
        return words::say(table, "reading.mend_off", arguments);
    return words::say(table, mend.said.at_most ? "reading.mend_most" : "reading.mend_least", arguments);
}

std::string say(const words::Table& table, const Problem&, const Names& names, const Gain& gain) {
    const std::int64_t points = decimal::rounded(gain.narrower, decimal::Toward::nearest, decimal::kOne / 10);
    if (points <= 0) return words::say(table, "reading.gain_none");
    return words::say(table, "reading.gain",
                      {{"name", name_of(names, gain.item)}, {"points", words::figure(table, points)}});
}

}  // namespace reading
