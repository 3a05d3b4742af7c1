#include "ui/review/ageing_card.h"

#include "ui/chart/chart_card.h"
#include "ui/review/verdict_text.h"
#include "ui/widget/theme.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include <cmath>

namespace plumule::ui {

QString ageingWords(const PieceAgeing& ageing)
{
    const QString name = QString::fromStdString(ageing.medium.name);
    const QString from =
        AgeingCard::tr("%1 on %2, up to their use %3")
            .arg(AgeingCard::tr("%n tray(s)", nullptr, static_cast<int>(ageing.trays)))
            .arg(AgeingCard::tr("%n piece(s)", nullptr, static_cast<int>(ageing.pieces)))
            .arg(ageing.mostUses);
    if (!ageing.slope || !ageing.lower || !ageing.upper) {
        return AgeingCard::tr("%1: the trays can't tell the uses from the varieties and trials "
                              "(%2).")
            .arg(name, from);
    }
    const bool isClear = *ageing.lower > 0 || *ageing.upper < 0;
    const QString interval = AgeingCard::tr("95% interval %1 to %2")
                                 .arg(numberText(*ageing.lower, 1), numberText(*ageing.upper, 1));
    if (!isClear) {
        return AgeingCard::tr(
                   "%1: no ageing to be told, %2 g a tray for each further use (%3; %4).")
            .arg(name, numberText(*ageing.slope, 1), interval, from);
    }
    return (*ageing.slope < 0
                ? AgeingCard::tr("%1 yields %2 g a tray less with each further use (%3; %4).")
                : AgeingCard::tr("%1 yields %2 g a tray more with each further use (%3; %4)."))
        .arg(name, numberText(std::abs(*ageing.slope), 1), interval, from);
}

AgeingCard::AgeingCard(const Services& services, QWidget* parent)
    : Card(tr("Does a piece yield less as it ages?"), "card", parent)
    , m_services(services)
{
    wrapHeading();
    m_words = label(QString());
    m_words->setObjectName("ageingWords");
    m_words->setWordWrap(true);
    m_charts = new QGridLayout;
    m_charts->setSpacing(scaled(12));
    body()->addWidget(m_words);
    body()->addLayout(m_charts);
}

void AgeingCard::show(const std::vector<PieceAgeing>& ageing)
{
    setVisible(!ageing.empty());
    clearLayout(m_charts);
    QStringList words;
    int number = 0;
    for (const PieceAgeing& each : ageing) {
        words << ageingWords(each);
        const QByteArray name = QByteArray("ageingChart") + QByteArray::number(number);
        auto* chart = new ChartCard(m_services, name.constData());
        setRole(chart, "plain"); // within this card
        // Drawn once it stands in the card: shown before that it would be a window of its own, and
        // take the keyboard from the page.
        m_charts->addWidget(chart, number / 2, number % 2);
        chart->draw(ageingChart(each));
        chart->setHeading(QString::fromStdString(each.medium.name));
        connect(chart, &ChartCard::trayAsked, this, &AgeingCard::trayAsked);
        ++number;
    }
    m_words->setText(words.join('\n'));
}

} // namespace plumule::ui

#include "moc_ageing_card.cpp"
