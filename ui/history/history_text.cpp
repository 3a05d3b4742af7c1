#include "ui/history/history_text.h"

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

// Tables in the grower's words, told together where they are one thing to him.
struct TableText
{
    const char* table;
    const char* text;
};

constexpr std::array kTables = {
    TableText{"tray", QT_TRANSLATE_NOOP("Acts", "%n tray(s)")},
    TableText{"tray_stage", QT_TRANSLATE_NOOP("Acts", "%n stage(s)")},
    TableText{"stay", QT_TRANSLATE_NOOP("Acts", "%n stay(s) on a place")},
    TableText{"height", QT_TRANSLATE_NOOP("Acts", "%n height(s)")},
    TableText{"tray_note", QT_TRANSLATE_NOOP("Acts", "%n note(s)")},
    TableText{"photo", QT_TRANSLATE_NOOP("Acts", "%n photograph(s)")},
    TableText{"watering", QT_TRANSLATE_NOOP("Acts", "%n watering(s)")},
    TableText{"watering_look", QT_TRANSLATE_NOOP("Acts", "%n look(s) without need")},
    TableText{"water_reading", QT_TRANSLATE_NOOP("Acts", "%n reading(s) of pH or EC")},
    TableText{"water_recipe", QT_TRANSLATE_NOOP("Acts", "%n recipe(s)")},
    TableText{"harvest", QT_TRANSLATE_NOOP("Acts", "%n cut(s)")},
    TableText{"bowl", QT_TRANSLATE_NOOP("Acts", "%n bowl(s)")},
    TableText{"residue", QT_TRANSLATE_NOOP("Acts", "%n residue(s)")},
    TableText{"price", QT_TRANSLATE_NOOP("Acts", "%n price(s)")},
    TableText{"labour_task", QT_TRANSLATE_NOOP("Acts", "%n time(s) of work")},
    TableText{"room", QT_TRANSLATE_NOOP("Acts", "the room")},
    TableText{"rack", QT_TRANSLATE_NOOP("Acts", "%n rack(s)")},
    TableText{"shelf", QT_TRANSLATE_NOOP("Acts", "shelves: %n")},
    TableText{"place", QT_TRANSLATE_NOOP("Acts", "%n place(s)")},
    TableText{"variety", QT_TRANSLATE_NOOP("Acts", "%n variet(ies)")},
    TableText{"protocol_stage", QT_TRANSLATE_NOOP("Acts", "%n stage(s) of a protocol")},
    TableText{"seed_lot", QT_TRANSLATE_NOOP("Acts", "%n seed lot(s)")},
    TableText{"stock_correction", QT_TRANSLATE_NOOP("Acts", "%n count(s) of seed")},
    TableText{"medium", QT_TRANSLATE_NOOP("Acts", "media: %n")},
    TableText{"medium_group", QT_TRANSLATE_NOOP("Acts", "%n group(s) of media")},
    TableText{"piece", QT_TRANSLATE_NOOP("Acts", "%n piece(s)")},
    TableText{"sanitising", QT_TRANSLATE_NOOP("Acts", "%n sanitising(s)")},
    TableText{"trial", QT_TRANSLATE_NOOP("Acts", "%n trial(s)")},
    TableText{"trial_plan", QT_TRANSLATE_NOOP("Acts", "%n plan(s) of a trial")},
    TableText{"planned_tray", QT_TRANSLATE_NOOP("Acts", "%n planned tray(s)")},
    TableText{"panel", QT_TRANSLATE_NOOP("Acts", "%n tasting(s)")},
    TableText{"serving", QT_TRANSLATE_NOOP("Acts", "%n serving(s)")},
    TableText{"score", QT_TRANSLATE_NOOP("Acts", "%n score(s)")},
    TableText{"season", QT_TRANSLATE_NOOP("Acts", "%n season(s)")},
};

// Columns that a grower fills himself.
struct ColumnText
{
    const char* column;
    const char* text;
};

