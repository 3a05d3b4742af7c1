// Part of ui/watering/round_page.h: ticking, deciding, printing, and the keys.
#include "ui/watering/round_page.h"

#include "ui/paper/printing.h"
#include "ui/watering/decision_row.h"
#include "ui/watering/round_head.h"
#include "ui/watering/round_list.h"
#include "ui/watering/round_sheet.h"
#include "ui/watering/round_side.h"
#include "ui/watering/round_text.h"
#include "ui/widget/widgets.h"

#include <QKeyEvent>
#include <QMenu>
#include <QTimer>

#include <memory>

namespace plumule::ui {

// What is to come is shown as planned; it is ticked on its day.
bool RoundPage::mayTick()
{
    if (m_round.date > journal().clock().today()) {
        services().messages.refuse(tr("This round is still to come: it is ticked on its day."));
        return false;
    }
    return true;
}

// A past round is filled in as of its own time.
Moment RoundPage::momentOfAct() const
{
    return shownKey() < presentKey() ? timeOf(m_room, shownKey()) : journal().clock().now();
}

void RoundPage::tick(TrayId tray, bool isByKey)
{
    TrayRow* row = m_list->row(tray);
    if (row == nullptr) {
        return;
    }
    if (row->tray().isDone()) {
        if (accept(journal().watering().untick(tray, m_round.date, m_round.slot))) {
            row->setGiven(std::nullopt);
            tellLast();
        }
        return;
    }
    if (!mayTick()) {
        return;
    }
    const auto given = journal().watering().tick(tray, m_round.date, m_round.slot);
    if (!accept(given)) {
        return;
    }
    // Seen at once; what the journal holds is read again a moment later.
    row->setGiven(*given);
    tellLast();
    if (isByKey) {
        m_list->focusNextOpen(tray);
    }
}

void RoundPage::tickShelf(const std::vector<TrayId>& trays)
{
    if (trays.empty() || !mayTick()) {
        return;
    }
    const auto given = journal().watering().tickAll(trays, m_round.date, m_round.slot);
    if (!accept(given)) {
        return;
    }
    for (const Watering& each : *given) {
        if (TrayRow* row = m_list->row(each.tray)) {
            row->setGiven(each);
        }
    }
    tellLast();
    m_list->focusNextOpen(trays.back());
}

void RoundPage::beReady(TrayId tray)
{
    const DecisionRow* row = m_list->decision(tray);
    if (row == nullptr) {
        return;
    }
    if (!row->decision().to) {
        Q_EMIT weighingAsked(QString::fromStdString(row->decision().code));
        return;
    }
    if (mayTick() && accept(journal().trays().moveOn(tray, momentOfAct()))) {
        tellLast();
    }
}

// A stage is looked at again next round, a harvest a day later.
void RoundPage::putOff(TrayId tray)
{
    const DecisionRow* row = m_list->decision(tray);
    if (row == nullptr || !mayTick()) {
        return;
    }
    const StageDecision decision = row->decision();
    const RoundKey asked = std::max(presentKey(), roundShowing(m_room, decision.due));
    const auto minutes = decision.to ? timeOf(m_room, roundAfter(asked)) - timeOf(m_room, asked)
                                     : std::int64_t{kMinutesPerDay};
    if (!accept(journal().trays().notYet(tray, static_cast<int>(minutes)))) {
        return;
    }
    const auto sheet = journal().trays().sheet(tray);
    if (!sheet || !sheet->plan.current) {
        tellLast();
        return;
    }
    const RoundKey again = roundShowing(m_room, sheet->plan.spans[*sheet->plan.current].end);
    tellDone(tr("%1: not yet. It is asked again %2; harvest now on %3.")
                 .arg(QString::fromStdString(decision.code),
                      roundWords(again, journal().clock().today()),
                      dayText(sheet->plan.harvest.date)));
}

void RoundPage::decideByKey(bool isReady)
{
    DecisionRow* row = m_list->currentDecision();
    if (row == nullptr && m_list->currentRow() != nullptr) {
        row = m_list->decision(m_list->currentRow()->tray().tray);
    }
    if (row == nullptr) {
        // Nobody has looked at it yet: the first press leads there.
        if (m_list->firstDecision() != nullptr) {
            m_list->firstDecision()->setFocus();
        }
        return;
    }
    const TrayId tray = row->decision().tray;
    isReady ? beReady(tray) : putOff(tray);
}

void RoundPage::openDetails(TrayId tray, TrayPanel::Part part)
{
    const TrayRow* row = m_list->row(tray);
    if (row == nullptr) {
        return;
    }
    if (m_list->hasPanel() && m_panel->tray() != tray) {
        // What was typed about the other tray is kept, or keeps its panel open with the reason.
        saveDetails();
        if (m_list->hasPanel()) {
            return;
        }
    }
    if (!m_list->hasPanel()) {
        m_panel->begin(row->tray(), m_room.units);
        m_list->openPanel(m_panel, tray);
    }
    m_panel->focusOn(part);
    showInView(m_panel);
}

void RoundPage::openDetailsByKey(TrayPanel::Part part)
{
    if (const TrayRow* row = m_list->currentRow()) {
        openDetails(row->tray().tray, part);
    }
}

void RoundPage::closeDetails()
{
    if (m_list->hasPanel()) {
        m_list->closePanel();
        m_list->regainFocus();
    }
}

void RoundPage::saveDetails()
{
    const auto remark = m_panel->remark();
    if (!remark) {
        services().messages.refuse(tr("Please check the marked number."));
        return;
    }
    const bool isEmpty =
        remark->note.isEmpty() && !remark->height && !remark->given && !remark->ph && !remark->ec;
    if (!isEmpty) {
        if (!keepRemark(*remark)) {
            return;
        }
        tellLast();
    }
    closeDetails();
}

bool RoundPage::keepRemark(const TrayRemark& remark)
{
    const TrayId tray = m_panel->tray();
    if (!remark.note.isEmpty()) {
        if (!accept(journal().trays().writeNote(tray, remark.note.toStdString(), momentOfAct()))) {
            return false;
        }
        m_panel->clear(TrayPanel::Part::Note);
    }
    if (remark.height) {
        if (!accept(
                journal().trays().noteHeight(tray, *remark.height, remark.from, momentOfAct()))) {
            return false;
        }
        m_panel->clear(TrayPanel::Part::Height);
    }
    if (remark.given) {
        if (!keepWater(tray, *remark.given)) {
            return false;
        }
        m_panel->clear(TrayPanel::Part::Water);
    }
    if (!remark.ph && !remark.ec) {
        return true;
    }
    const TrayRow* row = m_list->row(tray);
    const WaterKind water = row != nullptr ? row->tray().water : WaterKind::Plain;
    return keepReading(water, tray, remark.ph, remark.ec);
}

// An amount that was given is a watering: a tray not ticked yet is ticked with it.
bool RoundPage::keepWater(TrayId tray, Volume amount)
{
    TrayRow* row = m_list->row(tray);
    if (row == nullptr || !mayTick()) {
        return false;
    }
    std::optional<Watering> given = row->tray().given;
    if (!given) {
        const auto ticked = journal().watering().tick(tray, m_round.date, m_round.slot);
        if (!accept(ticked)) {
            return false;
        }
        given = *ticked;
    }
    row->setGiven(given);
    if (given->amount == amount) {
        return true;
    }
    given->amount = amount;
    const auto corrected = journal().watering().correct(*given);
    if (accept(corrected)) {
        row->setGiven(*corrected);
    }
    return corrected.has_value();
}

bool RoundPage::keepReading(WaterKind water, std::optional<TrayId> tray, std::optional<double> ph,
                            std::optional<double> ec)
{
    if (!mayTick()) {
        return false;
    }
    WaterReading reading;
    reading.on = m_round.date;
    reading.slot = m_round.slot;
    reading.minute = momentOfAct().minute;
    reading.water = water;
    reading.tray = tray;
    reading.ph = ph;
    reading.ec = ec;
    return accept(journal().watering().noteReading(reading));
}

void RoundPage::attachPhoto(TrayId tray)
{
    services().ask.fileToOpen(
        this, tr("Attach a photo"), tr("Pictures (*.png *.jpg *.jpeg *.webp *.heic)"),
        [this, tray](const QString& path) {
            const auto photo = journal().trays().attachPhoto(
                tray, std::filesystem::path(path.toStdString()), {}, momentOfAct());
            if (accept(photo)) {
                tellLast();
            }
        });
}

void RoundPage::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Down || event->key() == Qt::Key_Up) {
        m_list->regainFocus();
        return;
    }
    const QString typed = event->text();
    const bool isPlain = typed.size() == 1 && typed.front().isPrint() &&
                         (event->modifiers() & ~Qt::ShiftModifier) == Qt::NoModifier;
    if (!isPlain) {
        Page::keyPressEvent(event);
        return;
    }
    // A letter waits until it is plain that no other follows as fast as a scanner types.
    const bool isBurst = m_sinceKey.isValid() && m_sinceKey.elapsed() < m_letterTimer->interval();
    m_sinceKey.start();
    m_letterTimer->stop();
    if (!isBurst && !event->isAutoRepeat()) {
        m_letter = event->key();
        m_letterTimer->start();
    }
}

