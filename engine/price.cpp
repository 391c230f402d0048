#include "price.h"

#include <utility>

#include "bounds.h"
#include "date.h"

namespace price {
namespace {

using bounds::Fault;
using result::Code;
using result::Error;

Fault fault_of_currency(std::string_view code, const std::string& at) {
    if (money::places(code)) return std::nullopt;
    return Error{Code::field_unknown_value, at, std::string(code.substr(0, 80))};
}

Fault fault_of_day(const std::string& day, const std::string& at) {
    if (day.empty() || date::is_day(day)) return std::nullopt;
    return Error{Code::field_unknown_value, at, day.substr(0, 80)};
}

Fault fault_of_amount(money::Amount amount, const std::string& at) {
    return bounds::whole_outside(amount.minor, money::kMostMinor, at);
}

Fault fault_of_sum(const std::optional<money::Sum>& sum, const std::string& at) {
    if (!sum) return std::nullopt;
    if (auto fault = fault_of_currency(sum->currency, at + ".currency")) return fault;
    return fault_of_amount(sum->amount, at);
}

Fault above_none(std::int64_t grid, const std::string& at) {
    if (grid == 0) return Error{Code::batch_zero, at, "0"};
    return bounds::outside(grid, decimal::kLargest, at);
}

Fault fault_of(const Pack& pack, const std::string& at) {
    const bool named = pack.of == Of::ingredient || pack.of == Of::container;
    if (named)
        if (auto fault = bounds::unnamed(pack.what, kMostTextBytes, at + "what")) return fault;
    if ((pack.unit == Unit::pieces) != (pack.of != Of::ingredient) || (!named && !pack.what.empty()))
        return Error{Code::field_unknown_value, at + "size", pack.what.substr(0, 80)};
    if (auto fault = above_none(pack.size, at + "size")) return fault;
    if (pack.unit == Unit::pieces && pack.size % decimal::kOne != 0)
        return Error{Code::number_too_fine, at + "pieces", decimal::print(pack.size)};
    if (auto fault = fault_of_currency(pack.currency, at + "currency")) return fault;
    if (auto fault = fault_of_amount(pack.paid, at + "price")) return fault;
    if (auto fault = fault_of_amount(pack.delivery, at + "delivery")) return fault;
    if (auto fault = fault_of_day(pack.day, at + "day")) return fault;
    return bounds::too_long(pack.supplier, kMostTextBytes, at + "supplier");
}

Fault fault_of(const Rate& rate, const std::string& at) {
    if (auto fault = fault_of_currency(rate.from, at + "from")) return fault;
    if (auto fault = fault_of_currency(rate.to, at + "to")) return fault;
    if (rate.from == rate.to) return Error{Code::field_unknown_value, at + "to", rate.to};
    if (auto fault = above_none(rate.amount, at + "amount")) return fault;
    if (auto fault = above_none(rate.gives, at + "gives")) return fault;
    if (!date::is_day(rate.day)) return Error{Code::field_unknown_value, at + "day", rate.day.substr(0, 80)};
    return bounds::too_long(rate.source, kMostTextBytes, at + "source");
}

Fault fault_of(const Making& making, const std::string& at) {
    if (auto fault = bounds::too_long(making.recipe, kMostTextBytes, at + "recipe")) return fault;
    for (const auto& [minutes, field] :
         {std::pair(&making.minutes_batch, "minutes_batch"), std::pair(&making.minutes_unit, "minutes_unit")})
        if (*minutes)
            if (auto fault = bounds::outside(**minutes, kMostMinutes, at + field)) return fault;
    return std::nullopt;
}

Fault fault_of(const std::optional<Step>& step, const std::string& at) {
    if (!step) return std::nullopt;
    if (auto fault = bounds::outside(step->percent, kMostStep, at)) return fault;
    if (step->by == By::margin && step->percent >= quantity::kHundred.grid)
        return Error{Code::number_too_large, at, decimal::print(step->percent)};
    return std::nullopt;
}

// Of a list with its most entries.
template <class List>
Fault fault_of_list(const List& list, std::size_t most, const std::string& at) {
    if (list.size() > most) return Error{Code::too_many, at, std::to_string(most)};
    for (std::size_t i = 0; i < list.size(); ++i)
        if (auto fault = fault_of(list[i], at + "[" + std::to_string(i) + "].")) return fault;
    return std::nullopt;
}

bool same(const Pack& one, Of of, std::string_view what) {
    return one.of == of && one.what == what;
}

bool same_pair(const Rate& rate, std::string_view one, std::string_view other) {
    return (rate.from == one && rate.to == other) || (rate.from == other && rate.to == one);
}

Error nothing_there(const char* list, std::size_t at) {
    return {Code::line_missing, std::string(list) + "[" + std::to_string(at) + "]", ""};
}

}  // namespace

Fault fault_of(const Book& book, const std::string& at) {
    if (!book.currency.empty())
        if (auto fault = fault_of_currency(book.currency, at + "currency")) return fault;
    if (auto fault = fault_of_list(book.packs, kMostPacks, at + "packs")) return fault;
    if (auto fault = fault_of_list(book.rates, kMostRates, at + "rates")) return fault;
    if (auto fault = fault_of_list(book.makings, kMostMakings, at + "makings")) return fault;
    if (auto fault = fault_of_sum(book.hour, at + "hour")) return fault;
    if (auto fault = fault_of_sum(book.overhead_batch, at + "overhead_batch")) return fault;
    if (auto fault = fault_of_sum(book.fixed, at + "fixed")) return fault;
    if (auto fault = bounds::outside(book.overhead_percent, kMostStep, at + "overhead_percent")) return fault;
    if (auto fault = fault_of(book.wholesale, at + "wholesale")) return fault;
    return fault_of(book.retail, at + "retail");
}

const Pack* pack_of(const Book& book, Of of, std::string_view what) {
    const Pack* best = nullptr;
    for (const Pack& one : book.packs) {
        if (!same(one, of, what)) continue;
        if (one.chosen) return &one;
        if (best == nullptr || one.day >= best->day) best = &one;
    }
    return best;
}

const Rate* rate_of(const Book& book, std::string_view from, std::string_view to, std::string_view day) {
    const Rate* best = nullptr;
    for (const Rate& one : book.rates) {
        if (!same_pair(one, from, to)) continue;
        if (best == nullptr) {
            best = &one;
            continue;
        }
        const bool before = day.empty() || one.day <= day, best_before = day.empty() || best->day <= day;
        if (before != best_before ? before : before ? one.day >= best->day : one.day < best->day) best = &one;
    }
    return best;
}

Making making_of(const Book& book, std::string_view recipe) {
    Making for_all;
    for (const Making& one : book.makings) {
        if (one.recipe == recipe) return one;
        if (one.recipe.empty()) for_all = one;
    }
    for_all.recipe = recipe;
    return for_all;
}

result::Result<Book> with_pack(Book book, std::optional<std::size_t> at, Pack pack) {
    if (at && *at >= book.packs.size()) return nothing_there("packs", *at);
    if (pack.chosen)
        for (Pack& other : book.packs)
            if (same(other, pack.of, pack.what)) other.chosen = false;
    if (at)
        book.packs[*at] = std::move(pack);
    else
        book.packs.push_back(std::move(pack));
    return checked(std::move(book));
}

result::Result<Book> without_pack(Book book, std::size_t at) {
    if (at >= book.packs.size()) return nothing_there("packs", at);
    book.packs.erase(book.packs.begin() + static_cast<std::ptrdiff_t>(at));
    return book;
}

result::Result<Book> with_rate(Book book, Rate rate) {
    std::erase_if(book.rates, [&](const Rate& other) {
        return other.day == rate.day && same_pair(other, rate.from, rate.to);
    });
    book.rates.push_back(std::move(rate));
    return checked(std::move(book));
}

result::Result<Book> without_rate(Book book, std::size_t at) {
    if (at >= book.rates.size()) return nothing_there("rates", at);
    book.rates.erase(book.rates.begin() + static_cast<std::ptrdiff_t>(at));
    return book;
}

result::Result<Book> with_making(Book book, Making making) {
    std::erase_if(book.makings, [&](const Making& other) { return other.recipe == making.recipe; });
    book.makings.push_back(std::move(making));
    return checked(std::move(book));
}

result::Result<Book> checked(Book book) {
    if (auto fault = fault_of(book, "")) return *fault;
    return book;
}

}  // namespace price
