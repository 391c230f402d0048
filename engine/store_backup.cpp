// Everything on the device as one JSON file, out and in; and the file that the page saves when the program
// itself is gone, which holds the stored records as they lay there. What a record is, is known to
// store_records.cpp alone. The kinds of records are an open list: one more is a line in write_backup and one
// in take. What putting it back does is for workspace_backup to say.
#include <algorithm>
#include <map>

#include "store.h"
#include "store_json.h"
#include "store_migrations.h"
#include "workspace_own.h"
#include "workspace_records.h"

namespace store {
namespace {

using store_json::Failure;
using store_json::Fields;
using store_json::Json;
using store_json::Layout;
using store_json::Writer;
using workspace_backup::Content;

constexpr std::string_view kRecords = "\"records\":[";

std::string_view trimmed(std::string_view text) {
    const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; };
    while (!text.empty() && blank(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && blank(text.back()))
        text.remove_suffix(1);
    return text;
}

std::string damaged_record(std::string_view text) {
    Writer writer(Layout::one_line);
    writer.object();
    writer.key("tarebench");
    writer.whole(kFormat);
    writer.pair("kind", "damaged");
    writer.pair("text", text);
    return writer.finish();
}

std::string kind_of(const Json& record) {
    if (!record.is_object()) return "";
    const auto found = record.find("kind");
    const auto* kind = found == record.end() ? nullptr : found->get_ptr<const std::string*>();
    return kind ? *kind : "";
}

// One record of the list; what cannot be read stays as the text it is.
void take(Content& content, std::string_view text) {
    const result::Result<Json> record = store_json::parse(text);
    const std::string kind = record ? kind_of(*record) : "";
    if (kind == "kept") {
        // The file may have been in any hands since it was saved: its recipes are a stranger's.
        if (auto kept = read_kept(text); kept && workspace::checked(kept->recipe))
            return content.recipes.push_back(std::move(kept).value());
    } else if (kind == "ingredient") {
        if (auto own = read_kept_own(text); own && !workspace::fault_of_own(own->ingredient, ""))
            return content.own.push_back(std::move(own).value());
    } else if (is_filed(kind)) {
        if (auto filed = read_filed(text); filed && !workspace::fault_of(*filed))
            return content.filed.push_back(std::move(filed).value());
    } else if (kind == "weigh_out") {
        if (auto weighing = read_weigh_out(text); weighing && workspace::checked(weighing->recipe))
            return content.weighing.push_back(std::move(weighing).value());
    } else if (kind == "settings") {
        if (auto device = read_settings(text)) {
            content.settings = std::move(device.value().settings);
            return;
        }
    } else if (kind == "damaged") {
        Failure failure;
        const auto found = record->find("text");
        if (found != record->end()) {
            std::string kept_aside = store_json::text_of(*found, "text", failure);
            if (!failure.failed()) return content.damaged.push_back(std::move(kept_aside));
        }
    }
    content.damaged.emplace_back(text);
}

result::Result<Content> without_records(const Json& tree) {
    const result::Result<Json> document =
        store_migrations::lifted(tree, "backup", "", store_migrations::steps());
    if (!document) return document.error();
    Failure failure;
    Fields fields(*document, "", failure);
    Content content;
    content.made = fields.text("made");
    fields.need("records");
    fields.list("records");
    if (failure.failed()) return *failure.error;
    return content;
}

// A file that is no whole JSON any more, or too long to be read as one: line by line, as it was written.
result::Result<Content> read_lines(std::string_view text, const result::Error& otherwise) {
    const std::size_t list = text.find(kRecords);
    if (list == std::string_view::npos) return otherwise;
    const std::size_t begin = list + kRecords.size();
    const auto tree = store_json::parse(std::string(text.substr(0, begin)) + "]}");
    if (!tree) return otherwise;
    result::Result<Content> content = without_records(*tree);
    if (!content) return content;
    text.remove_prefix(begin);
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string_view line = trimmed(text.substr(0, end));
        text.remove_prefix(std::min(text.size(), end + 1));
        if (!line.empty() && line.back() == ',') line.remove_suffix(1);
        if (line.empty() || line == "]" || line == "]}" || line == "}") continue;
        take(content.value(), line);
    }
    return content;
}

result::Result<Content> read_rescued(const Json& tree) {
    Failure failure;
    Fields fields(tree, "", failure);
    if (const auto version = fields.whole("tarebench_records"); version && *version > 1)
        return {result::Code::version_newer, "tarebench_records", std::to_string(*version)};
    fields.need("records");
    const std::map<std::string, std::string> records = fields.texts("records");
    if (failure.failed()) return *failure.error;

    Content content;
    std::map<std::string, Slots> slots;  // key without its slot -> texts
    for (const auto& [key, text] : records) {
        const bool slot = key.size() > 2 && (key.compare(key.size() - 2, 2, ".a") == 0 ||
                                             key.compare(key.size() - 2, 2, ".b") == 0);
        if (slot) {
            Slots& found = slots[key.substr(0, key.size() - 2)];
            (key.back() == 'a' ? found.a : found.b) = text;
        } else if (key.find(":aside:") != std::string::npos) {
            content.damaged.push_back(text);
        }
    }
    for (const auto& [base, found] : slots) {
        Chosen chosen = choose(found);
        for (std::string& text : chosen.damaged)
            content.damaged.push_back(std::move(text));
        if (chosen.record) take(content, chosen.record->json);
    }
    return content;
}

}  // namespace

