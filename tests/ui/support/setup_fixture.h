#pragma once

#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "tests/ui/support/growing.h"
#include "ui/page/setup_part.h"

#include <QComboBox>
#include <QLineEdit>
#include <QListWidget>

namespace plumule::ui {

// A part of the set-up page that stands alone and is told of changes, as its page tells it.
class SetupTest : public GrowingTest
{
protected:
    template <class Part>
    std::unique_ptr<Part> openPart(QSize size = {900, 860})
    {
        messages.setWindowFlags(Qt::ToolTip);
        auto part = std::make_unique<Part>(*journal, services());
        journal->addListener([told =
                                  QPointer<Part>(part.get())](const std::vector<Change>& changes) {
            const bool isMine =
                told && std::any_of(changes.begin(), changes.end(),
                                    [&](const Change& each) { return told->concerns(each.about); });
            if (isMine) {
                // As a page does: after the act that made the change.
                QMetaObject::invokeMethod(
                    told, [told] { told->reload(); }, Qt::QueuedConnection);
            }
        });
        show(*part, size);
        part->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(part.get()));
        part->reload();
        settleDown();
        return part;
    }
    using GrowingTest::press;
    static void press(QWidget& within, const char* button)
    {
        auto* found = find<QPushButton>(within, button);
        ASSERT_NE(found, nullptr);
        ASSERT_TRUE(found->isEnabled()) << button;
        click(found);
        settleDown();
    }
    static QString textOf(QWidget& within, const char* field)
    {
        const auto* found = find<QLineEdit>(within, field);
        return found == nullptr ? QString() : found->text();
    }
    static void choose(QWidget& within, const char* box, const QString& text)
    {
        auto* found = find<QComboBox>(within, box);
        ASSERT_NE(found, nullptr);
        const int index = found->findText(text);
        ASSERT_GE(index, 0) << text.toStdString();
        found->setCurrentIndex(index);
    }
    static QStringList recordsOf(QWidget& within)
    {
        const auto* list = find<QListWidget>(within, "records");
        QStringList names;
        for (int i = 0; list != nullptr && i < list->count(); ++i) {
            names << list->item(i)->text();
        }
        return names;
    }
    // Chooses a record of the list at the left by hand.
    static void chooseRecord(QWidget& within, const QString& name)
    {
        auto* list = find<QListWidget>(within, "records");
        ASSERT_NE(list, nullptr);
        const auto found = list->findItems(name, Qt::MatchStartsWith);
        ASSERT_EQ(found.size(), 1) << name.toStdString();
        list->scrollToItem(found.front());
        QTest::mouseClick(list->viewport(), Qt::LeftButton, Qt::NoModifier,
                          list->visualItemRect(found.front()).center());
    }
    // Presses what the message bar offers, such as its undo.
    void pressMessageAction()
    {
        auto* action = messages.findChild<QPushButton*>("messageAction");
        ASSERT_NE(action, nullptr);
        ASSERT_TRUE(action->isVisible()) << messages.text().toStdString();
        click(action);
        settleDown();
    }
    void useUsUnits()
    {
        Room room = journal->room().layout()->room;
        room.units = UnitSystem::UsCustomary;
        ASSERT_TRUE(journal->room().changeRoom(room));
        settleDown();
    }
    [[nodiscard]] std::optional<Medium> mediumNamed(const std::string& name)
    {
        const auto media = journal->media().all(Listed::All);
        for (const Medium& each : *media) {
            if (each.name == name) {
                return each;
            }
        }
        return std::nullopt;
    }
};

} // namespace plumule::ui
