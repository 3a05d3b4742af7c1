#include "ui/exchange/remembered_forms.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

namespace plumule::ui {
namespace {

constexpr int kMostRemembered = 30;

QJsonArray headerArray(const std::vector<std::string>& header)
{
    QJsonArray array;
    for (const std::string& name : header) {
        array << QString::fromStdString(name);
    }
    return array;
}

QJsonArray allRemembered(const Preferences& preferences)
{
    const QString text = preferences.get(Preference::TableForms).toString();
    return QJsonDocument::fromJson(text.toUtf8()).array();
}

std::string textIn(const QJsonObject& object, const char* key)
{
    return object.value(QLatin1String(key)).toString().toStdString();
}

QString decimalsText(DecimalMark mark)
{
    return mark == DecimalMark::Point   ? QStringLiteral("point")
           : mark == DecimalMark::Comma ? QStringLiteral("comma")
                                        : QString();
}

TableAsk askFrom(const QJsonObject& entry)
{
    TableAsk ask;
    DateOrder order{};
    const std::string decimals = textIn(entry, "decimals");
    // What is no word of ours was written by another Plumule: it is proposed anew.
    (void)fromText(textIn(entry, "kind"), ask.kind);
    if (fromText(textIn(entry, "dates"), order) && order != DateOrder::Unclear) {
        ask.dateOrder = order;
    }
    if (!decimals.empty()) {
        ask.decimalMark = decimals == "point" ? DecimalMark::Point : DecimalMark::Comma;
    }
    for (const QJsonValue each : entry.value(QLatin1String("columns")).toArray()) {
        const QJsonObject match = each.toObject();
        ask.columns.push_back(
            {textIn(match, "column"), textIn(match, "header"), textIn(match, "unit")});
    }
    return ask;
}

QJsonObject entryOf(const std::vector<std::string>& header, const TableForm& form)
{
    QJsonArray columns;
    for (std::size_t i = 0; i < form.columns.size(); ++i) {
        const ColumnMatch& match = form.columns[i];
        const auto name = columnsOf(form.kind)[i].name;
        columns << QJsonObject{
            {QStringLiteral("column"), QString::fromUtf8(name.data(), qsizetype(name.size()))},
            {QStringLiteral("header"),
             match.at ? QString::fromStdString(header[*match.at]) : QString()},
            {QStringLiteral("unit"), QString::fromStdString(match.unit)}};
    }
    return {{QStringLiteral("file"), headerArray(header)},
            {QStringLiteral("kind"), QString::fromUtf8(toText(form.kind))},
            {QStringLiteral("dates"), QString::fromUtf8(toText(form.dateOrder))},
            {QStringLiteral("decimals"), decimalsText(form.decimalMark)},
            {QStringLiteral("columns"), columns}};
}

} // namespace

std::optional<TableAsk> rememberedForm(const Preferences& preferences,
                                       const std::vector<std::string>& header)
{
    const QJsonArray wanted = headerArray(header);
    for (const QJsonValue each : allRemembered(preferences)) {
        const QJsonObject entry = each.toObject();
        if (entry.value(QLatin1String("file")).toArray() == wanted) {
            return askFrom(entry);
        }
    }
    return std::nullopt;
}

void rememberForm(Preferences& preferences, const std::vector<std::string>& header,
                  const TableForm& form)
{
    QJsonArray kept{entryOf(header, form)};
    for (const QJsonValue each : allRemembered(preferences)) {
        const bool isSame = each.toObject().value(QLatin1String("file")) == headerArray(header);
        if (!isSame && kept.size() < kMostRemembered) {
            kept << each;
        }
    }
    preferences.set(Preference::TableForms,
                    QString::fromUtf8(QJsonDocument(kept).toJson(QJsonDocument::Compact)));
}

} // namespace plumule::ui
