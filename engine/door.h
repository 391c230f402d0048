// The command line: `tarebench VERB [FILE or -]` reads JSON, prints JSON, exit 0; bad input: exit 2 and one
// line "place: what is wrong" on stderr. Verbs are pure functions from text to text, one file each; main is
// in door.cpp.
#pragma once

#include <string>
#include <string_view>

#include "store.h"

namespace door {

struct Answer {
    int exit_code = 0;
    std::string out, err;
};

inline constexpr std::size_t kMostInputBytes = 5'000'000;

// `limits`: the packed book of limits, unpacked only by the verbs that ask for it; empty: what needs it is
// listed as not made.
Answer run(std::string_view verb, std::string_view input, const store::Presets& presets,
           std::string_view limits = {});

Answer batch(std::string_view input, const store::Presets& presets);
Answer blend(std::string_view input, const store::Presets& presets);
Answer card(std::string_view input, const store::Presets& presets, std::string_view limits);
Answer check(std::string_view input, const store::Presets& presets, std::string_view limits);
Answer cost(std::string_view input, const store::Presets& presets);
Answer handout(std::string_view input, const store::Presets& presets, std::string_view limits);
Answer label(std::string_view input, const store::Presets& presets, std::string_view limits);
Answer labels(std::string_view input, const store::Presets& presets, std::string_view limits);
Answer link(std::string_view input, const store::Presets& presets);
Answer lots(std::string_view input, const store::Presets& presets);
Answer open(std::string_view input, const store::Presets& presets);
Answer pack(std::string_view input, const store::Presets& presets);
Answer read(std::string_view input, const store::Presets& presets, std::string_view limits);
Answer sheet(std::string_view input, const store::Presets& presets);
Answer shopping(std::string_view input, const store::Presets& presets);
Answer swap(std::string_view input, const store::Presets& presets, std::string_view limits);
Answer weigh(std::string_view input, const store::Presets& presets, std::string_view limits);
Answer workshop(std::string_view input, const store::Presets& presets, std::string_view limits);

const words::Table& english(const store::Presets& presets);                // what a command line says
Answer refuse(const result::Error& error, const store::Presets& presets);  // exit 2, one line
Answer usage(const store::Presets& presets);                               // the same, naming the verbs
Answer unreadable(std::string_view file, const store::Presets& presets);   // the same, naming the file

}  // namespace door
