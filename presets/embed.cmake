# cmake -DROOT=presets -DOUT=folder -P embed.cmake: writes presets_data.h and .cpp, every preset file as text.
# Stops at a file that is not JSON, naming it. Line breaks and indents go (a JSON string cannot hold a raw line
# break, so none is inside a string); what the files say is for the engine's loader to judge.
file(GLOB_RECURSE files RELATIVE ${ROOT} ${ROOT}/*.json)
list(FILTER files EXCLUDE REGEX "^schema/")
list(SORT files)

set(texts "")
set(table "")
set(count 0)
foreach(name IN LISTS files)
    file(READ ${ROOT}/${name} text)
    string(JSON kind ERROR_VARIABLE problem TYPE "${text}")
    if(problem)
        message(FATAL_ERROR "presets/${name} is not JSON: ${problem}")
    endif()
    if(text MATCHES "\\)json\"")
        message(FATAL_ERROR "presets/${name} holds the characters )json\" that end a packed text")
    endif()
    string(REGEX REPLACE "[\r\n]+[ \t]*" "" text "${text}")
    string(APPEND texts "constexpr char kText${count}[] = R\"json(${text})json\";\n")
    string(APPEND table "    {\"${name}\", kText${count}, sizeof kText${count} - 1},\n")
    math(EXPR count "${count} + 1")
endforeach()
if(count EQUAL 0)
    set(table "    {\"\", \"\", 0},\n")
endif()

file(WRITE ${OUT}/presets_data.h
"// Generated from presets/ by embed.cmake: every file as text, named relative to presets/, sorted by name.
#pragma once

namespace presets_data {

struct File {
    const char* name;
    const char* text;
    unsigned long size;
};

extern const File kFiles[];
extern const unsigned long kCount;

}  // namespace presets_data
")
file(WRITE ${OUT}/presets_data.cpp
"#include \"presets_data.h\"

namespace presets_data {
namespace {
${texts}}  // namespace

extern const File kFiles[] = {
${table}};
extern const unsigned long kCount = ${count};

}  // namespace presets_data
")
