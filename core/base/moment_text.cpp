#include "core/base/moment_text.h"

namespace plumule {

std::string textOf(Moment moment)
{
    return toIso(moment.date) + " " + toClockText(moment.minute);
}

} // namespace plumule
