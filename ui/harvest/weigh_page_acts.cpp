// Part of ui/harvest/weigh_page.h: recording, correcting, and the keys.
#include "ui/harvest/weigh_page.h"

#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "ui/cost/work_timer_button.h"
#include "ui/harvest/weigh_card.h"
#include "ui/harvest/weigh_question.h"
#include "ui/harvest/weigh_text.h"
#include "ui/harvest/weighed_model.h"

#include <QKeyEvent>
#include <QRegularExpression>

namespace plumule::ui {
namespace {

enum SlipAnswer
{
    TakeLikely,
    KeepTyped
};

// The label at the end of a text that begins as a weight: "285BR009" of a scanner that typed behind
// what stood there.
QString labelBehind(const QString& text)
{
    static const QRegularExpression behind(QStringLiteral("^\\s*[+\\-0-9.,]+\\s*([A-Za-z].*)$"));
    return behind.match(text).captured(1).trimmed();
}

} // namespace

// A weight belongs to the tray whose code stands in the field, taken or not.
bool WeighPage::settleTray()
{
    const QString code = m_card->code();
    if (m_correcting || (m_tray && code.compare(codeOnScale(), Qt::CaseInsensitive) == 0)) {
        return true;
    }
    const QString weight = m_card->weightText();
    const bool isOneBowl = !m_card->hasBowls();
    m_card->setWeightText(QString());
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
        refuseWeight(bowls.error());
        return;
    }
    if (netOf(*bowls) <= Mass()) {
        m_card->say(tr("The net weight is not more than nothing. Check gross and tare."),
                    "warning");
        m_card->focusWeight();
        return;
    }
    const std::vector<Doubt> open = openDoubtsOf(*bowls);
    if (!open.empty()) {
        ask(*bowls, open);
        return;
    }
    store(*bowls);
}

bool WeighPage::hasUnsaved() const
{
    const auto bowls = m_card->bowls();
    const bool isAsItWas = m_correcting && bowls && isAsStored(*bowls, m_correcting->bowls);
    return !isAsItWas && (m_card->hasBowls() || !m_card->weightText().trimmed().isEmpty());
}

void WeighPage::refuseWeight(const Error& error)
{
    const QString label = labelBehind(m_card->weightText());
    if (!label.isEmpty() && journal().trays().find(label.toStdString())) {
        QString stood = m_card->weightText();
        stood.chop(label.size());
        m_card->setWeightText(stood);
        take(label);
        return;
    }
    m_card->say(noWeightText(error), "warning");
    m_card->focusWeight();
}

std::vector<Doubt> WeighPage::openDoubtsOf(const std::vector<BowlDraft>& bowls) const
{
    if (m_correcting && isAsStored(bowls, m_correcting->bowls)) {
        return {};
    }
    return openDoubts(doubtsAbout(bowls, m_tray->facts), m_accepted);
}

// A slipped point is asked about alone: its answer changes the weight that the rest is about.
void WeighPage::ask(const std::vector<BowlDraft>& bowls, const std::vector<Doubt>& open)
{
    const MassUnit unit = scaleUnit();
    const WeighQuestion::Choice again{tr("Weigh again"), Qt::Key_Escape, tr("Esc")};
    m_slip =
        open.front() == Doubt::DecimalSlip ? slipIn(bowls, m_tray->facts.expected) : std::nullopt;
    m_card->setDoubted(true);
    bringIntoView(m_card->question());
    if (m_slip) {
        m_asked = {Doubt::DecimalSlip};
        const QuestionText text = slipText(*m_tray, bowls, *m_slip, unit);
        const QString typed = scaleTextWithUnit(bowls[m_slip->bowl].gross, unit);
        m_card->question().ask(text.title, text.words,
                               {{tr("Yes, %1").arg(slipAnswerText(bowls, *m_slip, unit)),
                                 Qt::Key_Return, QStringLiteral("⏎")},
                                {tr("No, %1 is right").arg(typed), Qt::Key_N, QStringLiteral("N")},
                                again});
        return;
    }
    m_asked = open;
    const QuestionText text = doubtsText(*m_tray, bowls, open, unit);
    m_card->question().ask(
        text.title, text.words,
        {{tr("Record it all the same"), Qt::Key_Return, QStringLiteral("⏎")}, again});
}

