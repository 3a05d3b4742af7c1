#include "ui/watering/tray_row.h"

#include "ui/medium/marker.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QKeyEvent>
#include <QPainter>

namespace plumule::ui {
namespace {

constexpr int kBoxColumn = 46;
constexpr int kDayColumn = 88;
constexpr int kLastColumn = 98;
constexpr int kMoreColumn = 44;
constexpr int kGap = 8;

QFont codeFont()
{
    return uiFont(1.1, QFont::DemiBold);
}

QFont amountFont()
{
    return uiFont(1.0, QFont::DemiBold);
}

// Draws within the cell, with three dots where it does not fit.
void drawIn(QPainter& painter, QRect cell, Qt::Alignment alignment, const QString& text)
{
    painter.drawText(cell, alignment,
                     painter.fontMetrics().elidedText(text, Qt::ElideRight, cell.width()));
}

} // namespace

TrayRow::TrayRow(const RoundTray& tray, const RowFrame& frame, QWidget* parent)
    : QAbstractButton(parent)
    , m_tray(tray)
    , m_frame(frame)
{
    setObjectName("tray" + QString::fromStdString(tray.code));
    setCheckable(true);
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    m_more = button(QStringLiteral("•••"), "quiet");
    m_more->setParent(this);
    m_more->setObjectName("more" + QString::fromStdString(tray.code));
    m_more->setFocusPolicy(Qt::NoFocus);
    m_more->setCursor(Qt::ArrowCursor);
    m_more->setToolTip(tr("Note, height, water given, pH and EC"));
    m_more->setAccessibleName(
        tr("Note, height and water of %1").arg(QString::fromStdString(tray.code)));
    connect(this, &QAbstractButton::clicked, this, [this] { Q_EMIT tickAsked(false); });
    connect(m_more, &QPushButton::clicked, this, &TrayRow::detailsAsked);
    word();
}

void TrayRow::setTray(const RoundTray& tray, const RowFrame& frame)
{
    m_tray = tray;
    m_frame = frame;
    word();
    update();
}

void TrayRow::setGiven(const std::optional<Watering>& given)
{
    m_tray.given = given;
    word();
    update();
}

void TrayRow::setLast(bool isLast)
{
    m_isLast = isLast;
    update();
}

void TrayRow::word()
{
    m_water = waterWords(m_tray, m_frame.units);
    m_missed = missedText(m_tray, m_frame.round);
    m_last = lastText(m_tray, m_frame.round);
    setChecked(m_tray.isDone());
    setAccessibleName(tr("%1, %2 on %3: %4. %5. %6.")
                          .arg(QString::fromStdString(m_tray.code),
                               QString::fromStdString(m_tray.variety),
                               QString::fromStdString(m_tray.medium.name), m_water.whole(),
                               dayOfGrowth(m_tray), m_missed.isEmpty() ? m_last : m_missed));
    setToolTip(m_missed.isEmpty() ? QString() : missedSentence(m_tray));
}

int TrayRow::widthOfCode(const std::string& code)
{
    const int words = QFontMetrics(codeFont()).horizontalAdvance(QString::fromStdString(code));
    return qMin(words, scaled(150));
}

QSize TrayRow::sizeHint() const
{
    return {scaled(760), heightForWidth(width())};
}

QSize TrayRow::minimumSizeHint() const
{
    return {scaled(300), scaled(51)};
}

int TrayRow::heightForWidth(int wide) const
{
    return scaled(isNarrow(wide) ? 62 : 51);
}

bool TrayRow::isNarrow(int wide) const
{
    return wide < scaled(690) + m_frame.codeWidth;
}

void TrayRow::resizeEvent(QResizeEvent* event)
{
    QAbstractButton::resizeEvent(event);
    const int side = scaled(kMoreColumn);
    m_more->setGeometry(width() - side, (height() - side) / 2, side, side);
}

void TrayRow::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Space:
        if (!event->isAutoRepeat()) {
            Q_EMIT tickAsked(true);
        }
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        Q_EMIT detailsAsked();
        return;
    case Qt::Key_Up:
        Q_EMIT stepAsked(-1);
        return;
    case Qt::Key_Down:
        Q_EMIT stepAsked(1);
        return;
    case Qt::Key_Home:
        Q_EMIT stepAsked(-1000);
        return;
    case Qt::Key_End:
        Q_EMIT stepAsked(1000);
        return;
    default:
        // Letters are the page's.
        event->ignore();
    }
}

