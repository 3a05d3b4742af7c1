#include "ui/history/history_page.h"

#include "core/journal/tray/tray_entries.h"
#include "ui/backup/take_along.h"
#include "ui/history/history_text.h"
#include "ui/history/take_back_card.h"
#include "ui/merge/merge_dialog.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/text_table.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QBoxLayout>
#include <QComboBox>
#include <QDateTime>
#include <QHeaderView>
#include <QLineEdit>
#include <QLocale>
#include <QTableView>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kReadAtOnce = 400;
constexpr int kLeastListWidth = 560;
constexpr int kCardWidth = 300;

QString stateText(HistoryState state)
{
    return state == HistoryState::Standing ? QString() : HistoryPage::tr("taken back");
}

QDate dayOf(const HistoryEntry& act)
{
    return QDateTime::fromMSecsSinceEpoch(act.atUtcMs).date();
}

QString wordsOf(const HistoryEntry& act, UnitSystem units)
{
    return act.intention.empty()
               ? HistoryPage::tr("Entry %1 can't be read: see “Check for damage” in Set-up.")
                     .arg(act.id.value)
               : sentence(act, units);
}

QString dayText(const QDate& day, const QDate& today)
{
    const QString text = QLocale(QLocale::English).toString(day, QStringLiteral("ddd d MMM yyyy"));
    return day == today ? HistoryPage::tr("%1, today").arg(text) : text;
}

} // namespace

HistoryPage::HistoryPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
    , m_wanted(kReadAtOnce)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(12));
    column->setSpacing(scaled(12));
    m_head = new PageHead(tr("History"));
    column->addWidget(m_head);
    buildCopyButtons();
    column->addWidget(buildFilters());
    m_beside = new QBoxLayout(QBoxLayout::LeftToRight);
    m_beside->setSpacing(scaled(14));
    m_beside->addWidget(buildList(), 1);
    m_card = new TakeBackCard(journal, this->services());
    m_beside->addWidget(m_card);
    column->addLayout(m_beside, 1);
    wireSignals();
}

QString HistoryPage::name() const
{
    return tr("History");
}

bool HistoryPage::concerns(Concept) const
{
    return true;
}

// The journal's other lives: a copy goes out, and comes back into the one history.
void HistoryPage::buildCopyButtons()
{
    auto* along = button(tr("Take a copy along…"));
    along->setObjectName("historyTakeAlong");
    auto* back = button(tr("Bring a copy back…"));
    back->setObjectName("historyBringBack");
    connect(along, &QPushButton::clicked, this,
            [this] { takeCopyAlong(journal(), services(), this); });
    connect(back, &QPushButton::clicked, this,
            [this] { MergeDialog::begin(journal(), services(), this); });
    for (QPushButton* each : {along, back}) {
        each->setEnabled(!journal().isReadOnly());
        m_head->addControl(each);
    }
}

QWidget* HistoryPage::buildFilters()
{
    auto* bar = new QWidget;
    auto* row = new FlowLayout(bar);
    m_search = new QLineEdit;
    m_search->setObjectName("historySearch");
    m_search->setAccessibleName(tr("Search"));
    m_search->setPlaceholderText(tr("A tray, a shelf, a word"));
    m_search->setClearButtonEnabled(true);
    m_search->setMinimumWidth(scaled(270));
    m_kind = new QComboBox;
    m_kind->setObjectName("historyKind");
    m_kind->setAccessibleName(tr("Kind of act"));
    m_kind->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    addChoice(*m_kind, tr("All acts"), ActKind::All);
    addChoice(*m_kind, tr("Trays"), ActKind::Trays);
    addChoice(*m_kind, tr("Water"), ActKind::Water);
    addChoice(*m_kind, tr("Weights"), ActKind::Weights);
    addChoice(*m_kind, tr("Trials and tastings"), ActKind::Trials);
    addChoice(*m_kind, tr("Orders"), ActKind::Orders);
    addChoice(*m_kind, tr("Room and set-up"), ActKind::SetUp);
    m_day = new DateField("historyDay");
    m_day->setAccessibleName(tr("Day"));
    m_day->setPlaceholderText(tr("any day"));
    row->addWidget(m_search);
    row->addWidget(m_kind);
    row->addWidget(m_day);
    return bar;
}

QWidget* HistoryPage::buildList()
{
    auto* card = new Card;
    m_model = new TextTable(this);
    m_table = plainTable(m_model, "history", tr("What was done, newest first"));
    m_empty = label(QString(), "muted");
    m_empty->setWordWrap(true);
    m_empty->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_more = button(tr("Show older ones"), "quiet");
    m_more->setObjectName("historyMore");
    card->body()->addWidget(m_empty);
    card->body()->addWidget(m_table, 1);
    card->body()->addWidget(m_more, 0, Qt::AlignLeft);
    return card;
}

void HistoryPage::wireSignals()
{
    connect(m_search, &QLineEdit::textChanged, this, &HistoryPage::showActs);
    connect(m_search, &QLineEdit::returnPressed, this, [this] { m_table->setFocus(); });
    connect(m_kind, &QComboBox::currentIndexChanged, this, &HistoryPage::showActs);
    connect(m_day, &DateField::dateGiven, this, &HistoryPage::reload);
    connect(m_more, &QPushButton::clicked, this, &HistoryPage::readMore);
    connect(m_table, &QTableView::activated, m_card, &TakeBackCard::begin);
    connect(m_table->selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &HistoryPage::showChosen);
}

