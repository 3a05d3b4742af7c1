#include "ui/exchange/import_dialog.h"

#include "core/backup/backup_store.h"
#include "core/journal/exchange/exchange_entries.h"
#include "ui/backup/backup_keeper.h"
#include "ui/exchange/import_form.h"
#include "ui/exchange/import_result.h"
#include "ui/exchange/remembered_forms.h"
#include "ui/page/another_hand.h"
#include "ui/page/aside.h"
#include "ui/page/undoing.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QCheckBox>
#include <QFileInfo>
#include <QProgressBar>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr int kSteps = 1000;

// Stops when the dialog's own source is stopped, and when the program's tasks are.
Progress stoppedByBoth(const Progress& task, const std::shared_ptr<std::stop_source>& own)
{
    return Progress(
        [task, own](double fraction) {
            task.report(fraction);
            if (task.isStopped()) {
                own->request_stop();
            }
        },
        own->get_token());
}

} // namespace

void ImportDialog::begin(Journal& journal, Services services, QWidget* parent)
{
    services.ask.fileToOpen(parent, tr("Import a table"), tr("Tables (*.csv);;All files (*)"),
                            [&journal, services, parent](const QString& file) {
                                auto* dialog = new ImportDialog(journal, services, file, parent);
                                dialog->setAttribute(Qt::WA_DeleteOnClose);
                                dialog->open();
                            });
}

ImportDialog::ImportDialog(Journal& journal, Services services, const QString& file,
                           QWidget* parent)
    : FormDialog(services.ask, "importDialog", tr("Import a table"), parent)
    , m_journal(journal)
    , m_services(services)
    , m_file(file)
{
    wish({scaled(820), scaled(640)});
    leaveFreely();
    body()->addWidget(label(QFileInfo(file).fileName(), "strong"));
    m_form = new ImportForm;
    body()->addWidget(m_form);
    connect(m_form, &ImportForm::changed, this, &ImportDialog::read);
    buildWaiting();
    buildButtons();
    read();
}

ImportDialog::~ImportDialog()
{
    if (m_stop) {
        m_stop->request_stop();
    }
}

void ImportDialog::buildWaiting()
{
    m_bar = new QProgressBar;
    m_bar->setObjectName("importProgress");
    m_bar->setAccessibleName(tr("How much of the table is read"));
    m_bar->setRange(0, kSteps);
    m_bar->setTextVisible(false);
    QSizePolicy policy = m_bar->sizePolicy();
    policy.setRetainSizeWhenHidden(true); // the form stays where it is
    m_bar->setSizePolicy(policy);
    body()->insertWidget(1, m_bar); // in sight whatever is read below
    connect(&m_services.tasks, &Tasks::progressed, m_bar,
            [this](double fraction) { m_bar->setValue(static_cast<int>(fraction * kSteps)); });
}

void ImportDialog::buildButtons()
{
    m_leave = addButton(tr("Leave it"), "importLeave");
    connect(m_leave, &QPushButton::clicked, this, &ImportDialog::reject);
    m_import = addButton(tr("Import"), "importRun", "primary");
    m_import->setEnabled(false);
    connect(m_import, &QPushButton::clicked, this, &ImportDialog::runImport);
}

void ImportDialog::read()
{
    if (m_stop) {
        m_stop->request_stop();
    }
    m_stop = std::make_shared<std::stop_source>();
    m_import->setEnabled(false);
    m_bar->setValue(0);
    m_bar->show();
    askAside(
        m_services.tasks, tr("Reading a table"), m_journal,
        [file = m_file.toStdString(), ask = m_form->asked(),
         stop = m_stop](Journal& elsewhere, const Progress& progress) -> Result<Preview> {
            auto read = elsewhere.exchange().preview(file, ask, stoppedByBoth(progress, stop));
            return read ? Result<Preview>(std::make_shared<const ImportPreview>(std::move(*read)))
                        : Result<Preview>(passOn(read));
        },
        this, m_latest.only([this](const Result<Preview>& read) { take(read); }));
}

