#include "ui/tasting/tasting_text.h"

#include <QCoreApplication>

#include <algorithm>

namespace plumule::ui {
namespace {

class TastingTr
{
    Q_DECLARE_TR_FUNCTIONS(Tasting)
};

// "crunch, colour and flavour".
QString listed(const QStringList& names)
{
    return names.size() < 2 ? names.join(QString())
                            : TastingTr::tr("%1 and %2")
                                  .arg(names.mid(0, names.size() - 1).join(", "), names.last());
}

QString mediumName(const AttributeResult& result, std::size_t sample)
{
    return QString::fromStdString(result.samples[sample].medium.name);
}

// Pairs told apart, the better liked first: "Steel mesh more than Coir mix".
QStringList pairsToldApart(const AttributeResult& result, TastingMethod method)
{
    QStringList pairs;
    for (const stats::NemenyiPair& pair : result.pairs) {
        if (pair.p >= 0.05) {
            continue;
        }
        const bool isLaterBetter =
            (pair.rankSumDifference > 0) != (method == TastingMethod::Ranking);
        pairs << TastingTr::tr("%1 more than %2")
                     .arg(mediumName(result, isLaterBetter ? pair.b : pair.a),
                          mediumName(result, isLaterBetter ? pair.a : pair.b));
    }
    return pairs;
}

QString noTestWords(const AttributeResult& result)
{
    if (result.noTest && result.noTest->kind == ErrorKind::TooFew) {
        return TastingTr::tr("fewer than two tasters judged every sample, so there is no answer.");
    }
    return TastingTr::tr("each taster found all samples alike, so there is nothing to tell apart.");
}

TastingAnswerWords triangleWords(const TastingResult& result)
{
    const TriangleResult& triangle = *result.triangle;
    const QString first = QString::fromStdString(result.media.front().name);
    const QString second = QString::fromStdString(result.media.back().name);
    TastingAnswerWords words;
    words.headline =
        triangle.isShown()
            ? TastingTr::tr("%1 and %2 taste different to this panel.").arg(first, second)
            : TastingTr::tr("It was not shown that %1 and %2 taste different.").arg(first, second);
    QStringList detail;
    detail << TastingTr::tr("%1 of %2 named the odd one; %3 were needed (%4).")
                  .arg(triangle.test.right)
                  .arg(triangle.test.n)
                  .arg(triangle.fewestRight ? QString::number(*triangle.fewestRight)
                                            : TastingTr::tr("more tasters"),
                       pWords(triangle.test.p));
    if (triangle.isShown()) {
        detail << TastingTr::tr(
                      "Once guesses are taken off, about %1 in 100 really tell them apart.")
                      .arg(qRound(triangle.test.discriminators * 100));
        detail << TastingTr::tr("Which of them is liked better it does not say.");
    } else {
        detail << TastingTr::tr("That does not show that they taste alike.");
    }
    words.detail = detail.join(' ');
    return words;
}

QString fewWords(const TastingResult& result, const TastingCaveat& few)
{
    if (few.limit == 0) {
        return TastingTr::tr("With %n taster(s) nothing can be shown, however they judge.", nullptr,
                             few.count);
    }
    if (result.triangle) {
        return TastingTr::tr(
                   "With %n taster(s) %1 have to be right: only a large difference shows.", nullptr,
                   few.count)
            .arg(few.limit);
    }
    return TastingTr::tr(
               "With %n taster(s) only large differences show: the rank sums of two media have "
               "to lie %1 apart, of %2 at most.",
               nullptr, few.count)
        .arg(few.limit)
        .arg(few.most);
}

QString wordsOf(const TastingResult& result, const TastingCaveat& caveat)
{
    QStringList names;
    for (const std::string& name : caveat.names) {
        names << QString::fromStdString(name);
    }
    switch (caveat.kind) {
    case TastingCaveatKind::Incomplete:
        return TastingTr::tr("Scores of %1 are missing; where they are, that taster was left out.")
            .arg(listed(names));
    case TastingCaveatKind::FewTasters:
        return fewWords(result, caveat);
    case TastingCaveatKind::NotBuyers:
        return TastingTr::tr("It tells of these tasters. What buyers like takes %1 to 100 of them.")
            .arg(caveat.limit);
    case TastingCaveatKind::OrderUnbalanced:
        return TastingTr::tr(
                   "The serving order is wholly balanced with %n tasters or a multiple; %1 "
                   "counted.",
                   nullptr, caveat.limit)
            .arg(caveat.count);
    case TastingCaveatKind::ManyAttributes:
        return TastingTr::tr(
                   "%1 attributes were tested, and one may come out by luck alone: one with a "
                   "p under %2 is safe.")
            .arg(caveat.count)
            .arg(numberText(caveat.level, 3));
    case TastingCaveatKind::OneSampleEach:
        return TastingTr::tr("Each medium was one sample of one harvest: another tray may taste "
                             "otherwise.");
    }
    return {};
}

// The most tasters that any attribute without an answer asks for.
std::optional<int> mostWanted(const TastingResult& result)
{
    if (result.triangle) {
        return result.triangle->tastersWanted;
    }
    std::optional<int> most;
    for (const AttributeResult& each : result.attributes) {
        if (each.tastersWanted) {
            most = std::max(most.value_or(0), *each.tastersWanted);
        }
    }
    return most;
}

} // namespace

QString nameOf(TastingMethod method)
{
    switch (method) {
    case TastingMethod::Hedonic:
        return TastingTr::tr("9-point scale");
    case TastingMethod::Ranking:
        return TastingTr::tr("ranking");
    case TastingMethod::Triangle:
        return TastingTr::tr("triangle test");
    }
    return {};
}

QString attributeName(const PanelAttribute& attribute)
{
    return attribute.name == kOddOne ? TastingTr::tr("odd one out")
                                     : QString::fromStdString(attribute.name);
}

QString attributeTitle(const PanelAttribute& attribute)
{
    const QString name = attributeName(attribute);
    return name.left(1).toUpper() + name.mid(1);
}

QStringList hedonicWords()
{
    return {TastingTr::tr("dislike extremely"),
            TastingTr::tr("dislike very much"),
            TastingTr::tr("dislike moderately"),
            TastingTr::tr("dislike slightly"),
            TastingTr::tr("neither like nor dislike"),
            TastingTr::tr("like slightly"),
            TastingTr::tr("like moderately"),
            TastingTr::tr("like very much"),
            TastingTr::tr("like extremely")};
}

QString pWords(double p)
{
    return p < 0.001 ? TastingTr::tr("p under 0.001") : TastingTr::tr("p %1").arg(numberText(p, 3));
}

QString pCell(double p)
{
    return p < 0.001 ? QStringLiteral("< 0.001") : numberText(p, 3);
}

QString attributeWords(const TastingResult& result, std::size_t attribute)
{
    const AttributeResult& shown = result.attributes[attribute];
    const QString name = attributeTitle(shown.attribute);
    if (!shown.friedman) {
        return TastingTr::tr("%1: %2").arg(name, noTestWords(shown));
    }
    if (!shown.isShown()) {
        return TastingTr::tr(
                   "%1: no difference was shown (%2, %n taster(s)). That does not show that "
                   "there is none.",
                   nullptr, shown.tasters)
            .arg(name, pWords(shown.p()));
    }
    const QString best = mediumName(shown, bestFirst(shown, result.panel.method).front());
    const QStringList pairs = pairsToldApart(shown, result.panel.method);
    return pairs.isEmpty()
               ? TastingTr::tr(
                     "%1: the media differ (%2, %n taster(s)), %3 came first; between which of "
                     "them can't be told.",
                     nullptr, shown.tasters)
                     .arg(name, pWords(shown.p()), best)
               : TastingTr::tr("%1: the media differ (%2, %n taster(s)). Liked: %3.", nullptr,
                               shown.tasters)
                     .arg(name, pWords(shown.p()), listed(pairs));
}

TastingAnswerWords answerWords(const TastingResult& result)
{
    if (result.triangle) {
        return triangleWords(result);
    }
    QStringList shown;
    QStringList others;
    for (const AttributeResult& each : result.attributes) {
        (each.isShown() ? shown : others) << attributeName(each.attribute);
    }
    TastingAnswerWords words;
    if (shown.isEmpty()) {
        words.headline = others.size() == 1
                             ? TastingTr::tr("No difference was shown in %1.").arg(others.first())
                             : TastingTr::tr("No difference was shown in any attribute.");
    } else if (others.isEmpty()) {
        words.headline =
            TastingTr::tr("The tasters tell the media apart in %1.").arg(listed(shown));
    } else {
        words.headline =
            TastingTr::tr("The tasters tell the media apart in %1; in %2 no difference was shown.")
                .arg(listed(shown), listed(others));
    }
    QStringList detail;
    for (std::size_t i = 0; i < result.attributes.size(); ++i) {
        if (result.attributes[i].isShown() || result.attributes.size() == 1) {
            detail << attributeWords(result, i);
        }
    }
    if (shown.isEmpty() && result.attributes.size() > 1) {
        detail << TastingTr::tr("That does not show that there is none.");
    }
    words.detail = detail.join(' ');
    return words;
}

QStringList caveatWords(const TastingResult& result)
{
    QStringList words;
    for (const TastingCaveat& caveat : result.caveats) {
        words << wordsOf(result, caveat);
    }
    return words;
}

QStringList betterWords(const TastingResult& result)
{
    QStringList words;
    if (const auto most = mostWanted(result)) {
        words << (result.triangle
                      ? TastingTr::tr(
                            "If as many really tell them apart, %n tasters would show it 4 times "
                            "in 5.",
                            nullptr, *most)
                      : TastingTr::tr(
                            "If others judge as these did, what was not shown would be shown "
                            "every other time with %n tasters.",
                            nullptr, *most));
    }
    if (result.triangle) {
        if (const auto half = triangleTastersFor(0.5)) {
            words << TastingTr::tr(
                "That every other taster tells them apart is shown 4 times in 5 with %n "
                "tasters.",
                nullptr, *half);
        }
    }
    for (const TastingCaveat& caveat : result.caveats) {
        if (caveat.kind == TastingCaveatKind::OrderUnbalanced) {
            const int next = (caveat.count / caveat.limit + 1) * caveat.limit;
            words << TastingTr::tr("Ask %n tasters: then the serving order is balanced.", nullptr,
                                   next);
        } else if (caveat.kind == TastingCaveatKind::ManyAttributes && caveat.count > 2) {
            words << TastingTr::tr(
                "Ask about fewer attributes, those that would change what is done.");
        }
    }
    words << TastingTr::tr(
        "Taste again from another harvest, and from several trays of each medium mixed.");
    return words;
}

QStringList missingWords(const std::vector<MissingScores>& missing)
{
    QStringList lines;
    std::vector<std::pair<QString, QStringList>> byTaster;
    for (const MissingScores& each : missing) {
        const QString name = QString::fromStdString(each.taster.name);
        if (byTaster.empty() || byTaster.back().first != name) {
            byTaster.emplace_back(name, QStringList());
        }
        for (const std::string& code : each.codes) {
            if (!byTaster.back().second.contains(QString::fromStdString(code))) {
                byTaster.back().second << QString::fromStdString(code);
            }
        }
    }
    for (const auto& [name, codes] : byTaster) {
        lines << TastingTr::tr("%1: %2").arg(name, codes.join(", "));
    }
    return lines;
}

} // namespace plumule::ui
