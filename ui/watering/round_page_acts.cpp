// Part of ui/watering/round_page.h: ticking, deciding, writing down, printing.
#include "ui/watering/round_page.h"

#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "ui/page/sheets.h"
#include "ui/watering/decision_row.h"
#include "ui/watering/round_head.h"
#include "ui/watering/round_list.h"
#include "ui/watering/round_sheet.h"
#include "ui/watering/round_side.h"
#include "ui/watering/round_text.h"
#include "ui/watering/shelf_card.h"
#include "ui/widget/widgets.h"

#include <algorithm>
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

void RoundPage::tick(TrayId tray, TickedBy by)
{
    TrayRow* row = m_list->row(tray);
    if (row == nullptr) {
        return;
    }
    if (row->tray().isDone() || row->tray().isAside()) {
        untick(*row);
        return;
    }
    if (!mayTick()) {
        return;
    }
    m_isTicking = true;
    const auto given = journal().watering().tick(tray, m_round.date, m_round.slot);
    m_isTicking = false;
    if (!accept(given)) {
        return;
    }
    // Seen at once; what the journal holds is read again a moment later.
    m_ticked.insert(tray);
    m_waterings.emplace(given->id.value, tray);
    row->setGiven(*given);
    m_list->showOpen();
    tellLast();
    if (by == TickedBy::Key) {
        m_list->focusNextOpen(row);
    }
}

bool RoundPage::showTicked(TrayId tray)
{
    const auto shown = std::find_if(m_round.trays.begin(), m_round.trays.end(),
                                    [tray](const RoundTray& each) { return each.tray == tray; });
    // Water as needed is mixed for as long as it may be needed.
    if (shown == m_round.trays.end() || shown->isAsNeeded) {
        return false;
    }
    const auto now = journal().watering().inRound(tray, m_round.date, m_round.slot);
    if (!now || !*now) {
        return false;
    }
    const auto stood = shown->spot; // at that round
    *shown = **now;
    shown->spot = stood;
    m_list->showTray(*shown);
    return true;
}

void RoundPage::untick(TrayRow& row)
{
    const RoundTray& tray = row.tray();
    const Done done = tray.isAside()
                          ? journal().watering().remove(tray.between.back().id)
                          : journal().watering().untick(tray.tray, m_round.date, m_round.slot);
    if (!accept(done)) {
        return;
    }
    row.setGiven(std::nullopt);
    row.setLooked(std::nullopt);
    m_list->showOpen();
    showHand();
    tellLast();
}

void RoundPage::needNothing(const std::vector<TrayId>& trays)
{
    if (trays.empty() || !mayTick()) {
        return;
    }
    const auto looks = journal().watering().needNothing(trays, m_round.date, m_round.slot);
    if (!accept(looks)) {
        return;
    }
    for (const WateringLook& each : *looks) {
        if (TrayRow* row = m_list->row(each.tray)) {
            row->setLooked(each);
        }
    }
    m_list->showOpen();
    tellLast();
    m_list->focusNextOpen(m_list->row(trays.back()));
}

void RoundPage::tickShelf(ShelfCard* shelf)
{
    if (shelf == nullptr) {
        return;
    }
    const std::vector<TrayId> trays = shelf->openTrays();
    if (shelf->isAsNeeded()) {
        needNothing(trays);
        return;
    }
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
    m_list->showOpen();
    tellLast();
    m_list->focusNextOpen(m_list->row(trays.back()));
}

void RoundPage::beReady(const DecisionRow* row, const std::vector<TrayId>& trays)
{
    if (row == nullptr) {
        return;
    }
    if (!row->decision().to) {
        const auto sheet = journal().trays().sheet(trays.front());
        if (accept(sheet)) {
            Q_EMIT weighingAsked(QString::fromStdString(sheet->record.tray.code));
        }
        return;
    }
    if (mayTick() && accept(journal().trays().moveOn(trays, momentOfAct()))) {
        tellLast();
    }
}

