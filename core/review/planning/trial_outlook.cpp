#include "core/review/planning/trial_outlook.h"

#include "core/review/facts/review_reason.h"
#include "core/stats/planning/power.h"
#include "core/stats/verdict/telling_power.h"
#include "core/trial/trial_reason.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace plumule {
namespace {

constexpr int kMostTrays = 500; // of each medium
constexpr int kCurvePoints = 20;
constexpr double kPlannedPower = 0.8;
constexpr double kDefaultMargin = 0.1; // of the mean
constexpr double kAlpha = 0.05;
constexpr double kFewestDegrees = 2; // under these there is no verdict

// Which media, in how many feedings each.
std::map<MediumId, int> feedingsOf(const TrialDraft& draft)
{
    std::map<MediumId, int> feedings;
    for (const Treatment& treatment : draft.treatments) {
        ++feedings[treatment.medium];
    }
    return feedings;
}

// The yields that a plan is judged by: those reviewed and those before.
std::vector<std::pair<PastYield, double>> yieldsOf(const SeasonFacts& facts)
{
    std::vector<std::pair<PastYield, double>> yields;
    for (const PastYield& past : facts.past) {
        yields.emplace_back(past, inGrams(past.yield));
    }
    for (const SeasonRecord& record : facts.trays) {
        const Tray& tray = record.tray;
        if (tray.state == TrayState::Harvested && record.lastCut && !tray.setAsideReason) {
            yields.emplace_back(
                PastYield{tray.medium, tray.variety, tray.trial, tray.sownOn, record.yield},
                inGrams(record.yield));
        }
    }
    return yields;
}

class OutlookMaker
{
public:
    OutlookMaker(const TrialDraft& draft, const SeasonFacts& facts)
        : m_draft(draft)
        , m_feedings(feedingsOf(draft))
        , m_yields(yieldsOf(facts))
    {}

    [[nodiscard]] Result<PlanOutlook> outlook();

private:
    [[nodiscard]] Done check() const;
    void expectMean();
    void expectSpread();
    [[nodiscard]] std::optional<double> meanWhere(bool ofVariety, bool ofMedia) const;
    [[nodiscard]] int fewestFeedings() const;
    // How many trays of each treatment more or fewer there can be at a time.
    [[nodiscard]] int step() const;
    [[nodiscard]] int firstStep() const; // with two trays of a medium
    [[nodiscard]] double errorDf(int each) const;
    [[nodiscard]] double blocksOf(int each) const;
    [[nodiscard]] double ownDf(int each) const;
    [[nodiscard]] double powerOf(int each, double shift) const;
    [[nodiscard]] double standardError(int each) const;
    [[nodiscard]] double shiftAt(int each) const;
    [[nodiscard]] PowerAt powerAt(int each);
    [[nodiscard]] std::optional<PowerAt> enough();
    void drawCurve();

