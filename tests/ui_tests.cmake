# Tests of pages through their real widgets, offscreen.
find_package(Qt6 6.4 REQUIRED COMPONENTS Test)
foreach(room text widget page medium chart label report backup merge history room variety cost
        exchange climate watering harvest tray rack week forecast order stock tasting review trial
        setup window)
  plumule_test(ui/${room} LINK plumule_ui_${room} plumule_ui_page plumule_resources Qt6::Test)
endforeach()
# What some rooms are tried on stands above them.
target_link_libraries(test_ui_chart PRIVATE plumule_review_charts)
target_link_libraries(test_ui_label PRIVATE plumule_ui_tray)

# Labels are read back by a decoder of another house.
if(TARGET test_ui_label)
  target_link_libraries(test_ui_label PRIVATE zbar)
endif()

# Tests of the commands, through the program itself.
plumule_test(app LINK plumule_app plumule_resources Qt6::Test)
if(TARGET test_app)
  target_compile_definitions(test_app PRIVATE PLUMULE_PROGRAM="$<TARGET_FILE:plumule>")
  add_dependencies(test_app plumule)
endif()
