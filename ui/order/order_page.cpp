#include "ui/order/order_page.h"

#include "core/journal/order/order_entries.h"
#include "core/order/order_rules.h"
#include "ui/order/chance_bar.h"
#include "ui/order/kept_card.h"
#include "ui/order/order_card.h"
#include "ui/order/order_cuts_dialog.h"
#include "ui/order/order_dialog.h"
#include "ui/order/order_text.h"
#include "ui/tray/sow_dialog.h"
#include "ui/widget/key_button.h"
#include "ui/widget/lone_key.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QScrollArea>
#include <QTableView>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kBesideWidth = 900;

QString nameIn(const std::string& text)
{
    return QString::fromStdString(text);
}

} // namespace

OrderPage::OrderPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
    , m_aside(journal, services.tasks, this)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(12));
    column->setSpacing(scaled(14));
    m_head = new PageHead(tr("Orders"));
    m_new = new KeyButton(tr("New order…"), QStringLiteral("N"), "primary");
    m_new->setObjectName("orderNew");
    m_new->setEnabled(!journal.isReadOnly());
    m_head->addControl(m_new);
    column->addWidget(m_head);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner), 1);
    buildTable();
    inner->addWidget(m_tableCard);
    m_below = new QBoxLayout(QBoxLayout::LeftToRight);
    m_below->setSpacing(scaled(14));
    m_card = new OrderCard;
    m_kept = new KeptCard;
    m_below->addWidget(m_card, 1);
    m_below->addWidget(m_kept, 1);
    inner->addLayout(m_below, 1);
    wireSignals();
}

QString OrderPage::name() const
{
    return tr("Orders");
}

bool OrderPage::concerns(Concept about) const
{
    return about != Concept::Watering && about != Concept::Cost && about != Concept::Climate;
}

void OrderPage::buildTable()
{
    auto* card = new Card;
    m_tableCard = card;
    m_model = new RowsModel<OrderLine>(columnsIn(UnitText()), this);
    m_table = plainTable(m_model, "orders", tr("Promises to come"));
    m_chance = new ChanceBar(m_table);
    m_table->setItemDelegateForColumn(Met, m_chance);
    card->body()->addWidget(m_table);
}

void OrderPage::wireSignals()
{
    m_letter = new LoneKey(this);
    m_table->installEventFilter(this);
    connect(m_letter, &LoneKey::stoodAlone, this, &OrderPage::writeNew);
    connect(m_new, &QPushButton::clicked, this, &OrderPage::writeNew);
    connect(m_card, &OrderCard::changeAsked, this, &OrderPage::change);
    connect(m_card, &OrderCard::sowAsked, this, &OrderPage::sow);
    connect(m_kept, &KeptCard::cutsAsked, this, &OrderPage::sayCuts);
    connect(m_table, &QTableView::activated, this, &OrderPage::sow);
    connect(m_table->selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &OrderPage::showChosen);
}

std::vector<RowColumn<OrderLine>> OrderPage::columnsIn(const UnitText& units)
{
    std::vector<RowColumn<OrderLine>> columns(Columns);
    columns[For] = {tr("For"), [](const OrderLine& line) { return weekdayText(line.promise.day); }};
    columns[For].isStrong = true;
    columns[Whom] = {tr("Whom"),
                     [](const OrderLine& line) { return nameIn(line.promise.order.customer); }};
    columns[VarietyName] = {tr("Variety"),
                            [](const OrderLine& line) { return nameIn(line.variety); }};
    columns[Promised] = {
        tr("Promised"),
        [units](const OrderLine& line) { return units.mass(line.promise.order.amount, 0); },
        Qt::AlignRight, true};
    columns[Growing] = {tr("Growing for it"),
                        [units](const OrderLine& line) { return growingText(line, units); }};
    addNeeds(columns, units);
    columns[Met] = {
        tr("Met, in 100"),
        [](const OrderLine& line) { return QString::number(inHundred(line.planned.chance)); },
        Qt::AlignRight};
    return columns;
}

void OrderPage::addNeeds(std::vector<RowColumn<OrderLine>>& columns, const UnitText& units)
{
    const auto warnedWhere = [](auto isShort) {
        return [isShort](const OrderLine& line) {
            return line.sowing && isShort(*line.sowing) ? ui::palette().warning : QColor();
        };
    };
    columns[Trays] = {tr("To sow"),
                      [](const OrderLine& line) {
                          return line.sowing ? QString::number(line.sowing->trays)
                                             : QStringLiteral("–");
                      },
                      Qt::AlignRight};
    columns[Sow] = {tr("When"), sowText};
    columns[Sow].ink = warnedWhere([](const SowingNeed& need) { return need.isLate; });
    columns[Places] = {tr("Places"), placesText, Qt::AlignRight};
    columns[Places].ink = warnedWhere(
        [](const SowingNeed& need) { return !need.isLate && need.trays > need.freePlaces; });
    columns[Seed] = {tr("Seed"), [units](const OrderLine& line) { return seedText(line, units); },
                     Qt::AlignRight};
    columns[Seed].ink = warnedWhere([](const SowingNeed& need) {
        return need.seed && need.seedLeft && *need.seedLeft < *need.seed;
    });
}

void OrderPage::reload()
{
    m_aside.ask(
        tr("Looking at what was promised"),
        [](Journal& journal, const Progress&) { return journal.orders().book(); },
        [this](const Result<OrderBook>& book) {
            if (accept(book)) {
                m_book = *book;
                showBook();
            }
        });
}

