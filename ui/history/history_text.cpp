#include "ui/history/history_text.h"

#include "ui/text/cell_text.h"
#include "ui/text/key_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <map>

namespace plumule::ui {
namespace {

class ActsTr
{
    Q_DECLARE_TR_FUNCTIONS(Acts)
};

// A table or a column in the grower's words.
constexpr std::array kTables = {
    KeyText{"tray", QT_TRANSLATE_NOOP("Acts", "%n tray(s)")},
    KeyText{"tray_stage", QT_TRANSLATE_NOOP("Acts", "%n stage(s)")},
    KeyText{"stay", QT_TRANSLATE_NOOP("Acts", "%n stay(s) on a place")},
    KeyText{"height", QT_TRANSLATE_NOOP("Acts", "%n height(s)")},
    KeyText{"tray_note", QT_TRANSLATE_NOOP("Acts", "%n note(s)")},
    KeyText{"photo", QT_TRANSLATE_NOOP("Acts", "%n photograph(s)")},
    KeyText{"watering", QT_TRANSLATE_NOOP("Acts", "%n watering(s)")},
    KeyText{"watering_look", QT_TRANSLATE_NOOP("Acts", "%n look(s) without need")},
    KeyText{"water_reading", QT_TRANSLATE_NOOP("Acts", "%n reading(s) of pH or EC")},
    KeyText{"water_recipe", QT_TRANSLATE_NOOP("Acts", "%n recipe(s)")},
    KeyText{"harvest", QT_TRANSLATE_NOOP("Acts", "%n cut(s)")},
    KeyText{"bowl", QT_TRANSLATE_NOOP("Acts", "%n bowl(s)")},
    KeyText{"residue", QT_TRANSLATE_NOOP("Acts", "%n residue(s)")},
    KeyText{"price", QT_TRANSLATE_NOOP("Acts", "%n price(s)")},
    KeyText{"labour_task", QT_TRANSLATE_NOOP("Acts", "%n time(s) of work")},
    KeyText{"work_time", QT_TRANSLATE_NOOP("Acts", "%n timing(s) of work")},
    KeyText{"room", QT_TRANSLATE_NOOP("Acts", "the room")},
    KeyText{"rack", QT_TRANSLATE_NOOP("Acts", "%n rack(s)")},
    KeyText{"shelf", QT_TRANSLATE_NOOP("Acts", "shelves: %n")},
    KeyText{"place", QT_TRANSLATE_NOOP("Acts", "%n place(s)")},
    KeyText{"variety", QT_TRANSLATE_NOOP("Acts", "%n variet(ies)")},
    KeyText{"protocol_stage", QT_TRANSLATE_NOOP("Acts", "%n stage(s) of a protocol")},
    KeyText{"seed_lot", QT_TRANSLATE_NOOP("Acts", "%n seed lot(s)")},
    KeyText{"stock_correction", QT_TRANSLATE_NOOP("Acts", "%n count(s) of seed")},
    KeyText{"medium", QT_TRANSLATE_NOOP("Acts", "media: %n")},
    KeyText{"medium_group", QT_TRANSLATE_NOOP("Acts", "%n group(s) of media")},
    KeyText{"piece", QT_TRANSLATE_NOOP("Acts", "%n piece(s)")},
    KeyText{"sanitising", QT_TRANSLATE_NOOP("Acts", "%n sanitising(s)")},
    KeyText{"supply", QT_TRANSLATE_NOOP("Acts", "supplies: %n")},
    KeyText{"supply_count", QT_TRANSLATE_NOOP("Acts", "%n count(s) of supplies")},
    KeyText{"trial", QT_TRANSLATE_NOOP("Acts", "%n trial(s)")},
    KeyText{"trial_plan", QT_TRANSLATE_NOOP("Acts", "%n plan(s) of a trial")},
    KeyText{"planned_tray", QT_TRANSLATE_NOOP("Acts", "%n planned tray(s)")},
    KeyText{"panel", QT_TRANSLATE_NOOP("Acts", "%n tasting(s)")},
    KeyText{"serving", QT_TRANSLATE_NOOP("Acts", "%n serving(s)")},
    KeyText{"score", QT_TRANSLATE_NOOP("Acts", "%n score(s)")},
    KeyText{"season", QT_TRANSLATE_NOOP("Acts", "%n season(s)")},
    KeyText{"climate_logger", QT_TRANSLATE_NOOP("Acts", "%n climate logger(s)")},
    KeyText{"climate_hour", QT_TRANSLATE_NOOP("Acts", "%n hour(s) of climate")},
    KeyText{"shelf_ppfd", QT_TRANSLATE_NOOP("Acts", "light of shelves: %n")},
    KeyText{"repeat_sowing", QT_TRANSLATE_NOOP("Acts", "%n repeating sowing(s)")},
    KeyText{"repeat_day", QT_TRANSLATE_NOOP("Acts", "%n day(s) of a repeating sowing")},
    KeyText{"promised_order", QT_TRANSLATE_NOOP("Acts", "%n order(s)")},
    KeyText{"order_cut", QT_TRANSLATE_NOOP("Acts", "%n cut(s) put to orders")},
};

// Null where it is not among them.
// Tables that hold what goes without saying are counted together, last.
QString countsText(const std::map<std::string, int>& counts)
{
    QStringList texts;
    int others = 0;
    for (const auto& [table, count] : counts) {
        if (const char* const text = textOf(kTables, table)) {
            texts << ActsTr::tr(text, nullptr, count);
        } else {
            others += count;
        }
    }
    if (others > 0) {
        texts << ActsTr::tr("other entries: %n", nullptr, others);
    }
    return texts.join(", ");
}

} // namespace

QStringList effectWords(const std::vector<RowEffect>& effects)
{
    std::map<ChangeKind, std::map<std::string, int>> counts;
    for (const RowEffect& effect : effects) {
        ++counts[effect.kind][effect.table];
    }
    QStringList lines;
    if (const auto gone = counts.find(ChangeKind::Delete); gone != counts.end()) {
        lines << ActsTr::tr("Goes: %1.").arg(countsText(gone->second));
    }
    if (const auto back = counts.find(ChangeKind::Insert); back != counts.end()) {
        lines << ActsTr::tr("Comes back: %1.").arg(countsText(back->second));
    }
    if (const auto changed = counts.find(ChangeKind::Update); changed != counts.end()) {
        lines << ActsTr::tr("Becomes as it was: %1.").arg(countsText(changed->second));
    }
    return lines;
}

std::vector<ValueChange> valueChanges(const std::vector<RowEffect>& effects, const UnitText& units,
                                      std::size_t most)
{
    std::vector<ValueChange> changes;
    for (const RowEffect& effect : effects) {
        for (const CellEffect& cell : effect.cells) {
            const QString what = columnName(cell.column);
            if (!what.isEmpty() && changes.size() < most) {
                changes.push_back({what, cellText(cell.column, cell.now, units),
                                   cellText(cell.column, cell.after, units)});
            }
        }
    }
    return changes;
}

bool isOfKind(const HistoryEntry& act, ActKind kind)
{
    const std::string_view what = act.intention;
    const auto begins = [what](std::initializer_list<std::string_view> words) {
        return std::any_of(words.begin(), words.end(),
                           [what](std::string_view word) { return what.starts_with(word); });
    };
    switch (kind) {
    case ActKind::All:
        return true;
    case ActKind::Trays:
        return begins({"tray.", "table.", "repeat."});
    case ActKind::Water:
        return begins({"watering."});
    case ActKind::Weights:
        return begins({"harvest."});
    case ActKind::Trials:
        return begins({"trial.", "tasting.", "season."});
    case ActKind::Orders:
        return begins({"order."});
    case ActKind::SetUp:
        return begins({"room.", "rack.", "shelf.", "variety.", "seed.", "seed_lot.", "medium.",
                       "piece.", "price.", "labour.", "work.", "supply.", "climate.", "copy."});
    }
    return true;
}

} // namespace plumule::ui
