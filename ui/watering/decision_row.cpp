#include "ui/watering/decision_row.h"

#include "ui/watering/key_button.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QPainter>

namespace plumule::ui {

DecisionRow::DecisionRow(const StageDecision& decision, QWidget* parent)
    : QFrame(parent)
    , m_decision(decision)
{
    const QString code = QString::fromStdString(decision.code);
    setObjectName("decision" + code);
    setFocusPolicy(Qt::StrongFocus);
    build();
    m_ready->setObjectName("ready" + code);
    m_notYet->setObjectName("notYet" + code);
    word();
    setKeysShown(false);
    connect(m_ready, &QPushButton::clicked, this, &DecisionRow::readyAsked);
    connect(m_notYet, &QPushButton::clicked, this, &DecisionRow::notYetAsked);
}

void DecisionRow::build()
{
    m_line = new QBoxLayout(QBoxLayout::LeftToRight, this);
    m_line->setContentsMargins(scaled(10), scaled(10), scaled(8), scaled(10));
    m_line->setSpacing(scaled(14));

    m_names = new QWidget;
    auto* names = new QGridLayout(m_names);
    names->setContentsMargins(0, 0, 0, 0);
    names->setHorizontalSpacing(scaled(12));
    names->setVerticalSpacing(scaled(2));
    m_code = label(QString(), "code");
    m_variety = label(QString());
    m_variety->setWordWrap(true);
    m_where = label(QString(), "muted");
    m_late = label(QString(), "warning");
    names->addWidget(m_code, 0, 0);
    names->addWidget(m_variety, 0, 1);
    names->addWidget(m_where, 1, 0, 1, 2);
    names->addWidget(m_late, 2, 0, 1, 2);
    names->setColumnStretch(1, 1);

    m_cue = label(QString());
    m_cue->setWordWrap(true);

    auto* answers = new QHBoxLayout;
    answers->setSpacing(scaled(10));
    m_ready = new KeyButton(QString(), 'R', "primary");
    m_notYet = new KeyButton(tr("Not yet"), 'N');
    answers->addWidget(m_ready);
    answers->addWidget(m_notYet);
    answers->addStretch(1);

    m_line->addWidget(m_names, 0);
    m_line->addWidget(m_cue, 1);
    m_line->addLayout(answers, 0);
}

void DecisionRow::setDecision(const StageDecision& decision)
{
    m_decision = decision;
    word();
}

void DecisionRow::word()
{
    const bool isHarvest = !m_decision.to.has_value();
    m_code->setText(QString::fromStdString(m_decision.code));
    m_variety->setText(QString::fromStdString(m_decision.variety));
    m_where->setText(tr("%1 · day %2").arg(nameOf(m_decision.spot)).arg(m_decision.day));
    const QString late = latenessText(m_decision);
    m_late->setText(late);
    m_late->setVisible(!late.isEmpty());
    m_cue->setText(cueText(m_decision));
    m_ready->setText(isHarvest ? tr("To the scale") : tr("Ready"));
    m_notYet->setToolTip(isHarvest ? tr("Asks again in a day.")
                                   : tr("Asks again next round; all that follows moves with it."));
    const QString name = tr("%1, %2: %3").arg(m_code->text(), m_variety->text(), m_cue->text());
    setAccessibleName(name);
    m_ready->setAccessibleName(tr("%1 %2").arg(m_code->text(), m_ready->text()));
    m_notYet->setAccessibleName(tr("%1 %2").arg(m_code->text(), m_notYet->text()));
}

void DecisionRow::setKeysShown(bool isShown)
{
    m_ready->setKeyShown(isShown);
    m_notYet->setKeyShown(isShown);
}

void DecisionRow::paintEvent(QPaintEvent*)
{
    if (!hasFocus()) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(ui::palette().accent, 2));
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), scaled(7), scaled(7));
}

void DecisionRow::resizeEvent(QResizeEvent* event)
{
    QFrame::resizeEvent(event);
    const bool isBeside = m_line->direction() == QBoxLayout::LeftToRight;
    const bool isNarrow = !standsBeside(width(), scaled(660), isBeside);
    m_line->setDirection(isNarrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_line->setSpacing(scaled(isNarrow ? 8 : 14));
    m_names->setMinimumWidth(isNarrow ? 0 : scaled(190));
    m_names->setMaximumWidth(isNarrow ? QWIDGETSIZE_MAX : scaled(210));
}

void DecisionRow::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
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
