#include "ui/exchange/import_result.h"

#include "ui/exchange/import_text.h"
#include "ui/text/text.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QCheckBox>
#include <QCoreApplication>
#include <QHeaderView>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr std::size_t kShownDoubts = 8;
constexpr std::size_t kShownNames = 40;

class ResultTr
{
    Q_DECLARE_TR_FUNCTIONS(ImportResult)
};

QString andMore(const QString& shown, int more)
{
    return more == 0 ? shown : ResultTr::tr("%1 and %n more", nullptr, more).arg(shown);
}

QString listed(const std::vector<std::string>& names)
{
    QStringList list;
    for (std::size_t i = 0; i < names.size() && i < kShownNames; ++i) {
        list << QString::fromStdString(names[i]);
    }
    const int more = static_cast<int>(names.size()) - static_cast<int>(list.size());
    return andMore(list.join(", "), more);
}

QTableWidget* tableOf(const char* name, const QString& spoken, const QStringList& heads, int rows)
{
    auto* table = new QTableWidget(rows, static_cast<int>(heads.size()));
    table->setObjectName(name);
    table->setAccessibleName(spoken);
    table->setTabKeyNavigation(false);
    table->setHorizontalHeaderLabels(heads);
    table->verticalHeader()->hide();
    table->verticalHeader()->setDefaultSectionSize(scaled(32));
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setShowGrid(false);
    table->setMinimumHeight(scaled(200));
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table->horizontalHeader()->setStretchLastSection(true);
    table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    return table;
}

void put(QTableWidget& table, int row, const QStringList& cells)
{
    for (int column = 0; column < cells.size(); ++column) {
        table.setItem(row, column, new QTableWidgetItem(cells[column]));
    }
}

// Where it is, and what is wrong with it there.
QStringList faultCells(Error fault)
{
    const QString where =
        fault.row ? ResultTr::tr("Line %1").arg(fault.row->number) : ResultTr::tr("File");
    fault.row.reset();
    return {where, sentence(fault)};
}

QStringList summaryLines(const ImportPreview& preview)
{
    QStringList lines;
    const auto add = [&lines](const QString& words, const std::vector<std::string>& names) {
        if (!names.empty()) {
            lines << words.arg(listed(names));
        }
    };
    lines << (preview.isClean() ? comingText(preview.form.kind, preview.rows)
                                : ResultTr::tr("Nothing can be imported before these are mended:"));
    if (preview.heldCount > 0) {
        lines << heldText(preview);
    }
    add(ResultTr::tr("Columns that are not known and are left out: %1."), preview.unknownColumns);
    if (preview.isClean()) {
        add(ResultTr::tr("New varieties, with a plain protocol to be edited: %1."),
            preview.newVarieties);
        add(ResultTr::tr("New media, to be completed: %1."), preview.newMedia);
        add(ResultTr::tr("New trials: %1."), preview.newTrials);
        add(ResultTr::tr("New places: %1."), preview.newPlaces);
    }
    const auto shown = preview.isClean() ? static_cast<std::int64_t>(preview.firstRows.size())
                                         : static_cast<std::int64_t>(preview.faults.size());
    if (!preview.isClean() && shown < preview.faultCount) {
        lines << ResultTr::tr("The first %n fault(s) of %1 are shown.", nullptr,
                              static_cast<int>(shown))
                     .arg(preview.faultCount);
    } else if (preview.isClean() && shown < preview.rows) {
        lines << ResultTr::tr("The first %n rows are shown.", nullptr, static_cast<int>(shown));
    }
    return lines;
}

} // namespace

QWidget* importSummary(const ImportPreview& preview)
{
    auto* words = label(summaryLines(preview).join('\n'));
    words->setObjectName("importSummary");
    words->setWordWrap(true);
    return words;
}

QWidget* importDoubts(const ImportPreview& preview, QCheckBox*& areRight)
{
    areRight = nullptr;
    if (preview.doubts.empty()) {
        return nullptr;
    }
    auto* card = new Card(ResultTr::tr("Look at these first"), "caution");
    const std::size_t shown = std::min(kShownDoubts, preview.doubts.size());
    QStringList lines;
    for (std::size_t i = 0; i < shown; ++i) {
        lines << doubtText(preview.doubts[i]);
    }
    if (const std::size_t more = preview.doubts.size() - shown; more > 0) {
        lines << ResultTr::tr("And %n more.", nullptr, static_cast<int>(more));
    }
    auto* words = label(lines.join('\n'));
    words->setObjectName("importDoubts");
    words->setWordWrap(true);
    areRight = new QCheckBox(ResultTr::tr("I have looked: they are right"));
    areRight->setObjectName("importAreRight");
    card->body()->addWidget(words);
    card->body()->addWidget(areRight);
    return card;
}

QTableWidget* importRows(const ImportPreview& preview)
{
    const auto& columns = columnsOf(preview.form.kind);
    QStringList heads{ResultTr::tr("Line")};
    for (std::size_t i = 0; i < columns.size(); ++i) {
        if (preview.form.columns[i].at) {
            heads << QString::fromUtf8(columns[i].name.data(), qsizetype(columns[i].name.size()));
        }
    }
    auto* table = tableOf("importRows", ResultTr::tr("Rows that would come in"), heads,
                          static_cast<int>(preview.firstRows.size()));
    for (int row = 0; row < table->rowCount(); ++row) {
        const ShownRow& shown = preview.firstRows[static_cast<std::size_t>(row)];
        QStringList cells{QString::number(shown.line)};
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (preview.form.columns[i].at) {
                cells << QString::fromStdString(shown.cells[i]);
            }
        }
        put(*table, row, cells);
    }
    return table;
}

QTableWidget* importFaults(const ImportPreview& preview)
{
    auto* table = tableOf("importFaults", ResultTr::tr("What must be mended"),
                          {ResultTr::tr("Where"), ResultTr::tr("What is wrong, and what to do")},
                          static_cast<int>(preview.faults.size()));
    for (int row = 0; row < table->rowCount(); ++row) {
        put(*table, row, faultCells(preview.faults[static_cast<std::size_t>(row)]));
    }
    return table;
}

} // namespace plumule::ui
