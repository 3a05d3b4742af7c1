#include "ui/watering/key_button.h"

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
{
    setAutoDefault(false);
    if (*role != '\0') {
        setProperty("role", role);
    }
    setAccessibleName(text);
    setAccessibleDescription(tr("Key %1").arg(key));
}

void KeyButton::setKeyShown(bool isShown)
{
    m_isKeyShown = isShown;
    update();
}

int KeyButton::capSide() const
{
    return scaled(20);
}

int KeyButton::capWidth() const
{
    const int words = QFontMetrics(uiFont(0.82, QFont::Medium)).horizontalAdvance(m_key);
    return qMax(capSide(), words + scaled(8));
}

QSize KeyButton::sizeHint() const
{
    const QSize words = QPushButton::sizeHint();
    return {words.width() + capWidth() + scaled(8), qMax(words.height(), scaled(44))};
}

QSize KeyButton::minimumSizeHint() const
{
    return sizeHint();
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
    const int whole = m_isKeyShown ? words + gap + capWidth() : words;
    const int left = (width() - whole) / 2;
    painter.setPen(ink);
    painter.drawText(QRect(left, 0, words + 2, height()), Qt::AlignVCenter | Qt::AlignLeft, text());
    if (!m_isKeyShown) {
        return;
    }
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF cap(left + words + gap + 0.5, (height() - capSide()) / 2.0 + 0.5, capWidth() - 1,
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
