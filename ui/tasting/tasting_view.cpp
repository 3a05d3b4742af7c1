#include "ui/tasting/tasting_view.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/tasting/tasting_entries.h"
#include "ui/page/saving.h"
#include "ui/page/undoing.h"
#include "ui/tasting/tasting_answer.h"
#include "ui/tasting/tasting_dialog.h"
#include "ui/tasting/tasting_entry.h"
#include "ui/tasting/tasting_sheet.h"
#include "ui/tasting/tasting_text.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/page_stack.h"
#include "ui/widget/theme.h"

#include <QComboBox>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

enum TastingPart
{
    NoPanel,
    OpenPanel,
    ClosedPanel
};

constexpr int kMostAskedLines = 6;

QPushButton* barButton(const QString& text, const char* name, const char* role = "")
{
    auto* made = button(text, role);
    made->setObjectName(name);
    return made;
}

QWidget* inScroll(QWidget* content)
{
    QVBoxLayout* inner = nullptr;
    auto* area = scrolling(inner);
    inner->addWidget(content);
    inner->addStretch(1);
    return area;
}

} // namespace

TastingView::TastingView(Journal& journal, Services services, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
    , m_services(services)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(12));
    column->addWidget(buildBar());
    m_stack = new PageStack;
    m_entry = new TastingEntry(journal, services);
    m_answer = new TastingAnswer(services);
    m_stack->addPage(buildEmpty());
    m_stack->addPage(inScroll(m_entry));
    m_stack->addPage(inScroll(m_answer));
    column->addWidget(m_stack, 1);
    wireSignals();
}

QWidget* TastingView::buildBar()
{
    m_bar = new QWidget;
    auto* column = new QVBoxLayout(m_bar);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(6));
    auto* controls = new QWidget;
    auto* row = new FlowLayout(controls);
    m_choice = new QComboBox;
    m_choice->setObjectName("tastingChoice");
    m_choice->setAccessibleName(tr("Tasting"));
    m_sheets = barButton(tr("Sheets for tasters…"), "tastingSheets");
    m_plating = barButton(tr("Sheet for plating…"), "tastingPlating");
    m_close = barButton(tr("Close the tasting…"), "tastingClose", "primary");
    m_change = barButton(tr("Change…"), "tastingChange");
    m_remove = barButton(tr("Remove…"), "tastingRemove", "danger");
    m_new = barButton(tr("New tasting…"), "tastingNew");
    for (QWidget* each : std::initializer_list<QWidget*>{m_choice, m_sheets, m_plating, m_close,
                                                         m_change, m_new, m_remove}) {
        row->addWidget(each);
    }
    m_facts = label(QString(), "muted");
    m_facts->setObjectName("tastingFacts");
    m_facts->setWordWrap(true);
    column->addWidget(controls);
    column->addWidget(m_facts);
    return m_bar;
}

QWidget* TastingView::buildEmpty()
{
    auto* page = new QWidget;
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    auto* card = new Card(tr("No tasting of this trial yet"));
    auto* words =
        label(tr("A blind tasting asks a few people without telling them, or you, what is on the "
                 "plate: each serving has a code of its own, in an order drawn by lot, and the "
                 "media show only once all scores are in and the tasting is closed."),
              "muted");
    words->setWordWrap(true);
    m_first = barButton(tr("Plan a tasting…"), "tastingFirst", "primary");
    auto* row = new QHBoxLayout;
    row->addWidget(m_first);
    row->addStretch(1);
    card->body()->addWidget(words);
    card->body()->addLayout(row);
    column->addWidget(card);
    column->addStretch(1);
    return page;
}

