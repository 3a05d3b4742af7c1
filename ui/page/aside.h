#pragma once

#include "core/journal/journal.h"
#include "ui/page/latest.h"
#include "ui/page/tasks.h"

namespace plumule::ui {

// Runs `work(Journal&, const Progress&) -> Result<T>` off the window's thread, on a journal of its
// own that is only read, then `done(const Result<T>&)` on this one, unless `receiver` is gone by
// then.
template <class Work, class DoneCall>
void askAside(Tasks& tasks, const QString& name, const Journal& journal, Work work,
              QObject* receiver, DoneCall done)
{
    using Answer = std::invoke_result_t<Work, Journal&, const Progress&>;
    tasks.run(
        name,
        [path = journal.path(), &clock = journal.clock(),
         work = std::move(work)](const Progress& progress) -> Answer {
            const auto opened = Journal::open(path, clock, Access::ReadOnly);
            return opened ? work(**opened, progress) : Answer(passOn(opened));
        },
        receiver, std::move(done));
}

// A page's questions: only the answer to the latest one is handed on.
class Aside
{
public:
    // The receiver holds this.
    Aside(const Journal& journal, Tasks& tasks, QObject* receiver)
        : m_journal(journal)
        , m_tasks(tasks)
        , m_receiver(receiver)
    {}

    // As askAside().
    template <class Work, class DoneCall>
    void ask(const QString& name, Work work, DoneCall done)
    {
        askAside(m_tasks, name, m_journal, std::move(work), m_receiver,
                 m_latest.only(std::move(done)));
    }

    // As Latest has it.
    void forget() { m_latest.forget(); }

private:
    const Journal& m_journal;
    Tasks& m_tasks;
    QObject* m_receiver;
    Latest m_latest;
};

} // namespace plumule::ui
