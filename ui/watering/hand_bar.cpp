#include "ui/watering/hand_bar.h"

#include "ui/medium/marker.h"
#include "ui/watering/decision_row.h"
#include "ui/watering/tray_row.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/key_button.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHBoxLayout>

namespace plumule::ui {
namespace {

QString tickWords(const RoundTray& tray)
{
    if (tray.isDone() || tray.isAside()) {
        return HandBar::tr("Take back");
    }
    return tray.method == WateringMethod::Mist ? HandBar::tr("Misted") : HandBar::tr("Watered");
}

QString readyWords(const StageDecision& decision)
{
    if (!decision.to) {
        return HandBar::tr("To the scale");
    }
    switch (*decision.to) {
    case Stage::Soak:
        break;
    case Stage::UnderWeight:
        return decision.from == Stage::Soak ? HandBar::tr("Sown") : HandBar::tr("Under weight");
    case Stage::Blackout:
        return HandBar::tr("Into blackout");
    case Stage::Light:
        return HandBar::tr("Into light");
    }
    return HandBar::tr("Ready");
}

} // namespace

HandBar::HandBar(QWidget* parent)
    : QFrame(parent)
{
    setObjectName("handBar");
    setProperty("role", "hand");
    m_row = new QBoxLayout(QBoxLayout::LeftToRight, this);
    m_row->setContentsMargins(scaled(14), scaled(6), scaled(8), scaled(6));
    m_row->setSpacing(scaled(12));
    m_state = label(QString(), "muted");
    m_code = label(QString(), "code");
    m_code->setObjectName("inHand");
    m_marker = new MarkerDot(0);
    m_medium = label(QString());
    m_medium->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    m_medium->setWordWrap(true);
    m_where = label(QString(), "muted");
    m_where->setObjectName("inHandWhere");
    m_where->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    m_where->setWordWrap(true);
    auto* first = new QHBoxLayout;
    first->setSpacing(scaled(8));
    first->addWidget(m_state);
    first->addWidget(m_code);
    first->addWidget(m_marker);
    first->addWidget(m_medium, 1);
    auto* words = new QVBoxLayout;
    words->setSpacing(scaled(1));
    words->addLayout(first);
    words->addWidget(m_where);
    m_row->addLayout(words, 1);
    buildButtons();
}

KeyButton* HandBar::add(const QString& text, const QString& key, const char* objectName,
                        const char* role)
{
    auto* made = new KeyButton(text, key, role);
    made->setObjectName(objectName);
    // The row in hand keeps the focus.
    made->setFocusPolicy(Qt::NoFocus);
    m_buttons->addWidget(made);
    return made;
}

void HandBar::buildButtons()
{
    auto* block = new QWidget;
    m_buttons = new FlowLayout(block);
    m_tick = add(tr("Watered"), tr("Space"), "handTick", "primary");
    m_notNeeded = add(tr("Not needed"), "D", "handNotNeeded");
    m_ready = add(tr("Ready"), "R", "handReady");
    m_notYet = add(tr("Not yet"), "N", "handNotYet");
    m_note = add(tr("Note"), "T", "openNote");
    m_height = add(tr("Height"), "H", "openHeight");
    m_water = add(tr("Water, pH, EC"), "W", "openWater");
    m_photo = add(tr("Photo"), "F", "handPhoto");
    m_putDown = add(tr("Put down"), tr("Esc"), "putDown");
    m_row->addWidget(block, 0);
    connect(m_tick, &QPushButton::clicked, this, &HandBar::tickAsked);
    connect(m_notNeeded, &QPushButton::clicked, this, &HandBar::notNeededAsked);
    connect(m_ready, &QPushButton::clicked, this, &HandBar::readyAsked);
    connect(m_notYet, &QPushButton::clicked, this, &HandBar::notYetAsked);
    connect(m_note, &QPushButton::clicked, this,
            [this] { Q_EMIT partAsked(TrayPanel::Part::Note); });
    connect(m_height, &QPushButton::clicked, this,
            [this] { Q_EMIT partAsked(TrayPanel::Part::Height); });
    connect(m_water, &QPushButton::clicked, this,
            [this] { Q_EMIT partAsked(TrayPanel::Part::Water); });
    connect(m_photo, &QPushButton::clicked, this, &HandBar::photoAsked);
    connect(m_putDown, &QPushButton::clicked, this, &HandBar::putDownAsked);
}

void HandBar::show(const TrayRow* row, const DecisionRow* decision, TakenBy takenBy)
{
    const bool isScanned = takenBy == TakenBy::Label;
    const bool isAny = row != nullptr || decision != nullptr;
    setRole(this, isScanned && isAny ? "scanned" : "hand");
    m_state->setText(!isAny      ? tr("Nothing in hand: scan a label, or press an arrow key.")
                     : isScanned ? tr("In hand, scanned")
                                 : tr("In hand"));
    m_code->setVisible(isAny);
    m_marker->setVisible(row != nullptr);
    m_medium->setVisible(isAny);
    m_where->setVisible(isAny);
    for (KeyButton* each : {m_tick, m_note, m_height, m_water, m_photo}) {
        each->setVisible(row != nullptr);
    }
    m_notNeeded->setVisible(row != nullptr && row->asksWhetherNeeded());
    m_ready->setVisible(decision != nullptr);
    m_notYet->setVisible(decision != nullptr);
    m_putDown->setVisible(isAny);
    if (decision != nullptr) {
        const StageDecision& asked = decision->decision();
        m_ready->setText(readyWords(asked));
        m_code->setText(decision->codes());
        m_medium->setText(QString::fromStdString(asked.variety));
        m_where->setText(tr("%1 · day %2").arg(nameOf(asked.spot)).arg(asked.day));
    }
    if (row != nullptr) {
        wordRow(*row);
    }
    // A decision alone is what is pressed first.
    setRole(m_ready, row == nullptr ? "primary" : "");
    arrange();
}

void HandBar::wordRow(const TrayRow& row)
{
    const RoundTray& tray = row.tray();
    m_code->setText(QString::fromStdString(tray.code));
    m_marker->setMarker(tray.medium.marker);
    m_medium->setText(QString::fromStdString(tray.medium.name));
    m_where->setText(QStringLiteral("%1 · %2 · %3")
                         .arg(nameOf(tray.spot), dayOfGrowth(tray), standing(tray.stage)));
    m_tick->setText(tickWords(tray));
}

void HandBar::resizeEvent(QResizeEvent* event)
{
    QFrame::resizeEvent(event);
    arrange();
}

// The panel under the row offers the same: where there is little room the keys remain. Beside the
// buttons the words want a third of a line.
void HandBar::arrange()
{
    const bool isBeside = width() > scaled(900);
    const bool isRow = !m_note->isHidden();
    m_water->setVisible(isRow && width() > scaled(1290));
    m_photo->setVisible(isRow && width() > scaled(1110));
    m_height->setVisible(isRow && (width() > scaled(1000) || (!isBeside && width() > scaled(700))));
    m_row->setDirection(isBeside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

} // namespace plumule::ui

#include "moc_hand_bar.cpp"
