#include "ui/trial/plan_view.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/trial/draw.h"
#include "ui/chart/chart_view.h"
#include "ui/page/undoing.h"
#include "ui/paper/printing.h"
#include "ui/trial/layout_grid.h"
#include "ui/trial/plan_form.h"
#include "ui/trial/plan_text.h"
#include "ui/trial/prep_sheet.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/plain_words.h"
#include "ui/widget/text_table.h"
#include "ui/widget/theme.h"

#include <QHeaderView>
#include <QMenu>
#include <QScrollArea>
#include <QTableView>
#include <QTimer>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr int kTypingPauseMs = 150;
constexpr int kHighestDraw = 99999;

} // namespace

PlanView::PlanView(Journal& journal, Services services, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
    , m_services(services)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(12));
    buildHead();
    column->addWidget(m_head);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner), 1);
    m_columns = new QBoxLayout(QBoxLayout::LeftToRight);
    m_columns->setSpacing(scaled(16));
    m_columns->addWidget(buildQuestion(), 5);
    auto* right = new QWidget;
    auto* stack = new QVBoxLayout(right);
    stack->setContentsMargins(0, 0, 0, 0);
    stack->setSpacing(scaled(14));
    stack->addWidget(buildLayoutCard());
    stack->addWidget(buildSupplies());
    stack->addStretch(1);
    m_columns->addWidget(right, 6);
    inner->addLayout(m_columns, 1);
    m_later = new QTimer(this);
    m_later->setSingleShot(true);
    m_later->setInterval(kTypingPauseMs);
    wireSignals();
}

void PlanView::buildHead()
{
    m_head = new PageHead(tr("New trial"));
    m_head->setSubtitle(
        tr("Ask one question, grow enough trays to answer it, and let chance place them."));
    auto* back = button(tr("All trials"));
    back->setObjectName("planBack");
    m_remove = button(tr("Remove"), "danger");
    m_remove->setObjectName("planRemove");
    m_prepare = button(tr("What to prepare"));
    m_prepare->setObjectName("planPrepare");
    setRole(m_prepare, "menu");
    auto* sheets = new QMenu(m_prepare);
    connect(sheets->addAction(tr("Save as PDF…")), &QAction::triggered, this,
            &PlanView::savePrepSheet);
    connect(sheets->addAction(tr("Print…")), &QAction::triggered, this,
            &PlanView::printThePrepSheet);
    m_prepare->setMenu(sheets);
    m_keep = button(tr("Keep the plan"));
    m_keep->setObjectName("planKeep");
    m_sow = button(tr("Sow"), "primary");
    m_sow->setObjectName("planSow");
    for (QPushButton* each : {back, m_remove, m_prepare, m_keep, m_sow}) {
        m_head->addControl(each);
    }
    connect(back, &QPushButton::clicked, this, &PlanView::leave);
}

QWidget* PlanView::buildQuestion()
{
    auto* card = new Card;
    m_form = new PlanForm(m_journal);
    card->body()->addWidget(m_form);
    m_powerTitle = label(QString(), "heading");
    m_powerTitle->setObjectName("powerTitle");
    m_power = new ChartView;
    m_power->setObjectName("powerChart");
    m_power->setFixedHeight(scaled(175));
    m_outlook = label(QString(), "muted");
    m_outlook->setObjectName("outlook");
    m_outlook->setWordWrap(true);
    card->body()->addWidget(m_powerTitle);
    card->body()->addWidget(m_power);
    card->body()->addWidget(m_outlook);
    card->body()->addStretch(1);
    return card;
}

