#include "ui/watering/decision_row.h"

#include "ui/watering/tray_row.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/key_button.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

namespace plumule::ui {

DecisionRow::DecisionRow(std::vector<StageDecision> decisions, QWidget* parent)
    : QFrame(parent)
    , m_decisions(std::move(decisions))
{
    const QString code = QString::fromStdString(decision().code);
    setObjectName("decision" + code);
    setFocusPolicy(Qt::StrongFocus);
    build();
    m_ready->setObjectName("ready" + code);
    m_notYet->setObjectName("notYet" + code);
    word();
    setKeysShown(false);
    connect(m_ready, &QPushButton::clicked, this, &DecisionRow::readyAsked);
    connect(m_notYet, &QPushButton::clicked, this, &DecisionRow::notYetAsked);
    if (m_oneByOne != nullptr) {
        m_oneByOne->setObjectName("oneByOne" + code);
        connect(m_oneByOne, &QPushButton::clicked, this, &DecisionRow::oneByOneAsked);
    }
}

void DecisionRow::build()
{
    m_line = new QBoxLayout(QBoxLayout::LeftToRight, this);
    m_line->setContentsMargins(scaled(12), scaled(8), scaled(8), scaled(8));
    m_line->setSpacing(scaled(14));
    m_cue = label(QString(), "strong");
    m_cue->setObjectName("cue");
    m_cue->setWordWrap(true);
    m_about = label(QString(), "muted");
    m_about->setObjectName("about");
    m_about->setWordWrap(true);
    auto* words = new QVBoxLayout;
    words->setSpacing(scaled(2));
    words->addWidget(m_cue);
    words->addWidget(m_about);
    auto* answers = new FlowLayout;
    answers->setSpacing(scaled(10));
    if (m_decisions.size() > 1) {
        m_oneByOne = button(tr("One by one"), "quiet");
        m_oneByOne->setMinimumHeight(scaled(44));
        answers->addWidget(m_oneByOne);
    }
    m_ready = new KeyButton(QString(), 'R', "primary");
    m_notYet = new KeyButton(tr("Not yet"), 'N');
    answers->addWidget(m_ready);
    answers->addWidget(m_notYet);
    m_line->addLayout(words, 1);
    m_line->addLayout(answers, 0);
}

void DecisionRow::setDecisions(std::vector<StageDecision> decisions)
{
    if (m_decisions != decisions) {
        m_decisions = std::move(decisions);
        word();
    }
}

std::vector<TrayId> DecisionRow::trays() const
{
    std::vector<TrayId> trays;
    for (const StageDecision& each : m_decisions) {
        trays.push_back(each.tray);
    }
    return trays;
}

bool DecisionRow::isAbout(TrayId tray) const
{
    return std::any_of(m_decisions.begin(), m_decisions.end(),
                       [tray](const StageDecision& each) { return each.tray == tray; });
}

QString DecisionRow::codes() const
{
    std::vector<std::string> codes;
    for (const StageDecision& each : m_decisions) {
        codes.push_back(each.code);
    }
    return codesText(codes);
}

QString DecisionRow::readyText() const
{
    if (!decision().to) {
        return tr("To the scale");
    }
    return m_decisions.size() == 1 ? tr("Ready") : tr("Ready, all %1").arg(m_decisions.size());
}

void DecisionRow::word()
{
    m_cue->setText(tr("%1: %2").arg(codes(), cueText(decision())));
    QStringList about{QString::fromStdString(decision().variety), tr("day %1").arg(decision().day)};
    const QString late = latenessText(decision());
    if (!late.isEmpty()) {
        about << late;
    }
    about << (decision().to
                  ? tr("Not yet asks again next round, and all that follows moves with it")
                  : tr("Not yet asks again in a day"));
    m_about->setText(about.join(QStringLiteral("  ·  ")));
    setRole(m_about, late.isEmpty() ? "muted" : "warning");
    m_ready->setText(readyText());
    setAccessibleName(m_cue->text());
    m_ready->setAccessibleName(tr("%1 %2").arg(codes(), m_ready->text()));
    m_notYet->setAccessibleName(tr("%1 %2").arg(codes(), m_notYet->text()));
}

void DecisionRow::setKeysShown(bool isShown)
{
    m_ready->setKeyShown(isShown);
    m_notYet->setKeyShown(isShown);
}

void DecisionRow::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF inside = QRectF(rect()).adjusted(1, 1, -1, -1);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ui::palette().selection);
    painter.drawRoundedRect(inside, scaled(7), scaled(7));
    if (hasFocus()) {
        painter.setPen(QPen(ui::palette().accent, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(inside, scaled(7), scaled(7));
    }
}

void DecisionRow::resizeEvent(QResizeEvent* event)
{
    QFrame::resizeEvent(event);
    const bool isBeside = m_line->direction() == QBoxLayout::LeftToRight;
    const bool isNarrow = !standsBeside(width(), scaled(620), isBeside);
    m_line->setDirection(isNarrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_line->setSpacing(scaled(isNarrow ? 8 : 14));
}

void DecisionRow::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Space) {
        if (!event->isAutoRepeat()) {
            Q_EMIT skipAsked();
        }
    } else if (const int step = rowStep(event->key()); step != 0) {
        Q_EMIT stepAsked(step);
    } else {
        event->ignore();
    }
}

void DecisionRow::focusInEvent(QFocusEvent* event)
{
    QFrame::focusInEvent(event);
    update();
    Q_EMIT focused();
}

void DecisionRow::focusOutEvent(QFocusEvent* event)
{
    QFrame::focusOutEvent(event);
    update();
}

} // namespace plumule::ui

#include "moc_decision_row.cpp"
