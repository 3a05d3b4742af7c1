#include "ui/text/missing_price_text.h"

#include "ui/text/text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

class PricesTr
{
    Q_DECLARE_TR_FUNCTIONS(Prices)
};

} // namespace

QString sentence(const MissingPrice& missing, const QString& medium)
{
    const QString what = missing.item == PriceItem::Medium ? medium : nameOf(missing.item);
    return missing.from ? PricesTr::tr("The first price of %1 is from %2, after the sowing.")
                              .arg(what, longDateText(*missing.from))
                        : PricesTr::tr("There is no price of %1.").arg(what);
}

QString sentence(SeedLack lack)
{
    switch (lack) {
    case SeedLack::Lot:
        return PricesTr::tr("It has no seed lot, which would have a price.");
    case SeedLack::LotPrice:
        return PricesTr::tr("Its seed lot lacks a price.");
    case SeedLack::LotWeight:
        return PricesTr::tr("Its seed lot lacks the weight that was bought.");
    case SeedLack::Seed:
        return PricesTr::tr("How much seed was sown on it is not noted.");
    }
    return {};
}

} // namespace plumule::ui
