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

static unsigned char byte(int part) { return *out++ = *rows[part].at++; }
static void bytes(int part, size_t count) {
    memcpy(out, rows[part].at, count);
    out += count;
    rows[part].at += count;
}
static size_t number(int part) {
    size_t value = 0;
    for (int shift = 0;; shift += 7) {
        const unsigned char next = byte(part);
        value |= (size_t)(next & 127) << (shift & 31);
        if (!(next & 128)) return value;
    }
}
static void numbers(int part, size_t count) {
    while (count-- > 0) number(part);
}

static void write(size_t value) {
    for (; value > 127; value >>= 7) *out++ = (value & 127) | 128;
    *out++ = value;
}

static void local(void) {
    unsigned char *const place = out;
    const size_t rank = number(kLocals) % kMostLocals;
    const uint16_t it = lately[rank];
    memmove(lately + 1, lately, rank * sizeof *lately);
    lately[0] = it;
    if (stirred <= rank) stirred = rank + 1;
    out = place;
    write(it);
}

static void body(void) {
    for (size_t i = 0; i < stirred; ++i) lately[i] = i;
    stirred = 0;
    for (size_t locals = number(kRest); locals > 0; --locals) {
        number(kRest);
        byte(kRest);
    }
    for (int depth = 1; depth > 0;) {
        if (rows[kRest].at >= rows[kRest].end) return;
        const unsigned char what = byte(kRest);
        if (what == 0x10 || what == 0xd2) number(kFunctions);
        else if (what >= 0x20 && what <= 0x22) local();
        else if (what == 0x41) number(kConstants);
        else if (what >= 0x28 && what <= 0x3e) {
            number(kRest);
            number(kOffsets);
        } else if (what >= 0x02 && what <= 0x04) {
            number(kRest);
            ++depth;
        } else if (what == 0x0b) --depth;
        else if (what == 0x0c || what == 0x0d || (what >= 0x23 && what <= 0x26) || what == 0x42) number(kRest);
        else if (what == 0x0e) numbers(kRest, number(kRest) + 1);
        else if (what == 0x11) numbers(kRest, 2);
        else if (what == 0x1c) numbers(kRest, number(kRest));
        else if (what == 0x3f || what == 0x40 || what == 0xd0) byte(kRest);
        else if (what == 0x43) bytes(kRest, 4);
        else if (what == 0x44) bytes(kRest, 8);
        else if (what == 0xfc) {
            const size_t more = number(kRest);
            numbers(kRest, more == 8 || more == 10 || more == 12 || more == 14 ? 2 : more > 7 ? 1 : 0);
        }
    }
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
    bytes(kBefore, head[kBefore + 1]);
    return 1;
}

static int ended(void) {
    bytes(kBehind, rows[kBehind].end - rows[kBehind].at);
    for (int part = 0; part < kParts; ++part)
        if (rows[part].at != rows[part].end) return 0;
    return (size_t)(out - module) == module_size;
}

// Writes so many function bodies, and what stands behind them after the last one. How many are still to come, 0 when the
// module is whole; -1 if the parts do not fit one another. A damaged one may end in a fault of this module's own memory.
__attribute__((export_name("join"))) int join(int count) {
    for (; bodies > 0 && count > 0; --bodies, --count) {
        unsigned char *const start = out;
        out += kMostSize;
        body();
        const size_t length = out - start - kMostSize;
        out = start;
        write(length);
        memmove(out, start + kMostSize, length);
        out += length;
        if ((size_t)(out - module) > module_size) return -1;
    }
    return bodies > 0 ? bodies : ended() ? 0 : -1;
}
