#include "core/medium/medium_rules.h"

#include "core/base/enum_text.h"
#include "core/base/number_text.h"
#include "core/medium/medium_reason.h"

#include <algorithm>

namespace plumule {

const char* toText(MediumForm form)
{
    switch (form) {
    case MediumForm::LooseMix:
        return "loose_mix";
    case MediumForm::Mat:
        return "mat";
    case MediumForm::Mesh:
        return "mesh";
    }
    return "";
}

bool fromText(std::string_view text, MediumForm& form)
{
    return matchText(text, std::array{MediumForm::LooseMix, MediumForm::Mat, MediumForm::Mesh},
                     form);
}

const char* toText(StrengthUnit unit)
{
    return unit == StrengthUnit::Percent ? "percent" : "ppm";
}

bool fromText(std::string_view text, StrengthUnit& unit)
{
    return matchText(text, std::array{StrengthUnit::Percent, StrengthUnit::Ppm}, unit);
}

Done checkSanitising(const SanitisingDraft& how)
{
    if (trimmed(how.method).empty()) {
        return fail(ErrorKind::Missing, MediumReason::MethodMissing);
    }
    const double most = how.strengthUnit == StrengthUnit::Percent ? kMostPercent : kMostPpm;
    if (how.strength && !(*how.strength > 0 && *how.strength <= most)) {
        return fail(ErrorKind::Invalid, MediumReason::Strength, static_cast<std::int64_t>(most));
    }
    if (how.contactMinutes && (*how.contactMinutes < 1 || *how.contactMinutes > kMinutesPerDay)) {
        return fail(ErrorKind::Invalid, MediumReason::ContactMinutes, kMinutesPerDay);
    }
    return {};
}

Done checkMedium(const Medium& medium)
{
    if (trimmed(medium.name).empty()) {
        return fail(ErrorKind::Missing, MediumReason::NameMissing);
    }
    if (medium.isReusable && medium.form == MediumForm::LooseMix) {
        return fail(ErrorKind::Invalid, MediumReason::LooseMixReused);
    }
    if (medium.plannedUses && (*medium.plannedUses < 1 || !medium.isReusable)) {
        return fail(ErrorKind::Invalid, medium.isReusable ? MediumReason::PlannedUses
                                                          : MediumReason::PlannedUsesOfOneUse);
    }
    if (medium.surfaceBelowRim && *medium.surfaceBelowRim < Length{}) {
        return fail(ErrorKind::Invalid, MediumReason::SurfaceBelowRim);
    }
    if (medium.amountPerTray && *medium.amountPerTray <= Volume{}) {
        return fail(ErrorKind::Invalid, MediumReason::AmountPerTray);
    }
    if (medium.marker < 0 || medium.marker >= kMarkers) {
        return fail(ErrorKind::Invalid, MediumReason::Marker);
    }
    return {};
}

int nextMarker(const std::vector<int>& used)
{
    std::array<int, kMarkers> times{};
    for (const int marker : used) {
        if (marker >= 0 && marker < kMarkers) {
            ++times[static_cast<std::size_t>(marker)];
        }
    }
    const auto least = std::min_element(times.begin(), times.end());
    return static_cast<int>(least - times.begin());
}

bool needsSanitising(std::optional<Moment> used, std::optional<Moment> sanitised)
{
    return used.has_value() && (!sanitised || *sanitised < *used);
}

} // namespace plumule
