#include "ui/window/first_start.h"

#include "core/journal/journal.h"
#include "ui/exchange/sample_room.h"
#include "ui/text/text.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QLineEdit>
#include <QSpinBox>
#include <QTimeEdit>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

QSpinBox* countBox(int value, int highest, const char* name)
{
    auto* box = new QSpinBox;
    box->setRange(1, highest);
    box->setValue(value);
    box->setObjectName(name);
    return box;
}

QTimeEdit* timeBox(int minute, const char* name)
{
    auto* box = new QTimeEdit(QTime(0, 0).addSecs(minute * 60));
    box->setDisplayFormat("HH:mm");
    box->setObjectName(name);
    return box;
}

int minuteOf(const QTimeEdit& box)
{
    return QTime(0, 0).secsTo(box.time()) / 60;
}

QString withEnding(const QString& path)
{
    return path.endsWith(".plumule") ? path : path + ".plumule";
}

} // namespace

FirstStart::FirstStart(const Clock& clock, Ask& ask, QWidget* parent)
    : QDialog(parent)
    , m_clock(clock)
    , m_ask(ask)
{
    setWindowTitle(tr("Plumule"));
    setWindowIcon(QIcon(QStringLiteral(":/icons/plumule.svg")));
    setMinimumWidth(scaled(620));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(24), scaled(28), scaled(24));
    column->setSpacing(scaled(14));
    column->addWidget(label(tr("Begin a journal"), "title"));
    auto* words =
        label(tr("One file that is yours: it holds every tray, watering and weight of your "
                 "grow room, and stays on this computer."),
              "subtitle");
    words->setWordWrap(true);
    column->addWidget(words);
    column->addWidget(buildNew());
    column->addWidget(buildOthers());
    m_refusal = label(QString(), "warning");
    m_refusal->setObjectName("refusal");
    m_refusal->setWordWrap(true);
    m_refusal->hide();
    column->addWidget(m_refusal);
}

QWidget* FirstStart::buildNew()
{
    auto* card = new Card(tr("A new journal"));
    auto* form = fieldForm();
    m_name = new QLineEdit(tr("My grow room"));
    m_name->setObjectName("roomName");
    m_racks = countBox(2, 50, "racks");
    m_shelves = countBox(4, 20, "shelves");
    m_places = countBox(4, 40, "places");
    m_morning = timeBox(7 * 60, "morning");
    m_evening = timeBox(18 * 60, "evening");
    m_units = new QComboBox;
    m_units->setObjectName("units");
    for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::UsCustomary}) {
        addChoice(*m_units, nameOf(units), units);
    }
    m_currency = new QLineEdit(QStringLiteral("EUR"));
    m_currency->setObjectName("currency");
    form->addRow(tr("Name of the room"), m_name);
    form->addRow(tr("Racks"), m_racks);
    form->addRow(tr("Shelves on each"), m_shelves);
    form->addRow(tr("Places on each shelf"), m_places);
    form->addRow(tr("Morning round at"), m_morning);
    form->addRow(tr("Evening round at"), m_evening);
    form->addRow(tr("Units"), m_units);
    form->addRow(tr("Currency"), m_currency);
    card->body()->addLayout(form);
    auto* make = button(tr("Make the journal…"), "primary");
    make->setObjectName("makeNew");
    make->setDefault(true);
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    row->addWidget(make);
    card->body()->addLayout(row);
    connect(make, &QPushButton::clicked, this, &FirstStart::makeNew);
    return card;
}

QWidget* FirstStart::buildOthers()
{
    auto* card = new Card(tr("Or"));
    auto* row = new QHBoxLayout;
    auto* open = button(tr("Open a journal…"));
    open->setObjectName("openExisting");
    auto* sample = button(tr("Look round the sample room…"));
    sample->setObjectName("makeSample");
    row->addWidget(open);
    row->addWidget(sample);
    row->addStretch(1);
    card->body()->addLayout(row);
    card->body()->addWidget(
        label(tr("The sample room and all that grew in it is invented."), "muted"));
    connect(open, &QPushButton::clicked, this, &FirstStart::openExisting);
    connect(sample, &QPushButton::clicked, this, &FirstStart::makeSample);
    return card;
}

RoomPlan FirstStart::plan() const
{
    RoomPlan made;
    made.room.name = m_name->text().trimmed().toStdString();
    made.room.units = chosenOf<UnitSystem>(*m_units);
    made.room.currency = m_currency->text().trimmed().toStdString();
    made.room.morningMinute = minuteOf(*m_morning);
    made.room.eveningMinute = minuteOf(*m_evening);
    made.racks = m_racks->value();
    made.shelvesPerRack = m_shelves->value();
    made.placesPerShelf = m_places->value();
    return made;
}

void FirstStart::makeNew()
{
    if (m_name->text().trimmed().isEmpty()) {
        refuse(tr("Please give the room a name."));
        m_name->setFocus();
        return;
    }
    if (minuteOf(*m_morning) >= minuteOf(*m_evening)) {
        refuse(tr("The morning round comes before the evening round."));
        m_morning->setFocus();
        return;
    }
    m_ask.fileToSave(this, tr("Where shall the journal be kept?"),
                     withEnding(m_name->text().trimmed()), tr("Plumule journals (*.plumule)"),
                     [this](const QString& path) { makeNewAt(withEnding(path)); });
}

void FirstStart::makeNewAt(const QString& path)
{
    auto made = Journal::create(path.toStdString(), plan(), m_clock);
    if (!made) {
        refuse(sentence(made.error()));
        return;
    }
    // Closed first: the program opens the file itself, as on every later start.
    made->reset();
    Q_EMIT chosen(path);
}

void FirstStart::openExisting()
{
    m_ask.fileToOpen(this, tr("Open a journal"), tr("Plumule journals (*.plumule);;All files (*)"),
                     [this](const QString& path) { Q_EMIT chosen(path); });
}

void FirstStart::makeSample()
{
    m_ask.fileToSave(this, tr("Where shall the sample be kept?"), tr("Sample room.plumule"),
                     tr("Plumule journals (*.plumule)"),
                     [this](const QString& path) { makeSampleAt(withEnding(path)); });
}

void FirstStart::makeSampleAt(const QString& path)
{
    auto made = makeSampleJournal(path, m_clock);
    if (!made) {
        refuse(sentence(made.error()));
        return;
    }
    made->reset();
    Q_EMIT chosen(path);
}

void FirstStart::refuse(const QString& sentence)
{
    m_refusal->setText(sentence);
    m_refusal->show();
}

} // namespace plumule::ui

#include "moc_first_start.cpp"
