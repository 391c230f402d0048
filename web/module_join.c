// A wasm module whose code shell/pack_split.mjs took apart, put together again. Of instructions it knows only what numbers
// they have with them; whether they are any good is the browser's to say when it compiles them.
#include <stddef.h>
#include <stdint.h>
#include <string.h>

enum { kBefore, kRest, kFunctions, kLocals, kConstants, kOffsets, kBehind, kParts };
enum { kMostSize = 5 };      // bytes of a number of 32 bits
enum { kMostLocals = 4096 };  // of a function, as in shell/pack_split.mjs

typedef struct {
    const unsigned char *at, *end;
} Row;
static Row rows[kParts];
static unsigned char *out;
static uint16_t lately[kMostLocals];  // locals, the one that was used last first
static size_t stirred = kMostLocals;   // how many of them are not in their first order

// All of a body goes through these; what they move on stands in the caller's own variables.
#define QUICK static inline __attribute__((always_inline))
QUICK void bytes(const unsigned char **from, unsigned char **to, size_t count) {
    memcpy(*to, *from, count);
    *to += count;
    *from += count;
}
QUICK size_t number(const unsigned char **from, unsigned char **to) {
    size_t value = 0;
    for (int shift = 0;; shift += 7) {
        const unsigned char next = *(*to)++ = *(*from)++;
        value |= (size_t)(next & 127) << (shift & 31);
        if (!(next & 128)) return value;
    }
}
QUICK unsigned char *written(unsigned char *to, size_t value) {
    for (; value > 127; value >>= 7) *to++ = (value & 127) | 128;
    *to++ = value;
    return to;
}
QUICK void local(const unsigned char **from, unsigned char **to) {
    unsigned char *const place = *to;
    const size_t rank = number(from, to) % kMostLocals;
    const uint16_t it = lately[rank];
    for (size_t i = rank; i > 0; --i) lately[i] = lately[i - 1];
    lately[0] = it;
    if (stirred <= rank) stirred = rank + 1;
    *to = written(place, it);
}

// What to: where the body goes. Where it ended.
static unsigned char *body(unsigned char *to) {
    const unsigned char *rest = rows[kRest].at, *functions = rows[kFunctions].at, *locals = rows[kLocals].at,
                        *constants = rows[kConstants].at, *offsets = rows[kOffsets].at;
    for (size_t i = 0; i < stirred; ++i) lately[i] = i;
    stirred = 0;
    for (size_t kinds = number(&rest, &to); kinds > 0; --kinds) {
        number(&rest, &to);
        bytes(&rest, &to, 1);
    }
    for (int depth = 1; depth > 0 && rest < rows[kRest].end;) {
        const unsigned char what = *to++ = *rest++;
        size_t numbers = 0;  // that come with it in the same row
        switch (what) {
            case 0x20: case 0x21: case 0x22: local(&locals, &to); break;
            case 0x10: case 0xd2: number(&functions, &to); break;
            case 0x41: number(&constants, &to); break;
            case 0x02: case 0x03: case 0x04: ++depth; numbers = 1; break;
            case 0x0b: --depth; break;
            case 0x0c: case 0x0d: case 0x23: case 0x24: case 0x25: case 0x26: case 0x42: numbers = 1; break;
            case 0x0e: numbers = number(&rest, &to) + 1; break;
            case 0x11: numbers = 2; break;
            case 0x1c: numbers = number(&rest, &to); break;
            case 0x3f: case 0x40: case 0xd0: bytes(&rest, &to, 1); break;
            case 0x43: bytes(&rest, &to, 4); break;
            case 0x44: bytes(&rest, &to, 8); break;
            case 0xfc: {
                const size_t more = number(&rest, &to);
                numbers = more == 8 || more == 10 || more == 12 || more == 14 ? 2 : more > 7 ? 1 : 0;
                break;
            }
            default:
                if (what >= 0x28 && what <= 0x3e) {
                    number(&rest, &to);
                    number(&offsets, &to);
                }
        }
        while (numbers-- > 0) number(&rest, &to);
    }
    rows[kRest].at = rest;
    rows[kFunctions].at = functions;
    rows[kLocals].at = locals;
    rows[kConstants].at = constants;
    rows[kOffsets].at = offsets;
    return to;
}

static unsigned char *module;
static size_t module_size;
static int32_t bodies;  // that are still to come

// parts, which join() brings into module of this size. 0 if they are none.
__attribute__((export_name("begin_join"))) int begin_join(unsigned char *to, size_t size, const unsigned char *parts, size_t parts_size) {
    uint32_t head[kParts + 1];
    if (parts_size < sizeof head) return 0;
    memcpy(head, parts, sizeof head);
    const unsigned char *next = parts + sizeof head;
    for (int part = 0; part < kParts; ++part) {
        if (head[part + 1] > (size_t)(parts + parts_size - next)) return 0;
        rows[part].at = next;
        rows[part].end = next += head[part + 1];
    }
    module = out = to;
    module_size = size;
    bodies = head[0];
    bytes(&rows[kBefore].at, &out, head[kBefore + 1]);
    return 1;
}

static int ended(void) {
    bytes(&rows[kBehind].at, &out, rows[kBehind].end - rows[kBehind].at);
    for (int part = 0; part < kParts; ++part)
        if (rows[part].at != rows[part].end) return 0;
    return (size_t)(out - module) == module_size;
}

// Writes so many function bodies, and what stands behind them after the last one. How many are still to come, 0 when the
// module is whole; -1 if the parts do not fit one another. A damaged one may end in a fault of this module's own memory.
__attribute__((export_name("join"))) int join(int count) {
    for (; bodies > 0 && count > 0; --bodies, --count) {
        unsigned char *const behind = out + kMostSize;  // of its own size, which is not known yet
        const size_t length = body(behind) - behind;
        out = written(out, length);
        memmove(out, behind, length);
        out += length;
        if ((size_t)(out - module) > module_size) return -1;
    }
    return bodies > 0 ? bodies : ended() ? 0 : -1;
}
