#include "ui/cost/payback_text.h"

#include "ui/text/missing_price_text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

class PaybackTr
{
    Q_DECLARE_TR_FUNCTIONS(Payback)
};

QString intervalWords(const Payback& each)
{
    if (!each.hasBand) {
        return PaybackTr::tr("no interval from fewer than three trays of each");
    }
    if (!each.low) {
        return PaybackTr::tr("as these trays differ, mostly never");
    }
    return each.high ? PaybackTr::tr("95% interval %1 to %2").arg(*each.low).arg(*each.high)
                     : PaybackTr::tr("95% interval %1 to never").arg(*each.low);
}

} // namespace

QStringList paybackWords(const std::vector<Payback>& paybacks)
{
    QStringList lines;
    for (const Payback& each : paybacks) {
        const QString medium = QString::fromStdString(each.medium.name);
        const QString against = QString::fromStdString(each.against.name);
        lines << (each.at
                      ? PaybackTr::tr("%1 pays back against %2 at use %3 (%4).")
                            .arg(medium, against, QString::number(*each.at), intervalWords(each))
                      : PaybackTr::tr("%1 never pays back against %2 (%3).")
                            .arg(medium, against, intervalWords(each)));
    }
    return lines;
}

QStringList paybackWords(const std::vector<CurveLack>& lacks)
{
    QStringList lines;
    for (const CurveLack& lack : lacks) {
        const QString medium = QString::fromStdString(lack.medium.name);
        QStringList words{PaybackTr::tr("%1 has no curve.").arg(medium)};
        for (const MissingPrice& missing : lack.prices) {
            words << sentence(missing, medium);
        }
        lines << words.join(' ');
    }
    return lines;
}

QStringList paybackWords(const SeasonAnswer& answer)
{
    return paybackWords(answer.paybacks) + paybackWords(answer.curveLacks);
}

} // namespace plumule::ui
