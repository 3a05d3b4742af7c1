#include "ui/watering/round_head.h"

#include "ui/watering/round_text.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/key_button.h"
#include "ui/widget/plain_words.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHBoxLayout>
#include <QProgressBar>

namespace plumule::ui {
namespace {

constexpr int kDaysAhead = 14;

QPushButton* stepButton(const QString& sign, const QString& name, const char* objectName)
{
    auto* step = button(sign, "quiet");
    step->setObjectName(objectName);
    step->setAccessibleName(name);
    step->setToolTip(name);
    step->setFont(uiFont(1.5));
    step->setFixedWidth(scaled(34));
    return step;
}

QString progressText(const Round& round, std::optional<int> secondsATray)
{
    const int all = round.toDoCount();
    const int done = round.doneCount();
    QStringList parts;
    if (all > 0) {
        parts << RoundHead::tr("%1 of %n tray(s) done", nullptr, all).arg(done);
    }
    if (all > done && secondsATray.value_or(0) > 0) {
        const int minutes = ((all - done) * *secondsATray + 59) / 60;
        parts << (minutes == 1 ? RoundHead::tr("about a minute left")
                               : RoundHead::tr("about %n minute(s) left", nullptr, minutes));
    }
    if (!round.decisions.empty()) {
        parts << RoundHead::tr("%1 to decide").arg(round.decisions.size());
    }
    return parts.join(QStringLiteral("  ·  "));
}

} // namespace

RoundHead::RoundHead(QWidget* parent)
    : QWidget(parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(14));
    m_row = new QBoxLayout(QBoxLayout::TopToBottom);
    m_row->setSpacing(scaled(10));
    m_row->addWidget(buildTitle(), 1);
    m_row->addWidget(buildControls(), 0, Qt::AlignBottom);
    m_progress = new QProgressBar;
    m_progress->setObjectName("roundProgress");
    m_progress->setTextVisible(false);
    m_progress->setAccessibleName(tr("Trays done"));
    column->addLayout(m_row);
    column->addWidget(m_progress);
}

QWidget* RoundHead::buildTitle()
{
    auto* block = new QWidget(this);
    auto* column = new QVBoxLayout(block);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(2));
    m_title = label(QString(), "title");
    m_title->setObjectName("pageTitle");
    m_before = stepButton(QStringLiteral("‹"), tr("The day before"), "dayBefore");
    m_after = stepButton(QStringLiteral("›"), tr("The day after"), "dayAfter");
    m_present = button(tr("Back to now"), "quiet");
    m_present->setObjectName("backToNow");
    auto* first = new QHBoxLayout;
    first->setSpacing(0);
    first->addWidget(m_title);
    first->addSpacing(scaled(6));
    first->addWidget(m_before);
    first->addWidget(m_after);
    first->addStretch(1);
    first->addWidget(m_present);
    m_subtitle = label(QString(), "subtitle");
    m_subtitle->setObjectName("pageSubtitle");
    m_subtitle->setWordWrap(true);
    column->addLayout(first);
    column->addWidget(m_subtitle);
    connect(m_before, &QPushButton::clicked, this, [this] { Q_EMIT dayStepped(-1); });
    connect(m_after, &QPushButton::clicked, this, [this] { Q_EMIT dayStepped(1); });
    connect(m_present, &QPushButton::clicked, this, &RoundHead::presentAsked);
    return block;
}

QWidget* RoundHead::buildControls()
{
    auto* block = new QWidget(this);
    m_controls = new FlowLayout(block);
    FlowLayout* row = m_controls;
    row->setSpacing(scaled(10));
    m_decisions = new KeyButton(tr("Decisions alone"), 'L', "quiet");
    m_decisions->setObjectName("decisionsAlone");
    m_decisions->setCheckable(true);
    m_slots = new Segmented({tr("Morning"), tr("Evening")});
    m_slots->setObjectName("slot");
    m_print = new KeyButton(tr("Print sheet"), 'P');
    m_print->setObjectName("printSheet");
    m_undo = new KeyButton(tr("Undo"), 'U');
    m_undo->setObjectName("undo");
    for (int i = 0; i < 2; ++i) {
        m_slots->segment(i)->setMinimumHeight(m_undo->sizeHint().height());
    }
    for (QWidget* each : std::initializer_list<QWidget*>{m_decisions, m_slots, m_print, m_undo}) {
        row->addWidget(each);
    }
    connect(m_decisions, &QPushButton::toggled, this, [this](bool isAlone) {
        m_decisions->setText(isAlone ? tr("All trays") : tr("Decisions alone"));
        Q_EMIT decisionsAlone(isAlone);
    });
    connect(m_slots, &Segmented::chosenByHand, this,
            [this](int index) { Q_EMIT slotChosen(index == 0 ? Slot::Morning : Slot::Evening); });
    connect(m_print, &QPushButton::clicked, this, &RoundHead::printAsked);
    connect(m_undo, &QPushButton::clicked, this, &RoundHead::undoAsked);
    return block;
}

void RoundHead::showRound(const Round& round, RoundKey present, std::optional<int> secondsATray)
{
    const RoundKey key{round.date, round.slot};
    m_title->setText(titleOf(key));
    m_slots->choose(round.slot == Slot::Morning ? 0 : 1);
    QString words = dayText(round.date);
    if (round.date == present.date - 1) {
        words = tr("Yesterday, %1").arg(words);
    } else if (round.date == present.date + 1) {
        words = tr("Tomorrow, %1").arg(words);
    }
    if (key > present) {
        words += QStringLiteral("  ·  ") + tr("as planned");
    }
    const QString progress = progressText(round, secondsATray);
    m_subtitle->setText(progress.isEmpty() ? words : words + QStringLiteral("  ·  ") + progress);
    m_present->setVisible(key != present);
    m_decisions->setVisible(!round.decisions.empty() || m_decisions->isChecked());
    m_after->setEnabled(round.date < present.date + kDaysAhead);
    const int all = round.toDoCount();
    m_progress->setRange(0, qMax(1, all));
    m_progress->setValue(round.doneCount());
}

void RoundHead::setUndo(const QString& undoes)
{
    m_undo->setEnabled(!undoes.isEmpty());
    m_undo->setToolTip(undoes.isEmpty() ? QString() : plainHint(tr("Takes back: %1").arg(undoes)));
}

void RoundHead::toggleDecisions()
{
    if (m_decisions->isVisible()) {
        m_decisions->toggle();
    }
}

void RoundHead::showAll()
{
    m_decisions->setChecked(false);
}

QWidget* RoundHead::printButton() const
{
    return m_print;
}

void RoundHead::addControl(QWidget* control)
{
    m_controls->addWidget(control);
}

void RoundHead::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    m_row->setDirection(width() < scaled(900) ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

} // namespace plumule::ui

#include "moc_round_head.cpp"
