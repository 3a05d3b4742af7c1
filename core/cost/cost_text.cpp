// Part of core/cost/cost.h: the words that are stored and read back.
#include "core/cost/cost.h"

#include "core/base/enum_text.h"

namespace plumule {

const char* toText(PriceItem item)
{
    switch (item) {
    case PriceItem::Medium:
        return "medium";
    case PriceItem::Concentrate:
        return "concentrate";
    case PriceItem::Water:
        return "water";
    case PriceItem::Electricity:
        return "electricity";
    case PriceItem::Labour:
        return "labour";
    case PriceItem::Packaging:
        return "packaging";
    case PriceItem::Washing:
        return "washing";
    case PriceItem::Waste:
        return "waste";
    }
    return "";
}

bool fromText(std::string_view text, PriceItem& item)
{
    return matchText(text,
                     std::array{PriceItem::Medium, PriceItem::Concentrate, PriceItem::Water,
                                PriceItem::Electricity, PriceItem::Labour, PriceItem::Packaging,
                                PriceItem::Washing, PriceItem::Waste},
                     item);
}

const char* toText(PriceMeasure measure)
{
    switch (measure) {
    case PriceMeasure::Unit:
        return "unit";
    case PriceMeasure::CubicMetre:
        return "cubic_metre";
    case PriceMeasure::CubicFoot:
        return "cubic_foot";
    case PriceMeasure::UsQuart:
        return "us_quart";
    case PriceMeasure::UsGallon:
        return "us_gallon";
    case PriceMeasure::ThousandUsGallons:
        return "thousand_us_gallons";
    case PriceMeasure::UsFluidOunce:
        return "us_fluid_ounce";
    case PriceMeasure::Pound:
        return "pound";
    case PriceMeasure::Ounce:
        return "ounce";
    }
    return "";
}

bool fromText(std::string_view text, PriceMeasure& measure)
{
    return matchText(
        text,
        std::array{PriceMeasure::Unit, PriceMeasure::CubicMetre, PriceMeasure::CubicFoot,
                   PriceMeasure::UsQuart, PriceMeasure::UsGallon, PriceMeasure::ThousandUsGallons,
                   PriceMeasure::UsFluidOunce, PriceMeasure::Pound, PriceMeasure::Ounce},
        measure);
}

const char* toText(LabourKind kind)
{
    switch (kind) {
    case LabourKind::Sowing:
        return "sowing";
    case LabourKind::Watering:
        return "watering";
    case LabourKind::StageMove:
        return "stage_move";
    case LabourKind::Harvesting:
        return "harvesting";
    case LabourKind::Packing:
        return "packing";
    case LabourKind::ClearingOut:
        return "clearing_out";
    case LabourKind::PieceWashing:
        return "piece_washing";
    }
    return "";
}

bool fromText(std::string_view text, LabourKind& kind)
{
    return matchText(text,
                     std::array{LabourKind::Sowing, LabourKind::Watering, LabourKind::StageMove,
                                LabourKind::Harvesting, LabourKind::Packing,
                                LabourKind::ClearingOut, LabourKind::PieceWashing},
                     kind);
}

} // namespace plumule
