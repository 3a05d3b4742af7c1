#include "ui/review/season_filter_bar.h"

#include "ui/widget/choice_box.h"
#include "ui/widget/choice_menu.h"
#include "ui/widget/date_field.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/widgets.h"

namespace plumule::ui {
SeasonFilterBar::SeasonFilterBar(Journal& journal, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
{
    auto* row = new FlowLayout(this);
    m_from = new DateField("from");
    m_from->setAccessibleName(tr("Harvested from"));
    m_to = new DateField("to");
    m_to->setAccessibleName(tr("Harvested to"));
    m_varieties = new ChoiceMenu(tr("All varieties"), tr("%1 varieties"));
    m_varieties->setObjectName("varieties");
    m_trials = new ChoiceMenu(tr("All trials"), tr("%1 trials"));
    m_trials->setObjectName("seasonTrials");
    m_shelves = new ChoiceMenu(tr("All shelves"), tr("%1 shelves"));
    m_shelves->setObjectName("seasonShelves");
    m_beside = new QComboBox;
    m_beside->setObjectName("beside");
    m_beside->setAccessibleName(tr("Seasons side by side"));
    m_beside->addItem(tr("One season"));
    addChoice(*m_beside, tr("Beside the year before"), Split::YearBefore);
    addChoice(*m_beside, tr("Quarter by quarter"), Split::Quarters);
    addChoice(*m_beside, tr("Half-year by half-year"), Split::HalfYears);
    addChoice(*m_beside, tr("Year by year"), Split::Years);
    const auto between = [this](const QString& text) {
        auto* made = label(text, "muted");
        made->setMinimumHeight(m_from->sizeHint().height());
        return made;
    };
    row->addWidget(between(tr("Harvested from")));
    row->addWidget(m_from);
    row->addWidget(between(tr("to")));
    row->addWidget(m_to);
    for (ChoiceMenu* menu : {m_varieties, m_trials, m_shelves}) {
        row->addWidget(menu);
        connect(menu, &ChoiceMenu::chosenByHand, this, &SeasonFilterBar::changed);
    }
    row->addWidget(m_beside);
    connect(m_beside, &QComboBox::activated, this, &SeasonFilterBar::changed);
    for (DateField* field : {m_from, m_to}) {
        connect(field, &DateField::dateGiven, this, &SeasonFilterBar::changed);
    }
}

void SeasonFilterBar::setFilter(const SeasonFilter& filter)
{
    m_span = {filter.from, filter.to};
    m_from->setDate(filter.from);
    m_to->setDate(filter.to);
    m_varieties->chooseIds(filter.varieties);
    m_trials->chooseIds(filter.trials);
    m_shelves->chooseIds(filter.shelves);
}

SeasonFilter SeasonFilterBar::filter() const
{
    SeasonFilter filter;
    filter.from = m_from->date().value_or(m_span.first);
    filter.to = m_to->date().value_or(m_span.second);
    filter.varieties = m_varieties->chosenIds<VarietyId>();
    filter.trials = m_trials->chosenIds<TrialId>();
    filter.shelves = m_shelves->chosenIds<ShelfId>();
    return filter;
}

std::vector<SeasonFilter> SeasonFilterBar::beside() const
{
    const auto split = chosen<Split>(*m_beside);
    return split ? spansOf(filter(), *split) : std::vector<SeasonFilter>();
}

void SeasonFilterBar::reload()
{
    std::vector<ChoiceMenu::Item> items;
    for (const Variety& each : m_journal.varieties().all(true).value_or(std::vector<Variety>())) {
        items.push_back({each.id.value, QString::fromStdString(each.name)});
    }
    m_varieties->setItems(items);
    items.clear();
    for (const Trial& each : m_journal.trials().all().value_or(std::vector<Trial>())) {
        items.push_back({each.id.value, QString::fromStdString(each.code + "  " + each.name)});
    }
    m_trials->setItems(items);
    items.clear();
    if (const auto layout = m_journal.room().layout()) {
        ShelfId last;
        for (const Spot& spot : layout->spots()) {
            if (spot.shelfId != last) {
                last = spot.shelfId;
                items.push_back({last.value, QString::fromStdString(spot.rack + spot.shelf)});
            }
        }
    }
    m_shelves->setItems(items);
}

} // namespace plumule::ui

#include "moc_season_filter_bar.cpp"
