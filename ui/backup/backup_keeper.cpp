#include "ui/backup/backup_keeper.h"

#include <QTimer>

namespace plumule::ui {

BackupKeeper::BackupKeeper(Journal& journal, const Preferences& preferences, QObject* parent)
    : QObject(parent)
    , m_journal(journal)
    , m_preferences(preferences)
{
    const auto backups = storeOf(journal, preferences).list();
    if (!backups.empty()) {
        m_madeOn = backups.front().at.date;
    }
    m_listener = m_journal.addListener([this](const std::vector<Change>&) { begin(); });
}

BackupKeeper::~BackupKeeper()
{
    m_journal.removeListener(m_listener);
}

BackupStore BackupKeeper::storeOf(const Journal& journal, const Preferences& preferences)
{
    return BackupStore::of(journal.path(),
                           preferences.get(Preference::BackupFolder).toString().toStdString());
}

std::function<Result<BackupMade>(const Progress&)>
BackupKeeper::workOn(const Journal& journal, const Preferences& preferences)
{
    return [store = storeOf(journal, preferences), path = journal.path(),
            &clock = journal.clock()](const Progress& progress) -> Result<BackupMade> {
        const auto opened = Journal::open(path, clock, Access::ReadOnly);
        return opened ? (*opened)->backUpInto(store, progress) : Result<BackupMade>(passOn(opened));
    };
}

void BackupKeeper::lookAtStart()
{
    const BackupStore store = storeOf(m_journal, m_preferences);
    std::error_code failed;
    const bool isThere = std::filesystem::is_directory(store.folder(), failed);
    const bool isChosen = !m_preferences.get(Preference::BackupFolder).toString().isEmpty();
    if (isChosen && !isThere) {
        warn(fail(ErrorKind::NotFound, BackupReason::FolderGone, store.folder().string()).value());
        return;
    }
    const auto backups = store.list();
    if (!backups.empty()) {
        m_tasks.run(
            tr("Looking at the latest backup"),
            [store, newest = backups.front()](const Progress&) { return store.look(newest); }, this,
            [this](const Result<BackupContent>& content) {
                if (!content) {
                    warn(content.error());
                    m_madeOn.reset(); // the next change makes a sound one
                }
            });
    }
}

void BackupKeeper::begin()
{
    if (isDoneToday() || m_tasks.isBusy() || m_journal.isReadOnly()) {
        return;
    }
    m_tasks.run(tr("Backing up"), workOn(m_journal, m_preferences), this,
                [this](const Result<BackupMade>& made) { finish(made); });
}

void BackupKeeper::finish(const Result<BackupMade>& made)
{
    if (!made) {
        if (made.error().kind != ErrorKind::Cancelled) {
            warn(made.error());
        }
        return;
    }
    m_madeOn = made->backup.at.date;
    Q_EMIT this->made(*made);
}

void BackupKeeper::warn(const Error& error)
{
    const Date today = m_journal.clock().today();
    if (m_warnedOn == today) {
        return;
    }
    m_warnedOn = today;
    Q_EMIT warned(tr("No backup was made. %1").arg(sentence(error)));
}

} // namespace plumule::ui

#include "moc_backup_keeper.cpp"
