#include "ui/watering/tray_row.h"

#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QKeyEvent>

namespace plumule::ui {
namespace {

constexpr int kOneLine = 51;
constexpr int kTwoLines = 62;
constexpr int kFourLines = 110;
constexpr int kAnswers = 48; // below the lines
constexpr int kMoreSide = 44;

QFont fontOfCodes()
{
    return uiFont(1.1, QFont::DemiBold);
}

} // namespace

int rowStep(int key)
{
    switch (key) {
    case Qt::Key_Up:
        return -1;
    case Qt::Key_Down:
        return 1;
    case Qt::Key_Home:
        return -1000;
    case Qt::Key_End:
        return 1000;
    default:
        return 0;
    }
}

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
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
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
    connect(this, &QAbstractButton::clicked, this, &TrayRow::press);
    connect(m_more, &QPushButton::clicked, this, &TrayRow::detailsAsked);
    word();
}

void TrayRow::setTray(const RoundTray& tray, const RowFrame& frame)
{
    if (tray == m_tray && frame == m_frame) {
        return;
    }
    m_tray = tray;
    m_frame = frame;
    word();
    updateGeometry();
    update();
}

void TrayRow::setLooked(const std::optional<WateringLook>& looked)
{
    m_tray.looked = looked;
    word();
    update();
}

void TrayRow::press()
{
    if (asksWhetherNeeded() && m_isOnNotNeeded) {
        Q_EMIT notNeededAsked();
    } else {
        Q_EMIT tickAsked(TickedBy::Touch);
    }
}

bool TrayRow::asksWhetherNeeded() const
{
    return m_tray.isAsNeeded && !m_tray.isDone();
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
    if (asksWhetherNeeded()) {
        m_water.kind = m_water.amount.isEmpty() ? tr("if dry, %1").arg(m_water.kind) : m_water.kind;
        m_water.amount =
            m_water.amount.isEmpty() ? QString() : tr("if dry, %1").arg(m_water.amount);
    }
    m_missed = missedText(m_tray, m_frame.round);
    m_last = lastText(m_tray, m_frame.round);
    setChecked(m_tray.isDone());
    setAccessibleName(tr("%1, %2 on %3: %4. %5. %6.")
                          .arg(QString::fromStdString(m_tray.code),
                               QString::fromStdString(m_tray.variety),
                               QString::fromStdString(m_tray.medium.name), m_water.whole(),
                               dayOfGrowth(m_tray), m_missed.isEmpty() ? m_last : m_missed));
    setAccessibleDescription(asksWhetherNeeded() ? tr("Space: watered. D: not needed.")
                                                 : QString());
    const QString between = betweenSentence(m_tray, m_frame.units);
    const QString missed = m_missed.isEmpty() ? QString() : missedSentence(m_tray);
    setToolTip(QStringList{missed, between}.join('\n').trimmed());
}

int TrayRow::widthOfCode(const std::string& code)
{
    const int words = QFontMetrics(fontOfCodes()).horizontalAdvance(QString::fromStdString(code));
    return qMin(words, scaled(150));
}

QSize TrayRow::sizeHint() const
{
    return {scaled(760), heightForWidth(width())};
}

QSize TrayRow::minimumSizeHint() const
{
    return {scaled(240), scaled(kOneLine)};
}

int TrayRow::heightForWidth(int wide) const
{
    const Form form = formAt(wide);
    if (form == Form::OneLine) {
        return scaled(kOneLine);
    }
    const int words = form == Form::TwoLines ? kTwoLines : kFourLines;
    return scaled(m_tray.isAsNeeded ? words + kAnswers : words);
}

TrayRow::Form TrayRow::formAt(int wide) const
{
    if (wide >= scaled(m_tray.isAsNeeded ? 820 : 690) + m_frame.codeWidth) {
        return Form::OneLine;
    }
    return wide >= scaled(330) + m_frame.codeWidth ? Form::TwoLines : Form::FourLines;
}

void TrayRow::resizeEvent(QResizeEvent* event)
{
    QAbstractButton::resizeEvent(event);
    const int side = scaled(kMoreSide);
    m_more->setGeometry(width() - side, (wordsHeight() - side) / 2, side, side);
    if (formAt(width()) != formAt(event->oldSize().width())) {
        // The layout keeps the height that was asked for before.
        updateGeometry();
    }
}

int TrayRow::wordsHeight() const
{
    switch (formAt(width())) {
    case Form::TwoLines:
        return scaled(kTwoLines);
    case Form::FourLines:
        return scaled(kFourLines);
    default:
        return height();
    }
}

int TrayRow::answersWidth() const
{
    return notNeededArea().right() - wateredArea().left();
}

QRect TrayRow::notNeededArea() const
{
    const int high = scaled(44);
    const int wide = qMin(scaled(120), (width() - scaled(16)) / 2);
    const bool isBeside = formAt(width()) == Form::OneLine;
    const int right = width() - scaled(isBeside ? kMoreSide + 4 : 8);
    const int top = isBeside ? (height() - high) / 2 : wordsHeight() - scaled(2);
    return {right - wide, top, wide, high};
}

QRect TrayRow::wateredArea() const
{
    const QRect other = notNeededArea();
    return other.translated(-other.width() - scaled(8), 0);
}

// An open question is answered on its two areas alone.
bool TrayRow::hitButton(const QPoint& at) const
{
    return asksWhetherNeeded() ? wateredArea().contains(at) || notNeededArea().contains(at)
                               : QAbstractButton::hitButton(at);
}

void TrayRow::mousePressEvent(QMouseEvent* event)
{
    m_isOnNotNeeded = notNeededArea().contains(event->position().toPoint());
    QAbstractButton::mousePressEvent(event);
}

void TrayRow::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Space:
        if (!event->isAutoRepeat()) {
            Q_EMIT tickAsked(TickedBy::Key);
        }
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        Q_EMIT detailsAsked();
        return;
    default:
        break;
    }
    if (const int step = rowStep(event->key()); step != 0) {
        Q_EMIT stepAsked(step);
    } else {
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

} // namespace plumule::ui

#include "moc_tray_row.cpp"
