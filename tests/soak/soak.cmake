# Disasters: killed programs, failing disks, power cuts, rotten files, odd clocks, long runs. With the
# other tests a part of a minute; soak/run.sh tries many times as much and prints the figures.
file(GLOB soak_sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/soak/*.cpp
     ${CMAKE_CURRENT_SOURCE_DIR}/soak/*.h)
add_executable(test_soak ${soak_sources}
               ${CMAKE_CURRENT_SOURCE_DIR}/core/storage/told_file_system.cpp
               ${PROJECT_SOURCE_DIR}/app/system_clock.cpp)
target_include_directories(test_soak PRIVATE ${PROJECT_SOURCE_DIR})
target_compile_options(test_soak PRIVATE -O0)
target_link_libraries(test_soak PRIVATE plumule_journal GTest::gtest)
add_test(NAME soak COMMAND test_soak)
set_tests_properties(soak PROPERTIES ENVIRONMENT "LC_ALL=C" TIMEOUT 300)