QWidget* PlanView::buildLayoutCard()
{
    auto* card = new Card;
    m_layoutTitle = label(QString(), "heading");
    m_layoutTitle->setObjectName("layoutTitle");
    m_layoutTitle->setWordWrap(true);
    m_layoutWords = label(QString(), "muted");
    m_layoutWords->setObjectName("layoutWords");
    m_layoutWords->setWordWrap(true);
    m_grid = new LayoutGrid;
    m_grid->setObjectName("planLayout");
    m_number = new NumberField;
    m_number->setObjectName("drawNumber");
    m_number->setAccessibleName(tr("Number of the draw"));
    m_number->setRange(1, 1e12);
    m_number->setMaximumWidth(scaled(120));
    m_again = button(tr("Draw again"));
    m_again->setObjectName("drawAgain");
    m_move = button(tr("Move to…"));
    m_move->setObjectName("moveTile");
    setRole(m_move, "menu");
    m_free = new QMenu(m_move);
    m_move->setMenu(m_free);
    auto* tools = new QWidget;
    auto* row = new FlowLayout(tools);
    auto* numberName = label(tr("Draw"), "muted");
    numberName->setMinimumHeight(m_number->sizeHint().height());
    row->addWidget(numberName);
    row->addWidget(m_number);
    row->addWidget(m_again);
    row->addWidget(m_move);
    card->body()->addWidget(m_layoutTitle);
    card->body()->addWidget(m_grid);
    card->body()->addWidget(m_layoutWords);
    card->body()->addWidget(tools);
    return card;
}

QWidget* PlanView::buildSupplies()
{
    auto* both = new QWidget;
    auto* column = new QVBoxLayout(both);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(14));
    auto* card = new Card(tr("What to prepare"));
    m_supplies = new TextTable(this);
    m_supplyTable = plainTable(m_supplies, "supplies", tr("What to prepare"));
    m_supplyWords = label(QString(), "muted");
    m_supplyWords->setObjectName("supplyWords");
    m_supplyWords->setWordWrap(true);
    card->body()->addWidget(m_supplyTable);
    card->body()->addWidget(m_supplyWords);
    m_fairness = new Card(tr("Would this be a fair comparison?"), "caution");
    m_fairnessWords = label(QString());
    m_fairnessWords->setObjectName("planFairness");
    m_fairnessWords->setWordWrap(true);
    m_fairness->body()->addWidget(m_fairnessWords);
    column->addWidget(m_fairness);
    column->addWidget(card);
    return both;
}

void PlanView::wireSignals()
{
    connect(m_form, &PlanForm::changed, m_later, qOverload<>(&QTimer::start));
    connect(m_number, &QLineEdit::textEdited, m_later, qOverload<>(&QTimer::start));
    connect(m_later, &QTimer::timeout, this, &PlanView::follow);
    connect(m_again, &QPushButton::clicked, this, &PlanView::drawAgain);
    connect(m_grid, &LayoutGrid::exchangeAsked, this, &PlanView::exchange);
    connect(m_grid, &LayoutGrid::chosenChanged, this, &PlanView::fillFreePlaces);
    connect(m_keep, &QPushButton::clicked, this, &PlanView::keep);
    connect(m_form, &FormPanel::entered, m_keep, &QPushButton::click);
    connect(m_sow, &QPushButton::clicked, this, &PlanView::askToSow);
    connect(m_remove, &QPushButton::clicked, this, &PlanView::remove);
}

void PlanView::remove()
{
    m_services.ask.confirm(
        this, tr("Remove the plan"),
        tr("Remove trial %1 and its plan?").arg(QString::fromStdString(m_draft.trial.code)),
        tr("Remove"), [this] {
            const auto removed = m_journal.trials().remove(m_draft.trial.id);
            if (!removed) {
                m_services.messages.refuse(sentence(removed.error()));
                return;
            }
            tellLast(m_journal, m_services);
            Q_EMIT left();
        });
}

UnitText PlanView::units() const
{
    const auto layout = m_journal.room().layout();
    return UnitText(layout ? layout->room.units : UnitSystem::Metric);
}

void PlanView::begin(const TrialDraft& draft)
{
    m_draft = draft;
    m_form->fillChoices();
    m_form->setDraft(draft);
    m_number->setNumber(static_cast<double>(draft.plan.drawNumber), 0);
    const bool isKept = draft.trial.id.isStored();
    m_head->setTitle(isKept ? tr("Trial %1, planned").arg(QString::fromStdString(draft.trial.code))
                            : tr("New trial"));
    m_remove->setVisible(isKept);
    follow();
    m_begun = m_draft;
    m_form->settle();
}

