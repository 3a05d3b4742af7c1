#pragma once

#include "ui/page/page.h"

#include <functional>

namespace plumule::ui {

// Makes a backup at the first change of a day, in the background. A folder that is gone, and a
// backup that failed, are told once a day; the next change tries again.
class BackupKeeper : public QObject
{
    Q_OBJECT

public:
    BackupKeeper(Journal& journal, const Preferences& preferences, QObject* parent = nullptr);
    // Stops what runs and waits for it.
    ~BackupKeeper() override;

    // Where this journal's backups are kept.
    [[nodiscard]] static BackupStore storeOf(const Journal& journal,
                                             const Preferences& preferences);

    // The work of one backup, for a thread of its own.
    [[nodiscard]] static std::function<Result<BackupMade>(const Progress&)>
    workOn(const Journal& journal, const Preferences& preferences);

    // Warns where the chosen folder can't be reached, or the newest backup is no longer sound. For
    // the start.
    void lookAtStart();
    // Whether today's is there or being made.
    [[nodiscard]] bool isDoneToday() const { return m_madeOn == m_journal.clock().today(); }

Q_SIGNALS:
    void made(const plumule::BackupMade& made);
    void warned(const QString& sentence);

private:
    void begin();
    void finish(const Result<BackupMade>& made);
    void warn(const Error& error);

    Journal& m_journal;
    const Preferences& m_preferences;
    Tasks m_tasks; // of its own: the window's bar is for what the grower asked for
    std::optional<Date> m_madeOn;
    std::optional<Date> m_warnedOn;
    int m_listener = 0;
};

} // namespace plumule::ui
