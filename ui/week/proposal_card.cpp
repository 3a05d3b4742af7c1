#include "ui/week/proposal_card.h"

#include "ui/medium/marker.h"
#include "ui/week/week_text.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/key_button.h"
#include "ui/widget/theme.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kLeastWidth = 330; // of one
constexpr int kMostBeside = 3;
constexpr int kMostKeys = 9;

} // namespace

ProposalCard::ProposalCard(QWidget* parent)
    : Card(tr("Repeating sowings, proposed"), "card", parent)
{
    setObjectName("proposals");
    auto* list = button(tr("All repeats…"), "quiet");
    list->setObjectName("allRepeats");
    headingRow()->addWidget(list);
    connect(list, &QPushButton::clicked, this, &ProposalCard::listAsked);
    auto* words = label(tr("* counted above; nothing is sown until you say so"), "muted");
    words->setWordWrap(true);
    body()->addWidget(words);
    m_none = label(QString(), "muted");
    m_none->setObjectName("noProposals");
    m_none->setWordWrap(true);
    body()->addWidget(m_none);
    m_grid = new QGridLayout;
    m_grid->setHorizontalSpacing(scaled(24));
    m_grid->setVerticalSpacing(scaled(16));
    body()->addLayout(m_grid);
}

void ProposalCard::show(const std::vector<Proposal>& proposals, const UnitText& units, Date today,
                        Acts acts)
{
    m_units = units;
    m_today = today;
    m_acts = acts;
    clearLayout(m_grid);
    m_parts.clear();
    int index = 0;
    for (const Proposal& proposal : proposals) {
        m_parts.push_back(buildOne(proposal, index++));
    }
    m_none->setVisible(m_parts.empty());
    m_none->setText(tr("Nothing is proposed for these days. A sowing that comes again, such as "
                       "“radish on coir, 4 trays, every Tuesday”, is set up once under All "
                       "repeats… and then proposed here."));
    m_columns = 0;
    arrange();
}

QWidget* ProposalCard::buildOne(const Proposal& proposal, int index)
{
    auto* part = new QWidget(this);
    part->setObjectName(QStringLiteral("proposal%1").arg(index + 1));
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(4));
    auto* first = new QHBoxLayout;
    auto* title = label(titleOf(proposal), "strong");
    title->setObjectName("proposalTitle");
    title->setWordWrap(true);
    first->addWidget(new MarkerDot(proposal.medium.marker), 0, Qt::AlignTop);
    first->addWidget(title, 1);
    column->addLayout(first);
    auto* when = label(whenText(proposal, m_today));
    when->setObjectName("proposalWhen");
    when->setWordWrap(true);
    auto* words = label(wordsOf(proposal, m_units), "muted");
    words->setObjectName("proposalWords");
    words->setWordWrap(true);
    column->addWidget(when);
    column->addWidget(words);
    column->addStretch(1);
    column->addWidget(buildButtons(proposal, index));
    return part;
}

QWidget* ProposalCard::buildButtons(const Proposal& proposal, int index)
{
    auto* block = new QWidget;
    auto* row = new FlowLayout(block);
    const bool isDue = proposal.beginsOn() <= m_today;
    const QString act = proposal.soakAt ? (isDue ? tr("Soak now") : tr("Soak today already"))
                                        : (isDue ? tr("Sow now") : tr("Sow today already"));
    const char* const role = isDue ? "primary" : "";
    QPushButton* sow = index < kMostKeys ? new KeyButton(act, QString::number(index + 1), role)
                                         : button(act, role);
    sow->setObjectName(QStringLiteral("sow%1").arg(index + 1));
    auto* skip = new KeyButton(tr("Not this time"), QString()); // as high as the one beside it
    skip->setKeyShown(false);
    skip->setObjectName(QStringLiteral("skip%1").arg(index + 1));
    for (QPushButton* each : {sow, static_cast<QPushButton*>(skip)}) {
        each->setEnabled(m_acts == Acts::Allowed);
        row->addWidget(each);
    }
    skip->setAccessibleName(tr("Not this time: %1").arg(titleOf(proposal)));
    sow->setAccessibleName(QStringLiteral("%1: %2").arg(act, titleOf(proposal)));
    connect(sow, &QPushButton::clicked, this,
            [this, repeat = proposal.repeat, due = proposal.due] { Q_EMIT sowAsked(repeat, due); });
    connect(
        skip, &QPushButton::clicked, this,
        [this, repeat = proposal.repeat, due = proposal.due] { Q_EMIT skipAsked(repeat, due); });
    return block;
}

void ProposalCard::arrange()
{
    const int columns = std::clamp(width() / scaled(kLeastWidth), 1, kMostBeside);
    if (columns == m_columns) {
        return;
    }
    for (int column = 0; column < kMostBeside; ++column) {
        m_grid->setColumnStretch(column, column < columns ? 1 : 0);
    }
    m_columns = columns;
    int index = 0;
    for (QWidget* part : m_parts) {
        m_grid->removeWidget(part);
        m_grid->addWidget(part, index / columns, index % columns);
        ++index;
    }
}

void ProposalCard::resizeEvent(QResizeEvent* event)
{
    Card::resizeEvent(event);
    arrange();
}

} // namespace plumule::ui

#include "moc_proposal_card.cpp"
