#include "ui/watering/shelf_card.h"

#include "ui/watering/key_button.h"
#include "ui/widget/theme.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace plumule::ui {

ShelfCard::ShelfCard(const Round& round, const ShelfGroup& shelf, const RowFrame& frame,
                     QWidget* parent)
    : Card(shelfName(shelf), "card", parent)
{
    setObjectName("shelf" + shelfName(shelf));
    m_work = label(QString(), "muted");
    m_work->setWordWrap(true);
    m_work->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    // In front of the heading row's own stretch, of which it leaves nothing.
    headingRow()->insertWidget(1, m_work, 100);
    m_tickAll = new KeyButton(tr("Tick the shelf"), 'S');
    m_tickAll->setObjectName("tickShelf");
    m_tickAll->setAccessibleName(tr("Tick all of %1").arg(shelfName(shelf)));
    m_tickAll->setKeyShown(false);
    headingRow()->addWidget(m_tickAll);
    connect(m_tickAll, &QPushButton::clicked, this, &ShelfCard::shelfAsked);
    body()->setSpacing(0);
    for (const std::size_t i : shelf.trays) {
        auto* row = new TrayRow(round.trays[i], frame);
        body()->addWidget(row);
        m_rows.push_back(row);
    }
    m_rows.back()->setLast(true);
    setShelf(round, shelf, frame);
}

void ShelfCard::setShelf(const Round& round, const ShelfGroup& shelf, const RowFrame& frame)
{
    m_work->setText(shelfWork(round, shelf));
    for (std::size_t i = 0; i < shelf.trays.size(); ++i) {
        m_rows[i]->setTray(round.trays[shelf.trays[i]], frame);
    }
    m_tickAll->setEnabled(!openTrays().empty());
}

std::vector<TrayId> ShelfCard::openTrays() const
{
    std::vector<TrayId> open;
    for (const TrayRow* row : m_rows) {
        if (!row->tray().isDone()) {
            open.push_back(row->tray().tray);
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
