#pragma once

#include "tests/ui/support/growing.h"
#include "ui/tray/tray_list_model.h"
#include "ui/tray/trays_page.h"

#include <QComboBox>
#include <QLineEdit>
#include <QSpinBox>
#include <QTableView>
#include <QTimer>

namespace plumule::ui {

class TrayPageTest : public GrowingTest
{
protected:
    std::unique_ptr<TraysPage> page;

    // The list is read at each key, so that no test waits for a pause.
    void open(QSize size = {1232, 900})
    {
        page = openPage<TraysPage>(size);
        pause().setInterval(0);
    }
    [[nodiscard]] QTimer& pause() { return *find<QTimer>(*page, "typingPause"); }
    // Its page shows this tray's sheet.
    void openSheetOf(const char* code)
    {
        open();
        page->openSheet(trayOf(code));
        ASSERT_TRUE(find<QWidget>(*page, "traySheet")->isVisible());
    }

    [[nodiscard]] QAbstractItemModel& rows() { return *find<QTableView>(*page, "trays")->model(); }
    void readToTheEnd()
    {
        while (rows().canFetchMore({})) {
            rows().fetchMore({});
        }
    }
    [[nodiscard]] QString cell(int row, TrayListModel::Column column)
    {
        return rows().index(row, column).data().toString();
    }
    // The column of a list, in its order.
    [[nodiscard]] QStringList shown(TrayListModel::Column column)
    {
        QStringList cells;
        for (int i = 0; i < rows().rowCount(); ++i) {
            cells << cell(i, column);
        }
        return cells;
    }
    void choose(const char* box, const QString& item)
    {
        auto* combo = find<QComboBox>(*page, box);
        combo->setFocus();
        const int index = combo->findText(item);
        ASSERT_GE(index, 0) << item.toStdString();
        combo->setCurrentIndex(index);
    }
    [[nodiscard]] QWidget& sheet() { return *find<QWidget>(*page, "traySheet"); }
    [[nodiscard]] bool sheetSays(const QString& words)
    {
        // The page reads again soon after a change.
        return soon([&] { return !textsIn(sheet()).filter(words).isEmpty(); });
    }
    void pressOnSheet(const char* button) { click(find<QPushButton>(sheet(), button)); }
    // A shown button by what it says to those who can't see it, or by its text.
    [[nodiscard]] QPushButton* buttonSaying(const QString& words)
    {
        for (auto* each : sheet().findChildren<QPushButton*>()) {
            if (each->isVisible() && (each->accessibleName() == words || each->text() == words)) {
                return each;
            }
        }
        return nullptr;
    }
};

} // namespace plumule::ui
