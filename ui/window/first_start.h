#pragma once

#include "core/base/clock.h"
#include "core/room/room.h"
#include "ui/page/ask.h"
#include "ui/page/form_dialog.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QSpinBox;

namespace plumule::ui {

class TimeField;

// Shown where there is no journal yet: a new one, one that is there already, or the invented sample
// room. It makes the file and tells its path; the program opens it.
class FirstStart : public FormDialog
{
    Q_OBJECT

public:
    FirstStart(const Clock& clock, Ask& ask, QWidget* parent = nullptr);

    // Shows why the choice could not be carried out.
    using FormDialog::refuse;
    // Says on top that the journal opened last can't be, why, and what to do about it.
    void explain(const QString& path, const Error& why);

Q_SIGNALS:
    void chosen(const QString& path);

private:
    QWidget* buildTrouble();
    void makeFields();
    QWidget* buildNew();
    QWidget* buildOthers();
    [[nodiscard]] RoomPlan plan() const;
    void proposeCurrency();
    void makeNew();
    void makeNewAt(const QString& path);
    void openExisting();
    void makeSample();
    void makeSampleAt(const QString& path);

    const Clock& m_clock;
    Ask& m_ask;
    QLineEdit* m_name = nullptr;
    QSpinBox* m_racks = nullptr;
    QSpinBox* m_shelves = nullptr;
    QSpinBox* m_places = nullptr;
    TimeField* m_morning = nullptr;
    TimeField* m_evening = nullptr;
    QComboBox* m_units = nullptr;
    QLineEdit* m_currency = nullptr;
    QWidget* m_trouble = nullptr;
    QLabel* m_troubleWords = nullptr;
    QString m_lastPath;
};

} // namespace plumule::ui
