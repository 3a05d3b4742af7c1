#pragma once

#include "core/harvest/scale_text.h"

#include <QLineEdit>

#include <optional>

namespace plumule::ui {

// A weight as the scale shows it: "325.0", "11.46".
[[nodiscard]] QString scaleText(Mass mass, MassUnit unit);
[[nodiscard]] QString scaleTextWithUnit(Mass mass, MassUnit unit); // "325.0 g", "11.46 oz"

// A field for what the scale says, with its unit within. A weight that was put in stays what it is,
// to the milligram, until its text is changed.
class ScaleField : public QLineEdit
{
    Q_OBJECT

public:
    // `size` relative to the body text.
    ScaleField(const char* name, double size, QWidget* parent = nullptr);

    // A weight that was put in is shown anew; what was typed stays as it was typed.
    void setUnit(MassUnit unit);
    [[nodiscard]] MassUnit unit() const { return m_unit; }
    void setMass(Mass mass);
    // As scaleReadingFrom().
    [[nodiscard]] Result<ScaleReading> reading() const;
    [[nodiscard]] bool isBlank() const { return text().trimmed().isEmpty(); }
    // Framed as doubtful.
    void setDoubted(bool isDoubted);

    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] QString unitText() const;

    MassUnit m_unit = MassUnit::Gram;
    std::optional<Mass> m_given;
    QString m_givenText;
};

} // namespace plumule::ui
