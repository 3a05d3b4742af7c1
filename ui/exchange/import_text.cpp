#include "ui/exchange/import_text.h"

#include "ui/text/text.h"

#include <QCoreApplication>

namespace plumule::ui {
namespace {

class ImportTr
{
    Q_DECLARE_TR_FUNCTIONS(ImportText)
};

// Tables are in grams whatever the room shows.
QString gramsText(Mass mass)
{
    return UnitText(UnitSystem::Metric).mass(mass);
}

QString whyText(const ImportDoubt& doubt)
{
    switch (doubt.kind) {
    case ImportDoubtKind::WeightOfOthers:
        return ImportTr::tr(
                   "%1, where the table's other trays of that variety make about %2 likely.")
            .arg(gramsText(doubt.net), gramsText(doubt.against));
    case ImportDoubtKind::WeightOfSeed:
        return ImportTr::tr("%1 cut from %2 of seed.")
            .arg(gramsText(doubt.net), gramsText(doubt.against));
    case ImportDoubtKind::LongGrowth:
        return ImportTr::tr("cut %n day(s) after sowing.", nullptr, doubt.days);
    }
    return {};
}

} // namespace

QString doubtText(const ImportDoubt& doubt)
{
    return ImportTr::tr("Line %1, %2: %3")
        .arg(QString::number(doubt.line), QString::fromStdString(doubt.code), whyText(doubt));
}

} // namespace plumule::ui