void RoundPage::pressLetter(int key)
{
    switch (key) {
    case Qt::Key_S:
        return tickShelf(m_list->openOnCurrentShelf());
    case Qt::Key_R:
        return decideByKey(true);
    case Qt::Key_N:
        return decideByKey(false);
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

void RoundPage::offerSheet()
{
    auto* menu = new QMenu(this);
    menu->setObjectName("sheetMenu");
    menu->setAttribute(Qt::WA_DeleteOnClose);
    QAction* print = menu->addAction(tr("Print…"), this, &RoundPage::printSheet);
    print->setObjectName("sheetToPrinter");
    QAction* save = menu->addAction(tr("Save as PDF…"), this, &RoundPage::saveSheet);
    save->setObjectName("sheetToPdf");
    menu->setActiveAction(print);
    const QWidget* under = m_head->printButton();
    menu->popup(under->mapToGlobal(QPoint(0, under->height())));
}

void RoundPage::saveSheet()
{
    const QString preset =
        QStringLiteral("round %1 %2.pdf")
            .arg(QString::fromStdString(toIso(m_round.date)), QLatin1String(toText(m_round.slot)));
    services().ask.fileToSave(
        this, tr("Save the sheet"), preset, tr("PDF (*.pdf)"), [this](const QString& path) {
            const Done saved = writeRoundSheet(m_round, m_layout, UnitText(m_room.units), path);
            if (saved) {
                services().messages.tell(tr("The sheet was saved as %1.").arg(path));
            } else {
                services().messages.refuse(sentence(saved.error()));
            }
        });
}

void RoundPage::printSheet()
{
    askPrinter(this, [this](QPagedPaintDevice& printer) {
        if (!printRoundSheet(m_round, m_layout, UnitText(m_room.units), printer)) {
            services().messages.refuse(tr("The printer did not take the sheet."));
        }
    });
}

} // namespace plumule::ui