void OrderPage::showBook()
{
    const OrderLine* before = chosenLine();
    const auto kept = before == nullptr ? PromiseKey{} : before->promise.key();
    const UnitText shown = units();
    m_model->show(columnsIn(shown), m_book.toCome);
    Mass promised;
    for (const OrderLine& line : m_book.toCome) {
        promised += line.promise.order.amount;
    }
    const int row = rowOf(kept);
    m_head->setSubtitle(m_book.toCome.empty()
                            ? tr("Nothing to come")
                            : tr("%n to come, %1 · sown so that each is met 9 times in 10", nullptr,
                                 static_cast<int>(m_book.toCome.size()))
                                  .arg(shown.mass(promised, 0)));
    m_tableCard->setVisible(!m_book.toCome.empty());
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setSectionResizeMode(Growing, QHeaderView::Stretch);
    fitHeight(*m_table);
    m_kept->show(m_book.past, shown);
    m_table->setCurrentIndex(m_model->index(row, 0));
    hideWhatDoesNotFit();
    showChosen();
}

// Of one that isn't shown: the first for which something is to be sown.
int OrderPage::rowOf(PromiseKey promise) const
{
    const auto& lines = m_book.toCome;
    auto found = std::find_if(lines.begin(), lines.end(), [promise](const OrderLine& line) {
        return line.promise.key() == promise;
    });
    if (found == lines.end()) {
        found = std::find_if(lines.begin(), lines.end(),
                             [](const OrderLine& line) { return line.sowing.has_value(); });
    }
    return found == lines.end() ? 0 : static_cast<int>(found - lines.begin());
}

const OrderLine* OrderPage::chosenLine() const
{
    const int row = m_table->currentIndex().row();
    return row < 0 || row >= m_model->rowCount() ? nullptr : &m_model->row(row);
}

void OrderPage::showChosen()
{
    if (const OrderLine* line = chosenLine()) {
        m_card->show(*line, units(), m_book.today, !journal().isReadOnly());
    } else {
        m_card->showNothing();
    }
}

void OrderPage::begin()
{
    m_model->rowCount() > 0 ? m_table->setFocus() : m_new->setFocus();
}

void OrderPage::writeNew()
{
    Order fresh;
    fresh.day = journal().clock().today() + kDaysAhead / 2;
    auto* dialog = new OrderDialog(journal(), services(), fresh, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

void OrderPage::change()
{
    const OrderLine* line = chosenLine();
    if (line == nullptr || journal().isReadOnly()) {
        return;
    }
    auto* dialog = new OrderDialog(journal(), services(), line->promise.order, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

void OrderPage::sow()
{
    const OrderLine* line = chosenLine();
    if (line == nullptr || !isTimeToSow(*line, m_book.today) || journal().isReadOnly()) {
        return;
    }
    const SowingNeed& need = *line->sowing;
    auto* dialog = new SowDialog(journal(), services(), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->propose({line->promise.order.variety, need.medium.id, need.trays, line->promise.day,
                     need.times.soak.has_value()});
    connect(dialog, &SowDialog::sown, this, [this] { tellLast(); });
    dialog->open();
}

void OrderPage::sayCuts(int row)
{
    if (row < 0 || row >= static_cast<int>(m_book.past.size()) || journal().isReadOnly()) {
        return;
    }
    const PastPromise& past = m_book.past[static_cast<std::size_t>(row)];
    auto* dialog = new OrderCutsDialog(journal(), services(), past.promise,
                                       QString::fromStdString(past.variety), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

// What the card below says too makes way first.
void OrderPage::hideWhatDoesNotFit()
{
    const int room = width() - scaled(56 + 36);
    m_table->setColumnHidden(Seed, room < scaled(1000));
    m_table->setColumnHidden(Places, room < scaled(880));
    m_table->setColumnHidden(Growing, room < scaled(760));
    m_table->setColumnHidden(Sow, room < scaled(560));
    m_table->setColumnHidden(Whom, room < scaled(480));
    m_table->setColumnHidden(Trays, room < scaled(430));
    m_chance->setFigureAlone(room < scaled(430));
    const bool hasGrowing = !m_table->isColumnHidden(Growing);
    m_table->horizontalHeader()->setSectionResizeMode(
        VarietyName, hasGrowing ? QHeaderView::ResizeToContents : QHeaderView::Stretch);
}

void OrderPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    const bool wasBeside = m_below->direction() == QBoxLayout::LeftToRight;
    m_below->setDirection(standsBeside(width(), scaled(kBesideWidth), wasBeside)
                              ? QBoxLayout::LeftToRight
                              : QBoxLayout::TopToBottom);
    hideWhatDoesNotFit();
}

bool OrderPage::takeLetter(const QKeyEvent& key)
{
    const bool isFast = m_letter->isInABurst(key);
    if (key.key() != Qt::Key_N || key.modifiers() != Qt::NoModifier || !m_new->isEnabled()) {
        return false;
    }
    if (!isFast) {
        m_letter->waitFor(Qt::Key_N);
    }
    return true;
}

// The table would look for a row that begins with the letter.
bool OrderPage::eventFilter(QObject* watched, QEvent* event)
{
    return (event->type() == QEvent::KeyPress && takeLetter(*static_cast<QKeyEvent*>(event))) ||
           Page::eventFilter(watched, event);
}

void OrderPage::keyPressEvent(QKeyEvent* event)
{
    if (!takeLetter(*event)) {
        Page::keyPressEvent(event);
    }
}

} // namespace plumule::ui

#include "moc_order_page.cpp"
