#include "core/journal/ledger/ledger.h"

#include "core/journal/rules/standing_rules.h"

#include <algorithm>
#include <map>

namespace plumule {
namespace {

Concept conceptOf(const std::string& table)
{
    static const std::map<std::string, Concept> kConcepts = {
        {"room", Concept::Room},
        {"rack", Concept::Room},
        {"shelf", Concept::Room},
        {"place", Concept::Room},
        {"variety", Concept::Variety},
        {"protocol_stage", Concept::Variety},
        {"seed_lot", Concept::Variety},
        {"stock_correction", Concept::Variety},
        {"medium", Concept::Medium},
        {"medium_as_run", Concept::Medium},
        {"piece", Concept::Medium},
        {"sanitising", Concept::Medium},
        {"medium_group", Concept::Medium},
        {"season", Concept::Trial},
        {"trial", Concept::Trial},
        {"trial_plan", Concept::Trial},
        {"treatment", Concept::Trial},
        {"planned_tray", Concept::Trial},
        {"panel", Concept::Trial},
        {"panel_sample", Concept::Trial},
        {"panel_attribute", Concept::Trial},
        {"taster", Concept::Trial},
        {"serving", Concept::Trial},
        {"score", Concept::Trial},
        {"water_recipe", Concept::Watering},
        {"watering", Concept::Watering},
        {"water_reading", Concept::Watering},
        {"watering_between", Concept::Watering},
        {"watering_look", Concept::Watering},
        {"harvest", Concept::Harvest},
        {"bowl", Concept::Harvest},
        {"residue", Concept::Harvest},
        {"price", Concept::Cost},
        {"price_measure", Concept::Cost},
        {"labour_task", Concept::Cost},
    };
    const auto found = kConcepts.find(table);
    return found == kConcepts.end() ? Concept::Tray : found->second;
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
    return photoFolderOf(database().path());
}

std::vector<Change> Ledger::changesOf(const std::vector<ChangedRow>& rows)
{
    std::vector<Change> changes;
    changes.reserve(rows.size());
    std::transform(rows.begin(), rows.end(), std::back_inserter(changes),
                   [](const ChangedRow& row) {
                       return Change{conceptOf(row.table), row.id};
                   });
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

Result<std::vector<History::RowEffect>> Ledger::foreseeUndo(HistoryId id)
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
