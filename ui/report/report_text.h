#pragma once

#include <QCoreApplication>
#include <QString>

#include <optional>

namespace plumule::ui {

// The wording that all reports share.
[[nodiscard]] inline QString inReport(const char* text)
{
    return QCoreApplication::translate("Report", text);
}

// With a count: "%n tray(s)".
[[nodiscard]] inline QString inReport(const char* text, int count)
{
    return QCoreApplication::translate("Report", text, nullptr, count);
}

inline const QString kNoFigure = QStringLiteral("–");

// The number, or a dash for none.
[[nodiscard]] QString figureText(std::optional<double> value, int decimals);
[[nodiscard]] QString rangeText(std::optional<double> low, std::optional<double> high,
                                int decimals);

} // namespace plumule::ui