void HistoryPage::begin()
{
    // First: a table that gets the focus makes its first row the current one and chooses none.
    if (!m_table->selectionModel()->hasSelection()) {
        m_table->selectRow(0);
    }
    m_table->setFocus();
}

bool HistoryPage::find()
{
    m_search->setFocus();
    m_search->selectAll();
    return true;
}

void HistoryPage::readMore()
{
    m_wanted += kReadAtOnce;
    reload();
}

Result<std::vector<HistoryEntry>> HistoryPage::actsWanted()
{
    const auto day = m_day->date();
    for (;;) {
        auto acts = journal().latestEntries(m_wanted);
        const bool mayBeMore = acts && static_cast<int>(acts->size()) == m_wanted;
        if (!mayBeMore || !day) {
            return acts;
        }
        // Days go up with the entries, but for a clock that was set back.
        const HistoryEntry& oldest = acts->back();
        if (!oldest.intention.empty() && dayOf(oldest) < toQDate(*day)) {
            return acts;
        }
        m_wanted *= 2;
    }
}

void HistoryPage::reload()
{
    const auto acts = actsWanted();
    if (!accept(acts)) {
        return;
    }
    m_acts = *acts;
    m_units = units();
    m_more->setVisible(static_cast<int>(m_acts.size()) == m_wanted);
    showActs();
}

bool HistoryPage::isWanted(const HistoryEntry& act, const QString& words) const
{
    const auto day = m_day->date();
    const bool isOfDay = !day || (!act.intention.empty() && dayOf(act) == toQDate(*day));
    return isOfDay && isOfKind(act, chosen<ActKind>(*m_kind).value_or(ActKind::All)) &&
           (m_about.contains(act.id) ||
            words.contains(m_search->text().trimmed(), Qt::CaseInsensitive));
}

std::set<HistoryId> HistoryPage::actsOnTheTray()
{
    const auto tray = journal().trays().find(m_search->text().toStdString());
    return tray ? journal().trays().actsOn(*tray, m_wanted).value_or(std::set<HistoryId>())
                : std::set<HistoryId>();
}

void HistoryPage::showActs()
{
    fillActs();
    const bool isEmpty = m_shown.empty();
    m_head->setSubtitle(tr("%n act(s), newest first", nullptr, static_cast<int>(m_shown.size())));
    m_empty->setVisible(isEmpty);
    m_empty->setText(m_acts.empty() ? tr("Nothing was done yet: acts stand here as they happen.")
                                    : tr("No act fits. Change the search."));
    m_table->setVisible(!isEmpty);
    if (!m_table->currentIndex().isValid()) {
        showChosen(); // else it was shown as it was chosen again
    }
}

// Those that are searched for; the one that was chosen stays so.
void HistoryPage::fillActs()
{
    const auto chosenRow = m_table->currentIndex().row();
    const HistoryId chosenAct = chosenRow >= 0 && chosenRow < static_cast<int>(m_shown.size())
                                    ? m_shown[static_cast<std::size_t>(chosenRow)].id
                                    : HistoryId();
    const QDate today = toQDate(journal().clock().now().date);
    m_about = actsOnTheTray();
    m_shown.clear();
    std::vector<TextRow> rows;
    QDate lastDay;
    int chosenAgain = -1;
    for (const HistoryEntry& act : m_acts) {
        const QString words = wordsOf(act, m_units.units());
        if (!isWanted(act, words)) {
            continue;
        }
        if (act.id == chosenAct) {
            chosenAgain = static_cast<int>(rows.size());
        }
        m_shown.push_back(act);
        if (act.intention.empty()) {
            rows.push_back({{QString(), QString(), words, tr("damaged")}, QIcon(), false});
            continue;
        }
        const QDateTime at = QDateTime::fromMSecsSinceEpoch(act.atUtcMs);
        rows.push_back({{at.date() == lastDay ? QString() : dayText(at.date(), today),
                         at.toString(QStringLiteral("HH:mm")), words, stateText(act.state)},
                        QIcon(),
                        false});
        lastDay = at.date();
    }
    m_model->show({tr("Day"), tr("Time"), tr("What was done"), QString()}, std::move(rows), 4);
    m_table->horizontalHeader()->setSectionResizeMode(2, QHeaderView::Stretch);
    if (chosenAgain >= 0) {
        m_table->setCurrentIndex(m_model->index(chosenAgain, 0));
    }
}

void HistoryPage::showChosen()
{
    const int row = m_table->currentIndex().row();
    if (row < 0 || row >= static_cast<int>(m_shown.size())) {
        m_card->showNothing();
    } else {
        m_card->show(m_shown[static_cast<std::size_t>(row)], m_units);
    }
}

void HistoryPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    const bool isBeside = m_beside->direction() == QBoxLayout::LeftToRight;
    const bool fits = standsBeside(width(), scaled(kLeastListWidth) + scaled(kCardWidth), isBeside);
    m_beside->setDirection(fits ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_card->setFixedWidth(fits ? scaled(kCardWidth) : QWIDGETSIZE_MAX);
    if (!fits) {
        m_card->setMinimumWidth(0);
        m_card->setMaximumWidth(QWIDGETSIZE_MAX);
    }
}

} // namespace plumule::ui

#include "moc_history_page.cpp"
