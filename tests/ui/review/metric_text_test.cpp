#include "ui/review/metric_text.h"

#include "tests/support/enumerators.h"

#include <QStringList>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

TEST(MetricName, TellsEveryMetricApart)
{
    QStringList names;
    for (const auto& [response, key] : enumeratorsOf<Response>()) {
        const QString name = metricName(response);
        EXPECT_FALSE(name.isEmpty()) << key;
        EXPECT_FALSE(names.contains(name)) << key << ": " << name.toStdString();
        names << name;
    }
    EXPECT_EQ(metricName(Response::YieldPerArea), QString::fromUtf8("Yield g/m²"));
}

} // namespace
} // namespace plumule::ui
