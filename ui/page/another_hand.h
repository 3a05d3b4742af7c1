#pragma once

#include "core/journal/journal.h"
#include "ui/page/tasks.h"
#include "ui/page/wait_dialog.h"

#include <QApplication>

namespace plumule::ui {

// Work that writes much: by another hand on the journal, off the window's thread. Runs
// `work(Journal&, const Progress&) -> Result<T>`; the journal hears what it wrote, then
// `done(const Result<T>&)` is called on this thread, unless `receiver` is gone by then. The window
// is to write nothing meanwhile: it would wait until the hand is done.
template <class Work, class DoneCall>
void byAnotherHand(Journal& journal, Tasks& tasks, const QString& name, Work work,
                   QObject* receiver, DoneCall done)
{
    using Answer = std::invoke_result_t<Work, Journal&, const Progress&>;
    struct Written
    {
        typename Answer::value_type answer;
        std::vector<Change> changes;
    };
    auto beside = journal.beside();
    if (!beside) {
        done(Answer(passOn(beside)));
        return;
    }
    tasks.run(
        name,
        [lent = std::make_shared<std::unique_ptr<Journal>>(std::move(*beside)),
         work = std::move(work)](const Progress& progress) -> Result<Written> {
            const std::unique_ptr<Journal> hand = std::move(*lent); // closed before this is over
            std::vector<Change> changes;
            hand->addListener([&changes](const std::vector<Change>& written) {
                changes.insert(changes.end(), written.begin(), written.end());
            });
            auto answer = work(*hand, progress);
            return answer ? Result<Written>(Written{std::move(*answer), std::move(changes)})
                          : Result<Written>(passOn(answer));
        },
        receiver,
        [&journal, done = std::move(done)](const Result<Written>& written) {
            if (!written) {
                done(Answer(passOn(written)));
                return;
            }
            journal.hear(written->changes);
            done(Answer(written->answer));
        });
}

// The same while the window is shut behind a word of what is done.
template <class Work, class DoneCall>
void waitForAnotherHand(Journal& journal, Tasks& tasks, const QString& doing, Work work,
                        DoneCall done)
{
    auto* wait = new WaitDialog(doing, QApplication::activeWindow());
    wait->open();
    byAnotherHand(journal, tasks, doing, std::move(work), wait,
                  [wait, done = std::move(done)](const auto& answer) {
                      wait->finish();
                      done(answer);
                  });
}

} // namespace plumule::ui
