#include "core/journal/ledger/ledger.h"

#include "core/journal/rules/standing_rules.h"

#include <algorithm>
#include <string_view>
#include <vector>

namespace plumule {
namespace {

Concept conceptOf(const std::string& table)
{
    struct TablesOf
    {
        Concept which;
        std::vector<std::string_view> tables;
    };
    static const std::vector<TablesOf> kConcepts = {
        {Concept::Room,
         {"room", "rack", "shelf", "place", "brought_copy", "brought_undone", "brought_same"}},
        {Concept::Variety, {"variety", "protocol_stage", "seed_lot", "stock_correction"}},
        {Concept::Medium, {"medium", "medium_as_run", "piece", "sanitising", "medium_group"}},
        {Concept::Trial,
         {"season", "trial", "trial_plan", "treatment", "planned_tray", "panel", "panel_sample",
          "panel_attribute", "taster", "serving", "score"}},
        {Concept::Watering,
         {"water_recipe", "watering", "water_reading", "watering_between", "watering_look"}},
        {Concept::Harvest, {"harvest", "bowl", "residue"}},
        {Concept::Cost, {"price", "price_measure", "labour_task", "work_time"}},
        {Concept::Climate, {"climate_logger", "climate_hour", "shelf_ppfd"}},
        {Concept::Week, {"repeat_sowing", "repeat_day"}},
        {Concept::Order, {"promised_order", "order_cut"}},
        {Concept::Stock, {"supply", "supply_count"}},
    };
    const auto found = std::find_if(kConcepts.begin(), kConcepts.end(), [&](const TablesOf& each) {
        return std::find(each.tables.begin(), each.tables.end(), table) != each.tables.end();
    });
    return found == kConcepts.end() ? Concept::Tray : found->which;
}

} // namespace

Ledger::Ledger(JournalFile file, const Clock& clock)
    : m_file(std::move(file))
    , m_clock(clock)
{}

bool Ledger::isReadOnly() const
{
    return m_file.database->access() != Access::ReadWrite;
}

std::filesystem::path Ledger::photoFolder() const
{
    return photoFolderOf(path());
}

std::vector<Change> Ledger::changesOf(const std::vector<ChangedRows>& rows)
{
    std::vector<Change> changes;
    for (const ChangedRows& each : rows) {
        const Concept about = conceptOf(each.table);
        for (const std::int64_t id : each.ids) {
            changes.push_back({about, id});
        }
    }
    return changes;
}

void Ledger::announce(const std::vector<Change>& changes)
{
    if (changes.empty()) {
        return;
    }
    // A listener may come or go while it is told.
    const auto listeners = m_listeners;
    for (const auto& [number, listener] : listeners) {
        listener(changes);
    }
}

void Ledger::hear(const std::vector<Change>& changes)
{
    m_didLastChange = !changes.empty();
    announce(changes);
}

Result<HistoryEntry> Ledger::applied(const Result<History::Applied>& result)
{
    if (!result) {
        return passOn(result);
    }
    announce(changesOf(result->rows));
    return result->entry;
}

Result<HistoryEntry> Ledger::undo(HistoryId id)
{
    if (isReadOnly()) {
        return fail(ErrorKind::ReadOnly, JournalReason::ReadOnly);
    }
    return applied(guarded([&] {
        StandingRules rules(database());
        return history().undo(id, &rules);
    }));
}

Result<std::vector<RowEffect>> Ledger::foreseeUndo(HistoryId id)
{
    if (isReadOnly()) {
        return fail(ErrorKind::ReadOnly, JournalReason::ReadOnly);
    }
    return guarded([&] {
        StandingRules rules(database());
        return history().foresee(id, &rules);
    });
}

Result<HistoryEntry> Ledger::redo()
{
    if (isReadOnly()) {
        return fail(ErrorKind::ReadOnly, JournalReason::ReadOnly);
    }
    return applied(guarded([&] { return history().redo(); }));
}

int Ledger::addListener(ChangeListener listener)
{
    m_listeners.emplace_back(m_nextListener, std::move(listener));
    return m_nextListener++;
}

void Ledger::removeListener(int number)
{
    std::erase_if(m_listeners, [&](const auto& entry) { return entry.first == number; });
}

} // namespace plumule
