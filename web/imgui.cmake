# Dear ImGui 1.90.1 as the target `imgui`, from Debian's source package (Debian 12 packages an older one, and
# neither Debian packages one for wasm). The download goes through apt with lists and cache of our own, so the
# machine's package sources stay as they are; the mirror is whichever the machine uses already.
# -DIMGUI_SOURCE_DIR=folder takes sources from there and fetches nothing.
set(imgui_version 1.90.1)
set(imgui_package imgui=1.90.1+ds-1)
set(imgui_archive imgui_1.90.1+ds.orig.tar.xz)
set(imgui_sha256 ecce377df0f90b292f15dcbd83d438bddc162b2388c881132bde18c787572a1c)

set(imgui_no_luck "Dear ImGui ${imgui_version} cannot be had")
set(imgui_advice "give a folder with its sources as -DIMGUI_SOURCE_DIR=, or build without screens: -DTAREBENCH_WEB=OFF")

function(fetch_imgui folder)
    find_program(APT_GET apt-get NO_CMAKE_FIND_ROOT_PATH)
    if(NOT APT_GET)
        message(FATAL_ERROR "${imgui_no_luck}: there is no apt-get here; ${imgui_advice}")
    endif()
    execute_process(COMMAND ${APT_GET} indextargets --format "$(REPO_URI) $(CODENAME)" "Created-By: Packages"
                                       "Origin: Debian" "Label: Debian" OUTPUT_VARIABLE targets ERROR_QUIET)
    string(REGEX MATCH "([^ \n]+) (bookworm|trixie|forky)\n" found "${targets}")
    if(NOT found)
        message(FATAL_ERROR "${imgui_no_luck}: apt-get knows no Debian mirror here (apt-get update?); ${imgui_advice}")
    endif()
    set(mirror ${CMAKE_MATCH_1})

    set(state ${folder}/apt)
    file(MAKE_DIRECTORY ${state}/lists/partial ${state}/cache/archives/partial)
    file(WRITE ${state}/sources.list
         "deb-src [signed-by=/usr/share/keyrings/debian-archive-keyring.gpg] ${mirror} trixie main\n")
    set(private -o Dir::Etc::SourceList=${state}/sources.list -o Dir::Etc::SourceParts=/dev/null
                -o Dir::State::Lists=${state}/lists -o Dir::Cache=${state}/cache -o APT::Sandbox::User=
                -o Acquire::Retries=3)
    message(STATUS "Fetching Dear ImGui ${imgui_version} (source package ${imgui_package})")
    foreach(step "update" "source;--download-only;${imgui_package}")
        execute_process(COMMAND ${APT_GET} -q ${private} ${step} WORKING_DIRECTORY ${folder}
                        RESULT_VARIABLE failed OUTPUT_VARIABLE said ERROR_VARIABLE said)
        if(failed)
            file(WRITE ${state}/said.txt "${said}")
            list(GET step 0 verb)
            message(FATAL_ERROR "${imgui_no_luck}: apt-get ${verb} failed, see ${state}/said.txt; ${imgui_advice}")
        endif()
    endforeach()
endfunction()

if(IMGUI_SOURCE_DIR)
    set(imgui_dir ${IMGUI_SOURCE_DIR})
else()
    set(imgui_dir ${TAREBENCH_CACHE}/imgui-${imgui_version})
    if(NOT EXISTS ${imgui_dir}/imgui.cpp)
        file(MAKE_DIRECTORY ${TAREBENCH_CACHE})
        if(NOT EXISTS ${TAREBENCH_CACHE}/${imgui_archive})
            fetch_imgui(${TAREBENCH_CACHE})
        endif()
        file(SHA256 ${TAREBENCH_CACHE}/${imgui_archive} sha256)
        if(NOT sha256 STREQUAL imgui_sha256)
            file(REMOVE ${TAREBENCH_CACHE}/${imgui_archive})
            message(FATAL_ERROR "${imgui_no_luck}: what came has another checksum than the one pinned; ${imgui_advice}")
        endif()
        # Into a folder of its own first, so that an interrupted run leaves nothing that looks complete.
        file(REMOVE_RECURSE ${TAREBENCH_CACHE}/unpacked)
        file(ARCHIVE_EXTRACT INPUT ${TAREBENCH_CACHE}/${imgui_archive} DESTINATION ${TAREBENCH_CACHE}/unpacked)
        file(GLOB inner LIST_DIRECTORIES true ${TAREBENCH_CACHE}/unpacked/*)
        file(REMOVE_RECURSE ${imgui_dir})
        file(RENAME ${inner} ${imgui_dir})
        file(REMOVE_RECURSE ${TAREBENCH_CACHE}/unpacked)
    endif()
endif()
if(NOT EXISTS ${imgui_dir}/imgui.cpp)
    message(FATAL_ERROR "${imgui_no_luck}: no imgui.cpp in ${imgui_dir}")
endif()

set(imgui_sources ${imgui_dir}/imgui.cpp ${imgui_dir}/imgui_draw.cpp ${imgui_dir}/imgui_tables.cpp
                  ${imgui_dir}/imgui_widgets.cpp)
set(imgui_backend ${imgui_dir}/backends/imgui_impl_opengl3.cpp)  # the page compiles it in web/backend_web.cpp
add_library(imgui STATIC ${imgui_sources})
if(EMSCRIPTEN AND NOT TAREBENCH_QUICK)
    # Makes the triangles of every frame.
    set_source_files_properties(${imgui_dir}/imgui_draw.cpp PROPERTIES COMPILE_OPTIONS -O2)
    set_source_files_properties(${imgui_dir}/imgui.cpp PROPERTIES COMPILE_OPTIONS -Os)
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
