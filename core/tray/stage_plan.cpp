#include "core/tray/stage_plan.h"

#include "core/base/capped.h"
#include "core/tray/tray_code.h"
#include "core/tray/tray_reason.h"

#include <algorithm>
#include <cassert>
#include <cctype>

namespace plumule {
namespace {

Moment endOf(const TrayStage& stage, Moment start)
{
    return start + (std::int64_t{stage.lengthMinutes} + stage.delayMinutes);
}

bool beginsWith(const std::string& text, const std::string& prefix)
{
    return text.size() >= prefix.size() &&
           std::equal(prefix.begin(), prefix.end(), text.begin(), [](char a, char b) {
               return std::toupper(static_cast<unsigned char>(a)) ==
                      std::toupper(static_cast<unsigned char>(b));
           });
}

// The number after the prefix; 0 for a code of another form.
int numberIn(const std::string& code, const std::string& prefix)
{
    const std::string digits = beginsWith(code, prefix) ? code.substr(prefix.size()) : "";
    const bool isNumber =
        !digits.empty() && digits.size() <= kMostCodeDigits &&
        std::all_of(digits.begin(), digits.end(), [](char c) { return c >= '0' && c <= '9'; });
    return isNumber ? std::stoi(digits) : 0;
}

} // namespace

StagePlan planOf(const std::vector<TrayStage>& stages)
{
    assert(!stages.empty());
    StagePlan plan;
    Moment next = stages.front().planned();
    for (std::size_t i = 0; i < stages.size(); ++i) {
        const TrayStage& stage = stages[i];
        StageSpan span;
        span.stage = stage.stage;
        span.planned = stage.planned();
        span.hasStarted = stage.started().has_value();
        span.start = stage.started().value_or(next);
        if (span.hasStarted) {
            plan.current = i;
        }
        next = endOf(stage, span.start);
        plan.spans.push_back(span);
    }
    plan.harvest = next;
    plan.harvestPlanned = stages.back().planned() + stages.back().lengthMinutes;
    for (std::size_t i = 0; i < plan.spans.size(); ++i) {
        plan.spans[i].end = i + 1 < plan.spans.size() ? plan.spans[i + 1].start : plan.harvest;
    }
    return plan;
}

StagePlan calendarOf(const TrayRecord& record)
{
    if (!record.stages.empty()) {
        return planOf(record.stages);
    }
    StagePlan plan;
    plan.harvest = record.tray.endedOn
                       ? Moment{*record.tray.endedOn, record.tray.endedMinute.value_or(0)}
                       : record.tray.sownAt();
    plan.harvestPlanned = plan.harvest;
    return plan;
}

std::vector<TrayStage> stagesFor(const Protocol& protocol, const Medium& medium, Moment at,
                                 FirstStage first, Feeding feeding)
{
    std::vector<TrayStage> stages;
    Moment planned = at;
    for (const ProtocolStage& from : protocol.stages) {
        if (from.stage == Stage::Soak && first == FirstStage::AfterSoak) {
            continue;
        }
        TrayStage stage;
        stage.position = static_cast<int>(stages.size());
        stage.stage = from.stage;
        stage.plannedOn = planned.date;
        stage.plannedMinute = planned.minute;
        stage.lengthMinutes = from.lengthMinutes;
        stage.cue = from.cue;
        stage.wateringsPerDay = from.wateringsPerDay;
        stage.method = from.method;
        stage.amount = from.amount;
        stage.water = waterFor(from, medium, feeding);
        if (stages.empty()) {
            stage.startedOn = planned.date;
            stage.startedMinute = planned.minute;
        }
        planned = planned + from.lengthMinutes;
        stages.push_back(std::move(stage));
    }
    return stages;
}

WaterKind waterFor(const ProtocolStage& stage, const Medium& medium, Feeding feeding)
{
    const bool isFeeding = stage.water == WaterKind::Nutrient;
    if (isFeeding && feeding == Feeding::Nutrient) {
        return WaterKind::Nutrient;
    }
    WaterKind water = stage.water;
    if (medium.isNutrientBearing) {
        const WaterKind usual = isFeeding ? WaterKind::PhSet : stage.water;
        water = stage.waterOnNutrientBearing.value_or(usual);
    }
    const bool isHeldBack = feeding == Feeding::NoNutrient && water == WaterKind::Nutrient;
    return isHeldBack ? WaterKind::PhSet : water;
}

int minutesToHarvest(const Protocol& protocol)
{
    int minutes = 0;
    for (const ProtocolStage& stage : protocol.stages) {
        minutes = cappedSum(minutes, stage.stage == Stage::Soak ? 0 : stage.lengthMinutes);
    }
    return minutes;
}

int soakMinutes(const Protocol& protocol)
{
    int minutes = 0;
    for (const ProtocolStage& stage : protocol.stages) {
        minutes = cappedSum(minutes, stage.stage == Stage::Soak ? stage.lengthMinutes : 0);
    }
    return minutes;
}

SowingTimes timesForHarvest(const Protocol& protocol, Moment harvest)
{
    SowingTimes times;
    times.sow = harvest + -std::int64_t{minutesToHarvest(protocol)};
    if (const int soak = soakMinutes(protocol); soak > 0) {
        times.soak = times.sow + -std::int64_t{soak};
    }
    return times;
}

Result<Length> heightAboveSurface(const Height& height, const Medium& medium)
{
    if (height.from == ReadFrom::Surface) {
        return height.reading;
    }
    if (!medium.surfaceBelowRim) {
        return fail(ErrorKind::NotEstimable, TrayReason::SurfaceUnknown, medium.name);
    }
    return height.reading + *medium.surfaceBelowRim;
}

std::string nextCode(const std::string& prefix, const std::vector<std::string>& used)
{
    int highest = 0;
    for (const std::string& code : used) {
        highest = std::max(highest, numberIn(code, prefix));
    }
    return codeOf(prefix, highest + 1);
}

} // namespace plumule