void WeighPage::takeAnswer(int choice)
{
    const std::optional<Slip> slip = std::exchange(m_slip, std::nullopt);
    const std::vector<Doubt> asked = std::exchange(m_asked, {});
    m_card->setDoubted(false);
    m_card->focusWeight();
    if (slip && choice == TakeLikely) {
        m_card->setGross(slip->bowl, slip->gross);
        record();
    } else if (choice == TakeLikely || (slip && choice == KeepTyped)) {
        m_accepted.insert(asked.begin(), asked.end());
        record();
    } else {
        const auto bowls = m_card->bowls();
        m_card->clearBowl(slip ? slip->bowl : bowls ? bowls->size() - 1 : 0);
        sayExpected();
    }
}

void WeighPage::leaveQuestion()
{
    m_slip.reset();
    m_asked.clear();
    m_card->question().close();
    m_card->setDoubted(false);
}

void WeighPage::store(const std::vector<BowlDraft>& bowls)
{
    const QString code = codeOnScale();
    const auto finish = [&](const auto& done) {
        if (accept(done)) {
            finishRecording(code, done->net);
        }
    };
    if (m_correcting) {
        finish(journal().harvests().correct(
            {m_correcting->harvest.id, bowls, m_card->isLastCut(), m_accepted}));
        return;
    }
    WeighingDraft draft;
    draft.tray = m_tray->record.tray.id;
    draft.bowls = bowls;
    draft.at = journal().clock().now();
    draft.isLast = m_card->isLastCut();
    draft.accepted = m_accepted;
    if (m_what == Weighing::Residue) {
        finish(journal().harvests().recordResidue(draft));
    } else {
        finish(journal().harvests().record(draft));
    }
}

void WeighPage::finishRecording(const QString& code, Mass net)
{
    if (const auto bowls = m_card->bowls(); bowls && !bowls->empty() && !m_correcting) {
        services().preferences.set(Preference::LastTare,
                                   static_cast<qlonglong>(bowls->back().tare.count()));
    }
    const QString weight = scaleUnits().mass(net);
    tellDone(m_correcting ? tr("%1: corrected to %2.").arg(code, weight)
                          : tr("%1: %2 recorded.").arg(code, weight));
    clearTray();
    readAgain();
    takeNext(code);
}

void WeighPage::beginCorrection(int row)
{
    if (row < 0 || row >= m_weighed->rowCount()) {
        return;
    }
    const WeighedRow weighed = m_weighed->row(row);
    const auto found = journal().harvests().cutAtScale(weighed.harvest.id);
    if (!accept(found)) {
        return;
    }
    nameUnrecorded(QString::fromStdString(weighed.code));
    clearTray();
    m_correcting = *found;
    m_tray = found->tray;
    m_card->showTray(*m_tray, Weighing::Cut);
    m_card->setLastCut(found->harvest.isLast);
    m_card->setBowls(found->bowls);
    m_card->setRecordName(tr("Save the correction"));
    m_card->say(tr("Correcting %1, recorded as %2 at %3. Esc leaves it as it was.")
                    .arg(codeOnScale(), scaleUnits().mass(found->harvest.net),
                         clockText(found->harvest.minute)),
                "strong");
    showTray();
}

// The tare of a bowl that was corrected is not the tare of the bowl on the scale.
void WeighPage::leaveCorrection()
{
    if (m_correcting) {
        m_correcting.reset();
        m_card->setRecordName(tr("Record, next tray"));
        m_card->setTare(milligrams(services().preferences.get(Preference::LastTare).toLongLong()));
    }
}

void WeighPage::clearTray()
{
    leaveQuestion();
    leaveCorrection();
    m_tray.reset();
    m_accepted.clear();
    m_card->showNoTray();
}

void WeighPage::nameUnrecorded(const QString& nextCode)
{
    const auto bowls = m_card->bowls();
    const bool isOther = nextCode.compare(codeOnScale(), Qt::CaseInsensitive) != 0;
    if (m_tray && !m_correcting && isOther && bowls && netOf(*bowls) > Mass()) {
        services().messages.refuse(
            tr("%1 of %2 were not recorded.").arg(scaleUnits().mass(netOf(*bowls)), codeOnScale()));
    }
}

void WeighPage::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Escape:
        if (m_correcting) {
            clearTray();
            showTray();
            m_card->focusCode();
        } else if (m_tray) {
            m_card->setWeightText(QString());
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
    case Qt::Key_F8:
        m_timer->press();
        return;
    case Qt::Key_F6:
        setMode(m_what == Weighing::Cut ? Weighing::Residue : Weighing::Cut);
        return;
    default:
        Page::keyPressEvent(event);
    }
}

} // namespace plumule::ui
