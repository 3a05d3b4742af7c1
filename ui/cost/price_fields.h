#pragma once

#include "core/medium/medium.h"
#include "ui/text/price_units.h"

#include <QObject>

class QComboBox;
class QFormLayout;

namespace plumule::ui {

class DateField;
class NumberField;

// The fields of one dated price: what it is for, from when, how much and for which measure.
class PriceFields : public QObject
{
    Q_OBJECT

public:
    // Adds its rows to the form.
    PriceFields(QFormLayout& form, QObject* parent);

    void setMedia(const std::vector<Medium>& media);
    // Fills the fields; a new price has no amount yet.
    void show(const Price& price, const Room& room);
    // As typed; the fields at fault are marked, and why.
    [[nodiscard]] tl::expected<Price, QString> read();
    // What is priced can't be changed.
    void fixWhat();

private:
    void fillUnits();
    void chooseUnit(PriceMeasure measure);
    void turnAmount();
    [[nodiscard]] const PriceUnit& unit() const;

    QComboBox* m_item = nullptr;
    QComboBox* m_medium = nullptr;
    DateField* m_from = nullptr;
    NumberField* m_amount = nullptr;
    QComboBox* m_unit = nullptr;
    std::vector<PriceUnit> m_units;              // as m_unit lists them
    PriceMeasure m_measure = PriceMeasure::Unit; // that the amount is shown for
    Price m_shown;
    UnitSystem m_shownIn = UnitSystem::Metric;
    std::vector<Medium> m_media;
};

} // namespace plumule::ui
