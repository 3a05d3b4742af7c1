// Part of ui/trial/plan_view.h: keeping, sowing and the preparation sheet.
#include "ui/trial/plan_view.h"

#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "ui/page/saving.h"
#include "ui/page/sheets.h"
#include "ui/page/undoing.h"
#include "ui/trial/plan_form.h"
#include "ui/trial/plan_text.h"
#include "ui/trial/prep_sheet.h"

namespace plumule::ui {

bool PlanView::keep()
{
    follow();
    if (m_fault) {
        m_services.messages.refuse(sentence(*m_fault));
        return false;
    }
    const auto stored = m_journal.trials().savePlan(m_draft);
    if (!stored) {
        m_services.messages.refuse(sentence(stored.error()));
        return false;
    }
    tellDone(m_journal, m_services,
             tr("Kept the plan of trial %1.").arg(QString::fromStdString(stored->trial.code)));
    begin(*stored);
    Q_EMIT kept(stored->trial.id);
    return true;
}

// What is short, or sown on another day than planned, is said before and not after.
void PlanView::askToSow()
{
    follow();
    QStringList doubts;
    for (const Supply& supply : m_preparation.supplies) {
        if (supply.isShort()) {
            doubts << tr("%1: %2 needed, %3 there.")
                          .arg(nameOf(supply), supplyText(supply.kind, supply.needed, units()),
                               supplyText(supply.kind, *supply.inStock, units()));
        }
    }
    const Date today = m_journal.clock().today();
    if (m_draft.plan.sowOn != today) {
        doubts << tr("The plan says %1, and today is %2.")
                      .arg(dayText(m_draft.plan.sowOn), dayText(today));
    }
    if (doubts.isEmpty()) {
        sow();
        return;
    }
    m_services.ask.confirm(this, tr("Sow the trial"),
                           doubts.join('\n') + '\n' + tr("Sow all the same, now?"), tr("Sow now"),
                           [this] { sow(); });
}

void PlanView::sow()
{
    const QString person = m_form->person();
    const auto sownBy = person.isEmpty() ? std::nullopt : std::optional(person.toStdString());
    const auto trays = m_journal.trials().sow(m_draft, m_journal.clock().now(), sownBy);
    if (!trays) {
        m_services.messages.refuse(sentence(trays.error()));
        return;
    }
    const auto sheet = m_journal.trays().sheet(trays->front());
    if (sheet && sheet->record.tray.trial) {
        Q_EMIT sown(*sheet->record.tray.trial);
    }
}

void PlanView::savePrepSheet()
{
    m_services.ask.fileToSave(this, tr("Save the preparation sheet"),
                              QString::fromStdString(m_draft.trial.code) + " prepare.pdf",
                              tr("Pages (*.pdf)"), [this](const QString& path) {
                                  const auto sheet = prepSheetOf(m_journal, m_draft);
                                  if (!sheet) {
                                      m_services.messages.refuse(sentence(sheet.error()));
                                  } else if (const Done saved = writePrepSheet(*sheet, path);
                                             !saved) {
                                      m_services.messages.refuse(sentence(saved.error()));
                                  } else {
                                      m_services.messages.tell(tr("Saved %1.").arg(path));
                                  }
                              });
}

bool PlanView::printThePrepSheet()
{
    if (m_fault || m_draft.trays.empty()) {
        return false;
    }
    sendToPrinter(this, m_services, [this](QPagedPaintDevice& printer) {
        const auto sheet = prepSheetOf(m_journal, m_draft);
        return sheet && printPrepSheet(*sheet, printer);
    });
    return true;
}

} // namespace plumule::ui
