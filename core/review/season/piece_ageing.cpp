#include "core/review/season/piece_ageing.h"

#include "core/stats/model/comparisons.h"
#include "core/stats/model/linear_model.h"

#include <algorithm>
#include <set>

namespace plumule {
namespace {

constexpr const char* kAgeingYield = "yield";
constexpr const char* kAgeingUse = "use";
constexpr const char* kAgeingVariety = "variety";
constexpr const char* kAgeingTrial = "trial";
constexpr std::size_t kLeastAgeingTrays = 3;

using RecordsOfMedium = std::vector<const SeasonRecord*>;

std::vector<std::optional<double>> numbersOf(const RecordsOfMedium& records,
                                             double (*valueOf)(const SeasonRecord&))
{
    std::vector<std::optional<double>> values;
    for (const SeasonRecord* record : records) {
        values.emplace_back(valueOf(*record));
    }
    return values;
}

// Adds the factor as a term where it varies.
void addIfItVaries(stats::DataTable& table, stats::ModelDescription& model, const char* name,
                   const RecordsOfMedium& records, std::int64_t (*levelOf)(const SeasonRecord&))
{
    std::vector<std::string> cells;
    for (const SeasonRecord* record : records) {
        cells.push_back(std::to_string(levelOf(*record)));
    }
    if (std::set<std::string>(cells.begin(), cells.end()).size() > 1 &&
        table.addFactor(name, cells)) {
        model.terms.push_back({name});
    }
}

Result<stats::LinearModel> fitOf(const RecordsOfMedium& records)
{
    stats::DataTable table;
    Done added = table.addNumbers(kAgeingYield, numbersOf(records, [](const SeasonRecord& record) {
                                      return inGrams(record.yield);
                                  }));
    if (added) {
        added = table.addNumbers(kAgeingUse, numbersOf(records, [](const SeasonRecord& record) {
                                     return static_cast<double>(*record.pieceUse);
                                 }));
    }
    if (!added) {
        return passOn(added);
    }
    stats::ModelDescription model;
    model.response = kAgeingYield;
    model.terms.push_back({kAgeingUse});
    addIfItVaries(table, model, kAgeingVariety, records,
                  [](const SeasonRecord& record) { return record.tray.variety.value; });
    addIfItVaries(table, model, kAgeingTrial, records, [](const SeasonRecord& record) {
        return record.tray.trial.value_or(TrialId()).value;
    });
    return stats::LinearModel::fit(table, model);
}

// Takes the slope, and moves the points to the mean of the varieties and trials: what the line
// expects at the use, and what the model leaves over.
void takeFit(PieceAgeing& ageing, const stats::LinearModel& fit)
{
    const auto& terms = fit.design().terms();
    const auto use = std::find_if(terms.begin(), terms.end(), [](const stats::DesignTerm& term) {
        return term.name == kAgeingUse;
    });
    if (use == terms.end()) {
        return;
    }
    std::vector<double> perUse(fit.design().columns(), 0.0);
    perUse[use->firstColumn] = 1 / fit.design().columnScale(use->firstColumn);
    const auto test = stats::testContrast(fit, perUse);
    if (!test.estimable || !test.estimate) {
        return;
    }
    ageing.slope = test.estimate;
    if (!fit.isPerfect()) {
        ageing.lower = test.lower;
        ageing.upper = test.upper;
        ageing.p = test.p;
    }
    const auto rows = fit.influence();
    for (std::size_t row = 0; row < rows.size(); ++row) {
        AgeingPoint& point = ageing.points[row];
        point.value =
            ageing.meanYield + *ageing.slope * (point.use - ageing.meanUse) + rows[row].residual;
    }
}

PieceAgeing ageingOf(const Medium& medium, const RecordsOfMedium& records)
{
    PieceAgeing ageing;
    ageing.medium = medium;
    ageing.trays = static_cast<int>(records.size());
    std::set<PieceId> pieces;
    const double share = 1.0 / static_cast<double>(records.size());
    for (const SeasonRecord* record : records) {
        pieces.insert(record->tray.piece.value_or(PieceId()));
        ageing.mostUses = std::max(ageing.mostUses, *record->pieceUse);
        ageing.meanUse += share * *record->pieceUse;
        ageing.meanYield += share * inGrams(record->yield);
        ageing.points.push_back(
            {record->tray.id, record->tray.code, *record->pieceUse, inGrams(record->yield)});
    }
    ageing.pieces = static_cast<int>(pieces.size());
    if (const auto fit = fitOf(records)) {
        takeFit(ageing, *fit);
    }
    std::sort(ageing.points.begin(), ageing.points.end(),
              [](const AgeingPoint& a, const AgeingPoint& b) {
                  return std::pair(a.use, a.code) < std::pair(b.use, b.code);
              });
    return ageing;
}

bool varyInUse(const RecordsOfMedium& records)
{
    return std::any_of(records.begin(), records.end(), [&](const SeasonRecord* record) {
        return record->pieceUse != records.front()->pieceUse;
    });
}

} // namespace

std::vector<PieceAgeing> pieceAgeing(const SeasonFacts& facts, const SeasonFilter& filter)
{
    std::map<MediumId, RecordsOfMedium> media;
    for (const SeasonRecord& record : facts.trays) {
        if (record.pieceUse && record.use.medium->isReusable && isCounted(record, filter)) {
            media[record.tray.medium].push_back(&record);
        }
    }
    std::vector<PieceAgeing> answer;
    for (const auto& [id, records] : media) {
        if (records.size() >= kLeastAgeingTrays && varyInUse(records)) {
            answer.push_back(ageingOf(facts.media.at(id), records));
        }
    }
    return answer;
}

ChartSpec ageingChart(const PieceAgeing& ageing)
{
    ChartSpec spec;
    spec.key = "yield_by_uses";
    spec.form = ChartForm::Curves;
    spec.x.key = "uses";
    spec.x.isWhole = true;
    spec.x.low = 1.0;
    spec.y.key = "yield";
    spec.y.unit = "g";
    ChartSeries dots;
    dots.name = ageing.medium.name;
    dots.marker = ageing.medium.marker;
    for (const AgeingPoint& point : ageing.points) {
        dots.points.push_back(
            {double(point.use), point.value, point.code, point.tray.value, false});
    }
    if (ageing.slope && !ageing.points.empty()) {
        ChartSeries line;
        line.name = dots.name;
        line.marker = dots.marker;
        line.form = SeriesForm::Line;
        for (const int use : {ageing.points.front().use, ageing.points.back().use}) {
            const double y = ageing.meanYield + *ageing.slope * (use - ageing.meanUse);
            line.points.push_back({double(use), y, "", std::nullopt, false});
        }
        spec.series.push_back(std::move(line));
    }
    spec.series.push_back(std::move(dots));
    return spec;
}

} // namespace plumule
