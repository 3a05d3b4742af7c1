#include "ui/room/room_part.h"

#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QScrollArea>
#include <QSpinBox>
#include <QTimeEdit>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

QTimeEdit* timeField(const char* name)
{
    auto* field = new QTimeEdit;
    field->setObjectName(name);
    field->setDisplayFormat("HH:mm");
    field->setMaximumWidth(scaled(140));
    return field;
}

QString rackNameOf(const RoomLayout& layout, RackId id)
{
    for (const Rack& rack : layout.racks) {
        if (rack.id == id) {
            return QString::fromStdString(rack.name);
        }
    }
    return {};
}

int minuteOf(const QTimeEdit& field)
{
    return QTime(0, 0).secsTo(field.time()) / 60;
}

} // namespace

RoomPart::RoomPart(Journal& journal, Services services, QWidget* parent)
    : SetupPart(journal, services, parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner));
    inner->addWidget(buildRoom());
    inner->addWidget(buildRacks());
    auto* caution = new Card(tr("Mind"), "caution");
    auto* words = label(
        tr("Mains electricity beside water: a residual-current device (RCD or GFCI), plugs and "
           "lamps above the water line, drip loops, and a licensed electrician. Local food law "
           "decides what may be sold."));
    words->setWordWrap(true);
    caution->body()->addWidget(words);
    inner->addWidget(caution);
    inner->addStretch(1);
}

QString RoomPart::name() const
{
    return tr("Room");
}

bool RoomPart::concerns(Concept about) const
{
    return about == Concept::Room;
}

QWidget* RoomPart::buildRoom()
{
    auto* card = new Card(tr("The room"));
    auto* form = fieldForm();
    m_name = new QLineEdit;
    m_name->setObjectName("roomName");
    m_units = new QComboBox;
    m_units->setObjectName("roomUnits");
    for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::UsCustomary}) {
        addChoice(*m_units, nameOf(units), units);
    }
    m_currency = new QLineEdit;
    m_morning = timeField("roomMorning");
    m_evening = timeField("roomEvening");
    m_length = new NumberField;
    m_length->setObjectName("trayLength");
    m_length->setAccessibleName(tr("Length of a tray"));
    m_width = new NumberField;
    m_width->setObjectName("trayWidth");
    m_width->setAccessibleName(tr("Width of a tray"));
    auto* size = new QHBoxLayout;
    size->addWidget(m_length);
    size->addWidget(label(QStringLiteral("×")));
    size->addWidget(m_width);
    form->addRow(tr("Name"), m_name);
    form->addRow(tr("Morning round at"), m_morning);
    form->addRow(tr("Evening round at"), m_evening);
    form->addRow(tr("Units shown"), m_units);
    form->addRow(tr("Currency"), m_currency);
    form->addRow(tr("A tray's inner size"), size);
    card->body()->addLayout(form);
    auto* save = button(tr("Save"), "primary");
    save->setObjectName("saveRoom");
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    row->addWidget(save);
    card->body()->addLayout(row);
    connect(save, &QPushButton::clicked, this, &RoomPart::saveRoom);
    return card;
}

QWidget* RoomPart::buildRacks()
{
    auto* holder = new QWidget;
    auto* column = new QVBoxLayout(holder);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(14));
    m_racks = new QVBoxLayout;
    m_racks->setSpacing(scaled(14));
    column->addLayout(m_racks);
    auto* add = button(tr("Add a rack…"));
    add->setObjectName("addRack");
    column->addWidget(add, 0, Qt::AlignLeft);
    connect(add, &QPushButton::clicked, this, &RoomPart::addRack);
    return holder;
}

