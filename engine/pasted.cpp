// What the amounts of a pasted list come to: which unit its numbers are in, grams with their stated error,
// percents, the rest line, the sum. Reading the text is pasted_lines'.
// Guesses: numbers without a unit are percent when they add to 100 or fill up to 100, grams among grams,
// percent among percents, parts otherwise, which come to the same percents as grams would.
#include "pasted.h"

#include <algorithm>

#include "pasted_lines.h"
#include "pasted_names.h"
#include "pasted_text.h"
#include "utf8.h"

namespace pasted {
namespace {

using measures::Span;

constexpr std::int64_t kHundred = 100 * decimal::kOne;
constexpr std::int64_t kNearly = decimal::kOne / 2;  // 99.5 to 100.5 is meant to be 100

bool is_rest(const Entry& entry) {
    return entry.amount && entry.amount->rest;
}
bool counts(const Entry& entry) {
    return entry.kind == Kind::ingredient && !entry.left_out;
}
// Comes as powder, flakes or pellets: what a spoon of it weighs depends on how it lies.
bool is_loose(const catalogue::Ingredient& one) {
    static constexpr std::string_view kRoles[] = {"wax", "hard_fat", "thickener", "emulsifier", "powder"};
    return one.phase == catalogue::Phase::powder ||
           std::find(std::begin(kRoles), std::end(kRoles), one.role) != std::end(kRoles);
}
const measures::Measure* measure_of(const Amount& amount) {
    return amount.measure.empty() ? nullptr : measures::find(amount.measure);
}

class Weigher {
  public:
    Weigher(List& list, const catalogue::Catalogue& catalogue, const Said& said)
        : list_(list), catalogue_(catalogue), said_(said) {}

    void weigh() {
        for (Entry& entry : list_.entries)
            if (counts(entry) && entry.amount) count(entry);
        settle_rest_lines();
        take_unitless();
        take_basis();
        if (list_.basis == Basis::percent)
            percents();
        else if (list_.basis != Basis::none)
            amounts();
        compare_totals();
    }

  private:
    void remark(Entry& entry, Code code, std::string detail = "") {
        entry.remarks.push_back({code, entry.line, entry.column, std::move(detail)});
    }

    void count(const Entry& entry) {
        const measures::Measure* measure = measure_of(*entry.amount);
        if (!measure) {
            if (!is_rest(entry)) unitless_ += 1, unitless_sum_ += entry.amount->count.usual;
        } else if (measure->kind == measures::Kind::percent) {
            percents_ += !is_rest(entry);
        } else if (measure->kind == measures::Kind::parts) {
            parts_ += 1;
        } else {
            masses_ += !is_rest(entry);
        }
    }

    // "ad 100" is the rest line; a second one is refused. A q.s. without a number is the rest line when the
    // list is in percent and leaves something, or when it is the only one with nothing else to mean.
    void settle_rest_lines() {
        std::vector<std::size_t> said, open;
        for (std::size_t i = 0; i < list_.entries.size(); ++i) {
            if (!counts(list_.entries[i]) || !is_rest(list_.entries[i])) continue;
            (list_.entries[i].amount->count.usual > 0 ? said : open).push_back(i);
        }
        for (std::size_t n = 1; n < said.size(); ++n)
            refuse(list_.entries[said[n]], Code::rest_twice);
        if (!said.empty()) rest_ = said[0];
        std::int64_t stated = unitless_sum_;
        for (const Entry& entry : list_.entries)
            if (counts(entry) && entry.amount && !is_rest(entry) && !entry.amount->measure.empty())
                stated += entry.amount->count.usual;
        const bool of_percent = masses_ == 0 && parts_ == 0 && stated < kHundred;
        for (const std::size_t i : open) {
            Entry& entry = list_.entries[i];
            if (!rest_ && of_percent) {
                // Of several, water or the first is what fills up.
                const bool better = std::none_of(open.begin(), open.end(), [&](std::size_t other) {
                    return other != i && list_.entries[other].ingredient == "water";
                });
                if (entry.ingredient == "water" || better) {
                    rest_ = i;
                    remark(entry, Code::rest_guessed);
                    continue;
                }
            }
            entry.amount.reset();
            remark(entry, Code::amount_as_needed);
        }
    }

