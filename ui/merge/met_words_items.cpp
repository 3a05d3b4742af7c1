// Part of ui/merge/met_words.h: an item that met, as it stands on both sides.
#include "ui/merge/met_words.h"

#include "ui/text/key_text.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>

#include <algorithm>
#include <array>
#include <set>

namespace plumule::ui {
namespace {

class MetItems
{
    Q_DECLARE_TR_FUNCTIONS(MetItems)
};

// What a family of rows is about.
constexpr std::array kTopics = {
    KeyText{"stays", QT_TRANSLATE_NOOP("MetItems", "where it stands")},
    KeyText{"stages", QT_TRANSLATE_NOOP("MetItems", "its stages")},
    KeyText{"cut", QT_TRANSLATE_NOOP("MetItems", "how it ended")},
    KeyText{"residue", QT_TRANSLATE_NOOP("MetItems", "what it left behind")},
    KeyText{"on_piece", QT_TRANSLATE_NOOP("MetItems", "which piece it stands on")},
    KeyText{"watering", QT_TRANSLATE_NOOP("MetItems", "a watering")},
    KeyText{"watering_look", QT_TRANSLATE_NOOP("MetItems", "a look at its water")},
    KeyText{"height", QT_TRANSLATE_NOOP("MetItems", "a height")},
    KeyText{"tray_note", QT_TRANSLATE_NOOP("MetItems", "a note")},
    KeyText{"photo", QT_TRANSLATE_NOOP("MetItems", "a photograph")},
    KeyText{"variety", QT_TRANSLATE_NOOP("MetItems", "a variety")},
    KeyText{"seed_lot", QT_TRANSLATE_NOOP("MetItems", "a seed lot")},
    KeyText{"medium", QT_TRANSLATE_NOOP("MetItems", "a medium")},
    KeyText{"piece", QT_TRANSLATE_NOOP("MetItems", "a piece")},
    KeyText{"trial", QT_TRANSLATE_NOOP("MetItems", "a trial")},
    KeyText{"panel", QT_TRANSLATE_NOOP("MetItems", "a tasting")},
    KeyText{"season", QT_TRANSLATE_NOOP("MetItems", "a season")},
    KeyText{"price", QT_TRANSLATE_NOOP("MetItems", "a price")},
    KeyText{"promised_order", QT_TRANSLATE_NOOP("MetItems", "an order")},
    KeyText{"order_cut", QT_TRANSLATE_NOOP("MetItems", "which order a cut goes to")},
    KeyText{"labour_task", QT_TRANSLATE_NOOP("MetItems", "a time of work")},
    KeyText{"work_time", QT_TRANSLATE_NOOP("MetItems", "a stretch of work")},
    KeyText{"water_recipe", QT_TRANSLATE_NOOP("MetItems", "a recipe")},
    KeyText{"room", QT_TRANSLATE_NOOP("MetItems", "the room")},
    KeyText{"rack", QT_TRANSLATE_NOOP("MetItems", "a rack")},
    KeyText{"shelf", QT_TRANSLATE_NOOP("MetItems", "a shelf")},
    KeyText{"place", QT_TRANSLATE_NOOP("MetItems", "a place")},
};

QString topicOf(const std::string& family)
{
    const char* text = textOf(kTopics, family);
    return text == nullptr ? QString() : MetItems::tr(text);
}

const RowState& stateOn(const MergeRow& row, Side side)
{
    return side == Side::Here ? row.here : row.there;
}

} // namespace

// A row that only the other side has; of stays and cuts the other side's own rows say enough.
QString MetWords::nothing(const MergeRow& row) const
{
    return row.before ? MetItems::tr("removed") : QString();
}

QString MetWords::topic(const MergeItem& item) const
{
    QStringList topics;
    for (const Family& family : item.families) {
        const QString words = topicOf(family.name);
        if (!words.isEmpty() && !topics.contains(words)) {
            topics << words;
        }
    }
    return topics.isEmpty() ? MetItems::tr("an entry") : topics.join(QStringLiteral(", "));
}

QString MetWords::subject(const MergeItem& item) const
{
    QStringList whom;
    for (const std::int64_t tray : item.trays) {
        whom << trayText(tray);
    }
    for (const MergeRow& row : item.rows) {
        for (const char* column : {"name", "code", "lot_number"}) {
            const QString name = text({row, row.here ? row.here : row.there}, column);
            if (item.trays.empty() && !name.isEmpty() && !whom.contains(name)) {
                whom << name;
            }
        }
    }
    const QString about = topic(item);
    return whom.isEmpty() ? about
                          : MetItems::tr("%1: %2").arg(whom.join(MetItems::tr(" and ")), about);
}

QString MetWords::before(const MergeItem& item) const
{
    QStringList lines;
    for (const MergeRow& row : item.rows) {
        if (row.isBeforeKnown && row.before) {
            lines << words({row, row.before}, 40);
        }
    }
    lines.removeAll(QString());
    lines.removeDuplicates();
    return lines.join(QStringLiteral("; "));
}

QStringList MetWords::lines(const MergeItem& item, Side side) const
{
    QStringList lines;
    for (const MergeRow& row : item.rows) {
        const QString one = words({row, stateOn(row, side)}, 40);
        const std::int64_t tray = trayOf({row, stateOn(row, side)});
        const bool isOfMany = item.trays.size() > 1 && tray != 0;
        if (!one.isEmpty()) {
            lines << (isOfMany ? MetItems::tr("%1: %2").arg(trayText(tray), one) : one);
        }
    }
    lines.removeDuplicates();
    return lines.isEmpty() ? QStringList{MetItems::tr("nothing of it")} : lines;
}

QString MetWords::when(const MergeItem& item, Side side) const
{
    std::int64_t last = 0;
    for (const MergeRow& row : item.rows) {
        last = std::max(last, side == Side::Here ? row.hereAtUtcMs : row.thereAtUtcMs);
    }
    return last == 0 ? QString()
                     : QLocale(QLocale::English)
                           .toString(QDateTime::fromMSecsSinceEpoch(last),
                                     QStringLiteral("ddd d MMM HH:mm"));
}

QString MetWords::note(const MergeItem& item, std::int64_t tray) const
{
    const auto notKept = rowsNotKept(item);
    if (notKept.empty() || (tray == 0) != item.trays.empty()) {
        return {};
    }
    QStringList lines;
    for (const MergeRow& row : notKept) {
        const Side lost = *item.chosen == Side::Here ? Side::There : Side::Here;
        const std::int64_t owner = trayOf({row, stateOn(row, lost)});
        if (tray == 0 || owner == 0 || owner == tray) {
            lines << words({row, stateOn(row, lost)}, 0);
        }
    }
    lines.removeAll(QString());
    lines.removeDuplicates();
    const QString all =
        lines.isEmpty() ? MetItems::tr("nothing of it") : lines.join(QStringLiteral("; "));
    return *item.chosen == Side::Here
               ? MetItems::tr("Not kept of the copy %1, %2: %3").arg(m_copy, subject(item), all)
               : MetItems::tr("Not kept when the copy %1 came back, %2: %3")
                     .arg(m_copy, subject(item), all);
}

QString MetWords::renamed(const Renamed& renamed) const
{
    const QString from = QString::fromStdString(renamed.from);
    const QString to = QString::fromStdString(renamed.to);
    if (renamed.row.table == "tray") {
        return MetItems::tr("The copy’s tray %1 is %2 here: label it anew.").arg(from, to);
    }
    if (renamed.row.table == "photo") {
        return MetItems::tr("The copy’s photograph %1 is named %2 here.").arg(from, to);
    }
    if (renamed.row.table == "piece") {
        return MetItems::tr("The copy’s new piece %1 is piece %2 here: mark it anew.")
            .arg(from, to);
    }
    if (renamed.row.table == "medium") {
        return MetItems::tr("A new medium of the copy has another marker here.");
    }
    return MetItems::tr("The copy’s trial %1 is %2 here.").arg(from, to);
}

} // namespace plumule::ui
