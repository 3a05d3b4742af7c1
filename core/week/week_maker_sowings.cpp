// Part of core/week/week_maker.h: what is to be sown, and what has to be ordered for it.
#include "core/week/week_maker.h"

#include "core/week/repeat_rules.h"

#include <algorithm>
#include <tuple>

namespace plumule {

WeekMaker::Sowing WeekMaker::sowingOf(const Protocol& protocol, const Medium& medium, Moment at,
                                      bool soaks) const
{
    Sowing sowing;
    sowing.protocol = &protocol;
    sowing.medium = &medium;
    sowing.at = at;
    sowing.soaks = soaks && soakMinutes(protocol) > 0;
    sowing.sown = sowing.soaks ? at + soakMinutes(protocol) : at;
    sowing.seedPerTray = protocol.variety.seedPerTray;
    std::vector<TrayStage> stages =
        stagesFor(protocol, medium, at, sowing.soaks ? FirstStage::Soak : FirstStage::AfterSoak);
    stages.front().startedOn.reset();
    stages.front().startedMinute.reset();
    sowing.tasks = tasksAhead(stages, {}, m_facts.layout.room, m_facts.now);
    return sowing;
}

void WeekMaker::addSowing(const Sowing& sowing)
{
    const Variety& variety = sowing.protocol->variety;
    const Date sownOn = sowing.sown.date;
    for (const TaskAhead& ahead : sowing.tasks) {
        if (WeekEntry* entry = entryOf(ahead.task, ahead.at, variety.id.value, variety.name)) {
            entry->count += sowing.trays;
            entry->proposed += sowing.isProposed ? sowing.trays : 0;
            addOnce(entry->trials, sowing.trial);
        }
    }
    addLot(sowing.cutOn(), variety.id, sowing.medium->id, sownOn, sowing.trays);
    m_places.take(sownOn, std::max(sowing.cutOn(), sownOn + 1), sowing.trays);
    if (sowing.medium->isReusable) {
        for (int i = 0; i < sowing.trays; ++i) {
            takePiece(sowing.medium->id, sownOn, sowing.cutOn());
        }
        addWash(sowing.tasks.back().at, *sowing.medium, sowing.trays,
                sowing.isProposed ? sowing.trays : 0);
    }
    if (sowing.seedPerTray) {
        m_draws[variety.id].push_back({sowing.at.date, *sowing.seedPerTray * sowing.trays});
    }
}

std::vector<WeekMaker::OpenDay> WeekMaker::openDaysInOrder() const
{
    std::vector<OpenDay> days;
    for (const Repeat& repeat : m_facts.repeats) {
        for (const Date due : openDays(repeat, answersTo(m_facts.answered, repeat.id), m_week.from,
                                       lastDay() + kDaysToDeliver)) {
            days.push_back({&repeat, due});
        }
    }
    std::stable_sort(days.begin(), days.end(),
                     [](const OpenDay& a, const OpenDay& b) { return a.due < b.due; });
    return days;
}

WeekMaker::Sowing WeekMaker::nearestTo(const OpenDay& day, Date on) const
{
    const Protocol& protocol = m_facts.protocols.at(day.repeat->variety);
    const Medium& medium = m_facts.media.at(day.repeat->medium);
    const int soak = soakMinutes(protocol);
    const Moment begins = Moment{on, m_facts.layout.room.morningMinute} + -std::int64_t{soak};
    Sowing sowing = sowingOf(protocol, medium, std::max(begins, m_facts.now), soak > 0);
    sowing.trays = day.repeat->trays;
    sowing.isProposed = true;
    return sowing;
}

int WeekMaker::freePlaces(const Sowing& sowing) const
{
    return std::max(0, m_places.through(sowing.sown.date, sowing.cutOn()));
}

bool WeekMaker::hasPieces(const Sowing& sowing) const
{
    if (!sowing.medium->isReusable) {
        return true;
    }
    const auto pieces = m_pieces.find(sowing.medium->id);
    return pieces != m_pieces.end() &&
           pieces->second.through(sowing.sown.date, sowing.cutOn() + 1) >= sowing.trays;
}

std::optional<Mass> WeekMaker::seedStored(VarietyId variety) const
{
    Mass stored;
    for (const SeedLotStock& stock : m_facts.seed) {
        if (stock.lot.variety != variety) {
            continue;
        }
        if (!stock.left) {
            return std::nullopt;
        }
        stored += std::max(*stock.left, Mass());
    }
    return stored;
}

Mass WeekMaker::seedDrawn(VarietyId variety, Date until) const
{
    Mass drawn;
    if (const auto draws = m_draws.find(variety); draws != m_draws.end()) {
        for (const Draw& draw : draws->second) {
            drawn += draw.on <= until ? draw.seed : Mass();
        }
    }
    return drawn;
}

bool WeekMaker::findRoom(const OpenDay& day, Sowing& sowing, ProposalShift& shift) const
{
    const Date from = std::max(day.due, m_week.from);
    for (Date on = from; on < from + kWeekDays; on = on + 1) {
        sowing = nearestTo(day, on);
        const bool hasPlaces = freePlaces(sowing) >= sowing.trays;
        if (hasPlaces && hasPieces(sowing)) {
            return true;
        }
        shift = hasPlaces ? ProposalShift::Pieces : ProposalShift::Places;
    }
    shift = shift == ProposalShift::Pieces ? ProposalShift::NoPieces : ProposalShift::NoPlaces;
    sowing = nearestTo(day, from);
    return false;
}

void WeekMaker::addRepeat(const OpenDay& day)
{
    Sowing sowing = nearestTo(day, std::max(day.due, m_week.from));
    Proposal proposal;
    proposal.repeat = day.repeat->id;
    proposal.due = day.due;
    proposal.freeOnDue = freePlaces(sowing);
    proposal.shift = day.due < m_week.from        ? ProposalShift::Late
                     : day.due < sowing.sown.date ? ProposalShift::Soak
                                                  : ProposalShift::None;
    const bool hasRoom = findRoom(day, sowing, proposal.shift);
    if (proposal.shift == ProposalShift::Pieces || proposal.shift == ProposalShift::NoPieces) {
        addPieceOrder(nearestTo(day, std::max(day.due, m_week.from)), day.due);
    }
    describe(sowing, proposal);
    if (hasRoom) {
        addSowing(sowing);
    }
    if (day.due <= lastDay()) {
        m_week.proposals.push_back(std::move(proposal));
    }
}

void WeekMaker::describe(const Sowing& sowing, Proposal& proposal) const
{
    const Variety& variety = sowing.protocol->variety;
    proposal.variety = variety.name;
    proposal.medium = *sowing.medium;
    proposal.trays = sowing.trays;
    proposal.sowAt = sowing.sown;
    proposal.soakAt = sowing.soaks ? std::optional(sowing.at) : std::nullopt;
    proposal.cutOn = sowing.cutOn();
    proposal.freePlaces = freePlaces(sowing);
    if (!sowing.seedPerTray) {
        return;
    }
    proposal.seedNeeded = *sowing.seedPerTray * sowing.trays;
    if (const auto stored = seedStored(variety.id)) {
        proposal.seedLeft = std::max(Mass(), *stored - seedDrawn(variety.id, sowing.at.date));
    }
}

void WeekMaker::addRepeats()
{
    for (const OpenDay& day : openDaysInOrder()) {
        const auto protocol = m_facts.protocols.find(day.repeat->variety);
        const auto medium = m_facts.media.find(day.repeat->medium);
        const bool isUsable = protocol != m_facts.protocols.end() &&
                              medium != m_facts.media.end() &&
                              !protocol->second.variety.isRetired && !medium->second.isRetired &&
                              minutesToHarvest(protocol->second) > 0;
        if (isUsable) {
            addRepeat(day);
        }
    }
    std::stable_sort(
        m_week.proposals.begin(), m_week.proposals.end(),
        [](const Proposal& a, const Proposal& b) { return a.beginsOn() < b.beginsOn(); });
}

void WeekMaker::addPieceOrder(const Sowing& sowing, Date due)
{
    const Date on = std::max(due - kDaysToDeliver, m_week.from);
    if (WeekEntry* entry = entryOf(WeekTask::Order, {on, Slot::Morning}, sowing.medium->id.value,
                                   sowing.medium->name)) {
        const auto pieces = m_pieces.find(sowing.medium->id);
        const int free =
            pieces == m_pieces.end()
                ? 0
                : std::max(0, pieces->second.through(sowing.sown.date, sowing.cutOn() + 1));
        entry->supply = SupplyKind::Pieces;
        entry->count = std::max(entry->count, sowing.trays - free);
    }
}

// Seed is asked for in time for the first sowing that it does not reach to.
void WeekMaker::addOrders()
{
    for (auto& [variety, draws] : m_draws) {
        const auto stored = seedStored(variety);
        std::optional<Date> shortOn;
        for (const Draw& draw : draws) {
            if (stored && *stored < seedDrawn(variety, draw.on)) {
                shortOn = std::min(shortOn.value_or(draw.on), draw.on);
            }
        }
        if (!shortOn) {
            continue;
        }
        const Date on = std::max(*shortOn - kDaysToDeliver, m_week.from);
        const std::string& name = m_facts.protocols.at(variety).variety.name;
        if (WeekEntry* entry = entryOf(WeekTask::Order, {on, Slot::Morning}, variety.value, name)) {
            entry->count = 1;
        }
    }
}

} // namespace plumule
