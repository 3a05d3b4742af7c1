#pragma once

#include "core/climate/logger_file.h"
#include "core/climate/logger_merge.h"
#include "ui/page/form_dialog.h"
#include "ui/page/latest.h"
#include "ui/page/page.h"

#include <memory>

class QCheckBox;
class QComboBox;
class QLineEdit;
class QTableWidget;

namespace plumule::ui {

// Brings in a climate logger's file: a person says what its columns are, by which clock it was
// written and where the logger hung, and sees what comes of that before anything is written. It is
// read again, off the window's thread, whenever that changes. One step, undone as one.
class LoggerDialog : public FormDialog
{
    Q_OBJECT

public:
    LoggerDialog(Journal& journal, Services services, const QString& file, CsvTable table,
                 QWidget* parent = nullptr);

    // Asks for a file, reads it and shows the dialog on it, or says why it can't be read.
    static void begin(Journal& journal, Services services, QWidget* parent);

private:
    void buildLogger();
    void buildColumns();
    void buildTimes();
    void buildFound();
    void buildButtons();
    QComboBox* columnBox(const char* name, const QString& spoken,
                         std::optional<std::size_t> chosen);

    [[nodiscard]] LoggerColumns columns() const;
    [[nodiscard]] ClimateLogger logger() const;
    void readAgain();
    void showReadings(const Result<LoggerReadings>& readings);
    // What the readings come to at the logger's place.
    void showFound();
    void showFaults(const std::vector<Error>& faults);
    void bringIn();

    Journal& m_journal;
    Services m_services;
    QString m_file;
    std::shared_ptr<const CsvTable> m_table;
    LoggerColumns m_proposed;
    std::optional<LoggerReadings> m_readings; // none while they are read, or can't be
    Latest m_latest;

    QLineEdit* m_name = nullptr;
    QComboBox* m_place = nullptr;
    QComboBox* m_time = nullptr;
    QComboBox* m_clockColumn = nullptr;
    QComboBox* m_temperature = nullptr;
    QComboBox* m_temperatureUnit = nullptr;
    QComboBox* m_humidity = nullptr;
    QComboBox* m_light = nullptr;
    QComboBox* m_lightUnit = nullptr;
    QComboBox* m_order = nullptr;
    QComboBox* m_clock = nullptr;
    QLabel* m_clockWords = nullptr;
    QLabel* m_found = nullptr;
    QTableWidget* m_faults = nullptr;
    QCheckBox* m_leaveOut = nullptr;
    QPushButton* m_bring = nullptr;
};

} // namespace plumule::ui
