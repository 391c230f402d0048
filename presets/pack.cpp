// pack_presets FOLDER OUT FILE…: reads presets (FILE named relative to FOLDER, presets/) as strictly as
// anything is read and writes OUT/presets_data.h and .cpp, which hold them as store::unpack_presets reads
// them. Part of the build; a fault stops it, with its place. Runs natively, or under node where the page is
// built.
#include <cstdio>
#include <optional>
#include <string>
#include <vector>

#include "engine/store.h"
#include "engine/store_limits.h"

namespace {

std::optional<std::string> read_file(const std::string& name) {
    std::FILE* file = std::fopen(name.c_str(), "rb");
    if (file == nullptr) return std::nullopt;
    std::string text;
    char chunk[65536];
    while (const std::size_t got = std::fread(chunk, 1, sizeof chunk, file))
        text.append(chunk, got);
    std::fclose(file);
    return text;
}

bool write_file(const std::string& name, const std::string& text) {
    std::FILE* file = std::fopen(name.c_str(), "wb");
    if (file == nullptr) return false;
    const bool written = std::fwrite(text.data(), 1, text.size(), file) == text.size();
    return std::fclose(file) == 0 && written;
}

int stop(const std::string& why) {
    std::fprintf(stderr, "presets: %s\n", why.c_str());
    return 1;
}

int stop(const result::Error& error) {
    return stop(error.place + ": " + std::string(words::code_name(error.code)) + " " + error.detail);
}

const char* const kHeader = R"(// Generated from presets/ by presets/pack.cpp.
#pragma once

#include <string_view>

namespace presets_data {

extern const std::string_view kPacked;  // for store::unpack_presets
extern const std::string_view kLimits;  // for store::unpack_limits, when a report is asked for

}  // namespace presets_data
)";

std::string bytes_of(const std::string& name, const std::string& bytes) {
    constexpr std::size_t kLine = 32;
    std::string text = "\nconstexpr char " + name + "Bytes[] =";
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        char octal[5];
        std::snprintf(octal, sizeof octal, "\\%03o",
                      static_cast<unsigned>(static_cast<unsigned char>(bytes[i])));
        if (i % kLine == 0) text += i == 0 ? "\n    \"" : "\"\n    \"";
        text += octal;
    }
    return text + "\";\nextern const std::string_view " + name + "{" + name + "Bytes, sizeof " + name +
           "Bytes - 1};\n";
}

std::string source_of(const std::string& packed, const std::string& book) {
    return "#include \"presets_data.h\"\n\nnamespace presets_data {\n" + bytes_of("kPacked", packed) +
           bytes_of("kLimits", book) + "\n}  // namespace presets_data\n";
}

}  // namespace

int main(int count, char** arguments) {
    if (count < 4) return stop("say the folder, where to write, and the files");
    const std::string folder = arguments[1], out = arguments[2];
    std::vector<std::string> texts;
    for (int i = 3; i < count; ++i) {
        std::optional<std::string> text = read_file(folder + "/" + arguments[i]);
        if (!text) return stop(std::string("cannot read ") + arguments[i]);
        texts.push_back(std::move(*text));
    }
    std::vector<store::File> files;
    for (std::size_t i = 0; i < texts.size(); ++i)
        files.emplace_back(arguments[i + 3], texts[i]);

    const auto presets = store::read_presets(files);
    if (!presets) return stop(presets.error());
    const auto book = store::read_limits(files, presets->catalogue);
    if (!book) return stop(book.error());
    const std::string packed = store::pack_presets(*presets);
    const auto unpacked = store::unpack_presets(packed);
    if (!unpacked || !(*unpacked == *presets))
        return stop("something of them is not packed: a field is missing in engine/store_packed.cpp");
    const std::string packed_book = store::pack_limits(*book);
    const auto unpacked_book = store::unpack_limits(packed_book);
    if (!unpacked_book || !(*unpacked_book == *book))
        return stop(
            "something of the limits is not packed: a field is missing in engine/store_limits_packed.cpp");
    if (!write_file(out + "/presets_data.h", kHeader) ||
        !write_file(out + "/presets_data.cpp", source_of(packed, packed_book)))
        return stop("cannot write to " + out);
    return 0;
}
