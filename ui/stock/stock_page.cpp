#include "ui/stock/stock_page.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/stock/stock_entries.h"
#include "core/stock/stock_rules.h"
#include "ui/page/table_card.h"
#include "ui/stock/bar_delegate.h"
#include "ui/stock/stock_tables.h"
#include "ui/stock/stock_text.h"
#include "ui/stock/trace_card.h"
#include "ui/widget/key_button.h"
#include "ui/widget/lone_key.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QScrollArea>
#include <QTableView>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kLeastTables = 700;
constexpr int kTraceWidth = 344;
constexpr double kWholeBar = 120; // days

Bar daysBar(std::optional<double> days, Low low)
{
    return {days.value_or(0) / kWholeBar, low != Low::No};
}

void stretch(QTableView& table, int column)
{
    table.horizontalHeader()->setSectionResizeMode(column, QHeaderView::Stretch);
}

} // namespace

StockPage::StockPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
    , m_letter(new LoneKey(this))
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(12));
    column->setSpacing(scaled(12));
    buildHead();
    column->addWidget(m_head);
    QVBoxLayout* inner = nullptr;
    QScrollArea* area = scrolling(inner);
    m_beside = new QBoxLayout(QBoxLayout::LeftToRight);
    m_beside->setSpacing(scaled(14));
    auto* tables = new QVBoxLayout;
    tables->setSpacing(scaled(14));
    m_beside->addLayout(tables, 1);
    buildTables(tables);
    m_trace = new TraceCard(journal, this->services());
    m_beside->addWidget(m_trace, 0, Qt::AlignTop);
    inner->addLayout(m_beside);
    inner->addStretch(1);
    column->addWidget(area, 1);
    wireTables();
    QMetaObject::invokeMethod(this, &StockPage::noteBadge, Qt::QueuedConnection);
}

void StockPage::noteBadge()
{
    if (isVisible()) { // reload() tells it
        return;
    }
    if (const auto stock = journal().stock().now()) {
        Q_EMIT badgeChanged(static_cast<int>(stock->low.size()) + stock->piecesDue());
    }
}

void StockPage::followClock()
{
    Page::followClock();
    noteBadge();
}

QString StockPage::name() const
{
    return tr("Stock");
}

bool StockPage::concerns(Concept) const
{
    return true; // what is left depends on nearly all that is done
}

void StockPage::buildHead()
{
    m_head = new PageHead(tr("Stock"));
    auto* count = new KeyButton(tr("Count…"), 'C');
    count->setObjectName("stockCount");
    auto* bought = new KeyButton(tr("Bought…"), 'B');
    bought->setObjectName("stockBought");
    auto* marks = new KeyButton(tr("When is it low…"), 'L');
    marks->setObjectName("stockMarks");
    auto* sheet = new KeyButton(tr("Print"), 'P');
    sheet->setObjectName("stockPrint");
    for (KeyButton* each : {count, bought, marks}) {
        each->setEnabled(!journal().isReadOnly());
    }
    for (KeyButton* each : {count, bought, marks, sheet}) {
        m_head->addControl(each);
    }
    connect(count, &QPushButton::clicked, this, &StockPage::openCount);
    connect(bought, &QPushButton::clicked, this, &StockPage::openBought);
    connect(marks, &QPushButton::clicked, this, &StockPage::openMarks);
    connect(sheet, &QPushButton::clicked, this, &StockPage::print);
    connect(m_letter, &LoneKey::stoodAlone, this, &StockPage::pressLetter);
}

