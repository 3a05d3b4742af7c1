#include "ui/exchange/import_form.h"

#include "ui/exchange/import_text.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QGridLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

// What is wider than this is no table of a grow room; the rest is left out.
constexpr std::size_t kMostShown = 60;

QString wordOf(std::string_view text)
{
    return QString::fromUtf8(text.data(), qsizetype(text.size()));
}

const TableColumn* columnNamed(TableKind kind, const QString& name)
{
    for (const TableColumn& column : columnsOf(kind)) {
        if (wordOf(column.name) == name) {
            return &column;
        }
    }
    return nullptr;
}

template <class Value>
QComboBox* choiceOf(const char* name, const QString& spoken, std::initializer_list<Value> values)
{
    auto* box = new QComboBox;
    box->setObjectName(name);
    box->setAccessibleName(spoken);
    for (const Value value : values) {
        addChoice(*box, choiceText(value), value);
    }
    return box;
}

} // namespace

ImportForm::ImportForm(QWidget* parent)
    : QWidget(parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    buildChoices();
    wireChoices();
}

void ImportForm::buildChoices()
{
    m_kind = new QComboBox;
    m_kind->setObjectName("importKind");
    m_kind->setAccessibleName(tr("What the rows are"));
    for (const TableKind kind : allTableKinds()) {
        addChoice(*m_kind, choiceText(kind), kind);
    }
    m_encoding = choiceOf("importEncoding", tr("Letters"),
                          {TextEncoding::Utf8, TextEncoding::Utf16Little, TextEncoding::Utf16Big,
                           TextEncoding::Latin1});
    m_dates = choiceOf("importDates", tr("Days"),
                       {DateOrder::YearMonthDay, DateOrder::DayMonthYear, DateOrder::MonthDayYear,
                        DateOrder::Unclear});
    m_decimals =
        choiceOf("importDecimals", tr("Decimals"),
                 {DecimalMark::Ours, DecimalMark::Point, DecimalMark::Comma, DecimalMark::Unclear});
    auto* form = fieldForm();
    form->addRow(tr("Rows"), m_kind);
    form->addRow(tr("Letters"), m_encoding);
    form->addRow(tr("Days"), m_dates);
    form->addRow(tr("Decimals"), m_decimals);
    static_cast<QVBoxLayout*>(layout())->addLayout(form);
}

void ImportForm::wireChoices()
{
    connect(m_kind, &QComboBox::activated, this, [this] {
        // Other columns: all else is proposed anew.
        m_ask = {chosenOf<TableKind>(*m_kind), m_ask.encoding, {}, {}, {}};
        Q_EMIT changed();
    });
    connect(m_encoding, &QComboBox::activated, this, [this] {
        m_ask.encoding = chosenOf<TextEncoding>(*m_encoding);
        m_ask.columns.clear(); // the header may read otherwise now
        Q_EMIT changed();
    });
    connect(m_dates, &QComboBox::activated, this, [this] {
        m_ask.dateOrder = chosenOf<DateOrder>(*m_dates);
        Q_EMIT changed();
    });
    connect(m_decimals, &QComboBox::activated, this, [this] {
        m_ask.decimalMark = chosenOf<DecimalMark>(*m_decimals);
        Q_EMIT changed();
    });
}

void ImportForm::fill(const ImportPreview& preview)
{
    m_ask.kind = preview.form.kind;
    choose(*m_kind, std::optional(preview.form.kind));
    choose(*m_encoding, std::optional(preview.form.encoding));
    choose(*m_dates, std::optional(preview.form.dateOrder));
    choose(*m_decimals, std::optional(preview.form.decimalMark));
    buildColumns(preview);
}

void ImportForm::buildColumns(const ImportPreview& preview)
{
    delete m_columns;
    m_lines.clear();
    m_header = preview.header;
    m_columns = new QWidget;
    auto* grid = new QGridLayout(m_columns);
    grid->setContentsMargins(0, 0, 0, 0);
    const std::size_t shown = std::min(kMostShown, m_header.size());
    for (std::size_t i = 0; i < shown; ++i) {
        const int row = static_cast<int>(i);
        m_lines.push_back(lineOf(preview, i));
        grid->addWidget(label(QString::fromStdString(m_header[i])), row, 0);
        grid->addWidget(m_lines.back().column, row, 1);
        grid->addWidget(m_lines.back().unit, row, 2);
    }
    if (const std::size_t more = m_header.size() - shown; more > 0) {
        grid->addWidget(
            label(tr("%n more column(s) are left out.", nullptr, static_cast<int>(more)), "muted"),
            static_cast<int>(shown), 0, 1, 3);
    }
    static_cast<QVBoxLayout*>(layout())->addWidget(m_columns);
}

ImportForm::Line ImportForm::lineOf(const ImportPreview& preview, std::size_t at)
{
    const QString name = QString::fromStdString(m_header[at]);
    Line line{new QComboBox(m_columns), new QComboBox(m_columns)};
    line.column->setObjectName(QStringLiteral("importColumn%1").arg(at));
    line.column->setAccessibleName(tr("What the column %1 is").arg(name));
    line.unit->setObjectName(QStringLiteral("importUnit%1").arg(at));
    line.unit->setAccessibleName(tr("The unit of the column %1").arg(name));
    line.column->addItem(tr("left out"), QString());
    std::string unit;
    const auto& columns = columnsOf(preview.form.kind);
    for (std::size_t i = 0; i < columns.size(); ++i) {
        line.column->addItem(wordOf(columns[i].name), wordOf(columns[i].name));
        if (preview.form.columns[i].at == at) {
            line.column->setCurrentIndex(line.column->count() - 1);
            unit = preview.form.columns[i].unit;
        }
    }
    fillUnits(line, unit);
    connect(line.column, &QComboBox::activated, this, [this, at] { chooseColumn(at); });
    connect(line.unit, &QComboBox::activated, this, [this] { takeColumns(); });
    return line;
}

void ImportForm::fillUnits(const Line& line, const std::string& chosen) const
{
    line.unit->clear();
    if (const auto* column = columnNamed(m_ask.kind, line.column->currentData().toString())) {
        for (const std::string_view unit : unitsOf(column->kind)) {
            line.unit->addItem(unitName(unit), wordOf(unit));
        }
    }
    line.unit->setCurrentIndex(std::max(0, line.unit->findData(QString::fromStdString(chosen))));
    line.unit->setVisible(line.unit->count() > 0);
}

// The column that another one of the file was until now is taken from it.
void ImportForm::chooseColumn(std::size_t at)
{
    const QVariant chosen = m_lines[at].column->currentData();
    for (std::size_t i = 0; i < m_lines.size(); ++i) {
        if (i != at && m_lines[i].column->currentData() == chosen) {
            m_lines[i].column->setCurrentIndex(0);
            fillUnits(m_lines[i], {});
        }
    }
    fillUnits(m_lines[at], {});
    takeColumns();
}

void ImportForm::takeColumns()
{
    m_ask.columns.clear();
    for (const TableColumn& column : columnsOf(m_ask.kind)) {
        NamedMatch match{std::string(column.name), "", ""};
        for (std::size_t i = 0; i < m_lines.size(); ++i) {
            if (m_lines[i].column->currentData().toString() == wordOf(column.name)) {
                match.header = m_header[i];
                match.unit = m_lines[i].unit->currentData().toString().toStdString();
            }
        }
        m_ask.columns.push_back(std::move(match));
    }
    Q_EMIT changed();
}

} // namespace plumule::ui

#include "moc_import_form.cpp"
