#include "ui/page/undoing.h"

#include "core/journal/room/room_entries.h"
#include "ui/page/message_bar.h"
#include "ui/text/text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

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

void offerUndo(Journal& journal, MessageBar& messages, const QString& done, HistoryId act)
{
    messages.tell(done, QCoreApplication::translate("Undoing", "Undo"),
                  [&journal, &messages, act] { takeBack(journal, messages, act); });
}

} // namespace

void tellLast(Journal& journal, MessageBar& messages)
{
    if (const auto latest = actJustDone(journal)) {
        offerUndo(journal, messages, told(journal, *latest), latest->id);
    }
}

void tellDone(Journal& journal, MessageBar& messages, const QString& done)
{
    if (const auto latest = actJustDone(journal)) {
        offerUndo(journal, messages, done, latest->id);
    } else {
        messages.tell(done);
    }
}

void takeBack(Journal& journal, MessageBar& messages, HistoryId act)
{
    const auto undone = journal.undo(act);
    if (!undone) {
        messages.refuse(sentence(undone.error()));
        return;
    }
    messages.tell(
        QCoreApplication::translate("Undoing", "Taken back: %1").arg(told(journal, *undone)),
        QCoreApplication::translate("Undoing", "Redo"),
        [&journal, &messages] { doAgain(journal, messages); });
}

void doAgain(Journal& journal, MessageBar& messages)
{
    const auto redone = journal.redo();
    if (!redone) {
        messages.refuse(sentence(redone.error()));
        return;
    }
    offerUndo(journal, messages, told(journal, *redone), redone->id);
}

} // namespace plumule::ui
