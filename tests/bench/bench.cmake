# Benchmarks: cmake -DPLUMULE_BENCH=ON -DCMAKE_BUILD_TYPE=Release, then build the target `bench`: it
# runs them and leaves bench.json in the build directory.
find_package(benchmark REQUIRED)
find_package(nlohmann_json REQUIRED)
find_package(Eigen3 REQUIRED NO_MODULE)

file(GLOB bench_sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/bench/*.cpp
     ${CMAKE_CURRENT_SOURCE_DIR}/bench/*.h)
add_executable(plumule_bench EXCLUDE_FROM_ALL ${bench_sources})
target_include_directories(plumule_bench PRIVATE ${PROJECT_SOURCE_DIR})
# The bare factorisation is compiled as the sums are.
target_compile_options(plumule_bench PRIVATE -O2)
target_link_libraries(plumule_bench PRIVATE plumule_journal Eigen3::Eigen benchmark::benchmark_main)
set_target_properties(plumule_bench PROPERTIES UNITY_BUILD OFF)

add_custom_target(bench
  COMMAND plumule_bench --benchmark_out=${CMAKE_BINARY_DIR}/bench.json
          --benchmark_out_format=json
  DEPENDS plumule_bench USES_TERMINAL VERBATIM)

# A life's work: rooms of many years, and what is done in them every day. See bench/run.sh.
file(GLOB life_sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/bench/life/*.cpp
     ${CMAKE_CURRENT_SOURCE_DIR}/bench/life/*.h)
add_executable(plumule_life_bench EXCLUDE_FROM_ALL ${life_sources})
target_include_directories(plumule_life_bench PRIVATE ${PROJECT_SOURCE_DIR})
target_link_libraries(plumule_life_bench PRIVATE plumule_journal nlohmann_json::nlohmann_json)
set_target_properties(plumule_life_bench PROPERTIES UNITY_BUILD OFF)

# The window on those rooms: as the program is built everyday, without PLUMULE_CORE_ONLY.
if(NOT PLUMULE_CORE_ONLY)
  file(GLOB window_sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/bench/window/*.cpp
       ${CMAKE_CURRENT_SOURCE_DIR}/bench/window/*.h)
  add_executable(plumule_window_bench EXCLUDE_FROM_ALL ${window_sources}
                 ${CMAKE_CURRENT_SOURCE_DIR}/bench/life/race.cpp
                 ${CMAKE_CURRENT_SOURCE_DIR}/bench/life/tables.cpp)
  target_include_directories(plumule_window_bench PRIVATE ${PROJECT_SOURCE_DIR})
  target_compile_definitions(plumule_window_bench PRIVATE
                             PLUMULE_SAMPLE_DATA="${PROJECT_SOURCE_DIR}/sample-data")
  target_link_libraries(plumule_window_bench PRIVATE plumule_ui_window plumule_resources Qt6::Test
                        GTest::gtest nlohmann_json::nlohmann_json)
  set_target_properties(plumule_window_bench PROPERTIES UNITY_BUILD OFF)
endif()
