#include "app/commands/command.h"

#include "core/journal/review/review_answers.h"
#include "ui/cost/costs_text.h"
#include "ui/cost/payback_text.h"

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

ordered_json jsonOf(const CostBreakdown& costs)
{
    ordered_json json;
    json["cost_per_g"] = jsonNumber(costs.perGram());
    json["parts"] = ordered_json::array();
    for (const CostShare& share : costs.shares) {
        json["parts"].push_back({{"part", toText(share.part)},
                                 {"cost_per_g", jsonNumber(share.perGram)},
                                 {"trays_without", share.lacking},
                                 {"trays_without_price", share.unpriced}});
    }
    json["trays_harvested"] = costs.harvested;
    json["trays_failed"] = costs.failed;
    json["failed_cost"] = jsonNumber(costs.failedCost);
    json["grams"] = jsonNumber(costs.grams);
    return json;
}

ordered_json jsonOf(const CostsAnswer& answer)
{
    ordered_json json;
    json["from"] = toIso(answer.review.filter.from);
    json["to"] = toIso(answer.review.filter.to);
    json["currency"] = answer.review.currency;
    json["media"] = ordered_json::array();
    std::map<MediumId, std::string> names;
    for (const MediumCosts& each : answer.media) {
        names[each.medium.id] = each.medium.name;
        ordered_json medium;
        medium["medium"] = each.medium.name;
        medium.update(jsonOf(each.today));
        medium["residue_g"] = jsonNumber(each.residueGrams);
        json["media"].push_back(std::move(medium));
    }
    json["missing_prices"] = ordered_json::array();
    for (const PriceLack& lack : answer.lacks.prices) {
        json["missing_prices"].push_back(
            {{"item", toText(lack.item)},
             {"medium", lack.medium ? ordered_json(names[*lack.medium]) : ordered_json(nullptr)},
             {"first_on", lack.from ? ordered_json(toIso(*lack.from)) : ordered_json(nullptr)},
             {"trays", lack.trays}});
    }
    json["trays_without_seed_cost"] = answer.lacks.seed;
    json["pays_back"] = ordered_json::array();
    for (const Payback& each : answer.paybacks) {
        json["pays_back"].push_back({{"medium", each.medium.name},
                                     {"against", each.against.name},
                                     {"at_use", jsonOrNull(each.at)},
                                     {"low", jsonOrNull(each.low)},
                                     {"high", jsonOrNull(each.high)}});
    }
    return json;
}

void printCosts(const CostsAnswer& answer)
{
    print(ui::costsHeadline(answer));
    const ui::PartsTable table = ui::partsTable(answer);
    print(table.header.join(QStringLiteral("  ")));
    for (const ui::TextRow& row : table.rows) {
        print(row.cells.join(QStringLiteral("  ")));
    }
    for (const PriceLack& lack : answer.lacks.prices) {
        print(ui::lackText(lack, answer));
    }
    for (const QString& line : ui::otherLacks(answer) + ui::paybackWords(answer.paybacks)) {
        print(line);
    }
}

// The days and the variety asked for; nullopt, and a line said, where one of them can't be.
std::optional<CostsQuestion> costsQuestion(const QCommandLineParser& parser, Journal& journal,
                                           Date today)
{
    CostsQuestion question;
    const auto from = dateOption(parser, "from", today - 364);
    const auto to = from ? dateOption(parser, "to", today) : std::nullopt;
    const QString name = parser.value("variety");
    const auto varieties =
        to ? varietiesNamed(journal, name.isEmpty() ? QStringList() : QStringList{name})
           : std::nullopt;
    if (!varieties) {
        return std::nullopt;
    }
    question.filter.from = *from;
    question.filter.to = *to;
    question.filter.varieties = *varieties;
    return question;
}

} // namespace

int runCosts(const QStringList& arguments)
{
    QCommandLineParser parser;
    parser.addOption({"from", "", "day"});
    parser.addOption({"to", "", "day"});
    parser.addOption({"variety", "", "name"});
    parser.addOption({"json", ""});
    const auto given = argumentsOf(parser, arguments, {"JOURNAL"});
    if (!given) {
        return kBadCall;
    }
    const SystemClock clock;
    const auto opened = openToRead(given->front(), clock);
    if (!opened) {
        return refused(opened.error());
    }
    const auto question = costsQuestion(parser, **opened, clock.today());
    if (!question) {
        return kBadCall;
    }
    const auto answer = (*opened)->review().costs(*question);
    if (!answer) {
        return refused(answer.error());
    }
    if (parser.isSet("json")) {
        print(jsonOf(*answer));
    } else {
        printCosts(*answer);
    }
    return kDone;
}

} // namespace plumule::app