    const TrialDraft& m_draft;
    std::map<MediumId, int> m_feedings;
    std::vector<std::pair<PastYield, double>> m_yields;
    PlanOutlook m_result;
};

Done OutlookMaker::check() const
{
    if (m_draft.trial.margin && m_draft.trial.margin->count() <= 0) {
        return fail(ErrorKind::Invalid, TrialReason::Margin);
    }
    if (m_draft.plan.spread && m_draft.plan.spread->count() <= 0) {
        return fail(ErrorKind::Invalid, TrialReason::Spread);
    }
    if (m_feedings.size() < 2) {
        return fail(ErrorKind::TooFew, TrialReason::TooFewMedia);
    }
    return {};
}

std::optional<double> OutlookMaker::meanWhere(bool ofVariety, bool ofMedia) const
{
    double sum = 0;
    int trays = 0;
    for (const auto& [tray, yield] : m_yields) {
        if ((!ofVariety || tray.variety == m_draft.plan.variety) &&
            (!ofMedia || m_feedings.count(tray.medium) > 0)) {
            sum += yield;
            ++trays;
        }
    }
    return trays > 0 ? std::optional(sum / trays) : std::nullopt;
}

void OutlookMaker::expectMean()
{
    auto mean = meanWhere(true, true);
    mean = mean ? mean : meanWhere(true, false);
    mean = mean ? mean : meanWhere(false, false);
    m_result.mean = mean.value_or(0);
}

void OutlookMaker::expectSpread()
{
    if (m_draft.plan.spread) {
        m_result.spread = inGrams(*m_draft.plan.spread);
        m_result.isOwnSpread = true;
        return;
    }
    SpreadCells variety;
    SpreadCells room;
    for (const auto& [tray, yield] : m_yields) {
        room.add(tray, yield);
        if (tray.variety == m_draft.plan.variety) {
            variety.add(tray, yield);
        }
    }
    const auto ofVariety = variety.ofValues();
    const auto ofRoom = ofVariety ? std::nullopt : room.ofShares();
    m_result.isOfVariety = ofVariety.has_value();
    m_result.spreadFrom = ofVariety || ofRoom ? SpreadFrom::Room : SpreadFrom::Default;
    m_result.spread =
        ofVariety ? ofVariety->sd : (ofRoom ? ofRoom->sd : kDefaultSpread) * m_result.mean;
    m_result.spreadTrays = ofVariety ? ofVariety->trays : ofRoom ? ofRoom->trays : 0;
}

int OutlookMaker::fewestFeedings() const
{
    return std::min_element(m_feedings.begin(), m_feedings.end(),
                            [](const auto& a, const auto& b) { return a.second < b.second; })
        ->second;
}

int OutlookMaker::step() const
{
    const TrialPlan& plan = m_draft.plan;
    const bool isWhole = plan.design == Design::RandomizedBlocks && plan.blocks > 0 &&
                         plan.traysEach >= plan.blocks && plan.traysEach % plan.blocks == 0;
    return isWhole ? plan.traysEach / plan.blocks : 1;
}

int OutlookMaker::firstStep() const
{
    return step() * fewestFeedings() >= 2 ? 1 : 2;
}

// As the verdict counts them: rows of a Latin square are its blocks, and places along the shelves
// are taken off as well.
double OutlookMaker::errorDf(int each) const
{
    const double t = static_cast<double>(m_draft.treatments.size());
    if (m_draft.plan.design == Design::CompletelyRandom) {
        return t * (each - 1);
    }
    const double places = m_draft.plan.design == Design::LatinSquare ? each - 1 : 0;
    return t * each - 1 - (t - 1) - (blocksOf(each) - 1) - places;
}

double OutlookMaker::blocksOf(int each) const
{
    const TrialPlan& plan = m_draft.plan;
    if (plan.design == Design::LatinSquare) {
        return each;
    }
    return each == plan.traysEach ? plan.blocks : static_cast<double>(each) / step();
}

// Of a pair's own spread: between its trays, or between its blocks' differences.
double OutlookMaker::ownDf(int each) const
{
    switch (m_draft.plan.design) {
    case Design::CompletelyRandom:
        return 2.0 * (each * fewestFeedings() - 1);
    case Design::LatinSquare:
        return blocksOf(each) - 2;
    case Design::RandomizedBlocks:
        break;
    }
    return blocksOf(each) - 1;
}

double OutlookMaker::powerOf(int each, double shift) const
{
    if (errorDf(each) < kFewestDegrees) {
        return 0;
    }
    return m_feedings.size() == 2
               ? stats::tPowerOfShift(shift, errorDf(each), kAlpha).value_or(0)
               : stats::tellingPower({m_feedings.size(), errorDf(each), ownDf(each)}, shift);
}

double OutlookMaker::standardError(int each) const
{
    return m_result.spread * std::sqrt(2.0 / (each * fewestFeedings()));
}

PowerAt OutlookMaker::powerAt(int each)
{
    PowerAt at;
    at.trays = each * fewestFeedings();
    const double margin = m_result.margin;
    at.power = powerOf(each, margin / standardError(each));
    stats::TPlan onePair;
    onePair.sd = m_result.spread;
    at.powerOfOnePair = stats::tPower(onePair, at.trays, margin).value_or(0);
    return at;
}

// What is told apart four times in five, in standard errors.
double OutlookMaker::shiftAt(int each) const
{
    return m_feedings.size() == 2
               ? stats::tShiftFor(kPlannedPower, errorDf(each), kAlpha).value_or(0)
               : stats::tellingShift({m_feedings.size(), errorDf(each), ownDf(each)},
                                     kPlannedPower);
}

// Power rises with the count, so that the fewest are found by halving.
std::optional<PowerAt> OutlookMaker::enough()
{
    const int stride = step();
    const auto reaches = [&](int steps) { return powerAt(steps * stride).power >= kPlannedPower; };
    int least = firstStep() - 1; // does not do
    int most = kMostTrays / (stride * fewestFeedings());
    if (most <= least || !reaches(most)) {
        return std::nullopt;
    }
    while (most - least > 1) {
        const int middle = (least + most) / 2;
        (reaches(middle) ? most : least) = middle;
    }
    return powerAt(most * stride);
}

void OutlookMaker::drawCurve()
{
    const int stride = step();
    const int perStep = stride * fewestFeedings();
    const int asked = std::max(m_result.chosen.trays, m_result.enough ? m_result.enough->trays : 0);
    const int first = firstStep();
    const int last = std::min(std::max(first + 9, asked * 5 / 4 / perStep + 1),
                              std::max(first, kMostTrays / perStep));
    const int every = std::max(1, (last - first + kCurvePoints - 1) / kCurvePoints);
    for (int steps = first; steps <= last; steps += every) {
        m_result.curve.push_back(powerAt(steps * stride));
    }
}

Result<PlanOutlook> OutlookMaker::outlook()
{
    if (const Done good = check(); !good) {
        return passOn(good);
    }
    expectMean();
    expectSpread();
    m_result.isDefaultMargin = !m_draft.trial.margin;
    m_result.margin =
        m_draft.trial.margin ? inGrams(*m_draft.trial.margin) : kDefaultMargin * m_result.mean;
    if (m_result.spread <= 0 || m_result.margin <= 0) {
        return fail(ErrorKind::TooFew, ReviewReason::NoYieldYet);
    }
    const int each = std::max(1, m_draft.plan.traysEach);
    m_result.chosen = powerAt(each);
    m_result.enough = enough();
    if (errorDf(each) >= kFewestDegrees) {
        m_result.smallestDifference = shiftAt(each) * standardError(each);
    }
    drawCurve();
    return std::move(m_result);
}

} // namespace

Result<PlanOutlook> outlookOf(const TrialDraft& draft, const SeasonFacts& facts)
{
    return OutlookMaker(draft, facts).outlook();
}

ChartSpec powerChart(const PlanOutlook& outlook)
{
    ChartSpec spec;
    spec.key = "power_curve";
    spec.form = ChartForm::Curves;
    spec.x.key = "trays_each";
    spec.x.isWhole = true;
    spec.y.key = "power";
    spec.y.unit = "%";
    spec.y.low = 0.0;
    spec.y.high = 100.0;
    const auto pointOf = [](const PowerAt& at) {
        return ChartPoint{double(at.trays), 100 * at.power, "", std::nullopt, false};
    };
    ChartSeries line;
    line.marker = -1;
    line.form = SeriesForm::Line;
    for (const PowerAt& at : outlook.curve) {
        line.points.push_back(pointOf(at));
    }
    ChartSeries chosen;
    chosen.marker = -1;
    chosen.points.push_back(pointOf(outlook.chosen));
    spec.series = {std::move(line), std::move(chosen)};
    spec.marks.push_back({"power_wanted", "", 100 * kPlannedPower, false});
    return spec;
}

} // namespace plumule