void StockPage::buildTables(QVBoxLayout* column)
{
    m_seed = new RowsModel<SeedLine>({}, this);
    m_seedCard = new TableCard(services(), tr("Seed lots"), m_seed, "seedStock");
    m_seedCard->table()->setItemDelegateForColumn(
        kSeedDaysColumn, new BarDelegate(
                             [this](int row) -> std::optional<Bar> {
                                 const SeedLine& line = m_seed->row(row);
                                 return line.daysLeft
                                            ? std::optional(daysBar(line.daysLeft, line.low))
                                            : std::nullopt;
                             },
                             this));
    m_seedNote = label(QString(), "muted");
    m_seedNote->setObjectName("seedNote");
    m_seedNote->setWordWrap(true);
    m_seedCard->body()->addWidget(m_seedNote);
    column->addWidget(m_seedCard);
    m_pieceColumn = new QVBoxLayout;
    m_pieceColumn->setSpacing(scaled(14));
    column->addLayout(m_pieceColumn);
    m_sanitised = new KeyButton(tr("Sanitised…"), 'Z');
    m_sanitised->setObjectName("stockSanitised");
    connect(m_sanitised, &QPushButton::clicked, this, &StockPage::openSanitising);
    m_pieceColumn->addWidget(m_sanitised, 0, Qt::AlignLeft);
    m_supplies = new RowsModel<StockLine>({}, this);
    m_supplyCard = new TableCard(services(), tr("Media, water, packing"), m_supplies, "supplies");
    m_supplyCard->table()->setItemDelegateForColumn(
        kSupplyDaysColumn, new BarDelegate(
                               [this](int row) -> std::optional<Bar> {
                                   const StockLine& line = m_supplies->row(row);
                                   return line.daysLeft
                                              ? std::optional(daysBar(line.daysLeft, line.low))
                                              : std::nullopt;
                               },
                               this));
    column->addWidget(m_supplyCard);
    column->addWidget(buildCaution());
    column->addStretch(1);
}

QWidget* StockPage::buildCaution()
{
    auto* caution = new Card(tr("Mind"), "caution");
    auto* words =
        label(tr("Sanitisers and pH adjusters burn skin and eyes: gloves and glasses, and "
                 "follow the label. Never mix chlorine with acids. Clean before you "
                 "sanitise; mould means discard."));
    words->setWordWrap(true);
    caution->body()->addWidget(words);
    return caution;
}

void StockPage::wireTables()
{
    connect(m_seedCard->table()->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& now) {
                if (now.isValid() && m_followsRows) {
                    m_trace->follow(m_seed->row(now.row()).stock.lot.id);
                }
            });
    connect(m_supplyCard->table(), &QTableView::activated, this, &StockPage::openCount);
    connect(m_trace, &TraceCard::trayAsked, this, &Page::trayAsked);
    for (QTableView* each : {m_seedCard->table(), m_supplyCard->table()}) {
        each->installEventFilter(this);
    }
}

StockPage::PieceTable StockPage::addPieceTable()
{
    PieceTable added;
    added.model = new RowsModel<PieceLine>({}, this);
    const QByteArray name = "pieces" + QByteArray::number(static_cast<int>(m_pieces.size()));
    added.card = new TableCard(services(), tr("Pieces"), added.model, name.constData());
    RowsModel<PieceLine>* model = added.model;
    added.card->table()->setItemDelegateForColumn(
        kPieceUsesColumn,
        new BarDelegate(
            [this, model](int row) -> std::optional<Bar> {
                const PieceLine& line = model->row(row);
                for (const PieceGroup& group : m_stock.pieces) {
                    if (group.medium.id == line.record.piece.medium && group.medium.plannedUses) {
                        return Bar{line.record.uses / double(*group.medium.plannedUses),
                                   line.isPast};
                    }
                }
                return std::nullopt;
            },
            this));
    m_pieceColumn->insertWidget(static_cast<int>(m_pieces.size()), added.card);
    added.card->table()->installEventFilter(this);
    connect(added.card->table()->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this, model](const QModelIndex& now) {
                if (now.isValid()) {
                    m_trace->follow(model->row(now.row()).record.piece.id);
                }
            });
    m_pieces.push_back(added);
    return added;
}

void StockPage::reload()
{
    auto stock = journal().stock().now();
    if (!accept(stock)) {
        return;
    }
    m_stock = std::move(*stock);
    showStock();
    showPieces();
    showHead();
    m_trace->readAgain();
    if (m_trace->isEmpty() && !m_stock.seed.empty()) {
        const auto inHand = std::find_if(m_stock.seed.begin(), m_stock.seed.end(),
                                         [](const SeedLine& line) { return line.daysLeft; });
        const SeedLine& first = inHand == m_stock.seed.end() ? m_stock.seed.front() : *inHand;
        m_trace->follow(first.stock.lot.id);
    }
    Q_EMIT badgeChanged(static_cast<int>(m_stock.low.size()) + m_stock.piecesDue());
}

