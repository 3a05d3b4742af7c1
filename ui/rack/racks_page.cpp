#include "ui/rack/racks_page.h"

#include "core/journal/rack/rack_entries.h"
#include "core/journal/room/room_entries.h"

#include "ui/page/damaged_line.h"
#include "ui/rack/free_chart.h"
#include "ui/rack/legend_card.h"
#include "ui/rack/move_card.h"
#include "ui/rack/rack_view.h"
#include "ui/rack/tight_card.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/key_button.h"
#include "ui/widget/lone_key.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QPainter>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kSideWide = 288;
constexpr int kNarrow = 1000;

} // namespace

RacksPage::RacksPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
{
    build();
    wireSignals();
    arrange();
    showMove();
}

bool RacksPage::concerns(Concept about) const
{
    return about != Concept::Cost;
}

void RacksPage::build()
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(8));
    column->setSpacing(scaled(12));
    buildHead();
    m_damaged = damagedLine();
    m_columns = new QBoxLayout(QBoxLayout::LeftToRight);
    m_columns->setSpacing(scaled(14));
    m_columns->addWidget(buildRacks(), 1);
    m_columns->addWidget(buildSide());
    m_foot = new QVBoxLayout;
    column->addWidget(m_head);
    column->addWidget(m_damaged);
    column->addLayout(m_columns, 1);
    column->addLayout(m_foot);
    m_letter = new LoneKey(this);
}

void RacksPage::buildHead()
{
    m_head = new PageHead(tr("Racks"));
    m_head->setObjectName("racksHead");
    m_by = new Segmented({tr("Stage"), tr("Medium"), tr("Days to the cut")});
    m_by->setObjectName("shownBy");
    m_print = new KeyButton(tr("Print"), QLatin1Char('P'));
    m_print->setObjectName("printRacks");
    m_arrange = button(tr("Arrange…"));
    m_arrange->setObjectName("arrangeRacks");
    m_sow = new KeyButton(tr("Sow…"), QLatin1Char('S'), "primary");
    m_sow->setObjectName("sowFromRacks");
    const int high = m_print->sizeHint().height();
    for (int i = 0; i < 3; ++i) {
        m_by->segment(i)->setMinimumHeight(high);
    }
    m_arrange->setMinimumHeight(high);
    for (QWidget* each : std::initializer_list<QWidget*>{m_by, m_print, m_arrange, m_sow}) {
        m_head->addControl(each);
    }
}

QWidget* RacksPage::buildRacks()
{
    m_scroll = scrolling(m_main);
    m_scroll->setObjectName("racksScroll");
    m_main->setContentsMargins(0, 0, 0, 0);
    m_main->setSpacing(scaled(14));
    m_none = label(tr("No racks stand here yet: Arrange… sets them up."), "muted");
    m_none->setWordWrap(true);
    m_view = new RackView;
    m_free = new Card(tr("Places free each evening, four weeks"));
    m_free->wrapHeading();
    auto* words = label(tr("Hatched: taken by sowings that are planned."), "muted");
    words->setWordWrap(true);
    m_chart = new FreeChart;
    m_free->body()->addWidget(m_chart);
    m_free->body()->addWidget(words);
    m_main->addWidget(m_none);
    m_main->addWidget(m_view);
    m_main->addWidget(m_free);
    m_main->addStretch(1);
    return m_scroll;
}

QWidget* RacksPage::buildSide()
{
    m_sideScroll = scrolling(m_side);
    m_sideScroll->setObjectName("rackSide");
    m_side->setContentsMargins(0, 0, 0, 0);
    m_side->setSpacing(scaled(14));
    m_move = new MoveCard;
    m_legend = new LegendCard;
    m_tight = new TightCard;
    m_side->addWidget(m_move);
    m_side->addWidget(m_legend);
    m_side->addWidget(m_tight);
    m_side->addStretch(1);
    return m_sideScroll;
}

