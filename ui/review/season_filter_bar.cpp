#include "ui/review/season_filter_bar.h"

#include "core/journal/review/season_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/review/season/season_rules.h"
#include "ui/review/grouping_choice.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/choice_menu.h"
#include "ui/widget/date_field.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/widgets.h"

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kDeclare = -1; // rows of the season list that are no season
constexpr int kChange = -2;

} // namespace

SeasonFilterBar::SeasonFilterBar(Journal& journal, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
{
    buildSeasons();
    buildDays();
    buildMenus();
    buildAsk();
    buildBeside();
    const auto between = [this](const QString& text) {
        auto* made = label(text, "muted");
        made->setMinimumHeight(m_from->sizeHint().height());
        return made;
    };
    auto* row = new FlowLayout(this);
    row->addWidget(m_season);
    row->addWidget(between(tr("Harvested from")));
    row->addWidget(m_from);
    row->addWidget(between(tr("to")));
    row->addWidget(m_to);
    row->addWidget(m_varieties);
    row->addWidget(m_trials);
    row->addWidget(m_shelves);
    row->addWidget(m_margin);
    row->addWidget(m_groups);
    row->addWidget(m_beside);
}

void SeasonFilterBar::buildDays()
{
    m_from = new DateField("from");
    m_from->setAccessibleName(tr("Harvested from"));
    m_to = new DateField("to");
    m_to->setAccessibleName(tr("Harvested to"));
    for (DateField* field : {m_from, m_to}) {
        connect(field, &DateField::dateGiven, this, &SeasonFilterBar::changed);
    }
}

void SeasonFilterBar::buildMenus()
{
    m_varieties = new ChoiceMenu(tr("All varieties"),
                                 [](int count) { return tr("%n varieties", nullptr, count); });
    m_varieties->setObjectName("varieties");
    m_trials =
        new ChoiceMenu(tr("All trials"), [](int count) { return tr("%n trials", nullptr, count); });
    m_trials->setObjectName("seasonTrials");
    m_shelves = new ChoiceMenu(tr("All shelves"),
                               [](int count) { return tr("%n shelves", nullptr, count); });
    m_shelves->setObjectName("seasonShelves");
    for (ChoiceMenu* menu : {m_varieties, m_trials, m_shelves}) {
        connect(menu, &ChoiceMenu::chosenByHand, this, &SeasonFilterBar::changed);
    }
}

void SeasonFilterBar::buildBeside()
{
    m_beside = new QComboBox;
    m_beside->setObjectName("beside");
    m_beside->setAccessibleName(tr("Seasons side by side"));
    m_beside->addItem(tr("One season"));
    addChoice(*m_beside, tr("Beside the year before"), Split::YearBefore);
    addChoice(*m_beside, tr("Quarter by quarter"), Split::Quarters);
    addChoice(*m_beside, tr("Half-year by half-year"), Split::HalfYears);
    addChoice(*m_beside, tr("Year by year"), Split::Years);
    connect(m_beside, &QComboBox::activated, this, &SeasonFilterBar::changed);
}

void SeasonFilterBar::buildSeasons()
{
    m_season = new QComboBox;
    m_season->setObjectName("season");
    m_season->setAccessibleName(tr("Which season"));
    m_season->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    connect(m_season, &QComboBox::activated, this, &SeasonFilterBar::takeSeason);
}

void SeasonFilterBar::buildAsk()
{
    m_margin = new QComboBox;
    m_margin->setObjectName("margin");
    m_margin->setAccessibleName(tr("The smallest difference that matters"));
    m_margin->addItem(tr("Margin of the trials"));
    for (const int percent : {3, 5, 8, 10, 15, 20}) {
        m_margin->addItem(tr("Margin ±%1 %").arg(percent), percent);
    }
    m_groups = groupingChoice();
    for (QComboBox* box : {m_margin, m_groups}) {
        connect(box, &QComboBox::activated, this, &SeasonFilterBar::changed);
    }
}

ComparisonAsk SeasonFilterBar::ask() const
{
    ComparisonAsk ask;
    const QVariant percent = m_margin->currentData();
    if (percent.isValid()) {
        ask.marginPercent = percent.toDouble();
    }
    ask.groups = chosenGrouping(*m_groups);
    return ask;
}

// The list shows the season whose days they are; days of the grower's own stand for themselves.
void SeasonFilterBar::showSeason()
{
    SeasonFilter days = filter();
    days.varieties.clear();
    days.trials.clear();
    days.shelves.clear();
    const auto found = std::find(m_seasons.begin(), m_seasons.end(), days);
    m_season->setCurrentIndex(found == m_seasons.end()
                                  ? static_cast<int>(m_seasons.size())
                                  : static_cast<int>(found - m_seasons.begin()));
}

void SeasonFilterBar::takeSeason()
{
    const int row = m_season->currentIndex();
    const int meant = m_season->currentData().toInt();
    if (meant == kDeclare || meant == kChange) {
        showSeason();
        meant == kDeclare ? Q_EMIT newSeasonAsked() : Q_EMIT seasonChangeAsked();
        return;
    }
    if (row < static_cast<int>(m_seasons.size())) {
        SeasonFilter chosenSeason = m_seasons[static_cast<std::size_t>(row)];
        chosenSeason.varieties = m_varieties->chosenIds<VarietyId>();
        setFilter(chosenSeason);
        Q_EMIT changed();
    }
}

void SeasonFilterBar::setFilter(const SeasonFilter& filter)
{
    m_set = filter;
    m_from->setDate(filter.from);
    m_to->setDate(filter.to);
    m_varieties->chooseIds(filter.varieties);
    m_trials->chooseIds(filter.trials);
    m_shelves->chooseIds(filter.shelves);
    showSeason();
}

SeasonFilter SeasonFilterBar::filter() const
{
    SeasonFilter filter;
    filter.from = m_from->date().value_or(m_set.from);
    filter.to = m_to->date().value_or(m_set.to);
    if (filter.from == m_set.from && filter.to == m_set.to) {
        filter.sownFrom = m_set.sownFrom;
        filter.sownUntil = m_set.sownUntil;
    }
    filter.varieties = m_varieties->chosenIds<VarietyId>();
    filter.trials = m_trials->chosenIds<TrialId>();
    filter.shelves = m_shelves->chosenIds<ShelfId>();
    return filter;
}

std::vector<SeasonFilter> SeasonFilterBar::beside() const
{
    const auto split = chosen<Split>(*m_beside);
    SeasonFilter ofDays = filter();
    ofDays.sownFrom.reset();
    ofDays.sownUntil.reset();
    return split ? spansOf(ofDays, *split) : std::vector<SeasonFilter>();
}

void SeasonFilterBar::reload()
{
    m_seasons.clear();
    m_season->clear();
    const Date today = m_journal.clock().today();
    const auto seasons = m_journal.seasons().all().value_or(std::vector<SeasonSpanOfDays>());
    for (auto span = seasons.rbegin(); span != seasons.rend(); ++span) {
        m_seasons.push_back(filterOf(*span, today));
        m_season->addItem(tr("Season %1").arg(QString::fromStdString(span->season.name)), 0);
    }
    m_season->addItem(tr("Days of your own"), 0);
    m_season->addItem(tr("Change this season…"), kChange);
    m_season->addItem(tr("A new season…"), kDeclare);
    showSeason();
    std::vector<ChoiceMenu::Item> items;
    for (const Variety& each :
         m_journal.varieties().all(Listed::All).value_or(std::vector<Variety>())) {
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
