#pragma once

#include "core/base/clock.h"
#include "core/room/room.h"
#include "ui/page/ask.h"

#include <QDialog>

class QComboBox;
class QLabel;
class QLineEdit;
class QSpinBox;
class QTimeEdit;

namespace plumule::ui {

// Shown where there is no journal yet: a new one, one that is there already, or the invented sample
// room. It makes the file and tells its path; the program opens it.
class FirstStart : public QDialog
{
    Q_OBJECT

public:
    FirstStart(const Clock& clock, Ask& ask, QWidget* parent = nullptr);

    // Shows why the choice could not be carried out.
    void refuse(const QString& sentence);

Q_SIGNALS:
    void chosen(const QString& path);

private:
    QWidget* buildNew();
    QWidget* buildOthers();
    [[nodiscard]] RoomPlan plan() const;
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
    QTimeEdit* m_morning = nullptr;
    QTimeEdit* m_evening = nullptr;
    QComboBox* m_units = nullptr;
    QLineEdit* m_currency = nullptr;
    QLabel* m_refusal = nullptr;
};

} // namespace plumule::ui