void StockPage::showStock()
{
    const auto layout = journal().room().layout();
    const QString currency = layout ? QString::fromStdString(layout->room.currency) : QString();
    m_seed->show(seedColumns(units(), currency), m_stock.seed);
    stretch(*m_seedCard->table(), 1);
    m_seedCard->fit();
    m_supplies->show(supplyColumns(units()), m_stock.supplies);
    stretch(*m_supplyCard->table(), 0);
    m_supplyCard->fit();
    QStringList weak;
    for (const SeedLine& line : m_stock.seed) {
        if (line.isWeak) {
            weak << QString::fromStdString(line.variety + " " + line.stock.lot.lotNumber);
        }
    }
    QString words = m_stock.seed.empty()
                        ? tr("No seed lot is on the shelf: press Bought to write one down.")
                        : tr("Planned: trials of the next %1 days. Days: what is left over the "
                             "sowing of the last %2 days.")
                              .arg(kPlanDays)
                              .arg(kRateDays);
    if (!weak.isEmpty()) {
        words += QLatin1Char(' ') + tr("Germinates under %1 %: %2. Sow it thicker, or not at all.")
                                        .arg(kWeakGerminationPercent)
                                        .arg(weak.join(QStringLiteral(", ")));
    }
    m_seedNote->setText(words);
}

void StockPage::showPieces()
{
    while (m_pieces.size() < m_stock.pieces.size()) {
        addPieceTable();
    }
    for (std::size_t i = 0; i < m_pieces.size(); ++i) {
        const bool isShown = i < m_stock.pieces.size();
        m_pieces[i].card->setVisible(isShown);
        if (!isShown) {
            m_pieces[i].model->show({}, {});
            continue;
        }
        const PieceGroup& group = m_stock.pieces[i];
        m_pieces[i].card->setHeading(
            tr("%1, %n piece(s): %2", nullptr, static_cast<int>(group.pieces.size()))
                .arg(QString::fromStdString(group.medium.name), groupText(group)));
        m_pieces[i].model->show(pieceColumns(group.medium, m_stock.today), group.pieces);
        stretch(*m_pieces[i].card->table(), 4);
        m_pieces[i].card->fit();
    }
    m_sanitised->setVisible(!m_stock.pieces.empty());
    const int due = m_stock.piecesDue();
    m_sanitised->setText(due == 0 ? tr("Sanitised…") : tr("Sanitised %n piece(s)…", nullptr, due));
    m_sanitised->setEnabled(due > 0 && !journal().isReadOnly());
}

void StockPage::showHead()
{
    QStringList parts{dayText(m_stock.today), lowCount(static_cast<int>(m_stock.low.size()))};
    if (const int due = m_stock.piecesDue(); due > 0) {
        parts << tr("%n piece(s) to sanitise", nullptr, due);
    }
    parts << (m_stock.lastCounted ? tr("last counted %1").arg(shortDayText(*m_stock.lastCounted))
                                  : tr("not counted yet"));
    m_head->setSubtitle(parts.join(QString::fromUtf8(" · ")));
    m_head->setToolTip(lowSentence(m_stock.low));
}

// The table takes its first row as it gets the focus: nobody asked where that lot went.
void StockPage::begin()
{
    m_followsRows = false;
    m_seedCard->table()->setFocus();
    m_followsRows = true;
}

void StockPage::resizeEvent(QResizeEvent* event)
{
    Page::resizeEvent(event);
    const bool isBeside = m_beside->direction() == QBoxLayout::LeftToRight;
    const bool fits = standsBeside(width(), scaled(kLeastTables) + scaled(kTraceWidth), isBeside);
    m_beside->setDirection(fits ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_beside->setAlignment(m_trace, fits ? Qt::AlignTop : Qt::Alignment());
    m_trace->setMinimumWidth(fits ? scaled(kTraceWidth) : 0);
    m_trace->setMaximumWidth(fits ? scaled(kTraceWidth) : QWIDGETSIZE_MAX);
}

} // namespace plumule::ui

#include "moc_stock_page.cpp"
