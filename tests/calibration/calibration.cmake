# Rooms made by chance and what is said of them. A part of a minute runs with the tests; the whole is
# the program plumule_calibration, built with -DPLUMULE_CALIBRATION=ON and run by calibration/run.sh.
file(GLOB calibration_sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/calibration/*.cpp
     ${CMAKE_CURRENT_SOURCE_DIR}/calibration/*.h)
list(FILTER calibration_sources EXCLUDE REGEX "_main\\.cpp$")
add_library(calibration_rooms STATIC EXCLUDE_FROM_ALL ${calibration_sources})
target_include_directories(calibration_rooms PUBLIC ${PROJECT_SOURCE_DIR})
target_compile_options(calibration_rooms PRIVATE -O2)
target_link_libraries(calibration_rooms PUBLIC plumule_review_comparison plumule_stats_verdict
                      plumule_stats_growth plumule_forecast plumule_order
                      plumule_stats_model Threads::Threads)

add_executable(test_calibration ${CMAKE_CURRENT_SOURCE_DIR}/calibration/short_main.cpp)
target_link_libraries(test_calibration PRIVATE calibration_rooms)
add_test(NAME calibration COMMAND test_calibration)
set_tests_properties(calibration PROPERTIES TIMEOUT 600)

if(PLUMULE_CALIBRATION)
  add_executable(plumule_calibration ${CMAKE_CURRENT_SOURCE_DIR}/calibration/whole_main.cpp)
  target_link_libraries(plumule_calibration PRIVATE calibration_rooms)
endif()
