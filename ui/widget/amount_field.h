#pragma once

#include "core/base/money.h"
#include "core/base/quantity.h"
#include "core/base/result.h"
#include "core/room/room.h"

#include <QLineEdit>

#include <optional>

namespace plumule::ui {

// A field for one number with a unit beside it. Text goes through core's strict number reader: one
// decimal mark, point or comma, no groups, and no comma that may part thousands. An empty field is
// "not given".
class NumberField : public QLineEdit
{
    Q_OBJECT

public:
    explicit NumberField(const QString& unit = {}, QWidget* parent = nullptr);

    [[nodiscard]] QString unit() const { return m_unit; }
    void setUnit(const QString& unit);
    // None when empty. Ambiguous for "1,234"; Invalid when it is no number or beyond the range.
    [[nodiscard]] Result<std::optional<double>> number() const;
    void setNumber(std::optional<double> number, int decimals);
    void setRange(double low, double high);
    // Shows the field as wrong until its text changes, and says why under the pointer.
    void markWrong(bool isWrong);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString m_unit;
    // What setNumber() was given and how it was shown: an untouched field gives back the number
    // itself and not its rounded text.
    std::optional<double> m_given;
    QString m_givenText;
    double m_low;
    double m_high;
};

// Reads and shows typed amounts in the room's units.
[[nodiscard]] Result<std::optional<Mass>> massIn(const NumberField& field, UnitSystem units);
[[nodiscard]] Result<std::optional<Volume>> volumeIn(const NumberField& field, UnitSystem units);
[[nodiscard]] Result<std::optional<Length>> lengthIn(const NumberField& field, UnitSystem units);
[[nodiscard]] Result<std::optional<Money>> moneyIn(const NumberField& field);
void showMass(NumberField& field, std::optional<Mass> mass, UnitSystem units);
void showVolume(NumberField& field, std::optional<Volume> volume, UnitSystem units);
void showLength(NumberField& field, std::optional<Length> length, UnitSystem units);
void showMoney(NumberField& field, std::optional<Money> sum, const QString& currency);

} // namespace plumule::ui
