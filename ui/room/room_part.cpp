#include "ui/room/room_part.h"

#include "core/journal/room/room_entries.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/form_panel.h"
#include "ui/widget/theme.h"
#include "ui/widget/time_field.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QScrollArea>
#include <QSpinBox>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

NumberField* sizeField(const char* name, const QString& accessibleName)
{
    auto* field = new NumberField;
    field->setObjectName(QString::fromLatin1(name));
    field->setAccessibleName(accessibleName);
    return field;
}

} // namespace

RoomPart::RoomPart(Journal& journal, Services services, Fields fields, QWidget* parent)
    : SetupPart(journal, services, parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner), 1);
    m_panel = new FormPanel;
    auto* form = new QVBoxLayout(m_panel);
    form->setContentsMargins(0, 0, 0, 0);
    form->setSpacing(scaled(14));
    QWidget* ofRoom = buildRoom();
    form->addWidget(ofRoom);
    form->addWidget(buildRacks());
    inner->addWidget(m_panel);
    if (fields == Fields::Racks) {
        ofRoom->hide();
    }
    inner->addWidget(buildCaution());
    inner->addStretch(1);
    column->addWidget(buildSave(fields));
    connect(m_panel, &FormPanel::entered, this, &RoomPart::saveTyped);
}

QWidget* RoomPart::buildCaution()
{
    auto* caution = new Card(tr("Mind"), "caution");
    auto* words = label(
        tr("Mains electricity beside water: a residual-current device (RCD or GFCI), plugs and "
           "lamps above the water line, drip loops, and a licensed electrician. Local food law "
           "decides what may be sold."));
    words->setWordWrap(true);
    caution->body()->addWidget(words);
    return caution;
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
    if (isTypeLarge()) {
        form->setRowWrapPolicy(QFormLayout::WrapAllRows);
    }
    m_name = new QLineEdit;
    m_name->setObjectName("roomName");
    m_units = new QComboBox;
    m_units->setObjectName("roomUnits");
    for (const UnitSystem units : {UnitSystem::Metric, UnitSystem::UsCustomary}) {
        addChoice(*m_units, nameOf(units), units);
    }
    m_currency = new QLineEdit;
    m_currency->setObjectName("roomCurrency");
    m_morning = new TimeField("roomMorning");
    m_evening = new TimeField("roomEvening");
    m_length = sizeField("trayLength", tr("Length of a tray"));
    m_width = sizeField("trayWidth", tr("Width of a tray"));
    auto* size = new FlowLayout;
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
    connect(m_units, &QComboBox::activated, this, &RoomPart::proposeCurrency);
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
    connect(add, &QPushButton::clicked, this, [this] { leaveThen([this] { addRack(); }); });
    return holder;
}

// Below what scrolls, so that it is in sight whatever was changed.
QWidget* RoomPart::buildSave(Fields fields)
{
    auto* bar = new QWidget;
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(0, scaled(8), scaled(4), 0);
    auto* words = label(fields == Fields::All ? tr("Saves the room, its places and its light.")
                                              : tr("Saves the places and their light."),
                        "muted");
    words->setWordWrap(true);
    auto* save = button(tr("Save"), "primary");
    save->setObjectName("saveRoom");
    row->addWidget(words, 1);
    row->addWidget(save);
    connect(save, &QPushButton::clicked, this, &RoomPart::saveTyped);
    return bar;
}

bool RoomPart::hasUnsaved() const
{
    return m_panel->isChanged();
}

void RoomPart::reload()
{
    const auto layout = journal().room().layout();
    if (!layout || m_shown == *layout) {
        return;
    }
    const RoomLayout before = m_shown.value_or(RoomLayout());
    const bool isRoomNew = !m_shown || before.room != layout->room;
    const bool areRacksNew = !m_shown || before.racks != layout->racks ||
                             before.shelves != layout->shelves || before.places != layout->places;
    m_shown = *layout;
    if (isRoomNew) {
        showRoom(layout->room);
    }
    if (areRacksNew) {
        showRacks(before, *layout);
    }
    m_panel->settle();
}

void RoomPart::showRoom(const Room& shown)
{
    m_name->setText(QString::fromStdString(shown.name));
    m_name->setCursorPosition(0); // so that a long one is read from its beginning
    choose(*m_units, shown.units);
    m_currency->setText(QString::fromStdString(shown.currency));
    m_morning->setMinute(shown.morningMinute);
    m_evening->setMinute(shown.eveningMinute);
    showLength(*m_length, shown.trayLength, shown.units);
    showLength(*m_width, shown.trayWidth, shown.units);
}

void RoomPart::proposeCurrency()
{
    m_currency->setText(proposedCurrency(m_currency->text(), chosenOf<UnitSystem>(*m_units)));
}

std::optional<Room> RoomPart::typedRoom()
{
    const UnitSystem typedIn = room().units;
    const auto length = lengthIn(*m_length, typedIn);
    const auto width = lengthIn(*m_width, typedIn);
    m_length->markWrong(!length || !*length);
    m_width->markWrong(!width || !*width);
    if (!length || !*length || !width || !*width) {
        services().messages.refuse(tr("Please check the tray's size."));
        return std::nullopt;
    }
    const bool isMorningRead = m_morning->requireTime();
    if (!m_evening->requireTime() || !isMorningRead) {
        services().messages.refuse(howToWriteATime());
        return std::nullopt;
    }
    Room typed = room();
    typed.name = m_name->text().trimmed().toStdString();
    typed.units = chosenOf<UnitSystem>(*m_units);
    typed.currency = m_currency->text().trimmed().toStdString();
    typed.morningMinute = *m_morning->minute();
    typed.eveningMinute = *m_evening->minute();
    typed.trayLength = **length;
    typed.trayWidth = **width;
    return typed;
}

std::optional<std::vector<ShelfDraft>> RoomPart::typedShelves()
{
    std::vector<ShelfDraft> drafts;
    for (const ShelfFields& fields : m_shelves) {
        const auto watts = fields.watts->number();
        const auto hours = fields.hours->number();
        fields.watts->markWrong(!watts);
        fields.hours->markWrong(!hours);
        if (!watts || !hours) {
            services().messages.refuse(tr("Please check the light of the marked shelf."));
            return std::nullopt;
        }
        ShelfDraft draft{fields.shelf, fields.places->value()};
        draft.shelf.lightMilliwatts.reset();
        draft.shelf.lightMinutes.reset();
        if (*watts) {
            draft.shelf.lightMilliwatts = qRound64(**watts * 1e3);
        }
        if (*hours) {
            draft.shelf.lightMinutes = qRound(**hours * 60);
        }
        drafts.push_back(draft);
    }
    return drafts;
}

bool RoomPart::saveTyped()
{
    const auto room = typedRoom();
    const auto shelves = room ? typedShelves() : std::nullopt;
    if (!room || !shelves ||
        !settle(journal().room().changeRoom(*room, *shelves), tr("Saved the room."))) {
        return false;
    }
    m_panel->settle();
    return true;
}

} // namespace plumule::ui

#include "moc_room_part.cpp"
