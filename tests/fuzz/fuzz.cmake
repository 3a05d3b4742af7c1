# The seeds are tried in every build. With -DPLUMULE_FUZZ=ON (clang only) there is a program fuzz_<target>
# for each; tests/fuzz/run.sh builds and runs them.
add_executable(test_fuzz ${CMAKE_CURRENT_LIST_DIR}/seeds_test.cpp
               ${CMAKE_CURRENT_LIST_DIR}/fuzz_entries.cpp ${CMAKE_CURRENT_LIST_DIR}/fuzz_entries.h)
target_include_directories(test_fuzz PRIVATE ${PROJECT_SOURCE_DIR})
target_compile_definitions(test_fuzz PRIVATE PLUMULE_REFERENCES="${CMAKE_CURRENT_SOURCE_DIR}/references")
target_compile_options(test_fuzz PRIVATE -O0)
target_link_libraries(test_fuzz PRIVATE plumule_journal GTest::gtest GTest::gtest_main)
add_test(NAME fuzz_seeds COMMAND test_fuzz)
set_tests_properties(fuzz_seeds PROPERTIES TIMEOUT 300)

if(PLUMULE_FUZZ)
  foreach(target Table Scale Journal Changeset)
    string(TOLOWER fuzz_${target} name)
    add_executable(${name} ${CMAKE_CURRENT_LIST_DIR}/fuzz_main.cpp
                   ${CMAKE_CURRENT_LIST_DIR}/fuzz_entries.cpp)
    target_include_directories(${name} PRIVATE ${PROJECT_SOURCE_DIR})
    target_compile_definitions(${name} PRIVATE PLUMULE_FUZZ_ENTRY=try${target})
    target_link_libraries(${name} PRIVATE plumule_journal)
    target_link_options(${name} PRIVATE -fsanitize=fuzzer)
  endforeach()
endif()