void TastingView::wireSignals()
{
    connect(m_first, &QPushButton::clicked, this, &TastingView::plan);
    connect(m_new, &QPushButton::clicked, this, &TastingView::plan);
    connect(m_change, &QPushButton::clicked, this, &TastingView::change);
    connect(m_sheets, &QPushButton::clicked, this, &TastingView::writeSheets);
    connect(m_plating, &QPushButton::clicked, this, &TastingView::writePlating);
    connect(m_close, &QPushButton::clicked, this, &TastingView::close);
    connect(m_remove, &QPushButton::clicked, this, &TastingView::remove);
    connect(m_choice, &QComboBox::activated, this, [this](int index) {
        m_panel = m_panels[static_cast<std::size_t>(index)].panel.id;
        showPanel();
    });
}

void TastingView::showTrial(TrialId trial)
{
    if (trial != m_trial) {
        m_trial = trial;
        m_panel = {};
    }
    reload();
}

void TastingView::reload()
{
    if (m_trial.isStored()) {
        reloadPanels();
        showPanel();
    }
}

void TastingView::reloadPanels()
{
    const auto panels = m_journal.tastings().list(m_trial);
    if (!panels) {
        m_services.messages.refuse(sentence(panels.error()));
        return;
    }
    m_panels = *panels;
    m_choice->clear();
    for (const PanelRow& row : m_panels) {
        m_choice->addItem(
            tr("%1, %2").arg(QString::fromStdString(row.panel.name), shortDayText(row.panel.on)));
    }
    if (chosen() == nullptr) {
        m_panel = m_panels.empty() ? PanelId() : m_panels.front().panel.id;
    }
    for (std::size_t i = 0; i < m_panels.size(); ++i) {
        if (m_panels[i].panel.id == m_panel) {
            m_choice->setCurrentIndex(static_cast<int>(i));
        }
    }
    m_choice->setVisible(m_panels.size() > 1);
}

const PanelRow* TastingView::chosen() const
{
    const auto found = std::find_if(m_panels.begin(), m_panels.end(), [this](const PanelRow& row) {
        return row.panel.id == m_panel;
    });
    return found == m_panels.end() ? nullptr : &*found;
}

UnitText TastingView::units() const
{
    const auto layout = m_journal.room().layout();
    return UnitText(layout ? layout->room.units : UnitSystem::Metric);
}

void TastingView::showPanel()
{
    const PanelRow* row = chosen();
    m_bar->setVisible(row != nullptr);
    if (row == nullptr) {
        m_stack->setCurrentIndex(NoPanel);
        return;
    }
    const Panel& panel = row->panel;
    QStringList facts{QString::fromStdString(panel.name),
                      longDateText(panel.on),
                      nameOf(panel.method),
                      tr("%n taster(s)", nullptr, row->tasters),
                      tr("%n sample(s)", nullptr, row->samples),
                      panel.isOpen() ? tr("blind until it is closed")
                                     : tr("closed on %1").arg(longDateText(*panel.closedOn)),
                      tr("draw %1").arg(panel.drawNumber)};
    m_facts->setText(facts.join("  ·  "));
    m_sheets->setVisible(panel.isOpen());
    m_plating->setVisible(panel.isOpen());
    m_close->setVisible(panel.isOpen());
    m_close->setEnabled(row->scores > 0);
    m_change->setVisible(panel.isOpen() && row->scores == 0);
    if (panel.isOpen()) {
        showOpen(panel);
    } else {
        showClosed(panel);
    }
}

void TastingView::showOpen(const Panel& panel)
{
    const auto record = m_journal.tastings().record(panel.id);
    if (!record) {
        m_services.messages.refuse(sentence(record.error()));
        return;
    }
    const bool isNewHere = m_stack->currentIndex() != OpenPanel;
    m_entry->show(*record);
    m_stack->setCurrentIndex(OpenPanel);
    if (isNewHere) {
        m_entry->begin();
    }
}

void TastingView::showClosed(const Panel& panel)
{
    const auto result = m_journal.tastings().result(panel.id);
    if (!result) {
        m_services.messages.refuse(sentence(result.error()));
        return;
    }
    m_answer->show(*result);
    m_stack->setCurrentIndex(ClosedPanel);
}

