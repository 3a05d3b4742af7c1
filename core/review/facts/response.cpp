#include "core/review/facts/response.h"

namespace plumule {

const char* toText(Response response)
{
    switch (response) {
    case Response::YieldPerTray:
        return "yield";
    case Response::YieldPerTraySown:
        return "yield_per_sown";
    case Response::YieldPerArea:
        return "yield_per_area";
    case Response::YieldPerSeed:
        return "yield_per_seed";
    case Response::YieldPerDay:
        return "yield_per_day";
    case Response::CostPerGram:
        return "cost";
    case Response::HeightOnDay:
        return "height";
    case Response::DaysToHarvest:
        return "days";
    case Response::Residue:
        return "residue";
    case Response::Evenness:
        return "evenness";
    case Response::Work:
        return "work";
    }
    return "";
}

bool fromText(std::string_view text, Response& response)
{
    for (const Response each : kResponses) {
        if (text == toText(each)) {
            response = each;
            return true;
        }
    }
    return false;
}

} // namespace plumule
