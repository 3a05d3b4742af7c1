#include "ui/week/week_table.h"

#include "core/week/repeat_rules.h"
#include "ui/week/week_text.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QGridLayout>
#include <QPainter>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kWideWidth = 960;
constexpr int kFirstDay = 1; // row; the header is above it
constexpr int kTasks = static_cast<int>(kWeekTasks.size());
constexpr int kExpect = kTasks + 1; // column, after the day and the tasks
constexpr int kRange = kExpect + 1;
constexpr int kBar = kRange + 1;

// The blank parts the words for who looks at the text.
const QString kLineBreak = QStringLiteral("<br> ");

// Counts are bold.
QString markedUp(const WeekEntry& entry)
{
    const QString subject = subjectText(entry).toHtmlEscaped();
    const bool isCounted = entry.task != WeekTask::Order || entry.supply == SupplyKind::Pieces;
    return isCounted ? QStringLiteral("<b>%1</b> %2").arg(countText(entry), subject) : subject;
}

QLabel* richLabel(const QString& text, const QString& spoken)
{
    auto* words = label(QString());
    words->setTextFormat(Qt::RichText);
    words->setText(text);
    words->setWordWrap(true);
    words->setAccessibleName(spoken);
    return words;
}

QLabel* cellOf(const WeekDay& day, WeekTask task)
{
    QStringList lines;
    QStringList spoken;
    QStringList behind;
    for (const WeekEntry& entry : entriesOf(day)) {
        if (entry.task != task) {
            continue;
        }
        lines << markedUp(entry);
        spoken << entryText(entry);
        if (const QString codes = behindText(entry); !codes.isEmpty()) {
            behind << codes;
        }
    }
    auto* cell = richLabel(lines.join(kLineBreak), spoken.join("; "));
    cell->setToolTip(behind.join("\n").toHtmlEscaped());
    return cell;
}

Mass mostExpected(const Week& week)
{
    Mass most = grams(1);
    for (const WeekDay& day : week.days) {
        most = std::max(most, day.expected ? day.expected->high : Mass());
    }
    return most;
}

} // namespace

WeekTable::WeekTable(QWidget* parent)
    : QWidget(parent)
{
    setObjectName("weekTable");
    m_grid = new QGridLayout(this);
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(scaled(12));
    m_grid->setVerticalSpacing(0);
}

void WeekTable::show(const Week& week, const UnitText& units)
{
    m_week = week;
    m_units = units;
    build();
}

bool WeekTable::hasExpected() const
{
    return m_week.expected.has_value();
}

void WeekTable::build()
{
    clearLayout(m_grid);
    m_firsts.clear();
    for (int column = 0; column <= kBar; ++column) {
        m_grid->setColumnStretch(column, 0);
        m_grid->setColumnMinimumWidth(column, 0);
    }
    if (m_week.days.empty()) {
        return;
    }
    if (m_isWide) {
        buildWide();
    } else {
        buildNarrow();
    }
    update();
}

void WeekTable::put(QLabel* words, int row, int column, Qt::Alignment side)
{
    words->setContentsMargins(0, scaled(6), 0, scaled(6));
    // In a day of many lines its name would stand far below where the day begins.
    words->setAlignment(side | (m_isWide ? Qt::AlignVCenter : Qt::AlignTop));
    m_grid->addWidget(words, row, column);
    if (column == 0) {
        m_firsts.push_back(words); // rows are put in from the top
    }
}

QLabel* WeekTable::dayLabel(const WeekDay& day) const
{
    const QString text = weekdayText(day.on);
    QString marked = QStringLiteral("<b>%1</b>%2").arg(text.left(3), text.mid(3));
    if (day.on == m_week.from) {
        marked += ' ' + tr("today");
    }
    auto* words = richLabel(marked, dayText(day.on));
    words->setToolTip(tr("%n place(s) free that evening", nullptr, day.freePlaces));
    return words;
}

void WeekTable::addHeader()
{
    put(label(tr("Day"), "muted"), 0, 0);
    for (int i = 0; i < kTasks; ++i) {
        put(label(nameOf(kWeekTasks[static_cast<std::size_t>(i)]), "muted"), 0, i + 1);
        m_grid->setColumnStretch(i + 1, 1);
    }
    if (hasExpected()) {
        put(label(tr("Expect"), "muted"), 0, kExpect, Qt::AlignRight);
        put(label(tr("8 in 10"), "muted"), 0, kRange, Qt::AlignRight);
        m_bar = label(QString());
        put(m_bar, 0, kBar);
        m_grid->setColumnMinimumWidth(kBar, scaled(90));
    }
}

void WeekTable::addWideDay(const WeekDay& day, int row)
{
    put(dayLabel(day), row, 0);
    m_grid->setRowMinimumHeight(row, scaled(33));
    for (int i = 0; i < kTasks; ++i) {
        const WeekTask task = kWeekTasks[static_cast<std::size_t>(i)];
        if (!day.of(task).empty()) {
            put(cellOf(day, task), row, i + 1);
        }
    }
    if (day.expected) {
        put(label(meanText(*day.expected, m_units), "strong"), row, kExpect, Qt::AlignRight);
        put(label(rangeText(*day.expected, m_units), "muted"), row, kRange, Qt::AlignRight);
    }
}

