// A format, once released, is never changed again: a step is added here and an old file to tests/data. A step
// may rely on nothing but the document, as the code that wrote it is gone.
#include "store_migrations.h"

#include "store.h"

namespace store_migrations {

using store_json::Json;

const std::vector<Step>& steps() {
    static const std::vector<Step> none;
    static_assert(store::kFormat == 1, "a new format needs its step here");
    return none;
}

result::Result<Json> lifted(Json document, std::string_view kind, const std::string& place,
                            const std::vector<Step>& steps) {
    if (!document.is_object()) return {result::Code::not_a_recipe, place};
    const auto format = document.find("tarebench");
    if (format == document.end()) return {result::Code::not_a_recipe, place};
    const std::string format_place = store_json::joined(place, "tarebench");
    if (!format->is_number_integer())
        return {result::Code::field_type, format_place, format->dump(-1, ' ', true)};
    const std::string said = format->dump();
    if (!format->is_number_unsigned() || *format == 0) {
        return {result::Code::field_unknown_value, format_place, said};
    }
    const std::uint64_t from = *format->get_ptr<const std::uint64_t*>();
    if (from > steps.size() + 1) return {result::Code::version_newer, format_place, said};
    for (std::uint64_t step = from - 1; step < steps.size(); ++step) {
        result::Result<Json> next = steps[static_cast<std::size_t>(step)](std::move(document));
        if (!next) return next;
        document = std::move(next).value();
    }
    const auto found = document.find("kind");
    const auto* said_kind = found == document.end() ? nullptr : found->get_ptr<const std::string*>();
    if (said_kind == nullptr || *said_kind != kind) {
        return {result::Code::not_a_recipe, store_json::joined(place, "kind"), said_kind ? *said_kind : ""};
    }
    return document;
}

}  // namespace store_migrations
