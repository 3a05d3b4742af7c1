#include "core/stock/supply.h"

#include "core/base/enum_text.h"
#include "core/base/number_text.h"
#include "core/stock/stock_reason.h"
#include "core/stock/stock_rules.h"

namespace plumule {

const char* toText(SupplyKind kind)
{
    switch (kind) {
    case SupplyKind::Medium:
        return "medium";
    case SupplyKind::Concentrate:
        return "concentrate";
    case SupplyKind::Sanitiser:
        return "sanitiser";
    case SupplyKind::Packaging:
        return "packaging";
    case SupplyKind::Other:
        return "other";
    }
    return "";
}

bool fromText(std::string_view text, SupplyKind& kind)
{
    return matchText(text,
                     std::array{SupplyKind::Medium, SupplyKind::Concentrate, SupplyKind::Sanitiser,
                                SupplyKind::Packaging, SupplyKind::Other},
                     kind);
}

const char* toText(SupplyUnit unit)
{
    return unit == SupplyUnit::Millilitre ? "millilitre" : "piece";
}

bool fromText(std::string_view text, SupplyUnit& unit)
{
    return matchText(text, std::array{SupplyUnit::Millilitre, SupplyUnit::Piece}, unit);
}

const char* toText(SupplyEvent event)
{
    return event == SupplyEvent::Counted ? "counted" : "bought";
}

bool fromText(std::string_view text, SupplyEvent& event)
{
    return matchText(text, std::array{SupplyEvent::Counted, SupplyEvent::Bought}, event);
}

Done checkSupply(const Supply& supply)
{
    if (trimmed(supply.name).empty()) {
        return fail(ErrorKind::Missing, StockReason::NameMissing);
    }
    const SupplyAmount nothing;
    if (supply.eachUse.value_or(nothing) < nothing ||
        supply.lowAmount.value_or(nothing) < nothing) {
        return fail(ErrorKind::Invalid, StockReason::AmountBelowNothing);
    }
    return checkLowDays(supply.lowDays);
}

} // namespace plumule
