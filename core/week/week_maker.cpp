#include "core/week/week_maker.h"

#include <algorithm>
#include <tuple>

namespace plumule {
namespace {

constexpr int kDaysKept = 120; // as long as places are reckoned ahead: longer than any crop grows

std::map<PlaceId, std::string> shelvesOf(const RoomLayout& layout)
{
    std::map<PlaceId, std::string> shelves;
    for (const Spot& spot : layout.spots()) {
        shelves.emplace(spot.place, spot.rack + spot.shelf);
    }
    return shelves;
}

} // namespace

WeekMaker::WeekMaker(const WeekFacts& facts)
    : m_facts(facts)
    , m_places(static_cast<int>(facts.layout.places.size()), facts.now.date, kDaysKept)
{
    m_week.from = facts.now.date;
    for (int i = 0; i < kWeekDays; ++i) {
        WeekDay day;
        day.on = m_week.from + i;
        m_week.days.push_back(day);
    }
    std::map<MediumId, int> pieces;
    for (const PieceRecord& record : facts.pieces) {
        ++pieces[record.piece.medium];
    }
    for (const auto& [medium, count] : pieces) {
        m_pieces.emplace(medium, FreeDays(count, m_week.from, kDaysKept));
    }
}

void WeekMaker::addOnce(std::vector<std::string>& names, const std::string& name)
{
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) {
        names.push_back(name);
    }
}

WeekDay* WeekMaker::dayOn(Date on)
{
    const int index = on - m_week.from;
    return index >= 0 && index < kWeekDays ? &m_week.days[static_cast<std::size_t>(index)]
                                           : nullptr;
}

WeekEntry* WeekMaker::entryOf(WeekTask task, RoundKey at, std::int64_t subject,
                              const std::string& name)
{
    WeekDay* day = dayOn(at.date);
    if (day == nullptr) {
        return nullptr;
    }
    const auto found =
        std::find_if(day->entries.begin(), day->entries.end(), [&](const WeekEntry& entry) {
            return entry.task == task && entry.slot == at.slot && entry.subject == subject &&
                   entry.name == name;
        });
    if (found != day->entries.end()) {
        return &*found;
    }
    WeekEntry entry;
    entry.task = task;
    entry.slot = at.slot;
    entry.subject = subject;
    entry.name = name;
    day->entries.push_back(std::move(entry));
    return &day->entries.back();
}

void WeekMaker::addLot(Date on, VarietyId variety, MediumId medium, Date sownOn, int trays)
{
    WeekDay* day = dayOn(on);
    if (day == nullptr) {
        return;
    }
    const CutLot lot{variety, medium, sownOn, trays};
    const auto found = std::find_if(day->cuts.begin(), day->cuts.end(), [&](const CutLot& other) {
        return other.variety == variety && other.medium == medium && other.sownOn == sownOn;
    });
    if (found == day->cuts.end()) {
        day->cuts.push_back(lot);
    } else {
        found->trays += trays;
    }
}

void WeekMaker::takePiece(MediumId medium, Date from, Date cutOn)
{
    if (const auto pieces = m_pieces.find(medium); pieces != m_pieces.end()) {
        pieces->second.take(from, cutOn + 1, 1); // it is washed on the day of the cut
    }
}

void WeekMaker::addWash(RoundKey cutAt, const Medium& medium, int pieces, int proposed)
{
    if (WeekEntry* entry =
            entryOf(WeekTask::Wash, {cutAt.date, Slot::Morning}, medium.id.value, medium.name)) {
        entry->supply = SupplyKind::Pieces;
        entry->count += pieces;
        entry->proposed += proposed;
    }
}

