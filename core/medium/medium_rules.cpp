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
