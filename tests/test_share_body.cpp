// The inside of a link: content that no recipe could have, well packed as it may be, and the packing of
// figures.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/share.h"
#include "engine/share_figure.h"
#include "engine/words.h"
#include "sealed_link.h"
#include "support.h"

namespace test_share_body {

using result::Code;
using sealed_link::link_of;
using sealed_link::link_with;
using sealed_link::sealed;

namespace {

const catalogue::Catalogue& shelf() {
    static const catalogue::Catalogue made = support::shelf();
    return made;
}

Code refusal(std::string_view link) {
    const auto read = share::read(link, shelf());
    REQUIRE_FALSE(read.ok());
    return read.error().code;
}

}  // namespace

TEST_CASE("share_body: figures pack to one form and come back") {
    for (const auto& [grid, bytes] :
         {std::pair{0, 1}, {100, 1}, {10000, 1}, {50000, 2}, {2500000, 2}, {145000, 3}})
        CHECK([&, grid = grid] {
            cbor::Writer writer;
            writer.integer(share_figure::packed(grid));
            return writer.bytes().size();
        }() == static_cast<std::size_t>(bytes));
    for (const std::int64_t grid :
         {0LL, 1LL, 10LL, 99LL, 100LL, 1234567LL, 10'000'000'000LL, 1'000'000'000'000LL})
        CHECK(share_figure::unpacked(share_figure::packed(grid)) == grid);
    CHECK_FALSE(share_figure::unpacked(UINT64_MAX).has_value());
    for (const std::int64_t grid :
         {0LL, 10000LL, 750000LL, 625000LL, -1LL, -10000LL, -182500LL, 1'000'000'000'000LL})
        CHECK(share_figure::unpacked_temperature(share_figure::packed_temperature(grid)) == grid);
    CHECK_FALSE(share_figure::unpacked_temperature(UINT64_MAX).has_value());
    CHECK_FALSE(share_figure::unpacked_temperature(UINT64_MAX - 1).has_value());
}

TEST_CASE("share_body: hostile content is refused, well packed as it may be") {
    const auto batch_of = [](const std::function<void(cbor::Writer&)>& batch) {
        return link_with(5, [&](cbor::Writer& w) {
            w.array(0);
            batch(w);
        });
    };
    const auto phase_of = [](std::initializer_list<std::uint64_t> items) {
        const std::vector<std::uint64_t> held = items;
        return link_with(4, [held](cbor::Writer& w) {
            w.array(1);
            w.array(held.size());
            for (const std::uint64_t item : held)
                w.integer(item);
        });
    };
    const std::pair<const char*, std::string> kRows[] = {
        {"more items than a recipe has", link_with(13, [](cbor::Writer&) {})},
        {"a title of 100 bytes", link_of([](cbor::Writer& w) {
             w.array(3);
             w.text(std::string(100, 'x'));
             w.integer(1);
             w.integer(4);
         })},
        {"a title that is no text", link_of([](cbor::Writer& w) {
             w.array(3);
             w.integer(1);
             w.integer(1);
             w.integer(4);
         })},
        {"a title that is not UTF-8", sealed(std::string("\x01\x83\x61\xFF\x01\x04", 6))},
        {"a title longer than the link", sealed(std::string("\x01\x83\x78\x30\x61\x01\x04", 7))},
        {"a product number over 32 bits", link_of([](cbor::Writer& w) {
             w.array(3);
             w.text("");
             w.integer(UINT64_MAX);
             w.integer(4);
         })},
        {"a unit of 10^9 percent", link_of([](cbor::Writer& w) {
             w.array(3);
             w.text("");
             w.integer(1);
             w.integer(13);
         })},
        {"thirteen phases", link_with(4,
                                      [](cbor::Writer& w) {
                                          w.array(13);
                                          for (int i = 0; i < 13; ++i) {
                                              w.array(1);
                                              w.integer(0);
                                          }
                                      })},
        {"a phase with half a line", phase_of({0, 1})},
        {"a phase with an unknown head", phase_of({8})},
        {"a phase of 10^15 degrees", phase_of({1, 2'000'000'000'000'000})},
        {"a phase of 1000 degrees", phase_of({1, 2000})},
        {"a line of 101 %", phase_of({0, 1, 102})},
        {"a line of 2^64 %", phase_of({0, 1, UINT64_MAX})},
        {"two rest lines", phase_of({0, 1, 0, 2, 0})},
        {"an ingredient number over 32 bits", phase_of({0, UINT64_MAX, 11})},
        {"101 lines", link_with(4,
                                [](cbor::Writer& w) {
                                    w.array(2);
                                    for (int phase = 0; phase < 2; ++phase) {
                                        w.array(1 + 2 * 51);
                                        w.integer(0);
                                        for (int i = 0; i < 51; ++i) {
                                            w.integer(1);
                                            w.integer(1);
                                        }
                                    }
                                })},
        {"2^60 lines", sealed(std::string("\x01\x84\x60\x01\x04\x81\x9B\x10\0\0\0\0\0\0\0\0", 16))},
        {"a nameless line", link_with(4,
                                      [](cbor::Writer& w) {
                                          w.array(1);
                                          w.array(3);
                                          w.integer(0);
                                          w.text("");
                                          w.integer(11);
                                      })},
        {"an unknown amount", batch_of([](cbor::Writer& w) {
             w.array(1);
             w.integer(5);
         })},
        {"a batch of 10^12 t", batch_of([](cbor::Writer& w) {
             w.array(4);
             w.integer(1);
             w.integer(10);
             w.integer(0);
             w.integer(UINT64_MAX);
         })},
        {"a loss of 100 %", batch_of([](cbor::Writer& w) {
             w.array(3);
             w.integer(0);
             w.integer(10);
             w.integer(share_figure::packed(1'000'000) + 1);
         })},
        {"a division of nothing", batch_of([](cbor::Writer& w) {
             w.array(2);
             w.integer(0);
             w.integer(0);
         })},
        {"2^63 containers", batch_of([](cbor::Writer& w) {
             w.array(4);
             w.integer(2);
             w.integer(10);
             w.integer(0);
             w.array(1);
             w.array(2);
             w.integer(2);
             w.integer(UINT64_MAX / 2 + 1);
         })},
        {"a step of a phase that is not there", link_with(6,
                                                          [](cbor::Writer& w) {
                                                              w.array(0);
                                                              w.array(0);
                                                              w.array(1);
                                                              w.array(2);
                                                              w.text("Stir.");
                                                              w.integer(1);
                                                          })},
        {"the 30th of February", link_with(9,
                                           [](cbor::Writer& w) {
                                               for (int i = 0; i < 3; ++i)
                                                   w.array(0);
                                               w.text("");
                                               w.text("");
                                               w.integer(20260230);
                                           })},
        {"a lock on no line", link_with(11,
                                        [](cbor::Writer& w) {
                                            for (int i = 0; i < 3; ++i)
                                                w.array(0);
                                            w.text("");
                                            w.text("");
                                            w.integer(0);
                                            w.text("");
                                            w.array(1);
                                            w.array(2);
                                            w.integer(0);
                                            w.integer(1);
                                        })},
        {"an own ingredient of unknown standing", link_with(12,
                                                            [](cbor::Writer& w) {
                                                                for (int i = 0; i < 3; ++i)
                                                                    w.array(0);
                                                                w.text("");
                                                                w.text("");
                                                                w.integer(0);
                                                                w.text("");
                                                                w.array(0);
                                                                w.array(1);
                                                                w.array(5);
                                                                for (int i = 0; i < 4; ++i)
                                                                    w.text("x");
                                                                w.integer(9);
                                                            })},
    };
    for (const auto& [what, link] : kRows) {
        INFO("what: ", std::string(what));
        CHECK(words::code_name(refusal(link)) == "link_content");
    }
}

TEST_CASE("share_body: content that is refused tells its place") {
    const auto read = share::read(link_with(4,
                                            [](cbor::Writer& w) {
                                                w.array(1);
                                                w.array(5);
                                                for (const std::uint64_t item : {0, 1, 11, 2, 102})
                                                    w.integer(item);
                                            }),
                                  shelf());
    CHECK(read.error().place == "lines[1].percent");
}

}  // namespace test_share_body