void RoomPart::reload()
{
    const auto layout = journal().room().layout();
    if (!layout || m_shown == *layout) {
        return;
    }
    const bool isRoomNew = !m_shown || m_shown->room != layout->room;
    m_shown = *layout;
    if (isRoomNew) {
        showRoom(layout->room);
    }
    // The cards are built anew; who was typing goes on in the same field.
    // A spin box hands its focus to a field within it, so the name is looked for upwards.
    const QWidget* focused = focusWidget();
    while (focused != nullptr && !focused->objectName().startsWith("places")) {
        focused = focused->parentWidget();
    }
    const QString focusName = focused != nullptr ? focused->objectName() : QString();
    clearLayout(m_racks);
    for (const Rack& rack : layout->racks) {
        m_racks->addWidget(rackCard(*layout, rack));
    }
    if (!focusName.isEmpty()) {
        // Queued: the new field can only take the focus once it is shown.
        later([this, focusName] {
            const auto fields = findChildren<QSpinBox*>(focusName);
            if (!fields.isEmpty()) {
                fields.back()->setFocus();
            }
        });
    }
}

void RoomPart::showRoom(const Room& shown)
{
    m_name->setText(QString::fromStdString(shown.name));
    choose(*m_units, shown.units);
    m_currency->setText(QString::fromStdString(shown.currency));
    m_morning->setTime(QTime(0, 0).addSecs(shown.morningMinute * 60));
    m_evening->setTime(QTime(0, 0).addSecs(shown.eveningMinute * 60));
    showLength(*m_length, shown.trayLength, shown.units);
    showLength(*m_width, shown.trayWidth, shown.units);
}

void RoomPart::saveRoom()
{
    const UnitSystem typedIn = room().units;
    const auto length = lengthIn(*m_length, typedIn);
    const auto width = lengthIn(*m_width, typedIn);
    m_length->markWrong(!length || !*length);
    m_width->markWrong(!width || !*width);
    if (!length || !*length || !width || !*width) {
        services().messages.refuse(tr("Please check the tray's size."));
        return;
    }
    Room changed = room();
    changed.name = m_name->text().trimmed().toStdString();
    changed.units = chosenOf<UnitSystem>(*m_units);
    changed.currency = m_currency->text().trimmed().toStdString();
    changed.morningMinute = minuteOf(*m_morning);
    changed.eveningMinute = minuteOf(*m_evening);
    changed.trayLength = **length;
    changed.trayWidth = **width;
    settle(journal().room().changeRoom(changed), tr("Saved the room."));
}

// Queued: the answer builds the rack cards anew, and one of their fields is the sender.
void RoomPart::later(std::function<void()> act)
{
    QMetaObject::invokeMethod(this, std::move(act), Qt::QueuedConnection);
}

QWidget* RoomPart::rackCard(const RoomLayout& layout, const Rack& rack)
{
    const QString rackName = QString::fromStdString(rack.name);
    auto* card = new Card(tr("Rack %1").arg(rackName));
    auto* rename = button(tr("Rename…"), "quiet");
    auto* addShelf = button(tr("Add a shelf…"), "quiet");
    auto* remove = button(tr("Remove…"), "quiet");
    for (QPushButton* each : {rename, addShelf, remove}) {
        card->headingRow()->addWidget(each);
    }
    for (const Shelf& shelf : layout.shelves) {
        if (shelf.rack == rack.id) {
            card->body()->addWidget(shelfRow(layout, shelf));
        }
    }
    connect(rename, &QPushButton::clicked, this, [this, rack, rackName] {
        services().ask.line(
            this, tr("Rename the rack"), tr("Name"), rackName, [this, rack](const QString& name) {
                Rack changed = rack;
                changed.name = name.toStdString();
                settle(journal().room().changeRack(changed), tr("Renamed the rack."));
            });
    });
    connect(addShelf, &QPushButton::clicked, this, [this, rack] {
        services().ask.line(this, tr("Add a shelf"), tr("Name"), QString(),
                            [this, rack](const QString& name) {
                                settle(journal().room().addShelf(rack.id, name.toStdString(), 4),
                                       tr("Added shelf %1.").arg(name));
                            });
    });
    connect(remove, &QPushButton::clicked, this, [this, rack, rackName] {
        services().ask.confirm(this, tr("Remove a rack"),
                               tr("Remove rack %1 with its shelves and places?").arg(rackName),
                               tr("Remove"), [this, rack] {
                                   settle(journal().room().removeRack(rack.id),
                                          tr("Removed the rack."));
                               });
    });
    return card;
}

