#include "ui/page/undoing.h"

#include "core/journal/room/room_entries.h"
#include "ui/page/another_hand.h"
#include "ui/page/page.h"
#include "ui/text/text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

class Undoing
{
    Q_DECLARE_TR_FUNCTIONS(Undoing)
};

constexpr std::int64_t kManyRows = 2'000; // about a tenth of a second

// The act just done, where it can be taken back: one that changed nothing has no entry, and the
// newest entry is then another's.
std::optional<HistoryEntry> actJustDone(Journal& journal)
{
    return journal.didLastIntentionChange() ? journal.nextUndo() : std::nullopt;
}

QString told(Journal& journal, const HistoryEntry& entry)
{
    const auto layout = journal.room().layout();
    return sentence(entry, layout ? layout->room.units : UnitSystem::Metric);
}

void offerUndo(Journal& journal, const Services& services, const QString& done,
               const HistoryEntry& act)
{
    services.messages.tell(done, Undoing::tr("Undo"),
                           [&journal, services, act] { takeBack(journal, services, act); });
}

// Takes the act back or does it again, as `step` does; `words` of so many rows say which.
void take(Journal& journal, const Services& services, const std::optional<HistoryEntry>& act,
          const std::function<QString(int rows)>& words,
          const std::function<Result<HistoryEntry>(Journal&)>& step,
          const std::function<void(const HistoryEntry&)>& done)
{
    const auto finish = [services, done](const Result<HistoryEntry>& taken) {
        if (taken) {
            done(*taken);
        } else {
            services.messages.refuse(sentence(taken.error()));
        }
    };
    if (!act || !isLarge(*act)) {
        finish(step(journal));
        return;
    }
    waitForAnotherHand(
        journal, services.tasks, words(static_cast<int>(act->rowCount)),
        [step](Journal& hand, const Progress&) { return step(hand); }, finish);
}

} // namespace

bool isLarge(const HistoryEntry& act)
{
    return act.rowCount > kManyRows;
}

void tellLast(Journal& journal, const Services& services)
{
    if (const auto latest = actJustDone(journal)) {
        offerUndo(journal, services, told(journal, *latest), *latest);
    }
}

void tellDone(Journal& journal, const Services& services, const QString& done)
{
    if (const auto latest = actJustDone(journal)) {
        offerUndo(journal, services, done, *latest);
    } else {
        services.messages.tell(done);
    }
}

void takeBack(Journal& journal, const Services& services, const std::optional<HistoryEntry>& act)
{
    const HistoryId id = act ? act->id : HistoryId();
    take(
        journal, services, act ? act : journal.nextUndo(),
        [](int rows) { return Undoing::tr("Taking %n row(s) back …", nullptr, rows); },
        [id](Journal& hand) { return hand.undo(id); },
        [&journal, services](const HistoryEntry& undone) {
            services.messages.tell(Undoing::tr("Taken back: %1").arg(told(journal, undone)),
                                   Undoing::tr("Redo"),
                                   [&journal, services] { doAgain(journal, services); });
        });
}

void doAgain(Journal& journal, const Services& services)
{
    take(
        journal, services, journal.nextRedo(),
        [](int rows) { return Undoing::tr("Writing %n row(s) again …", nullptr, rows); },
        [](Journal& hand) { return hand.redo(); },
        [&journal, services](const HistoryEntry& redone) {
            offerUndo(journal, services, told(journal, redone), redone);
        });
}

} // namespace plumule::ui
