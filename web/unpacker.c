// The packed program's unpacker, a wasm module of its own with which the page starts (shell/boot.js); what it unpacks was
// packed by xz (shell/pack.mjs). Leans on the LZMA SDK's decoder alone. Memory is given out and never taken back: it goes
// with the module. All that takes long is done in many short calls: browsers change over to the better code, which they make
// of a function meanwhile, when it is next called.
#include "LzmaDec.h"

extern unsigned char __heap_base;
static unsigned char *next = &__heap_base;
enum { kPage = 65536, kAligned = 16 };

// size bytes; null where the browser gives no more.
__attribute__((export_name("room"))) unsigned char *room(size_t size) {
    unsigned char *const place = next;
    next += (size + kAligned - 1) / kAligned * kAligned;
    const size_t wanted = ((size_t)next + kPage - 1) / kPage;
    const size_t had = __builtin_wasm_memory_size(0);
    if (wanted > had && __builtin_wasm_memory_grow(0, wanted - had) == (size_t)-1) return 0;
    return place;
}

static void *alloc(ISzAllocPtr self, size_t size) {
    (void)self;
    return room(size);
}
static void leave(ISzAllocPtr self, void *place) {
    (void)self;
    (void)place;
}

static CLzmaDec decoder;
static const unsigned char *at;  // what is read next
static size_t left;

// packed: five bytes of properties, then the raw stream, which unpack() brings into whole. 0 if it is none.
__attribute__((export_name("begin"))) int begin(unsigned char *whole, size_t size, const unsigned char *packed, size_t packed_size) {
    const ISzAlloc memory = {alloc, leave};
    LzmaDec_CONSTRUCT(&decoder);
    if (packed_size < LZMA_PROPS_SIZE || LzmaDec_AllocateProbs(&decoder, packed, LZMA_PROPS_SIZE, &memory) != SZ_OK) return 0;
    decoder.dic = whole;
    decoder.dicBufSize = size;
    at = packed + LZMA_PROPS_SIZE;
    left = packed_size - LZMA_PROPS_SIZE;
    LzmaDec_Init(&decoder);
    return 1;
}

// How many bytes of whole are written now, at most until; 0 if the stream is damaged.
__attribute__((export_name("unpack"))) size_t unpack(size_t until) {
    SizeT read = left;
    ELzmaStatus status;
    if (LzmaDec_DecodeToDic(&decoder, until, at, &read, LZMA_FINISH_ANY, &status) != SZ_OK) return 0;
    at += read;
    left -= read;
    return decoder.dicPos;
}
