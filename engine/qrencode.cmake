# qrencode 4.1.1 as the target `qrencode`, from Debian's source package: its C sources without threads and without the program
# that writes pictures, compiled into both builds. Under the LGPL 2.1 or later: see README.
# -DQRENCODE_SOURCE_DIR=folder takes sources from there (another version, or a changed one) and fetches nothing.
include(${CMAKE_SOURCE_DIR}/engine/debian_source.cmake)
debian_source(qrencode_dir "qrencode 4.1.1" qrencode=4.1.1-2 qrencode_4.1.1.orig.tar.bz2
              e455d9732f8041cf5b9c388e345a641fd15707860f928e94507b1961256a6923 qrencode.c QRENCODE_SOURCE_DIR)

set(qrencode_sources)
foreach(name qrencode qrinput bitstream qrspec rsecc split mask mqrspec mmask)
    list(APPEND qrencode_sources ${qrencode_dir}/${name}.c)
endforeach()
add_library(qrencode STATIC ${qrencode_sources})
set_target_properties(qrencode PROPERTIES UNITY_BUILD OFF)
target_include_directories(qrencode SYSTEM PUBLIC ${qrencode_dir})
# What its own build would write into config.h.
target_compile_definitions(qrencode PRIVATE STATIC_IN_RELEASE=static HAVE_STRDUP=1 MAJOR_VERSION=4 MINOR_VERSION=1 MICRO_VERSION=1
                                            VERSION="4.1.1" NDEBUG)
