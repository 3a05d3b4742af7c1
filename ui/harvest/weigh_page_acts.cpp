// Part of ui/harvest/weigh_page.h: recording, correcting, and the keys.
#include "ui/harvest/weigh_page.h"

#include "ui/harvest/doubt_text.h"
#include "ui/harvest/weigh_card.h"
#include "ui/harvest/weighed_model.h"

#include <QKeyEvent>

namespace plumule::ui {

WeighingDraft WeighPage::draftOf(const std::vector<BowlDraft>& bowls) const
{
    WeighingDraft draft;
    draft.tray = m_tray->record.tray.id;
    draft.bowls = bowls;
    draft.at = journal().clock().now();
    draft.isLast = m_card->isLastCut();
    draft.accepted = m_asked;
    return draft;
}

bool WeighPage::settleDoubts(WeighingDraft& draft)
{
    const auto doubts = journal().harvests().doubts(draft, m_isResidue);
    if (!accept(doubts)) {
        return false;
    }
    std::vector<Doubt> open;
    for (const Doubt doubt : *doubts) {
        if (!m_asked.contains(doubt)) {
            open.push_back(doubt);
        }
    }
    if (open.empty()) {
        return true;
    }
    m_card->say(doubtsText(open, m_tray->expected, units()), "warning");
    m_asked.insert(open.begin(), open.end());
    return false;
}

// A weight belongs to the tray whose code stands in the field, taken or not.
bool WeighPage::settleTray()
{
    const QString code = m_card->code();
    if (m_correcting || (m_tray && code.compare(QString::fromStdString(m_tray->record.tray.code),
                                                Qt::CaseInsensitive) == 0)) {
        return true;
    }
    const QString weight = m_card->weightText();
    const bool isOneBowl = !m_card->hasBowls();
    take(code);
    m_card->setWeightText(weight);
    return m_tray && isOneBowl && !weight.trimmed().isEmpty();
}

void WeighPage::record()
{
    if (!settleTray()) {
        return;
    }
    const auto bowls = m_card->bowls();
    if (!bowls) {
        m_card->say(sentence(bowls.error()), "warning");
        m_card->focusWeight();
        return;
    }
    if (m_correcting) {
        saveCorrection(*bowls);
        return;
    }
    WeighingDraft draft = draftOf(*bowls);
    if (draft.net() <= Mass()) {
        m_card->say(tr("The net weight is not more than nothing. Check gross and tare."),
                    "warning");
        m_card->focusWeight();
        return;
    }
    if (!settleDoubts(draft)) {
        return;
    }
    const QString code = QString::fromStdString(m_tray->record.tray.code);
    if (m_isResidue) {
        const auto done = journal().harvests().recordResidue(draft);
        if (accept(done)) {
            finishRecording(code, done->net);
        }
        return;
    }
    const auto done = journal().harvests().record(draft);
    if (accept(done)) {
        finishRecording(code, done->net);
    }
}

void WeighPage::finishRecording(const QString& code, Mass net)
{
    if (const auto bowls = m_card->bowls(); bowls && !bowls->empty()) {
        services().preferences.set(Preference::LastTare,
                                   static_cast<qlonglong>(bowls->back().tare.count()));
    }
    tellDone(tr("%1: %2 recorded.").arg(code, units().mass(net)));
    m_asked.clear();
    goToNext(code);
}

void WeighPage::goToNext(const QString& after)
{
    const Date today = journal().clock().today();
    const auto rows = m_isResidue ? journal().harvests().residuesDue(today)
                                  : journal().harvests().weighIn(today).map(
                                        [](const WeighIn& weighIn) { return weighIn.due; });
    m_tray.reset();
    m_trial.reset();
    m_card->showNoTray();
    if (rows) {
        for (const DueRow& row : *rows) {
            if (QString::fromStdString(row.code) != after) {
                take(QString::fromStdString(row.code));
                return;
            }
        }
    }
    m_card->say(m_isResidue ? tr("That was the last residue.")
                            : tr("That was the last tray due today."),
                "good");
    m_card->focusCode();
}

void WeighPage::beginCorrection(int row)
{
    if (row < 0 || row >= m_weighed->rowCount()) {
        return;
    }
    const WeighedRow& weighed = m_weighed->row(row);
    const auto bowls = journal().harvests().bowls(weighed.harvest.id);
    const auto tray = journal().harvests().atScale(weighed.code);
    if (!accept(bowls) || !accept(tray)) {
        return;
    }
    m_correcting = weighed.harvest;
    m_tray = *tray;
    m_card->showTray(*m_tray, false);
    m_card->setLastCut(weighed.harvest.isLast);
    m_card->setBowls(*bowls);
    m_card->setRecordName(tr("Save the correction ⏎"));
    m_card->say(tr("Correcting %1, recorded as %2 at %3. Esc leaves it as it was.")
                    .arg(QString::fromStdString(weighed.code), units().mass(weighed.harvest.net),
                         clockText(weighed.harvest.minute)),
                "strong");
}

void WeighPage::saveCorrection(const std::vector<BowlDraft>& bowls)
{
    const QString code = QString::fromStdString(m_tray->record.tray.code);
    const auto done = journal().harvests().correct(m_correcting->id, bowls, m_card->isLastCut());
    if (!accept(done)) {
        return;
    }
    leaveCorrection();
    finishRecording(code, done->net);
}

void WeighPage::leaveCorrection()
{
    if (!m_correcting) {
        return;
    }
    m_correcting.reset();
    m_tray.reset();
    m_card->showNoTray();
    m_card->setRecordName(tr("Record, next tray ⏎"));
}

void WeighPage::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Escape:
        if (m_correcting) {
            leaveCorrection();
            m_card->focusCode();
        } else if (!m_asked.empty()) {
            m_asked.clear();
            sayExpected();
            m_card->focusWeight();
        }
        return;
    case Qt::Key_F2:
        beginCorrection(0);
        return;
    case Qt::Key_F4:
        m_card->setLastCut(!m_card->isLastCut());
        return;
    case Qt::Key_F6:
        setMode(!m_isResidue);
        return;
    default:
        Page::keyPressEvent(event);
    }
}

} // namespace plumule::ui
