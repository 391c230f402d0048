#include "store_blend.h"

#include <algorithm>

#include "blend_firmness.h"

namespace store_blend {
namespace {

struct Field {
    std::string_view key;
    quantity::Percent blend::Body::*percent;
};
constexpr Field kFields[] = {{"wax_percent", &blend::Body::wax},
                             {"hard_percent", &blend::Body::hard},
                             {"soft_percent", &blend::Body::soft},
                             {"liquid_percent", &blend::Body::liquid}};

}  // namespace

void write(store_json::Writer& writer, const std::vector<blend::Rated>& list) {
    writer.list();
    for (const blend::Rated& one : list) {
        writer.flat_object();
        writer.pair("title", one.title);
        writer.key("rating");
        writer.whole(static_cast<std::uint64_t>(one.rating));
        for (const Field& field : kFields)
            writer.pair_figure(field.key, (one.body.*field.percent).grid);
        writer.end();
    }
    writer.end();
}

std::vector<blend::Rated> rated_from(const store_json::Json& list, const std::string& place,
                                     store_json::Failure& failure) {
    std::vector<blend::Rated> read;
    if (list.size() > blend::kMostRated)
        failure.at(result::Code::too_many, place, std::to_string(list.size()));
    for (std::size_t i = 0; i < list.size() && !failure.failed(); ++i) {
        const std::string at = store_json::indexed(place, i);
        store_json::Fields fields(list[i], at, failure);
        blend::Rated one;
        one.title = fields.text("title");
        one.rating = static_cast<int>(std::min<std::uint64_t>(fields.whole("rating").value_or(0), 100));
        for (const Field& field : kFields)  // of a strong wax more than 100 % stands for it
            (one.body.*field.percent).grid = fields.figure(field.key).value_or(0);
        fields.finish();
        if (auto fault = blend::fault_of(one, at + "."); fault && !failure.failed())
            failure.at(fault->code, fault->place, fault->detail);
        read.push_back(std::move(one));
    }
    return read;
}

}  // namespace store_blend
