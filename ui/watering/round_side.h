#pragma once

#include "core/watering/round.h"
#include "ui/text/text.h"
#include "ui/widget/amount_field.h"

#include <QWidget>

class QLabel;
class QVBoxLayout;

namespace plumule::ui {

class Card;
class KeyButton;
class Segmented;

// What stands beside the round: what to mix, what tomorrow brings, and what to mind.
class RoundSide : public QWidget
{
    Q_OBJECT

public:
    explicit RoundSide(QWidget* parent = nullptr);

    // `freeSpots` are named where the pointer rests on the free places.
    void showRound(const Round& round, const UnitText& units, Date today,
                   const std::vector<Spot>& freeSpots);
    // What runs low, in one line; empty: nothing does.
    void sayLow(const QString& words);
    // Opens the fields for pH and EC of the mixed water.
    void askReading();
    // Once a reading is kept, or left: the fields are empty again.
    void closeReading();

Q_SIGNALS:
    // Missing values were left empty. The fields stay until closeReading().
    void readingNoted(plumule::WaterKind water, std::optional<double> ph, std::optional<double> ec);
    void readingClosed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    // What it shows.
    struct Shown
    {
        RoundKey round;
        std::vector<MixLine> mix;
        Tomorrow tomorrow;
        UnitSystem units = UnitSystem::Metric;
        Date today;
        std::vector<Spot> freeSpots;

        bool operator==(const Shown&) const = default;
    };

    void buildMix();
    void buildReading();
    void showMix(const Round& round, const UnitText& units);
    void showAdvice(const Round& round);
    void showTomorrow(const Round& round, Date today, const std::vector<Spot>& freeSpots);
    void takeReading();

    Card* m_mix = nullptr;
    QVBoxLayout* m_mixLines = nullptr;
    QVBoxLayout* m_advice = nullptr;
    KeyButton* m_note = nullptr;
    QWidget* m_reading = nullptr;
    Segmented* m_kinds = nullptr;
    std::optional<Shown> m_shown;
    std::vector<WaterKind> m_waters; // the kinds of m_kinds
    NumberField* m_ph = nullptr;
    NumberField* m_ec = nullptr;
    Card* m_tomorrow = nullptr;
    QLabel* m_low = nullptr;
};

} // namespace plumule::ui
