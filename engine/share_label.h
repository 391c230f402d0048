// What a recipe says for its label, within a link: entry 7 of share_more.
// [flags, identity, identity in French, 1 + months or 0, 1 + months opened or 0, [colours], [nano],
//  [may contain], [warnings], [directions], panel: 0 or 1 + shape, height, width]
// Only share*.cpp include this.
#pragma once

#include "cbor.h"
#include "label_said.h"

namespace share_label {

void write(cbor::Writer& writer, const label::Said& said);
bool read(cbor::Reader& reader, label::Said& said);  // false when no recipe could have written it

}  // namespace share_label
