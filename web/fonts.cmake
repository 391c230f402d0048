# Open Sans, regular and semibold, cut down to the signs the words use and packed as C++ arrays: `fonts_data`.
# Hinting goes (the page draws at the device's own ratio) and so do layout features (the screen library reads
# none). Figures are of equal width without any feature. Licence Apache-2.0, package fonts-open-sans.
# Signs the font does not have at all, to be drawn as shapes: arrows, ticks, U+2010 to U+2012, thirds.
set(font_signs
    U+0020-007E    # Latin
    U+00A0-017F    # Latin-1, Latin Extended-A
    U+0218-021B    # Romanian
    U+03BC         # mu
    U+2009 U+2013-2015 U+2018-201A U+201C-201E U+2020 U+2022 U+2026 U+2030 U+2032-2033 U+2039-203A
    U+2044 U+215B-215E                       # fraction stroke, eighths
    U+20AC U+2122                            # euro, trade mark
    U+2212 U+2248 U+2260 U+2264-2265)        # minus, about, not equal, at most, at least
list(JOIN font_signs "," font_signs)

find_program(PYFTSUBSET pyftsubset PATHS /usr/bin NO_CMAKE_FIND_ROOT_PATH)
find_path(OPEN_SANS_DIR OpenSans-Regular.ttf PATHS /usr/share/fonts/truetype/open-sans NO_CMAKE_FIND_ROOT_PATH)
if(NOT PYFTSUBSET)
    message(FATAL_ERROR "pyftsubset is missing; it is in the package fonttools")
endif()
if(NOT OPEN_SANS_DIR)
    message(FATAL_ERROR "OpenSans-Regular.ttf is missing; it is in the package fonts-open-sans")
endif()

set(fonts_dir ${CMAKE_BINARY_DIR}/fonts)
file(MAKE_DIRECTORY ${fonts_dir})
foreach(weight Regular Semibold)
    add_custom_command(
        OUTPUT ${fonts_dir}/${weight}.ttf
        COMMAND ${PYFTSUBSET} ${OPEN_SANS_DIR}/OpenSans-${weight}.ttf --unicodes=${font_signs} --no-hinting
                --layout-features= --notdef-outline --name-IDs= --drop-tables+=GSUB,GPOS,GDEF,kern,DSIG
                --output-file=${fonts_dir}/${weight}.ttf
        DEPENDS ${OPEN_SANS_DIR}/OpenSans-${weight}.ttf
        COMMENT "Subsetting Open Sans ${weight}" VERBATIM)
endforeach()
add_custom_command(
    OUTPUT ${fonts_dir}/fonts_data.cpp ${fonts_dir}/fonts_data.h
    COMMAND ${CMAKE_COMMAND} -DDIR=${fonts_dir} -P ${CMAKE_CURRENT_LIST_DIR}/fonts_embed.cmake
    DEPENDS ${fonts_dir}/Regular.ttf ${fonts_dir}/Semibold.ttf ${CMAKE_CURRENT_LIST_DIR}/fonts_embed.cmake
    COMMENT "Packing fonts" VERBATIM)
add_library(fonts_data STATIC ${fonts_dir}/fonts_data.cpp)
target_include_directories(fonts_data PUBLIC ${fonts_dir})
