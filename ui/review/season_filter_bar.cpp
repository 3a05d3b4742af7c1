#include "ui/review/season_filter_bar.h"

#include "ui/widget/choice_menu.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/widgets.h"

#include <QComboBox>
#include <QDateEdit>

namespace plumule::ui {
namespace {

QDateEdit* dayField(const char* name)
{
    auto* field = new QDateEdit;
    field->setObjectName(name);
    field->setDisplayFormat("d MMM yyyy");
    field->setCalendarPopup(true);
    field->setKeyboardTracking(false);
    return field;
}

template <class IdType>
std::vector<IdType> idsIn(const ChoiceMenu& menu)
{
    std::vector<IdType> ids;
    for (const qint64 id : menu.chosen()) {
        ids.push_back(IdType{id});
    }
    return ids;
}

template <class IdType>
std::vector<qint64> numbersOf(const std::vector<IdType>& ids)
{
    std::vector<qint64> numbers;
    for (const IdType id : ids) {
        numbers.push_back(id.value);
    }
    return numbers;
}

} // namespace

SeasonFilterBar::SeasonFilterBar(Journal& journal, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
{
    auto* row = new FlowLayout(this);
    m_from = dayField("from");
    m_to = dayField("to");
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
    m_beside->addItem(tr("Beside the year before"), int(Split::YearBefore));
    m_beside->addItem(tr("Quarter by quarter"), int(Split::Quarters));
    m_beside->addItem(tr("Half-year by half-year"), int(Split::HalfYears));
    m_beside->addItem(tr("Year by year"), int(Split::Years));
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
    for (QDateEdit* field : {m_from, m_to}) {
        connect(field, &QDateEdit::dateChanged, this, &SeasonFilterBar::changed);
    }
}

void SeasonFilterBar::setFilter(const SeasonFilter& filter)
{
    const QSignalBlocker noFrom(m_from);
    const QSignalBlocker noTo(m_to);
    m_from->setDate(toQDate(filter.from));
    m_to->setDate(toQDate(filter.to));
    m_varieties->choose(numbersOf(filter.varieties));
    m_trials->choose(numbersOf(filter.trials));
    m_shelves->choose(numbersOf(filter.shelves));
}

SeasonFilter SeasonFilterBar::filter() const
{
    SeasonFilter filter;
    filter.from = fromQDate(m_from->date());
    filter.to = fromQDate(m_to->date());
    filter.varieties = idsIn<VarietyId>(*m_varieties);
    filter.trials = idsIn<TrialId>(*m_trials);
    filter.shelves = idsIn<ShelfId>(*m_shelves);
    return filter;
}

std::vector<SeasonFilter> SeasonFilterBar::beside() const
{
    const QVariant split = m_beside->currentData();
    return split.isValid() ? spansOf(filter(), static_cast<Split>(split.toInt()))
                           : std::vector<SeasonFilter>();
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
