#pragma once

#include "core/exchange/tray_import.h"

#include <QWidget>

class QComboBox;
class QGridLayout;

namespace plumule::ui {

// How a table is read, as the file speaks for it, and yours to change: what its rows are, how its
// letters, days and decimals are written, and which column is which, in which unit.
class ImportForm : public QWidget
{
    Q_OBJECT

public:
    explicit ImportForm(QWidget* parent = nullptr);

    // What was read; nothing is told of it.
    void fill(const ImportPreview& preview);
    // What was chosen by hand so far, or taken over.
    [[nodiscard]] const TableAsk& asked() const { return m_ask; }
    void takeOver(TableAsk ask) { m_ask = std::move(ask); }

Q_SIGNALS:
    void changed();

private:
    // A column of the file.
    struct Line
    {
        QComboBox* column = nullptr;
        QComboBox* unit = nullptr;
    };

    void buildChoices();
    void wireChoices();
    void buildColumns(const ImportPreview& preview);
    [[nodiscard]] Line lineOf(const ImportPreview& preview, std::size_t at);
    void fillUnits(const Line& line, const std::string& chosen) const;
    void chooseColumn(std::size_t at);
    void takeColumns();

    TableAsk m_ask;
    std::vector<std::string> m_header;
    QComboBox* m_kind = nullptr;
    QComboBox* m_encoding = nullptr;
    QComboBox* m_dates = nullptr;
    QComboBox* m_decimals = nullptr;
    QWidget* m_columns = nullptr;
    std::vector<Line> m_lines;
};

} // namespace plumule::ui
