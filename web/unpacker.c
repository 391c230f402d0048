// The packed program's unpacker, a wasm module of its own with which the page starts (shell/boot.js); what it unpacks was
// packed by xz (shell/pack.mjs). Leans on the LZMA SDK's decoder alone. Memory is given out and never taken back: it goes
// with the module.
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

// packed: five bytes of properties, then the raw stream. How many bytes of whole were written, at most size; 0 if the
// stream is damaged.
__attribute__((export_name("unpack"))) size_t unpack(unsigned char *whole, size_t size, const unsigned char *packed, size_t packed_size) {
    const ISzAlloc memory = {alloc, leave};
    SizeT written = size;
    SizeT read = packed_size - LZMA_PROPS_SIZE;
    ELzmaStatus status;
    return LzmaDecode(whole, &written, packed + LZMA_PROPS_SIZE, &read, packed, LZMA_PROPS_SIZE, LZMA_FINISH_ANY, &status, &memory) == SZ_OK
               ? written
               : 0;
}
