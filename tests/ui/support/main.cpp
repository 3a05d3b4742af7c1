#include "tests/ui/support/watched_application.h"
#include "ui/widget/theme.h"

#include <gtest/gtest.h>

#include <locale>

// Every ui test runs in one offscreen application with the program's own font and look.
int main(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    ::testing::InitGoogleTest(&argc, argv);
    QLocale::setDefault(QLocale::c());
    plumule::ui::WatchedApplication application(argc, argv);
    plumule::ui::applyTheme(application, plumule::ui::Ground::Light);
    return RUN_ALL_TESTS();
}
