// Part of ui/text/text.h: what was done.
#include "ui/text/text.h"

#include <QCoreApplication>
#include <QHash>

namespace plumule::ui {

QString sentence(const HistoryEntry& entry)
{
    static const QHash<QString, const char*> kSentences = {
        {"tray.sow", QT_TRANSLATE_NOOP("History", "Sowed %1")},
        {"tray.move_on", QT_TRANSLATE_NOOP("History", "Moved %1 on")},
        {"tray.not_yet", QT_TRANSLATE_NOOP("History", "%1: not yet")},
        {"tray.correct_start", QT_TRANSLATE_NOOP("History", "Corrected a start of %1")},
        {"tray.discard", QT_TRANSLATE_NOOP("History", "Discarded %1")},
        {"tray.move_to", QT_TRANSLATE_NOOP("History", "Moved %1 to another place")},
        {"tray.set_aside", QT_TRANSLATE_NOOP("History", "Set %1 aside or back")},
        {"tray.change_sowing", QT_TRANSLATE_NOOP("History", "Corrected the sowing of %1")},
        {"tray.note_height", QT_TRANSLATE_NOOP("History", "Noted a height of %1")},
        {"tray.remove_height", QT_TRANSLATE_NOOP("History", "Removed a height of %1")},
        {"tray.write_note", QT_TRANSLATE_NOOP("History", "Wrote a note on %1")},
        {"tray.remove_note", QT_TRANSLATE_NOOP("History", "Removed a note on %1")},
        {"tray.attach_photo", QT_TRANSLATE_NOOP("History", "Added a photo of %1")},
        {"tray.remove_photo", QT_TRANSLATE_NOOP("History", "Removed a photo of %1")},
        {"watering.tick", QT_TRANSLATE_NOOP("History", "Watered %1")},
        {"watering.tick_all", QT_TRANSLATE_NOOP("History", "Watered %1")},
        {"watering.untick", QT_TRANSLATE_NOOP("History", "Took the tick off %1")},
        {"watering.need_nothing", QT_TRANSLATE_NOOP("History", "Found that %1 needed no water")},
        {"watering.between", QT_TRANSLATE_NOOP("History", "Watered %1 as needed")},
        {"watering.remove", QT_TRANSLATE_NOOP("History", "Took a watering of %1 out")},
        {"watering.correct", QT_TRANSLATE_NOOP("History", "Corrected a watering of %1")},
        {"watering.note_reading", QT_TRANSLATE_NOOP("History", "Noted a reading of the water %1")},
        {"watering.change_recipe", QT_TRANSLATE_NOOP("History", "Changed the recipe of %1")},
        {"harvest.record", QT_TRANSLATE_NOOP("History", "Weighed %1")},
        {"harvest.record_residue", QT_TRANSLATE_NOOP("History", "Weighed the residue of %1")},
        {"harvest.correct", QT_TRANSLATE_NOOP("History", "Corrected a weight of %1")},
        {"harvest.remove", QT_TRANSLATE_NOOP("History", "Removed a weight of %1")},
        {"tray.import", QT_TRANSLATE_NOOP("History", "Imported %1")},
        {"tray.count_again", QT_TRANSLATE_NOOP("History", "Counted %1 again")},
        {"price.save", QT_TRANSLATE_NOOP("History", "Saved the price of %1")},
        {"price.remove", QT_TRANSLATE_NOOP("History", "Removed the price of %1")},
        {"labour.change", QT_TRANSLATE_NOOP("History", "Changed the minutes of %1")},
        {"room.change", QT_TRANSLATE_NOOP("History", "Changed the room %1")},
        {"rack.add", QT_TRANSLATE_NOOP("History", "Added rack %1")},
        {"rack.change", QT_TRANSLATE_NOOP("History", "Changed rack %1")},
        {"rack.remove", QT_TRANSLATE_NOOP("History", "Removed rack %1")},
        {"shelf.add", QT_TRANSLATE_NOOP("History", "Added shelf %1")},
        {"shelf.change", QT_TRANSLATE_NOOP("History", "Changed shelf %1")},
        {"shelf.remove", QT_TRANSLATE_NOOP("History", "Removed shelf %1")},
        {"shelf.set_places", QT_TRANSLATE_NOOP("History", "Changed the places of shelf %1")},
        {"variety.add", QT_TRANSLATE_NOOP("History", "Added the variety %1")},
        {"variety.change", QT_TRANSLATE_NOOP("History", "Changed the variety %1")},
        {"variety.remove", QT_TRANSLATE_NOOP("History", "Removed the variety %1")},
        {"seed_lot.add", QT_TRANSLATE_NOOP("History", "Added seed lot %1")},
        {"seed_lot.change", QT_TRANSLATE_NOOP("History", "Changed seed lot %1")},
        {"seed_lot.remove", QT_TRANSLATE_NOOP("History", "Removed seed lot %1")},
        {"seed_lot.count", QT_TRANSLATE_NOOP("History", "Counted seed lot %1")},
        {"medium.add", QT_TRANSLATE_NOOP("History", "Added the medium %1")},
        {"medium.change", QT_TRANSLATE_NOOP("History", "Changed the medium %1")},
        {"medium.remove", QT_TRANSLATE_NOOP("History", "Removed the medium %1")},
        {"piece.add", QT_TRANSLATE_NOOP("History", "Added pieces: %1")},
        {"piece.change", QT_TRANSLATE_NOOP("History", "Changed piece %1")},
        {"piece.retire", QT_TRANSLATE_NOOP("History", "Retired piece %1")},
        {"piece.sanitise", QT_TRANSLATE_NOOP("History", "Sanitised %1")},
        {"trial.add", QT_TRANSLATE_NOOP("History", "Added trial %1")},
        {"trial.change", QT_TRANSLATE_NOOP("History", "Changed trial %1")},
        {"trial.remove", QT_TRANSLATE_NOOP("History", "Removed trial %1")},
        {"tasting.plan", QT_TRANSLATE_NOOP("History", "Planned the tasting %1")},
        {"tasting.score", QT_TRANSLATE_NOOP("History", "Entered a score of %1")},
        {"tasting.clear_score", QT_TRANSLATE_NOOP("History", "Took a score of %1 out")},
        {"tasting.close", QT_TRANSLATE_NOOP("History", "Closed the tasting %1")},
        {"tasting.remove", QT_TRANSLATE_NOOP("History", "Removed the tasting %1")},
        {"trial.plan", QT_TRANSLATE_NOOP("History", "Kept the plan of trial %1")},
        {"trial.sow", QT_TRANSLATE_NOOP("History", "Sowed trial %1")},
    };
    const QString subject = QString::fromStdString(entry.subject);
    const auto found = kSentences.constFind(QString::fromStdString(entry.intention));
    const QString text = found == kSentences.cend()
                             ? QCoreApplication::translate("History", "Changed %1")
                             : QCoreApplication::translate("History", found.value());
    return text.arg(subject).trimmed() + '.';
}

} // namespace plumule::ui
