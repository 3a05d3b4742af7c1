#include "ui/watering/round_page.h"

#include "ui/watering/decision_row.h"
#include "ui/watering/key_button.h"
#include "ui/watering/round_head.h"
#include "ui/watering/round_list.h"
#include "ui/watering/round_side.h"
#include "ui/watering/round_text.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QScrollBar>
#include <QTimer>

#include <algorithm>

namespace plumule::ui {
namespace {

// A label scanner types its keys closer than this; a letter of its code is no command.
constexpr int kScannerGap = 40; // ms
constexpr int kClockStep = 30'000;

} // namespace

RoundPage::RoundPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
{
    build();
    wireSignals();
    wireList();
    m_listener = journal.addListener([this](const std::vector<Change>& changes) {
        const bool isMine = std::any_of(changes.begin(), changes.end(), [this](const Change& each) {
            return concerns(each.about);
        });
        if (isMine) {
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
           about == Concept::Cost;
}

void RoundPage::build()
{
    setFocusPolicy(Qt::ClickFocus);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(8));
    column->setSpacing(scaled(14));
    m_head = new RoundHead;
    QVBoxLayout* inner = nullptr;
    m_scroll = scrolling(inner);
    m_scroll->setObjectName("roundScroll");
    m_columns = new QBoxLayout(QBoxLayout::LeftToRight);
    m_columns->setSpacing(scaled(18));
    m_list = new RoundList;
    m_side = new RoundSide;
    m_columns->addWidget(m_list, 1);
    m_columns->addWidget(m_side, 0);
    inner->addLayout(m_columns);
    inner->addStretch(1);
    m_panel = new TrayPanel(m_list);
    m_panel->hide();
    column->addWidget(m_head);
    column->addWidget(m_scroll, 1);
    column->addWidget(buildRowBar());
    m_letterTimer = new QTimer(this);
    m_letterTimer->setSingleShot(true);
    m_letterTimer->setInterval(kScannerGap);
}

QWidget* RoundPage::buildRowBar()
{
    auto* bar = new QWidget;
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(scaled(8));
    m_inHand = label(QString(), "muted");
    m_inHand->setObjectName("inHand");
    m_inHand->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    row->addWidget(m_inHand, 1);
    m_hint = label(tr("Space ticks, arrows move"), "muted");
    row->addWidget(m_hint);
    row->addSpacing(scaled(8));
    const auto add = [&](const QString& text, QChar key, const char* objectName,
                         TrayPanel::Part part) {
        auto* open = new KeyButton(text, key);
        open->setObjectName(objectName);
        row->addWidget(open);
        m_rowButtons.push_back(open);
        connect(open, &QPushButton::clicked, this, [this, part] { openDetailsByKey(part); });
    };
    add(tr("Note"), 'T', "openNote", TrayPanel::Part::Note);
    add(tr("Height"), 'H', "openHeight", TrayPanel::Part::Height);
    add(tr("Water, pH, EC"), 'W', "openWater", TrayPanel::Part::Water);
    return bar;
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
                if (keepReading(water, std::nullopt, ph, ec)) {
                    tellLast();
                }
            });
    connect(m_side, &RoundSide::readingClosed, this, [this] { m_list->regainFocus(); });
    connect(m_panel, &TrayPanel::saveAsked, this, &RoundPage::saveDetails);
    connect(m_panel, &TrayPanel::closeAsked, this, &RoundPage::closeDetails);
    connect(m_panel, &TrayPanel::photoAsked, this, [this] { attachPhoto(m_panel->tray()); });
    connect(m_panel, &TrayPanel::sheetAsked, this, [this] { Q_EMIT trayAsked(m_panel->tray()); });
    connect(m_letterTimer, &QTimer::timeout, this, [this] { pressLetter(m_letter); });
    auto* clock = new QTimer(this);
    clock->setInterval(kClockStep);
    connect(clock, &QTimer::timeout, this, &RoundPage::followClock);
    clock->start();
}

void RoundPage::wireList()
{
    connect(m_list, &RoundList::tickAsked, this, &RoundPage::tick);
    connect(m_list, &RoundList::shelfAsked, this, &RoundPage::tickShelf);
    connect(m_list, &RoundList::detailsAsked, this,
            [this](TrayId tray) { openDetails(tray, TrayPanel::Part::Note); });
    connect(m_list, &RoundList::readyAsked, this, &RoundPage::beReady);
    connect(m_list, &RoundList::notYetAsked, this, &RoundPage::putOff);
    connect(m_list, &RoundList::currentChanged, this, [this](QWidget* row) {
        showRowBar(row);
        if (row != nullptr && row->hasFocus()) {
            showInView(row);
        }
    });
}

RoundKey RoundPage::presentKey() const
{
    return roundOf(m_room, journal().clock().now());
}

void RoundPage::reload()
{
    const auto layout = journal().room().layout();
    if (!accept(layout)) {
        return;
    }
    m_layout = *layout;
    m_room = m_layout.room;
    const auto round = m_chosen ? journal().watering().round(m_chosen->date, m_chosen->slot)
                                : journal().watering().roundNow();
    if (!accept(round)) {
        return;
    }
    m_round = *round;
    std::optional<int> seconds;
    if (const auto labour = journal().costs().labour()) {
        for (const LabourTask& task : *labour) {
            if (task.kind == LabourKind::Watering) {
                seconds = task.seconds;
            }
        }
    }
    const auto free = journal().room().freeSpots();
    const UnitText words(m_room.units);
    m_head->showRound(m_round, presentKey(), seconds);
    m_list->showRound(m_round, words, nothingText());
    m_side->showRound(m_round, words, journal().clock().today(),
                      free ? *free : std::vector<Spot>());
    showUndo();
    if (!m_chosen) {
        showBadge(m_round);
    }
}

QString RoundPage::nothingText() const
{
    if (!m_round.trays.empty()) {
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
    m_chosen = key == presentKey() ? std::nullopt : std::optional(key);
    reload();
    m_scroll->verticalScrollBar()->setValue(0);
    m_list->setFirstCurrent();
}

void RoundPage::showUndo()
{
    const auto next = journal().nextUndo();
    m_head->setUndo(next ? sentence(*next) : QString());
}

void RoundPage::showBadge(const Round& present)
{
    const auto open = static_cast<int>(present.trays.size()) - present.doneCount();
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
    if (isVisible() && !m_chosen && shownKey() != presentKey()) {
        noteChange();
    }
}

void RoundPage::begin()
{
    if (m_chosen) {
        m_chosen.reset();
        reload();
    } else if (isVisible()) {
        followClock();
    }
    setFocus();
    m_list->focusFirstOpen();
}

void RoundPage::showRowBar(QWidget* current)
{
    const auto* row = qobject_cast<TrayRow*>(current);
    const auto* decision = qobject_cast<DecisionRow*>(current);
    QString words;
    if (row != nullptr) {
        words = tr("%1 in hand").arg(QString::fromStdString(row->tray().code));
    } else if (decision != nullptr) {
        words = tr("%1 in hand").arg(QString::fromStdString(decision->decision().code));
    }
    m_inHand->setText(words);
    for (KeyButton* each : m_rowButtons) {
        each->setEnabled(row != nullptr);
    }
}

void RoundPage::showInView(QWidget* part)
{
    // Once the layout knows where it stands.
    QTimer::singleShot(0, part, [this, part] {
        if (part->isVisible()) {
            m_scroll->ensureWidgetVisible(part, 0, scaled(60));
        }
    });
}

void RoundPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    arrange();
}

void RoundPage::arrange()
{
    const bool isNarrow = width() - scaled(56) < scaled(720);
    m_columns->setDirection(isNarrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_hint->setVisible(width() > scaled(780));
    m_side->setMinimumWidth(isNarrow ? 0 : scaled(width() < scaled(1000) ? 264 : 288));
    m_side->setMaximumWidth(isNarrow ? QWIDGETSIZE_MAX : m_side->minimumWidth());
}

} // namespace plumule::ui

#include "moc_round_page.cpp"
