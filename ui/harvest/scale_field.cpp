#include "ui/harvest/scale_field.h"

#include "ui/text/text.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QPainter>

namespace plumule::ui {
namespace {

constexpr const char* kWidestWeight = "00000.0";

QFont unitFont(const QFont& field)
{
    QFont font = field;
    font.setPointSizeF(font.pointSizeF() * 0.55);
    font.setWeight(QFont::Normal);
    return font;
}

} // namespace

QString scaleText(Mass mass, MassUnit unit)
{
    return unit == MassUnit::Gram ? numberText(inGrams(mass), 1) : numberText(inOunces(mass), 2);
}

QString scaleTextWithUnit(Mass mass, MassUnit unit)
{
    return scaleText(mass, unit) +
           (unit == MassUnit::Gram ? QStringLiteral(" g") : QStringLiteral(" oz"));
}

ScaleField::ScaleField(const char* name, double size, QWidget* parent)
    : QLineEdit(parent)
{
    setObjectName(name);
    setFont(uiFont(size, QFont::DemiBold));
    setStyleSheet(
        QStringLiteral("font-size: %1pt; font-weight: 600;").arg(uiFont(size).pointSizeF()));
    setAlignment(Qt::AlignRight);
    setUnit(m_unit);
}

QString ScaleField::unitText() const
{
    return m_unit == MassUnit::Gram ? QStringLiteral("g") : QStringLiteral("oz");
}

void ScaleField::setUnit(MassUnit unit)
{
    const bool isAsGiven = m_given && text() == m_givenText;
    m_unit = unit;
    const int room = QFontMetrics(unitFont(font())).horizontalAdvance(unitText()) + scaled(8);
    setTextMargins(0, 0, room, 0);
    if (isAsGiven) {
        setMass(*m_given);
    }
    update();
}

void ScaleField::setMass(Mass mass)
{
    m_given = mass;
    m_givenText = scaleText(mass, m_unit);
    setText(m_givenText);
}

Result<ScaleReading> ScaleField::reading() const
{
    if (m_given && text() == m_givenText) {
        return ScaleReading{*m_given};
    }
    return scaleReadingFrom(text().toStdString(), m_unit);
}

void ScaleField::setDoubted(bool isDoubted)
{
    markWrong(*this, isDoubted);
}

QSize ScaleField::minimumSizeHint() const
{
    const int figures = fontMetrics().horizontalAdvance(QLatin1String(kWidestWeight));
    return {figures + textMargins().right() + scaled(28), QLineEdit::minimumSizeHint().height()};
}

void ScaleField::paintEvent(QPaintEvent* event)
{
    QLineEdit::paintEvent(event);
    QPainter painter(this);
    painter.setFont(unitFont(font()));
    painter.setPen(ui::palette().mutedInk);
    painter.drawText(rect().adjusted(0, 0, -scaled(12), 0), Qt::AlignRight | Qt::AlignVCenter,
                     unitText());
}

} // namespace plumule::ui

#include "moc_scale_field.cpp"
