#include "ui/trial/progress_view.h"

#include "core/journal/room/room_entries.h"
#include "ui/medium/marker.h"
#include "ui/trial/layout_grid.h"
#include "ui/trial/plan_text.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"

#include <QScrollArea>
#include <QVBoxLayout>

#include <functional>
#include <map>
#include <set>

namespace plumule::ui {
namespace {

constexpr int kMostLacks = 5;

QString blockName(const TrialTray& tray)
{
    const QString shelf =
        tray.spot ? QString::fromStdString(tray.spot->rack + tray.spot->shelf) : QString();
    return shelf.isEmpty() ? ProgressView::tr("Block %1").arg(tray.block)
                           : ProgressView::tr("%1 · %2").arg(tray.block).arg(shelf);
}

} // namespace

ProgressView::ProgressView(Journal& journal, Services, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner));
    m_lacks = new Card(tr("What is missing"), "caution");
    m_lackRows = new QVBoxLayout;
    m_lackRows->setSpacing(scaled(2));
    m_lacks->body()->addLayout(m_lackRows);
    inner->addWidget(m_lacks);
    auto* card = new Card(tr("Where each tray stands, and how far it is"));
    card->wrapHeading();
    m_counts = label(QString(), "muted");
    m_counts->setObjectName("trialCounts");
    m_grid = new LayoutGrid;
    m_grid->setObjectName("trialLayout");
    m_legend = new QWidget;
    new FlowLayout(m_legend);
    card->body()->addWidget(m_counts);
    card->body()->addWidget(m_legend);
    card->body()->addWidget(m_grid);
    inner->addWidget(card);
    inner->addStretch(1);
    connect(m_grid, &LayoutGrid::pressed, this, [this](int tile) {
        Q_EMIT trayAsked(m_shown.trays[static_cast<std::size_t>(tile)].record.tray.id);
    });
}

void ProgressView::show(const TrialProgress& progress)
{
    m_shown = progress;
    showLacks();
    showTrays();
}

QString ProgressView::standOf(const TrialTray& tray) const
{
    const Tray& sown = tray.record.tray;
    const auto layout = m_journal.room().layout();
    const UnitText units(layout ? layout->room.units : UnitSystem::Metric);
    if (sown.state == TrayState::Discarded) {
        return nameOf(sown.state);
    }
    if (sown.state == TrayState::Harvested) {
        return tray.yield ? units.mass(*tray.yield, 0) : nameOf(sown.state);
    }
    const QString stage =
        tray.plan.current ? nameOf(tray.plan.spans[*tray.plan.current].stage) : tr("not begun");
    return tr("%1, day %2").arg(stage).arg(dayCount(sown.sownOn, m_journal.clock().today()));
}

void ProgressView::showTrays()
{
    // Only what can still be mended is marked: a weight, or today's height.
    std::set<TrayId> lacking;
    for (const TrialLack& lack : m_shown.lacks) {
        if (lack.gap == TrialGap::NotWeighed || lack.on == m_journal.clock().today()) {
            lacking.insert(lack.tray);
        }
    }
    std::vector<LayoutGrid::Row> rows;
    int block = 0;
    for (const TrialTray& tray : m_shown.trays) {
        if (rows.empty() || tray.block != block) {
            block = tray.block;
            rows.push_back({blockName(tray), {}});
        }
        const QString code = QString::fromStdString(tray.record.tray.code);
        QStringList said{code, QString::fromStdString(tray.record.medium.name), standOf(tray),
                         nameOf(tray.feeding), nameOf(tray.spot)};
        if (m_shown.draft) {
            said << squareWords(m_shown.draft->plan.design, tray.block, tray.position);
        }
        said.removeAll(QString());
        rows.back().tiles.push_back({code, tray.record.medium.marker, nameOf(tray.feeding),
                                     standOf(tray), said.join(", "),
                                     lacking.count(tray.record.tray.id) > 0});
    }
    m_grid->show(rows, LayoutGrid::Press::Opens);
    showCounts();
    showLegend();
}

void ProgressView::showCounts()
{
    std::map<TrayState, int> count;
    for (const TrialTray& tray : m_shown.trays) {
        ++count[tray.record.tray.state];
    }
    QStringList counts{tr("%1 growing").arg(count[TrayState::Growing]),
                       tr("%1 harvested").arg(count[TrayState::Harvested])};
    if (count[TrayState::Discarded] > 0) {
        counts << tr("%1 discarded").arg(count[TrayState::Discarded]);
    }
    m_counts->setText(counts.join("  ·  "));
}

void ProgressView::showLegend()
{
    std::map<MediumId, Medium> media;
    for (const TrialTray& tray : m_shown.trays) {
        media.emplace(tray.record.medium.id, tray.record.medium);
    }
    clearLayout(m_legend->layout());
    for (const auto& [id, medium] : media) {
        auto* chip = new QWidget;
        auto* row = new QHBoxLayout(chip);
        row->setContentsMargins(0, 0, scaled(10), 0);
        row->setSpacing(scaled(6));
        row->addWidget(new MarkerDot(medium.marker));
        row->addWidget(label(QString::fromStdString(medium.name), "muted"));
        m_legend->layout()->addWidget(chip);
    }
}

// A line a day: what was not read then, and what ought to have been weighed.
void ProgressView::showLacks()
{
    clearLayout(m_lackRows);
    std::map<std::pair<Date, TrialGap>, QStringList, std::greater<>> byDay;
    for (const TrialLack& lack : m_shown.lacks) {
        byDay[{lack.on, lack.gap}] << QString::fromStdString(lack.code);
    }
    int shown = 0;
    for (const auto& [key, codes] : byDay) {
        if (++shown > kMostLacks) {
            m_lackRows->addWidget(label(tr("and earlier days"), "muted"));
            break;
        }
        const QString words = key.second == TrialGap::NoHeight
                                  ? tr("%1: no height of %2, when others of the trial were read.")
                                  : tr("Due for harvest on %1 and not weighed: %2.");
        auto* line = label(words.arg(shortDayText(key.first), codes.join(", ")));
        line->setWordWrap(true);
        m_lackRows->addWidget(line);
    }
    m_lacks->setVisible(!m_shown.lacks.empty());
}

} // namespace plumule::ui

#include "moc_progress_view.cpp"