// How a table of that header was read last; asked once, before anything was chosen by hand.
bool ImportDialog::takeRemembered(const ImportPreview& preview)
{
    const auto remembered =
        m_isFirst ? rememberedForm(m_services.preferences, preview.header) : std::nullopt;
    m_isFirst = false;
    if (remembered) {
        m_form->takeOver(*remembered);
    }
    return remembered.has_value();
}

void ImportDialog::take(const Result<Preview>& preview)
{
    if (preview && takeRemembered(**preview)) {
        read();
        return;
    }
    m_bar->hide();
    if (preview) {
        m_preview = *preview;
    } else {
        auto refused = std::make_shared<ImportPreview>();
        refused->form.kind = m_form->asked().kind;
        refused->form.encoding = m_form->asked().encoding.value_or(TextEncoding::Utf8);
        refused->form.columns.resize(columnsOf(refused->form.kind).size());
        refused->faults.push_back(preview.error());
        refused->faultCount = 1;
        m_preview = std::move(refused);
    }
    m_form->fill(*m_preview);
    showResult();
}

void ImportDialog::showResult()
{
    delete m_result;
    m_result = new QWidget;
    auto* column = new QVBoxLayout(m_result);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(importSummary(*m_preview));
    if (auto* doubts = importDoubts(*m_preview, m_areRight)) {
        column->addWidget(doubts);
    }
    column->addWidget(m_preview->isClean() ? importRows(*m_preview) : importFaults(*m_preview), 1);
    body()->addWidget(m_result, 1);
    const bool hasRows = m_preview->isClean() && m_preview->rows > 0;
    m_import->setEnabled(hasRows && m_areRight == nullptr);
    if (hasRows && m_areRight != nullptr) {
        connect(m_areRight, &QCheckBox::toggled, m_import, &QPushButton::setEnabled);
    }
}

void ImportDialog::runImport()
{
    showStoring();
    byAnotherHand(
        m_journal, m_services.tasks, tr("Storing a table"),
        [preview = m_preview, stop = m_stop,
         store = BackupKeeper::storeOf(m_journal, m_services.preferences),
         name = QFileInfo(m_file).fileName().toStdString()](
            Journal& hand, const Progress& task) -> Result<std::int64_t> {
            const Progress progress = stoppedByBoth(task, stop);
            // What a table brings in wrongly may be seen only when undo no longer reaches it.
            if (const auto first = hand.backUpInto(store, {}); !first) {
                return passOn(first);
            }
            return hand.exchange().importTable(*preview, name, progress);
        },
        this, [this](const Result<std::int64_t>& rows) { takeStored(rows); });
}

void ImportDialog::showStoring()
{
    m_isStoring = true;
    m_stop = std::make_shared<std::stop_source>();
    for (QWidget* each :
         {static_cast<QWidget*>(m_form), m_result, static_cast<QWidget*>(m_import)}) {
        each->setEnabled(false);
    }
    m_leave->setText(tr("Stop"));
    m_leave->setFocus();
    m_bar->setAccessibleName(tr("How much of the table is stored"));
    m_bar->setValue(0);
    m_bar->show();
}

void ImportDialog::reject()
{
    if (!m_isStoring) {
        FormDialog::reject();
        return;
    }
    m_stop->request_stop();
    m_leave->setEnabled(false);
}

void ImportDialog::takeStored(const Result<std::int64_t>& stored)
{
    m_isStoring = false;
    if (!stored) {
        stored.error().kind == ErrorKind::Cancelled
            ? m_services.messages.tell(tr("Stopped; nothing was imported."))
            : m_services.messages.refuse(sentence(stored.error()));
        reject();
        return;
    }
    rememberForm(m_services.preferences, m_preview->header, m_preview->form);
    const int rows = static_cast<int>(*stored);
    tellDone(m_journal, m_services,
             m_preview->form.kind == TableKind::Trays ? tr("Imported %n tray(s).", nullptr, rows)
                                                      : tr("Imported %n row(s).", nullptr, rows));
    accept();
}

} // namespace plumule::ui

#include "moc_import_dialog.cpp"
