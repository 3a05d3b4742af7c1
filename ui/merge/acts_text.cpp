#include "ui/merge/acts_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace plumule::ui {
namespace {

class ActsTable
{
    Q_DECLARE_TR_FUNCTIONS(ActsTable)
};

struct Kind
{
    const char* text;
    std::array<const char*, 6> acts;     // what their keys begin with
    std::array<const char*, 6> families; // what of theirs meets
};

constexpr std::array kKinds = {
    Kind{QT_TRANSLATE_NOOP("ActsTable", "waterings"),
         {"watering."},
         {"watering", "watering_look", "water_reading", "water_recipe"}},
    Kind{QT_TRANSLATE_NOOP("ActsTable", "stages"),
         {"tray.move_on", "tray.begin_soak", "tray.put_", "tray.not_yet", "tray.correct_start"},
         {"stages"}},
    Kind{QT_TRANSLATE_NOOP("ActsTable", "moves"), {"tray.move_to"}, {"stays"}},
    Kind{QT_TRANSLATE_NOOP("ActsTable", "weights, and how trays ended"),
         {"harvest.", "tray.discard", "tray.set_aside", "tray.count_again"},
         {"cut", "residue"}},
    Kind{QT_TRANSLATE_NOOP("ActsTable", "sowings"),
         {"tray.sow", "tray.import", "trial.sow"},
         {"on_piece", "tray"}},
    Kind{QT_TRANSLATE_NOOP("ActsTable", "notes, heights, photographs"),
         {"tray."},
         {"tray_note", "height", "photo"}},
    Kind{QT_TRANSLATE_NOOP("ActsTable", "trials and tastings"),
         {"trial.", "tasting.", "season."},
         {"trial", "panel", "season"}},
    Kind{QT_TRANSLATE_NOOP("ActsTable", "orders"), {"order."}, {"promised_order", "order_cut"}},
    Kind{QT_TRANSLATE_NOOP("ActsTable", "room and set-up"), {""}, {""}},
};

template <std::size_t Count>
bool begins(const std::array<const char*, Count>& words, std::string_view text)
{
    return std::any_of(words.begin(), words.end(),
                       [&](const char* word) { return word != nullptr && text.starts_with(word); });
}

template <std::size_t Count>
bool isAmong(const std::array<const char*, Count>& words, std::string_view text)
{
    return std::any_of(words.begin(), words.end(), [&](const char* word) {
        return word != nullptr && (text == word || *word == '\0');
    });
}

// The first kind that fits; the last one fits all.
std::size_t kindOf(const std::string& intention)
{
    const auto found = std::find_if(kKinds.begin(), kKinds.end(),
                                    [&](const Kind& kind) { return begins(kind.acts, intention); });
    return static_cast<std::size_t>(found - kKinds.begin());
}

std::size_t kindOf(const MergeItem& item)
{
    const auto found = std::find_if(kKinds.begin(), kKinds.end(), [&](const Kind& kind) {
        return isAmong(kind.families, item.families.front().name);
    });
    return static_cast<std::size_t>(found - kKinds.begin());
}

} // namespace

std::vector<ActsRow> actsOf(const MergePlan& plan)
{
    std::vector<ActsRow> rows;
    rows.reserve(kKinds.size() + 1);
    for (const Kind& kind : kKinds) {
        rows.push_back({ActsTable::tr(kind.text)});
    }
    ActsRow together{ActsTable::tr("together")};
    const auto count = [&](const std::vector<ActSince>& acts, int ActsRow::*side) {
        for (const ActSince& act : acts) {
            if (act.state == HistoryState::Standing) {
                ++(rows[kindOf(act.intention)].*side);
                ++(together.*side);
            }
        }
    };
    count(plan.actsHere, &ActsRow::here);
    count(plan.actsThere, &ActsRow::there);
    for (const MergeItem& item : plan.items) {
        ++rows[kindOf(item)].met;
        ++together.met;
    }
    std::erase_if(
        rows, [](const ActsRow& row) { return row.here == 0 && row.there == 0 && row.met == 0; });
    rows.push_back(together);
    return rows;
}

} // namespace plumule::ui
