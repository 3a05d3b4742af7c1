#include "ui/backup/backup_card.h"

#include "core/journal/merge/merge_entries.h"
#include "ui/backup/backup_keeper.h"
#include "ui/backup/take_along.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/plain_words.h"
#include "ui/widget/theme.h"

#include <QComboBox>
#include <QDateTime>
#include <QFileInfo>
#include <QLocale>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

QString momentText(Moment at)
{
    return longDateText(at.date) + ", " + clockText(at.minute);
}

QString pathText(const std::filesystem::path& path)
{
    return QString::fromStdString(path.string());
}

} // namespace

BackupCard::BackupCard(Journal& journal, const Services& services, QWidget* parent)
    : Card(tr("Backups"), "card", parent)
    , m_journal(journal)
    , m_services(services)
{
    build();
    reload();
}

void BackupCard::build()
{
    const auto words = [this](const char* role, const char* wordsName) {
        auto* made = label(QString(), role);
        made->setObjectName(wordsName);
        made->setWordWrap(true);
        body()->addWidget(made);
        return made;
    };
    m_state = words("strong", "backupState");
    m_folder = words("muted", "backupFolder");
    m_copies = words("muted", "backupCopies");
    const auto act = [this](QLayout* row, const QString& text, const char* buttonName,
                            void (BackupCard::*done)(), const char* role = "") {
        auto* made = button(text, role);
        made->setObjectName(buttonName);
        row->addWidget(made);
        connect(made, &QPushButton::clicked, this, done);
        return made;
    };
    auto* row = new FlowLayout;
    act(row, tr("Back up now"), "backUpNow", &BackupCard::makeNow, "primary");
    act(row, tr("Take a copy along…"), "backupTakeAlong", &BackupCard::takeAlong);
    act(row, tr("Another folder…"), "backupFolderChoice", &BackupCard::chooseFolder);
    m_beside = act(row, tr("Beside the journal"), "backupBeside", &BackupCard::keepBeside);
    body()->addLayout(row);
    m_way = new QWidget;
    auto* way = new FlowLayout(m_way);
    way->setContentsMargins(0, 0, 0, 0);
    m_list = new QComboBox;
    m_list->setObjectName("backupList");
    m_list->setAccessibleName(tr("Backups, newest first"));
    way->addWidget(m_list);
    act(way, tr("What it holds"), "backupLook", &BackupCard::look);
    act(way, tr("Bring back…"), "backupBringBack", &BackupCard::bringBack);
    body()->addWidget(m_way);
    m_content = words("", "backupContent");
    m_content->hide();
    connect(m_list, &QComboBox::currentIndexChanged, m_content, &QWidget::hide);
}

BackupStore BackupCard::store() const
{
    return BackupKeeper::storeOf(m_journal, m_services.preferences);
}

void BackupCard::reload()
{
    const BackupStore kept = store();
    const auto backups = kept.list();
    m_folder->setText(
        tr("Made by itself at the first change of each day, with its photographs: fourteen days, "
           "eight weeks and twelve months stay. In %1")
            .arg(wrappingPath(pathText(kept.folder()))));
    m_beside->setVisible(
        !m_services.preferences.get(Preference::BackupFolder).toString().isEmpty());
    m_state->setText(backups.empty() ? tr("No backup yet.")
                                     : tr("Last backup: %1. Kept: %2.")
                                           .arg(momentText(backups.front().at))
                                           .arg(backups.size()));
    m_copies->setText(copiesText());
    m_copies->setVisible(!m_copies->text().isEmpty());
    m_way->setVisible(!backups.empty());
    if (backups == m_backups) {
        return;
    }
    m_backups = backups;
    m_list->clear();
    for (const Backup& backup : m_backups) {
        m_list->addItem(
            QStringLiteral("%1  ·  %2")
                .arg(momentText(backup.at), QLocale().formattedDataSize(qint64(backup.bytes))));
    }
}

