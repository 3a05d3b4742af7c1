#include "core/climate/logger_merge.h"

#include <algorithm>
#include <cmath>

namespace plumule {
namespace {

enum class Fate // the graver the later
{
    Same,
    Fuller,
    Joined,
    Unlike
};

struct MergedReadings
{
    std::optional<HourReadings> readings;
    Fate fate = Fate::Same;
};

// Whether all of `part` may be among `whole`.
bool mayHold(const HourReadings& whole, const HourReadings& part)
{
    return whole.readings >= part.readings && whole.low <= part.low && whole.high >= part.high &&
           (whole.readings > part.readings || whole == part);
}

HourReadings sumOf(const HourReadings& a, const HourReadings& b)
{
    HourReadings sum;
    sum.readings = a.readings + b.readings;
    sum.low = std::min(a.low, b.low);
    sum.high = std::max(a.high, b.high);
    sum.mean = std::llround(
        (static_cast<double>(a.mean) * a.readings + static_cast<double>(b.mean) * b.readings) /
        sum.readings);
    return sum;
}

bool overlap(const ClimateHour& a, const ClimateHour& b)
{
    return a.firstMinute <= b.lastMinute && b.firstMinute <= a.lastMinute;
}

bool spans(const ClimateHour& whole, const ClimateHour& part)
{
    return whole.firstMinute <= part.firstMinute && whole.lastMinute >= part.lastMinute;
}

MergedReadings merged(const ClimateHour& stored, const ClimateHour& read, Measure measure)
{
    const auto& old = stored.of(measure);
    const auto& fresh = read.of(measure);
    if (!fresh) {
        return {old, Fate::Same};
    }
    if (!old) {
        return {fresh, Fate::Joined};
    }
    if (!overlap(stored, read)) {
        return {sumOf(*old, *fresh), Fate::Joined};
    }
    if (spans(stored, read) && mayHold(*old, *fresh)) {
        return {old, Fate::Same};
    }
    if (spans(read, stored) && mayHold(*fresh, *old)) {
        return {fresh, Fate::Fuller};
    }
    return {old, Fate::Unlike};
}

void take(HourMerge& merge, const ClimateHour& stored, const ClimateHour& read)
{
    ClimateHour hour = stored;
    Fate fate = Fate::Same;
    for (const Measure measure : kMeasures) {
        const MergedReadings one = merged(stored, read, measure);
        hour.of(measure) = one.readings;
        fate = std::max(fate, one.fate);
    }
    switch (fate) {
    case Fate::Same:
        ++merge.same;
        return;
    case Fate::Unlike:
        ++merge.unlike;
        return;
    case Fate::Fuller:
        ++merge.fuller;
        break;
    case Fate::Joined:
        ++merge.joined;
        break;
    }
    hour.firstMinute = std::min(stored.firstMinute, read.firstMinute);
    hour.lastMinute = std::max(stored.lastMinute, read.lastMinute);
    merge.changed.push_back(hour);
}

auto placeOf(const ClimateHour& hour)
{
    return std::pair(hour.on, hour.hour);
}

} // namespace

HourMerge mergeHours(const std::vector<ClimateHour>& stored, const std::vector<ClimateHour>& read)
{
    HourMerge merge;
    auto old = stored.begin();
    for (const ClimateHour& hour : read) {
        while (old != stored.end() && placeOf(*old) < placeOf(hour)) {
            ++old;
        }
        if (old != stored.end() && placeOf(*old) == placeOf(hour)) {
            take(merge, *old, hour);
        } else {
            merge.added.push_back(hour);
        }
    }
    return merge;
}

} // namespace plumule
