// What was understood of a pasted list, as text that a person can check: one line for each entry, as it
// stands in tests/data/pasted/*.expected.
#pragma once

#include <string>

#include "engine/pasted.h"

namespace pasted_shown {

inline std::string figure(std::int64_t grid) {
    return decimal::print(grid);
}

inline std::string remarks(const std::vector<pasted::Remark>& all) {
    std::string out;
    for (const pasted::Remark& one : all) {
        out += pasted::refuses(one.code) ? " !" : " ~";
        out += pasted::code_name(one.code);
        if (one.line > 0) out += "@" + std::to_string(one.line) + ":" + std::to_string(one.column);
        const bool says = one.code != pasted::Code::name_unknown && one.code != pasted::Code::name_several;
        if (says && !one.detail.empty()) out += "=" + one.detail;
    }
    return out;
}

inline std::string span(const measures::Span& span) {
    if (span.low == span.high) return figure(span.usual);
    return figure(span.usual) + "(" + figure(span.low) + ".." + figure(span.high) + ")";
}

inline std::string entry(const pasted::Entry& one) {
    static constexpr const char* kKinds[] = {"ingredient", "heading", "phase", "total", "note", "step"};
    std::string out = std::to_string(one.line) + ":" + std::to_string(one.column) + " " +
                      kKinds[static_cast<int>(one.kind)];
    if (one.kind == pasted::Kind::phase) out += " " + one.phase;
    out += " [" + one.name + "]";
    if (one.kind == pasted::Kind::ingredient) {
        out += one.ingredient.empty() ? " ?" : " " + one.ingredient;
        for (const std::string& id : one.offered)
            out += (&id == &one.offered.front() ? " one of " : ",") + id;
        out += " in " + one.phase;
    }
    if (one.amount && one.amount->rest) out += " rest";
    if (one.amount && one.amount->count.usual > 0)
        out += " " + span(one.amount->count) + " " + std::string(one.amount->measure);
    if (one.grams) out += " = " + span(*one.grams) + " g";
    if (one.percent) out += " = " + figure(one.percent->grid) + " %";
    if (!one.aside.empty()) out += " {" + one.aside + "}";
    return out + remarks(one.remarks);
}

inline std::string list(const pasted::List& list) {
    static constexpr const char* kBases[] = {"none", "percent", "mass", "parts"};
    std::string out = "title [" + list.title + "] in " + kBases[static_cast<int>(list.basis)];
    if (list.sum) out += ", adds to " + figure(*list.sum);
    if (list.grams) out += ", " + figure(list.grams->grid) + " g";
    out += remarks(list.remarks) + "\n";
    for (const pasted::Entry& one : list.entries)
        out += entry(one) + "\n";
    return out;
}

}  // namespace pasted_shown
