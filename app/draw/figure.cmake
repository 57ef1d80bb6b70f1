# Drawing figures: used by the card, and by the program for those who write drills.
find_package(PkgConfig REQUIRED)
find_package(CLI11 REQUIRED)
if(NOT TARGET PkgConfig::CAIRO)
  pkg_check_modules(CAIRO REQUIRED IMPORTED_TARGET cairo)
endif()
lanework_part(figure_drawing SOURCES figure_drawing.cpp figure_hull.cpp figure_outline.cpp figure_props.cpp USES base figure)
target_link_libraries(lanework_figure_drawing PUBLIC PkgConfig::CAIRO)

add_executable(lanework_figures figure_sheet.cpp)
target_link_libraries(lanework_figures PRIVATE lanework_figure_drawing CLI11::CLI11)
