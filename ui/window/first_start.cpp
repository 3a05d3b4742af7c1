#include "ui/window/first_start.h"

#include "core/journal/journal.h"
#include "ui/exchange/sample_room.h"
#include "ui/text/text.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"
#include "ui/widget/time_field.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QLineEdit>
#include <QSpinBox>
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

QString withEnding(const QString& path)
{
    return path.endsWith(".plumule") ? path : path + ".plumule";
}

// Why the journal that was open last can't be opened, and what helps.
QString troubleText(const Error& why)
{
    switch (why.kind) {
    case ErrorKind::NotFound:
    case ErrorKind::FileGone:
        return FirstStart::tr("It is not there: it was moved or renamed, or its drive is not "
                              "connected. Connect it and try again, or open the journal where it "
                              "is now.");
    case ErrorKind::Damaged:
        return FirstStart::tr("It is damaged, and nothing in it was changed. Keep the file as it "
                              "is, and open your latest backup.");
    case ErrorKind::NewerVersion:
        return FirstStart::tr("A newer Plumule wrote it. Install that Plumule again, or open a "
                              "backup made before it.");
    case ErrorKind::NotAJournal:
        return FirstStart::tr("Another file stands in its place, which is no journal. Open a "
                              "backup, or the journal where it is now.");
    default:
        return sentence(why);
    }
}

} // namespace

FirstStart::FirstStart(const Clock& clock, Ask& ask, QWidget* parent)
    : FormDialog(ask, "firstStart", tr("Begin a journal"), parent)
    , m_clock(clock)
    , m_ask(ask)
{
    setWindowTitle(tr("Plumule"));
    setWindowIcon(QIcon(QStringLiteral(":/icons/plumule.svg")));
    wish({scaled(640), 0});
    leaveFreely();
    auto* words =
        label(tr("One file that is yours: it holds every tray, watering and weight of your "
                 "grow room, and stays on this computer."),
              "subtitle");
    words->setWordWrap(true);
    body()->addWidget(buildTrouble());
    body()->addWidget(words);
    body()->addWidget(buildNew());
    body()->addWidget(buildOthers());
    body()->addStretch(1);
}

QWidget* FirstStart::buildTrouble()
{
    auto* card = new Card(tr("Your journal could not be opened"), "caution");
    m_trouble = card;
    m_troubleWords = label(QString());
    m_troubleWords->setObjectName("troubleWords");
    m_troubleWords->setWordWrap(true);
    auto* again = button(tr("Try again"), "primary");
    again->setObjectName("tryAgain");
    auto* other = button(tr("Open a backup or another place…"));
    other->setObjectName("openBackup");
    auto* row = new FlowLayout;
    row->addWidget(again);
    row->addWidget(other);
    card->body()->addWidget(m_troubleWords);
    card->body()->addLayout(row);
    card->hide();
    connect(again, &QPushButton::clicked, this, [this] { Q_EMIT chosen(m_lastPath); });
    connect(other, &QPushButton::clicked, this, &FirstStart::openExisting);
    return card;
}

void FirstStart::explain(const QString& path, const Error& why)
{
    m_lastPath = path;
    m_troubleWords->setText(path + '\n' + troubleText(why));
    m_trouble->show();
}

void FirstStart::makeFields()
{
    m_name = new QLineEdit(tr("My grow room"));
    m_name->setObjectName("roomName");
    m_racks = countBox(2, 50, "racks");
    m_shelves = countBox(4, 20, "shelves");
    m_places = countBox(4, 40, "places");
    m_morning = new TimeField("morning");
    m_morning->setMinute(7 * 60);
    m_evening = new TimeField("evening");
    m_evening->setMinute(18 * 60);
    m_units = new QComboBox;
    m_units->setObjectName("units");
    for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::UsCustomary}) {
        addChoice(*m_units, nameOf(units), units);
    }
    m_currency = new QLineEdit(QStringLiteral("EUR"));
    m_currency->setObjectName("currency");
    connect(m_units, &QComboBox::activated, this, &FirstStart::proposeCurrency);
}

QWidget* FirstStart::buildNew()
{
    makeFields();
    auto* card = new Card(tr("A new journal"));
    auto* form = fieldForm();
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
    connect(panel(), &FormPanel::entered, make, &QPushButton::click);
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    row->addWidget(make);
    card->body()->addLayout(row);
    connect(make, &QPushButton::clicked, this, &FirstStart::makeNew);
    return card;
}

void FirstStart::proposeCurrency()
{
    m_currency->setText(proposedCurrency(m_currency->text(), chosenOf<UnitSystem>(*m_units)));
}

QWidget* FirstStart::buildOthers()
{
    auto* card = new Card(tr("Or"));
    auto* row = new FlowLayout;
    auto* open = button(tr("Open a journal…"));
    open->setObjectName("openExisting");
    auto* sample = button(tr("Look round the sample room…"));
    sample->setObjectName("makeSample");
    row->addWidget(open);
    row->addWidget(sample);
    card->body()->addLayout(row);
    auto* words = label(tr("The sample room and all that grew in it is invented."), "muted");
    words->setWordWrap(true);
    card->body()->addWidget(words);
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
    made.room.morningMinute = m_morning->minute().value_or(made.room.morningMinute);
    made.room.eveningMinute = m_evening->minute().value_or(made.room.eveningMinute);
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
    for (TimeField* field : {m_morning, m_evening}) {
        if (!field->requireTime()) {
            refuse(howToWriteATime());
            field->setFocus();
            return;
        }
    }
    if (*m_morning->minute() >= *m_evening->minute()) {
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

} // namespace plumule::ui

#include "moc_first_start.cpp"
