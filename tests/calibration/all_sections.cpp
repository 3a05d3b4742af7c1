#include "lines.h"

namespace plumule::calibration {

std::vector<Section> allSections()
{
    // New sections go last, so that the seeds of the others stay.
    return {promisedRooms(), promisedCosts(), power(),   oneTrial(),       seasons(),
            plans(),         varieties(),     growers(), otherQuestions(), whatBreaksIt(),
            throughPages(),  heights(),       squares(), forecasts(),      orders()};
}

} // namespace plumule::calibration
