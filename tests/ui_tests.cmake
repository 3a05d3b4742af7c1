# Tests of pages through their real widgets, offscreen.
find_package(Qt6 6.4 REQUIRED COMPONENTS Test)
foreach(room shared medium chart watering harvest tray review room variety cost trial exchange window)
  plumule_test(ui/${room} LINK plumule_ui_${room} plumule_resources Qt6::Test)
endforeach()

# Labels are read back by a decoder of another house.
if(TARGET test_ui_tray)
  target_link_libraries(test_ui_tray PRIVATE zbar)
endif()

# Tests of the commands, through the program itself.
plumule_test(app LINK plumule_app plumule_resources Qt6::Test)
if(TARGET test_app)
  target_compile_definitions(test_app PRIVATE PLUMULE_PROGRAM="$<TARGET_FILE:plumule>")
  add_dependencies(test_app plumule)
endif()
