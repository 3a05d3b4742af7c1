#include "core/stock/stock_item.h"

#include "core/base/enum_text.h"
#include "core/base/number_text.h"
#include "core/stock/stock_reason.h"
#include "core/stock/stock_rules.h"

namespace plumule {

const char* toText(StockKind kind)
{
    switch (kind) {
    case StockKind::Medium:
        return "medium";
    case StockKind::Concentrate:
        return "concentrate";
    case StockKind::Sanitiser:
        return "sanitiser";
    case StockKind::Packaging:
        return "packaging";
    case StockKind::Other:
        return "other";
    }
    return "";
}

bool fromText(std::string_view text, StockKind& kind)
{
    return matchText(text,
                     std::array{StockKind::Medium, StockKind::Concentrate, StockKind::Sanitiser,
                                StockKind::Packaging, StockKind::Other},
                     kind);
}

const char* toText(StockUnit unit)
{
    return unit == StockUnit::Millilitre ? "millilitre" : "piece";
}

bool fromText(std::string_view text, StockUnit& unit)
{
    return matchText(text, std::array{StockUnit::Millilitre, StockUnit::Piece}, unit);
}

const char* toText(StockEvent event)
{
    return event == StockEvent::Counted ? "counted" : "bought";
}

bool fromText(std::string_view text, StockEvent& event)
{
    return matchText(text, std::array{StockEvent::Counted, StockEvent::Bought}, event);
}

bool isSameThing(const StockItem& a, const StockItem& b)
{
    return a.kind == b.kind && (a.medium ? a.medium == b.medium : a.name == b.name);
}

Done checkStockItem(const StockItem& supply)
{
    if (trimmed(supply.name).empty()) {
        return fail(ErrorKind::Missing, StockReason::NameMissing);
    }
    const StockAmount nothing;
    if (supply.eachUse.value_or(nothing) < nothing ||
        supply.lowAmount.value_or(nothing) < nothing) {
        return fail(ErrorKind::Invalid, StockReason::AmountBelowNothing);
    }
    return checkLowDays(supply.lowDays);
}

} // namespace plumule