    void refuse(Entry& entry, Code code, std::string detail = "") {
        entry.amount.reset();
        remark(entry, code, std::move(detail));
    }

    void take_unitless() {
        list_.has_unitless = unitless_ > 0;
        if (unitless_ == 0) return;
        Basis guess = Basis::parts;
        const std::int64_t off = unitless_sum_ - kHundred;
        const bool fills = rest_ && unitless_sum_ < kHundred && rest_to_hundred();
        if (percents_ > 0 && masses_ == 0)
            guess = Basis::percent;
        else if (masses_ > 0 && percents_ == 0)
            guess = Basis::mass;
        else if (parts_ > 0)
            guess = Basis::parts;
        else if ((off >= -kNearly && off <= kNearly) || fills)
            guess = Basis::percent;
        list_.unitless = said_.unitless.value_or(guess);
        const std::string_view measure = list_.unitless == Basis::percent ? "percent"
                                         : list_.unitless == Basis::mass  ? "gram"
                                                                          : "part";
        for (Entry& entry : list_.entries) {
            if (!counts(entry) || !entry.amount || !entry.amount->measure.empty() || is_rest(entry)) continue;
            entry.amount->measure = measure;
            (list_.unitless == Basis::percent ? percents_
             : list_.unitless == Basis::mass  ? masses_
                                              : parts_) += 1;
        }
        if (!said_.unitless) list_.remarks.push_back({Code::unit_guessed, 0, 0, std::string(measure)});
    }
    bool rest_to_hundred() const {
        const Amount& rest = *list_.entries[*rest_].amount;
        const measures::Measure* measure = measure_of(rest);
        const bool hundred = rest.count.usual == 0 || rest.count.usual == kHundred;
        return hundred && (!measure || measure->kind == measures::Kind::percent);
    }

    // The kind most lines are in; lines of another kind are refused, unless a total in grams joins them.
    void take_basis() {
        if (percents_ + masses_ + parts_ == 0) {
            list_.basis = rest_ ? Basis::percent : Basis::none;
            return;
        }
        list_.basis = percents_ >= masses_ && percents_ >= parts_ && percents_ > 0 ? Basis::percent
                      : parts_ >= masses_ && parts_ > 0                            ? Basis::parts
                                                                                   : Basis::mass;
        std::optional<std::int64_t> total;
        for (const Entry& entry : list_.entries)
            if (entry.kind == Kind::total && entry.amount && !entry.left_out) {
                const measures::Measure* measure = measure_of(*entry.amount);
                if (measure && measure->kind == measures::Kind::mass)
                    total = measures::times(entry.amount->count, *measure).usual;
            }
        if (percents_ > 0 && masses_ > 0 && total && *total > 0) {
            list_.basis = Basis::percent;
            joined_ = *total;
        }
        for (Entry& entry : list_.entries) {
            if (!counts(entry) || !entry.amount) continue;
            const measures::Measure* measure = measure_of(*entry.amount);
            if (!measure || (is_rest(entry) && measure->kind == measures::Kind::percent)) continue;
            const Basis kind = measure->kind == measures::Kind::percent ? Basis::percent
                               : measure->kind == measures::Kind::parts ? Basis::parts
                                                                        : Basis::mass;
            if (kind == Basis::mass && !is_rest(entry)) grams(entry, *measure);
            if (kind == list_.basis || !entry.amount) continue;
            if (joined_ > 0 && kind == Basis::mass) continue;
            if (is_rest(entry)) continue;  // its number does not matter where the whole is 100 %
            entry.grams.reset();
            refuse(entry, Code::amounts_mixed);
        }
    }

    void grams(Entry& entry, const measures::Measure& measure) {
        const Span span = measures::times(entry.amount->count, measure);
        if (measure.kind == measures::Kind::mass) {
            if (span.high > decimal::kLargest) return refuse(entry, Code::number_too_large);
            entry.grams = span;
            return;
        }
        const catalogue::Ingredient* one = catalogue::find_ingredient(catalogue_, entry.ingredient);
        if (one && is_loose(*one)) return refuse(entry, Code::measured_loose, one->name);
        if (!one || !one->density)
            return refuse(entry, Code::density_unknown, one ? one->density_unknown : "");
        entry.grams = measures::grams_of(span, one->density->value.density);
        if (entry.grams->high > decimal::kLargest) {
            entry.grams.reset();
            refuse(entry, Code::number_too_large);
        }
    }

