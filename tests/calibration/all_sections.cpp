#include "lines.h"

namespace plumule::calibration {

std::vector<Section> allSections()
{
    return {promisedRooms(), promisedCosts(), power(),   oneTrial(),       seasons(),
            plans(),         varieties(),     growers(), otherQuestions(), whatBreaksIt()};
}

} // namespace plumule::calibration