// Copies that were taken along, or that this journal is one itself.
QString BackupCard::copiesText() const
{
    const auto taken = [](const TakenCopy& copy) {
        return tr("%1 on %2")
            .arg(QString::fromStdString(copy.name),
                 QLocale(QLocale::English)
                     .toString(QDateTime::fromMSecsSinceEpoch(copy.takenAtUtcMs),
                               QStringLiteral("d MMM yyyy")));
    };
    if (const auto own = m_journal.copies().ownCopy(); own && *own) {
        return tr("This journal is a copy, taken along as %1: bring it back from the History page "
                  "of the journal that it comes from.")
            .arg(taken(**own));
    }
    QStringList names;
    for (const TakenCopy& copy : m_journal.copies().copies().value_or(std::vector<TakenCopy>())) {
        names << taken(copy);
    }
    return names.isEmpty() ? QString()
                           : tr("Taken along: %1.").arg(names.join(QStringLiteral(", ")));
}

std::optional<Backup> BackupCard::chosen() const
{
    const int row = m_list->currentIndex();
    return row < 0 || row >= int(m_backups.size()) ? std::nullopt
                                                   : std::optional(m_backups[std::size_t(row)]);
}

void BackupCard::chooseFolder()
{
    m_services.ask.folder(this, tr("Where backups are kept"), [this](const QString& chosen) {
        m_services.preferences.set(Preference::BackupFolder, chosen);
        reload();
    });
}

void BackupCard::keepBeside()
{
    m_services.preferences.set(Preference::BackupFolder, QString());
    reload();
}

void BackupCard::takeAlong()
{
    takeCopyAlong(m_journal, m_services, this);
}

void BackupCard::makeNow()
{
    m_services.tasks.run(
        tr("Backing up"), BackupKeeper::workOn(m_journal, m_services.preferences), this,
        [this](const Result<BackupMade>& made) {
            reload();
            if (!made) {
                m_services.messages.refuse(sentence(made.error()));
            } else if (made->photosMissing > 0) {
                m_services.messages.refuse(
                    tr("Backed up and checked, but %n photograph(s) were not in their folder.", "",
                       made->photosMissing));
            } else {
                m_services.messages.tell(tr("Backed up and checked."));
            }
        });
}

void BackupCard::look()
{
    const auto backup = chosen();
    if (!backup) {
        return;
    }
    m_services.tasks.run(
        tr("Looking at the backup"),
        [kept = store(), one = *backup](const Progress&) { return kept.look(one); }, this,
        [this](const Result<BackupContent>& content) {
            m_content->show();
            if (!content) {
                m_content->setText(sentence(content.error()));
                return;
            }
            QStringList parts = {tr("%n tray(s)", "", int(content->trays)),
                                 tr("%n watering(s)", "", int(content->waterings)),
                                 tr("%n cut(s)", "", int(content->harvests)),
                                 tr("%n photograph(s)", "", int(content->photos))};
            if (content->photosMissing > 0) {
                parts << tr("%n of them missing", "", int(content->photosMissing));
            }
            m_content->setText(tr("Sound: %1.").arg(parts.join(", ")));
        });
}

void BackupCard::bringBack()
{
    const auto backup = chosen();
    if (!backup) {
        return;
    }
    const QFileInfo journal(pathText(m_journal.path()));
    const QString preset = QStringLiteral("%1/%2 of %3.plumule")
                               .arg(journal.path(), journal.completeBaseName(),
                                    QString::fromStdString(toIso(backup->at.date)));
    m_services.ask.fileToSave(
        this, tr("Bring the backup back as a new journal"), preset,
        tr("Plumule journals (*.plumule)"), [this, one = *backup](const QString& target) {
            bringBackTo(one, target.endsWith(".plumule") ? target : target + ".plumule");
        });
}

void BackupCard::bringBackTo(const Backup& backup, const QString& target)
{
    m_services.tasks.run(
        tr("Bringing back"),
        [kept = store(), backup, file = target.toStdString()](const Progress& progress) {
            return kept.bringBack(backup, file, progress);
        },
        this,
        [this, target](const Done& done) {
            if (!done) {
                m_services.messages.refuse(sentence(done.error()));
                return;
            }
            Q_EMIT journalAsked(target);
        });
}

} // namespace plumule::ui

#include "moc_backup_card.cpp"
