# How core/ is compiled to WebAssembly. Header-only libraries are linked into a folder of their own: with all
# of the system's headers in sight, those of the host would shadow emscripten's.
file(MAKE_DIRECTORY ${PROJECT_BINARY_DIR}/include)
foreach(library nlohmann toml++ boost)
  find_path(LANEWORK_${library}_HEADERS ${library} PATHS /usr/include /usr/local/include NO_DEFAULT_PATH REQUIRED)
  file(CREATE_LINK ${LANEWORK_${library}_HEADERS}/${library} ${PROJECT_BINARY_DIR}/include/${library} SYMBOLIC)
endforeach()
include_directories(SYSTEM ${PROJECT_BINARY_DIR}/include)
add_compile_options(-msimd128 -fwasm-exceptions)
# A phone loads the module before anything else: compiled for size, linked for speed (as a compile option, since the
# linker would take -Os over its own -O3).
add_compile_options(-Os)
