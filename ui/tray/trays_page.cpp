#include "ui/tray/trays_page.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "ui/page/damaged_line.h"
#include "ui/tray/tray_list_model.h"
#include "ui/tray/tray_sheet_view.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/page_stack.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/theme.h"

#include <QApplication>
#include <QComboBox>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QTableView>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace plumule::ui {
namespace {

constexpr int kRowsAPage = 200; // read at once
constexpr int kTypingPauseMs = 120;
constexpr std::array kColumnWidths{84, 150, 170, 124, 110, 52, 108, 84, 60};

QComboBox* choice(const char* name, const QString& all, const QString& accessibleName)
{
    auto* box = new QComboBox;
    box->setObjectName(name);
    box->setAccessibleName(accessibleName);
    box->addItem(all);
    box->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    box->setMinimumContentsLength(10);
    return box;
}

} // namespace

TraysPage::TraysPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
    , m_counting(journal, services.tasks, this)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(12));
    m_stack = new PageStack;
    m_stack->addPage(buildList());
    m_sheet = new TraySheetView(journal, services);
    m_stack->addPage(m_sheet);
    column->addWidget(m_stack);
    wireSignals();
}

QString TraysPage::name() const
{
    return tr("Trays");
}

// The list shows no water, no price and no climate; the sheet does.
bool TraysPage::concerns(Concept about) const
{
    const bool isListed =
        about != Concept::Watering && about != Concept::Cost && about != Concept::Climate;
    return isListed || !isListInFront();
}

QWidget* TraysPage::buildList()
{
    auto* list = new QWidget;
    auto* column = new QVBoxLayout(list);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(12));
    buildHead();
    column->addWidget(m_head);
    column->addWidget(buildFilters());
    m_damaged = damagedLine();
    column->addWidget(m_damaged);
    auto* card = new Card;
    buildTable();
    m_empty = label(QString(), "muted");
    m_empty->setObjectName("noTrays");
    card->body()->addWidget(m_empty);
    card->body()->addWidget(m_table, 1);
    column->addWidget(card, 1);
    return list;
}

void TraysPage::buildHead()
{
    m_head = new PageHead(tr("Trays"));
    auto* sow = button(tr("Sow…"), "primary");
    sow->setObjectName("sow");
    m_labels = button(tr("Labels…"));
    m_labels->setObjectName("labels");
    m_labels->setToolTip(tr("Labels for the trays that are selected, else for all that are listed "
                            "and growing. Ctrl and Shift select several."));
    m_head->addControl(m_labels);
    m_head->addControl(sow);
    connect(sow, &QPushButton::clicked, this, &TraysPage::openSowing);
    connect(m_labels, &QPushButton::clicked, this, &TraysPage::openLabels);
}

void TraysPage::buildTable()
{
    m_model = new TrayListModel(this);
    m_model->setReadOn([this](const TrayListKey& after) {
        const auto more = journal().trays().listing(m_shown, {after, kRowsAPage});
        return accept(more) ? std::optional(*more) : std::nullopt;
    });
    m_table = plainTable(m_model, "trays", tr("Trays"));
    m_table->setSelectionMode(QAbstractItemView::ExtendedSelection);
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::Interactive);
    m_table->horizontalHeader()->setStretchLastSection(true);
    for (int i = 0; i < TrayListModel::Columns; ++i) {
        m_table->setColumnWidth(i, scaled(kColumnWidths[static_cast<std::size_t>(i)]));
    }
}

QWidget* TraysPage::buildFilters()
{
    auto* bar = new QWidget;
    auto* row = new FlowLayout(bar);
    m_search = new QLineEdit;
    m_search->setObjectName("search");
    m_search->setAccessibleName(tr("Search"));
    m_search->setPlaceholderText(tr("Search code, variety, lot, trial, notes"));
    m_search->setClearButtonEnabled(true);
    m_state = choice("state", tr("All trays"), tr("State"));
    for (const TrayState state : {TrayState::Growing, TrayState::Harvested, TrayState::Discarded}) {
        addChoice(*m_state, nameOf(state), state);
    }
    m_variety = choice("variety", tr("All varieties"), tr("Variety"));
    m_medium = choice("medium", tr("All media"), tr("Medium"));
    m_trial = choice("trial", tr("All trials"), tr("Trial"));
    m_search->setMinimumWidth(scaled(270));
    row->addWidget(m_search);
    for (QComboBox* box : {m_state, m_variety, m_medium, m_trial}) {
        row->addWidget(box);
    }
    return bar;
}

void TraysPage::wireSignals()
{
    m_typingPause = new QTimer(this);
    m_typingPause->setObjectName("typingPause");
    m_typingPause->setSingleShot(true);
    m_typingPause->setInterval(kTypingPauseMs);
    connect(m_typingPause, &QTimer::timeout, this, &TraysPage::narrowList);
    connect(m_search, &QLineEdit::textChanged, this, &TraysPage::noteTyping);
    connect(m_search, &QLineEdit::returnPressed, this, [this] {
        if (m_typingPause->isActive()) {
            narrowList();
        }
        if (m_model->rowCount() > 0) {
            openSheet(m_model->row(0).record.tray.id);
        }
    });
    for (QComboBox* box : {m_state, m_variety, m_medium, m_trial}) {
        connect(box, &QComboBox::currentIndexChanged, this, &TraysPage::narrowList);
    }
    connect(m_table, &QTableView::activated, this, [this](const QModelIndex& index) {
        openSheet(m_model->row(index.row()).record.tray.id);
    });
    connect(m_table, &QTableView::clicked, this, [this](const QModelIndex& index) {
        // With Ctrl or Shift trays are selected.
        if (QApplication::keyboardModifiers() == Qt::NoModifier) {
            openSheet(m_model->row(index.row()).record.tray.id);
        }
    });
    connect(m_table->selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &TraysPage::showLabels);
    connect(m_sheet, &TraySheetView::left, this, &TraysPage::openList);
    connect(m_sheet, &TraySheetView::weighingAsked, this, &Page::weighingAsked);
    connect(m_sheet, &TraySheetView::wateringAsked, this, &Page::wateringAsked);
}

