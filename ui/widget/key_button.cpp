#include "ui/widget/key_button.h"

#include "ui/widget/theme.h"

#include <QStyleOptionButton>
#include <QStylePainter>

namespace plumule::ui {

KeyButton::KeyButton(const QString& text, QChar key, const char* role, QWidget* parent)
    : KeyButton(text, QString(key), role, parent)
{}

KeyButton::KeyButton(const QString& text, const QString& key, const char* role, QWidget* parent)
    : QPushButton(text, parent)
    , m_key(key)
    , m_capWidth(qMax(capSide(),
                      QFontMetrics(uiFont(0.82, QFont::Medium)).horizontalAdvance(key) + scaled(8)))
{
    setAutoDefault(false);
    if (*role != '\0') {
        setProperty("role", role);
    }
    setAccessibleDescription(tr("Key %1").arg(key));
}

void KeyButton::setKeyShown(bool isShown)
{
    m_isKeyShown = isShown;
    update();
}

int KeyButton::capSide()
{
    return scaled(20);
}

int KeyButton::boxWidth() const
{
    return isCheckable() ? scaled(18) + scaled(8) : 0;
}

QSize KeyButton::sizeHint() const
{
    const QSize words = QPushButton::sizeHint();
    return {words.width() + boxWidth() + m_capWidth + scaled(8), qMax(words.height(), scaled(44))};
}

QSize KeyButton::minimumSizeHint() const
{
    return sizeHint();
}

void KeyButton::paintBox(QPainter& painter, const QRectF& box) const
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const Palette& colours = ui::palette();
    painter.setPen(QPen(isChecked() ? colours.accent : colours.mutedInk, scaled(2)));
    painter.setBrush(isChecked() ? colours.accent : colours.field);
    painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), scaled(4), scaled(4));
    if (isChecked()) {
        painter.setPen(QPen(colours.accentInk, scaled(2), Qt::SolidLine, Qt::RoundCap));
        const double side = box.width();
        painter.drawPolyline(QPolygonF{box.topLeft() + QPointF(0.26 * side, 0.52 * side),
                                       box.topLeft() + QPointF(0.44 * side, 0.70 * side),
                                       box.topLeft() + QPointF(0.75 * side, 0.32 * side)});
    }
    painter.restore();
}

void KeyButton::paintEvent(QPaintEvent*)
{
    QStylePainter painter(this);
    QStyleOptionButton option;
    initStyleOption(&option);
    option.text.clear();
    painter.drawControl(QStyle::CE_PushButton, option);

    const bool isPrimary = property("role").toString() == QStringLiteral("primary");
    const Palette& colours = ui::palette();
    const QColor ink = !isEnabled() ? (isPrimary ? colours.accentInk : colours.mutedInk)
                       : isPrimary  ? colours.accentInk
                                    : colours.ink;
    const int words = painter.fontMetrics().horizontalAdvance(text());
    const int gap = scaled(8);
    const int whole = boxWidth() + (m_isKeyShown ? words + gap + m_capWidth : words);
    int left = (width() - whole) / 2;
    if (isCheckable()) {
        const int side = boxWidth() - gap;
        paintBox(painter, QRectF(left, (height() - side) / 2.0, side, side));
        left += boxWidth();
    }
    painter.setPen(ink);
    painter.drawText(QRect(left, 0, words + 2, height()), Qt::AlignVCenter | Qt::AlignLeft, text());
    if (!m_isKeyShown) {
        return;
    }
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF cap(left + words + gap + 0.5, (height() - capSide()) / 2.0 + 0.5, m_capWidth - 1,
                     capSide() - 1);
    QColor edge = isPrimary ? colours.accentInk : colours.mutedInk;
    edge.setAlphaF(0.55F);
    painter.setPen(edge);
    painter.drawRoundedRect(cap, scaled(4), scaled(4));
    painter.setPen(isPrimary ? ink : colours.mutedInk);
    painter.setFont(uiFont(0.82, QFont::Medium));
    painter.drawText(cap, Qt::AlignCenter, m_key);
}

} // namespace plumule::ui

#include "moc_key_button.cpp"