void TastingView::plan()
{
    auto draft = m_journal.tastings().newDraft(m_trial);
    if (!draft) {
        m_services.messages.refuse(sentence(draft.error()));
        return;
    }
    draft->panel.name = tr("Tasting %1").arg(m_panels.size() + 1).toStdString();
    openDialog(*draft);
}

void TastingView::change()
{
    const auto draft = m_journal.tastings().draft(m_panel);
    if (!draft) {
        m_services.messages.refuse(sentence(draft.error()));
        return;
    }
    openDialog(*draft);
}

void TastingView::openDialog(const PanelDraft& draft)
{
    auto* dialog = new TastingDialog(m_journal, m_services, draft, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &TastingDialog::saved, this, [this](PanelId panel) {
        m_panel = panel;
        reload();
    });
    dialog->open();
}

void TastingView::saveTo(const QString& title, const QString& preset,
                         std::function<Done(const QString&)> write)
{
    saveAs(this, m_services, title, preset, tr("Pages (*.pdf)"), std::move(write));
}

void TastingView::writeSheets()
{
    saveTo(tr("Save the sheets for the tasters"), tr("tasters.pdf"), [this](const QString& path) {
        return m_journal.tastings().record(m_panel).and_then(
            [&](const PanelRecord& record) { return writeTasterSheets(record, units(), path); });
    });
}

void TastingView::writePlating()
{
    saveTo(tr("Save the sheet for plating"), tr("plating.pdf"), [this](const QString& path) {
        const auto plating = m_journal.tastings().plating(m_panel);
        if (!plating) {
            return Done(passOn(plating));
        }
        return m_journal.tastings().record(m_panel).and_then([&](const PanelRecord& record) {
            return writePlatingSheet(record, *plating, units(), path);
        });
    });
}

void TastingView::close()
{
    const auto record = m_journal.tastings().record(m_panel);
    if (!record) {
        m_services.messages.refuse(sentence(record.error()));
        return;
    }
    QStringList missing = missingWords(missingScores(*record));
    if (missing.size() > kMostAskedLines) {
        const auto more = missing.size() - kMostAskedLines;
        missing = missing.mid(0, kMostAskedLines) << tr("and %1 more").arg(more);
    }
    const QString question =
        missing.isEmpty()
            ? tr("All scores are in. Once it is closed the media are shown, and no score can be "
                 "changed any more. Close it?")
            : tr("Scores are missing:\n%1\nWhere one is, that taster is left out of the test. Once "
                 "it is closed the media are shown, and no score can be changed any more. Close "
                 "it all the same?")
                  .arg(missing.join('\n'));
    m_services.ask.confirm(
        this, tr("Close the tasting"), question, tr("Close the tasting"), [this] {
            const auto closed = m_journal.tastings().close(m_panel);
            if (!closed) {
                m_services.messages.refuse(sentence(closed.error()));
                return;
            }
            m_services.messages.tell(tr("Closed the tasting: its media are shown now."));
            reload();
        });
}

void TastingView::remove()
{
    const PanelRow* row = chosen();
    if (row == nullptr) {
        return;
    }
    const QString question = row->scores == 0
                                 ? tr("Remove %1?").arg(QString::fromStdString(row->panel.name))
                                 : tr("Remove %1 with its %n score(s)?", nullptr, row->scores)
                                       .arg(QString::fromStdString(row->panel.name));
    m_services.ask.confirm(this, tr("Remove the tasting"), question, tr("Remove"), [this] {
        const auto removed = m_journal.tastings().remove(m_panel);
        if (!removed) {
            m_services.messages.refuse(sentence(removed.error()));
            return;
        }
        tellDone(m_journal, m_services, tr("Removed the tasting."));
        reload();
    });
}

} // namespace plumule::ui

#include "moc_tasting_view.cpp"
