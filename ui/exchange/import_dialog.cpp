#include "ui/exchange/import_dialog.h"

#include "ui/backup/backup_keeper.h"
#include "ui/exchange/import_text.h"
#include "ui/page/undoing.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QCheckBox>
#include <QFileInfo>
#include <QHeaderView>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr int kShownRows = 200;
constexpr std::size_t kShownDoubts = 8;

QString listed(const std::vector<std::string>& names)
{
    QStringList list;
    for (const std::string& name : names) {
        list << QString::fromStdString(name);
    }
    return list.join(", ");
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
        fault.row ? ImportDialog::tr("Line %1").arg(fault.row->number) : ImportDialog::tr("File");
    fault.row.reset();
    return {where, sentence(fault)};
}

QString massCell(const std::optional<Mass>& mass)
{
    return mass ? numberText(inGrams(*mass), 3) : QString();
}

} // namespace

void ImportDialog::begin(Journal& journal, Services services, QWidget* parent)
{
    services.ask.fileToOpen(parent, tr("Import a table of trays"),
                            tr("Tables (*.csv);;All files (*)"),
                            [&journal, services, parent](const QString& file) {
                                auto* dialog = new ImportDialog(journal, services, file, parent);
                                dialog->setAttribute(Qt::WA_DeleteOnClose);
                                dialog->open();
                            });
}

ImportDialog::ImportDialog(Journal& journal, Services services, const QString& file,
                           QWidget* parent)
    : FormDialog(services.ask, "importDialog", tr("Import a table of trays"), parent)
    , m_journal(journal)
    , m_services(services)
    , m_file(file)
{
    wish({scaled(760), scaled(560)});
    leaveFreely();
    body()->addWidget(label(QFileInfo(file).fileName(), "strong"));
    const auto preview = m_journal.exchange().preview(file.toStdString());
    if (preview) {
        m_preview = *preview;
    } else {
        m_preview.faults.push_back(preview.error());
    }
    buildSummary();
    buildDoubts();
    m_preview.isClean() ? buildRows() : buildFaults();
    buildButtons();
}

void ImportDialog::buildSummary()
{
    QStringList lines;
    if (m_preview.isClean()) {
        lines << tr("%n tray(s) would come in.", nullptr, static_cast<int>(m_preview.trays.size()));
    } else {
        lines << tr("Nothing can be imported before these are mended:");
    }
    const auto add = [&lines](const QString& words, const std::vector<std::string>& names) {
        if (!names.empty()) {
            lines << words.arg(listed(names));
        }
    };
    add(tr("Columns that are not known and are left out: %1."), m_preview.unknownColumns);
    if (m_preview.isClean()) {
        add(tr("New varieties, with a plain protocol to be edited: %1."), m_preview.newVarieties);
        add(tr("New media, to be completed: %1."), m_preview.newMedia);
        add(tr("New trials: %1."), m_preview.newTrials);
        add(tr("New places: %1."), m_preview.newPlaces);
    }
    auto* words = label(lines.join('\n'));
    words->setObjectName("importSummary");
    words->setWordWrap(true);
    body()->addWidget(words);
}

void ImportDialog::buildDoubts()
{
    if (m_preview.doubts.empty()) {
        return;
    }
    auto* card = new Card(tr("Look at these first"), "caution");
    const std::size_t shown = std::min(kShownDoubts, m_preview.doubts.size());
    QStringList lines;
    for (std::size_t i = 0; i < shown; ++i) {
        lines << doubtText(m_preview.doubts[i]);
    }
    if (const std::size_t more = m_preview.doubts.size() - shown; more > 0) {
        lines << tr("And %n more.", nullptr, static_cast<int>(more));
    }
    auto* words = label(lines.join('\n'));
    words->setObjectName("importDoubts");
    words->setWordWrap(true);
    m_areRight = new QCheckBox(tr("I have looked: they are right"));
    m_areRight->setObjectName("importAreRight");
    card->body()->addWidget(words);
    card->body()->addWidget(m_areRight);
    body()->addWidget(card);
}

void ImportDialog::buildRows()
{
    const int shown = std::min<int>(kShownRows, static_cast<int>(m_preview.trays.size()));
    auto* table = tableOf("importRows", tr("Trays that would come in"),
                          {tr("Line"), tr("Tray"), tr("Variety"), tr("Medium"), tr("Sown"),
                           tr("Harvested"), tr("Net, g"), tr("Trial")},
                          shown);
    for (int row = 0; row < shown; ++row) {
        const ImportedTray& tray = m_preview.trays[static_cast<std::size_t>(row)];
        put(*table, row,
            {QString::number(tray.line), QString::fromStdString(tray.code),
             QString::fromStdString(tray.variety), QString::fromStdString(tray.medium),
             QString::fromStdString(toIso(tray.sown)),
             tray.harvested ? QString::fromStdString(toIso(*tray.harvested)) : QString(),
             massCell(tray.net), QString::fromStdString(tray.trial.value_or(""))});
    }
    body()->addWidget(table, 1);
    if (shown < static_cast<int>(m_preview.trays.size())) {
        body()->addWidget(label(tr("The first %n rows are shown.", nullptr, shown), "muted"));
    }
}

void ImportDialog::buildFaults()
{
    auto* table = tableOf("importFaults", tr("What must be mended"),
                          {tr("Where"), tr("What is wrong, and what to do")},
                          static_cast<int>(m_preview.faults.size()));
    for (int row = 0; row < table->rowCount(); ++row) {
        put(*table, row, faultCells(m_preview.faults[static_cast<std::size_t>(row)]));
    }
    body()->addWidget(table, 1);
}

void ImportDialog::buildButtons()
{
    connect(addButton(tr("Leave it"), "importLeave"), &QPushButton::clicked, this,
            &QDialog::reject);
    auto* import = addButton(tr("Import"), "importRun", "primary");
    const bool hasTrays = m_preview.isClean() && !m_preview.trays.empty();
    import->setEnabled(hasTrays && m_areRight == nullptr);
    if (hasTrays && m_areRight != nullptr) {
        connect(m_areRight, &QCheckBox::toggled, import, &QPushButton::setEnabled);
    }
    connect(import, &QPushButton::clicked, this, &ImportDialog::runImport);
}

void ImportDialog::runImport()
{
    // What a table brings in wrongly may be seen only when undo no longer reaches it.
    const auto first =
        m_journal.backUpInto(BackupKeeper::storeOf(m_journal, m_services.preferences), {});
    if (!first) {
        m_services.messages.refuse(sentence(first.error()));
        reject();
        return;
    }
    const auto outcome =
        m_journal.exchange().importTrays(m_preview, QFileInfo(m_file).fileName().toStdString());
    if (!outcome) {
        m_services.messages.refuse(sentence(outcome.error()));
        reject();
        return;
    }
    tellDone(m_journal, m_services.messages, tr("Imported %n tray(s).", nullptr, outcome->trays));
    accept();
}

} // namespace plumule::ui

#include "moc_import_dialog.cpp"
