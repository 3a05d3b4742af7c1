#include "ui/watering/shelf_card.h"

#include "ui/widget/key_button.h"
#include "ui/widget/theme.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

std::vector<StageDecision> decisionsAt(const Round& round, const std::vector<std::size_t>& group)
{
    std::vector<StageDecision> decisions;
    decisions.reserve(group.size());
    for (const std::size_t i : group) {
        decisions.push_back(round.decisions[i]);
    }
    return decisions;
}

} // namespace

ShelfCard::ShelfCard(const Round& round, const ShelfGroup& shelf, const RowFrame& frame,
                     QWidget* parent)
    : Card(shelfName(shelf), "card", parent)
{
    setObjectName("shelf" + shelfName(shelf));
    m_work = label(QString(), "muted");
    m_work->setWordWrap(true);
    // In large type there is no room for it between name and button.
    if (!isTypeLarge()) {
        m_work->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
        // In front of the heading row's own stretch, of which it leaves nothing.
        headingRow()->insertWidget(1, m_work, 100);
    } else {
        wrapHeading();
        body()->addWidget(m_work);
        body()->addSpacing(scaled(8)); // else a row that is in hand touches it
    }
    m_tickAll = new KeyButton(tr("Tick the shelf"), 'S');
    m_tickAll->setObjectName("tickShelf");
    m_tickAll->setKeyShown(false);
    headingRow()->addWidget(m_tickAll);
    // Once it stands in the card: shown before, it would be a window and take the focus.
    m_tickAll->setVisible(!shelf.trays.empty());
    connect(m_tickAll, &QPushButton::clicked, this, &ShelfCard::shelfAsked);
    body()->setSpacing(0);
    addRows(round, shelf, frame);
    setShelf(round, shelf, frame);
}

void ShelfCard::addRows(const Round& round, const ShelfGroup& shelf, const RowFrame& frame)
{
    for (const auto& group : shelf.decisions) {
        auto* row = new DecisionRow(decisionsAt(round, group));
        body()->addWidget(row);
        body()->addSpacing(scaled(4));
        m_decisions.push_back(row);
    }
    for (const std::size_t i : shelf.trays) {
        auto* row = new TrayRow(round.trays[i], frame);
        body()->addWidget(row);
        m_rows.push_back(row);
    }
    if (!m_rows.empty()) {
        m_rows.back()->setLast(true);
    }
}

void ShelfCard::setShelf(const Round& round, const ShelfGroup& shelf, const RowFrame& frame)
{
    m_work->setText(shelfWork(round, shelf));
    for (std::size_t i = 0; i < shelf.decisions.size(); ++i) {
        m_decisions[i]->setDecisions(decisionsAt(round, shelf.decisions[i]));
    }
    for (std::size_t i = 0; i < shelf.trays.size(); ++i) {
        m_rows[i]->setTray(round.trays[shelf.trays[i]], frame);
    }
    showOpen();
}

void ShelfCard::showOpen()
{
    const QString words = isAsNeeded() ? tr("None needed") : tr("Tick the shelf");
    if (m_tickAll->text() != words) {
        m_tickAll->setText(words);
        m_tickAll->updateGeometry();
    }
    m_tickAll->setAccessibleName(isAsNeeded() ? tr("None needed on %1").arg(objectName().mid(5))
                                              : tr("Tick all of %1").arg(objectName().mid(5)));
    m_tickAll->setEnabled(!openTrays().empty());
}

bool ShelfCard::isAsNeeded() const
{
    bool isOffered = false;
    for (const TrayRow* row : m_rows) {
        if (!row->tray().isDone() && row->tray().isAsked) {
            if (!row->tray().isAsNeeded) {
                return false;
            }
            isOffered = true;
        }
    }
    return isOffered;
}

std::vector<TrayId> ShelfCard::openTrays() const
{
    const bool isOffered = isAsNeeded();
    std::vector<TrayId> open;
    for (const TrayRow* row : m_rows) {
        const RoundTray& tray = row->tray();
        if (!tray.isDone() && tray.isAsked && tray.isAsNeeded == isOffered) {
            open.push_back(tray.tray);
        }
    }
    return open;
}

void ShelfCard::setCurrent(bool isCurrent)
{
    m_tickAll->setKeyShown(isCurrent);
}

void ShelfCard::insertUnder(const TrayRow* row, QWidget* panel)
{
    body()->insertWidget(body()->indexOf(row) + 1, panel);
}

} // namespace plumule::ui

#include "moc_shelf_card.cpp"