void TrayRow::focusInEvent(QFocusEvent* event)
{
    QAbstractButton::focusInEvent(event);
    Q_EMIT focused();
}

void TrayRow::focusOutEvent(QFocusEvent* event)
{
    QAbstractButton::focusOutEvent(event);
    update();
}

void TrayRow::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintGround(painter);
    paintTick(painter);
    painter.setOpacity(m_tray.isDone() ? 0.5 : 1.0);
    if (isNarrow(width())) {
        paintTwoLines(painter);
    } else {
        paintOneLine(painter);
    }
}

void TrayRow::paintGround(QPainter& painter) const
{
    const Palette& colours = ui::palette();
    if (!m_isLast) {
        painter.fillRect(QRect(0, height() - 1, width(), 1), colours.rule);
    }
    const QRectF inside = QRectF(rect()).adjusted(1, 2, -1, -3);
    if (underMouse() || isDown()) {
        QColor hover = colours.selection;
        hover.setAlphaF(isDown() ? 1.0F : 0.45F);
        painter.setPen(Qt::NoPen);
        painter.setBrush(hover);
        painter.drawRoundedRect(inside, scaled(7), scaled(7));
    }
    if (hasFocus()) {
        painter.setPen(QPen(colours.accent, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(inside, scaled(7), scaled(7));
    }
}

void TrayRow::paintTick(QPainter& painter) const
{
    const Palette& colours = ui::palette();
    const int side = scaled(28);
    const QRectF box(scaled(8) + 1, (height() - side) / 2.0, side, side);
    if (!m_tray.isDone()) {
        painter.setPen(QPen(colours.accentSoft, 2));
        painter.setBrush(colours.field);
        painter.drawRoundedRect(box, scaled(7), scaled(7));
        return;
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(colours.accentSoft);
    painter.drawRoundedRect(box, scaled(7), scaled(7));
    const auto at = [&](double x, double y) {
        return QPointF(box.x() + x * side, box.y() + y * side);
    };
    painter.setPen(QPen(colours.isDark ? colours.ink : colours.accentInk, scaled(3), Qt::SolidLine,
                        Qt::RoundCap, Qt::RoundJoin));
    painter.drawPolyline(QPolygonF({at(0.29, 0.52), at(0.44, 0.67), at(0.72, 0.35)}));
}

void TrayRow::paintOneLine(QPainter& painter) const
{
    const Palette& colours = ui::palette();
    const int high = height();
    const int gap = scaled(kGap);
    int x = scaled(kBoxColumn) + gap / 2;
    const auto cell = [&](int wide) {
        const QRect rect(x, 0, wide, high);
        x += wide + gap;
        return rect;
    };
    const int fixed = scaled(kDayColumn + kLastColumn + kMoreColumn) + m_frame.codeWidth;
    const int shared = width() - x - fixed - 6 * gap;
    painter.setPen(colours.ink);
    painter.setFont(codeFont());
    drawIn(painter, cell(m_frame.codeWidth), Qt::AlignVCenter, QString::fromStdString(m_tray.code));
    painter.setFont(uiFont());
    drawIn(painter, cell(shared * 28 / 100), Qt::AlignVCenter,
           QString::fromStdString(m_tray.variety));
    paintMedium(painter, cell(shared * 31 / 100));
    paintWater(painter, cell(shared * 41 / 100), Qt::AlignVCenter);
    painter.setPen(colours.mutedInk);
    drawIn(painter, cell(scaled(kDayColumn)), Qt::AlignVCenter, dayOfGrowth(m_tray));
    paintLast(painter, cell(scaled(kLastColumn)), Qt::AlignVCenter);
}

void TrayRow::paintTwoLines(QPainter& painter) const
{
    const Palette& colours = ui::palette();
    const int gap = scaled(kGap);
    const int left = scaled(kBoxColumn) + gap / 2;
    const int right = width() - scaled(kMoreColumn);
    const int lineHigh = scaled(24);
    const int top = (height() - 2 * lineHigh) / 2;

    const int water = qMin(waterWidth(), (right - left) / 2);
    painter.setPen(colours.ink);
    painter.setFont(codeFont());
    drawIn(painter, QRect(left, top, m_frame.codeWidth, lineHigh), Qt::AlignVCenter,
           QString::fromStdString(m_tray.code));
    painter.setFont(uiFont());
    const int variety = left + m_frame.codeWidth + gap;
    drawIn(painter, QRect(variety, top, right - water - gap - variety, lineHigh), Qt::AlignVCenter,
           QString::fromStdString(m_tray.variety));
    paintWater(painter, QRect(right - water, top, water, lineHigh),
               Qt::AlignVCenter | Qt::AlignRight);

    const int second = top + lineHigh;
    const QString day = dayOfGrowth(m_tray);
    const int dayWide = QFontMetrics(uiFont()).horizontalAdvance(day) + 2;
    const int last = lastWidth();
    const int mediumWide = qMin(scaled(160), right - left - last - dayWide - 2 * gap);
    paintMedium(painter, QRect(left, second, mediumWide, lineHigh));
    painter.setPen(colours.mutedInk);
    drawIn(painter, QRect(left + mediumWide + gap, second, dayWide, lineHigh), Qt::AlignVCenter,
           day);
    paintLast(painter, QRect(right - last, second, last, lineHigh),
              Qt::AlignVCenter | Qt::AlignRight);
}

void TrayRow::paintMedium(QPainter& painter, QRect cell) const
{
    const int mark = scaled(20);
    painter.save();
    painter.translate(cell.left() + scaled(7), cell.center().y() + 1);
    painter.fillPath(markerShape(m_tray.medium.marker, scaled(11)),
                     markerColour(m_tray.medium.marker));
    painter.restore();
    painter.setPen(ui::palette().ink);
    drawIn(painter, cell.adjusted(mark, 0, 0, 0), Qt::AlignVCenter,
           QString::fromStdString(m_tray.medium.name));
}

int TrayRow::waterWidth() const
{
    int wide = QFontMetrics(uiFont()).horizontalAdvance(m_water.kind) + 2;
    if (!m_water.amount.isEmpty()) {
        wide += QFontMetrics(amountFont()).horizontalAdvance(m_water.amount) + scaled(5);
    }
    return wide;
}

void TrayRow::paintWater(QPainter& painter, QRect cell, Qt::Alignment alignment) const
{
    if (alignment.testFlag(Qt::AlignRight)) {
        cell.setLeft(qMax(cell.left(), cell.right() + 1 - waterWidth()));
    }
    painter.setPen(ui::palette().ink);
    if (!m_water.amount.isEmpty()) {
        painter.setFont(amountFont());
        const int wide = painter.fontMetrics().horizontalAdvance(m_water.amount);
        drawIn(painter, cell, Qt::AlignVCenter, m_water.amount);
        cell.setLeft(cell.left() + wide + scaled(5));
        painter.setFont(uiFont());
    }
    drawIn(painter, cell, Qt::AlignVCenter, m_water.kind);
}

int TrayRow::lastWidth() const
{
    return m_missed.isEmpty() ? QFontMetrics(uiFont()).horizontalAdvance(m_last) + 2
                              : QFontMetrics(amountFont()).horizontalAdvance(m_missed) + 2;
}

void TrayRow::paintLast(QPainter& painter, QRect cell, Qt::Alignment alignment) const
{
    const bool isMissed = !m_missed.isEmpty();
    painter.setPen(isMissed ? ui::palette().warning : ui::palette().mutedInk);
    painter.setFont(isMissed ? amountFont() : uiFont());
    drawIn(painter, cell, alignment, isMissed ? m_missed : m_last);
    painter.setFont(uiFont());
}

} // namespace plumule::ui

#include "moc_tray_row.cpp"
