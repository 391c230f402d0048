# The target `unpacker`: unpacker.wasm, which unpacks the page's program (web/unpacker.c, web/module_join.c), with the decoder of the LZMA SDK
# 24.08 from Debian's source package. -DLZMA_SOURCE_DIR=folder takes sources from there and fetches nothing.
debian_source(lzma_dir "LZMA SDK 24.08" lzma=24.08+dfsg-2 lzma_24.08+dfsg.orig.tar.gz
              cdd888a2f444463b9aab3dda938738bd7585a68f38a8fbbf75a119570a0b9cd5 C/LzmaDec.c LZMA_SOURCE_DIR)

add_executable(unpacker ${CMAKE_SOURCE_DIR}/web/unpacker.c ${CMAKE_SOURCE_DIR}/web/module_join.c ${lzma_dir}/C/LzmaDec.c)
set_target_properties(unpacker PROPERTIES SUFFIX .wasm UNITY_BUILD OFF)
target_include_directories(unpacker SYSTEM PRIVATE ${lzma_dir}/C)
target_compile_definitions(unpacker PRIVATE Z7_LZMA_SIZE_OPT)  # a third smaller, and as fast
target_compile_options(unpacker PRIVATE -Oz -mbulk-memory)  # what moves whole stretches, browsers have since 2021
target_link_options(unpacker PRIVATE -Oz --no-entry -sALLOW_MEMORY_GROWTH=1 -sTOTAL_STACK=16KB -sINITIAL_MEMORY=128KB)