constexpr std::array kColumns = {
    ColumnText{"net_mg", QT_TRANSLATE_NOOP("Acts", "net")},
    ColumnText{"gross_mg", QT_TRANSLATE_NOOP("Acts", "on the scale")},
    ColumnText{"tare_mg", QT_TRANSLATE_NOOP("Acts", "the bowl")},
    ColumnText{"seed_mg", QT_TRANSLATE_NOOP("Acts", "seed")},
    ColumnText{"bought_mg", QT_TRANSLATE_NOOP("Acts", "bought")},
    ColumnText{"reading_um", QT_TRANSLATE_NOOP("Acts", "height")},
    ColumnText{"surface_below_rim_um", QT_TRANSLATE_NOOP("Acts", "below the rim")},
    ColumnText{"amount_ul", QT_TRANSLATE_NOOP("Acts", "water")},
    ColumnText{"sown_on", QT_TRANSLATE_NOOP("Acts", "sown")},
    ColumnText{"ended_on", QT_TRANSLATE_NOOP("Acts", "ended")},
    ColumnText{"started_on", QT_TRANSLATE_NOOP("Acts", "begun")},
    ColumnText{"from_date", QT_TRANSLATE_NOOP("Acts", "holds from")},
    ColumnText{"bought_on", QT_TRANSLATE_NOOP("Acts", "bought on")},
    ColumnText{"name", QT_TRANSLATE_NOOP("Acts", "name")},
    ColumnText{"note", QT_TRANSLATE_NOOP("Acts", "note")},
    ColumnText{"text", QT_TRANSLATE_NOOP("Acts", "note")},
    ColumnText{"question", QT_TRANSLATE_NOOP("Acts", "question")},
    ColumnText{"lot_number", QT_TRANSLATE_NOOP("Acts", "lot")},
    ColumnText{"supplier", QT_TRANSLATE_NOOP("Acts", "supplier")},
    ColumnText{"set_aside_reason", QT_TRANSLATE_NOOP("Acts", "set aside")},
    ColumnText{"discard_reason", QT_TRANSLATE_NOOP("Acts", "discarded")},
};

constexpr int kLongestValue = 40;

QString countText(const std::string& table, int count)
{
    const auto* const found = std::find_if(
        kTables.begin(), kTables.end(), [&](const TableText& each) { return each.table == table; });
    return found == kTables.end() ? ActsTr::tr("other entries: %n", nullptr, count)
                                  : ActsTr::tr(found->text, nullptr, count);
}

QString countsText(const std::map<std::string, int>& counts)
{
    QStringList texts;
    for (const auto& [table, count] : counts) {
        texts << countText(table, count);
    }
    return texts.join(", ");
}

QString wholeText(const std::string& column, std::int64_t value, const UnitText& units)
{
    if (column.ends_with("_mg")) {
        return units.mass(milligrams(value));
    }
    if (column.ends_with("_um")) {
        return units.length(Length::ofCount(value));
    }
    if (column.ends_with("_ul")) {
        return units.watering(Volume::ofCount(value));
    }
    return QString::number(value);
}

QString writtenText(const std::string& column, const std::string& value)
{
    if (column.ends_with("_on") || column.ends_with("_date")) {
        const auto day = dateFromIso(value);
        return day ? longDateText(*day) : QString();
    }
    const QString text = QString::fromStdString(value).simplified();
    return text.size() > kLongestValue ? text.left(kLongestValue - 1) + QChar(0x2026) : text;
}

QString valueText(const std::string& column, const Cell& cell, const UnitText& units)
{
    if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
        return wholeText(column, *whole, units);
    }
    if (const auto* text = std::get_if<std::string>(&cell)) {
        return text->empty() ? ActsTr::tr("nothing") : writtenText(column, *text);
    }
    return ActsTr::tr("nothing");
}

} // namespace

QStringList effectWords(const std::vector<History::RowEffect>& effects)
{
    std::map<ChangeKind, std::map<std::string, int>> counts;
    for (const History::RowEffect& effect : effects) {
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

std::vector<ValueChange> valueChanges(const std::vector<History::RowEffect>& effects,
                                      const UnitText& units, std::size_t most)
{
    std::vector<ValueChange> changes;
    for (const History::RowEffect& effect : effects) {
        for (const History::CellEffect& cell : effect.cells) {
            const auto* const known =
                std::find_if(kColumns.begin(), kColumns.end(),
                             [&](const ColumnText& each) { return each.column == cell.column; });
            if (known != kColumns.end() && changes.size() < most) {
                changes.push_back({ActsTr::tr(known->text), valueText(cell.column, cell.now, units),
                                   valueText(cell.column, cell.after, units)});
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
        return begins({"tray."});
    case ActKind::Water:
        return begins({"watering."});
    case ActKind::Weights:
        return begins({"harvest."});
    case ActKind::Trials:
        return begins({"trial.", "tasting.", "season."});
    case ActKind::SetUp:
        return begins({"room.", "rack.", "shelf.", "variety.", "seed_lot.", "medium.", "piece.",
                       "price.", "labour."});
    }
    return true;
}

} // namespace plumule::ui
