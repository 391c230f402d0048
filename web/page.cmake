# The page: the screens as wasm, and the packer that makes one file of it (tarebench.html) and the hosted
# folder (hosted/). Script text comes from shell/lib_*.js only, none stands inside C++.
list(FILTER web_sources EXCLUDE REGEX "/web/[^/]*_native\\.cpp$")
include(web/unpacker.cmake)
file(GLOB shell_libraries CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/shell/lib_*.js)
file(GLOB_RECURSE shell_files CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/shell/*)

add_executable(tarebench_page ${web_sources})
target_link_libraries(tarebench_page PRIVATE engine imgui fonts_data presets_data strict)
set_target_properties(tarebench_page PROPERTIES SUFFIX .js LINK_DEPENDS "${shell_libraries}")
target_link_options(tarebench_page PRIVATE
    -sMODULARIZE=1 -sEXPORT_NAME=createTarebench -sENVIRONMENT=web -sFILESYSTEM=0 -sDYNAMIC_EXECUTION=0
    -sMALLOC=emmalloc -sALLOW_MEMORY_GROWTH=1 -sTOTAL_STACK=1MB
    -sMIN_WEBGL_VERSION=1 -sMAX_WEBGL_VERSION=2 -sGL_SUPPORT_AUTOMATIC_ENABLE_EXTENSIONS=0
    -sEXPORTED_RUNTIME_METHODS=UTF8ToString)
if(NOT TAREBENCH_QUICK)
    # For size (-Oz) the linker would take a memset and memcpy that go byte by byte: drawing the letters at the start, a
    # quarter of it. With -Os it is those that go by words; the page is as large.
    target_link_options(tarebench_page PRIVATE -Os)
    # Functions of one caller go into it unless they are long: browsers compile what is called, as a whole. Those that
    # are little more than their own call go into every caller. Both leave something to tidy up.
    target_link_options(tarebench_page PRIVATE
        "-sBINARYEN_EXTRA_PASSES=--one-caller-inline-max-function-size=300,--always-inline-max-function-size=5,-Os")
    # What every line of every frame goes through: a frame takes a quarter less.
    set_source_files_properties(web/backend_web.cpp web/letters.cpp web/mirror.cpp web/picture.cpp web/text_lines.cpp web/widget_field.cpp web/widget_press.cpp
                                web/widget_text.cpp PROPERTIES COMPILE_OPTIONS -Os)
endif()
foreach(library IN LISTS shell_libraries)
    target_link_options(tarebench_page PRIVATE "SHELL:--js-library ${library}")
endforeach()

find_program(NODE NAMES node nodejs NO_CMAKE_FIND_ROOT_PATH)
if(NOT NODE)
    message(FATAL_ERROR "node is missing; it is in the package nodejs")
endif()
add_custom_command(
    OUTPUT ${CMAKE_BINARY_DIR}/tarebench.html
    COMMAND ${NODE} ${CMAKE_SOURCE_DIR}/shell/pack.mjs --shell ${CMAKE_SOURCE_DIR}/shell
            --js $<TARGET_FILE:tarebench_page> --unpacker $<TARGET_FILE:unpacker> --out ${CMAKE_BINARY_DIR} $<$<BOOL:${TAREBENCH_QUICK}>:--quick;yes>
    COMMAND_EXPAND_LISTS
    DEPENDS tarebench_page unpacker ${shell_files}
    COMMENT "Packing the page" VERBATIM)
add_custom_target(page ALL DEPENDS ${CMAKE_BINARY_DIR}/tarebench.html)
