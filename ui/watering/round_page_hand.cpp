// Part of ui/watering/round_page.h: the tray or decision in hand, and the keys.
#include "ui/watering/round_page.h"

#include "core/journal/tray/tray_entries.h"
#include "ui/cost/work_timer_button.h"
#include "ui/watering/between_dialog.h"
#include "ui/watering/decision_row.h"
#include "ui/watering/hand_bar.h"
#include "ui/watering/round_head.h"
#include "ui/watering/round_list.h"
#include "ui/watering/round_side.h"
#include "ui/widget/lone_key.h"

#include <QKeyEvent>

namespace plumule::ui {

void RoundPage::showHand()
{
    const TrayRow* row = m_list->currentRow();
    const DecisionRow* asked = m_list->currentDecision();
    if (row != nullptr) {
        asked = m_list->decision(row->tray().tray);
    }
    const bool isScanned = m_scanned.isStored() && trayInHand() == m_scanned;
    if (!isScanned) {
        m_scanned = {};
    }
    m_hand->show(row, asked, isScanned ? HandBar::TakenBy::Label : HandBar::TakenBy::Hand);
}

std::optional<TrayId> RoundPage::trayInHand() const
{
    if (const TrayRow* row = m_list->currentRow()) {
        return row->tray().tray;
    }
    if (const DecisionRow* row = m_list->currentDecision()) {
        return row->isAbout(m_scanned) ? m_scanned : row->decision().tray;
    }
    return std::nullopt;
}

QString RoundPage::codeOf(TrayId tray)
{
    const auto sheet = journal().trays().sheet(tray);
    return sheet ? QString::fromStdString(sheet->record.tray.code) : QString();
}

// With a tray in hand its own decision alone, with a decision all that it asks about.
void RoundPage::decide(Answer answer)
{
    const DecisionRow* row = m_list->currentDecision();
    std::vector<TrayId> trays = row == nullptr ? std::vector<TrayId>() : row->trays();
    if (row == nullptr && m_list->currentRow() != nullptr) {
        trays = {m_list->currentRow()->tray().tray};
        row = m_list->decision(trays.front());
    }
    if (row == nullptr) {
        // Nobody has looked at it yet: the first press leads there.
        if (m_list->firstDecision() != nullptr) {
            m_list->firstDecision()->setFocus();
        }
        return;
    }
    answer == Answer::Ready ? beReady(row, trays) : putOff(row, trays);
}

void RoundPage::tickInHand()
{
    if (const TrayRow* row = m_list->currentRow()) {
        tick(row->tray().tray, TickedBy::Key);
    }
}

void RoundPage::needNothingInHand()
{
    const TrayRow* row = m_list->currentRow();
    if (row != nullptr && row->asksWhetherNeeded()) {
        needNothing({row->tray().tray});
    }
}

void RoundPage::photographInHand()
{
    if (const auto tray = trayInHand()) {
        attachPhoto(*tray);
    }
}

void RoundPage::putDown()
{
    m_scanned = {};
    m_list->putDown();
    setFocus();
}

void RoundPage::takeInHand(TrayId tray)
{
    if (m_list->hasPanel() && m_panel->tray() != tray) {
        // What was typed about the other tray is kept, or keeps its panel open with the reason.
        saveDetails();
        if (m_list->hasPanel()) {
            return;
        }
    }
    m_head->showAll();
    QWidget* part = m_list->row(tray);
    if (part == nullptr) {
        m_list->takeApart(tray);
        readRound();
        part = m_list->decision(tray);
    }
    m_scanned = part == nullptr ? TrayId() : tray;
    if (part != nullptr) {
        part->setFocus();
        showHand();
        return;
    }
    services().messages.tell(tr("%1 needs nothing in this round.").arg(codeOf(tray)),
                             tr("Open its sheet"), [this, tray] { Q_EMIT trayAsked(tray); });
}

void RoundPage::giveBetween()
{
    const auto tray = trayInHand();
    auto* dialog = new BetweenDialog(
        journal(), services().ask, tray ? std::vector<TrayId>{*tray} : std::vector<TrayId>(), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &BetweenDialog::given, this, [this] { tellLast(); });
    dialog->open();
}

void RoundPage::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Down || event->key() == Qt::Key_Up) {
        m_list->regainFocus();
        return;
    }
    if (event->key() == Qt::Key_Escape && trayInHand()) {
        putDown();
        return;
    }
    if (event->key() == Qt::Key_F8) {
        m_timer->press();
        return;
    }
    if (!m_letter->hear(*event)) {
        Page::keyPressEvent(event);
    }
}

void RoundPage::pressLetter(int key)
{
    switch (key) {
    case Qt::Key_S:
        return tickShelf(m_list->currentShelf());
    case Qt::Key_R:
        return decide(Answer::Ready);
    case Qt::Key_N:
        return decide(Answer::NotYet);
    case Qt::Key_D:
        return needNothingInHand();
    case Qt::Key_A:
        return giveBetween();
    case Qt::Key_L:
        return m_head->toggleDecisions();
    case Qt::Key_F:
        return photographInHand();
    case Qt::Key_T:
        return openDetailsByKey(TrayPanel::Part::Note);
    case Qt::Key_H:
        return openDetailsByKey(TrayPanel::Part::Height);
    case Qt::Key_W:
        return openDetailsByKey(TrayPanel::Part::Water);
    case Qt::Key_M:
        return m_side->askReading();
    case Qt::Key_P:
        return offerSheet();
    case Qt::Key_U:
        return undoLast();
    default:
        return;
    }
}

} // namespace plumule::ui
