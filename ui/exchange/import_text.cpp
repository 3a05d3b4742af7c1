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

QString heldText(const ImportPreview& preview)
{
    QStringList lines;
    for (const HeldRow& row : preview.held) {
        lines << QString::number(row.line);
    }
    if (preview.heldCount > lines.size()) {
        lines << QStringLiteral("…");
    }
    return ImportTr::tr("%n row(s) are there already and are left out: line %1.", nullptr,
                        static_cast<int>(preview.heldCount))
        .arg(lines.join(", "));
}

QString comingText(TableKind kind, std::int64_t rows)
{
    const int count = static_cast<int>(rows);
    return kind == TableKind::Trays ? ImportTr::tr("%n tray(s) would come in.", nullptr, count)
                                    : ImportTr::tr("%n row(s) would come in.", nullptr, count);
}

QString choiceText(TableKind kind)
{
    switch (kind) {
    case TableKind::Trays:
        return ImportTr::tr("trays");
    case TableKind::Stages:
        return ImportTr::tr("when stages began");
    case TableKind::Waterings:
        return ImportTr::tr("waterings");
    case TableKind::Heights:
        return ImportTr::tr("heights");
    case TableKind::Cuts:
        return ImportTr::tr("cuts");
    case TableKind::Residues:
        return ImportTr::tr("residues");
    case TableKind::Scores:
        return ImportTr::tr("scores of a tasting");
    case TableKind::Prices:
        return ImportTr::tr("prices");
    case TableKind::SeedLots:
        return ImportTr::tr("seed lots");
    case TableKind::Pieces:
        return ImportTr::tr("mats and meshes");
    case TableKind::WaterReadings:
        return ImportTr::tr("pH and EC of water");
    }
    return {};
}

QString choiceText(TextEncoding encoding)
{
    switch (encoding) {
    case TextEncoding::Utf8:
        return QStringLiteral("UTF-8");
    case TextEncoding::Utf16Little:
        return QStringLiteral("UTF-16 LE");
    case TextEncoding::Utf16Big:
        return QStringLiteral("UTF-16 BE");
    case TextEncoding::Latin1:
        return QStringLiteral("Latin-1");
    }
    return {};
}

QString choiceText(DateOrder order)
{
    switch (order) {
    case DateOrder::YearMonthDay:
        return ImportTr::tr("year, month, day");
    case DateOrder::DayMonthYear:
        return ImportTr::tr("day, month, year");
    case DateOrder::MonthDayYear:
        return ImportTr::tr("month, day, year");
    case DateOrder::Unclear:
        return ImportTr::tr("day or month first: not clear");
    }
    return {};
}

QString choiceText(DecimalMark mark)
{
    switch (mark) {
    case DecimalMark::Ours:
        return ImportTr::tr("after a point");
    case DecimalMark::Point:
        return ImportTr::tr("after a point, commas part thousands");
    case DecimalMark::Comma:
        return ImportTr::tr("after a comma, points part thousands");
    case DecimalMark::Unclear:
        return ImportTr::tr("after a point or a comma: not clear");
    }
    return {};
}

QString unitName(std::string_view unit)
{
    if (unit == "us_cm") {
        return QStringLiteral("µS/cm");
    }
    if (unit == "ms_cm") {
        return QStringLiteral("mS/cm");
    }
    return QString::fromUtf8(unit.data(), qsizetype(unit.size())).replace('_', ' ');
}

} // namespace plumule::ui
