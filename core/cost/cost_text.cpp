#include "core/cost/cost.h"

#include <algorithm>
#include <array>
#include <utility>

namespace plumule {
namespace {

constexpr std::array kItemTexts = {
    std::pair{PriceItem::Medium, "medium"},   std::pair{PriceItem::Concentrate, "concentrate"},
    std::pair{PriceItem::Water, "water"},     std::pair{PriceItem::Electricity, "electricity"},
    std::pair{PriceItem::Labour, "labour"},   std::pair{PriceItem::Packaging, "packaging"},
    std::pair{PriceItem::Washing, "washing"}, std::pair{PriceItem::Waste, "waste"},
};

constexpr std::array kLabourTexts = {
    std::pair{LabourKind::Sowing, "sowing"},
    std::pair{LabourKind::Watering, "watering"},
    std::pair{LabourKind::StageMove, "stage_move"},
    std::pair{LabourKind::Harvesting, "harvesting"},
    std::pair{LabourKind::Packing, "packing"},
    std::pair{LabourKind::ClearingOut, "clearing_out"},
    std::pair{LabourKind::PieceWashing, "piece_washing"},
};

template <class Texts, class Value>
const char* textOf(const Texts& texts, Value value)
{
    const auto found = std::find_if(texts.begin(), texts.end(),
                                    [&](const auto& entry) { return entry.first == value; });
    return found == texts.end() ? "" : found->second;
}

template <class Texts, class Value>
bool valueOf(const Texts& texts, std::string_view text, Value& value)
{
    const auto found = std::find_if(texts.begin(), texts.end(),
                                    [&](const auto& entry) { return entry.second == text; });
    if (found == texts.end()) {
        return false;
    }
    value = found->first;
    return true;
}

} // namespace

const char* toText(PriceItem item)
{
    return textOf(kItemTexts, item);
}

bool fromText(std::string_view text, PriceItem& item)
{
    return valueOf(kItemTexts, text, item);
}

const char* toText(LabourKind kind)
{
    return textOf(kLabourTexts, kind);
}

bool fromText(std::string_view text, LabourKind& kind)
{
    return valueOf(kLabourTexts, text, kind);
}

} // namespace plumule
