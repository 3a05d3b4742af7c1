// Part of ui/watering/round_page.h: what it is made of.
#include "ui/watering/round_page.h"

#include "ui/cost/work_timer_button.h"
#include "ui/watering/decision_row.h"
#include "ui/watering/forgotten_bar.h"
#include "ui/watering/hand_bar.h"
#include "ui/watering/round_head.h"
#include "ui/watering/round_list.h"
#include "ui/watering/round_side.h"
#include "ui/widget/lone_key.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QScrollBar>

namespace plumule::ui {

void RoundPage::build()
{
    setFocusPolicy(Qt::ClickFocus);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(8));
    column->setSpacing(scaled(14));
    // Each within its own from the first, so that its style is worked out once.
    m_head = new RoundHead(this);
    m_timer = new WorkTimerButton(journal(), services(), LabourKind::Watering, m_head);
    m_head->addControl(m_timer);
    QVBoxLayout* inner = nullptr;
    m_scroll = scrolling(inner);
    m_scroll->setParent(this);
    m_scroll->setObjectName("roundScroll");
    m_columns = new QBoxLayout(QBoxLayout::LeftToRight);
    m_columns->setSpacing(scaled(18));
    m_list = new RoundList(m_scroll->widget());
    m_side = new RoundSide(m_scroll->widget());
    m_forgotten = new ForgottenBar(m_scroll->widget());
    inner->addWidget(m_forgotten);
    m_columns->addWidget(m_list, 1);
    m_columns->addWidget(m_side, 0);
    inner->addLayout(m_columns);
    inner->addStretch(1);
    m_panel = new TrayPanel(m_list);
    m_panel->hide();
    m_damaged = damagedLine();
    column->addWidget(m_head);
    column->addWidget(buildDueBar());
    column->addWidget(m_damaged);
    column->addWidget(m_scroll, 1);
    m_hand = new HandBar(this);
    column->addWidget(m_hand);
    m_letter = new LoneKey(this);
}

QWidget* RoundPage::buildDueBar()
{
    m_due = new QFrame(this);
    m_due->setObjectName("dueBar");
    m_due->setProperty("role", "caution");
    auto* row = new QHBoxLayout(m_due);
    row->setContentsMargins(scaled(16), scaled(6), scaled(8), scaled(6));
    m_dueWords = label(QString(), "strong");
    m_dueWords->setObjectName("dueWords");
    m_dueWords->setWordWrap(true);
    auto* go = button(tr("Go to it"), "primary");
    go->setObjectName("goToDue");
    go->setMinimumHeight(scaled(44));
    go->setFocusPolicy(Qt::TabFocus);
    row->addWidget(m_dueWords, 1);
    row->addWidget(go);
    connect(go, &QPushButton::clicked, this, [this] { choose(presentKey()); });
    m_due->hide();
    return m_due;
}

void RoundPage::wireSignals()
{
    connect(m_head, &RoundHead::slotChosen, this, [this](Slot slot) {
        choose({m_round.date, slot});
    });
    connect(m_head, &RoundHead::dayStepped, this, [this](int days) {
        choose({m_round.date + days, m_round.slot});
    });
    connect(m_head, &RoundHead::presentAsked, this, [this] { choose(presentKey()); });
    connect(m_head, &RoundHead::printAsked, this, &RoundPage::offerSheet);
    connect(m_head, &RoundHead::undoAsked, this, [this] { undoLast(); });
    connect(m_side, &RoundSide::readingNoted, this,
            [this](WaterKind water, std::optional<double> ph, std::optional<double> ec) {
                if (keepReading(water, ph, ec)) {
                    m_side->closeReading();
                    tellLast();
                }
            });
    connect(m_side, &RoundSide::readingClosed, this, [this] { m_list->regainFocus(); });
    connect(m_panel, &TrayPanel::saveAsked, this, &RoundPage::saveDetails);
    connect(m_panel, &TrayPanel::closeAsked, this, &RoundPage::leaveDetails);
    connect(m_panel, &TrayPanel::photoAsked, this, [this] { attachPhoto(m_panel->tray()); });
    connect(m_panel, &TrayPanel::sheetAsked, this, [this] { Q_EMIT trayAsked(m_panel->tray()); });
    connect(m_letter, &LoneKey::stoodAlone, this, &RoundPage::pressLetter);
    connect(m_head, &RoundHead::decisionsAlone, this, &RoundPage::showAlone);
    connect(m_forgotten, &ForgottenBar::handAsked, this, &RoundPage::takeInHand);
}

void RoundPage::wireHand()
{
    connect(m_hand, &HandBar::tickAsked, this, &RoundPage::tickInHand);
    connect(m_hand, &HandBar::notNeededAsked, this, &RoundPage::needNothingInHand);
    // A press beside the rows gave the focus to the page; what is in hand has it back.
    connect(m_hand, &HandBar::readyAsked, this, [this] {
        m_list->regainFocus();
        decide(Answer::Ready);
    });
    connect(m_hand, &HandBar::notYetAsked, this, [this] {
        m_list->regainFocus();
        decide(Answer::NotYet);
    });
    connect(m_hand, &HandBar::partAsked, this, &RoundPage::openDetailsByKey);
    connect(m_hand, &HandBar::photoAsked, this, &RoundPage::photographInHand);
    connect(m_hand, &HandBar::putDownAsked, this, &RoundPage::putDown);
}

void RoundPage::wireList()
{
    connect(m_list, &RoundList::tickAsked, this, &RoundPage::tick);
    connect(m_list, &RoundList::shelfAsked, this, &RoundPage::tickShelf);
    connect(m_list, &RoundList::detailsAsked, this,
            [this](TrayId tray) { openDetails(tray, TrayPanel::Part::Note); });
    connect(m_list, &RoundList::notNeededAsked, this, [this](TrayId tray) { needNothing({tray}); });
    connect(m_list, &RoundList::readyAsked, this,
            [this](DecisionRow* row) { beReady(row, row->trays()); });
    connect(m_list, &RoundList::notYetAsked, this,
            [this](DecisionRow* row) { putOff(row, row->trays()); });
    connect(m_list, &RoundList::takenApart, this, &RoundPage::readRound, Qt::QueuedConnection);
    connect(m_list, &RoundList::currentChanged, this, [this](QWidget* row) {
        showHand();
        if (row != nullptr && row->hasFocus()) {
            showInView(row);
        }
    });
}

} // namespace plumule::ui
