#include "ui/setup/setup_page.h"

#include "ui/cost/price_part.h"
#include "ui/medium/medium_part.h"
#include "ui/room/room_part.h"
#include "ui/setup/journal_part.h"
#include "ui/variety/seed_part.h"
#include "ui/variety/variety_part.h"
#include "ui/watering/water_part.h"
#include "ui/widget/page_stack.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QTabBar>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {

SetupPage::SetupPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(12));
    column->setSpacing(scaled(12));
    auto* head = new PageHead(tr("Set-up"));
    head->setSubtitle(tr("What is set once or seldom."));
    m_tabs = new QTabBar;
    m_tabs->setObjectName("parts");
    m_tabs->setDrawBase(false);
    m_tabs->setExpanding(false);
    m_stack = new PageStack;
    column->addWidget(head);
    column->addWidget(m_tabs);
    column->addWidget(m_stack, 1);
    addPart(new RoomPart(journal, services));
    addPart(new VarietyPart(journal, services));
    addPart(new SeedPart(journal, services));
    addPart(new MediumPart(journal, services));
    addPart(new WaterPart(journal, services));
    addPart(new PricePart(journal, services));
    auto* own = new JournalPart(journal, services);
    connect(own, &JournalPart::journalAsked, this, &SetupPage::journalAsked);
    connect(own, &JournalPart::lookAsked, this, &SetupPage::lookAsked);
    addPart(own);
    connect(m_tabs, &QTabBar::currentChanged, this, [this](int index) {
        m_stack->setCurrentIndex(index);
        m_parts[static_cast<std::size_t>(index)]->reload();
    });
}

QString SetupPage::name() const
{
    return tr("Set-up");
}

bool SetupPage::concerns(Concept about) const
{
    return m_parts[static_cast<std::size_t>(m_tabs->currentIndex())]->concerns(about);
}

bool SetupPage::hasUnsaved() const
{
    return std::any_of(m_parts.begin(), m_parts.end(),
                       [](const SetupPart* part) { return part->hasUnsaved(); });
}

void SetupPage::reload()
{
    m_parts[static_cast<std::size_t>(m_tabs->currentIndex())]->reload();
}

void SetupPage::addPart(SetupPart* part)
{
    m_parts.push_back(part);
    m_stack->addPage(part);
    m_tabs->addTab(part->name());
}

QStringList SetupPage::partNames() const
{
    QStringList names;
    for (const SetupPart* part : m_parts) {
        names << part->name();
    }
    return names;
}

void SetupPage::showPart(const QString& name)
{
    m_tabs->setCurrentIndex(static_cast<int>(partNames().indexOf(name)));
}

} // namespace plumule::ui

#include "moc_setup_page.cpp"