bool is_backup(std::string_view text) {
    text = trimmed(text);
    if (text.empty() || text.front() != '{') return false;
    // Within a text, quotation marks are escaped: this can only be a key.
    if (text.find("\"tarebench_records\"") != std::string_view::npos) return true;
    constexpr std::size_t kHeading = 300;
    text = text.substr(0, kHeading);
    constexpr std::string_view kKind = "\"kind\"", kBackup = "\"backup\"";
    const std::size_t kind = text.find(kKind);
    if (kind == std::string_view::npos) return false;
    std::string_view after = trimmed(text.substr(kind + kKind.size()));
    if (after.empty() || after.front() != ':') return false;
    return trimmed(after.substr(1)).substr(0, kBackup.size()) == kBackup;
}

std::string write_backup(const workspace::Workspace& workspace, const std::vector<std::string>& damaged,
                         std::string_view made) {
    Writer head(Layout::one_line);
    head.object();
    head.key("tarebench");
    head.whole(kFormat);
    head.pair("kind", "backup");
    head.pair("made", made);
    std::string out = head.finish();
    out.pop_back();  // the object goes on
    out += "," + std::string(kRecords);
    bool first = true;
    const auto add = [&](const std::string& record) {
        out += (first ? "\n" : ",\n") + record;
        first = false;
    };
    for (const workspace::Kept& kept : workspace.recipes)
        add(write_kept(kept));
    for (const workspace::KeptOwn& own : workspace.own)
        add(write_kept_own(own));
    for (const workspace::Filed& filed : workspace.filed)
        add(write_filed(filed));
    for (const workspace::KeptWeighOut& weighing : workspace.weighing)
        add(write_weigh_out(weighing));
    add(write_settings(workspace.settings, ""));
    for (const std::string& text : damaged)
        add(damaged_record(text));
    return out + "\n]}\n";
}

result::Result<Content> read_backup(std::string_view json) {
    const result::Result<Json> tree = store_json::parse(json);
    if (!tree) return read_lines(json, tree.error());
    if (tree->is_object() && tree->contains("tarebench_records")) return read_rescued(*tree);
    result::Result<Content> content = without_records(*tree);
    if (!content) return content;
    for (const Json& record : *tree->find("records"))
        take(content.value(), record.dump(-1, ' ', false, Json::error_handler_t::replace));
    return content;
}

}  // namespace store
