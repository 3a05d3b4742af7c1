#pragma once

#include <QAbstractTableModel>
#include <QIcon>
#include <QStringList>

#include <vector>

namespace plumule::ui {

// One row of a TextTable. Warned rows are shown in the colour of warnings.
struct TextRow
{
    QStringList cells;
    QIcon icon; // before the first cell
    bool isWarned = false;
};

// A small table of words and numbers that are worded already.
class TextTable : public QAbstractTableModel
{
    Q_OBJECT

public:
    explicit TextTable(QObject* parent = nullptr);

    // `rightFrom`: the first column that holds numbers; it and those after it, up to `leftFrom`,
    // stand at the right.
    void show(const QStringList& header, std::vector<TextRow> rows, int rightFrom = 1,
              int leftFrom = 1000);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    [[nodiscard]] bool isRight(int column) const;

    QStringList m_header;
    std::vector<TextRow> m_rows;
    int m_rightFrom = 1;
    int m_leftFrom = 1000;
};

} // namespace plumule::ui
