#include "ui/rack/move_card.h"

#include "ui/rack/rack_view.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/key_button.h"
#include "ui/widget/theme.h"

#include <QGridLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

enum class End
{
    From,
    To
};

std::vector<std::optional<PlaceId>> placesOf(const Carry& carry, End end)
{
    std::vector<std::optional<PlaceId>> places;
    for (const CarriedTray& each : carry.trays) {
        places.push_back(end == End::From ? each.from : each.to);
    }
    return places;
}

// The day's light of the shelves, each figure once.
QStringList lightOf(const RoomRacks& room, const Carry& carry, End end)
{
    QStringList figures;
    for (const auto& place : placesOf(carry, end)) {
        const StandingShelf* shelf = place ? room.shelfOf(*place) : nullptr;
        const auto dli = shelf == nullptr ? std::nullopt : shelf->light.dli();
        const QString figure = dli ? numberText(*dli, 1) : MoveCard::tr("unknown");
        if (!figures.contains(figure)) {
            figures << figure;
        }
    }
    return figures;
}

QString lightWords(const RoomRacks& room, const Carry& carry)
{
    const QStringList from = lightOf(room, carry, End::From);
    const QStringList to = lightOf(room, carry, End::To);
    const QStringList unknown{MoveCard::tr("unknown")};
    if (from == unknown && to == unknown) {
        return MoveCard::tr("not measured");
    }
    return MoveCard::tr("%1 → %2 mol/m²")
        .arg(from.join(QStringLiteral(", ")), to.join(QStringLiteral(", ")));
}

QString codesOf(const RoomRacks& room, const Carry& carry)
{
    QStringList codes;
    for (const CarriedTray& each : carry.trays) {
        codes << QString::fromStdString(room.find(each.tray)->code);
    }
    return codes.join(QStringLiteral(", "));
}

QString inTheWay(const RoomRacks& room, const Carry& carry)
{
    QStringList codes;
    for (const CarriedTray& each : carry.trays) {
        if (each.inTheWay) {
            codes << QString::fromStdString(room.find(*each.inTheWay)->code);
        }
    }
    return codes.isEmpty() ? MoveCard::tr("nothing") : codes.join(QStringLiteral(", "));
}

QString trialNote(const RoomRacks& room, const Carry& carry)
{
    const bool isInTrial =
        std::any_of(carry.trays.begin(), carry.trays.end(), [&](const CarriedTray& each) {
            return room.find(each.tray)->trial.has_value();
        });
    QStringList trials;
    for (const std::string& code : trialsDisturbed(room, carry)) {
        trials << QString::fromStdString(code);
    }
    if (!trials.isEmpty()) {
        return MoveCard::tr("Trial %1: a shelf is a block. On another shelf light and air mix with "
                            "what is compared.")
            .arg(trials.join(QStringLiteral(", ")));
    }
    return isInTrial ? MoveCard::tr("It stays on its shelf: the trial's blocks hold.")
                     : MoveCard::tr("In no trial: a move spoils no comparison.");
}

} // namespace

MoveCard::MoveCard(QWidget* parent)
    : Card(tr("Move trays"), "card", parent)
{
    setObjectName("moveCard");
    m_row = new QBoxLayout(QBoxLayout::TopToBottom);
    m_row->setSpacing(scaled(10));
    auto* words = new QVBoxLayout;
    words->setSpacing(scaled(4));
    m_codes = label(QString(), "strong");
    m_codes->setObjectName("moveCodes");
    m_codes->setWordWrap(true);
    m_rows = new QGridLayout;
    m_rows->setHorizontalSpacing(scaled(12));
    m_rows->setVerticalSpacing(scaled(2));
    m_rows->setColumnStretch(1, 1);
    m_note = label(QString(), "muted");
    m_note->setObjectName("moveNote");
    m_note->setWordWrap(true);
    words->addWidget(m_codes);
    words->addLayout(m_rows);
    words->addWidget(m_note);
    m_buttons = new QWidget;
    auto* flow = new FlowLayout(m_buttons);
    flow->setSpacing(scaled(8));
    buildButtons(*flow);
    m_row->addLayout(words, 1);
    m_row->addWidget(m_buttons);
    body()->addLayout(m_row);
}