void RacksPage::wireSignals()
{
    connect(m_by, &Segmented::chosenByHand, this, [this](int index) {
        m_view->showBy(static_cast<ShownBy>(index));
        m_legend->show(m_racks, static_cast<ShownBy>(index));
    });
    connect(m_print, &QPushButton::clicked, this, &RacksPage::offerSheet);
    connect(m_arrange, &QPushButton::clicked, this, &RacksPage::rearrange);
    connect(m_sow, &QPushButton::clicked, this, &RacksPage::sow);
    connect(m_view, &RackView::trayAsked, this, &RacksPage::trayAsked);
    connect(m_view, &RackView::movesAsked, this, &RacksPage::move);
    connect(m_view, &RackView::carryChanged, this, &RacksPage::showMove);
    connect(m_view, &RackView::cursorMoved, this, [this](const QRect& area) {
        const QPoint centre = m_view->mapTo(m_scroll->widget(), area.center());
        m_scroll->ensureVisible(centre.x(), centre.y(), 0, area.height() / 2 + scaled(24));
    });
    connect(m_move, &MoveCard::putAsked, m_view, &RackView::putDown);
    connect(m_move, &MoveCard::leaveAsked, m_view, &RackView::leave);
    connect(m_move, &MoveCard::swapAsked, m_view, &RackView::swap);
    connect(m_move, &MoveCard::takeOffAsked, m_view, &RackView::takeOff);
    connect(m_letter, &LoneKey::stoodAlone, this, &RacksPage::pressLetter);
}

void RacksPage::reload()
{
    const auto layout = journal().room().layout();
    const auto racks = journal().racks().racks();
    if (!accept(layout) || !accept(racks)) {
        return;
    }
    m_room = layout->room;
    m_racks = *racks;
    m_damaged->setText(damagedWords(m_racks.damaged));
    m_damaged->setVisible(!m_racks.damaged.empty());
    m_view->show(m_racks, journal().clock().now());
    m_none->setVisible(m_racks.racks.empty());
    m_chart->show(m_racks.evenings, m_racks.places());
    m_free->setVisible(m_racks.places() > 0);
    m_legend->show(m_racks, static_cast<ShownBy>(m_by->chosen()));
    m_tight->show(m_racks.evenings);
    showWords();
    showMove();
}

void RacksPage::showWords()
{
    QStringList words{dayText(m_racks.today)};
    words << tr("%1 of %n place(s) taken", nullptr, m_racks.places()).arg(m_racks.taken());
    const int free = m_racks.places() - m_racks.taken();
    if (!m_racks.evenings.empty() && m_racks.evenings.front().free != free) {
        words << tr("%1 free this evening").arg(m_racks.evenings.front().free);
    }
    m_head->setSubtitle(words.join(QStringLiteral("  ·  ")));
}

void RacksPage::showMove()
{
    const bool isBusy = m_view->isCarrying() || !m_view->chosen().empty();
    m_move->show(*m_view);
    m_move->setVisible(!m_isNarrow || isBusy);
}

void RacksPage::begin()
{
    m_view->setFocus();
}

void RacksPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    arrange();
}

// Where there is no room at the side, what belongs there stands below the racks, and what is
// carried at the foot of the page, in sight wherever they are scrolled to.
void RacksPage::arrange()
{
    const bool isNarrow = width() < scaled(kNarrow);
    m_sideScroll->setFixedWidth(scaled(kSideWide));
    if (isNarrow == m_isNarrow) {
        return;
    }
    m_isNarrow = isNarrow;
    m_sideScroll->setVisible(!isNarrow);
    if (isNarrow) {
        m_foot->addWidget(m_move);
        m_main->insertWidget(m_main->count() - 1, m_legend);
        m_main->insertWidget(m_main->count() - 1, m_tight);
    } else {
        m_side->insertWidget(0, m_move);
        m_side->insertWidget(1, m_legend);
        m_side->insertWidget(2, m_tight);
    }
    m_move->setBeside(isNarrow);
    showMove();
}

} // namespace plumule::ui

#include "moc_racks_page.cpp"
