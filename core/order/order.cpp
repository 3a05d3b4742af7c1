#include "core/order/order.h"

#include "core/base/enum_text.h"

namespace plumule {

const char* toText(Recurrence recurrence)
{
    return recurrence == Recurrence::Once ? "once" : "weekly";
}

bool fromText(std::string_view text, Recurrence& recurrence)
{
    return matchText(text, std::array{Recurrence::Once, Recurrence::Weekly}, recurrence);
}

} // namespace plumule