void WeekTable::addTotals(int row)
{
    put(label(tr("14 days")), row, 0);
    for (int i = 0; i < kTasks; ++i) {
        put(label(totalText(m_week, kWeekTasks[static_cast<std::size_t>(i)])), row, i + 1);
    }
    if (m_week.expected) {
        put(label(meanText(*m_week.expected, m_units), "strong"), row, kExpect, Qt::AlignRight);
        put(label(rangeText(*m_week.expected, m_units), "muted"), row, kRange, Qt::AlignRight);
    }
}

void WeekTable::buildWide()
{
    addHeader();
    int row = kFirstDay;
    for (const WeekDay& day : m_week.days) {
        addWideDay(day, row++);
    }
    addTotals(row);
    m_grid->setColumnMinimumWidth(0, scaled(112));
}

void WeekTable::buildNarrow()
{
    m_grid->setColumnMinimumWidth(0, scaled(96));
    m_grid->setColumnStretch(1, 1);
    put(label(tr("Day"), "muted"), 0, 0);
    put(label(tr("What is to be done"), "muted"), 0, 1);
    int row = kFirstDay;
    for (const WeekDay& day : m_week.days) {
        QStringList lines;
        QStringList spoken;
        for (const WeekEntry& entry : entriesOf(day)) {
            lines << nameOf(entry.task) + ' ' + markedUp(entry);
            spoken << entryText(entry);
        }
        if (day.expected) {
            spoken << tr("Expect %1, 8 in 10 %2")
                          .arg(meanText(*day.expected, m_units), rangeText(*day.expected, m_units));
            lines << spoken.back();
        }
        put(dayLabel(day), row, 0);
        put(richLabel(lines.isEmpty() ? tr("nothing") : lines.join(kLineBreak), spoken.join("; ")),
            row++, 1);
    }
    put(label(tr("14 days")), row, 0);
    QStringList totals;
    for (const WeekTask task : kWeekTasks) {
        if (const QString sum = totalText(m_week, task); !sum.isEmpty()) {
            totals << nameOf(task) + ' ' + sum;
        }
    }
    if (m_week.expected) {
        totals << tr("Expect %1, 8 in 10 %2")
                      .arg(meanText(*m_week.expected, m_units),
                           rangeText(*m_week.expected, m_units));
    }
    put(richLabel(totals.join(kLineBreak), totals.join("; ")), row, 1);
}

// A grid whose labels wrap does not tell its cells' heights; a row's first label fills its cell.
QRect WeekTable::rowRect(int row) const
{
    const QRect first = m_firsts[static_cast<std::size_t>(row)]->geometry();
    return {0, first.top(), width(), first.height()};
}

void WeekTable::paintEvent(QPaintEvent*)
{
    if (m_week.days.empty()) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Palette& colours = ui::palette();
    painter.setPen(Qt::NoPen);
    painter.setBrush(colours.selection);
    painter.drawRoundedRect(rowRect(kFirstDay), scaled(6), scaled(6));
    const int last = static_cast<int>(m_week.days.size());
    for (int i = 0; i <= last; ++i) {
        const Date on = m_week.from + i;
        const bool isHeavy = i == last || (i > 0 && weekdayOf(on) == 0);
        const QRect row = rowRect(kFirstDay + i);
        painter.fillRect(QRect(0, row.top(), width(), isHeavy ? 2 : 1),
                         isHeavy ? colours.fieldEdge : colours.rule);
        if (m_isWide && i < last && m_week.days[static_cast<std::size_t>(i)].expected) {
            QRect cell = rowRect(kFirstDay + i);
            cell.setLeft(m_bar->geometry().left());
            paintBar(painter, *m_week.days[static_cast<std::size_t>(i)].expected, cell);
        }
    }
}

// A stroke to the middle, and a box from the interval's lower end to its upper.
void WeekTable::paintBar(QPainter& painter, const ExpectedGrams& grams, const QRect& cell) const
{
    const double perGram = cell.width() / inGrams(mostExpected(m_week));
    const double y = cell.center().y();
    const double high = scaled(10);
    const auto at = [&](Mass mass) { return cell.left() + inGrams(mass) * perGram; };
    painter.fillRect(QRectF(cell.left(), y - scaled(2), at(grams.mean) - cell.left(), scaled(4)),
                     ui::palette().accentSoft);
    painter.fillRect(
        QRectF(at(grams.low), y - high / 2, std::max(2.0, at(grams.high) - at(grams.low)), high),
        ui::palette().accent);
    painter.fillRect(QRectF(at(grams.mean) - 1, y - high / 2, 2, high), ui::palette().card);
}

void WeekTable::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    const bool isWide = standsBeside(width(), scaled(kWideWidth), m_isWide);
    if (isWide != m_isWide) {
        m_isWide = isWide;
        build();
    }
}

} // namespace plumule::ui

#include "moc_week_table.cpp"