bool PlanView::hasUnsaved() const
{
    return m_form->isChanged() || m_draft.trays != m_begun.trays ||
           m_draft.plan.drawNumber != m_begun.plan.drawNumber;
}

void PlanView::leave()
{
    if (!hasUnsaved()) {
        Q_EMIT left();
        return;
    }
    m_services.ask.unsaved(
        this, tr("What you changed in this plan is not kept. Keep it first?"),
        [this] {
            if (keep()) {
                Q_EMIT left();
            }
        },
        [this] { Q_EMIT left(); });
}

void PlanView::reload()
{
    m_form->fillChoices();
    follow();
}

// Brings everything beside the fields up to what they say now.
void PlanView::follow()
{
    m_later->stop();
    auto typed = m_form->draft();
    const auto number = m_number->number();
    m_number->markWrong(!number);
    if (!typed || !number) {
        m_fault = typed ? number.error() : typed.error();
        showLayout();
        return;
    }
    typed->plan.drawNumber = static_cast<std::int64_t>(number->value_or(1));
    drawPlaces(*typed);
    showAnswer();
    showLayout();
    showSupplies();
}

// Places are drawn anew only where what they depend on has changed, so that moves by hand stay.
void PlanView::drawPlaces(const TrialDraft& asked)
{
    const auto sameDraw = [](const TrialDraft& a, const TrialDraft& b) {
        return a.treatments == b.treatments && a.plan.design == b.plan.design &&
               a.plan.blocks == b.plan.blocks && a.plan.traysEach == b.plan.traysEach &&
               a.plan.drawNumber == b.plan.drawNumber && a.plan.sowAt() == b.plan.sowAt();
    };
    const bool isKept = sameDraw(asked, m_draft) && !m_draft.trays.empty();
    const std::vector<PlannedTray> placed = m_draft.trays;
    m_draft = asked;
    m_fault.reset();
    if (isKept) {
        m_draft.trays = placed;
        return;
    }
    const auto drawn = m_journal.trials().draw(m_draft);
    if (drawn) {
        m_draft.trays = *drawn;
    } else {
        m_fault = drawn.error();
    }
}

void PlanView::drawAgain()
{
    const auto before = m_draft.plan.drawNumber;
    auto number = m_journal.clock().utcMilliseconds() % kHighestDraw + 1;
    if (number == before) {
        number = number % kHighestDraw + 1;
    }
    m_number->setNumber(static_cast<double>(number), 0);
    follow();
}

void PlanView::exchange(int tile, int other)
{
    const auto place = m_draft.trays[static_cast<std::size_t>(other)].place;
    if (place) {
        moveTo(tile, *place);
    }
}

void PlanView::moveTo(int tile, PlaceId place)
{
    const auto moved = moveByHand(m_draft.trays, static_cast<std::size_t>(tile), place);
    if (!moved) {
        m_services.messages.refuse(sentence(moved.error()));
        return;
    }
    showAnswer();
    showLayout();
}

void PlanView::fillFreePlaces(int tile)
{
    m_free->clear();
    m_move->setEnabled(tile >= 0);
    if (tile < 0) {
        return;
    }
    for (const Spot& spot : m_journal.trials().freePlaces(m_draft).value_or(std::vector<Spot>())) {
        const bool isTaken =
            std::any_of(m_draft.trays.begin(), m_draft.trays.end(),
                        [&](const PlannedTray& each) { return each.place == spot.place; });
        if (!isTaken) {
            connect(m_free->addAction(plainEntry(nameOf(std::optional(spot)))), &QAction::triggered,
                    this, [this, tile, place = spot.place] { moveTo(tile, place); });
        }
    }
    m_move->setEnabled(!m_free->isEmpty());
}

void PlanView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    m_columns->setDirection(width() >= scaled(900) ? QBoxLayout::LeftToRight
                                                   : QBoxLayout::TopToBottom);
}

} // namespace plumule::ui

#include "moc_plan_view.cpp"
