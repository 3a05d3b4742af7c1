#include "core/forecast/forecast.h"

namespace plumule {

const char* toText(ForecastSource source)
{
    return source == ForecastSource::OwnPast ? "own_past" : "library";
}

const char* toText(PastSpan span)
{
    return span == PastSpan::Season ? "season" : "all";
}

} // namespace plumule