    // --- a list in percent ---
    void percents() {
        std::int64_t sum = 0;
        bool any = false;
        for (std::size_t i = 0; i < list_.entries.size(); ++i) {
            Entry& entry = list_.entries[i];
            if (!counts(entry) || !entry.amount || rest_ == i) continue;
            std::int64_t percent = entry.amount->count.usual;
            if (entry.grams && joined_ > 0)
                percent = decimal::scale_nearest(entry.grams->usual, kHundred, joined_);
            if (percent > kHundred) {
                refuse(entry, Code::number_too_large, decimal::print(percent));
                continue;
            }
            entry.percent = quantity::Percent{percent};
            sum += percent;
            any = true;
        }
        if (rest_ && sum > kHundred) remark(list_.entries[*rest_], Code::rest_over);
        if (any || rest_) list_.sum = rest_ && sum <= kHundred ? kHundred : sum;
        if (!rest_ && any && sum != kHundred)
            list_.remarks.push_back({Code::percents_off, 0, 0, decimal::print(sum)});
        if (joined_ > 0) list_.grams = quantity::Mass{joined_};
    }

    // --- a list in weights or parts ---
    void amounts() {
        const bool mass = list_.basis == Basis::mass;
        std::int64_t sum = 0;
        const auto weight = [&](const Entry& entry) -> std::optional<std::int64_t> {
            if (!counts(entry) || !entry.amount || is_rest(entry)) return std::nullopt;
            if (!mass) return entry.amount->count.usual;
            return entry.grams ? std::optional(entry.grams->usual) : std::nullopt;
        };
        for (const Entry& entry : list_.entries)
            sum += weight(entry).value_or(0);
        std::int64_t rest = 0;
        if (rest_) rest = rest_amount(list_.entries[*rest_], sum, mass);
        list_.sum = sum + rest;
        std::vector<std::size_t> weighed;
        std::vector<std::int64_t> weights;
        std::size_t without = 0;
        for (std::size_t i = 0; i < list_.entries.size(); ++i) {
            Entry& entry = list_.entries[i];
            if (!counts(entry)) continue;
            const std::optional<std::int64_t> own = rest_ == i ? std::optional(rest) : weight(entry);
            if (own) {
                weighed.push_back(i);
                weights.push_back(*own);
            } else {
                without += 1;
            }
        }
        if (without > 0 && !weighed.empty())
            list_.remarks.push_back({Code::weight_missing, 0, 0, std::to_string(without)});
        const auto shares = decimal::share_out(kHundred, weights);
        for (std::size_t n = 0; shares && n < weighed.size(); ++n)
            if (rest_ != weighed[n]) list_.entries[weighed[n]].percent = quantity::Percent{(*shares)[n]};
        if (mass && *list_.sum > 0) list_.grams = quantity::Mass{*list_.sum};
    }

    // What is missing to the amount that the line fills up to.
    std::int64_t rest_amount(Entry& entry, std::int64_t sum, bool mass) {
        const measures::Measure* measure = measure_of(*entry.amount);
        std::int64_t whole = entry.amount->count.usual;
        if (measure && measure->kind == measures::Kind::volume) {
            refuse(entry, Code::rest_by_volume);
            rest_.reset();
            return 0;
        }
        if (measure && measure->kind == measures::Kind::mass)
            whole = measures::times(entry.amount->count, *measure).usual;
        if (whole == 0 || whole < sum) {
            if (whole == 0)
                refuse(entry, Code::amount_as_needed);
            else
                refuse(entry, Code::rest_over);
            rest_.reset();
            return 0;
        }
        const std::int64_t rest = whole - sum;
        if (mass) entry.grams = Span{rest, rest, rest};
        return rest;
    }

