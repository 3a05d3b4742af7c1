#include "ui/climate/logger_dialog.h"

#include "core/journal/climate/climate_entries.h"
#include "core/journal/room/room_entries.h"
#include "ui/climate/climate_text.h"
#include "ui/page/undoing.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QCheckBox>
#include <QComboBox>
#include <QCompleter>
#include <QFileInfo>
#include <QFormLayout>
#include <QHeaderView>
#include <QLineEdit>
#include <QTableWidget>

namespace plumule::ui {
namespace {

std::optional<std::size_t> columnIn(const QComboBox& box)
{
    const QVariant data = box.currentData();
    return data.isValid() ? std::optional(static_cast<std::size_t>(data.toULongLong()))
                          : std::nullopt;
}

// Two boxes side by side in one row of a form.
QWidget* beside(QWidget* left, QWidget* right)
{
    auto* pair = new QWidget;
    auto* row = new QHBoxLayout(pair);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(left, 3);
    row->addWidget(right, 2);
    return pair;
}

} // namespace

void LoggerDialog::begin(Journal& journal, Services services, QWidget* parent)
{
    services.ask.fileToOpen(
        parent, tr("Bring in a climate logger's file"), tr("Tables (*.csv *.txt);;All files (*)"),
        [&journal, services, parent](const QString& file) {
            services.tasks.run(
                tr("Reading the logger's file"),
                [path = file.toStdString()](const Progress&) { return loggerTableIn(path); },
                parent,
                [&journal, services, parent, file](const Result<CsvTable>& table) {
                    if (!table) {
                        services.messages.refuse(sentence(table.error()));
                        return;
                    }
                    auto* dialog = new LoggerDialog(journal, services, file, *table, parent);
                    dialog->setAttribute(Qt::WA_DeleteOnClose);
                    dialog->open();
                });
        });
}

LoggerDialog::LoggerDialog(Journal& journal, Services services, const QString& file, CsvTable table,
                           QWidget* parent)
    : FormDialog(services.ask, "loggerDialog", tr("Bring in a climate logger's file"), parent)
    , m_journal(journal)
    , m_services(services)
    , m_file(file)
    , m_table(std::make_shared<const CsvTable>(std::move(table)))
    , m_proposed(proposedColumns(*m_table))
{
    wish({scaled(680), scaled(760)});
    leaveFreely();
    body()->addWidget(label(QFileInfo(file).fileName(), "strong"));
    buildLogger();
    buildColumns();
    buildTimes();
    buildFound();
    buildButtons();
    for (QComboBox* box : {m_time, m_clockColumn, m_temperature, m_temperatureUnit, m_humidity,
                           m_light, m_lightUnit, m_order, m_clock}) {
        connect(box, &QComboBox::currentIndexChanged, this, &LoggerDialog::readAgain);
    }
    connect(m_place, &QComboBox::currentIndexChanged, this, &LoggerDialog::showFound);
    connect(m_name, &QLineEdit::textChanged, this, &LoggerDialog::showFound);
    readAgain();
}

void LoggerDialog::buildLogger()
{
    m_name = new QLineEdit(QFileInfo(m_file).completeBaseName());
    m_name->setObjectName("loggerName");
    QStringList known;
    for (const ClimateLogger& one :
         m_journal.climate().loggers().value_or(std::vector<ClimateLogger>())) {
        known << QString::fromStdString(one.name);
    }
    known.removeDuplicates();
    m_name->setCompleter(new QCompleter(known, m_name));
    m_place = new QComboBox;
    m_place->setObjectName("loggerPlace");
    m_place->addItem(tr("the whole room"));
    if (const auto layout = m_journal.room().layout()) {
        const auto add = [&](const ClimateLogger& at) {
            m_place->addItem(placeName(at, *layout),
                             QVariantList{at.rack ? qlonglong(at.rack->value) : 0,
                                          at.shelf ? qlonglong(at.shelf->value) : 0});
        };
        for (const Rack& rack : layout->racks) {
            add({{}, {}, rack.id, {}, {}});
            for (const Shelf& shelf : layout->shelves) {
                if (shelf.rack == rack.id) {
                    add({{}, {}, {}, shelf.id, {}});
                }
            }
        }
    }
    auto* form = fieldForm();
    form->addRow(tr("Logger"), m_name);
    form->addRow(tr("It hung at"), m_place);
    body()->addLayout(form);
    auto* words =
        label(tr("A logger that was moved is brought in by parts, one for each place."), "muted");
    words->setWordWrap(true);
    body()->addWidget(words);
}

QComboBox* LoggerDialog::columnBox(const char* name, const QString& spoken,
                                   std::optional<std::size_t> chosen)
{
    auto* box = new QComboBox;
    box->setObjectName(name);
    box->setAccessibleName(spoken);
    box->addItem(tr("not in the file"));
    for (std::size_t i = 0; i < m_table->header.size(); ++i) {
        box->addItem(QString::fromStdString(m_table->header[i]).left(60), qulonglong(i));
    }
    box->setCurrentIndex(chosen ? static_cast<int>(*chosen) + 1 : 0);
    return box;
}

void LoggerDialog::buildColumns()
{
    m_temperature =
        columnBox("temperatureColumn", tr("Column of temperature"), m_proposed.temperature);
    m_humidity = columnBox("humidityColumn", tr("Column of humidity"), m_proposed.humidity);
    m_light = columnBox("lightColumn", tr("Column of light"), m_proposed.light);
    m_temperatureUnit = new QComboBox;
    m_temperatureUnit->setObjectName("temperatureUnit");
    m_temperatureUnit->setAccessibleName(tr("Unit of temperature"));
    addChoice(*m_temperatureUnit, QStringLiteral("°C"), TemperatureUnit::Celsius);
    addChoice(*m_temperatureUnit, QStringLiteral("°F"), TemperatureUnit::Fahrenheit);
    choose(*m_temperatureUnit, m_proposed.temperatureUnit);
    m_lightUnit = new QComboBox;
    m_lightUnit->setObjectName("lightUnit");
    m_lightUnit->setAccessibleName(tr("Unit of light"));
    addChoice(*m_lightUnit, QStringLiteral("µmol/m²/s"), LightUnit::Ppfd);
    addChoice(*m_lightUnit, tr("lux, not converted"), LightUnit::Lux);
    choose(*m_lightUnit, m_proposed.lightUnit);
    auto* percent = label(tr("relative, %"));
    auto* form = fieldForm();
    form->addRow(tr("Temperature"), beside(m_temperature, m_temperatureUnit));
    form->addRow(tr("Humidity"), beside(m_humidity, percent));
    form->addRow(tr("Light"), beside(m_light, m_lightUnit));
    body()->addLayout(form);
}

void LoggerDialog::buildTimes()
{
    m_time = columnBox("timeColumn", tr("Column of days and times"), m_proposed.time);
    m_clockColumn = columnBox("clockColumn", tr("Column of the time of day"), m_proposed.clock);
    m_clockColumn->setItemText(0, tr("in the same column"));
    m_order = new QComboBox;
    m_order->setObjectName("dateOrder");
    m_order->setAccessibleName(tr("Order of the days"));
    m_order->addItem(tr("choose the order of the days"));
    for (const DayOrder order :
         {DayOrder::YearMonthDay, DayOrder::DayMonthYear, DayOrder::MonthDayYear}) {
        addChoice(*m_order, nameOf(order), order);
    }
    choose(*m_order, m_proposed.order);
    m_clock = new QComboBox;
    m_clock->setObjectName("loggerClock");
    m_clock->setAccessibleName(tr("Clock of the file"));
    for (const LoggerClock clock :
         {LoggerClock::Room, LoggerClock::Utc, LoggerClock::StandardTime}) {
        addChoice(*m_clock, clockName(clock), clock);
    }
    m_clockWords = label(QString(), "muted");
    m_clockWords->setObjectName("clockWords");
    m_clockWords->setWordWrap(true);
    auto* form = fieldForm();
    form->addRow(tr("Day and time"), beside(m_time, m_order));
    form->addRow(tr("Time of day"), m_clockColumn);
    form->addRow(tr("By"), m_clock);
    body()->addLayout(form);
    body()->addWidget(m_clockWords);
}

void LoggerDialog::buildFound()
{
    m_found = label(QString());
    m_found->setObjectName("loggerFound");
    m_found->setWordWrap(true);
    m_faults = new QTableWidget(0, 2);
    m_faults->setObjectName("loggerFaults");
    m_faults->setAccessibleName(tr("Lines that can't be read"));
    m_faults->setTabKeyNavigation(false);
    m_faults->setHorizontalHeaderLabels({tr("Where"), tr("What is wrong, and what to do")});
    m_faults->verticalHeader()->hide();
    m_faults->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_faults->setShowGrid(false);
    m_faults->setMinimumHeight(scaled(140));
    m_faults->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_faults->horizontalHeader()->setStretchLastSection(true);
    m_leaveOut = new QCheckBox(tr("I have looked: leave these lines out"));
    m_leaveOut->setObjectName("loggerLeaveOut");
    body()->addWidget(m_found);
    body()->addWidget(m_faults, 1);
    body()->addWidget(m_leaveOut);
    connect(m_leaveOut, &QCheckBox::toggled, this, &LoggerDialog::showFound);
}

void LoggerDialog::buildButtons()
{
    connect(addButton(tr("Leave it"), "loggerLeave"), &QPushButton::clicked, this,
            &QDialog::reject);
    m_bring = addButton(tr("Bring in"), "loggerBring", "primary");
    connect(m_bring, &QPushButton::clicked, this, &LoggerDialog::bringIn);
}

LoggerColumns LoggerDialog::columns() const
{
    LoggerColumns columns;
    columns.time = columnIn(*m_time);
    columns.clock = columnIn(*m_clockColumn);
    columns.temperature = columnIn(*m_temperature);
    columns.humidity = columnIn(*m_humidity);
    columns.light = columnIn(*m_light);
    columns.temperatureUnit = chosenOf<TemperatureUnit>(*m_temperatureUnit);
    columns.lightUnit = chosenOf<LightUnit>(*m_lightUnit);
    columns.order = chosen<DayOrder>(*m_order);
    columns.clockOfTimes = chosenOf<LoggerClock>(*m_clock);
    return columns;
}

ClimateLogger LoggerDialog::logger() const
{
    ClimateLogger at;
    at.name = m_name->text().toStdString();
    const QVariantList place = m_place->currentData().toList();
    if (place.size() == 2 && place[0].toLongLong() != 0) {
        at.rack = RackId{place[0].toLongLong()};
    }
    if (place.size() == 2 && place[1].toLongLong() != 0) {
        at.shelf = ShelfId{place[1].toLongLong()};
    }
    return at;
}

void LoggerDialog::readAgain()
{
    m_clockWords->setText(clockWords(chosenOf<LoggerClock>(*m_clock)));
    m_readings.reset();
    m_leaveOut->setChecked(false);
    showFaults({});
    m_found->setText(tr("Reading…"));
    m_bring->setEnabled(false);
    m_services.tasks.run(
        tr("Reading the logger's file"),
        [table = m_table, asked = columns(),
         now = m_journal.clock().now()](const Progress& progress) {
            return readingsOf(*table, asked, SystemZone(), now, progress);
        },
        this,
        m_latest.only([this](const Result<LoggerReadings>& readings) { showReadings(readings); }));
}

void LoggerDialog::showReadings(const Result<LoggerReadings>& readings)
{
    if (!readings) {
        m_found->setText(sentence(readings.error()));
        return;
    }
    m_readings = *readings;
    showFaults(readings->faults);
    showFound();
}

void LoggerDialog::showFound()
{
    if (!m_readings) {
        return;
    }
    QStringList words = readingWords(*m_readings);
    const auto merge = m_journal.climate().foresee(*m_readings, columns(), logger());
    words << (merge ? mergeWords(*merge) : QStringList{sentence(merge.error())});
    m_found->setText(words.join(' '));
    const bool isAgreed = m_readings->faulty == 0 || m_leaveOut->isChecked();
    m_bring->setEnabled(merge && !merge->isEmpty() && isAgreed);
}

void LoggerDialog::showFaults(const std::vector<Error>& faults)
{
    m_faults->setRowCount(static_cast<int>(faults.size()));
    for (int row = 0; row < m_faults->rowCount(); ++row) {
        Error fault = faults[static_cast<std::size_t>(row)];
        const QString line = fault.row ? tr("Line %1").arg(fault.row->number) : QString();
        fault.row.reset();
        m_faults->setItem(row, 0, new QTableWidgetItem(line));
        m_faults->setItem(row, 1, new QTableWidgetItem(sentence(fault)));
    }
    m_faults->setVisible(!faults.empty());
    m_leaveOut->setVisible(!faults.empty());
}

void LoggerDialog::bringIn()
{
    if (!m_readings) {
        return;
    }
    const auto faulty = m_leaveOut->isChecked() ? FaultyLines::LeaveOut : FaultyLines::Refuse;
    const auto outcome = m_journal.climate().bringIn(*m_readings, columns(), logger(), faulty,
                                                     QFileInfo(m_file).fileName().toStdString());
    if (!outcome) {
        refuse(sentence(outcome.error()));
        return;
    }
    tellLast(m_journal, m_services);
    accept();
}

} // namespace plumule::ui

#include "moc_logger_dialog.cpp"
