#include "ui/trial/trial_view.h"

#include "core/journal/review/review_answers.h"
#include "core/journal/trial/trial_entries.h"
#include "ui/label/label_dialog.h"
#include "ui/tasting/tasting_view.h"
#include "ui/trial/answer_view.h"
#include "ui/trial/plan_text.h"
#include "ui/trial/progress_view.h"
#include "ui/trial/trial_dialog.h"
#include "ui/trial/trial_report.h"
#include "ui/widget/page_stack.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QMenu>
#include <QVBoxLayout>

namespace plumule::ui {

TrialView::TrialView(Journal& journal, Services services, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
    , m_services(services)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(12));
    buildHead();
    column->addWidget(m_head);
    m_stack = new PageStack;
    m_progress = new ProgressView(journal, services);
    m_tasting = new TastingView(journal, services);
    m_answer = new AnswerView(journal, services);
    for (QWidget* part : {static_cast<QWidget*>(m_progress), static_cast<QWidget*>(m_tasting),
                          static_cast<QWidget*>(m_answer)}) {
        m_stack->addPage(part);
    }
    column->addWidget(m_stack, 1);
    wireSignals();
}

void TrialView::buildHead()
{
    m_head = new PageHead(tr("Trial"));
    auto* back = button(tr("All trials"));
    back->setObjectName("trialBack");
    m_part = new Segmented({tr("Progress"), tr("Tasting"), tr("Answer")});
    m_part->setObjectName("trialPart");
    m_change = button(tr("Change…"));
    m_change->setObjectName("trialChange");
    m_labels = button(tr("Labels…"));
    m_labels->setObjectName("trialLabels");
    m_report = button(tr("Report"));
    m_report->setObjectName("trialReport");
    setRole(m_report, "menu");
    auto* kinds = new QMenu(m_report);
    connect(kinds->addAction(tr("PDF pages…")), &QAction::triggered, this,
            [this] { makeReport(".pdf"); });
    connect(kinds->addAction(tr("One HTML file…")), &QAction::triggered, this,
            [this] { makeReport(".html"); });
    m_report->setMenu(kinds);
    for (QWidget* each : {static_cast<QWidget*>(back), static_cast<QWidget*>(m_part),
                          static_cast<QWidget*>(m_change), static_cast<QWidget*>(m_labels),
                          static_cast<QWidget*>(m_report)}) {
        m_head->addControl(each);
    }
    connect(back, &QPushButton::clicked, this, &TrialView::left);
}

void TrialView::wireSignals()
{
    connect(m_part, &Segmented::chosenByHand, this,
            [this](int part) { showPart(static_cast<Part>(part)); });
    connect(m_progress, &ProgressView::trayAsked, this, &TrialView::trayAsked);
    connect(m_answer, &AnswerView::trayAsked, this, &TrialView::trayAsked);
    connect(m_labels, &QPushButton::clicked, this, [this] {
        std::vector<TrayId> trays;
        for (const TrialTray& tray : m_shown.trays) {
            trays.push_back(tray.record.tray.id);
        }
        auto* dialog = new LabelDialog(m_journal, m_services, trays, this);
        dialog->setAttribute(Qt::WA_DeleteOnClose);
        dialog->open();
    });
    connect(m_change, &QPushButton::clicked, this, [this] {
        auto* dialog = new TrialDialog(m_journal, m_services, m_shown.trial, this);
        dialog->setAttribute(Qt::WA_DeleteOnClose);
        dialog->open();
    });
}

void TrialView::show(TrialId trial)
{
    m_shown.trial.id = trial;
    if (read()) {
        m_stack->setCurrentIndex(m_shown.state == TrialState::Ended ? Answer : Progress);
        m_part->choose(m_stack->currentIndex());
        showWhatWasRead();
    }
}

void TrialView::showPart(Part part)
{
    m_part->choose(part);
    m_stack->setCurrentIndex(part);
    reload();
}

void TrialView::reload()
{
    if (read()) {
        showWhatWasRead();
    }
}

bool TrialView::read()
{
    const auto progress = m_journal.trials().progress(m_shown.trial.id);
    if (progress) {
        m_shown = *progress;
    } else if (progress.error().kind == ErrorKind::NotFound) {
        Q_EMIT left();
    } else {
        m_services.messages.refuse(sentence(progress.error()));
    }
    return progress.has_value();
}

void TrialView::showWhatWasRead()
{
    m_head->setTitle(QString::fromStdString(m_shown.trial.code + "  " + m_shown.trial.name));
    QStringList facts{QString::fromStdString(m_shown.trial.question), nameOf(m_shown.state),
                      tr("%n tray(s)", nullptr, static_cast<int>(m_shown.trays.size()))};
    if (m_shown.draft) {
        facts << nameOf(m_shown.draft->plan.design)
              << tr("draw %1").arg(m_shown.draft->plan.drawNumber);
    }
    facts.removeAll(QString());
    m_head->setSubtitle(facts.join("  ·  "));
    m_labels->setEnabled(!m_shown.trays.empty());
    if (m_stack->currentIndex() == Progress) {
        m_progress->show(m_shown);
    } else if (m_stack->currentIndex() == Tasting) {
        m_tasting->showTrial(m_shown.trial.id);
    } else {
        m_answer->show(m_shown.trial.id);
    }
}

ReportContent TrialView::reportContent() const
{
    return [trial = m_shown.trial.id,
            asked = m_answer->asked()](Journal& own, const plumule::Progress& progress) {
        return own.review()
            .trial(reportQuestion(trial, asked), progress)
            .map([&](const TrialAnswer& answer) {
                return trialReport(answer, QString::fromStdString(own.photoFolder().string()));
            });
    };
}

void TrialView::makeReport(const QString& ending)
{
    ui::makeReport(this, m_services, m_journal, QString::fromStdString(m_shown.trial.code) + ending,
                   reportContent());
}

void TrialView::printTheReport()
{
    printReport(this, m_services, m_journal, reportContent());
}

} // namespace plumule::ui

#include "moc_trial_view.cpp"
