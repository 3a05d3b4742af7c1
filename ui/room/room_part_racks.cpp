// Part of ui/room/room_part.h: the racks with their shelves, and the acts on them.
#include "ui/room/room_part.h"

#include "core/journal/room/room_entries.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kMostPlacesOfAShelf = 60;

QString rackNameOf(const RoomLayout& layout, RackId id)
{
    for (const Rack& rack : layout.racks) {
        if (rack.id == id) {
            return QString::fromStdString(rack.name);
        }
    }
    return {};
}

NumberField* lightField(const QString& unit, const QString& name, const QString& accessibleName,
                        double highest)
{
    auto* field = new NumberField(unit);
    field->setObjectName(name);
    field->setAccessibleName(accessibleName);
    field->setRange(0, highest);
    return field;
}

} // namespace

// In place where the same racks and shelves stand there, so that the focus stays where it is.
void RoomPart::showRacks(const RoomLayout& before, const RoomLayout& layout)
{
    const bool isSame =
        std::equal(before.shelves.begin(), before.shelves.end(), layout.shelves.begin(),
                   layout.shelves.end(), [](const Shelf& a, const Shelf& b) {
                       return a.id == b.id && a.rack == b.rack && a.name == b.name;
                   });
    if (isSame && before.racks == layout.racks && m_shelves.size() == layout.shelves.size()) {
        for (ShelfFields& fields : m_shelves) {
            fill(fields, layout);
        }
        return;
    }
    m_shelves.clear();
    clearLayout(m_racks);
    for (const Rack& rack : layout.racks) {
        m_racks->addWidget(rackCard(layout, rack));
    }
}

void RoomPart::fill(ShelfFields& fields, const RoomLayout& layout)
{
    const auto found = std::find_if(layout.shelves.begin(), layout.shelves.end(),
                                    [&](const Shelf& each) { return each.id == fields.shelf.id; });
    const Shelf& shelf = *found;
    fields.shelf = shelf;
    fields.places->setValue(layout.placesOn(shelf.id));
    fields.watts->setNumber(
        shelf.lightMilliwatts ? std::optional(double(*shelf.lightMilliwatts) / 1e3) : std::nullopt,
        1);
    fields.hours->setNumber(
        shelf.lightMinutes ? std::optional(*shelf.lightMinutes / 60.0) : std::nullopt, 2);
}

QWidget* RoomPart::rackCard(const RoomLayout& layout, const Rack& rack)
{
    auto* card = new Card(tr("Rack %1").arg(QString::fromStdString(rack.name)));
    auto* rename = button(tr("Rename…"), "quiet");
    auto* addShelf = button(tr("Add a shelf…"), "quiet");
    auto* remove = button(tr("Remove…"), "quiet");
    auto* acts = new FlowLayout;
    for (QPushButton* each : {rename, addShelf, remove}) {
        acts->addWidget(each);
    }
    for (const Shelf& shelf : layout.shelves) {
        if (shelf.rack == rack.id) {
            card->body()->addWidget(shelfRow(layout, shelf));
        }
    }
    card->body()->addLayout(acts);
    connect(rename, &QPushButton::clicked, this,
            [this, rack] { leaveThen([this, rack] { renameRack(rack); }); });
    connect(addShelf, &QPushButton::clicked, this,
            [this, rack] { leaveThen([this, rack] { askShelf(rack); }); });
    connect(remove, &QPushButton::clicked, this,
            [this, rack] { leaveThen([this, rack] { removeRack(rack); }); });
    return card;
}

RoomPart::ShelfFields RoomPart::shelfFields(const RoomLayout& layout, const Shelf& shelf)
{
    const QString fullName = rackNameOf(layout, shelf.rack) + QString::fromStdString(shelf.name);
    ShelfFields fields;
    fields.shelf = shelf;
    fields.places = new QSpinBox;
    fields.places->setObjectName(QStringLiteral("places%1").arg(shelf.id.value));
    fields.places->setAccessibleName(tr("Places on shelf %1").arg(fullName));
    fields.places->setRange(0, kMostPlacesOfAShelf);
    fields.places->setSuffix(tr(" places"));
    fields.watts = lightField(QStringLiteral("W"), QStringLiteral("watts%1").arg(shelf.id.value),
                              tr("Light over shelf %1").arg(fullName), 10'000);
    fields.watts->setPlaceholderText(tr("light"));
    fields.hours = lightField(tr("h a day"), QStringLiteral("hours%1").arg(shelf.id.value),
                              tr("Hours of light over shelf %1").arg(fullName), 24);
    fill(fields, layout);
    return fields;
}

QWidget* RoomPart::shelfRow(const RoomLayout& layout, const Shelf& shelf)
{
    auto* line = new QWidget;
    auto* row = new FlowLayout(line);
    const QString shelfName = QString::fromStdString(shelf.name);
    auto* shelfLabel = label(tr("Shelf %1").arg(shelfName), "strong");
    shelfLabel->setMinimumWidth(scaled(80));
    const ShelfFields fields = shelfFields(layout, shelf);
    auto* remove = button(tr("Remove…"), "quiet");
    remove->setAccessibleName(tr("Remove shelf %1").arg(shelfName));
    row->addWidget(shelfLabel);
    row->addWidget(fields.places);
    row->addWidget(fields.watts);
    row->addWidget(fields.hours);
    row->addWidget(remove);
    m_shelves.push_back(fields);
    connect(remove, &QPushButton::clicked, this,
            [this, shelf] { leaveThen([this, shelf] { removeShelf(shelf); }); });
    return line;
}

void RoomPart::renameRack(const Rack& rack)
{
    services().ask.line(this, tr("Rename the rack"), tr("Name"), QString::fromStdString(rack.name),
                        [this, rack](const QString& name) {
                            Rack changed = rack;
                            changed.name = name.toStdString();
                            settle(journal().room().changeRack(changed), tr("Renamed the rack."));
                        });
}

void RoomPart::askShelf(const Rack& rack)
{
    services().ask.line(this, tr("Add a shelf"), tr("Name"), QString(),
                        [this, rack](const QString& name) {
                            settle(journal().room().addShelf(rack.id, name.toStdString(), 4),
                                   tr("Added shelf %1.").arg(name));
                        });
}

void RoomPart::removeRack(const Rack& rack)
{
    services().ask.confirm(
        this, tr("Remove a rack"),
        tr("Remove rack %1 with its shelves and places?").arg(QString::fromStdString(rack.name)),
        tr("Remove"),
        [this, rack] { settle(journal().room().removeRack(rack.id), tr("Removed the rack.")); });
}

void RoomPart::removeShelf(const Shelf& shelf)
{
    services().ask.confirm(
        this, tr("Remove a shelf"), tr("Remove shelf %1?").arg(QString::fromStdString(shelf.name)),
        tr("Remove"), [this, shelf] {
            settle(journal().room().removeShelf(shelf.id), tr("Removed the shelf."));
        });
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