    // A total that the list states against what its lines add to.
    void compare_totals() {
        for (Entry& entry : list_.entries) {
            if (entry.kind != Kind::total || !entry.amount || entry.left_out || !list_.sum) continue;
            const measures::Measure* measure = measure_of(*entry.amount);
            std::optional<std::int64_t> said = entry.amount->count.usual;
            std::int64_t sum = *list_.sum;
            std::string_view unit = list_.basis == Basis::percent ? "%"
                                    : list_.basis == Basis::mass  ? "g"
                                                                  : "";
            if (measure && measure->kind == measures::Kind::mass) {
                said = measures::times(entry.amount->count, *measure).usual;
                if (list_.basis != Basis::mass) {
                    list_.grams = quantity::Mass{*said};  // the batch, for percents or parts
                    continue;
                }
            } else if (measure && measure->kind == measures::Kind::percent) {
                if (list_.basis != Basis::percent) continue;  // what weighs anything adds to 100 %
            } else if (measure && measure->kind == measures::Kind::volume) {
                continue;
            } else if (!measure && list_.basis == Basis::percent && *said != kHundred) {
                continue;
            } else if (!measure && list_.basis == Basis::mass && *said == kHundred) {
                continue;  // 100 % without its sign, as well as grams
            }
            if (*said != sum)
                remark(entry, Code::sum_differs,
                       decimal::print(sum) + (unit.empty() ? "" : "\xC2\xA0" + std::string(unit)));
        }
    }

    List& list_;
    const catalogue::Catalogue& catalogue_;
    const Said& said_;
    std::size_t unitless_ = 0, percents_ = 0, parts_ = 0, masses_ = 0;
    std::int64_t unitless_sum_ = 0;
    std::int64_t joined_ = 0;  // grams of the whole, that join percents and weights
    std::optional<std::size_t> rest_;
};

}  // namespace

bool refuses(Code code) {
    return code <= Code::too_long;
}

List read(std::string_view text, const catalogue::Catalogue& catalogue, const Said& said) {
    List list;
    if (text.size() > kMostBytes) {
        list.remarks.push_back({Code::too_long, 0, 0, std::to_string(kMostBytes)});
        text = text.substr(0, kMostBytes);
    }
    const pasted_names::Matcher matcher(catalogue);
    pasted_lines::Entries read = pasted_lines::read(pasted_text::lines_of(text), matcher);
    list.title = std::string(utf8::start_within(read.title, workspace::kMostTitleBytes));
    list.entries = std::move(read.all);
    if (read.first_left > 0)
        list.remarks.push_back({Code::too_many_lines, read.first_left, 1, std::to_string(kMostEntries)});
    std::size_t lines = 0;
    for (std::size_t i = 0; i < list.entries.size(); ++i) {
        Entry& entry = list.entries[i];
        entry.left_out = said.left_out.count(i) != 0;
        if (!counts(entry)) continue;
        if (const auto chosen = said.chosen.find(i); chosen != said.chosen.end()) {
            entry.ingredient = chosen->second;
            std::erase_if(entry.remarks, [](const Remark& one) {
                return one.code == Code::name_several || one.code == Code::name_unknown;
            });
        }
        if (++lines > formula::kMostLines) {
            entry.amount.reset();
            entry.remarks.push_back(
                {Code::too_many_lines, entry.line, entry.column, std::to_string(formula::kMostLines)});
        }
    }
    Weigher(list, catalogue, said).weigh();
    return list;
}

std::size_t ingredients(const List& list) {
    return static_cast<std::size_t>(std::count_if(list.entries.begin(), list.entries.end(), counts));
}

bool looks_like_list(const List& list) {
    std::size_t known = 0;
    for (const Entry& entry : list.entries) {
        if (entry.kind != Kind::ingredient) continue;
        if (entry.amount || !entry.remarks.empty()) return true;
        known += !entry.ingredient.empty();
    }
    return known >= 2;
}

std::string_view code_name(Code code) {
    static constexpr std::string_view kNames[] = {
        "number_unclear", "number_too_fine",  "number_too_large", "amount_missing",  "amount_vague",
        "amount_shared",  "amounts_mixed",    "unit_unknown",     "density_unknown", "measured_loose",
        "name_missing",   "rest_twice",       "rest_over",        "rest_by_volume",  "too_many_lines",
        "too_long",       "amount_as_needed", "amount_range",     "rest_guessed",    "unit_guessed",
        "name_several",   "name_unknown",     "sum_differs",      "percents_off",    "weight_missing"};
    return kNames[static_cast<std::size_t>(code)];
}

}  // namespace pasted
