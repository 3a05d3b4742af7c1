#pragma once

#include "core/journal/journal.h"
#include "ui/paper/paper.h"
#include "ui/text/text.h"

#include <map>

namespace plumule::ui {

// Everything on the sheet that is taken along to sow a trial.
struct PrepSheet
{
    TrialDraft draft;
    Preparation preparation;
    RoomLayout layout;
    std::map<MediumId, Medium> media;
    Protocol protocol;
    std::optional<SeedLot> lot;
    UnitText units;
};

[[nodiscard]] Result<PrepSheet> prepSheetOf(Journal& journal, const TrialDraft& draft);

// One thing to do, with when.
struct PrepStep
{
    QString when;
    QString what;
};
[[nodiscard]] std::vector<PrepStep> prepSteps(const PrepSheet& sheet);
[[nodiscard]] QStringList prepCautions(const PrepSheet& sheet);

// A4, or Letter where the room shows US customary units. False where the file can't be written; a
// file that stands there already is then left as it is.
[[nodiscard]] Done writePrepSheet(const PrepSheet& sheet, const QString& pdfPath);
// On a printer that has been set up. False where it can't be begun.
[[nodiscard]] bool printPrepSheet(const PrepSheet& sheet, QPagedPaintDevice& paper);

} // namespace plumule::ui
