#include "ui/setup/journal_part.h"

#include "core/base/whole_file.h"
#include "core/journal/exchange/exchange_entries.h"
#include "ui/backup/backup_card.h"
#include "ui/climate/lamp_dialog.h"
#include "ui/climate/logger_dialog.h"
#include "ui/exchange/import_dialog.h"
#include "ui/page/aside.h"
#include "ui/page/saving.h"
#include "ui/setup/scanner_card.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/plain_words.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFileInfo>
#include <QScrollArea>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

QString withEnding(const QString& path)
{
    return path.endsWith(".plumule") ? path : path + ".plumule";
}

} // namespace

JournalPart::JournalPart(Journal& journal, Services services, QWidget* parent)
    : SetupPart(journal, services, parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner));
    for (QWidget* card : {buildFile(), buildBackups(), buildTables(), buildClimate(), buildLook(),
                          buildScanner()}) {
        inner->addWidget(card);
    }
    inner->addStretch(1);
}

QString JournalPart::name() const
{
    return tr("Journal");
}

bool JournalPart::concerns(Concept) const
{
    return true;
}

QWidget* JournalPart::buildFile()
{
    auto* card = new Card(tr("This journal"));
    auto* path = label(wrappingPath(QString::fromStdString(journal().path().string())), "strong");
    path->setWordWrap(true);
    auto* words =
        label(tr("One file, saved at every act. While it is open, copy it only by a backup: that "
                 "copy is checked and its checksum kept beside it."),
              "muted");
    words->setWordWrap(true);
    auto* row = new FlowLayout;
    const auto add = [row](const QString& text, const char* buttonName, const char* role = "") {
        auto* made = button(text, role);
        made->setObjectName(buttonName);
        row->addWidget(made);
        return made;
    };
    auto* copy = add(tr("Save a copy…"), "backUp");
    auto* checkNow = add(tr("Check for damage"), "check");
    auto* open = add(tr("Open another…"), "openAnother");
    auto* make = add(tr("New…"), "newJournal");
    card->body()->addWidget(path);
    card->body()->addWidget(words);
    card->body()->addLayout(row);
    connect(copy, &QPushButton::clicked, this, &JournalPart::backUp);
    connect(checkNow, &QPushButton::clicked, this, &JournalPart::check);
    connect(open, &QPushButton::clicked, this, &JournalPart::openAnother);
    connect(make, &QPushButton::clicked, this, &JournalPart::makeNew);
    return card;
}

QWidget* JournalPart::buildBackups()
{
    m_backups = new BackupCard(journal(), services());
    connect(m_backups, &BackupCard::journalAsked, this, &JournalPart::journalAsked);
    return m_backups;
}

QWidget* JournalPart::buildTables()
{
    auto* card = new Card(tr("Tables"));
    auto* words = label(
        tr("Trays, stages, waterings, heights, cuts, residues, scores, prices, seed lots, mats and "
           "readings of water come in as CSV. Everything goes out as a folder of tables with a "
           "dictionary, from which the journal can be made again."),
        "muted");
    words->setWordWrap(true);
    auto* bring = button(tr("Import a table…"));
    bring->setObjectName("importTable");
    auto* give = button(tr("Export the trays…"));
    give->setObjectName("exportTrays");
    auto* giveAll = button(tr("Export everything…"));
    giveAll->setObjectName("exportAll");
    auto* row = new FlowLayout;
    row->addWidget(bring);
    row->addWidget(give);
    row->addWidget(giveAll);
    card->body()->addWidget(words);
    card->body()->addLayout(row);
    connect(bring, &QPushButton::clicked, this,
            [this] { ImportDialog::begin(journal(), services(), this); });
    connect(give, &QPushButton::clicked, this, &JournalPart::exportTrays);
    connect(giveAll, &QPushButton::clicked, this, &JournalPart::exportAll);
    return card;
}

QWidget* JournalPart::buildClimate()
{
    auto* card = new Card(tr("Climate"));
    auto* words = label(
        tr("A climate logger's file has a line a reading: a time, and temperature, humidity or "
           "light. It is kept as hours and shown under the heights of trays and trials."),
        "muted");
    words->setWordWrap(true);
    auto* bring = button(tr("Bring in a logger's file…"));
    bring->setObjectName("importLogger");
    auto* lamps = button(tr("Light under the lamps…"));
    lamps->setObjectName("lampLight");
    auto* row = new FlowLayout;
    row->addWidget(bring);
    row->addWidget(lamps);
    card->body()->addWidget(words);
    card->body()->addLayout(row);
    connect(bring, &QPushButton::clicked, this,
            [this] { LoggerDialog::begin(journal(), services(), this); });
    connect(lamps, &QPushButton::clicked, this, [this] {
        auto* dialog = new LampDialog(journal(), services(), this);
        dialog->setAttribute(Qt::WA_DeleteOnClose);
        dialog->open();
    });
    return card;
}

