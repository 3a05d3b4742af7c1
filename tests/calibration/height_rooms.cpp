#include "lines.h"
#include "rules.h"

#include "core/stats/growth/tray_growth.h"
#include "core/stats/probability/root.h"

#include <cmath>
#include <cstdio>

namespace plumule::calibration {
namespace {

enum class Shape
{
    Logistic,
    Gompertz,
};

// Trays of one medium, each along its own curve: full height 80 mm, its middle on day 6. They are
// read on days spread evenly from day 3 on.
struct Heights
{
    Shape shape = Shape::Logistic;
    std::size_t sowings = 1;
    std::size_t trays = 3; // of each sowing
    std::size_t readings = 6;
    double lastDay = 13;
    double fullCv = 0.05;   // of trays
    double traySd = 0.4;    // days, of a tray's middle
    double sowingSd = 0.4;  // the same of a sowing, with more than one
    double sowingCv = 0.05; // of its full height
    double error = 2;       // mm, of a reading
};

constexpr double kFull = 80;
constexpr double kMiddle = 6;
constexpr double kPace = 1.4;

double shareAt(Shape shape, double pace)
{
    return shape == Shape::Logistic ? 1 / (1 + std::exp(-pace)) : std::exp(-std::exp(-pace));
}

// The day on which the mean height of all trays there might be reaches 90 % of the mean full
// height: early and late trays make their mean curve a little flatter than each of them.
double dayOf90(Shape shape, double middleSd)
{
    const auto meanShare = [&](double day) {
        double sum = 0;
        double weights = 0;
        for (int step = -40; step <= 40; ++step) {
            const double z = 0.1 * step;
            const double weight = std::exp(-z * z / 2);
            sum += weight * shareAt(shape, (day - kMiddle - z * middleSd) / kPace);
            weights += weight;
        }
        return sum / weights;
    };
    return stats::risingRoot([&](double day) { return meanShare(day) - 0.9; }, kMiddle, 1).value();
}

std::vector<stats::TrayReading> readHeights(const Heights& room, Draw& draw)
{
    std::vector<stats::TrayReading> readings;
    std::size_t number = 0;
    for (std::size_t sowing = 0; sowing < room.sowings; ++sowing) {
        const bool isOne = room.sowings == 1;
        const double late = isOne ? 0 : draw.normal(room.sowingSd);
        const double tall = isOne ? 0 : draw.normal(room.sowingCv);
        for (std::size_t tray = 0; tray < room.trays; ++tray) {
            const double full = kFull * (1 + tall + draw.normal(room.fullCv));
            const double middle = kMiddle + late + draw.normal(room.traySd);
            for (std::size_t i = 0; i < room.readings; ++i) {
                const double day = std::round(3 + (room.lastDay - 3) * static_cast<double>(i) /
                                                      static_cast<double>(room.readings - 1));
                const double height = full * shareAt(room.shape, (day - middle) / kPace);
                readings.push_back({day, height + draw.normal(room.error), number, sowing});
            }
            ++number;
        }
    }
    return readings;
}

std::string nameOf(const Heights& room)
{
    char name[160];
    std::snprintf(
        name, sizeof name,
        "day of 90 %% of full height, %s, %zu × %zu trays, %zu readings to day %.0f, tray sd "
        "%.1f d and %.0f %%, reading sd %.1f mm",
        room.shape == Shape::Logistic ? "logistic" : "Gompertz", room.sowings, room.trays,
        room.readings, room.lastDay, room.traySd, 100 * room.fullCv, room.error);
    return name;
}

// Of one sowing the truth is that of all trays it might have had; of several, of all sowings.
Line heightLine(const Heights& room)
{
    const double middleSd =
        room.sowings == 1 ? room.traySd : std::hypot(room.traySd, room.sowingSd);
    const double truth = dayOf90(room.shape, middleSd);
    return {nameOf(room), kFewerSets, [=](Draw& draw) {
                Outcome outcome;
                const auto growth = stats::trayGrowth(readHeights(room, draw), {});
                // What the pages don't show is no answer.
                if (growth && growth->hasIntervals && growth->report.fullHeightSeen) {
                    const stats::CurveEstimate& day = growth->report.xAt90pct;
                    outcome.intervals = 1;
                    outcome.covering = day.lower <= truth && truth <= day.upper ? 1 : 0;
                }
                outcome.isFound = outcome.intervals == 1;
                return outcome;
            }};
}

} // namespace

Section heights()
{
    Section section{"Height curves: found is how often the day is shown, last reading after it",
                    {}};
    for (const Shape shape : {Shape::Logistic, Shape::Gompertz}) {
        for (const std::size_t trays : {3U, 6U}) {
            for (const std::size_t readings : {4U, 6U, 10U}) {
                Heights room;
                room.shape = shape;
                room.trays = trays;
                room.readings = readings;
                room.lastDay = shape == Shape::Logistic ? 13 : 14;
                const bool isQuick = shape == Shape::Logistic && trays == 3 && readings == 6;
                section.lines.push_back(heightLine(room).covers(93).inShort(isQuick ? 300 : 0));
            }
        }
    }
    Heights room;
    room.readings = 10;
    room.traySd = 0.8;
    room.fullCv = 0.03;
    room.error = 1.5;
    section.lines.push_back(heightLine(room).covers(93).inShort(300));
    room.trays = 6;
    section.lines.push_back(heightLine(room).covers(93));
    for (const std::size_t sowings : {3U, 5U}) {
        room = Heights();
        room.sowings = sowings;
        section.lines.push_back(heightLine(room).covers(93).inShort(sowings == 3 ? 200 : 0));
    }
    room = Heights();
    room.lastDay = 9;
    section.lines.push_back(heightLine(room));
    return section;
}

} // namespace plumule::calibration
