// Part of ui/trial/prep_sheet.h: what is to be done in which order.
#include "ui/trial/prep_sheet.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/tray/stage_plan.h"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>

namespace plumule::ui {
namespace {

class PrepStepTr
{
    Q_DECLARE_TR_FUNCTIONS(PrepSheet)
};

QString momentText(Moment at)
{
    return QStringLiteral("%1, %2").arg(weekdayText(at.date), clockText(at.minute));
}

QString seedText(const PrepSheet& sheet)
{
    const auto seed = sheet.draft.plan.seedPerTray ? sheet.draft.plan.seedPerTray
                                                   : sheet.protocol.variety.seedPerTray;
    return seed ? sheet.units.mass(*seed, *seed < grams(10) ? 1 : 0)
                : PrepStepTr::tr("the usual seed");
}

bool usesReusable(const PrepSheet& sheet)
{
    return std::any_of(sheet.draft.treatments.begin(), sheet.draft.treatments.end(),
                       [&](const Treatment& treatment) {
                           const auto found = sheet.media.find(treatment.medium);
                           return found != sheet.media.end() && found->second.isReusable;
                       });
}

bool setsPh(const PrepSheet& sheet)
{
    return std::any_of(sheet.protocol.stages.begin(), sheet.protocol.stages.end(),
                       [](const ProtocolStage& stage) { return stage.water != WaterKind::Plain; });
}

// From the sowing to the cut.
std::vector<PrepStep> growingSteps(const Protocol& protocol, Moment sowing)
{
    std::vector<PrepStep> steps;
    Moment at = sowing;
    for (const ProtocolStage& stage : protocol.stages) {
        if (stage.stage == Stage::Soak) {
            continue;
        }
        const QString text =
            at == sowing ? PrepStepTr::tr("Begin %1.") : PrepStepTr::tr("Due into %1.");
        steps.push_back({momentText(at), text.arg(nameOf(stage.stage))});
        at = at + stage.lengthMinutes;
    }
    steps.push_back(
        {momentText(at), PrepStepTr::tr("Due to be cut: all on one day, and weigh every tray.")});
    return steps;
}

} // namespace

Result<PrepSheet> prepSheetOf(Journal& journal, const TrialDraft& draft)
{
    PrepSheet sheet;
    sheet.draft = draft;
    auto preparation = journal.trials().preparation(draft);
    auto layout = journal.room().layout();
    auto media = journal.media().all(Listed::All);
    auto protocol = journal.varieties().protocol(draft.plan.variety);
    auto lots = journal.varieties().lots(draft.plan.variety, Listed::All);
    if (!preparation || !layout || !media || !protocol || !lots) {
        return passOn(!preparation ? preparation.error()
                      : !layout    ? layout.error()
                      : !media     ? media.error()
                      : !protocol  ? protocol.error()
                                   : lots.error());
    }
    sheet.preparation = std::move(*preparation);
    sheet.layout = std::move(*layout);
    sheet.protocol = std::move(*protocol);
    sheet.units = UnitText(sheet.layout.room.units);
    for (const Medium& medium : *media) {
        sheet.media[medium.id] = medium;
    }
    for (const SeedLotStock& stock : *lots) {
        if (draft.plan.seedLot == stock.lot.id) {
            sheet.lot = stock.lot;
        }
    }
    return sheet;
}

std::vector<PrepStep> prepSteps(const PrepSheet& sheet)
{
    std::vector<PrepStep> steps;
    const TrialPlan& plan = sheet.draft.plan;
    const QString seed = seedText(sheet);
    const int soak = plan.startsWithSoak ? soakMinutes(sheet.protocol) : 0;
    const Moment begin = plan.sowAt();
    if (usesReusable(sheet)) {
        steps.push_back(
            {PrepStepTr::tr("before"), PrepStepTr::tr("Take clean, sanitised pieces only.")});
    }
    if (soak > 0) {
        steps.push_back(
            {momentText(begin),
             PrepStepTr::tr("Put the seed to soak, %1 for each tray, all in one bath.").arg(seed)});
    }
    const Moment sowing = begin + soak;
    steps.push_back(
        {momentText(sowing), PrepStepTr::tr("Fill all trays, whatever the medium, to their usual "
                                            "depth and wet them alike.")});
    steps.push_back(
        {momentText(sowing),
         PrepStepTr::tr("Weigh %1 of seed for each tray and sow evenly, going from treatment to "
                        "treatment, not one medium after the other.")
             .arg(seed)});
    steps.push_back(
        {momentText(sowing), PrepStepTr::tr("Put each label on its tray and the tray at its "
                                            "place; check both against this sheet.")});
    const std::vector<PrepStep> growing = growingSteps(sheet.protocol, sowing);
    steps.insert(steps.end(), growing.begin(), growing.end());
    return steps;
}

QStringList prepCautions(const PrepSheet& sheet)
{
    QStringList lines;
    if (setsPh(sheet)) {
        lines << PrepStepTr::tr(
            "pH adjusters burn skin and eyes: gloves and glasses, and follow the label.");
    }
    if (usesReusable(sheet)) {
        lines << PrepStepTr::tr(
            "Sanitisers: gloves, eye protection and fresh air; never mix chlorine with "
            "acids; rinse as the label says.");
    }
    lines << PrepStepTr::tr("Keep plugs above the water and behind an RCD (GFCI).");
    return lines;
}

} // namespace plumule::ui
