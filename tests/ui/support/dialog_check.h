#pragma once

#include "tests/ui/support/look_check.h"
#include "tests/ui/support/ui_fixture.h"

#include <QDialog>

#include <functional>

namespace plumule::ui {

// Checks that every dialog has to pass, whatever it is for. `make` makes one that isn't shown yet;
// where it asks another thread, `isReady` tells when it has its answer.
template <class Make>
QStringList faultsOfDialog(Make make, const std::function<bool()>& isReady = {})
{
    return seenAtEveryLook(
        [&](QSize) {
            std::unique_ptr<QDialog> dialog(make());
            dialog->open();
            dialog->activateWindow();
            EXPECT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
            EXPECT_TRUE(!isReady || QTest::qWaitFor(isReady, 20'000));
            // A layout that is told of a change asks those within it, which ask theirs.
            for (int round = 0; round < 4; ++round) {
                QCoreApplication::processEvents();
            }
            return dialog;
        },
        [](QDialog& dialog) {
            return fitFaults(dialog) + lookFaults(dialog) + unreachedByTab(dialog);
        });
}

// How many acts the journal's history holds that are not taken back.
inline int actsIn(Journal& journal)
{
    const auto entries = journal.latestEntries(1000);
    return static_cast<int>(std::count_if(entries->begin(), entries->end(), [](const auto& each) {
        return each.state == HistoryState::Standing;
    }));
}

// Texts that a grower pastes, a scanner sends or a child types.
struct HostileText
{
    const char* what;
    QString text;
};
inline std::vector<HostileText> hostileTexts()
{
    return {{"marks of HTML", "<b>Bold</b><img src=x>"},
            {"a sign of the other direction", QString("Mesh") + QChar(0x202E) + "dne"},
            {"a long word", QString(300, 'W')},
            {"an amount of places", "%1 %2 %n"},
            {"quotation marks", "O'Neil \"the\" 'mat'"}};
}
// Puts it in place of what stands in a field of one line, as from a clip board.
inline void putInto(QWidget& within, const char* name, const QString& text)
{
    auto* field = within.findChild<QLineEdit*>(QString::fromLatin1(name));
    ASSERT_NE(field, nullptr) << name;
    field->setFocus();
    field->selectAll();
    field->insert(text);
}
inline QString tenThousandLetters()
{
    return QString("Mat ").repeated(2500);
}

} // namespace plumule::ui
