#include "ui/merge/met_words.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "ui/text/cell_text.h"
#include "ui/text/key_text.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>

#include <algorithm>
#include <array>
#include <set>

namespace plumule::ui {
namespace {

class Met
{
    Q_DECLARE_TR_FUNCTIONS(Met)
};

// Columns besides those of the history.
constexpr std::array kColumns = {
    KeyText{"code", QT_TRANSLATE_NOOP("Met", "code")},
    KeyText{"code_prefix", QT_TRANSLATE_NOOP("Met", "letters of its codes")},
    KeyText{"number", QT_TRANSLATE_NOOP("Met", "number")},
    KeyText{"cut", QT_TRANSLATE_NOOP("Met", "cut")},
    KeyText{"price", QT_TRANSLATE_NOOP("Met", "price, in 1/10 000")},
    KeyText{"amount", QT_TRANSLATE_NOOP("Met", "amount, in 1/10 000")},
    KeyText{"item", QT_TRANSLATE_NOOP("Met", "of")},
    KeyText{"task", QT_TRANSLATE_NOOP("Met", "work")},
    KeyText{"seconds", QT_TRANSLATE_NOOP("Met", "seconds")},
    KeyText{"second", QT_TRANSLATE_NOOP("Met", "second of the minute")},
    KeyText{"times", QT_TRANSLATE_NOOP("Met", "how often")},
    KeyText{"germination_percent", QT_TRANSLATE_NOOP("Met", "germination, %")},
    KeyText{"planned_uses", QT_TRANSLATE_NOOP("Met", "planned uses")},
    KeyText{"stage", QT_TRANSLATE_NOOP("Met", "stage")},
    KeyText{"length_min", QT_TRANSLATE_NOOP("Met", "minutes long")},
    KeyText{"delay_min", QT_TRANSLATE_NOOP("Met", "minutes put off")},
    KeyText{"cue", QT_TRANSLATE_NOOP("Met", "until")},
    KeyText{"waterings_per_day", QT_TRANSLATE_NOOP("Met", "waterings a day")},
    KeyText{"method", QT_TRANSLATE_NOOP("Met", "how")},
    KeyText{"water", QT_TRANSLATE_NOOP("Met", "water")},
    KeyText{"slot", QT_TRANSLATE_NOOP("Met", "round")},
    KeyText{"on_date", QT_TRANSLATE_NOOP("Met", "on")},
    KeyText{"starts_on", QT_TRANSLATE_NOOP("Met", "from")},
    KeyText{"closed_on", QT_TRANSLATE_NOOP("Met", "closed")},
    KeyText{"retired_on", QT_TRANSLATE_NOOP("Met", "retired")},
    KeyText{"is_retired", QT_TRANSLATE_NOOP("Met", "retired")},
    KeyText{"is_used_up", QT_TRANSLATE_NOOP("Met", "used up")},
    KeyText{"is_reusable", QT_TRANSLATE_NOOP("Met", "reusable")},
    KeyText{"is_nutrient_bearing", QT_TRANSLATE_NOOP("Met", "bears nutrients")},
    KeyText{"form", QT_TRANSLATE_NOOP("Met", "form")},
    KeyText{"source", QT_TRANSLATE_NOOP("Met", "source")},
    KeyText{"caption", QT_TRANSLATE_NOOP("Met", "caption")},
    KeyText{"file_name", QT_TRANSLATE_NOOP("Met", "file")},
    KeyText{"value", QT_TRANSLATE_NOOP("Met", "score")},
    KeyText{"change_mg", QT_TRANSLATE_NOOP("Met", "change")},
    KeyText{"reason", QT_TRANSLATE_NOOP("Met", "why")},
    KeyText{"margin_mg", QT_TRANSLATE_NOOP("Met", "margin")},
    KeyText{"light_mw", QT_TRANSLATE_NOOP("Met", "light, mW")},
    KeyText{"light_minutes", QT_TRANSLATE_NOOP("Met", "light, minutes")},
    KeyText{"concentrate", QT_TRANSLATE_NOOP("Met", "concentrate")},
    KeyText{"dose_ul_per_l", QT_TRANSLATE_NOOP("Met", "dose, µL per litre")},
    KeyText{"ph_low", QT_TRANSLATE_NOOP("Met", "pH from")},
    KeyText{"ph_high", QT_TRANSLATE_NOOP("Met", "pH to")},
    KeyText{"ec_low_us_cm", QT_TRANSLATE_NOOP("Met", "EC from")},
    KeyText{"ec_high_us_cm", QT_TRANSLATE_NOOP("Met", "EC to")},
    KeyText{"ph", QT_TRANSLATE_NOOP("Met", "pH")},
    KeyText{"ec_us_cm", QT_TRANSLATE_NOOP("Met", "EC")},
    KeyText{"units", QT_TRANSLATE_NOOP("Met", "units")},
    KeyText{"currency", QT_TRANSLATE_NOOP("Met", "currency")},
    KeyText{"morning_minute", QT_TRANSLATE_NOOP("Met", "morning, minute")},
    KeyText{"evening_minute", QT_TRANSLATE_NOOP("Met", "evening, minute")},
    KeyText{"tray_length_um", QT_TRANSLATE_NOOP("Met", "length of a tray")},
    KeyText{"tray_width_um", QT_TRANSLATE_NOOP("Met", "width of a tray")},
    KeyText{"planned_trials", QT_TRANSLATE_NOOP("Met", "planned sowings")},
    KeyText{"main_metric", QT_TRANSLATE_NOOP("Met", "looked at by")},
    KeyText{"sow_on", QT_TRANSLATE_NOOP("Met", "sown on")},
    KeyText{"blocks", QT_TRANSLATE_NOOP("Met", "blocks")},
    KeyText{"trays_each", QT_TRANSLATE_NOOP("Met", "trays each")},
};

QString realText(double value)
{
    return numberText(value, 2);
}

} // namespace

MetWords::MetWords(Journal& journal, const ComingBack& coming, const MergePlan& plan,
                   const UnitText& units)
    : m_journal(journal)
    , m_coming(coming)
    , m_units(units)
    , m_copy(QString::fromStdString(plan.copy.name))
{
    const auto learn = [this](const MergeRow& row) {
        if (row.key.table == "tray" && row.there) {
            m_codes[row.key.id] = text({row, row.there}, "code");
        }
    };
    std::for_each(plan.free.begin(), plan.free.end(), learn);
    for (const MergeItem& item : plan.items) {
        std::for_each(item.rows.begin(), item.rows.end(), learn);
    }
    if (const auto layout = journal.room().layout()) {
        for (const Spot& spot : layout->spots()) {
            m_places[spot.place.value] = nameOf(std::optional(spot));
        }
    }
    const auto media = journal.media().all(Listed::All);
    const auto pieces = journal.media().pieces(std::nullopt, Listed::All);
    for (const Medium& medium : media.value_or(std::vector<Medium>())) {
        for (const auto& each : *pieces) {
            if (each.piece.medium == medium.id) {
                m_pieces[each.piece.id.value] = Met::tr("%1, piece %2")
                                                    .arg(QString::fromStdString(medium.name))
                                                    .arg(each.piece.number);
            }
        }
    }
}

Cell MetWords::cell(const Row& row, const std::string& column) const
{
    const auto& columns = m_coming.columnsOf(row.row.key.table);
    for (std::size_t i = 0; row.state && i < columns.size() && i < row.state->size(); ++i) {
        if (columns[i].name == column) {
            return (*row.state)[i];
        }
    }
    return {};
}

QString MetWords::text(const Row& row, const std::string& column) const
{
    return QString::fromStdString(textIn(cell(row, column)));
}

QString MetWords::moment(const Row& row, const std::string& day, const std::string& minute) const
{
    const auto date = dateFromIso(textIn(cell(row, day)));
    const Cell at = cell(row, minute);
    if (!date) {
        return {};
    }
    return std::holds_alternative<std::int64_t>(at) ? longDateText(*date) + QStringLiteral(", ") +
                                                          clockText(static_cast<int>(wholeIn(at)))
                                                    : longDateText(*date);
}

std::int64_t MetWords::trayOf(const Row& row) const
{
    const std::string& family = row.row.family.name;
    if (family == "cut" || family == "stages" || family == "stays" || family == "residue" ||
        family == "on_piece") {
        return row.row.family.owner;
    }
    return wholeIn(cell(row, "tray_id"));
}

QString MetWords::trayText(std::int64_t tray) const
{
    const auto known = m_codes.find(tray);
    if (known != m_codes.end()) {
        return known->second;
    }
    const auto sheet = m_journal.trays().sheet(TrayId{tray});
    return sheet ? QString::fromStdString(sheet->record.tray.code) : Met::tr("a tray");
}

QString MetWords::wordsOfStay(const Row& row) const
{
    const auto place = m_places.find(wholeIn(cell(row, "place_id")));
    const QString where = place == m_places.end() ? Met::tr("a new place") : place->second;
    const QString to = moment(row, "to_on", "to_minute");
    const QString from = moment(row, "from_on", "from_minute");
    return to.isEmpty() ? Met::tr("%1, since %2").arg(where, from)
                        : Met::tr("%1, %2 to %3").arg(where, from, to);
}

QString MetWords::wordsOfStage(const Row& row) const
{
    Stage stage{};
    const QString key = text(row, "stage");
    const QString name = fromText(key.toStdString(), stage) ? nameOf(stage) : key;
    const QString begun = moment(row, "started_on", "started_minute");
    const QString planned = moment(row, "planned_on", "planned_minute");
    QString words = begun.isEmpty() ? Met::tr("%1 planned %2").arg(name, planned)
                                    : Met::tr("%1 begun %2").arg(name, begun);
    if (const std::int64_t delay = wholeIn(cell(row, "delay_min")); delay != 0) {
        words += Met::tr(", put off by %n minute(s)", nullptr, static_cast<int>(delay));
    }
    return words;
}

QString MetWords::wordsOfTray(const Row& row) const
{
    TrayState state{};
    const QString key = text(row, "state");
    QStringList parts = {fromText(key.toStdString(), state) ? nameOf(state) : key};
    if (const QString ended = moment(row, "ended_on", "ended_minute"); !ended.isEmpty()) {
        parts << ended;
    }
    for (const char* why : {"discard_reason", "set_aside_reason"}) {
        if (const QString words = text(row, why); !words.isEmpty()) {
            parts << columnName(why) + QStringLiteral(": ") + words;
        }
    }
    return parts.join(QStringLiteral(", "));
}

QString MetWords::wordsOfPiece(const Row& row) const
{
    const std::int64_t piece = wholeIn(cell(row, "piece_id"));
    const auto known = m_pieces.find(piece);
    return piece == 0                ? Met::tr("on no piece")
           : known == m_pieces.end() ? Met::tr("on a new piece")
                                     : known->second;
}

QString MetWords::wordsOfWatering(const Row& row) const
{
    WateringMethod method{};
    WaterKind water{};
    const QString how = text(row, "method");
    const QString what = text(row, "water");
    QStringList parts = {moment(row, "on_date", "minute")};
    parts << (fromText(how.toStdString(), method) ? nameOf(method) : how);
    parts << (fromText(what.toStdString(), water) ? nameOf(water) : what);
    const Cell amount = cell(row, "amount_ul");
    if (std::holds_alternative<std::int64_t>(amount)) {
        parts << cellText("amount_ul", amount, m_units);
    }
    return parts.join(QStringLiteral(", "));
}

// Every cell that is filled and has a name among growers.
QString MetWords::wordsOfCells(const Row& row, int longest) const
{
    QStringList parts;
    for (const ColumnInfo& column : m_coming.columnsOf(row.row.key.table)) {
        const Cell held = cell(row, column.name);
        const QString known = columnName(column.name);
        const char* own = textOf(kColumns, column.name);
        const QString name = known.isEmpty() && own != nullptr ? Met::tr(own) : known;
        if (name.isEmpty() || std::holds_alternative<std::monostate>(held)) {
            continue;
        }
        const auto* real = std::get_if<double>(&held);
        if (const auto* words = std::get_if<std::string>(&held);
            words == nullptr || !words->empty()) {
            parts << QStringLiteral("%1 %2").arg(
                name,
                real != nullptr ? realText(*real) : cellText(column.name, held, m_units, longest));
        }
    }
    const QString at = moment(row, "on_date", "minute");
    return at.isEmpty() ? parts.join(QStringLiteral(", "))
                        : at + QStringLiteral(": ") + parts.join(QStringLiteral(", "));
}

QString MetWords::words(const Row& row, int longest) const
{
    const std::string& table = row.row.key.table;
    if (row.row.family.name == "on_piece") {
        return wordsOfPiece(row);
    }
    if (!row.state) {
        return nothing(row.row);
    }
    if (table == "stay") {
        return wordsOfStay(row);
    }
    if (table == "tray_stage") {
        return wordsOfStage(row);
    }
    if (table == "tray") {
        return wordsOfTray(row);
    }
    if (table == "watering") {
        return wordsOfWatering(row);
    }
    return wordsOfCells(row, longest);
}

} // namespace plumule::ui
