#include "ui/widget/amount_field.h"

#include "core/base/number_text.h"
#include "core/base/text_reason.h"
#include "ui/text/text.h"
#include "ui/widget/plain_words.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QPainter>

#include <limits>

namespace plumule::ui {
namespace {

template <class Amount, class Make>
Result<std::optional<Amount>> read(const NumberField& field, Make make)
{
    const auto number = field.number();
    if (!number) {
        return passOn(number);
    }
    if (!number->has_value()) {
        return std::optional<Amount>();
    }
    return std::optional<Amount>(make(**number));
}

void show(NumberField& field, std::optional<double> number, int decimals, const QString& unit)
{
    field.setUnit(unit);
    field.setNumber(number, decimals);
}

} // namespace

NumberField::NumberField(const QString& unit, QWidget* parent)
    : QLineEdit(parent)
    , m_low(-std::numeric_limits<double>::max())
    , m_high(std::numeric_limits<double>::max())
{
    setAlignment(Qt::AlignRight);
    setMaximumWidth(scaled(200));
    setUnit(unit);
    connect(this, &QLineEdit::textEdited, this, [this] { markWrong(false); });
}

void NumberField::setUnit(const QString& unit)
{
    m_unit = unit;
    const int room =
        unit.isEmpty() ? 0 : QFontMetrics(uiFont()).horizontalAdvance(unit) + scaled(6);
    setTextMargins(0, 0, room, 0);
    update();
}

Result<std::optional<double>> NumberField::number() const
{
    if (text().trimmed().isEmpty()) {
        return std::optional<double>();
    }
    if (m_given && text() == m_givenText) {
        return m_given;
    }
    // The minus that numbers are shown with is taken back as typed.
    const std::string plain = QString(text()).replace(QChar(0x2212), '-').toStdString();
    const auto value = decimalFromText(plain);
    if (!value) {
        return passOn(value);
    }
    if (*value < m_low || *value > m_high) {
        return fail(ErrorKind::Invalid, TextReason::NotANumber, plain);
    }
    return std::optional<double>(*value);
}

void NumberField::setNumber(std::optional<double> number, int decimals)
{
    QString shown;
    if (number) {
        shown = numberText(*number, decimals);
        while (shown.contains('.') && (shown.endsWith('0') || shown.endsWith('.'))) {
            const bool isMark = shown.endsWith('.');
            shown.chop(1);
            if (isMark) {
                break;
            }
        }
    }
    setText(shown);
    m_given = number;
    m_givenText = shown;
    markWrong(false);
}

void NumberField::setRange(double low, double high)
{
    m_low = low;
    m_high = high;
}

void NumberField::markWrong(bool isWrong)
{
    const auto read = number();
    ui::markWrong(*this, isWrong);
    setToolTip(isWrong && !read ? plainHint(sentence(read.error())) : QString());
}

void NumberField::paintEvent(QPaintEvent* event)
{
    QLineEdit::paintEvent(event);
    if (m_unit.isEmpty()) {
        return;
    }
    QPainter painter(this);
    painter.setFont(uiFont());
    painter.setPen(ui::palette().mutedInk);
    painter.drawText(rect().adjusted(0, 0, -scaled(10), 0), Qt::AlignRight | Qt::AlignVCenter,
                     m_unit);
}

Result<std::optional<Mass>> massIn(const NumberField& field, UnitSystem units)
{
    return read<Mass>(field, [&](double value) {
        return units == UnitSystem::Metric ? grams(value) : ounces(value);
    });
}

Result<std::optional<Volume>> volumeIn(const NumberField& field, UnitSystem units)
{
    return read<Volume>(field, [&](double value) {
        return units == UnitSystem::Metric ? millilitres(value) : usFluidOunces(value);
    });
}

Result<std::optional<Length>> lengthIn(const NumberField& field, UnitSystem units)
{
    return read<Length>(field, [&](double value) {
        return units == UnitSystem::Metric ? millimetres(value) : inches(value);
    });
}

Result<std::optional<Money>> moneyIn(const NumberField& field)
{
    return read<Money>(field, [](double value) { return money(value); });
}

void showMass(NumberField& field, std::optional<Mass> mass, UnitSystem units)
{
    const bool isMetric = units == UnitSystem::Metric;
    show(field, mass ? std::optional(isMetric ? inGrams(*mass) : inOunces(*mass)) : std::nullopt,
         isMetric ? 2 : 3, UnitText(units).massUnit());
}

void showVolume(NumberField& field, std::optional<Volume> volume, UnitSystem units)
{
    const bool isMetric = units == UnitSystem::Metric;
    show(field,
         volume ? std::optional(isMetric ? inMillilitres(*volume) : inUsFluidOunces(*volume))
                : std::nullopt,
         isMetric ? 1 : 2, UnitText(units).volumeUnit());
}

void showLength(NumberField& field, std::optional<Length> length, UnitSystem units)
{
    const bool isMetric = units == UnitSystem::Metric;
    show(field,
         length ? std::optional(isMetric ? inMillimetres(*length) : inInches(*length))
                : std::nullopt,
         isMetric ? 1 : 2, UnitText(units).lengthUnit());
}

void showMoney(NumberField& field, std::optional<Money> sum, const QString& currency)
{
    show(field, sum ? std::optional(inUnits(*sum)) : std::nullopt, 4, currency);
}

} // namespace plumule::ui

#include "moc_amount_field.cpp"
