# The engine of the page, by the preset "page" (emscripten): the program's own sources without its command line, compiled
# to WebAssembly. Read by CMakeLists.txt in place of the native packages; docs/page.md.

# Headers of packages that are headers only, by links: the system's folder itself holds another C library's.
set(links ${CMAKE_CURRENT_BINARY_DIR}/headers)
file(MAKE_DIRECTORY ${links})
foreach(link boost=/usr/include/boost fmt=/usr/include/fmt nlohmann=/usr/include/nlohmann stb=/usr/include/stb
             Eigen=/usr/include/eigen3/Eigen unsupported=/usr/include/eigen3/unsupported)
  string(REPLACE "=" ";" pair ${link})
  list(GET pair 0 name)
  list(GET pair 1 target)
  file(CREATE_LINK ${target} ${links}/${name} SYMBOLIC)
endforeach()
add_library(page_headers INTERFACE)
target_include_directories(page_headers SYSTEM INTERFACE ${links})
target_compile_definitions(page_headers INTERFACE FMT_HEADER_ONLY=1)
add_library(Eigen3::Eigen ALIAS page_headers)
add_library(nlohmann_json::nlohmann_json ALIAS page_headers)
set(FMT page_headers)
set(STB ${links})

# yaml-cpp has no package for this compiler: Debian's source of it, laid down by `./bootstrap page`.
set(YAML_CPP_BUILD_TESTS OFF)
set(YAML_CPP_BUILD_TOOLS OFF)
set(YAML_CPP_BUILD_CONTRIB OFF)
set(YAML_CPP_INSTALL OFF)
set(YAML_BUILD_SHARED_LIBS OFF)
add_subdirectory(${YAML_SOURCE} yaml-cpp EXCLUDE_FROM_ALL SYSTEM)
set(YAML yaml-cpp)

add_compile_options(-fwasm-exceptions)
add_link_options(-fwasm-exceptions)
# Warnings that hold of any processor stay errors; here sizes have 32 bits.
target_compile_options(gentlest_flags INTERFACE -Wno-sign-conversion -Wno-shorten-64-to-32)

# Small where speed is not felt: a person waits for the search, the table of chances and what dries, not for words.
function(gentlest_small_where_it_does_not_matter)
  foreach(library gentlest_report gentlest_cli gentlest_io)
    target_compile_options(${library} PRIVATE -Oz)
  endforeach()
  file(GLOB not_waited_for CONFIGURE_DEPENDS src/core/*/*.cpp)
  list(FILTER not_waited_for EXCLUDE REGEX
       "core/(base|space|vial|search|ladder|learning|liquids|answers|plan|safety)/|core/catalogue/activity")
  set_source_files_properties(${not_waited_for} PROPERTIES COMPILE_OPTIONS -Oz)
endfunction()