void TraysPage::fillChoices()
{
    refill(*m_variety, [this] {
        m_variety->addItem(tr("All varieties"));
        for (const Variety& each :
             journal().varieties().all(Listed::All).value_or(std::vector<Variety>())) {
            addChoice(*m_variety, QString::fromStdString(each.name), each.id);
        }
    });
    refill(*m_medium, [this] {
        m_medium->addItem(tr("All media"));
        for (const Medium& each :
             journal().media().all(Listed::All).value_or(std::vector<Medium>())) {
            addChoice(*m_medium, QString::fromStdString(each.name), each.id);
        }
    });
    refill(*m_trial, [this] {
        m_trial->addItem(tr("All trials"));
        for (const Trial& each : journal().trials().all().value_or(std::vector<Trial>())) {
            addChoice(*m_trial, QString::fromStdString(each.code + " " + each.name), each.id);
        }
    });
}

TrayFilter TraysPage::filter() const
{
    TrayFilter made;
    made.text = m_search->text().toStdString();
    made.state = chosen<TrayState>(*m_state);
    made.variety = chosen<VarietyId>(*m_variety);
    made.medium = chosen<MediumId>(*m_medium);
    made.trial = chosen<TrialId>(*m_trial);
    return made;
}

// Whichever is in front; the list is read when one comes back to it.
void TraysPage::reload()
{
    m_isListStale = true;
    if (isListInFront()) {
        fillChoices();
        m_shown = filter();
        // As far as it was scrolled through.
        readList(std::max(kRowsAPage, m_model->rowCount()));
    } else {
        m_sheet->reload();
    }
}

bool TraysPage::isListInFront() const
{
    return m_stack->currentWidget() != m_sheet;
}

void TraysPage::noteTyping()
{
    if (m_typingPause->interval() == 0) {
        narrowList();
    } else {
        m_typingPause->start();
    }
}

void TraysPage::narrowList()
{
    m_shown = filter();
    readList(kRowsAPage);
}

void TraysPage::readList(int rows)
{
    m_typingPause->stop();
    const auto listing = journal().trays().listing(m_shown, {std::nullopt, rows});
    if (!accept(listing)) {
        return;
    }
    m_isListStale = false;
    const bool isEmpty = listing->rows.empty();
    m_damaged->setText(damagedWords(listing->damaged));
    m_damaged->setVisible(!listing->damaged.empty());
    m_model->show(*listing, units(), journal().clock().today());
    if (isEmpty) {
        const bool isSown = journal().trays().counts({}).value_or(TrayCounts()).all > 0;
        m_empty->setText(isSown ? tr("No tray fits. Change the search, or sow one.")
                                : tr("Nothing was sown yet."));
    }
    m_empty->setVisible(isEmpty);
    m_table->setVisible(!isEmpty);
    count(*listing);
}

// Where the whole list was read they need no look of their own; else all that fits is counted
// aside.
void TraysPage::count(const TrayListing& listing)
{
    m_counting.forget();
    if (listing.hasMore) {
        m_counting.ask(
            tr("Counting trays"),
            [filter = m_shown](Journal& own, const Progress&) {
                return own.trays().counts(filter);
            },
            [this](const Result<TrayCounts>& counts) {
                if (accept(counts)) {
                    showCounts(*counts);
                }
            });
        return;
    }
    TrayCounts counts{static_cast<int>(listing.rows.size()), 0};
    for (const TrayListRow& row : listing.rows) {
        counts.growing += row.record.tray.state == TrayState::Growing ? 1 : 0;
    }
    showCounts(counts);
}

void TraysPage::showCounts(const TrayCounts& counts)
{
    m_counts = counts;
    m_head->setSubtitle(tr("%n tray(s)", nullptr, m_counts.all) + "  ·  " +
                        tr("%1 growing").arg(m_counts.growing));
    showLabels();
}

void TraysPage::begin()
{
    if (isListInFront()) {
        m_search->setFocus();
    }
}

bool TraysPage::hasUnsaved() const
{
    return m_sheet->hasTyped();
}

bool TraysPage::find()
{
    openList();
    m_search->selectAll();
    return true;
}

bool TraysPage::print()
{
    if (!m_labels->isEnabled()) {
        return false;
    }
    openLabels();
    return true;
}

// Where the window is narrow the columns that the sheet shows too make way.
void TraysPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    const int room = width() - scaled(56 + 36 + 20);
    m_table->setColumnHidden(TrayListModel::TrialCode, room < scaled(942));
    m_table->setColumnHidden(TrayListModel::Place, room < scaled(882));
    m_table->setColumnHidden(TrayListModel::Day, room < scaled(758));
    m_table->setColumnHidden(TrayListModel::Yield, room < scaled(706));
    m_table->setColumnHidden(TrayListModel::Harvest, room < scaled(622));
    const int spare = std::max(0, room - scaled(942));
    // Beside the code, both names have to be seen.
    const int least = std::max(scaled(70), (room - scaled(100)) / 2);
    m_table->setColumnWidth(TrayListModel::VarietyName, std::min(scaled(150), least) + spare / 2);
    m_table->setColumnWidth(TrayListModel::MediumName, std::min(scaled(170), least) + spare / 2);
}

void TraysPage::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape && !isListInFront()) {
        openList();
        return;
    }
    Page::keyPressEvent(event);
}

} // namespace plumule::ui

#include "moc_trays_page.cpp"
