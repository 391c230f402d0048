// The file that the page saves when the program itself is gone: {"tarebench_records":1,"records":{key:
// text}}, the stored records as they lay there. Each is read as at a start; what cannot be read is counted,
// not dropped in silence.
#include <map>

#include "store.h"
#include "store_json.h"

namespace store {

result::Result<Rescued> read_rescued(std::string_view json) {
    const result::Result<store_json::Json> document = store_json::parse(json);
    if (!document) return document.error();
    store_json::Failure failure;
    store_json::Fields fields(*document, "", failure);
    fields.need("tarebench_records");
    if (const auto version = fields.whole("tarebench_records"); version && *version > 1)
        return result::Code::version_newer;
    const std::map<std::string, std::string> records = fields.texts("records");
    if (failure.failed()) return *failure.error;

    std::map<std::string, Slots> slots;  // key without its slot -> texts
    for (const auto& [key, text] : records) {
        const bool slot = key.size() > 2 && (key.compare(key.size() - 2, 2, ".a") == 0 ||
                                             key.compare(key.size() - 2, 2, ".b") == 0);
        if (!slot || key.find(":recipe:") == std::string::npos) continue;
        Slots& found = slots[key.substr(0, key.size() - 2)];
        (key.back() == 'a' ? found.a : found.b) = text;
    }
    Rescued rescued;
    for (const auto& [base, found] : slots) {
        const Chosen chosen = choose(found);
        auto kept = chosen.record ? read_kept(chosen.record->json)
                                  : result::Result<workspace::Kept>(result::Code::checksum_wrong);
        if (kept)
            rescued.recipes.push_back(std::move(kept.value().recipe));
        else
            ++rescued.unreadable;
    }
    return rescued;
}

}  // namespace store
