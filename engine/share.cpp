// The outside of a link: letters, version byte and checksum, and telling what is wrong with one that cannot
// be read. Cut short or altered? The checksum fails either way. The body is one CBOR array, so a strict
// beginning of a link always runs out of bytes before the array is full, and that is called truncated. It
// holds as far as the letters that are left are sound: a link both cut and altered may be called either. An
// altered length inside the body can run out as well and is then called truncated, though every letter is
// there.
#include "share.h"

#include "base64url.h"
#include "cbor.h"
#include "checksum.h"
#include "share_body.h"

namespace share {
namespace {

constexpr std::size_t kChecksumBytes = 4;
constexpr std::size_t kMostAddress = 4096;    // what may stand before '#'
constexpr std::size_t kMostPlainBytes = 700;  // from here on a shorter link is worth more than an older page
constexpr unsigned kLargestVersion = 15;      // later ones keep below it, and to an array and the checksum

std::string with_checksum(std::string bytes) {
    const std::uint32_t sum = checksum::crc32(bytes);
    for (int shift = 24; shift >= 0; shift -= 8)
        bytes += static_cast<char>((sum >> shift) & 0xFFu);
    return bytes;
}

enum class Reach { complete, runs_out, broken };

// Whether `bytes` are exactly one CBOR item of the kinds in use (packed texts: from version 2), looking at
// lengths alone.
Reach extent_of(std::string_view bytes, bool packed) {
    std::uint64_t pending = 1;
    std::size_t at = 0;
    while (pending > 0) {
        if (at >= bytes.size()) return Reach::runs_out;
        const unsigned first = static_cast<unsigned char>(bytes[at++]);
        const unsigned kind = first >> 5, info = first & 31u;
        if ((kind != 0 && kind != 3 && kind != 4 && !(packed && kind == 2)) || info > 27)
            return Reach::broken;
        std::uint64_t value = info;
        if (info >= 24) {
            value = 0;
            for (std::size_t width = std::size_t{1} << (info - 24); width > 0; --width) {
                if (at >= bytes.size()) return Reach::runs_out;
                value = (value << 8) | static_cast<unsigned char>(bytes[at++]);
            }
        }
        --pending;
        if (kind != 0 && value > bytes.size() - at) return Reach::runs_out;
        if (kind == 2 || kind == 3) at += static_cast<std::size_t>(value);
        if (kind == 4) pending += value;
    }
    return at == bytes.size() ? Reach::complete : Reach::broken;
}

bool is_space(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && is_space(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && is_space(text.back()))
        text.remove_suffix(1);
    return text;
}

// The version byte, then the head of an array: what every version begins with.
bool begins_like_ours(std::string_view bytes) {
    const auto byte = [&](std::size_t at) { return static_cast<unsigned char>(bytes[at]); };
    if (!bytes.empty() && (byte(0) == 0 || byte(0) > kLargestVersion)) return false;
    return bytes.size() < 2 || byte(1) >> 5 == 4;
}

// The bytes before the first letter that is none of ours.
std::string sound_beginning(std::string_view letters) {
    const std::size_t end =
        letters.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_");
    const result::Result<std::string> decoded = base64url::decode(letters.substr(0, end / 4 * 4));
    return decoded ? *decoded : "";
}

struct Bytes {
    std::string bytes;
    bool odd = false;    // one letter over: no byte ends there
    bool stray = false;  // bits in the last letter that belong to no byte
};

// As strict as base64url::decode, but keeps what can be read, so that the reason can be looked for in it.
result::Result<Bytes> bytes_of(std::string letters) {
    Bytes out;
    if (letters.size() % 4 == 1) {
        letters.pop_back();
        out.odd = true;
    }
    result::Result<std::string> decoded = base64url::decode(letters);
    if (!decoded && decoded.error().code == result::Code::link_not_canonical) {
        out.stray = true;
        const std::size_t missing = 4 - letters.size() % 4;
        letters.append(missing, 'A');
        decoded = base64url::decode(letters);
        if (decoded) decoded.value().resize(decoded->size() - missing);
    }
    if (!decoded) return decoded.error();
    out.bytes = std::move(decoded).value();
    return out;
}

// What is wrong with bytes whose checksum does not fit.
result::Code damage(std::string_view bytes) {
    const unsigned version = bytes.empty() ? 0 : static_cast<unsigned char>(bytes[0]);
    const bool ours = (version >= 1 && version <= kVersion) || begins_like_ours(bytes);
    if (bytes.size() <= 1 + kChecksumBytes) {
        return begins_like_ours(bytes) ? result::Code::link_truncated : result::Code::link_not_ours;
    }
    const Reach extent = extent_of(bytes.substr(1, bytes.size() - 1 - kChecksumBytes), version >= 2);
    if (!ours) return extent == Reach::complete ? result::Code::link_altered : result::Code::link_not_ours;
    return extent == Reach::runs_out ? result::Code::link_truncated : result::Code::link_altered;
}

// The fault of a part becomes one of links: what is inside could not have been written by this program.
result::Error content_fault(const result::Error& fault) {
    if (fault.code == result::Code::link_not_canonical || fault.code == result::Code::link_content ||
        fault.code == result::Code::link_newer)
        return fault;
    return {result::Code::link_content, fault.place, fault.detail};
}

}  // namespace

workspace::Recipe cut_to(Extent extent, workspace::Recipe recipe) {
    if (extent != Extent::all) recipe.notes.clear();
    if (extent == Extent::without_notes_and_steps) recipe.steps.clear();
    return recipe;
}

result::Result<std::string> write(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                                  Form form) {
    const result::Result<workspace::Recipe> checked = workspace::checked(recipe);
    if (!checked) return checked.error();
    const share_reference::References references = share_reference::references_of(*checked, shipped);
    unsigned char version = share_body::lowest_version(*checked);
    std::string body = share_body::encode(*checked, references, version);
    if (version < kVersion && (form == Form::shortest || body.size() > kMostPlainBytes)) {
        std::string packed = share_body::encode(*checked, references, kVersion);
        if (packed.size() < body.size()) version = kVersion, body = std::move(packed);
    }
    std::string link =
        "#" + base64url::encode(with_checksum(std::string(1, static_cast<char>(version)) + body));
    if (link.size() > kMostCharacters + 1)
        return {result::Code::link_too_long, "", std::to_string(link.size() - 1)};
    // A recipe that would not come back whole (a text that is not UTF-8, say) is refused here, not at a
    // friend's.
    const result::Result<workspace::Recipe> back = read(link, shipped);
    if (!back) return back.error();
    return link;
}

result::Result<workspace::Recipe> read(std::string_view link, const catalogue::Catalogue& shipped) {
    std::string_view letters = trimmed(link);
    if (letters.size() > kMostAddress + kMostCharacters) return {result::Code::link_too_long};
    const std::size_t hash = letters.find('#');
    if (hash != std::string_view::npos) letters.remove_prefix(hash + 1);
    if (letters.size() > kMostCharacters) return {result::Code::link_too_long};
    const bool address_alone = hash == std::string_view::npos && letters.find(':') != std::string_view::npos;
    if (letters.empty() || address_alone) return {result::Code::link_not_ours};

    const result::Result<Bytes> read = bytes_of(std::string(letters));
    if (!read) {
        const std::string beginning = sound_beginning(letters);
        if (beginning.empty() || !begins_like_ours(beginning)) return {result::Code::link_not_ours};
        return {result::Code::link_altered, read.error().place};
    }
    const std::string& bytes = read->bytes;
    const bool whole = bytes.size() > 1 + kChecksumBytes;
    if (!whole || with_checksum(bytes.substr(0, bytes.size() - kChecksumBytes)) != bytes)
        return {damage(bytes)};
    if (read->odd) return {result::Code::link_altered};
    if (read->stray) return {result::Code::link_not_canonical};

    const unsigned version = static_cast<unsigned char>(bytes[0]);
    if (version == 0 || version > kLargestVersion) return {result::Code::link_not_ours};
    if (version > kVersion) return {result::Code::link_newer, "", std::to_string(version)};
    const std::string_view body = std::string_view(bytes).substr(1, bytes.size() - 1 - kChecksumBytes);
    result::Result<share_body::Body> decoded =
        share_body::decode(body, static_cast<unsigned char>(version), shipped);
    if (!decoded) return content_fault(decoded.error());
    if (share_body::encode(decoded->recipe, decoded->references, static_cast<unsigned char>(version)) != body)
        return {result::Code::link_not_canonical};
    result::Result<workspace::Recipe> checked = workspace::checked(std::move(decoded.value().recipe));
    if (!checked) return content_fault(checked.error());
    return checked;
}

}  // namespace share
