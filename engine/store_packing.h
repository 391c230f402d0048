// How values are packed: one after another in CBOR, in one description of their fields that serves both
// directions. Only store_packed.cpp (the presets) and store_limits_packed.cpp (the book of limits) include
// this; each describes its own kinds in this namespace, so that lists and options of them are found.
#pragma once

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "catalogue.h"
#include "cbor.h"
#include "checksum.h"
#include "quantity.h"
#include "source.h"

namespace store_packing {

inline constexpr std::size_t kSumBytes = 4;

// Texts that come again and again (the key of a source, a document) may be written once and pointed at.
struct Out {
    cbor::Writer cbor;
    bool once = false;
    std::map<std::string, std::uint64_t> written = {};
};
struct In {
    cbor::Reader cbor;
    std::size_t most;  // nothing is longer than the whole
    bool once = false;
    std::vector<std::string> read = {};
    bool sound = true;  // no choice beyond its list
    bool failed() const { return !sound || cbor.failed(); }
};
template <class Way, class T>
using Of = std::conditional_t<std::is_same_v<Way, Out>, const T, T>;

// ---- kinds of value
// ------------------------------------------------------------------------------------------
template <class Way, class... Fields>
void all(Way& way, Fields&... fields) {
    (pack(way, fields), ...);
}

inline void pack(Out& out, const std::string& text) {
    if (out.once) {
        const auto [at, fresh] = out.written.try_emplace(text, out.written.size());
        out.cbor.integer(at->second);
        if (!fresh) return;
    }
    out.cbor.text(text);
}
inline void pack(In& in, std::string& text) {
    if (!in.once) {
        text = in.cbor.text(in.most);
        return;
    }
    const std::uint64_t place = in.cbor.integer();
    if (place == in.read.size()) in.read.push_back(in.cbor.text(in.most));
    if (place < in.read.size())
        text = in.read[static_cast<std::size_t>(place)];
    else
        in.sound = false;
}

inline void pack(Out& out, const std::uint32_t& number) {
    out.cbor.integer(number);
}
inline void pack(In& in, std::uint32_t& number) {
    number = static_cast<std::uint32_t>(in.cbor.integer());
}

inline void pack(Out& out, const bool& flag) {
    out.cbor.integer(flag ? 1 : 0);
}
inline void pack(In& in, bool& flag) {
    flag = in.cbor.integer() != 0;
}

// 0, -1, 1, -2, … as 0, 1, 2, 3, …: what is small stays short.
inline void pack(Out& out, const std::int64_t& figure) {
    const auto bits = static_cast<std::uint64_t>(figure);
    out.cbor.integer(figure < 0 ? ~(bits << 1) : bits << 1);
}
inline void pack(In& in, std::int64_t& figure) {
    const std::uint64_t folded = in.cbor.integer();
    figure = static_cast<std::int64_t>((folded & 1) != 0 ? ~(folded >> 1) : folded >> 1);
}

template <class Choice>
void choice(Out& out, const Choice& chosen, Choice) {
    out.cbor.integer(static_cast<std::uint64_t>(chosen));
}
template <class Choice>
void choice(In& in, Choice& chosen, Choice last) {
    const std::uint64_t place = in.cbor.integer();
    if (place <= static_cast<std::uint64_t>(last))
        chosen = static_cast<Choice>(place);
    else
        in.sound = false;
}

template <class Value>
void pack(Out& out, const std::optional<Value>& value) {
    out.cbor.array(value ? 1 : 0);
    if (value) pack(out, *value);
}
template <class Value>
void pack(In& in, std::optional<Value>& value) {
    if (in.cbor.array(1) == 1) pack(in, value.emplace());
}

template <class Value>
void pack(Out& out, const std::vector<Value>& list) {
    out.cbor.array(list.size());
    for (const Value& value : list)
        pack(out, value);
}
template <class Value>
void pack(In& in, std::vector<Value>& list) {
    std::uint64_t left = in.cbor.array(in.most);
    list.reserve(static_cast<std::size_t>(std::min<std::uint64_t>(left, 200)));  // most lists are shorter
    for (; left > 0 && !in.failed(); --left)
        pack(in, list.emplace_back());
}

template <class Value, class Less>
void pack(Out& out, const std::map<std::string, Value, Less>& table) {
    out.cbor.array(table.size());
    for (const auto& [key, value] : table)
        all(out, key, value);
}
template <class Value, class Less>
void pack(In& in, std::map<std::string, Value, Less>& table) {
    for (std::uint64_t left = in.cbor.array(in.most); left > 0 && !in.failed(); --left) {
        std::string key;
        pack(in, key);
        pack(in, table.try_emplace(table.end(), std::move(key))->second);  // they come sorted
    }
}

template <class Value>
void pack(Out& out, const source::Sourced<Value>& known) {
    all(out, known.value, known.source, known.standing);
}
template <class Value>
void pack(In& in, source::Sourced<Value>& known) {
    all(in, known.value, known.source, known.standing);
}

template <class Way>
void pack(Way& way, Of<Way, source::Standing>& standing) {
    choice(way, standing, source::Standing::estimate);
}
template <class Way>
void pack(Way& way, Of<Way, quantity::Percent>& percent) {
    pack(way, percent.grid);
}
template <class Way>
void pack(Way& way, Of<Way, quantity::Mass>& mass) {
    pack(way, mass.grid);
}

template <class Way>
void pack(Way& way, Of<Way, source::Entry>& one) {
    all(way, one.key, one.title, one.section, one.address, one.note, one.standing);
}

template <class Way>
void pack(Way& way, Of<Way, catalogue::Range>& one) {
    all(way, one.min, one.max);
}

template <class Way>
void pack(Way& way, Of<Way, catalogue::Content>& one) {
    all(way, one.min, one.typical, one.max);
}

inline std::string sum_of(std::string_view body) {
    const std::uint32_t sum = checksum::crc32(body);
    std::string bytes;
    for (int shift = 24; shift >= 0; shift -= 8)
        bytes += static_cast<char>(sum >> shift & 0xFFu);
    return bytes;
}

}  // namespace store_packing
