#pragma once

#include "core/base/clock.h"
#include "core/journal/ledger/change.h"
#include "core/journal/ledger/journal_reason.h"
#include "core/storage/history.h"
#include "core/storage/journal_file.h"
#include "core/storage/recording.h"

#include <exception>
#include <type_traits>

namespace plumule {

// What every room's entries write through: one intention is one transaction and one history entry,
// and what the machine breaks is turned into an Error here, once.
class Ledger
{
public:
    Ledger(JournalFile file, const Clock& clock);

    [[nodiscard]] const Clock& clock() const { return m_clock; }
    [[nodiscard]] Database& database() const { return *m_file.database; }
    [[nodiscard]] bool isReadOnly() const;
    [[nodiscard]] const std::filesystem::path& path() const { return m_file.path; }
    [[nodiscard]] FolderKind folder() const { return m_file.folder; }
    [[nodiscard]] const JournalFile& file() const { return m_file; }
    // Where photographs are kept: "<journal without ending> photos" beside it.
    [[nodiscard]] std::filesystem::path photoFolder() const;
    [[nodiscard]] const std::optional<Error>& readOnlyBecause() const
    {
        return m_file.readOnlyBecause;
    }

    // Runs `work(Database&, Deed&) -> Result<T>` as one intention. An error it returns rolls
    // everything back. ReadOnly where the journal may not be written. What `work` writes into the
    // deed goes into the history.
    template <class Work>
    auto record(Intention intention, Work work) -> std::invoke_result_t<Work, Database&, Deed&>
    {
        using Answer = std::invoke_result_t<Work, Database&, Deed&>;
        if (isReadOnly()) {
            return fail(ErrorKind::ReadOnly, JournalReason::ReadOnly);
        }
        std::vector<Change> changes;
        m_didLastChange = false;
        Answer answer = guarded([&]() -> Answer {
            Transaction transaction(database());
            Recording recording(database());
            Deed deed{intention, {}, {}};
            Answer done = work(database(), deed);
            if (!done) {
                return done;
            }
            changes = changesOf(recording.finish(m_clock.utcMilliseconds(), toText(deed.what),
                                                 deed.whom, deed.with));
            transaction.commit();
            return done;
        });
        if (answer) {
            m_didLastChange = !changes.empty();
            announce(changes);
        } else if (m_refusalListener) {
            m_refusalListener(intention, answer.error());
        }
        return answer;
    }

    // Runs `work(Database&) -> Result<T>` as one transaction that is no intention: it can't be
    // undone and nobody is told. ReadOnly and errors as with record().
    template <class Work>
    auto writeUnrecorded(Work work) -> std::invoke_result_t<Work, Database&>
    {
        using Answer = std::invoke_result_t<Work, Database&>;
        if (isReadOnly()) {
            return fail(ErrorKind::ReadOnly, JournalReason::ReadOnly);
        }
        return guarded([&]() -> Answer {
            Transaction transaction(database());
            Answer done = work(database());
            if (done) {
                transaction.commit();
            }
            return done;
        });
    }

    // Runs `work(Database&)`, which only reads, on one state of the journal: it returns a T or a
    // Result<T>; the answer is a Result<T>. An ask within an ask reads the same state.
    template <class Work>
    auto ask(Work work)
    {
        using Given = std::invoke_result_t<Work, Database&>;
        using Answer = std::conditional_t<IsResult<Given>::value, Given, Result<Given>>;
        return guarded([&]() -> Answer {
            const ReadTransaction oneState(database());
            return work(database());
        });
    }

    // Whether the intention recorded last changed anything; only then has it a history entry.
    [[nodiscard]] bool didLastIntentionChange() const { return m_didLastChange; }

    // As History's, under the StandingRules; what was applied is announced.
    Result<HistoryEntry> undo(HistoryId id = {});
    // As History's, under the StandingRules: nothing is written, nobody is told.
    [[nodiscard]] Result<std::vector<RowEffect>> foreseeUndo(HistoryId id);
    Result<HistoryEntry> redo();
    [[nodiscard]] History history() { return History(database()); }

    // Tells the listeners what another hand of the same journal wrote, as if it was recorded here.
    void hear(const std::vector<Change>& changes);
    int addListener(ChangeListener listener);
    void removeListener(int number);
    // Told of each intention that was refused; one at a time.
    void setRefusalListener(RefusalListener listener) { m_refusalListener = std::move(listener); }

private:
    template <class T>
    struct IsResult : std::false_type
    {};
    template <class T>
    struct IsResult<Result<T>> : std::true_type
    {};

    template <class Work>
    auto guarded(Work work) -> std::invoke_result_t<Work>
    {
        try {
            return work();
        } catch (const StorageFailure& failure) {
            return passOn(failure.error());
        } catch (const std::exception& failure) {
            // The last resort: what a file's cells may still bring about beyond the checks.
            return fail(ErrorKind::Damaged, JournalReason::Unexpected, std::string(failure.what()));
        }
    }
    static std::vector<Change> changesOf(const std::vector<ChangedRows>& rows);
    void announce(const std::vector<Change>& changes);
    Result<HistoryEntry> applied(const Result<History::Applied>& result);

    JournalFile m_file;
    const Clock& m_clock;
    std::vector<std::pair<int, ChangeListener>> m_listeners;
    RefusalListener m_refusalListener;
    int m_nextListener = 1;
    bool m_didLastChange = false;
};

} // namespace plumule
