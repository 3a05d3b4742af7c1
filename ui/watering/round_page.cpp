#include "ui/watering/round_page.h"

#include "core/journal/cost/cost_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/stock/stock_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "ui/page/damaged_line.h"
#include "ui/stock/stock_text.h"
#include "ui/watering/forgotten_bar.h"
#include "ui/watering/round_head.h"
#include "ui/watering/round_list.h"
#include "ui/watering/round_side.h"
#include "ui/watering/round_text.h"
#include "ui/watering/shelf_card.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QScrollBar>
#include <QTimer>

#include <algorithm>
#include <utility>

namespace plumule::ui {

RoundPage::RoundPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
{
    build();
    wireSignals();
    wireList();
    wireHand();
    m_listener = journal.addListener([this](const std::vector<Change>& changes) {
        const bool isMine = std::any_of(changes.begin(), changes.end(), [this](const Change& each) {
            return concerns(each.about);
        });
        m_isStockStale =
            m_isStockStale || std::any_of(changes.begin(), changes.end(), [](const Change& each) {
                return each.about == Concept::Stock || each.about == Concept::Variety ||
                       each.about == Concept::Medium;
            });
        if (isMine) {
            m_isBehind = m_isBehind || (!m_isTicking && !areOfRows(changes));
            noteChange();
            noteBadge();
        }
    });
    // What it asks of a window before it is shown is what it needs in a narrow one.
    arrange();
}

RoundPage::~RoundPage()
{
    journal().removeListener(m_listener);
}

bool RoundPage::concerns(Concept about) const
{
    return about == Concept::Watering || about == Concept::Tray || about == Concept::Room ||
           about == Concept::Medium || about == Concept::Variety || about == Concept::Harvest ||
           about == Concept::Cost || about == Concept::Stock;
}

RoundKey RoundPage::presentKey() const
{
    return roundOf(m_room, journal().clock().now());
}

// Where nothing but ticks came and went since, their rows alone.
void RoundPage::reload()
{
    const std::set<TrayId> ticked = std::exchange(m_ticked, {});
    const bool areRowsEnough =
        !ticked.empty() && !m_isBehind && m_shown &&
        std::all_of(ticked.begin(), ticked.end(), [this](TrayId tray) { return showTicked(tray); });
    if (areRowsEnough) {
        showCounts();
        showDue();
        showHand();
    } else {
        readRound();
    }
}

void RoundPage::take(const Round& round)
{
    m_round = round;
    m_waterings.clear();
    for (const RoundTray& tray : m_round.trays) {
        if (tray.given) {
            m_waterings.emplace(tray.given->id.value, tray.tray);
        }
    }
}

void RoundPage::readRound()
{
    m_isBehind = false;
    m_ticked.clear();
    const auto layout = journal().room().layout();
    if (!accept(layout)) {
        return;
    }
    m_layout = *layout;
    m_room = m_layout.room;
    const RoundKey key = m_shown.value_or(presentKey());
    const auto round = journal().watering().round(key.date, key.slot);
    if (!accept(round)) {
        return;
    }
    m_shown = key;
    take(*round);
    m_secondsATray.reset();
    if (const auto labour = journal().costs().labour()) {
        for (const LabourTask& task : *labour) {
            if (task.kind == LabourKind::Watering) {
                m_secondsATray = task.seconds;
            }
        }
    }
    const auto free = journal().room().freeSpots();
    const UnitText words(m_room.units);
    m_damaged->setText(damagedWords(m_round.damaged));
    m_damaged->setVisible(!m_round.damaged.empty());
    m_list->showRound(m_round, words, nothingText());
    m_side->showRound(m_round, words, journal().clock().today(),
                      free ? *free : std::vector<Spot>());
    askLowStock();
    dropDetails();
    showCounts();
    showDue();
    showHand();
}

// A tick that is taken back, or done again, is told by its watering alone.
bool RoundPage::areOfRows(const std::vector<Change>& changes)
{
    std::set<TrayId> trays;
    for (const Change& change : changes) {
        const auto known = m_waterings.find(change.id);
        if (known == m_waterings.end()) {
            return false;
        }
        trays.insert(known->second);
    }
    m_ticked.merge(trays);
    return true;
}

void RoundPage::showCounts()
{
    m_head->showRound(m_round, presentKey(), m_secondsATray);
    m_forgotten->showRound(m_round);
    showUndo();
    if (shownKey() == presentKey()) {
        showBadge(m_round);
    }
}

// Weeks of trays are read for it: once a round and where the stock itself changed, not at each
// tick, and after the round is seen.
void RoundPage::askLowStock()
{
    m_isLowStockAsked = m_isStockStale || m_stockReadFor != presentKey();
    if (m_isLowStockAsked) {
        update();
    }
}

void RoundPage::paintEvent(QPaintEvent* event)
{
    Page::paintEvent(event);
    if (std::exchange(m_isLowStockAsked, false)) {
        QTimer::singleShot(0, this, &RoundPage::showLowStock);
    }
}

void RoundPage::showLowStock()
{
    const auto low = journal().stock().low();
    m_side->sayLow(low ? lowSentence(*low) : QString());
    m_isStockStale = false;
    m_stockReadFor = presentKey();
}

// Only where the shown round was the present one: who looked up another knows of it.
void RoundPage::showDue()
{
    const RoundKey present = presentKey();
    m_isPresent = m_isPresent || shownKey() == present;
    const bool isDue = m_isPresent && shownKey() < present;
    if (isDue) {
        m_dueWords->setText(
            tr("This round was %1. A newer one is due: %2.")
                .arg(roundWords(shownKey(), present.date), roundWords(present, present.date)));
    }
    m_due->setVisible(isDue);
}

bool RoundPage::hasUnsaved() const
{
    return m_list->hasPanel() && m_panel->isChanged();
}

void RoundPage::showAlone(bool isAlone)
{
    m_list->setDecisionsAlone(isAlone);
    readRound();
    m_scroll->verticalScrollBar()->setValue(0);
    m_list->focusFirstOpen();
}

QString RoundPage::nothingText() const
{
    if (m_round.toDoCount() > 0) {
        return {};
    }
    const RoundKey key = shownKey();
    const RoundKey present = presentKey();
    const QString when = roundWords(key, present.date);
    if (key < present) {
        return tr("No tray needed water %1.").arg(when);
    }
    const QString none = tr("No tray needs water %1.").arg(when);
    const bool isRoomEmpty =
        m_round.tomorrow.freePlaces == m_round.tomorrow.places && m_round.decisions.empty();
    return isRoomEmpty
               ? none + ' ' + tr("Trays that are sown on the Trays page are asked for here.")
               : none;
}

void RoundPage::choose(RoundKey key)
{
    if (m_list->hasPanel()) {
        saveDetails();
        if (m_list->hasPanel()) {
            return;
        }
    }
    m_shown = key;
    m_isPresent = key == presentKey();
    readRound();
    m_scroll->verticalScrollBar()->setValue(0);
    if (m_isPresent) {
        m_list->focusFirstOpen();
    } else {
        m_list->setFirstCurrent();
    }
}

void RoundPage::showUndo()
{
    const auto next = journal().nextUndo();
    m_head->setUndo(next ? sentence(*next, m_room.units) : QString());
}

void RoundPage::showBadge(const Round& present)
{
    const int open = present.toDoCount() - present.doneCount();
    Q_EMIT badgeChanged(open + static_cast<int>(present.decisions.size()));
}

// The badge is of the present round, whichever is shown, and in sight where the page is not.
void RoundPage::noteBadge()
{
    if (m_isBadgeQueued) {
        return;
    }
    m_isBadgeQueued = true;
    QMetaObject::invokeMethod(
        this,
        [this] {
            m_isBadgeQueued = false;
            if (isVisible() && shownKey() == presentKey()) {
                return; // shown by reload()
            }
            if (const auto present = journal().watering().roundNow()) {
                showBadge(*present);
            }
        },
        Qt::QueuedConnection);
}

void RoundPage::followClock()
{
    m_isBehind = true;
    noteChange();
    noteBadge();
}

void RoundPage::begin()
{
    const bool isOld = m_shown && *m_shown != presentKey();
    if (isOld && isVisible()) {
        choose(presentKey());
    } else if (isOld) {
        m_shown.reset();
    }
    setFocus();
    m_list->focusFirstOpen();
}

void RoundPage::showInView(QWidget* part)
{
    bringIntoView(*part);
}

void RoundPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    arrange();
}

void RoundPage::arrange()
{
    const bool wasBeside = m_columns->direction() == QBoxLayout::LeftToRight;
    const bool isNarrow = !standsBeside(width() - scaled(56), scaled(720), wasBeside);
    m_columns->setDirection(isNarrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_side->setMinimumWidth(isNarrow ? 0 : scaled(width() < scaled(1000) ? 264 : 288));
    m_side->setMaximumWidth(isNarrow ? QWIDGETSIZE_MAX : m_side->minimumWidth());
}

} // namespace plumule::ui

#include "moc_round_page.cpp"