QWidget* JournalPart::buildLook()
{
    auto* card = new Card(tr("On this computer"));
    m_look = new QComboBox;
    m_look->setObjectName("look");
    m_look->setAccessibleName(tr("Look"));
    m_look->addItem(tr("light"), "light");
    m_look->addItem(tr("dark"), "dark");
    m_look->setCurrentIndex(
        std::max(0, m_look->findData(services().preferences.get(Preference::Look))));
    m_scale = new QDoubleSpinBox;
    m_scale->setObjectName("fontScale");
    m_scale->setAccessibleName(tr("Size of type"));
    m_scale->setRange(80, 200);
    m_scale->setDecimals(0);
    m_scale->setSingleStep(10);
    m_scale->setSuffix(QStringLiteral(" %"));
    m_scale->setValue(services().preferences.get(Preference::FontScale).toDouble() * 100);
    auto* save = button(tr("Apply"));
    save->setObjectName("applyLook");
    auto* row = new FlowLayout;
    row->addWidget(label(tr("Look")));
    row->addWidget(m_look);
    row->addWidget(label(tr("Size of type")));
    row->addWidget(m_scale);
    row->addWidget(save);
    card->body()->addLayout(row);
    connect(save, &QPushButton::clicked, this, &JournalPart::saveLook);
    return card;
}

QWidget* JournalPart::buildScanner()
{
    return new ScannerCard(services().preferences, services().messages);
}

void JournalPart::reload()
{
    m_backups->reload();
}

void JournalPart::openAnother()
{
    services().ask.fileToOpen(this, tr("Open a journal"),
                              tr("Plumule journals (*.plumule);;All files (*)"),
                              [this](const QString& path) { Q_EMIT journalAsked(path); });
}

void JournalPart::makeNew()
{
    services().ask.fileToSave(this, tr("A new journal"), tr("My grow room.plumule"),
                              tr("Plumule journals (*.plumule)"), [this](const QString& chosen) {
                                  const QString path = withEnding(chosen);
                                  RoomPlan plan;
                                  plan.room = room();
                                  plan.room.id = {};
                                  plan.room.name = QFileInfo(path).completeBaseName().toStdString();
                                  auto made =
                                      Journal::create(path.toStdString(), plan, journal().clock());
                                  if (!made) {
                                      services().messages.refuse(sentence(made.error()));
                                      return;
                                  }
                                  made->reset();
                                  Q_EMIT journalAsked(path);
                              });
}

void JournalPart::backUp()
{
    const QString preset = QStringLiteral("%1 %2.plumule")
                               .arg(QString::fromStdString(journal().path().stem().string()),
                                    QString::fromStdString(toIso(journal().clock().today())));
    services().ask.fileToSave(
        this, tr("Back up the journal"), preset, tr("Plumule journals (*.plumule)"),
        [this](const QString& target) {
            askAside(
                services().tasks, tr("Backing up"), journal(),
                [file = target.toStdString()](Journal& elsewhere, const Progress& progress) {
                    return elsewhere.backUpTo(file, progress);
                },
                this,
                [this, target](const Done& done) {
                    if (done) {
                        services().messages.tell(tr("Backed up to %1, and checked.").arg(target));
                    } else {
                        services().messages.refuse(sentence(done.error()));
                    }
                });
        });
}

void JournalPart::check()
{
    using Faults = Result<std::vector<Error>>;
    askAside(
        services().tasks, tr("Checking the journal"), journal(),
        [](Journal& elsewhere, const Progress&) { return elsewhere.faults(); }, this,
        [this](const Faults& faults) {
            if (!faults) {
                services().messages.refuse(sentence(faults.error()));
            } else if (faults->empty()) {
                services().messages.tell(tr("The journal is sound."));
            } else {
                services().messages.refuse(tr("The journal has %n fault(s). The first: %1", nullptr,
                                              static_cast<int>(faults->size()))
                                               .arg(sentence(faults->front())));
            }
        });
}

void JournalPart::exportTrays()
{
    saveAs(this, services(), tr("Export the trays"), tr("trays.csv"), tr("Tables (*.csv)"),
           [this](const QString& path) {
               const auto text = journal().exchange().traysAsCsv();
               return text ? writeWhole(path.toStdString(), *text) : Done(passOn(text));
           });
}

// Into a folder of its own within the one that is chosen.
void JournalPart::exportAll()
{
    services().ask.folder(
        this, tr("Where the folder of tables goes"), [this](const QString& chosen) {
            const auto path = journal().path();
            const QString target =
                QStringLiteral("%1/%2 tables %3")
                    .arg(chosen, QString::fromStdString(path.stem().string()),
                         QString::fromStdString(toIso(journal().clock().today())));
            askAside(
                services().tasks, tr("Exporting everything"), journal(),
                [folder = target.toStdString()](Journal& elsewhere, const Progress& progress) {
                    return elsewhere.exchange().writeAll(folder, progress);
                },
                this,
                [this, target](const Result<FolderOutcome>& outcome) {
                    if (outcome) {
                        services().messages.tell(
                            tr("Exported %n file(s) to %1.", nullptr, outcome->files).arg(target));
                    } else {
                        services().messages.refuse(sentence(outcome.error()));
                    }
                });
        });
}

void JournalPart::saveLook()
{
    Q_EMIT lookAsked(m_look->currentData().toString(), m_scale->value() / 100);
}

} // namespace plumule::ui

#include "moc_journal_part.cpp"