void WeekMaker::addTray(const TrayRecord& record, const std::map<PlaceId, std::string>& shelves)
{
    const auto cuts = m_facts.cuts.find(record.tray.id);
    const bool wasCut = cuts != m_facts.cuts.end() && !cuts->second.empty();
    const std::vector<TaskAhead> tasks =
        tasksAhead(record.stages, wasCut ? cuts->second : std::vector<Moment>(),
                   m_facts.layout.room, m_facts.now);
    const auto shelf = record.place ? shelves.find(*record.place) : shelves.end();
    Date cutOn = m_week.from + kDaysKept;
    Date standsFrom = m_week.from;
    for (const TaskAhead& ahead : tasks) {
        WeekEntry* entry = entryOf(ahead.task, ahead.at, record.tray.variety.value, record.variety);
        if (entry != nullptr) {
            ++entry->count;
            addOnce(entry->codes, record.tray.code);
            addOnce(entry->shelves, shelf != shelves.end() ? shelf->second : std::string());
        }
        if (ahead.task == WeekTask::Sow && !record.place) {
            standsFrom = ahead.at.date;
        }
        if (ahead.task != WeekTask::Cut) {
            continue;
        }
        cutOn = ahead.at.date;
        if (entry != nullptr && wasCut) {
            ++entry->furtherCuts;
        } else {
            addLot(cutOn, record.tray.variety, record.tray.medium, record.tray.sownOn, 1);
        }
        if (record.tray.piece) {
            addWash(ahead.at, record.medium, 1, 0);
        }
    }
    if (record.place || standsFrom > m_week.from) {
        m_places.take(standsFrom, std::max(cutOn, m_week.from + 1), 1);
    }
    if (record.tray.piece) {
        takePiece(record.tray.medium, m_week.from, cutOn);
    }
}

void WeekMaker::addGrowing()
{
    const auto shelves = shelvesOf(m_facts.layout);
    for (const TrayRecord& record : m_facts.growing) {
        addTray(record, shelves);
    }
}

void WeekMaker::addDirtyPieces()
{
    for (const PieceRecord& record : m_facts.pieces) {
        const auto medium = m_facts.media.find(record.piece.medium);
        if (record.isInUse || !record.needsSanitising || medium == m_facts.media.end()) {
            continue;
        }
        addWash({m_week.from, Slot::Morning}, medium->second, 1, 0);
        takePiece(record.piece.medium, m_week.from, m_week.from);
    }
}

// A trial is sown as its plan says, or now where that day was let pass.
void WeekMaker::addPlans()
{
    for (const TrialDraft& draft : m_facts.plans) {
        const auto protocol = m_facts.protocols.find(draft.plan.variety);
        if (protocol == m_facts.protocols.end() || minutesToHarvest(protocol->second) <= 0) {
            continue;
        }
        for (const Treatment& treatment : draft.treatments) {
            const auto medium = m_facts.media.find(treatment.medium);
            if (medium == m_facts.media.end()) {
                continue;
            }
            Sowing sowing =
                sowingOf(protocol->second, medium->second,
                         std::max(draft.plan.sowAt(), m_facts.now), draft.plan.startsWithSoak);
            sowing.trays = draft.plan.traysEach;
            sowing.trial = draft.trial.code;
            sowing.seedPerTray =
                draft.plan.seedPerTray ? draft.plan.seedPerTray : sowing.seedPerTray;
            addSowing(sowing);
        }
    }
}

Week WeekMaker::finish()
{
    std::vector<CutLot> all;
    for (WeekDay& day : m_week.days) {
        std::stable_sort(
            day.entries.begin(), day.entries.end(), [](const WeekEntry& a, const WeekEntry& b) {
                return std::tie(a.task, a.slot, a.name) < std::tie(b.task, b.slot, b.name);
            });
        day.freePlaces = std::max(0, m_places.on(day.on));
        all.insert(all.end(), day.cuts.begin(), day.cuts.end());
        if (m_facts.forecaster && !day.cuts.empty()) {
            day.expected = m_facts.forecaster(day.cuts);
        }
    }
    if (m_facts.forecaster && !all.empty()) {
        m_week.expected = m_facts.forecaster(all);
    }
    return std::move(m_week);
}

} // namespace plumule
