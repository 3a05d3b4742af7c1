#include "ui/rack/tight_card.h"

#include "ui/rack/rack_text.h"
#include "ui/widget/theme.h"

#include <QGridLayout>

namespace plumule::ui {
namespace {

constexpr std::size_t kMostSpells = 3;

} // namespace

TightCard::TightCard(QWidget* parent)
    : Card(tr("Tightest"), "card", parent)
{
    setObjectName("tightest");
}

void TightCard::show(const std::vector<FreeEvening>& evenings)
{
    clearLayout(body());
    const std::vector<FreeSpell> spells = tightestSpells(evenings, kMostSpells);
    setVisible(!spells.empty());
    auto* grid = new QGridLayout;
    grid->setVerticalSpacing(scaled(4));
    grid->setColumnStretch(0, 1);
    int row = 0;
    for (const FreeSpell& spell : spells) {
        auto* days = label(spellText(spell, evenings.back().on));
        days->setWordWrap(true);
        const QString words = spell.missing > 0
                                  ? tr("%1 free, %2 lacking").arg(spell.free).arg(spell.missing)
                                  : tr("%1 free").arg(spell.free);
        grid->addWidget(days, row, 0, Qt::AlignTop);
        grid->addWidget(label(words, "strong"), row++, 1, Qt::AlignTop | Qt::AlignRight);
    }
    body()->addLayout(grid);
    auto* note =
        label(tr("A place counts as free on the evening of its tray's cut; a cut that comes "
                 "late keeps it longer."),
              "muted");
    note->setWordWrap(true);
    body()->addWidget(note);
}

} // namespace plumule::ui

#include "moc_tight_card.cpp"