// A stage is looked at again next round, a harvest a day later.
void RoundPage::putOff(const DecisionRow* row, const std::vector<TrayId>& trays)
{
    if (row == nullptr || !mayTick()) {
        return;
    }
    const StageDecision decision = row->decision();
    const QString codes =
        trays.size() == row->trays().size() ? row->codes() : codeOf(trays.front());
    const RoundKey asked = std::max(presentKey(), roundShowing(m_room, decision.due));
    const auto minutes = decision.to ? timeOf(m_room, roundAfter(asked)) - timeOf(m_room, asked)
                                     : std::int64_t{kMinutesPerDay};
    if (!accept(journal().trays().notYet(trays, static_cast<int>(minutes)))) {
        return;
    }
    const auto sheet = journal().trays().sheet(trays.front());
    if (!sheet || !sheet->plan.current) {
        tellLast();
        return;
    }
    const RoundKey again = roundShowing(m_room, sheet->plan.spans[*sheet->plan.current].end);
    tellDone(tr("%1: not yet. Asked again %2; harvest then on %3.")
                 .arg(codes, roundWords(again, journal().clock().today()),
                      dayText(sheet->plan.harvest.date)));
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

void RoundPage::leaveDetails()
{
    if (!hasUnsaved()) {
        closeDetails();
        return;
    }
    services().ask.confirm(this, tr("Not saved"),
                           tr("What you typed about %1 is not saved. Leave it all the same?")
                               .arg(codeOf(m_panel->tray())),
                           tr("Leave without saving"), [this] { closeDetails(); });
}

// It would be out of sight, and every way on would wait for it.
void RoundPage::dropDetails()
{
    if (!m_list->hasPanel() || m_list->row(m_panel->tray()) != nullptr) {
        return;
    }
    auto remark = m_panel->remark().value_or(TrayRemark());
    m_list->closePanel();
    const auto shown =
        std::find_if(m_round.trays.begin(), m_round.trays.end(),
                     [&](const RoundTray& each) { return each.tray == m_panel->tray(); });
    if (shown != m_round.trays.end()) {
        remark.water = shown->water; // decisions alone are shown
    } else {
        remark.given.reset();
        remark.ph.reset();
        remark.ec.reset();
    }
    if (remark.isEmpty()) {
        return;
    }
    remark.date = m_round.date;
    remark.slot = m_round.slot;
    remark.at = momentOfAct();
    if (accept(journal().watering().writeDown(remark))) {
        tellLast();
    }
}

void RoundPage::saveDetails()
{
    const auto remark = m_panel->remark();
    if (!remark) {
        services().messages.refuse(tr("Please check the marked number."));
        return;
    }
    if (!remark->isEmpty()) {
        if (!keepRemark(*remark)) {
            return;
        }
        tellLast();
    }
    closeDetails();
}

// An amount that was given is a watering: a tray not ticked yet is ticked with it.
bool RoundPage::keepRemark(TrayRemark remark)
{
    TrayRow* row = m_list->row(remark.tray);
    const bool isOfRound = remark.given || remark.ph || remark.ec;
    if (row == nullptr || (isOfRound && !mayTick())) {
        return false;
    }
    remark.date = m_round.date;
    remark.slot = m_round.slot;
    remark.at = momentOfAct();
    remark.water = row->tray().water;
    const auto tick = journal().watering().writeDown(remark);
    if (!accept(tick)) {
        return false;
    }
    if (remark.given) {
        row->setGiven(*tick);
    }
    return true;
}

bool RoundPage::keepReading(WaterKind water, std::optional<double> ph, std::optional<double> ec)
{
    if (!mayTick()) {
        return false;
    }
    WaterReading reading;
    reading.on = m_round.date;
    reading.slot = m_round.slot;
    reading.minute = momentOfAct().minute;
    reading.water = water;
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

bool RoundPage::print()
{
    offerSheet();
    return true;
}

void RoundPage::offerSheet()
{
    ui::offerSheet(
        *this, *m_head->printButton(), [this] { printSheet(); }, [this] { saveSheet(); });
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
    sendToPrinter(this, services(), [this](QPagedPaintDevice& printer) {
        return printRoundSheet(m_round, m_layout, UnitText(m_room.units), printer);
    });
}

} // namespace plumule::ui