QWidget* RoomPart::shelfRow(const RoomLayout& layout, const Shelf& shelf)
{
    auto* line = new QWidget;
    auto* row = new FlowLayout(line);
    const QString shelfName = QString::fromStdString(shelf.name);
    const QString fullName = rackNameOf(layout, shelf.rack) + shelfName;
    auto* shelfLabel = label(tr("Shelf %1").arg(shelfName), "strong");
    shelfLabel->setMinimumWidth(scaled(80));
    auto* places = new QSpinBox;
    places->setObjectName(QStringLiteral("places%1").arg(shelf.id.value));
    places->setAccessibleName(tr("Places on shelf %1").arg(fullName));
    places->setRange(1, 60);
    places->setKeyboardTracking(false);
    places->setSuffix(tr(" places"));
    places->setValue(layout.placesOn(shelf.id));
    auto* watts = new NumberField(QStringLiteral("W"));
    watts->setObjectName(QStringLiteral("watts%1").arg(shelf.id.value));
    watts->setAccessibleName(tr("Light over shelf %1").arg(fullName));
    watts->setPlaceholderText(tr("light"));
    watts->setRange(0, 10'000);
    watts->setNumber(shelf.lightMilliwatts ? std::optional(double(*shelf.lightMilliwatts) / 1e3)
                                           : std::nullopt,
                     1);
    auto* hours = new NumberField(tr("h a day"));
    hours->setObjectName(QStringLiteral("hours%1").arg(shelf.id.value));
    hours->setAccessibleName(tr("Hours of light over shelf %1").arg(fullName));
    hours->setRange(0, 24);
    hours->setNumber(shelf.lightMinutes ? std::optional(*shelf.lightMinutes / 60.0) : std::nullopt,
                     2);
    auto* save = button(tr("Save"), "quiet");
    save->setAccessibleName(tr("Save shelf %1").arg(fullName));
    auto* remove = button(tr("Remove…"), "quiet");
    row->addWidget(shelfLabel);
    row->addWidget(places);
    row->addWidget(watts);
    row->addWidget(hours);
    row->addWidget(save);
    row->addWidget(remove);
    connect(places, &QSpinBox::valueChanged, this, [this, id = shelf.id](int count) {
        later([this, id, count] {
            if (!settle(journal().room().setPlaces(id, count), tr("Changed the places."))) {
                m_shown.reset();
                reload();
            }
        });
    });
    connect(save, &QPushButton::clicked, this, [this, shelf, watts, hours] {
        const auto typedWatts = watts->number();
        const auto typedHours = hours->number();
        watts->markWrong(!typedWatts);
        hours->markWrong(!typedHours);
        if (!typedWatts || !typedHours) {
            return;
        }
        Shelf changed = shelf;
        changed.lightMilliwatts.reset();
        changed.lightMinutes.reset();
        if (*typedWatts) {
            changed.lightMilliwatts = qRound64(**typedWatts * 1e3);
        }
        if (*typedHours) {
            changed.lightMinutes = qRound(**typedHours * 60);
        }
        later([this, changed] {
            settle(journal().room().changeShelf(changed), tr("Saved the shelf."));
        });
    });
    connect(remove, &QPushButton::clicked, this, [this, shelf, shelfName] {
        services().ask.confirm(this, tr("Remove a shelf"), tr("Remove shelf %1?").arg(shelfName),
                               tr("Remove"), [this, shelf] {
                                   settle(journal().room().removeShelf(shelf.id),
                                          tr("Removed the shelf."));
                               });
    });
    return line;
}

void RoomPart::addRack()
{
    services().ask.line(this, tr("Add a rack"), tr("Name; it gets four shelves of four places"),
                        QString(), [this](const QString& name) {
                            settle(journal().room().addRack(name.toStdString(), 4, 4),
                                   tr("Added rack %1.").arg(name));
                        });
}

} // namespace plumule::ui

#include "moc_room_part.cpp"
