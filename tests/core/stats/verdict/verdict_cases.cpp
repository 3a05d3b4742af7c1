#include "core/stats/verdict/verdict_cases.h"

#include <cmath>
#include <fstream>
#include <stdexcept>

namespace plumule::stats::verdicts {

const nlohmann::json& verdictCase(const std::string& name)
{
    static const nlohmann::json cases = [] {
        std::ifstream file(std::string(PLUMULE_REFERENCES) + "/verdict_cases.json");
        return nlohmann::json::parse(file);
    }();
    for (const nlohmann::json& one : cases) {
        if (one.at("name") == name) {
            return one;
        }
    }
    throw std::runtime_error("no case " + name);
}

std::size_t numberOf(const std::string& name)
{
    return name.size() > 1 ? std::stoul(name.substr(1)) - 1
                           : static_cast<std::size_t>(name.front() - 'A');
}

std::vector<SownTray> traysOf(const nlohmann::json& input)
{
    std::vector<SownTray> trays;
    for (const nlohmann::json& row : input) {
        SownTray tray;
        tray.sowing = row.value("trial", std::size_t{1});
        tray.medium = numberOf(row.at("medium"));
        if (row.contains("variety")) {
            tray.variety = numberOf(row.at("variety"));
        }
        if (row.contains("block")) {
            tray.block = row.at("block").get<std::size_t>();
        }
        if (row.contains("cost")) {
            tray.value = row.at("cost").get<double>();
            tray.per = row.at("grams").get<double>();
        } else {
            tray.value = row.contains("mean_log") ? std::exp(row.at("mean_log").get<double>())
                                                  : row.at("grams").get<double>();
        }
        trays.push_back(tray);
    }
    return trays;
}

std::string nameOf(Verdict verdict)
{
    switch (verdict) {
    case Verdict::More:
        return "more";
    case Verdict::Less:
        return "less";
    case Verdict::SameWithinMargin:
        return "same_within_margin";
    case Verdict::RealButTooSmall:
        return "real_but_too_small";
    case Verdict::CantTellYet:
        return "cant_tell_yet";
    case Verdict::NotComparable:
        return "not_comparable";
    case Verdict::NoVerdict:
        return "no_verdict";
    }
    return {};
}

} // namespace plumule::stats::verdicts
