#include "app/commands/table_input.h"
#include "core/stats/planning/power.h"
#include "ui/text/text.h"
#include "ui/watering/round_text.h"

#include <cmath>

namespace plumule::app {
namespace {

using nlohmann::ordered_json;

constexpr double kUsualPower = 0.8;

struct PowerAsk
{
    double difference = 0;
    double spread = 0;
    int media = 2;
    bool hasBlocks = false;
    std::optional<int> perMedium;
    double wanted = kUsualPower;
};

struct PowerAnswer
{
    int perMedium = 0;
    std::optional<double> exact; // before it was rounded up
    double power = 0;
    double smallest = 0; // difference seen with the power wanted
};

// Two media without blocks are a t test; all else an F test in which two media lie the difference
// apart and the others half way between, which is the hardest to see.
class Design
{
public:
    explicit Design(const PowerAsk& ask)
        : m_isT(ask.media == 2 && !ask.hasBlocks)
        , m_f{ask.media, ask.spread, 0.05,
              ask.hasBlocks ? stats::FDesign::RandomizedBlocks : stats::FDesign::CompletelyRandom}
        , m_difference(ask.difference)
        , m_variance(stats::varianceOfExtremes(ask.media, ask.difference))
    {
        m_t.sd = ask.spread;
    }

    [[nodiscard]] bool isT() const { return m_isT; }
    [[nodiscard]] Result<double> power(double n) const
    {
        return m_isT ? stats::tPower(m_t, n, m_difference)
                     : stats::fPowerForVariance(m_f, n, m_variance);
    }
    [[nodiscard]] Result<double> exactCount(double wanted) const
    {
        return m_isT ? stats::tCountFor(m_t, m_difference, wanted)
                     : stats::fCountForVariance(m_f, m_variance, wanted);
    }
    [[nodiscard]] Result<int> wholeCount(double wanted) const
    {
        return m_isT ? stats::tWholeCountFor(m_t, m_difference, wanted)
                     : stats::fWholeCountForVariance(m_f, m_variance, wanted);
    }
    [[nodiscard]] Result<double> smallest(double n, double wanted) const
    {
        return m_isT ? stats::tSmallestDifference(m_t, n, wanted)
                     : stats::fSmallestDifference(m_f, n, wanted);
    }

private:
    bool m_isT;
    stats::TPlan m_t;
    stats::FPlan m_f;
    double m_difference;
    double m_variance;
};

Result<PowerAnswer> answerOf(const PowerAsk& ask)
{
    const Design design(ask);
    PowerAnswer answer;
    if (ask.perMedium) {
        answer.perMedium = *ask.perMedium;
    } else {
        const auto whole = design.wholeCount(ask.wanted);
        if (!whole) {
            return passOn(whole);
        }
        answer.perMedium = *whole;
        // Where two do, no more than that is known.
        if (*whole > 2) {
            if (const auto exact = design.exactCount(ask.wanted)) {
                answer.exact = *exact;
            }
        }
    }
    const auto power = design.power(answer.perMedium);
    const auto smallest = design.smallest(answer.perMedium, ask.wanted);
    if (!power || !smallest) {
        return passOn(power ? smallest.error() : power.error());
    }
    answer.power = *power;
    answer.smallest = *smallest;
    return answer;
}

ordered_json jsonOf(const PowerAsk& ask, const PowerAnswer& answer)
{
    return {{"test", Design(ask).isT() ? "t" : "f"},
            {"media", ask.media},
            {"blocks", ask.hasBlocks},
            {"difference", jsonNumber(ask.difference)},
            {"spread", jsonNumber(ask.spread)},
            {"alpha", 0.05},
            {"per_medium", answer.perMedium},
            {"per_medium_exact", jsonNumber(answer.exact)},
            {"trays", answer.perMedium * ask.media},
            {"power", jsonNumber(answer.power)},
            {"power_wanted", jsonNumber(ask.wanted)},
            {"smallest_difference", jsonNumber(answer.smallest)}};
}

void printPower(const PowerAsk& ask, const PowerAnswer& answer)
{
    print(QStringLiteral("%1 media with %2 each%3, %4 in all:")
              .arg(QString::number(ask.media), ui::trayCount(answer.perMedium),
                   ask.hasBlocks ? QStringLiteral(", one in every block") : QString(),
                   ui::trayCount(answer.perMedium * ask.media)));
    print(QStringLiteral("  a difference of %1 at a spread of %2 is seen with power %3")
              .arg(shortNumber(ask.difference), shortNumber(ask.spread),
                   QString::number(answer.power, 'f', 3)));
    print(QStringLiteral("  the smallest difference seen with power %1 is %2")
              .arg(shortNumber(ask.wanted), shortNumber(answer.smallest)));
}

bool isWholeFromTwo(double x)
{
    return x >= 2 && x <= 1e6 && x == std::floor(x);
}

// Within what squares and their ratios can hold.
bool isAboveZero(double x)
{
    return x > 1e-50 && x < 1e50;
}

std::optional<PowerAsk> powerAskOf(const QCommandLineParser& parser)
{
    if (parser.isSet("per-medium") && parser.isSet("power")) {
        badCall("--per-medium and --power do not go together.");
        return std::nullopt;
    }
    if (!neededOption(parser, "difference") || !neededOption(parser, "spread")) {
        return std::nullopt;
    }
    std::optional<double> difference, spread, media, perMedium, power;
    const QString whole = QStringLiteral("a whole number from 2 on");
    if (!takeNumber(parser, "difference", "a number above 0", isAboveZero, difference) ||
        !takeNumber(parser, "spread", "a number above 0", isAboveZero, spread) ||
        !takeNumber(parser, "media", whole, isWholeFromTwo, media) ||
        !takeNumber(parser, "per-medium", whole, isWholeFromTwo, perMedium) ||
        !takeNumber(
            parser, "power", "a number above 0.05 and below 1",
            [](double x) { return x > 0.05 && x < 1; }, power)) {
        return std::nullopt;
    }
    PowerAsk ask;
    ask.difference = *difference;
    ask.spread = *spread;
    ask.media = static_cast<int>(media.value_or(ask.media));
    ask.hasBlocks = parser.isSet("blocks");
    ask.wanted = power.value_or(ask.wanted);
    if (perMedium) {
        ask.perMedium = static_cast<int>(*perMedium);
    }
    return ask;
}

} // namespace

int runPower(const QStringList& arguments)
{
    QCommandLineParser parser;
    for (const char* option : {"difference", "spread", "media", "per-medium", "power"}) {
        parser.addOption({option, "", "number"});
    }
    parser.addOption({"blocks", ""});
    parser.addOption({"json", ""});
    const auto given = argumentsOf(parser, arguments, {});
    const auto ask = given ? powerAskOf(parser) : std::nullopt;
    if (!ask) {
        return kBadCall;
    }
    const auto answer = answerOf(*ask);
    if (!answer) {
        return noAnswer(ui::sentence(answer.error()));
    }
    if (parser.isSet("json")) {
        print(jsonOf(*ask, *answer));
    } else {
        printPower(*ask, *answer);
    }
    return kDone;
}

} // namespace plumule::app
