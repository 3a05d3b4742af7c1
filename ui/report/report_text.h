#pragma once

#include <QCoreApplication>
#include <QString>

#include <optional>

namespace plumule::ui {

// The context of the wording that all reports share.
class ReportTr
{
    Q_DECLARE_TR_FUNCTIONS(Report)
};

inline const QString kNoFigure = QStringLiteral("–");

// The number, or a dash for none.
[[nodiscard]] QString figureText(std::optional<double> value, int decimals);
[[nodiscard]] QString rangeText(std::optional<double> low, std::optional<double> high,
                                int decimals);

} // namespace plumule::ui
