// main of the command line, natively and under node: picks the text, hands it to the verb, prints the answer.
// The verbs are in door_<verb>.cpp, so that tests call them without a process.
#include "door.h"

#include <cstdio>
#include <optional>

#include "presets_data.h"

namespace {

// Nothing when it cannot be read; one byte over the bound is enough for the verbs to refuse it.
std::optional<std::string> read_all(std::FILE* file) {
    std::string text;
    char chunk[65536];
    while (text.size() <= door::kMostInputBytes) {
        const std::size_t got = std::fread(chunk, 1, sizeof chunk, file);
        text.append(chunk, got);
        if (got < sizeof chunk) {
            if (std::ferror(file) != 0) return std::nullopt;
            break;
        }
    }
    return text;
}

std::optional<std::string> read_named(const char* name) {
    std::FILE* file = std::fopen(name, "rb");
    if (file == nullptr) return std::nullopt;
    std::optional<std::string> text = read_all(file);
    std::fclose(file);
    return text;
}

bool print(const std::string& text, std::FILE* file) {
    return std::fwrite(text.data(), 1, text.size(), file) == text.size() && std::fflush(file) == 0;
}

int give(const door::Answer& answer) {
    const bool printed = print(answer.out, stdout) && print(answer.err, stderr);
    return printed ? answer.exit_code : 1;
}

}  // namespace

int main(int count, char** arguments) {
    const result::Result<store::Presets> presets = store::unpack_presets(presets_data::kPacked);
    if (!presets) return give(door::refuse(presets.error(), {}));
    if (count < 2 || count > 3) return give(door::usage(*presets));
    const std::string_view name = count == 3 ? arguments[2] : "-";
    const std::optional<std::string> text = name == "-" ? read_all(stdin) : read_named(arguments[2]);
    if (!text) return give(door::unreadable(name, *presets));
    return give(door::run(arguments[1], *text, *presets, presets_data::kLimits));
}
