#pragma once

#include "core/base/clock.h"
#include "core/storage/history.h"
#include "core/storage/journal_file.h"

#include <functional>
#include <type_traits>

namespace plumule {

// Which concept a change belongs to, for those who show it.
enum class Concept
{
    Room,
    Variety,
    Medium,
    Trial,
    Tray,
    Watering,
    Harvest,
    Cost
};

struct Change
{
    Concept about = Concept::Tray;
    std::int64_t id = 0; // of the row that changed
};

using ChangeListener = std::function<void(const std::vector<Change>&)>;

// What every room's entries write through: one intention is one transaction and one history entry,
// and what the machine breaks is turned into an Error here, once.
class Ledger
{
public:
    Ledger(JournalFile file, const Clock& clock);

    [[nodiscard]] const Clock& clock() const { return m_clock; }
    [[nodiscard]] Database& database() const { return *m_file.database; }
    [[nodiscard]] bool isReadOnly() const;
    // Where photographs are kept: "<journal without ending> photos" beside it.
    [[nodiscard]] std::filesystem::path photoFolder() const;
    [[nodiscard]] const std::optional<Error>& readOnlyBecause() const
    {
        return m_file.readOnlyBecause;
    }

    // Runs `work(Database&, std::string& subject) -> Result<T>` as one intention. An error it
    // returns rolls everything back. ReadOnly where the journal may not be written. `subject` is
    // the grower's word for what it was done to, for the history.
    template <class Work>
    auto record(const std::string& intention, Work work)
        -> std::invoke_result_t<Work, Database&, std::string&>
    {
        using Answer = std::invoke_result_t<Work, Database&, std::string&>;
        if (isReadOnly()) {
            return fail(ErrorKind::ReadOnly, "journal");
        }
        std::vector<Change> changes;
        m_didLastChange = false;
        Answer answer = guarded([&]() -> Answer {
            Transaction transaction(database());
            Recording recording(database());
            std::string subject;
            Answer done = work(database(), subject);
            if (!done) {
                transaction.rollback();
                return done;
            }
            changes = changesOf(recording.finish(m_clock.utcMilliseconds(), intention, subject));
            transaction.commit();
            return done;
        });
        if (answer) {
            m_didLastChange = !changes.empty();
            announce(changes);
        }
        return answer;
    }

    // Runs `work(Database&)`, which only reads: it returns a T or a Result<T>; the answer is a
    // Result<T>.
    template <class Work>
    auto ask(Work work)
    {
        using Answer = std::invoke_result_t<Work, Database&>;
        if constexpr (IsResult<Answer>::value) {
            return guarded([&]() -> Answer { return work(database()); });
        } else {
            return guarded([&]() -> Result<Answer> { return work(database()); });
        }
    }

    // Whether the intention recorded last changed anything; only then has it a history entry.
    [[nodiscard]] bool didLastIntentionChange() const { return m_didLastChange; }

    // As History's; what was applied is announced.
    Result<HistoryEntry> undo(HistoryId id = {});
    Result<HistoryEntry> redo();
    [[nodiscard]] History history() { return History(database()); }

    int addListener(ChangeListener listener);
    void removeListener(int number);

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
            return tl::unexpected<Error>(failure.error());
        }
    }
    static std::vector<Change> changesOf(const std::vector<ChangedRow>& rows);
    void announce(const std::vector<Change>& changes);
    Result<HistoryEntry> applied(const Result<History::Applied>& result);

    JournalFile m_file;
    const Clock& m_clock;
    std::vector<std::pair<int, ChangeListener>> m_listeners;
    int m_nextListener = 1;
    bool m_didLastChange = false;
};

} // namespace plumule