void MoveCard::buildButtons(FlowLayout& row)
{
    m_put = new KeyButton(tr("Put here"), QStringLiteral("⏎"), "primary");
    m_put->setObjectName("putHere");
    m_leave = new KeyButton(tr("Leave"), tr("Esc"));
    m_leave->setObjectName("leaveMove");
    m_swap = new KeyButton(tr("Swap"), QStringLiteral("X"));
    m_swap->setObjectName("swapTrays");
    m_takeOff = new KeyButton(tr("Take off"), tr("Del"));
    m_takeOff->setObjectName("takeOff");
    for (KeyButton* each : {m_put, m_leave, m_swap, m_takeOff}) {
        row.addWidget(each);
    }
    connect(m_put, &QPushButton::clicked, this, &MoveCard::putAsked);
    connect(m_leave, &QPushButton::clicked, this, &MoveCard::leaveAsked);
    connect(m_swap, &QPushButton::clicked, this, &MoveCard::swapAsked);
    connect(m_takeOff, &QPushButton::clicked, this, &MoveCard::takeOffAsked);
}

void MoveCard::setBeside(bool isBeside)
{
    m_row->setDirection(isBeside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

void MoveCard::addRow(const QString& name, const QString& value)
{
    const int row = m_rows->count() / 2;
    auto* words = label(value);
    words->setWordWrap(true);
    m_rows->addWidget(label(name, "muted"), row, 0, Qt::AlignTop);
    m_rows->addWidget(words, row, 1, Qt::AlignTop);
}

void MoveCard::show(const RackView& view)
{
    clearLayout(m_rows);
    if (view.isCarrying()) {
        showCarried(view);
    } else {
        showIdle(view);
    }
}

void MoveCard::showCarried(const RackView& view)
{
    const RoomRacks& room = view.room();
    const Carry& carry = view.carry();
    const auto count = static_cast<int>(carry.trays.size());
    setHeading(tr("Moving %n tray(s)", nullptr, count));
    m_codes->setText(codesOf(room, carry));
    m_codes->show();
    addRow(tr("from"), spotsText(room, placesOf(carry, End::From)));
    addRow(tr("to"), carry.leadsSomewhere() ? spotsText(room, placesOf(carry, End::To))
                                            : tr("where it stands"));
    addRow(tr("stands there"), inTheWay(room, carry));
    addRow(tr("light a day"), lightWords(room, carry));
    m_note->setText(trialNote(room, carry));
    m_buttons->show();
    m_put->setEnabled(carry.leadsSomewhere() && !carry.isAnyInTheWay());
    m_swap->setEnabled(carry.isAnyInTheWay());
    m_takeOff->setEnabled(
        std::any_of(carry.trays.begin(), carry.trays.end(),
                    [](const CarriedTray& each) { return each.from.has_value(); }));
    m_put->setVisible(true);
    m_leave->setVisible(true);
}

void MoveCard::showIdle(const RackView& view)
{
    const std::vector<TrayId> chosen = view.chosen();
    setHeading(tr("Move trays"));
    QStringList codes;
    for (const TrayId tray : chosen) {
        codes << QString::fromStdString(view.room().find(tray)->code);
    }
    m_codes->setText(tr("Chosen: %1").arg(codes.join(QStringLiteral(", "))));
    m_codes->setVisible(!codes.isEmpty());
    m_note->setText(tr("Drag a tray, or press Space at it and carry it by the arrows; Page Down "
                       "changes the rack. Shift with an arrow, or Ctrl with a click, chooses "
                       "several. Enter opens a tray."));
    m_buttons->setVisible(!codes.isEmpty());
    m_put->setVisible(false);
    m_leave->setVisible(true);
    m_swap->setEnabled(chosen.size() == 2);
    m_takeOff->setEnabled(true);
}

} // namespace plumule::ui

#include "moc_move_card.cpp"
