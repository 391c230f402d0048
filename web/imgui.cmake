# Dear ImGui 1.90.1 as the target `imgui`, from Debian's source package (Debian 12 packages an older one, and
# neither Debian packages one for wasm). -DIMGUI_SOURCE_DIR=folder takes sources from there and fetches nothing.
include(${CMAKE_SOURCE_DIR}/engine/debian_source.cmake)
debian_source(imgui_dir "Dear ImGui 1.90.1" imgui=1.90.1+ds-1 imgui_1.90.1+ds.orig.tar.xz
              ecce377df0f90b292f15dcbd83d438bddc162b2388c881132bde18c787572a1c imgui.cpp IMGUI_SOURCE_DIR)

set(imgui_sources ${imgui_dir}/imgui.cpp ${imgui_dir}/imgui_draw.cpp ${imgui_dir}/imgui_tables.cpp
                  ${imgui_dir}/imgui_widgets.cpp)
set(imgui_backend ${imgui_dir}/backends/imgui_impl_opengl3.cpp)  # the page compiles it in web/backend_web.cpp
add_library(imgui STATIC ${imgui_sources})
if(EMSCRIPTEN AND NOT TAREBENCH_QUICK)
    # Makes every frame and its triangles.
    set_source_files_properties(${imgui_dir}/imgui_draw.cpp ${imgui_dir}/imgui.cpp PROPERTIES COMPILE_OPTIONS -Os)
endif()
target_include_directories(imgui SYSTEM PUBLIC ${imgui_dir} ${imgui_dir}/backends)
# The hooks of the library's test engine are ours (web/): the mirror and the tests read drawn items from them.
target_compile_definitions(imgui PUBLIC IMGUI_DISABLE_DEMO_WINDOWS IMGUI_DISABLE_DEBUG_TOOLS
                                        IMGUI_DISABLE_OBSOLETE_FUNCTIONS IMGUI_DISABLE_FILE_FUNCTIONS
                                        IMGUI_ENABLE_TEST_ENGINE)
# Natively it would use instructions that wasm has not, at the price of a header that takes a fifth of the build.
target_compile_definitions(imgui PUBLIC IMGUI_DISABLE_SSE)
if(EMSCRIPTEN)
    target_compile_definitions(imgui PUBLIC IMGUI_USER_CONFIG="web/imgui_config.h")
    target_include_directories(imgui PUBLIC ${CMAKE_SOURCE_DIR})
    # It reads figures in a settings file only, and that is switched off: see web/imgui_format.cpp.
    target_compile_definitions(imgui PRIVATE sscanf=imgui_reads_nothing)
endif()
